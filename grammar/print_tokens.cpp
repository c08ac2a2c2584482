// Cuts a statement into tokens. The tree says what the letters alone do not: which sign belongs to a number, which
// colon is a ratio's, which bracket a call's. In: a statement that parsed. Out: its tokens, nothing left out but
// blanks.
#include "print_tokens.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <variant>

#include "layout.hpp"
#include "letters.hpp"

namespace wattfall::print {
namespace {

using syntax::Phrase;
using syntax::Term;
using Kind = Term::Kind;

/// What the tree knows about the letter at some place.
struct Mark {
  enum class What {
    number,  ///< a literal begins, and goes on to `end`; its unit begins at `unit`
    cable,   ///< a bare cable name begins
    glued,   ///< a sign with no blanks around: `^`, a ratio's colon
    before,  ///< a sign with no blank after it: a minus, `c -2 pF`
    after,   ///< a sign with no blank before it: a table's colon
    call,    ///< a name begins whose bracket follows without a blank
  };
  What what = What::glued;
  std::uint32_t end = 0;
  std::uint32_t unit = 0;
};

using Marks = std::unordered_map<std::uint32_t, Mark>;

/// Functions of numbers: their bracket never stands apart. (`Q (Q)` is a property and a quantity, and looks alike.)
constexpr std::array<std::string_view, 11> functions{"sqrt", "min", "max", "abs", "ln",  "log10",
                                                     "exp",  "sin", "cos", "tan", "atan"};

// --- Marks ---

/// Where a term stands, as far as it matters for its blanks.
struct Home {
  bool phrase = false;  ///< side by side with words: its first name may be a property's
  bool list = false;    ///< in `[ ]`
};

class Marker {
 public:
  explicit Marker(std::string_view text) : text_(text) {}

  void expression(const Phrase& phrase) { terms(phrase, {}); }
  void properties(syntax::List<Phrase> phrases) {
    for (const Phrase& phrase : phrases) {
      terms(phrase, {true, false});
      if (phrase.size() == 1 && is_hyphenated(phrase[0])) hyphens(phrase[0]);
    }
  }
  void figure(const syntax::Figure& figure) {
    if (figure.reference) expression(*figure.reference);
    if (figure.below) expression(*figure.below);
  }
  void requirement(const syntax::Requirement& requirement) {
    figure(requirement.figure);
    expression(requirement.value);
    if (requirement.over_from) expression(*requirement.over_from);
    if (requirement.over_to) expression(*requirement.over_to);
  }

  Marks take() { return std::move(marks_); }

 private:
  void terms(const Phrase& phrase, Home home) {
    for (const Term& each : phrase) term(each, home);
  }

  void term(const Term& term, Home home) {
    switch (term.kind) {
      case Kind::number:
        return number(term);
      case Kind::cable:
        marks_[term.span.begin] = {Mark::What::cable, term.span.end};
        return;
      case Kind::unary:
        marks_[term.span.begin] = {Mark::What::before};
        return this->term(term.operands[0], {});
      case Kind::binary:
        return binary(term, home);
      case Kind::pair:
        return pair(term, home);
      case Kind::call:
        return call(term);
      case Kind::bracket:
        return this->term(term.operands[0], {});
      case Kind::list:
        for (const Phrase& phrase : term.phrases) terms(phrase, {true, true});
        return;
      case Kind::name:
      case Kind::string:
        return;
    }
  }

  void number(const Term& term) {
    const auto unit = static_cast<std::uint32_t>(term.text.size());
    marks_[term.span.begin] = {Mark::What::number, term.span.end, term.span.end - unit};
  }

  /// `c -2 pF` stays as it is: only the catalogue knows whether `c` is a property with a negative value, or a quantity.
  void binary(const Term& term, Home home) {
    const std::uint32_t sign = syntax::operator_span(term).begin;
    const bool apart = sign > 0 && is_space(text_[sign - 1]) && !is_space(text_[sign + 1]);
    const bool plus_or_minus = term.text == "+" || term.text == "-";
    if (term.text == "^") marks_[sign] = {Mark::What::glued};
    if (plus_or_minus && home.phrase && apart && term.operands[0].kind == Kind::name)
      marks_[sign] = {Mark::What::before};
    this->term(term.operands[0], {home.phrase, false});
    this->term(term.operands[1], {});
  }

