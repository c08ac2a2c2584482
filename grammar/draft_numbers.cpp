// Numbers with their units: reads the unit, applies it, and says what is wrong with either. In: spans of digits and
// signs. Out: number terms.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>
#include <vector>

#include "draft.hpp"
#include "grammar/nearest_name.hpp"
#include "letters.hpp"

namespace wattfall {
namespace {

using syntax::Term;

/// Words that may stand after a number that has no unit, or after its unit, in the same phrase.
constexpr std::array<std::string_view, 18> follow_words{"to",        "of",      "at",   "over",    "by",     "points",
                                                        "for",       "from",    "step", "below",   "above",  "into",
                                                        "reference", "keeping", "open", "shorted", "normal", "and"};

/// The letter of a unit's symbol at the start of `text`, or 0: letters, and the signs of ohm, micro and degree.
std::size_t unit_letter(std::string_view text) {
  if (text.empty()) return 0;
  if (is_word(text[0]) || text[0] == '%') return 1;
  for (const std::string_view sign : {"\u00B5", "\u03BC", "\u03A9", "\u00B0"}) {
    if (text.starts_with(sign)) return 2;
  }
  return text.starts_with("\u2126") ? 3 : 0;
}

std::size_t unit_word(std::string_view text) {
  if (text.starts_with('%')) return 1;
  if (text.starts_with("\u00B0")) return 2;
  if (text.empty() || is_digit(text[0]) || text[0] == '_') return 0;
  std::size_t length = 0;
  for (std::size_t step = unit_letter(text); step > 0 && text[length] != '%'; step = unit_letter(text.substr(length))) {
    length += step;
    if (length >= text.size()) break;
  }
  return length;
}

/// The unit that a letter stands for where it is written for the decimal point, as on the body of a part: 4R7, 4k7,
/// 4p7.
std::string_view unit_for_mark(char mark) {
  switch (mark) {
    case 'R':
      return "ohm";
    case 'k':
    case 'K':
      return "kohm";
    case 'M':
      return "Mohm";
    case 'p':
      return "pF";
    case 'n':
      return "nF";
    case 'u':
      return "uF";
    default:
      return {};
  }
}

/// `/100m` after a unit: a slash, digits, letters, no blanks.
std::size_t compound_tail(std::string_view text) {
  if (!text.starts_with('/')) return 0;
  std::size_t at = 1;
  while (at < text.size() && is_digit(text[at])) ++at;
  const std::size_t letters = at;
  while (at < text.size() && is_letter(text[at])) ++at;
  const bool ends = at >= text.size() || !is_word(text[at]);
  return at > letters && ends ? at : 0;
}

/// `dB/100M`: a compound unit but for the size of its letters. (`dB/M` may be a division by a quantity called M.)
bool is_misspelled_compound(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash + 1 >= text.size() || !is_digit(text[slash + 1])) return false;
  const std::string meant = suggest_unit(text);
  return meant.size() == text.size() && meant.find('/') == slash;
}

std::string likely_follow_word(std::string_view found) {
  return nearest_name(found, std::vector<std::string>(follow_words.begin(), follow_words.end()));
}

}  // namespace

void Draft::check_decimal_comma(Span number) const {
  const std::uint32_t comma = number.end;
  if (frames_.back().has_items || comma + 1 >= end_ || text_[comma] != ',' || !is_digit(text_[comma + 1])) return;
  std::uint32_t end = comma + 1;
  while (end < end_ && is_digit(text_[end])) ++end;
  const std::string whole(number.text());
  const std::string part(text_.substr(comma + 1, end - comma - 1));
  std::string hint = whole + "." + part;
  if (part.size() == 3 && whole != "0") hint = whole + part + ", or " + hint;
  mistake("decimal-comma", {source_, number.begin, end}, "a decimal point is written, not a comma",
          "a number such as 1.5", whole.find('.') == std::string::npos ? hint : whole + part);
}

void Draft::check_number_end(Span number) const {
  const std::uint32_t at = number.end;
  if (at >= end_) return;
  const bool bare_exponent = (text_[at] == 'e' || text_[at] == 'E') && (at + 1 >= end_ || !is_letter(text_[at + 1]));
  if (text_[at] != '.' && !bare_exponent) return;
  std::uint32_t end = at + 1;
  if (bare_exponent && end < end_ && (text_[end] == '+' || text_[end] == '-')) ++end;
  while (end < end_ && (is_word(text_[end]) || text_[end] == '.')) ++end;
  mistake("bad-number", {source_, number.begin, end},
          quoted(text_.substr(number.begin, end - number.begin)) + " is no number",
          bare_exponent ? "digits after the exponent's `e`" : "digits on both sides of one decimal point");
}

