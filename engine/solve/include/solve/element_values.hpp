// The numbers of one element in one state. This is the only place that knows what a coil, a cable or a transformer is electrically.
#pragma once

#include <array>
#include <complex>
#include <span>

#include "graph/network.hpp"

namespace wattfall::solve {

using Complex = std::complex<double>;

/// Holds what the element's form needs; the rest is not set.
struct ElementValue {
  // branch: d V = n I, so Z = n/d. A short has n = 0, an open d = 0; with k = V/n = I/d the heat is |k|^2 loss, where loss =
  // Re(n conj d) is written down per kind without cancellation, and never negative for a passive part.
  Complex n, d;
  double loss = 0.0;
  // line
  Complex gamma_l, impedance;
  // ideal
  double ratio = 1.0;
  // matrix: A V + B I = 0, row-major; for coupled coils also each coil's series resistance and the susceptance across it
  std::array<Complex, 4> a, b;
  std::array<double, 2> coil_ohms{}, coil_susceptance{};
};

/// A table's value between its points, real and imaginary parts apart.
Complex interpolate(const design::Table& table, double frequency_hz);

/// The value of an element at a frequency and setting. A kind of a plugin that fails gives NaN, which the solution marks untrusted.
ElementValue element_value(const design::Design& design, const graph::Element& element, double frequency_hz,
                           std::span<const double> knobs);

/// Of the heat of an inductor on a core, the share that the core takes; the rest is the wire's. NaN for any other part.
double core_share(const design::Part& part, double frequency_hz, std::span<const double> knobs);

}  // namespace wattfall::solve