  /// `l-network`, nothing else beside it: only the catalogue knows whether that is one word or a difference.
  bool is_hyphenated(const Term& term) const {
    if (term.kind != Kind::binary || term.text != "-" || term.operands[1].kind != Kind::name) return false;
    const std::uint32_t sign = syntax::operator_span(term).begin;
    if (is_space(text_[sign - 1]) || is_space(text_[sign + 1])) return false;
    return term.operands[0].kind == Kind::name || is_hyphenated(term.operands[0]);
  }

  void hyphens(const Term& term) {
    marks_[syntax::operator_span(term).begin] = {Mark::What::glued};
    if (term.operands[0].kind == Kind::binary) hyphens(term.operands[0]);
  }

  static bool is_short(const Term& term) {
    return term.kind == Kind::name || (term.kind == Kind::number && term.text.empty());
  }

  void pair(const Term& term, Home home) {
    const std::uint32_t colon = syntax::operator_span(term).begin;
    if (home.list) {
      marks_[colon] = {Mark::What::after};
    } else if (is_short(term.operands[0]) && is_short(term.operands[1])) {
      marks_[colon] = {Mark::What::glued};
    }
    this->term(term.operands[0], {home.phrase, false});
    this->term(term.operands[1], {});
  }

  void call(const Term& term) {
    const std::uint32_t word_end = term.span.begin + static_cast<std::uint32_t>(term.text.size());
    const bool attached = text_[word_end] == '(';
    const bool one_value = term.phrases.size() == 1 && term.phrases.front().size() == 1;
    if (attached || !one_value || contains(functions, term.text)) marks_[term.span.begin] = {Mark::What::call};
    for (const Phrase& phrase : term.phrases) terms(phrase, {true, false});
  }

  std::string_view text_;
  Marks marks_;
};

struct MarkStatement {
  Marker& marker;

  void operator()(const syntax::DesignTitle&) const {}
  void operator()(const syntax::Include&) const {}
  void operator()(const syntax::Plane&) const {}
  void operator()(const syntax::Variant&) const {}
  void operator()(const syntax::Set& set) const {
    // The first is one value, whose first name is a quantity's, unless the knob stands alone.
    for (std::size_t i = 0; i < set.properties.size(); ++i) {
      if (i == 0 && set.properties[i].size() == 1) {
        marker.expression(set.properties[i]);
      } else {
        marker.properties(syntax::List<Phrase>(set.properties[i]));
      }
    }
  }
  void operator()(const syntax::Part& part) const { marker.properties(part.properties); }
  void operator()(const syntax::Change& change) const { marker.properties(change.properties); }
  void operator()(const syntax::Band& band) const {
    marker.expression(band.from);
    marker.expression(band.to);
  }
  void operator()(const syntax::Sweep& sweep) const {
    for (const Phrase* phrase : {&sweep.from, &sweep.to, &sweep.amount, &sweep.list}) marker.expression(*phrase);
  }
  void operator()(const syntax::Tune& tune) const {
    for (const Phrase* phrase : {&tune.at, &tune.from, &tune.to}) marker.expression(*phrase);
    marker.figure(*tune.goal);
    for (const syntax::Requirement& requirement : tune.keeping) marker.requirement(requirement);
  }
  void operator()(const syntax::Require& require) const { marker.requirement(*require.requirement); }
  void operator()(const syntax::Box& box) const {
    for (const auto& [name, value] : box.with) marker.expression(value);
  }
};

// --- Tokens ---

std::string plain_unit(std::string_view unit) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> signs{
      {{"\u00B5", "u"}, {"\u03BC", "u"}, {"\u03A9", "ohm"}, {"\u2126", "ohm"}, {"\u00B0", "deg"}}};
  std::string text(unit);
  for (const auto& [sign, plain] : signs) {
    const std::size_t at = text.find(sign);
    if (at != std::string::npos) text.replace(at, sign.size(), plain);
  }
  return text;
}

class Lexer {
 public:
  Lexer(std::string_view text, std::uint32_t begin, std::uint32_t end, const Marks& marks)
      : text_(text), at_(begin), end_(end), marks_(marks) {}

  std::vector<Token> run() {
    while (skip_spaces()) {
      const auto mark = marks_.find(at_);
      if (text_[at_] == '#') {
        comment();
      } else if (at_ < number_.end) {
        piece_of_number();
      } else if (mark != marks_.end()) {
        marked(mark->second);
      } else {
        plain();
      }
    }
    return std::move(tokens_);
  }

 private:
  bool skip_spaces() {
    for (; at_ < end_ && is_space(text_[at_]); ++at_) new_line_ = new_line_ || text_[at_] == '\n';
    return at_ < end_;
  }

