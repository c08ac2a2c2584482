// Puts terms together, and says what is wrong with single tokens. In: spans of matched text. Out: terms on a stack.
#include "draft.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

#include "grammar/nearest_name.hpp"

namespace wattfall {
namespace {

using syntax::Phrase;
using syntax::Term;
using Kind = syntax::Term::Kind;

/// Deeper trees than any real design has would overflow the stack of whoever walks them: a sum of 1000 terms is 1000
/// deep.
constexpr std::uint32_t deepest_tree = 1000;
/// Signs and carets before, and chained to, one operand.
constexpr std::size_t most_signs = 64;

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}
bool is_space(char c) {
  return is_blank(c) || c == '\r' || c == '\n';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_word(char c) {
  return is_letter(c) || is_digit(c) || c == '_';
}

/// Words that may stand after a number that has no unit, or after its unit, in the same phrase.
constexpr std::array<std::string_view, 23> follow_words{
    "to",     "of",    "at",    "over",       "by",        "points",  "for",    "from",
    "step",   "below", "above", "into",       "reference", "keeping", "open",   "shorted",
    "normal", "and",   "with",  "adjustable", "most",      "least",   "between"};

/// Words that a bracket after a blank does not turn into calls: `adjustable (a) to (b)`.
constexpr std::array<std::string_view, 18> phrase_words{"to",  "at",      "from",      "of",         "by",    "over",
                                                        "for", "into",    "reference", "below",      "above", "step",
                                                        "and", "keeping", "between",   "adjustable", "with",  "points"};
constexpr std::array<std::string_view, 2> more_phrase_words{"most", "least"};

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

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

std::string quoted(std::string_view text) {
  constexpr std::size_t most = 40;
  std::string result = "`";
  result.append(text.substr(0, most)).append(text.size() > most ? "...`" : "`");
  return result;
}

/// The plain character that a word processor or a web page has put a look-alike for.
std::string_view plain_for(std::string_view odd) {
  using Pair = std::pair<std::string_view, std::string_view>;
  static constexpr std::array<Pair, 20> table{{{"\u2212", "-"},  {"\u2013", "-"},  {"\u2014", "-"},  {"\u2010", "-"},
                                               {"\u2011", "-"},  {"\u00D7", "*"},  {"\u00B7", "*"},  {"\u22C5", "*"},
                                               {"\u2044", "/"},  {"\u00F7", "/"},  {"\u201C", "\""}, {"\u201D", "\""},
                                               {"\u201E", "\""}, {"\u00AB", "\""}, {"\u00BB", "\""}, {"\u2018", "\""},
                                               {"\u2019", "\""}, {"\u00A0", " "},  {"\u2009", " "},  {"\u202F", " "}}};
  for (const auto& [written, plain] : table) {
    if (written == odd) return plain;
  }
  return {};
}

std::vector<std::string> split_words(std::string_view text) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    words.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

Term make(Kind kind, Span span, std::string_view text) {
  Term term;
  term.kind = kind;
  term.span = span;
  term.text = text;
  return term;
}

}  // namespace

void Draft::start(std::uint32_t begin, std::uint32_t end) {
  begin_ = last_ = begin;
  end_ = end;
  pieces = Pieces{};
  terms_.clear();
  depths_.clear();
  factors_.clear();
  pending_.clear();
  operators_.clear();
  frames_.clear();
  frames_.push_back({});
}

// --- Places
// -------------------------------------------------------------------------------------------------------------

Span Draft::span(const char* begin, const char* end) const {
  return {source_, offset(begin), offset(end)};
}

std::uint32_t Draft::skip_blanks(std::uint32_t at) const {
  while (at < end_ && is_blank(text_[at])) ++at;
  return at;
}

/// The character before `at`, blanks and line ends left out; a line end at the statement's start.
char Draft::before(std::uint32_t at) const {
  while (at > begin_) {
    if (!is_space(text_[--at])) return text_[at];
  }
  return '\n';
}

Span Draft::token_at(std::uint32_t at) const {
  if (at >= end_) return at_end();
  const char c = text_[at];
  std::uint32_t end = at + 1;
  if (is_word(c)) {
    while (end < end_ && (is_word(text_[end]) || (text_[end] == '.' && end + 1 < end_ && is_word(text_[end + 1]))))
      ++end;
  } else if (c == '"') {
    end = static_cast<std::uint32_t>(std::min<std::size_t>(layout::past_token(text_, at), end_));
  } else {
    while (end < end_ && (static_cast<unsigned char>(text_[end]) & 0xC0U) == 0x80U) ++end;
  }
  return {source_, at, end};
}

void Draft::mistake(const char* code, Span where, std::string text, std::string expected, std::string hint) const {
  throw Mistake{{code, where, std::move(text), std::move(expected), std::move(hint)}};
}

void Draft::fail(const Wanted& wanted, const char* place) const {
  std::uint32_t at = offset(place);
  while (at < end_ && is_space(text_[at])) ++at;
  if (at >= end_) {
    mistake("unfinished-statement", at_end(), "the statement ends too early", wanted.expected);
  }
  const Span token = token_at(at);
  const std::string_view found = token.text();
  const std::string name = quoted(found);
  if (static_cast<unsigned char>(found.front()) >= 0x80) {
    mistake("invalid-character", token, name + " cannot stand outside a string or a comment", wanted.expected,
            std::string(plain_for(found)));
  }
  const char previous = before(at);
  if (is_letter(found.front()) && (previous == ')' || is_word(previous)) && find_unit(found)) {
    mistake("unit-after-expression", token, "a unit follows a number only, and " + name + " does not",
            "a number with its unit, such as 3 " + std::string(found));
  }
  if (found == "=" && std::string_view(wanted.code) == "unexpected-text") {
    mistake("stray-equals", token, "a property takes its value without `=`", "a value straight after the name");
  }
  std::string hint = nearest_name(found, split_words(wanted.words));
  const std::string_view words = wanted.words;
  if (words.find("below") != std::string_view::npos && found == "<") hint = "below";
  if (words.find("below") != std::string_view::npos && found == ">") hint = "above";
  mistake(wanted.code, token, name + " cannot stand here", wanted.expected, std::move(hint));
}

// --- Words
// --------------------------------------------------------------------------------------------------------------

void Draft::check_name(Span span) const {
  const std::string_view name = span.text();
  if (name[0] != 'j' || (name.size() > 1 && !is_digit(name[1]))) return;
  mistake("reserved-name", span, quoted(name) + " is the imaginary unit, and no name",
          "a name that is not `j`, nor `j` and digits");
}

syntax::Word Draft::word(Span span) {
  check_name(span);
  last_ = span.end;
  return {std::string(span.text()), span};
}

syntax::Word Draft::new_name(Span span) {
  if (span.text().find('.') != std::string_view::npos) {
    mistake("dotted-name", span, "a dot stands in the name of a box's member only",
            "a name of letters, digits and `_`");
  }
  return word(span);
}

syntax::Word Draft::string_word(Span span) {
  last_ = span.end;
  std::string text = unescaped(span);
  if (text.empty()) mistake("empty-string", span, "there is nothing in this string", "a name");
  return {std::move(text), span};
}

std::string Draft::unescaped(Span string) const {
  const std::string_view inner = string.text().substr(1, string.text().size() - 2);
  std::string result;
  result.reserve(inner.size());
  for (std::size_t i = 0; i < inner.size(); ++i) {
    if (inner[i] != '\\') {
      result += inner[i];
      continue;
    }
    const char next = inner[++i];
    if (next != '"' && next != '\\') {
      const auto at = static_cast<std::uint32_t>(string.begin + i);
      const Span letter = token_at(at);
      const auto length = is_word(next) ? 1U : letter.end - letter.begin;
      mistake("bad-escape", {source_, at - 1, at + length}, "this is no escape in a string", "`\\\"` or `\\\\`",
              next == 'n' || next == 't' ? "" : "\\\\");
    }
    result += next;
  }
  return result;
}

// --- Numbers
// ------------------------------------------------------------------------------------------------------------

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
  while (end < end_ && (is_word(text_[end]) || text_[end] == '.')) ++end;
  mistake("bad-number", {source_, number.begin, end},
          quoted(text_.substr(number.begin, end - number.begin)) + " is no number",
          bare_exponent ? "digits after the exponent's `e`" : "digits on both sides of one decimal point");
}

