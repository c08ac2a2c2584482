// Evaluates settled formulas. Where every operand is real the real functions are used, so that a real expression stays
// exactly real; only impedances take the complex ones.
#include "design/value.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "apply.hpp"

namespace wattfall::design {
namespace {

using Op = Formula::Op;
using Complex = std::complex<double>;

bool leaf_varies(Op op) {
  return op == Op::knob || op == Op::frequency;
}

template <class Test>
bool any_leaf(const Formula& formula, const Test& test) {
  if (test(formula)) return true;
  return std::any_of(formula.operands.begin(), formula.operands.end(),
                     [&](const Formula& operand) { return any_leaf(operand, test); });
}

Complex evaluate(const Formula& formula, double frequency_hz, std::span<const double> knobs) {
  if (formula.op == Op::constant) return formula.constant;
  if (formula.op == Op::frequency) return frequency_hz;
  if (formula.op == Op::knob) return knobs[static_cast<std::size_t>(formula.knob.index)];
  const Complex a = evaluate(formula.operands[0], frequency_hz, knobs);
  if (formula.operands.size() == 1) return apply(formula.op, a);
  Complex result = a;
  for (std::size_t i = 1; i < formula.operands.size(); ++i)
    result = apply(formula.op, result, evaluate(formula.operands[i], frequency_hz, knobs));
  return result;
}

Complex whole_power(Complex base, int exponent) {
  Complex result = 1.0;
  for (int i = 0; i < std::abs(exponent); ++i) result *= base;
  return exponent < 0 ? 1.0 / result : result;
}

Complex power(Complex base, Complex exponent) {
  if (base.imag() == 0.0 && exponent.imag() == 0.0) {
    const double real = std::pow(base.real(), exponent.real());
    if (!std::isnan(real)) return real;
  }
  const double n = exponent.real();
  if (exponent.imag() == 0.0 && n == std::round(n) && std::abs(n) <= 64) return whole_power(base, static_cast<int>(n));
  return std::pow(base, exponent);
}

Complex apply_real(Op op, double x) {
  switch (op) {
    case Op::sqrt:
      return x < 0.0 ? std::sqrt(Complex(x)) : Complex(std::sqrt(x));
    case Op::abs:
      return std::abs(x);
    case Op::ln:
      return x < 0.0 ? std::log(Complex(x)) : Complex(std::log(x));
    case Op::log10:
      return x < 0.0 ? std::log10(Complex(x)) : Complex(std::log10(x));
    case Op::exp:
      return std::exp(x);
    case Op::sin:
      return std::sin(x);
    case Op::cos:
      return std::cos(x);
    case Op::tan:
      return std::tan(x);
    case Op::atan:
      return std::atan(x);
    default:
      return x;
  }
}

}  // namespace

Complex apply(Op op, Complex x) {
  if (op == Op::negate) return x.imag() == 0.0 ? Complex(-x.real()) : -x;
  if (x.imag() == 0.0) return apply_real(op, x.real());
  switch (op) {
    case Op::sqrt:
      return std::sqrt(x);
    case Op::abs:
      return std::abs(x);
    case Op::ln:
      return std::log(x);
    case Op::log10:
      return std::log10(x);
    case Op::exp:
      return std::exp(x);
    case Op::sin:
      return std::sin(x);
    case Op::cos:
      return std::cos(x);
    case Op::tan:
      return std::tan(x);
    case Op::atan:
      return std::atan(x);
    default:
      return x;
  }
}

Complex apply(Op op, Complex a, Complex b) {
  const bool real = a.imag() == 0.0 && b.imag() == 0.0;
  switch (op) {
    case Op::add:
      return a + b;
    case Op::subtract:
      return a - b;
    case Op::multiply:
      return real ? Complex(a.real() * b.real()) : a * b;
    case Op::divide:
      return b.imag() == 0.0 ? a / b.real() : a / b;
    case Op::power:
      return power(a, b);
    case Op::min:
      return std::min(a.real(), b.real());
    case Op::max:
      return std::max(a.real(), b.real());
    default:
      return a;
  }
}

Value::Value(Formula formula) {
  if (any_leaf(formula, [](const Formula& part) { return leaf_varies(part.op); }))
    formula_ = std::make_shared<const Formula>(std::move(formula));
  else
    constant_ = evaluate(formula, 0.0, {});
}

// A settled complex number times a real one.
Value Value::scaled(double factor) const {
  if (formula_ == nullptr) return constant_ * factor;
  Formula number, product;
  number.constant = factor;
  product.op = Op::multiply;
  product.operands = {std::move(number), *formula_};
  return Value(std::move(product));
}

Complex Value::at(double frequency_hz, std::span<const double> knobs) const {
  return formula_ == nullptr ? constant_ : evaluate(*formula_, frequency_hz, knobs);
}

KnobId Value::plain_knob() const {
  return formula_ != nullptr && formula_->op == Formula::Op::knob ? formula_->knob : KnobId{};
}

bool Value::depends_on(KnobId knob) const {
  return formula_ != nullptr &&
         any_leaf(*formula_, [&](const Formula& part) { return part.op == Op::knob && part.knob == knob; });
}

bool Value::depends_on_frequency() const {
  return formula_ != nullptr && any_leaf(*formula_, [](const Formula& part) { return part.op == Op::frequency; });
}

}  // namespace wattfall::design
