// A lead byte says how long its sequence is; stray bytes count as one character each.
#include "code_points.hpp"

#include <algorithm>

namespace reports {

std::size_t code_point_length(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC0 ? 2 : 1;
  return std::min(length, text.size());
}

char32_t code_point(std::string_view one) {
  const auto lead = static_cast<unsigned char>(one[0]);
  char32_t value = one.size() == 1 ? lead : lead & (0xFFU >> (one.size() + 1));
  for (const char next : one.substr(1)) value = (value << 6U) | (static_cast<unsigned char>(next) & 0x3FU);
  return value;
}

std::size_t width(std::string_view text) {
  std::size_t columns = 0;
  for (; !text.empty(); text.remove_prefix(code_point_length(text))) ++columns;
  return columns;
}

std::string cut(std::string_view text, std::size_t columns) {
  if (width(text) <= columns) return std::string(text);
  if (columns <= 3) return std::string(columns, '.');
  std::string kept;
  for (std::size_t i = 0; i + 3 < columns; ++i) {
    const std::size_t length = code_point_length(text);
    kept += text.substr(0, length);
    text.remove_prefix(length);
  }
  return kept + "...";
}

std::string cut_front(std::string_view text, std::size_t columns) {
  const std::size_t whole = width(text);
  if (whole <= columns) return std::string(text);
  if (columns <= 3) return std::string(columns, '.');
  for (std::size_t gone = whole - (columns - 3); gone > 0; --gone) text.remove_prefix(code_point_length(text));
  return "..." + std::string(text);
}

std::string pad_right(std::string_view text, std::size_t columns) {
  const std::size_t taken = width(text);
  return std::string(text) + std::string(taken < columns ? columns - taken : 0, ' ');
}

std::string pad_left(std::string_view text, std::size_t columns) {
  const std::size_t taken = width(text);
  return std::string(taken < columns ? columns - taken : 0, ' ') + std::string(text);
}

}  // namespace reports
