// Counting and cutting UTF-8 by characters. The document is valid UTF-8; each code point is taken to be one column
// wide.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace reports {

/// Bytes of the first code point of a text that is not empty.
std::size_t code_point_length(std::string_view text);
char32_t code_point(std::string_view one);

std::size_t width(std::string_view text);

/// At most `columns` wide; what is cut is shown by "...".
std::string cut(std::string_view text, std::size_t columns);

/// The same, with the front left out: of a dotted name the end tells more.
std::string cut_front(std::string_view text, std::size_t columns);

/// Filled with blanks up to `columns`.
std::string pad_right(std::string_view text, std::size_t columns);
std::string pad_left(std::string_view text, std::size_t columns);

}  // namespace reports
