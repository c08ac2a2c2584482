#include "lettering.hpp"

#include "code_points.hpp"

namespace pictures {
namespace {

/// In shares of the letter height: DejaVu Sans and Verdana, the widest of the common faces, and some more.
double share_of(char32_t c) {
  if (c >= 0x1100) return 1.1;  // letters of the East, emblems
  if (c == ' ' || c == '.' || c == ',' || c == ':' || c == ';' || c == 'i' || c == 'l' || c == 'j' || c == '\'' ||
      c == '|')
    return 0.40;
  if (c == 'm' || c == 'w' || c == 'M' || c == 'W' || c == '@' || c == '%') return 1.05;
  if (c >= 'A' && c <= 'Z') return 0.80;
  if (c > 0x7F) return 0.90;
  return 0.66;
}

}  // namespace

double width_of(std::string_view text, double pixels, bool bold) {
  double shares = 0.0;
  while (!text.empty()) {
    const std::size_t length = reports::code_point_length(text);
    shares += share_of(reports::code_point(text.substr(0, length)));
    text.remove_prefix(length);
  }
  return shares * pixels * (bold ? 1.10 : 1.0);
}

std::string fit(const std::string& text, double most, double pixels, bool bold) {
  if (width_of(text, pixels, bold) <= most) return text;
  std::string_view rest = text;
  std::string shown;
  const double room = most - width_of("\u2026", pixels, bold);
  while (!rest.empty()) {
    const std::size_t length = reports::code_point_length(rest);
    if (width_of(shown + std::string(rest.substr(0, length)), pixels, bold) > room) break;
    shown += rest.substr(0, length);
    rest.remove_prefix(length);
  }
  return shown + "\u2026";
}

}  // namespace pictures
