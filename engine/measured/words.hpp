// The lowest layer of reading: a text as lines without comments, lines as words, words as numbers, and the list of
// mistakes that all layers above add to. Private to the room.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grammar/diagnostic.hpp"

namespace wattfall::measured {

/// A line that has more than blanks and comments.
struct Line {
  int number = 0;           ///< from 1
  std::uint32_t begin = 0;  ///< byte offset of `text`
  std::string_view text;    ///< without comment and outer blanks, never empty
};

struct Word {
  std::string_view text;
  std::uint32_t begin = 0;  ///< byte offset
};

/// Everything found wrong, in the order found; after `most` it says so once and takes no more.
class Mistakes {
 public:
  explicit Mistakes(const Source& source) : source_(&source) {}

  bool none() const { return found_.empty(); }
  bool has(std::string_view code) const;
  bool full() const { return found_.size() > most; }
  void add(std::string code, Span span, std::string text, std::string expected = "", std::string hint = "");
  void note(Span span, std::string text);  ///< a second place, for the mistake added last
  Diagnostics take() { return std::move(found_); }

  Span span(const Word& word) const;
  Span span(const Line& line) const;
  Span span(const Word& first, const Word& last) const;  ///< both and all between
  Span start() const { return {source_, 0, 0}; }

 private:
  static constexpr std::size_t most = 10;
  const Source* source_;
  Diagnostics found_;
};

/// The lines of a text in order; line ends LF or CRLF, a byte order mark of UTF-8 is passed over. Cost O(bytes).
std::vector<Line> lines_of(std::string_view text);

/// The words of a line from its byte `from` on, into `words` (cleared first).
void split(const Line& line, std::vector<Word>& words, std::size_t from = 0);

/// A word as a finite number, or a mistake that underlines it.
std::optional<double> read_number(const Word& word, Mistakes& mistakes);

/// ASCII lower case.
std::string lower(std::string_view text);

/// Between backquotes and cut to a length that fits a sentence.
std::string quoted(std::string_view text);

/// "1 value", "2 values".
std::string counted(std::size_t count, const char* what);

}  // namespace wattfall::measured