void Draft::real_part(Span span) {
  check_number_end(span);
  check_decimal_comma(span);
  real_ = span;
  before_ = last_;
  imaginary_ = {};
  unit_.reset();
  unit_text_ = {};
  last_ = span.end;
}

void Draft::imaginary_part(Span span) {
  check_number_end(span);
  check_decimal_comma(span);
  imaginary_ = span;
  unit_.reset();
  unit_text_ = {};
  last_ = span.end;
}

std::size_t Draft::read_unit(const char* place) {
  const std::uint32_t from = offset(place);
  const std::uint32_t at = skip_blanks(from);
  const std::string_view ahead = rest(at);
  const std::size_t length = unit_word(ahead);
  if (length == 0) {
    if (at == from && !ahead.empty() && (ahead[0] == '"' || ahead[0] == '\'')) complain_of_unit(at, true);
    return 0;
  }
  const std::size_t whole = length + compound_tail(ahead.substr(length));
  for (const std::size_t size : {whole, length}) {
    unit_ = find_unit(ahead.substr(0, size));
    if (!unit_) continue;
    if (size < whole && is_misspelled_compound(ahead.substr(0, whole))) complain_of_unit(at, at == from);
    unit_text_ = ahead.substr(0, size);
    last_ = at + static_cast<std::uint32_t>(size);
    return last_ - from;
  }
  if (at == from || !contains(follow_words, ahead.substr(0, length))) complain_of_unit(at, at == from);
  return 0;
}

/// What is no misspelled unit at all: `4p7` with the unit for a decimal point, `2 pi` and `2 sqrt(2)` with no operator.
void Draft::complain_of_shorthand(std::uint32_t at, std::string_view word, bool attached) const {
  const Span number = imaginary_.source != nullptr ? imaginary_ : real_;
  const auto end = at + static_cast<std::uint32_t>(word.size());
  const bool digits = word.size() > 1 && std::all_of(word.begin() + 1, word.end(), is_digit);
  const std::string_view meant = digits ? unit_for_mark(word[0]) : std::string_view{};
  if (attached && !meant.empty()) {
    std::string hint(number.text());
    hint.append(".").append(word.substr(1)).append(" ").append(meant);
    mistake("unknown-unit", {source_, number.begin, end}, "a unit stands behind its number, not in it",
            "a decimal point, and the unit at the end", std::move(hint));
  }
  const std::uint32_t next = skip_blanks(end);
  if (word != "pi" && word != "frequency" && (next >= end_ || text_[next] != '(')) return;
  mistake("missing-operator", {source_, at, end}, quoted(word) + " follows a number with no operator between them",
          "an operator", std::string("* ").append(word));
}

void Draft::complain_of_unit(std::uint32_t at, bool attached) const {
  const std::string_view ahead = rest(at);
  std::size_t length = std::max<std::size_t>(unit_word(ahead), 1);
  const std::string_view word = ahead.substr(0, length);
  const bool imaginary = word == "j" || (word == "i" && attached);
  if (imaginary && imaginary_.source == nullptr) {
    const Span where{source_, real_.begin, at + 1};
    mistake("imaginary-suffix", where, "`j` stands before its number", "an imaginary part such as j208",
            "j" + std::string(real_.text()));
  }
  if (word[0] == 'j' && length > 1 && is_digit(word[1])) {
    const Span where{source_, at, at + static_cast<std::uint32_t>(length)};
    mistake("missing-sign", where, "a sign is missing before the imaginary part", "`+` or `-`",
            "+ " + std::string(word));
  }
  complain_of_shorthand(at, word, attached);
  const std::size_t whole = length + compound_tail(ahead.substr(length));
  if (whole > length && !suggest_unit(ahead.substr(0, whole)).empty()) length = whole;
  const std::string_view wrong = ahead.substr(0, length);
  std::string meant = suggest_unit(wrong);
  std::string wanted_here =
      attached ? "a unit, such as pF, uH, ohm or MHz" : "a unit, an operator, or a comma before the next property";
  if (const std::optional<Unit> unit = find_unit(meant)) {
    const Span number = imaginary_.source != nullptr ? imaginary_ : real_;
    wanted_here = describe(unit->dim) + ", such as " + std::string(number.text()) + " " + meant;
  }
  if (meant.empty() && !attached && wrong.size() > 1) meant = likely_follow_word(wrong);
  const std::uint32_t next = skip_blanks(at + static_cast<std::uint32_t>(length));
  // `Q 1500 limit 1 kV`: a property, and the comma before it was forgotten.
  if (meant.empty() && !attached && pieces.in_properties && next < end_ && (is_word(text_[next]) || text_[next] == '('))
    meant = std::string(", ").append(wrong);
  mistake("unknown-unit", {source_, at, at + static_cast<std::uint32_t>(length)}, quoted(wrong) + " is not a unit",
          std::move(wanted_here), std::move(meant));
}