void Draft::real_part(Span span) {
  check_number_end(span);
  check_decimal_comma(span);
  real_ = span;
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
    unit_text_ = ahead.substr(0, size);
    last_ = at + static_cast<std::uint32_t>(size);
    return last_ - from;
  }
  if (at == from || !contains(follow_words, ahead.substr(0, length))) complain_of_unit(at, at == from);
  return 0;
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
  const std::size_t whole = length + compound_tail(ahead.substr(length));
  if (whole > length && !suggest_unit(ahead.substr(0, whole)).empty()) length = whole;
  const std::string_view wrong = ahead.substr(0, length);
  mistake("unknown-unit", {source_, at, at + static_cast<std::uint32_t>(length)}, quoted(wrong) + " is not a unit",
          attached ? "a unit, such as pF, uH, ohm or MHz" : "a unit, an operator, or a comma before the next property",
          suggest_unit(wrong));
}

/// What a number's phrase cannot go on with: the comma before it was forgotten.
void Draft::check_after_number(std::uint32_t from) const {
  const std::uint32_t at = skip_blanks(from);
  if (at >= end_) return;
  const char c = text_[at];
  if (!is_word(c) && c != '"' && c != '(' && c != '[') return;
  const Span token = token_at(at);
  if (is_letter(c) && contains(follow_words, token.text())) return;
  mistake("missing-comma", token, quoted(token.text()) + " follows a value with nothing between them",
          "a comma, or an operator", ", " + std::string(token.text().substr(0, 20)));
}

