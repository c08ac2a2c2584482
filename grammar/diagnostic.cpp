// Puts diagnostics in order and shows them: the sentence, the line, the span underlined, what was expected, what was
// most likely meant. In: Diagnostic values. Out: text for a terminal; no stage prints by itself.
#include "grammar/diagnostic.hpp"

#include <algorithm>
#include <string_view>

namespace wattfall {
namespace {

constexpr std::size_t window = 100;  ///< columns of a source line that are shown at most

struct Paint {
  bool on;
  std::string operator()(std::string_view code, std::string_view text) const {
    if (!on) return std::string(text);
    std::string result = "\x1b[";
    result.append(code).append("m").append(text).append("\x1b[0m");
    return result;
  }
};

struct Glyphs {
  std::vector<std::string> shown;  ///< one entry a column
  std::vector<std::size_t> start;  ///< the byte at which each begins
};

std::size_t length_of_character(std::string_view text, std::size_t at) {
  std::size_t length = 1;
  while (at + length < text.size() && (static_cast<unsigned char>(text[at + length]) & 0xC0U) == 0x80U) ++length;
  return length;
}

/// Characters that would move the cursor, or hide what stands there, are shown as `?`; a tab as one blank, so that the
/// columns below it stay true whatever the terminal's tab stops are.
std::string printable(std::string_view character) {
  const auto first = static_cast<unsigned char>(character.front());
  if (character == "\t") return " ";
  if (character.size() == 1) return first < 0x20 || first >= 0x7F ? "?" : std::string(character);
  if (first < 0xC2 || first > 0xF4 || character.size() > 4) return "?";
  const bool upper_control = first == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0;
  const bool direction = character >= "\u202A" && character <= "\u202E";
  const bool isolate = character >= "\u2066" && character <= "\u2069";
  return upper_control || direction || isolate ? "?" : std::string(character);
}

Glyphs split(std::string_view line) {
  Glyphs glyphs;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t length = length_of_character(line, at);
    glyphs.shown.push_back(printable(line.substr(at, length)));
    glyphs.start.push_back(at);
    at += length;
  }
  return glyphs;
}

std::string right_aligned(int number) {
  const std::string digits = std::to_string(number);
  return std::string(digits.size() < 4 ? 4 - digits.size() : 0, ' ') + digits;
}

/// The line of a span and the marks below it.
std::string excerpt(Span span, const Paint& paint) {
  const Position from = span.source->position(span.begin);
  const std::string_view line = span.source->line(from.line);
  const Glyphs glyphs = split(line);
  const auto first = static_cast<std::size_t>(from.column - 1);
  const std::size_t bytes = span.end > span.begin ? span.end - span.begin : 0;
  const std::size_t begin_byte = first < glyphs.start.size() ? glyphs.start[first] : line.size();
  const auto past = std::lower_bound(glyphs.start.begin(), glyphs.start.end(), begin_byte + bytes);
  const std::size_t last = std::max(first + 1, static_cast<std::size_t>(past - glyphs.start.begin()));

  std::size_t left = 0;
  if (glyphs.shown.size() > window && last > window) left = first > window / 3 ? first - window / 3 : 0;
  const std::size_t right = std::min(glyphs.shown.size(), left + window);
  std::string text = left > 0 ? "..." : "";
  for (std::size_t i = left; i < right; ++i) text += glyphs.shown[i];
  if (right < glyphs.shown.size()) text += "...";

  const std::size_t indent = first - left + (left > 0 ? 3 : 0);
  const std::size_t marks = std::max<std::size_t>(1, std::min(last, std::max(right, first + 1)) - first);
  const std::string number = right_aligned(from.line);
  std::string result = number + " | " + text + "\n";
  result += std::string(number.size(), ' ') + " | " + std::string(indent, ' ');
  std::string underline(marks, '~');
  underline[0] = '^';
  return result + paint("1;32", underline) + "\n";
}

std::string head(Span span, std::string_view label, std::string_view color, const std::string& text,
                 const Paint& paint) {
  std::string result;
  if (span.source != nullptr) {
    const Position at = span.source->position(span.begin);
    result = span.source->name() + ":" + std::to_string(at.line) + ":" + std::to_string(at.column) + ": ";
  }
  return paint("1", result) + paint(color, label) + " " + text;
}

}  // namespace

int exit_code(const Diagnostics& diagnostics) {
  int code = 0;
  for (const Diagnostic& diagnostic : diagnostics) {
    switch (diagnostic.fault) {
      case Fault::usage:
        code = std::max(code, 2);
        break;
      case Fault::design:
        code = std::max(code, 3);
        break;
      case Fault::numeric:
        code = std::max(code, 4);
        break;
      case Fault::file:
        code = std::max(code, 5);
        break;
    }
  }
  return code;
}

void sort_by_place(Diagnostics& diagnostics) {
  std::vector<const Source*> order;
  for (const Diagnostic& diagnostic : diagnostics) {
    if (std::find(order.begin(), order.end(), diagnostic.span.source) == order.end()) {
      order.push_back(diagnostic.span.source);
    }
  }
  const auto rank = [&order](const Diagnostic& d) { return std::find(order.begin(), order.end(), d.span.source); };
  std::stable_sort(diagnostics.begin(), diagnostics.end(), [&rank](const Diagnostic& a, const Diagnostic& b) {
    if (a.span.source != b.span.source) return rank(a) < rank(b);
    return a.span.begin != b.span.begin ? a.span.begin < b.span.begin : a.span.end < b.span.end;
  });
  const auto same = [](const Diagnostic& a, const Diagnostic& b) {
    return a.code == b.code && a.text == b.text && a.span.source == b.span.source && a.span.begin == b.span.begin &&
           a.span.end == b.span.end;
  };
  diagnostics.erase(std::unique(diagnostics.begin(), diagnostics.end(), same), diagnostics.end());
}

std::string render(const Diagnostic& diagnostic, bool color) {
  const Paint paint{color};
  std::string result = head(diagnostic.span, "error:", "1;31", diagnostic.text, paint);
  result += " [" + diagnostic.code + "]\n";
  if (diagnostic.span.source != nullptr) result += excerpt(diagnostic.span, paint);
  if (!diagnostic.expected.empty()) result += "  expected: " + diagnostic.expected + "\n";
  if (!diagnostic.hint.empty()) result += "  did you mean: " + diagnostic.hint + "\n";
  if (!diagnostic.advice.empty()) result += "  try: " + diagnostic.advice + "\n";
  for (const Diagnostic::Note& note : diagnostic.notes) {
    result += head(note.span, "note:", "1;36", note.text, paint) + "\n";
    if (note.span.source != nullptr) result += excerpt(note.span, paint);
  }
  return result;
}

std::string render(const Diagnostics& diagnostics, bool color) {
  std::string result;
  for (const Diagnostic& diagnostic : diagnostics) result += render(diagnostic, color);
  return result;
}

}  // namespace wattfall
