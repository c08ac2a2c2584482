// The writers that need more than a line: the document in, the whole report out.
#pragma once

#include <string>

#include "reading.hpp"

namespace reports {

std::string write_text(const Json& document, std::size_t columns, bool color);
std::string write_csv(const Json& document);

}  // namespace reports
