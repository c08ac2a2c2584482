// A property's value after names and units are settled: a number, or an expression that still depends on frequency or on knobs.
#pragma once

#include <complex>
#include <memory>
#include <span>
#include <vector>

#include "design/ids.hpp"

namespace wattfall::design {

/// One operation of a settled expression: constants, knobs and `frequency` are its leaves. Dimensions were checked when it was made.
struct Formula {
  enum class Op { constant, knob, frequency, add, subtract, multiply, divide, power, negate, sqrt, min, max, abs, ln, log10, exp, sin, cos, tan, atan };
  Op op = Op::constant;
  std::complex<double> constant;
  KnobId knob;
  std::vector<Formula> operands;
};

/// A value [SI] at a frequency and a setting of the knobs. Cheap to copy.
class Value {
 public:
  Value() = default;
  Value(std::complex<double> constant) : constant_(constant) {}
  Value(double constant) : constant_(constant) {}
  /// A formula without knobs and frequency is folded into a constant.
  explicit Value(Formula formula);

  std::complex<double> at(double frequency_hz, std::span<const double> knobs) const;
  /// The real part; for properties that are real by their dimension.
  double real_at(double frequency_hz, std::span<const double> knobs) const { return at(frequency_hz, knobs).real(); }
  bool constant() const { return formula_ == nullptr; }
  std::complex<double> constant_value() const { return constant_; }
  bool depends_on(KnobId knob) const;
  /// The knob that this value is, with nothing computed from it; else none.
  KnobId plain_knob() const;
  bool depends_on_frequency() const;
  /// This value times a number.
  Value scaled(double factor) const;

 private:
  std::complex<double> constant_;
  std::shared_ptr<const Formula> formula_;
};

}  // namespace wattfall::design
