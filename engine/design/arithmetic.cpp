// Operators and functions of the language on settled operands: dimensions are carried and checked, constants are folded
// at once, and a number that does not exist is an error at the place that made it.
#include <array>
#include <cmath>
#include <utility>

#include "apply.hpp"
#include "expression.hpp"

namespace wattfall::design {
namespace {

using Op = Formula::Op;

/// Formulas that cannot be folded are kept as trees; a quantity squared again and again would double them each time.
constexpr int largest_formula = 2000;

bool finite(std::complex<double> x) {
  return std::isfinite(x.real()) && std::isfinite(x.imag());
}

Settled constant_of(std::complex<double> x, Dimension dim) {
  Settled result;
  result.formula.constant = x;
  result.dim = dim;
  result.complex = x.imag() != 0.0;
  return result;
}

std::optional<Settled> fold(Bench& bench, Op op, std::vector<Settled> operands, Dimension dim, bool complex, Span at) {
  Settled result;
  result.dim = dim;
  bool constant = true;
  for (const Settled& operand : operands) {
    constant = constant && operand.constant();
    result.uses_frequency = result.uses_frequency || operand.uses_frequency;
    result.uses_knobs = result.uses_knobs || operand.uses_knobs;
    result.size += operand.size;
  }
  if (constant) {
    std::complex<double> x = operands[0].formula.constant;
    if (operands.size() == 1) x = apply(op, x);
    for (std::size_t i = 1; i < operands.size(); ++i) x = apply(op, x, operands[i].formula.constant);
    if (!finite(x)) {
      bench.complaints.say("not-finite", at, "this comes to no number");
      return std::nullopt;
    }
    return constant_of(x, dim);
  }
  if (result.size > largest_formula) {
    bench.complaints.say("expression-too-large", at,
                         "this expression, with the quantities in it written out, is too large");
    return std::nullopt;
  }
  result.complex = complex;
  result.formula.op = op;
  for (Settled& operand : operands) result.formula.operands.push_back(std::move(operand.formula));
  return result;
}

std::vector<Settled> both(Settled a, Settled b) {
  std::vector<Settled> operands;
  operands.push_back(std::move(a));
  operands.push_back(std::move(b));
  return operands;
}

/// The same of two, without a list where both are constant, as most are.
std::optional<Settled> fold_two(Bench& bench, Op op, Settled a, Settled b, Dimension dim, bool complex, Span at) {
  if (!a.constant() || !b.constant()) return fold(bench, op, both(std::move(a), std::move(b)), dim, complex, at);
  const std::complex<double> x = apply(op, a.formula.constant, b.formula.constant);
  if (!finite(x)) {
    bench.complaints.say("not-finite", at, "this comes to no number");
    return std::nullopt;
  }
  return constant_of(x, dim);
}

bool same_dimension(Bench& bench, const Settled& a, const Settled& b, Span at, std::string_view doing) {
  if (a.dim == b.dim) return true;
  auto& wrong = bench.complaints.say("dimension-mismatch", at,
                                     describe(a.dim) + " and " + describe(b.dim) + " cannot be " + std::string(doing));
  wrong.expected = "two values of one dimension";
  return false;
}

bool dimension_in_bounds(Bench& bench, std::initializer_list<int> exponents, Span at) {
  for (const int exponent : exponents)
    if (exponent < -100 || exponent > 100) {
      bench.complaints.say("dimension-too-large", at, "no quantity of the trade has a dimension as high as this");
      return false;
    }
  return true;
}

bool product_in_bounds(Bench& bench, Dimension a, Dimension b, int sign, Span at) {
  return dimension_in_bounds(bench,
                             {a.metre + sign * b.metre, a.kilogram + sign * b.kilogram, a.second + sign * b.second,
                              a.ampere + sign * b.ampere, a.level + sign * b.level, a.angle + sign * b.angle},
                             at);
}

bool power_in_bounds(Bench& bench, Dimension a, int n, Span at) {
  return dimension_in_bounds(bench, {a.metre * n, a.kilogram * n, a.second * n, a.ampere * n, a.level * n, a.angle * n},
                             at);
}

std::optional<Settled> raise(Bench& bench, Settled a, Settled b, Span at) {
  if (!b.constant() || b.complex || b.dim != dimension::number) {
    auto& wrong = bench.complaints.say("bad-exponent", at, "an exponent is a plain number that does not vary");
    wrong.expected = "a plain number after ^";
    return std::nullopt;
  }
  const double n = b.formula.constant.real();
  Dimension dim;
  if (a.dim != dimension::number) {
    if (n != std::round(n) || std::abs(n) > 100.0) {
      bench.complaints.say("bad-exponent", at, describe(a.dim) + " can be raised to a small whole power only");
      return std::nullopt;
    }
    if (!power_in_bounds(bench, a.dim, static_cast<int>(n), at)) return std::nullopt;
    dim = a.dim.power(static_cast<int>(n));
  }
  if (a.constant() && !a.complex && a.formula.constant.real() < 0.0 && n != std::round(n)) {
    bench.complaints.say("bad-argument", at, "a negative number can be raised to a whole power only");
    return std::nullopt;
  }
  if (a.constant() && a.formula.constant == 0.0 && n < 0.0) {
    bench.complaints.say("division-by-zero", at, "this divides by zero");
    return std::nullopt;
  }
  const bool complex = a.complex;
  return fold_two(bench, Op::power, std::move(a), std::move(b), dim, complex, at);
}

struct Function {
  std::string_view name;
  Op op;
};
constexpr std::array functions{Function{"sqrt", Op::sqrt}, Function{"min", Op::min},  Function{"max", Op::max},
                               Function{"abs", Op::abs},   Function{"ln", Op::ln},    Function{"log10", Op::log10},
                               Function{"exp", Op::exp},   Function{"sin", Op::sin},  Function{"cos", Op::cos},
                               Function{"tan", Op::tan},   Function{"atan", Op::atan}};

const Function* find_function(std::string_view name) {
  for (const Function& function : functions)
    if (function.name == name) return &function;
  return nullptr;
}

bool angle_function(Op op) {
  return op == Op::sin || op == Op::cos || op == Op::tan;
}

/// The dimension that a function of one operand gives; none where its operand does not suit.
std::optional<Dimension> dimension_of_call(Bench& bench, const Function& function, const Settled& x, Span at) {
  if (function.op == Op::abs) return x.dim;
  if (function.op == Op::sqrt) {
    const Dimension d = x.dim;
    const bool even = d.metre % 2 == 0 && d.kilogram % 2 == 0 && d.second % 2 == 0 && d.ampere % 2 == 0 &&
                      d.level % 2 == 0 && d.angle % 2 == 0;
    if (even)
      return Dimension{std::int8_t(d.metre / 2),  std::int8_t(d.kilogram / 2), std::int8_t(d.second / 2),
                       std::int8_t(d.ampere / 2), std::int8_t(d.level / 2),    std::int8_t(d.angle / 2)};
    bench.complaints.say("dimension-mismatch", at, "the square root of " + describe(d) + " has no meaning");
    return std::nullopt;
  }
  if (x.dim == dimension::number || (angle_function(function.op) && x.dim == dimension::angle))
    return dimension::number;
  auto& wrong = bench.complaints.say("dimension-mismatch", at,
                                     std::string(function.name) + " of " + describe(x.dim) + " has no meaning");
  wrong.expected = angle_function(function.op) ? "an angle or a plain number" : "a plain number";
  return std::nullopt;
}

bool argument_exists(Bench& bench, const Function& function, const Settled& x, Span at) {
  if (!x.constant() || x.complex) return true;
  const double value = x.formula.constant.real();
  const bool root = function.op == Op::sqrt && value < 0.0;
  const bool log = (function.op == Op::ln || function.op == Op::log10) && value <= 0.0;
  if (!root && !log) return true;
  bench.complaints.say(
      "bad-argument", at,
      std::string(function.name) + (root ? " of a negative number" : " of zero or less") + " is no real number");
  return false;
}

std::optional<Settled> call_one(Bench& bench, const Function& function, Settled x, Span at) {
  const auto dim = dimension_of_call(bench, function, x, at);
  if (!dim || !argument_exists(bench, function, x, at)) return std::nullopt;
  const bool complex = x.complex && function.op != Op::abs;
  std::vector<Settled> operands;
  operands.push_back(std::move(x));
  return fold(bench, function.op, std::move(operands), *dim, complex, at);
}

std::optional<Settled> call_several(Bench& bench, const Function& function, std::vector<Settled> operands, Span at) {
  for (const Settled& operand : operands) {
    if (!same_dimension(bench, operands[0], operand, at, "compared")) return std::nullopt;
    if (operand.complex) {
      bench.complaints.say("complex-value", at, std::string(function.name) + " of complex values has no meaning");
      return std::nullopt;
    }
  }
  const Dimension dim = operands[0].dim;
  return fold(bench, function.op, std::move(operands), dim, false, at);
}

}  // namespace

bool is_function(std::string_view word) {
  return find_function(word) != nullptr;
}

std::optional<Settled> combine(Bench& bench, Op op, Settled a, Settled b, Span at) {
  if (op == Op::power) return raise(bench, std::move(a), std::move(b), at);
  Dimension dim = a.dim;
  if (op == Op::add || op == Op::subtract) {
    if (!same_dimension(bench, a, b, at, op == Op::add ? "added" : "subtracted")) return std::nullopt;
  } else {
    if (!product_in_bounds(bench, a.dim, b.dim, op == Op::multiply ? 1 : -1, at)) return std::nullopt;
    dim = op == Op::multiply ? a.dim * b.dim : a.dim / b.dim;
  }
  if (op == Op::divide && b.constant() && b.formula.constant == 0.0) {
    bench.complaints.say("division-by-zero", at, "this divides by zero");
    return std::nullopt;
  }
  const bool complex = a.complex || b.complex;
  return fold_two(bench, op, std::move(a), std::move(b), dim, complex, at);
}

std::optional<Settled> negate(Bench& bench, Settled x, Span at) {
  const Dimension dim = x.dim;
  const bool complex = x.complex;
  std::vector<Settled> operands;
  operands.push_back(std::move(x));
  return fold(bench, Op::negate, std::move(operands), dim, complex, at);
}

std::optional<Settled> call(Bench& bench, const syntax::Term& term, std::vector<Settled> operands) {
  const Function* function = find_function(term.text);
  const bool several = function->op == Op::min || function->op == Op::max;
  if (operands.empty() || (!several && operands.size() > 1)) {
    auto& wrong =
        bench.complaints.say("wrong-argument-count", term.span,
                             in_quotes(term.text) + " takes " + (several ? "at least one value" : "one value"));
    wrong.expected = std::string(term.text) + (several ? "(a, b)" : "(x)");
    return std::nullopt;
  }
  if (several) return call_several(bench, *function, std::move(operands), term.span);
  return call_one(bench, *function, std::move(operands[0]), term.span);
}

}  // namespace wattfall::design
