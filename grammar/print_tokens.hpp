// The tokens of one statement as they are printed: the user's own letters, and which of them stand together without a
// blank. Private to the printer.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "grammar/syntax.hpp"

namespace wattfall::print {

struct Token {
  enum class Kind { word, value, sign, colon, comma, open, close, comment };
  Kind kind = Kind::word;
  std::string text;
  std::size_t width = 0;     ///< in characters
  std::size_t pad = 0;       ///< blanks before it, beyond the one that stands between tokens: for columns
  int depth = 0;             ///< brackets around it; an opening and a closing one count as outside
  bool glued_left = false;   ///< no blank before it
  bool glued_right = false;  ///< no blank after it
  bool new_line = false;     ///< the text has a line end before it
};

/// The characters (UTF-8 code points) of a text.
std::size_t characters(std::string_view text);

/// The tokens of a statement's header, comments among them; without the `{`.
std::vector<Token> tokens_of(const syntax::Statement& statement);

/// Blanks between two neighbours on a line.
inline std::size_t blanks_between(const Token& left, const Token& right) {
  return (left.glued_right || right.glued_left ? 0 : 1) + right.pad;
}

}  // namespace wattfall::print
