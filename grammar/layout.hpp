// The first pass over a feed file: which bytes make up which statement, and which statements stand in which block. It
// knows strings, comments, brackets and braces, nothing else. In: a source and the words that begin statements. Out:
// stretches of text for the second pass (build_tree.hpp), each safe to read: its brackets match and are at most 64
// deep.
#pragma once

#include <cstdint>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "grammar/diagnostic.hpp"

namespace wattfall::layout {

inline constexpr std::size_t longest_file = 1U << 20U;
inline constexpr std::size_t longest_line = 64U << 10U;
inline constexpr std::size_t most_levels = 64;

/// The words that may begin a statement. The views are into the vocabulary and the source, which must outlive this.
struct Words {
  std::unordered_set<std::string_view> keywords;  ///< `set`, `sweep`, ...
  std::unordered_set<std::string_view> kinds;     ///< kinds of parts, and boxes of this file
  /// A word that may begin a statement.
  bool contains(std::string_view word) const { return keywords.contains(word) || kinds.contains(word); }
};

/// One statement, or the header of a block.
struct Stretch {
  std::uint32_t begin = 0;  ///< its first character
  std::uint32_t end = 0;    ///< past its last one, without trailing blanks and comments, and without the `{`
  std::uint32_t brace = 0;  ///< where the `{` stands, if `is_block`
  bool is_block = false;
  bool broken = false;    ///< already complained of: not to be read
  bool unclosed = false;  ///< a block whose `}` is missing: what stands in it may belong outside
  std::vector<Stretch> body;
};

/// Splits a text. Cost: linear in it.
std::vector<Stretch> split(const Source& source, const Words& words, Diagnostics& diagnostics);

/// The names of the boxes that the text defines, for `Words::kinds`.
void add_box_names(std::string_view text, std::unordered_set<std::string_view>& names);

/// Past the string, comment or single character at `at`: the step by which a statement that `split` found whole is
/// walked.
std::size_t past_token(std::string_view text, std::size_t at);

/// Whether the quote at `at` stands for inches (`7/8"`): one straight after a digit or `"` cannot begin a string.
bool is_inch_mark(std::string_view text, std::size_t at);

}  // namespace wattfall::layout
