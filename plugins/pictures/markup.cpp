#include "markup.hpp"

#include <array>
#include <charconv>
#include <cmath>

#include "code_points.hpp"

namespace pictures {
namespace {

bool forbidden(char32_t c) {
  const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0);
  const bool turns =
      (c >= 0x200B && c <= 0x200F) || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) || c == 0x061C;
  return control || turns || c == 0xFEFF || c == 0xFFFE || c == 0xFFFF;
}

std::string_view reference_for(char32_t c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return {};
  }
}

}  // namespace

std::string escape(std::string_view text) {
  std::string safe;
  safe.reserve(text.size() + 16);
  while (!text.empty()) {
    const std::size_t length = reports::code_point_length(text);
    const char32_t c = reports::code_point(text.substr(0, length));
    const std::string_view reference = reference_for(c);
    if (!reference.empty())
      safe += reference;
    else if (forbidden(c))
      safe += '?';
    else
      safe += text.substr(0, length);
    text.remove_prefix(length);
  }
  return safe;
}

std::string coordinate(double value) {
  if (!std::isfinite(value)) value = 0.0;
  std::array<char, 40> text;
  const double rounded = std::round(value * 100.0) / 100.0 + 0.0;
  const auto done = std::to_chars(text.data(), text.data() + text.size(), rounded, std::chars_format::fixed);
  return {text.data(), done.ptr};
}

std::string exact(double value) {
  if (!std::isfinite(value)) return "null";
  std::array<char, 40> text;
  const auto done = std::to_chars(text.data(), text.data() + text.size(), value);
  return {text.data(), done.ptr};
}

}  // namespace pictures
