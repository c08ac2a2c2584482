// A named text and places in it. Every node of the syntax tree, every part of a design and every diagnostic
// carries a Span, so that whatever is found wrong later can still be shown in the user's own letters.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace wattfall {

/// A place as people count it: both from 1; the column counts characters (UTF-8 code points), not bytes.
struct Position {
  int line = 1;
  int column = 1;
};

/// A text with the name it goes by (the path as given on the command line or in `include`, or "-").
/// Immutable; positions cost O(log lines).
class Source {
 public:
  Source(std::string name, std::string text);

  const std::string& name() const { return name_; }
  std::string_view text() const { return text_; }
  Position position(std::size_t offset) const;
  /// The line (from 1) without its line end; empty outside the text.
  std::string_view line(int number) const;

 private:
  std::string name_;
  std::string text_;
  std::vector<std::size_t> line_starts_;
};

using SourcePtr = std::shared_ptr<const Source>;

/// A half-open range of bytes [begin, end) of a source. `source` is null where there is no text to point at
/// (a command-line option, a plugin). Whoever keeps a Span keeps the SourcePtr alive too.
struct Span {
  const Source* source = nullptr;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  std::string_view text() const {
    return source == nullptr ? std::string_view{} : source->text().substr(begin, end - begin);
  }
  /// 1-based line of the first byte; 0 where there is no source.
  int line() const { return source == nullptr ? 0 : source->position(begin).line; }
};

/// The smallest span that holds both (of one source).
inline Span join(Span a, Span b) {
  if (a.source == nullptr) return b;
  if (b.source == nullptr) return a;
  return {a.source, a.begin < b.begin ? a.begin : b.begin, a.end > b.end ? a.end : b.end};
}

}  // namespace wattfall
