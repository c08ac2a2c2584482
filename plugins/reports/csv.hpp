// What the tables of comma-separated values share.
#pragma once

#include <string>

#include "reading.hpp"

namespace reports {

/// RFC 4180: in quotes where it must be, quotes doubled.
std::string quote(const std::string& cell);

/// The shortest digits that read back the same; nothing for what does not exist.
void append_number(std::string& out, double value);

std::string write_check_csv(const Json& document);
std::string write_compare_csv(const Json& document);
std::string write_walk_csv(const Json& document);
std::string write_weigh_csv(const Json& document);

}  // namespace reports
