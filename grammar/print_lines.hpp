// From the tokens of statements to lines: columns within a group of parts, and breaks where a line would grow too long.
// Private to the printer.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "grammar/syntax.hpp"
#include "layout.hpp"
#include "print_tokens.hpp"

namespace wattfall::print {

inline constexpr std::size_t widest_line = 110;   ///< in characters, comments at a line's end not counted
inline constexpr std::size_t block_step = 2;      ///< blanks, for what stands in a block
inline constexpr std::size_t continued_step = 4;  ///< blanks, for a statement's further lines

struct Line {
  std::string text;
  std::string comment = {};  ///< at its end; empty: none
};

/// Pads the tokens of parts that stand one below the other, so that kinds, names, places and colons form columns.
void align_columns(const std::vector<std::vector<Token>*>& parts);

/// The statement's lines, the first `indent` blanks in; `tail` (` {`) stands at the end of the last. None where a line
/// after the first would begin with a statement's word, which would end the statement there.
std::optional<std::vector<Line>> break_into_lines(const std::vector<Token>& tokens, std::size_t indent,
                                                  std::string_view tail, const layout::Words& words);

}  // namespace wattfall::print
