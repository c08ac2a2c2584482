#include "one_port.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::walk {
namespace {

/// Keeps n (over 50 ohm) and d near one, whatever the length of the chain.
Made scaled(Made made) {
  const double size = std::max(std::abs(made.whole.n) / 50.0, std::abs(made.whole.d));
  if (!(size > 0.0) || !std::isfinite(size)) return made;
  const double factor = std::exp2(-std::ilogb(size));  // a power of two, so that nothing is rounded
  made.whole.n *= factor;
  made.whole.d *= factor;
  made.first *= factor;
  made.second *= factor;
  return made;
}

}  // namespace

Made in_series(const OnePort& x, const OnePort& y) {
  return scaled({{x.n * y.d + y.n * x.d, x.d * y.d}, y.d, x.d});
}

Made in_parallel(const OnePort& x, const OnePort& y) {
  return scaled({{x.n * y.n, x.d * y.n + y.d * x.n}, y.n, x.n});
}

Made through_line(const OnePort& end, Complex gamma_l, Complex impedance_ohm) {
  // V1 = V2 cosh + I2 Z0 sinh, I1 = V2 sinh / Z0 + I2 cosh, all over e^(gamma l) (Pozar, section 2.7; from memory).
  const Complex twice = std::exp(-2.0 * gamma_l);
  const Complex cosh = 0.5 * (1.0 + twice), sinh = 0.5 * (1.0 - twice);
  return scaled({{end.n * cosh + end.d * impedance_ohm * sinh, end.n * sinh / impedance_ohm + end.d * cosh}, std::exp(-gamma_l)});
}

Made through_turns(const OnePort& end, double ratio, bool from_second) {
  if (from_second) return scaled({{end.n / ratio, end.d * ratio}});
  return scaled({{end.n * ratio, end.d / ratio}});
}

Made through_matrix(const OnePort& end, const std::array<Complex, 4>& a, const std::array<Complex, 4>& b, bool from_second) {
  // With V = k n and I = -k d at the closed port, the other's V and I follow from two equations (Cramer).
  const int far = from_second ? 1 : 0, near = 1 - far;
  const Complex r0 = b[far] * end.d - a[far] * end.n, r1 = b[2 + far] * end.d - a[2 + far] * end.n;
  const Complex determinant = a[near] * b[2 + near] - b[near] * a[2 + near];
  return scaled({{r0 * b[2 + near] - b[near] * r1, a[near] * r1 - r0 * a[2 + near]}, determinant});
}

}  // namespace wattfall::walk