/// `5 0hm`: the digit where the unit has its letter.
void Draft::check_zero_for_o(Span token) const {
  std::string meant(token.text());
  std::replace(meant.begin(), meant.end(), '0', 'o');
  if (unit_ || meant == token.text()) return;
  if (!find_unit(meant)) meant = suggest_unit(meant);
  const std::optional<Unit> unit = find_unit(meant);
  if (!unit || std::none_of(token.text().begin(), token.text().end(), is_letter)) return;
  mistake("unknown-unit", token, quoted(token.text()) + " is not a unit: it has a zero for the letter",
          describe(unit->dim) + ", such as " + std::string(real_.text()) + " " + meant, meant);
}

/// In a table's list a value follows its frequency behind a colon; everything else is parted by commas.
const char* Draft::missing_sign() const {
  const bool table = frames_.size() > 1 && pieces.in_properties && unit_ && unit_->dim == dimension::frequency &&
                     text_[frames_.back().begin] == '[';
  return table ? ":" : ",";
}

/// What a number's phrase cannot go on with: the comma before it was forgotten.
void Draft::check_after_number(std::uint32_t from) const {
  const std::uint32_t at = skip_blanks(from);
  if (at >= end_) return;
  const char c = text_[at];
  if (!is_word(c) && c != '"' && c != '(' && c != '[') return;
  const Span token = token_at(at);
  if (is_letter(c) && contains(follow_words, token.text())) return;
  check_zero_for_o(token);
  std::string hint = is_letter(c) ? likely_follow_word(token.text()) : std::string{};
  if (token.text() == "per") hint = "/";
  if (token.text() == "most" || token.text() == "least") hint = std::string("for ").append(token.text());
  const std::string_view statement = text_.substr(begin_, end_ - begin_);
  const bool properties = pieces.in_properties || statement.starts_with("set ") || statement.starts_with("change ") ||
                          statement.starts_with("box ");
  if (hint.empty() && (!is_letter(c) || properties))
    hint = std::string(missing_sign()).append(" ").append(token.text().substr(0, 20));
  // `24 m RG-213`: a length, and a word with a dash and a digit, as cables are called.
  const std::uint32_t dash = token.end;
  const bool cable =
      unit_ && unit_->dim == dimension::length && dash + 1 < end_ && text_[dash] == '-' && is_digit(text_[dash + 1]);
  if (is_letter(c) && cable)
    hint = std::string("of ").append(token.text()).append("-").append(token_at(dash + 1).text());
  // `1 000 pF`: the blank groups digits.
  const std::string_view thousand = token.text().substr(c == '_' ? 1 : 0);
  const bool group = thousand.size() == 3 && std::all_of(thousand.begin(), thousand.end(), is_digit);
  if (group && !unit_ && real_.end - real_.begin <= 3) hint = std::string(real_.text()).append(thousand);
  mistake("missing-comma", token, quoted(token.text()) + " follows a value with nothing between them",
          "a comma, or an operator", std::move(hint));
}

/// `digits` with its power of ten raised by `shift`, for from_chars.
std::string_view Draft::shifted(std::string_view digits, int shift, ShiftedDigits& room) const {
  const std::size_t e = std::min(digits.find_first_of("eE"), digits.size());
  int exponent = 0;
  if (e < digits.size()) {
    const std::size_t skip = digits[e + 1] == '+' ? 2 : 1;
    const auto read = std::from_chars(digits.data() + e + skip, digits.data() + digits.size(), exponent);
    constexpr int beyond_all = 1'000'000;
    if (read.ec == std::errc::result_out_of_range) exponent = digits[e + 1] == '-' ? -beyond_all : beyond_all;
    exponent = std::clamp(exponent, -beyond_all, beyond_all);
  }
  constexpr std::size_t most_of_exponent = 12;
  char* out = room.near.data();
  if (e + most_of_exponent > room.near.size()) {
    room.far.resize(e + most_of_exponent);
    out = room.far.data();
  }
  char* end = std::copy_n(digits.data(), e, out);
  *end++ = 'e';
  end = std::to_chars(end, out + e + most_of_exponent, exponent + shift).ptr;
  return {out, static_cast<std::size_t>(end - out)};
}

