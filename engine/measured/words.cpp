// Lines, words, numbers and the list of mistakes. Nothing here knows what a Touchstone file is, except that `!` begins
// a comment.
#include "words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace wattfall::measured {
namespace {

constexpr std::string_view blanks = " \t\r\v\f";
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

enum class Reading { number, word, too_large };

Reading read_double(std::string_view text, double& value) {
  const bool plus = text.size() > 1 && text[0] == '+' && text[1] != '-';
  const char* end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data() + (plus ? 1 : 0), end, value);
  if (error == std::errc::invalid_argument || stop != end) return Reading::word;
  if (error == std::errc{}) return std::isfinite(value) ? Reading::number : Reading::too_large;
  const bool tiny = text.find("e-") != text.npos || text.find("E-") != text.npos;
  if (!tiny) return Reading::too_large;
  value = 0;
  return Reading::number;
}

/// What was meant by a word with one comma: `0,5` is 0.5, `0.5,` is 0.5.
std::string number_hint(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == text.npos || comma == 0) return "";
  std::string meant(text);
  if (comma + 1 == text.size()) {
    meant.pop_back();
  } else {
    meant[comma] = '.';
  }
  double value = 0;
  return read_double(meant, value) == Reading::number ? meant : "";
}

Line trimmed(std::string_view text, std::size_t begin, std::size_t end, int number) {
  end = begin + std::min(end - begin, text.substr(begin, end - begin).find('!'));
  while (begin < end && blanks.find(text[begin]) != blanks.npos) ++begin;
  while (end > begin && blanks.find(text[end - 1]) != blanks.npos) --end;
  return {number, static_cast<std::uint32_t>(begin), text.substr(begin, end - begin)};
}

}  // namespace

bool Mistakes::has(std::string_view code) const {
  return std::any_of(found_.begin(), found_.end(), [code](const Diagnostic& one) { return one.code == code; });
}

void Mistakes::add(std::string code, Span span, std::string text, std::string expected, std::string hint) {
  if (full()) return;
  if (found_.size() == most) {
    code = "touchstone-too-many-mistakes";
    text = "reading stopped here, after " + std::to_string(most) + " mistakes";
    expected = hint = "";
  }
  found_.push_back({std::move(code), span, std::move(text), std::move(expected), std::move(hint), {}, Fault::file});
}

void Mistakes::note(Span span, std::string text) {
  if (!found_.empty() && !full()) found_.back().notes.push_back({span, std::move(text)});
}

Span Mistakes::span(const Word& word) const {
  return span(word, word);
}

Span Mistakes::span(const Line& line) const {
  return {source_, line.begin, line.begin + static_cast<std::uint32_t>(line.text.size())};
}

Span Mistakes::span(const Word& first, const Word& last) const {
  return {source_, first.begin, last.begin + static_cast<std::uint32_t>(last.text.size())};
}

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  std::size_t begin = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
  for (int number = 1; begin < text.size(); ++number) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const Line line = trimmed(text, begin, end, number);
    if (!line.text.empty()) lines.push_back(line);
    begin = end + 1;
  }
  return lines;
}

void split(const Line& line, std::vector<Word>& words, std::size_t from) {
  words.clear();
  while ((from = line.text.find_first_not_of(blanks, from)) != line.text.npos) {
    const std::size_t end = std::min(line.text.find_first_of(blanks, from), line.text.size());
    words.push_back({line.text.substr(from, end - from), line.begin + static_cast<std::uint32_t>(from)});
    from = end;
  }
}

std::optional<double> read_number(const Word& word, Mistakes& mistakes) {
  double value = 0;
  const Reading reading = read_double(word.text, value);
  if (reading == Reading::number) return value;
  if (reading == Reading::word) {
    mistakes.add("touchstone-not-a-number", mistakes.span(word), quoted(word.text) + " is not a number",
                 "a number, with a decimal point; blanks between values", number_hint(word.text));
  } else {
    mistakes.add("touchstone-not-finite", mistakes.span(word), quoted(word.text) + " is not a finite number",
                 "a finite number");
  }
  return std::nullopt;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::size_t end = std::min(longest, text.size());
  if (end < text.size()) {
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  }
  std::string result(1, '`');
  result.append(text.substr(0, end)).append(end < text.size() ? "...`" : "`");
  return result;
}

std::string counted(std::size_t count, const char* what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

}  // namespace wattfall::measured
