// The writers that need more than a line: the document in, the whole report out.
#pragma once

#include <string>

#include "reading.hpp"

namespace reports {

std::string write_text(const Json& document, std::size_t columns, bool color);
std::string write_csv(const Json& document);
std::string write_markdown(const Json& document);
std::string write_junit(const Json& document);
/// Throws std::runtime_error where the document has not exactly one variant, or a point at which nothing can be written.
std::string write_touchstone(const Json& document);

}  // namespace reports