/// A decimal fraction times a power of ten is read anew with that power as its exponent, so that 0.1 uH is 100 nH to
/// the last bit.
double Draft::scaled(std::string_view digits) const {
  const double scale = unit_ && !unit_->is_dbm ? unit_->scale : 1.0;
  const auto power = static_cast<int>(std::lround(std::log10(scale)));
  const bool decimal = scale != 1.0 && std::abs(scale * std::pow(10.0, -power) - 1.0) < 1e-14;
  std::string shifted;
  std::string_view text = digits;
  if (decimal) {
    const std::size_t e = std::min(digits.find_first_of("eE"), digits.size());
    int exponent = 0;
    if (e < digits.size()) {
      const std::size_t skip = digits[e + 1] == '+' ? 2 : 1;
      std::from_chars(digits.data() + e + skip, digits.data() + digits.size(), exponent);
    }
    shifted = std::string(digits.substr(0, e)) + "e" + std::to_string(exponent + power);
    text = shifted;
  }
  double value = 0.0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec == std::errc::result_out_of_range || !std::isfinite(value)) {
    const auto begin = static_cast<std::uint32_t>(digits.data() - text_.data());
    mistake("bad-number", {source_, begin, begin + static_cast<std::uint32_t>(digits.size())},
            "this number is too large or too small", "a number between 1e-300 and 1e300");
  }
  return decimal ? value : value * scale;
}

void Draft::finish_number(Span span) {
  Term term = make(Kind::number, {source_, span.begin, last_}, unit_text_);
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
    real = 1e-3 * std::pow(10.0, real / 10.0);
  }
  term.quantity = {{real, imaginary}, unit_ ? unit_->dim : dimension::number};
  check_after_number(last_);
  push(std::move(term), 1);
}

