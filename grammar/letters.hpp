// Classes of bytes, and small helpers over text that several sources of the grammar room share. Plain functions of
// ASCII: the standard ones ask the locale, and a feed file means the same everywhere.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace wattfall {

inline bool is_blank(char c) {
  return c == ' ' || c == '\t';
}
inline bool is_space(char c) {
  return is_blank(c) || c == '\r' || c == '\n';
}
inline bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
inline bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
inline bool is_word(char c) {
  return is_letter(c) || is_digit(c) || c == '_';
}

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// For a sentence: in backticks, and cut short where it is long.
inline std::string quoted(std::string_view text) {
  constexpr std::size_t most = 40;
  std::string result = "`";
  result.append(text.substr(0, most)).append(text.size() > most ? "...`" : "`");
  return result;
}

}  // namespace wattfall
