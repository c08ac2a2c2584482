// Terms -> settled values. Long chains of operators are walked in a loop, and what is nested deeper than any sensible
// text is refused, so that no text can exhaust the stack.
#include "expression.hpp"

#include <cmath>
#include <utility>

#include "grammar/nearest_name.hpp"

namespace wattfall::design {
namespace {

using syntax::Term;
using Op = Formula::Op;

constexpr int deepest_nesting = 300;

/// Counts how deep expressions and quantities stand in each other.
class Deeper {
 public:
  explicit Deeper(Bench& bench) : bench_(bench) { ++bench_.depth; }
  ~Deeper() { --bench_.depth; }
  Deeper(const Deeper&) = delete;
  Deeper& operator=(const Deeper&) = delete;
  bool too_deep() const { return bench_.depth > deepest_nesting; }

 private:
  Bench& bench_;
};

Op op_of(std::string_view sign) {
  if (sign == "+") return Op::add;
  if (sign == "-") return Op::subtract;
  if (sign == "*") return Op::multiply;
  if (sign == "/") return Op::divide;
  return Op::power;
}

std::optional<Settled> settle_chain(Bench& bench, const Term& term, Scope& scope, Varies varies) {
  std::vector<const Term*> chain;
  const Term* innermost = &term;
  for (; innermost->kind == Term::Kind::binary; innermost = &innermost->operands[0]) chain.push_back(innermost);
  std::optional<Settled> result = settle(bench, *innermost, scope, varies);
  for (auto link = chain.rbegin(); link != chain.rend(); ++link) {
    std::optional<Settled> right = settle(bench, (*link)->operands[1], scope, varies);
    if (result && right)
      result =
          combine(bench, op_of((*link)->text), std::move(*result), std::move(*right), syntax::operator_span(**link));
    else
      result.reset();
  }
  return result;
}

std::optional<Settled> settle_call(Bench& bench, const Term& term, Scope& scope, Varies varies) {
  if (!is_function(term.text)) {
    auto& wrong = bench.complaints.say("unknown-function", term.span, in_quotes(term.text) + " is no function");
    wrong.expected = "sqrt, min, max, abs, ln, log10, exp, sin, cos, tan or atan";
    wrong.hint =
        term.text == "log" ? "ln or log10" : nearest_name(term.text, {"sqrt", "min", "max", "abs", "ln", "log10", "exp", "sin", "cos", "tan", "atan"});
    return std::nullopt;
  }
  std::vector<Settled> operands;
  bool good = true;
  for (const syntax::Phrase& phrase : term.phrases) {
    std::optional<Settled> operand = settle(bench, phrase, scope, varies);
    good = good && operand.has_value();
    if (operand) operands.push_back(std::move(*operand));
  }
  if (!good) return std::nullopt;
  return call(bench, term, std::move(operands));
}

std::optional<Settled> settle_literal(Bench& bench, const Term& term) {
  const std::complex<double> value = term.quantity.value;
  if (!std::isfinite(value.real()) || !std::isfinite(value.imag())) {
    bench.complaints.say("not-finite", term.span, "this number is too large");
    return std::nullopt;
  }
  Settled result;
  result.formula.constant = value;
  result.dim = term.quantity.dim;
  result.complex = value.imag() != 0.0;
  return result;
}

std::optional<Settled> say_no_value(Bench& bench, const Term& term, std::string_view what) {
  auto& wrong =
      bench.complaints.say("not-a-value", term.span, std::string(what) + " cannot stand where a value is due");
  wrong.expected = "a value";
  return std::nullopt;
}

/// Often a measurement without the word before it.
std::optional<Settled> say_text(Bench& bench, const Term& term) {
  auto& wrong = bench.complaints.say("not-a-value", term.span, "a text in quotes cannot stand where a value is due");
  wrong.expected = "a value";
  const bool touchstone = term.text.ends_with(".s1p") || term.text.ends_with(".s2p");
  if (touchstone) wrong.hint = "measured " + std::string(term.span.text());
  return std::nullopt;
}

}  // namespace

std::optional<Settled> settle(Bench& bench, const Term& term, Scope& scope, Varies varies) {
  const Deeper deeper(bench);
  if (deeper.too_deep()) {
    if (!bench.too_deep_said)
      bench.complaints.say("expression-too-deep", term.span,
                           "quantities and brackets stand too deep in each other here");
    bench.too_deep_said = true;
    return std::nullopt;
  }
  switch (term.kind) {
    case Term::Kind::number:
      return settle_literal(bench, term);
    case Term::Kind::name:
      return settle_name(bench, term, scope, varies);
    case Term::Kind::binary:
      return settle_chain(bench, term, scope, varies);
    case Term::Kind::call:
      return settle_call(bench, term, scope, varies);
    case Term::Kind::bracket:
      return settle(bench, term.operands[0], scope, varies);
    case Term::Kind::unary: {
      auto operand = settle(bench, term.operands[0], scope, varies);
      return operand && term.text == "-" ? negate(bench, std::move(*operand), term.span) : operand;
    }
    case Term::Kind::string:
      return say_text(bench, term);
    case Term::Kind::cable:
      return say_no_value(bench, term, "a cable's name");
    case Term::Kind::list:
      return say_no_value(bench, term, "a list");
    case Term::Kind::pair:
      return say_no_value(bench, term, "a ratio");
  }
  return std::nullopt;
}

std::optional<Settled> settle(Bench& bench, const syntax::Phrase& phrase, Scope& scope, Varies varies) {
  if (phrase.empty()) return std::nullopt;  // the parser has said so
  if (phrase.size() == 1) return settle(bench, phrase[0], scope, varies);
  if (phrase.size() == 2 && phrase[1].kind == Term::Kind::name && find_unit(phrase[1].text)) {
    auto& stray = bench.complaints.say("stray-unit", phrase[1].span, "a unit follows a number only");
    stray.hint = "* 1 " + std::string(phrase[1].text);
    return std::nullopt;
  }
  const Span rest = join(phrase[1].span, phrase.back().span);
  auto& wrong = bench.complaints.say("unexpected-words", rest, in_quotes(rest.text()) + " is not understood here");
  wrong.expected = "one value, then a comma or the end of the line";
  return std::nullopt;
}

}  // namespace wattfall::design
