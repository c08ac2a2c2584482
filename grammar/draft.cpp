// Puts terms together, and says what is wrong with single tokens. In: spans of matched text. Out: terms on a stack.
#include "draft.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "grammar/parse.hpp"

#include "letters.hpp"

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

/// Words that a bracket after a blank does not turn into calls: `adjustable (a) to (b)`.
constexpr std::array<std::string_view, 20> phrase_words{
    "to",    "at",   "from", "of",      "by",      "over",       "for",  "into",   "reference", "below",
    "above", "step", "and",  "keeping", "between", "adjustable", "with", "points", "most",      "least"};

}  // namespace

Term make_term(Kind kind, Span span, std::string_view text) {
  Term term;
  term.kind = kind;
  term.span = span;
  term.text = text;
  return term;
}

/// Most statements are parts, which leave nothing behind but their own pieces.
void Draft::forget_pieces() {
  const bool part = pieces.what && std::holds_alternative<syntax::Part>(*pieces.what);
  if (!part) {
    pieces = Pieces{};
    return;
  }
  pieces.part = {};
  pieces.in_properties = false;
  pieces.places = {};
  pieces.group.clear();
  pieces.ends.clear();
  pieces.what.reset();
}

void Draft::start(std::uint32_t begin, std::uint32_t end) {
  begin_ = last_ = begin;
  last_term_ = end + 1;  // none yet
  end_ = end;
  forget_pieces();
  terms_.clear();
  depths_.clear();
  phrases_.clear();
  factors_.clear();
  pending_.clear();
  operators_.clear();
  frames_.clear();
  frames_.push_back({});
}

// --- Places ---

Span Draft::span(const char* begin, const char* end) const {
  return {source_, offset(begin), offset(end)};
}

// --- Words ---

/// `j208` where `j 208` or `j * 208` follows.
std::string Draft::imaginary_after(std::uint32_t at) const {
  at = skip_blanks(at);
  if (at < end_ && text_[at] == '*') at = skip_blanks(at + 1);
  if (at >= end_ || !is_digit(text_[at])) return {};
  return std::string("j").append(token_at(at).text());
}

void Draft::check_name(Span span) const {
  const std::string_view name = span.text();
  if (name[0] != 'j' || (name.size() > 1 && !is_digit(name[1]))) return;
  const char* what = name == "j" ? " is the imaginary unit, and no name" : " is an imaginary number, and no name";
  mistake("reserved-name", span, quoted(name) + what, "a name that is not `j`, nor `j` and digits",
          name == "j" ? imaginary_after(span.end) : std::string{});
}

syntax::Word Draft::word(Span span) {
  check_name(span);
  last_ = span.end;
  return {span.text(), span};
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
  const std::string_view text = unescaped(span);
  if (text.empty()) mistake("empty-string", span, "there is nothing in this string", "a name");
  return {text, span};
}

std::string_view Draft::unescaped(Span string) const {
  const std::string_view inner = string.text().substr(1, string.text().size() - 2);
  if (inner.find('\\') == std::string_view::npos) return inner;
  std::string result;
  result.reserve(inner.size());
  for (std::size_t i = 0; i < inner.size(); ++i) {
    if (inner[i] != '\\') {
      result += inner[i];
      continue;
    }
    const char next = inner[++i];
    if (next != '"' && next != '\\') {
      const auto at = static_cast<std::uint32_t>(string.begin + 1 + i);
      const Span letter = token_at(at);
      const auto length = is_word(next) ? 1U : letter.end - letter.begin;
      mistake("bad-escape", {source_, at - 1, at + length}, "this is no escape in a string", "`\\\"` or `\\\\`",
              next == 'n' || next == 't' ? "" : "\\\\");
    }
    result += next;
  }
  return storage_->keep_text(result);
}

// --- Other terms ---

void Draft::name_term(Span span) {
  check_name(span);
  last_ = span.end;
  push(make_term(Kind::name, span, span.text()), 1);
}

void Draft::string_term(Span span) {
  last_ = span.end;
  push(make_term(Kind::string, span, unescaped(span)), 1);
}

void Draft::cable_term(Span span) {
  last_ = span.end;
  push(make_term(Kind::cable, span, span.text()), 1);
}

bool Draft::may_call(const char* bracket) const {
  const Term& name = terms_.back();
  if (name.text.find('.') != std::string_view::npos) return false;
  if (name.span.end == offset(bracket)) return true;
  return !contains(phrase_words, name.text);
}

void Draft::push(const Term& term, std::uint32_t depth) {
  last_term_ = last_;
  terms_.push_back(term);
  depths_.push_back(depth);
}

Term Draft::pop(std::uint32_t& depth) {
  const Term term = terms_.back();
  depth = depths_.back();
  terms_.pop_back();
  depths_.pop_back();
  return term;
}

void Draft::push_composite(const Term& term, std::uint32_t depth) {
  if (depth > deepest_tree) {
    mistake("too-deep", {source_, last_ - 1, last_},
            "this expression has more than 1000 operations, one upon the other", "named parts of it, with `set`");
  }
  push(term, depth);
}

// --- Operators ---