/// `-28+j208 ohm` is one literal, sign and all. Where another operator binds to it, a reader cannot tell whether it
/// means the resistance alone or the whole: brackets must say so.
void Draft::settle_sign_of_impedance(Span& span) {
  const std::size_t signs = pending_.size() - factors_.back();
  std::uint32_t begin = span.begin;
  bool clear = signs == 0;
  if (signs == 1 && pending_.back().text() != "^") {
    begin = pending_.back().begin;
    clear = std::string_view("+-*/^").find(before(begin)) == std::string_view::npos;
  } else if (signs == 0) {
    clear = std::string_view("-*/^").find(before(begin)) == std::string_view::npos;
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
  real_ = imaginary_;
  Term term = make(Kind::number, {source_, span.begin, last_}, unit_text_);
  if (unit_ && unit_->is_dbm) mistake("unknown-unit", term.span, "a power in dBm has no imaginary part", "ohm");
  term.quantity = {{0.0, scaled(imaginary_.text().substr(1))}, unit_ ? unit_->dim : dimension::number};
  check_after_number(last_);
  push(std::move(term), 1);
}

// --- Other terms
// --------------------------------------------------------------------------------------------------------

void Draft::name_term(Span span) {
  check_name(span);
  last_ = span.end;
  push(make(Kind::name, span, span.text()), 1);
}

void Draft::string_term(Span span) {
  last_ = span.end;
  Term term = make(Kind::string, span, {});
  term.text = unescaped(span);
  push(std::move(term), 1);
}

void Draft::cable_term(Span span) {
  last_ = span.end;
  push(make(Kind::cable, span, span.text()), 1);
}

bool Draft::may_call(const char* bracket) const {
  const Term& name = terms_.back();
  if (name.text.find('.') != std::string::npos) return false;
  if (name.span.end == offset(bracket)) return true;
  return !contains(phrase_words, name.text) && !contains(more_phrase_words, name.text);
}

void Draft::push(Term term, std::uint32_t depth) {
  terms_.push_back(std::move(term));
  depths_.push_back(depth);
}

Term Draft::pop(std::uint32_t& depth) {
  Term term = std::move(terms_.back());
  depth = depths_.back();
  terms_.pop_back();
  depths_.pop_back();
  return term;
}

void Draft::push_composite(Term term, std::uint32_t depth) {
  if (depth > deepest_tree) {
    mistake("too-deep", {source_, last_ - 1, last_},
            "this expression has more than 1000 operations, one upon the other", "named parts of it, with `set`");
  }
  push(std::move(term), depth);
}

// --- Operators
// ----------------------------------------------------------------------------------------------------------

void Draft::wrap_unary(Span sign) {
  std::uint32_t depth = 0;
  Term operand = pop(depth);
  Term term = make(Kind::unary, join(sign, operand.span), sign.text());
  term.operands.push_back(std::move(operand));
  push_composite(std::move(term), depth + 1);
}

void Draft::join_two(Kind kind, std::string_view text) {
  std::uint32_t left_depth = 0, right_depth = 0;
  Term right = pop(right_depth);
  Term left = pop(left_depth);
  Term term = make(kind, join(left.span, right.span), text);
  term.operands.reserve(2);
  term.operands.push_back(std::move(left));
  term.operands.push_back(std::move(right));
  push_composite(std::move(term), 1 + std::max(left_depth, right_depth));
}

/// Signs and carets are applied from the right: -2^2 is -(2^2), 2^-3^2 is 2^(-(3^2)).
void Draft::finish_factor() {
  const std::size_t first = factors_.back();
  factors_.pop_back();
  if (pending_.size() - first > most_signs) {
    mistake("too-deep", pending_[first + most_signs], "more than 64 signs bind to one value",
            "brackets, or fewer signs");
  }
  while (pending_.size() > first) {
    const Span sign = pending_.back();
    pending_.pop_back();
    if (sign.text() == "^") {
      join_two(Kind::binary, "^");
    } else {
      wrap_unary(sign);
    }
  }
}

void Draft::finish_binary() {
  const Span sign = operators_.back();
  operators_.pop_back();
  join_two(Kind::binary, sign.text());
}

void Draft::finish_pair() {
  join_two(Kind::pair, ":");
}

// --- Brackets and lists
// -------------------------------------------------------------------------------------------------

void Draft::open_bracket(Span bracket) {
  last_ = bracket.end;
  frames_.push_back({bracket.begin, terms_.size()});
}

void Draft::close_bracket(Span bracket) {
  last_ = bracket.end;
  std::uint32_t depth = 0;
  Term inner = pop(depth);
  Term term = make(Kind::bracket, {source_, frames_.back().begin, bracket.end}, {});
  term.operands.push_back(std::move(inner));
  frames_.pop_back();
  push_composite(std::move(term), depth + 1);
}

void Draft::open_list(Span bracket) {
  last_ = bracket.end;
  frames_.push_back({bracket.begin, terms_.size(), {}, true});
}

void Draft::close_list(Span bracket) {
  last_ = bracket.end;
  Frame frame = std::move(frames_.back());
  frames_.pop_back();
  Term term = make(Kind::list, {source_, frame.begin, bracket.end}, {});
  term.phrases = std::move(frame.phrases);
  push_composite(std::move(term), frame.depth + 1);
}

void Draft::open_call(Span bracket) {
  last_ = bracket.end;
  std::uint32_t depth = 0;
  Term name = pop(depth);
  frames_.push_back({name.span.begin, terms_.size(), std::move(name.text), true});
}

void Draft::close_call(Span bracket) {
  last_ = bracket.end;
  Frame frame = std::move(frames_.back());
  frames_.pop_back();
  Term term = make(Kind::call, {source_, frame.begin, bracket.end}, frame.word);
  term.phrases = std::move(frame.phrases);
  push_composite(std::move(term), frame.depth + 1);
}

void Draft::finish_phrase() {
  Frame& frame = frames_.back();
  Phrase phrase;
  phrase.reserve(terms_.size() - frame.base);
  while (terms_.size() > frame.base + phrase.size()) {
    const std::size_t next = frame.base + phrase.size();
    frame.depth = std::max(frame.depth, depths_[next]);
    phrase.push_back(std::move(terms_[next]));
  }
  terms_.resize(frame.base);
  depths_.resize(frame.base);
  check_units_after_expressions(phrase);
  frame.phrases.push_back(std::move(phrase));
}

void Draft::check_units_after_expressions(const Phrase& phrase) const {
  for (std::size_t i = 1; i < phrase.size(); ++i) {
    const Kind before_it = phrase[i - 1].kind;
    const bool expression = before_it == Kind::bracket || before_it == Kind::call || before_it == Kind::binary ||
                            before_it == Kind::unary || before_it == Kind::pair;
    if (!expression || phrase[i].kind != Kind::name || !find_unit(phrase[i].text)) continue;
    mistake("unit-after-expression", phrase[i].span,
            "a unit follows a number only, and " + quoted(phrase[i].text) + " follows an expression",
            "the unit at each number inside", "");
  }
}

// --- Pieces of statements
// -----------------------------------------------------------------------------------------------

void Draft::finish_place(bool bracketed) {
  pieces.places.ends.push_back(std::exchange(pieces.group, {}));
  pieces.places.bracketed.push_back(bracketed);
}

/// `set x = ...` takes one value; `adjustable A to B` alone stands for a value that is not known yet.
void Draft::check_set_value(const Phrase& value) const {
  if (value.size() == 1 || (value.front().kind == Kind::name && value.front().text == "adjustable")) return;
  const Term& second = value[1];
  const std::string name = quoted(second.span.text());
  if (second.kind == Kind::name && find_unit(second.text)) {
    mistake("unit-after-expression", second.span, "a unit follows a number only, and " + name + " follows a name",
            "one value, with units at its numbers");
  }
  mistake("missing-comma", second.span, name + " follows a value with nothing between them", "a comma, or an operator",
          ", " + std::string(second.span.text().substr(0, 20)));
}

Phrase Draft::take_expression() {
  std::uint32_t depth = 0;
  Phrase phrase;
  phrase.push_back(pop(depth));
  return phrase;
}

std::vector<Phrase> Draft::take_properties() {
  return std::exchange(frames_.front().phrases, {});
}

}  // namespace wattfall
