// Settled values against what is due at a place of the text: the dimension, real or complex, and the range of legal
// values.
#include <array>
#include <cmath>

#include "expression.hpp"

namespace wattfall::design {
namespace {

struct Example {
  Dimension dim;
  const char* unit;
};
constexpr std::array examples{Example{dimension::capacitance, "pF"}, Example{dimension::inductance, "uH"},
                              Example{dimension::resistance, "ohm"}, Example{dimension::frequency, "MHz"},
                              Example{dimension::length, "m"},       Example{dimension::power, "W"},
                              Example{dimension::level, "dB"},       Example{dimension::voltage, "V"},
                              Example{dimension::current, "A"},      Example{dimension::level_per_length, "dB/100m"},
                              Example{dimension::angle, "deg"},      Example{dimension::conductance, "S"},
                              Example{dimension::time, "us"}};

std::string unit_of(Dimension dim) {
  for (const Example& example : examples)
    if (example.dim == dim) return example.unit;
  return si_symbol(dim);
}

/// Where a resistance may be complex it is called an impedance.
std::string name_of(Dimension dim, bool complex) {
  return complex && dim == dimension::resistance ? "an impedance" : describe(dim);
}

void say_wrong_dimension(Bench& bench, const Settled& settled, Dimension due, bool complex, Span span) {
  const Dimension is = settled.dim;
  const std::string name = name_of(due, complex);
  if (is == dimension::number) {
    auto& wrong =
        bench.complaints.say("missing-unit", span, "a number without a unit stands where " + name + " is due");
    wrong.expected = example_of(due);
    return;
  }
  auto& wrong = bench.complaints.say("wrong-dimension", span,
                                     "this is " + name_of(is, settled.complex) + ", where " + name + " is due");
  const bool said = due == dimension::number || due == dimension::level || name.starts_with("a value in");
  wrong.expected = said ? describe(due) : name + ", in " + unit_of(due);
}

bool obeys(Bench& bench, const Settled& settled, const Rule& rule, Span span) {
  if (rule.holds == nullptr) return true;
  if (!settled.constant()) {
    bench.late_checks.push_back({to_value(settled), rule, settled.dim, span});
    return true;
  }
  if (rule.holds(settled.formula.constant)) return true;
  const bool of_share = std::string_view(rule.text).find('%') != std::string_view::npos;
  const std::complex<double> value = settled.formula.constant;
  const std::string shown = of_share ? spell({value * 100.0, settled.dim}) + " %" : spell({value, settled.dim});
  auto& wrong = bench.complaints.say("value-out-of-range", span, shown + " will not do: it " + rule.text);
  // "velocity 66" lacks its per cent; "velocity 2" is not likely to mean 2 %.
  if (of_share && value.real() >= 10.0 && value.real() <= 100.0 && span.text().find('%') == std::string_view::npos)
    wrong.hint = std::string(span.text()) + " %";
  return false;
}

void say_frequency_too_low(Bench& bench, double frequency_hz, Span span) {
  auto& wrong = bench.complaints.say(
      "frequency-too-low", span,
      spell({frequency_hz, dimension::frequency}) + " is no radio frequency: those of a design begin at 1 kHz");
  wrong.expected = "a frequency, such as 7.1 MHz";
  if (frequency_hz < 1.0) wrong.hint = "MHz";
}

}  // namespace

std::string example_of(Dimension dim) {
  if (dim == dimension::number) return "a plain number";
  return "a unit, such as " + unit_of(dim);
}

Value to_value(Settled settled) {
  if (settled.constant()) return Value(settled.formula.constant);
  return Value(std::move(settled.formula));
}

bool fits(Bench& bench, const Settled& settled, const Due& due, Span span) {
  if (settled.dim != due.dim) {
    say_wrong_dimension(bench, settled, due.dim, due.complex, span);
    return false;
  }
  if (settled.complex && !due.permeability && (!due.complex || due.dim != dimension::resistance)) {
    auto& wrong =
        bench.complaints.say("complex-value", span, "a complex value stands where " + describe(due.dim) + " is due");
    wrong.expected = "a real value";
    return false;
  }
  return obeys(bench, settled, due.rule, span);
}

std::optional<Value> value_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope, const Due& due) {
  auto settled = settle(bench, phrase, scope, due.varies ? Varies::yes : Varies::no);
  if (!settled || !fits(bench, *settled, due, syntax::span_of(phrase))) return std::nullopt;
  return to_value(std::move(*settled));
}

std::optional<std::complex<double>> complex_number_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope,
                                                      const Due& due) {
  Due constant = due;
  constant.varies = false;
  const auto value = value_of(bench, phrase, scope, constant);
  if (!value) return std::nullopt;
  return value->constant_value();
}

std::optional<double> number_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope, Dimension dim,
                                const Rule& rule) {
  const auto value = complex_number_of(bench, phrase, scope, {.dim = dim, .rule = rule});
  if (!value) return std::nullopt;
  return value->real();
}

std::optional<double> frequency_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope) {
  const auto frequency_hz = number_of(bench, phrase, scope, dimension::frequency, rule::positive);
  if (!frequency_hz) return std::nullopt;
  if (*frequency_hz >= 1000.0) return frequency_hz;
  say_frequency_too_low(bench, *frequency_hz, syntax::span_of(phrase));
  return std::nullopt;
}

std::optional<std::pair<double, double>> frequency_range_of(Bench& bench, const syntax::Phrase& from,
                                                            const syntax::Phrase& to, Scope& scope) {
  const auto lower = frequency_of(bench, from, scope);
  const auto upper = frequency_of(bench, to, scope);
  if (!lower || !upper) return std::nullopt;
  if (!rising(bench, *lower, *upper, dimension::frequency, join(syntax::span_of(from), syntax::span_of(to))))
    return std::nullopt;
  return std::pair(*lower, *upper);
}

bool rising(Bench& bench, double lower, double upper, Dimension dim, Span span) {
  if (lower < upper) return true;
  const std::string from = spell({lower, dim}), to = spell({upper, dim});
  if (lower == upper)
    bench.complaints.say("empty-range", span, "this range has no width: both its ends are " + from);
  else
    bench.complaints.say("falling-range", span, "this range falls, from " + from + " to " + to).expected =
        "the lower end first";
  return false;
}

}  // namespace wattfall::design