void Draft::wrap_unary(Span sign) {
  std::uint32_t depth = 0;
  const Term operand = pop(depth);
  Term term = make_term(Kind::unary, join(sign, operand.span), sign.text());
  term.operands = storage_->keep(&operand, 1);
  push_composite(term, depth + 1);
}

void Draft::join_two(Kind kind, std::string_view text) {
  const std::size_t left = terms_.size() - 2;
  const std::uint32_t depth = std::max(depths_[left], depths_[left + 1]);
  Term term = make_term(kind, join(terms_[left].span, terms_[left + 1].span), text);
  term.operands = storage_->keep(&terms_[left], 2);
  terms_.resize(left);
  depths_.resize(left);
  push_composite(term, 1 + depth);
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

// --- Brackets and lists ---

/// The layout pass has turned deeper brackets away; this is the second lock on that door.
void Draft::open_frame(Frame frame, Span bracket) {
  last_ = bracket.end;
  if (frames_.size() > layout::most_levels) {
    mistake("too-deep", bracket, "brackets are more than 64 levels deep", "at most 64 levels");
  }
  frames_.push_back(frame);
}

void Draft::open_bracket(Span bracket) {
  open_frame({bracket.begin, terms_.size(), phrases_.size()}, bracket);
}

void Draft::close_bracket(Span bracket) {
  last_ = bracket.end;
  std::uint32_t depth = 0;
  const Term inner = pop(depth);
  Term term = make_term(Kind::bracket, {source_, frames_.back().begin, bracket.end}, {});
  term.operands = storage_->keep(&inner, 1);
  frames_.pop_back();
  push_composite(term, depth + 1);
}

void Draft::open_list(Span bracket) {
  open_frame({bracket.begin, terms_.size(), phrases_.size(), {}, true}, bracket);
}

void Draft::close_list(Span bracket) {
  last_ = bracket.end;
  const Frame frame = frames_.back();
  frames_.pop_back();
  Term term = make_term(Kind::list, {source_, frame.begin, bracket.end}, {});
  term.phrases = phrases_from(frame.phrases);
  push_composite(term, frame.depth + 1);
}

void Draft::open_call(Span bracket) {
  std::uint32_t depth = 0;
  const Term name = pop(depth);
  open_frame({name.span.begin, terms_.size(), phrases_.size(), name.text, true}, bracket);
}

void Draft::close_call(Span bracket) {
  last_ = bracket.end;
  const Frame frame = frames_.back();
  frames_.pop_back();
  Term term = make_term(Kind::call, {source_, frame.begin, bracket.end}, frame.word);
  term.phrases = phrases_from(frame.phrases);
  push_composite(term, frame.depth + 1);
}

/// Those that the innermost frame has finished, which then are its alone.
syntax::List<Phrase> Draft::phrases_from(std::size_t first) {
  const auto list = storage_->keep(phrases_.data() + first, phrases_.size() - first);
  phrases_.resize(first);
  return list;
}

void Draft::finish_phrase() {
  Frame& frame = frames_.back();
  for (std::size_t i = frame.base; i < depths_.size(); ++i) frame.depth = std::max(frame.depth, depths_[i]);
  const Phrase phrase = storage_->keep(terms_.data() + frame.base, terms_.size() - frame.base);
  terms_.resize(frame.base);
  depths_.resize(frame.base);
  check_units_after_expressions(phrase);
  phrases_.push_back(phrase);
}

/// `28+i208 ohm`: the physicists' letter.
void Draft::check_imaginary_i(const Term& term) const {
  if (term.kind != Kind::binary || term.operands[1].kind != Kind::name) return;
  const Term& last = term.operands[1];
  const bool imaginary =
      last.text.size() > 1 && last.text[0] == 'i' && std::all_of(last.text.begin() + 1, last.text.end(), is_digit);
  if (!imaginary) return;
  const std::string meant = std::string("j").append(last.text.substr(1));
  mistake("imaginary-suffix", last.span, "the imaginary unit is written `j`", "an imaginary part such as j208", meant);
}

void Draft::check_units_after_expressions(const Phrase& phrase) const {
  for (std::size_t i = 1; i < phrase.size(); ++i) {
    const Kind before_it = phrase[i - 1].kind;
    const bool expression = before_it == Kind::bracket || before_it == Kind::call || before_it == Kind::binary ||
                            before_it == Kind::unary || before_it == Kind::pair;
    if (!expression || phrase[i].kind != Kind::name || !find_unit(phrase[i].text)) continue;
    check_imaginary_i(phrase[i - 1]);
    mistake("unit-after-expression", phrase[i].span,
            "a unit follows a number only, and " + quoted(phrase[i].text) + " follows an expression",
            "the unit at each number inside", "");
  }
}

// --- Pieces of statements ---

void Draft::finish_place(bool bracketed) {
  pieces.ends.push_back({storage_->keep(pieces.group), bracketed});
  pieces.group.clear();
}

/// `set x = ...` takes one value; `adjustable A to B` alone stands for a value that is not known yet.
void Draft::check_set_value(const Phrase& value) const {
  if (value.size() == 1 || rest_after(value, "adjustable", *storage_)) return;
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
  const Term term = pop(depth);
  return storage_->keep(&term, 1);
}

syntax::List<Phrase> Draft::take_properties() {
  return phrases_from(0);
}

}  // namespace wattfall
