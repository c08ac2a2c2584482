// Brackets, commas, escapes and numbers of JSON. Text that is no valid UTF-8 (a file name may be anything) gets U+FFFD
// in place of each broken byte, so that the document is valid whatever the names are.
#include "json_text.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace wattfall::report {
namespace {

/// Long arrays are broken after so many numbers: lines stay readable, and editors do not choke.
constexpr std::size_t items_a_line = 12;

/// Bytes of the valid UTF-8 sequence that `text` begins with; 0 where it is broken.
std::size_t sequence_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const bool overlong = first == 0xE0 && byte(1) < 0xA0;
    const bool surrogate = first == 0xED && byte(1) > 0x9F;
    return follows(1) && follows(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool overlong = first == 0xF0 && byte(1) < 0x90;
    const bool beyond = first == 0xF4 && byte(1) > 0x8F;
    return follows(1) && follows(2) && follows(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

void append_escape(std::string& out, unsigned char character) {
  constexpr std::string_view digits = "0123456789abcdef";
  switch (character) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\r':
      out += "\\r";
      return;
    case '\t':
      out += "\\t";
      return;
    default:
      break;
  }
  out += "\\u00";
  out += digits[character >> 4U];
  out += digits[character & 15U];
}

bool needs_escape(unsigned char character) {
  return character < 0x20 || character == 0x7F || character == '"' || character == '\\';
}

}  // namespace

void append_shortest(std::string& text, double number) {
  std::array<char, 40> digits;
  const double size = std::abs(number);
  char* const first = digits.data();
  char* const last = first + digits.size();
  const auto done = size >= 1.0 && size < 1e15 ? std::to_chars(first, last, number, std::chars_format::fixed)
                                               : std::to_chars(first, last, number);
  text.append(first, done.ptr);
}

void JsonText::open(char bracket, Layout layout) {
  begin_value();
  if (!levels_.empty() && levels_.back().layout == Layout::one_line) layout = Layout::one_line;
  text_ += bracket;
  levels_.push_back({bracket == '{' ? '}' : ']', layout});
}

void JsonText::close() {
  const Level level = levels_.back();
  levels_.pop_back();
  if (level.layout != Layout::one_line && level.members > 0) new_line();
  text_ += level.closing;
}

void JsonText::key(std::string_view name) {
  separate();
  append_string(name);
  text_ += ": ";
  after_key_ = true;
}

void JsonText::null() {
  word("null");
}

void JsonText::value(std::string_view text) {
  begin_value();
  append_string(text);
}

void JsonText::value(double number) {
  begin_value();
  append_number(number);
}

void JsonText::value(std::complex<double> number) {
  if (!std::isfinite(number.real()) || !std::isfinite(number.imag())) return null();
  begin_value();
  text_ += '[';
  append_number(number.real());
  text_ += ", ";
  append_number(number.imag());
  text_ += ']';
}

void JsonText::value(const std::vector<bool>& flags) {
  open('[', flags.size() > items_a_line ? Layout::filled : Layout::one_line);
  for (const bool flag : flags) value(flag);
  close();
}

void JsonText::sentences(std::string_view name, const std::vector<std::string>& all) {
  key(name);
  open('[');
  for (const std::string& sentence : all) value(sentence);
  close();
}

std::string JsonText::take() {
  text_ += '\n';
  return std::move(text_);
}

void JsonText::begin_value() {
  if (after_key_) {
    after_key_ = false;
  } else {
    separate();
  }
}

void JsonText::separate() {
  if (levels_.empty()) return;
  Level& level = levels_.back();
  if (level.members > 0) text_ += ',';
  const bool fills = level.layout == Layout::filled && level.members % items_a_line == 0;
  const bool breaks = level.layout == Layout::lines || fills;
  if (breaks) {
    new_line();
  } else if (level.members > 0) {
    text_ += ' ';
  }
  ++level.members;
}

void JsonText::new_line() {
  text_ += '\n';
  text_.append(2 * levels_.size(), ' ');
}

void JsonText::word(std::string_view text) {
  begin_value();
  text_ += text;
}

void JsonText::append_number(double number) {
  if (std::isfinite(number)) {
    append_shortest(text_, number);
  } else {
    text_ += "null";
  }
}

void JsonText::append_string(std::string_view text) {
  text_ += '"';
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (length == 0) {
      text_ += "\xEF\xBF\xBD";
    } else if (length == 1 && needs_escape(static_cast<unsigned char>(text[0]))) {
      append_escape(text_, static_cast<unsigned char>(text[0]));
    } else {
      text_ += text.substr(0, length);
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  text_ += '"';
}

template <class Item>
void JsonText::items(std::span<const Item> all) {
  open('[', all.size() > items_a_line ? Layout::filled : Layout::one_line);
  for (const Item& item : all) value(item);
  close();
}

template void JsonText::items(std::span<const double>);
template void JsonText::items(std::span<const std::complex<double>>);
template void JsonText::items(std::span<const std::string>);
template void JsonText::items(std::span<const std::size_t>);

}  // namespace wattfall::report