/// A decimal fraction times a power of ten is read anew with that power as its exponent, so that 0.1 uH is 100 nH to
/// the last bit.
double Draft::scaled(std::string_view digits) const {
  const bool decimal = unit_ && unit_->power_of_ten != 0;
  ShiftedDigits room;
  const std::string_view text = decimal ? shifted(digits, unit_->power_of_ten, room) : digits;
  double value = 0.0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec == std::errc::result_out_of_range || !std::isfinite(value)) {
    const auto begin = static_cast<std::uint32_t>(digits.data() - text_.data());
    mistake("bad-number", {source_, begin, begin + static_cast<std::uint32_t>(digits.size())},
            "this number is too large or too small", "a number between 1e-300 and 1e300");
  }
  return decimal || !unit_ ? value : value * unit_->scale;
}

void Draft::finish_number(Span span) {
  Term term = make_term(Term::Kind::number, {source_, span.begin, last_}, unit_text_);
  double real = scaled(real_.text());
  double imaginary = 0.0;
  if (imaginary_.source != nullptr) {
    const Span unsigned_span = term.span;
    settle_sign_of_impedance(term.span);
    if (term.span.begin != unsigned_span.begin && text_[term.span.begin] == '-') real = -real;
    imaginary = scaled(imaginary_.text().substr(1));
    if (imaginary_sign_ == '-') imaginary = -imaginary;
  }
  if (unit_ && unit_->is_dbm) {
    if (imaginary_.source != nullptr) mistake("unknown-unit", term.span, "a power in dBm has no imaginary part", "ohm");
    real = 1e-3 * std::pow(10.0, sign_of_power(term.span) * real / 10.0);
  }
  term.quantity = {{real, imaginary}, unit_ ? unit_->dim : dimension::number};
  check_after_number(last_);
  push(term, 1);
}

/// `-10 dBm` is a tenth of a milliwatt: the sign is the literal's own, and may not wait until it is watts.
double Draft::sign_of_power(Span& span) {
  if (pending_.size() == factors_.back() || pending_.back().text() == "^") return 1.0;
  const Span sign = pending_.back();
  pending_.pop_back();
  span.begin = sign.begin;
  return sign.text() == "-" ? -1.0 : 1.0;
}

/// `-28+j208 ohm` is one literal, sign and all. Where another operator binds to it, a reader cannot tell whether it
/// means the resistance alone or the whole: brackets must say so.
void Draft::settle_sign_of_impedance(Span& span) {
  const std::size_t signs = pending_.size() - factors_.back();
  std::uint32_t begin = span.begin;
  bool clear = signs == 0;
  const bool operated = !operators_.empty() && operators_.back().begin >= before_;
  if (signs == 1 && pending_.back().text() != "^") {
    begin = pending_.back().begin;
    clear = !operated;
  } else if (signs == 0) {
    clear = !operated || operators_.back().text() == "+";
  }
  const std::uint32_t after = skip_blanks(span.end);
  if (after < end_ && std::string_view("*/^").find(text_[after]) != std::string_view::npos) clear = false;
  if (!clear) {
    mistake("ambiguous-impedance", span,
            "it is not clear what the operator binds to: the real part, or all of the impedance",
            "brackets around the impedance", "(" + std::string(span.text()) + ")");
  }
  if (signs == 1) pending_.pop_back();
  span.begin = begin;
}

void Draft::finish_imaginary(Span span) {
  Term term = make_term(Term::Kind::number, {source_, span.begin, last_}, unit_text_);
  if (unit_ && unit_->is_dbm) mistake("unknown-unit", term.span, "a power in dBm has no imaginary part", "ohm");
  term.quantity = {{0.0, scaled(imaginary_.text().substr(1))}, unit_ ? unit_->dim : dimension::number};
  check_after_number(last_);
  push(term, 1);
}

}  // namespace wattfall
