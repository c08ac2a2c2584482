// Series below 4, continued fraction above.
#include "physics/sine_integrals.hpp"

#include <cmath>
#include <complex>
#include <limits>

#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

using Complex = std::complex<double>;

constexpr double series_up_to = 4.0;  // the largest term is 8: three bits are lost at the end

/// sum over n = first, first + 2, ... of (-1)^k x^n/(n n!)
double alternating_series(double x, int first) {
  double term = first == 1 ? x : x * x / 2.0, sum = 0.0;
  for (int n = first; n < 60; n += 2) {
    sum += term / n;
    term *= -x * x / ((n + 1.0) * (n + 2.0));
  }
  return sum;
}

/// E1(jx) = e^-jx/(jx + 1 - 1/(jx + 3 - 4/(jx + 5 - ...))), backward from a depth that suffices at x = 4.
Complex exponential_integral(double x) {
  const int depth = 20 + static_cast<int>(400.0 / x);
  Complex tail = 0.0;
  for (int n = depth; n >= 1; --n) tail = static_cast<double>(n) * n / (Complex(2.0 * n + 1.0, x) - tail);
  return std::polar(1.0, -x) / (Complex(1.0, x) - tail);
}

}  // namespace

double sine_integral(double x) {
  if (x <= series_up_to) return alternating_series(x, 1);
  return pi / 2.0 + exponential_integral(x).imag();
}

double cosine_integral(double x) {
  if (x <= 0.0) return -std::numeric_limits<double>::infinity();
  if (x <= series_up_to) return std::numbers::egamma + std::log(x) - alternating_series(x, 2);
  return -exponential_integral(x).real();
}

double entire_cosine_integral(double x) {
  if (x <= series_up_to) return alternating_series(x, 2);
  return std::numbers::egamma + std::log(x) - cosine_integral(x);
}

}  // namespace wattfall::physics