  Token& add(Token::Kind kind, std::uint32_t end) {
    Token token;
    token.kind = kind;
    token.text = text_.substr(at_, end - at_);
    token.depth = depth_;
    token.new_line = std::exchange(new_line_, false);
    tokens_.push_back(std::move(token));
    at_ = end;
    return tokens_.back();
  }

  void comment() {
    const auto line_end = static_cast<std::uint32_t>(std::min<std::size_t>(text_.find('\n', at_), end_));
    Token& token = add(Token::Kind::comment, line_end);
    while (is_space(token.text.back())) token.text.pop_back();
  }

  void marked(const Mark& mark) {
    switch (mark.what) {
      case Mark::What::number:
        number_ = mark;
        number_begin_ = at_;
        return piece_of_number();
      case Mark::What::cable:
        add(Token::Kind::value, mark.end);
        return;
      case Mark::What::call:
        plain();
        call_ahead_ = true;
        return;
      default:
        break;
    }
    plain();
    tokens_.back().glued_left = mark.what == Mark::What::glued || mark.what == Mark::What::after;
    tokens_.back().glued_right = mark.what == Mark::What::glued || mark.what == Mark::What::before;
  }

  /// `-`, `28`, `+`, `j208` or `ohm` out of `-28+j208 ohm`; comments may stand between them.
  void piece_of_number() {
    const char c = text_[at_];
    if (at_ == number_.unit) {
      Token& unit = add(Token::Kind::value, number_.end);
      unit.text = plain_unit(unit.text);
    } else if (c == '+' || c == '-') {
      const bool first = at_ == number_begin_;
      Token& sign = add(Token::Kind::sign, at_ + 1);
      sign.glued_left = !first;
      sign.glued_right = true;
    } else {
      add(Token::Kind::value, past_real(c == 'j' ? at_ + 1 : at_));
    }
  }

  std::uint32_t past_digits(std::uint32_t at) const {
    while (at < end_ && is_digit(text_[at])) ++at;
    return at;
  }

  std::uint32_t past_real(std::uint32_t at) const {
    at = past_digits(at);
    if (at < end_ && text_[at] == '.') at = past_digits(at + 1);
    if (at >= end_ || (text_[at] != 'e' && text_[at] != 'E')) return at;
    std::uint32_t exponent = at + 1;
    if (exponent < end_ && (text_[exponent] == '+' || text_[exponent] == '-')) ++exponent;
    const std::uint32_t past = past_digits(exponent);
    return past > exponent ? past : at;
  }

  std::uint32_t past_string() const {
    std::uint32_t at = at_ + 1;
    while (at < end_ && text_[at] != '"') at += text_[at] == '\\' ? 2 : 1;
    return std::min(at + 1, end_);
  }

  std::uint32_t past_name() const {
    std::uint32_t at = at_;
    const auto dot = [this](std::uint32_t i) { return text_[i] == '.' && i + 1 < end_ && is_letter(text_[i + 1]); };
    while (at < end_ && (is_word(text_[at]) || dot(at))) ++at;
    return at;
  }

  void plain() {
    const char c = text_[at_];
    const bool call = std::exchange(call_ahead_, false);
    if (is_letter(c)) {
      add(Token::Kind::word, past_name());
    } else if (c == '"') {
      add(Token::Kind::value, past_string());
    } else if (c == ',') {
      add(Token::Kind::comma, at_ + 1).glued_left = true;
    } else if (c == '(' || c == '[') {
      Token& open = add(Token::Kind::open, at_ + 1);
      open.glued_left = call;
      open.glued_right = true;
      ++depth_;
    } else if (c == ')' || c == ']') {
      --depth_;
      add(Token::Kind::close, at_ + 1).glued_left = true;
    } else {
      add(c == ':' ? Token::Kind::colon : Token::Kind::sign, at_ + 1);
    }
  }

  std::string_view text_;
  std::uint32_t at_, end_;
  const Marks& marks_;
  std::vector<Token> tokens_;
  int depth_ = 0;
  bool new_line_ = false;
  bool call_ahead_ = false;
  Mark number_;
  std::uint32_t number_begin_ = 0;
};

}  // namespace

std::size_t characters(std::string_view text) {
  const auto begins = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins));
}

std::vector<Token> tokens_of(const syntax::Statement& statement) {
  const std::string_view text = statement.span.source->text();
  Marker marker(text);
  std::visit(MarkStatement{marker}, statement.what);
  const Marks marks = marker.take();
  std::vector<Token> tokens = Lexer(text, statement.span.begin, statement.span.end, marks).run();
  for (Token& token : tokens) token.width = characters(token.text);
  return tokens;
}

}  // namespace wattfall::print
