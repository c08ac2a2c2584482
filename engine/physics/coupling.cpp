// Elliptic integrals for circles, a mean of them for coils, Cholesky for sets.
#include "physics/coupling.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/special_functions/ellint_d.hpp>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "physics/constants.hpp"
#include "physics/solenoid.hpp"

namespace wattfall::physics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double rounding = 1e-12;  // pivots this far below zero are rounding of a perfect coupling

using Rule = boost::math::quadrature::gauss<double, 30>;

double mean_over(double length_m, const auto& value) {
  return 0.5 * Rule::integrate([&](double t) { return value(t * length_m / 2.0); }, -1.0, 1.0);
}

Validity check_shape(const CoilShape& coil) {
  Validity validity;
  validity.expect_positive("coil turns", coil.turns).expect_positive("coil diameter", coil.diameter_m);
  return validity.expect_positive("coil length", coil.length_m);
}

/// Distance between the sheets: along the axis, across it, or both.
double clearance_m(const CoilShape& coil1, const CoilShape& coil2, double distance_m) {
  const double along = std::fabs(distance_m) - (coil1.length_m + coil2.length_m) / 2.0;
  return std::hypot(std::fmax(along, 0.0), (coil1.diameter_m - coil2.diameter_m) / 2.0);
}

/// Element of Cholesky's factor before its division: the factor less what earlier coils account for.
double what_is_left(const std::vector<double>& lower, std::span<const double> factors, std::size_t n, std::size_t row,
                    std::size_t column) {
  double left = factors[row * n + column];
  for (std::size_t k = 0; k < column; ++k) left -= lower[row * n + k] * lower[column * n + k];
  return left;
}

/// A pivot of zero is a coil that earlier ones hold in full: nothing may be left beside it.
double below_pivot(double left, double pivot) {
  if (pivot > 0.0) return left / pivot;
  return std::fabs(left) > 1e-6 ? nan : 0.0;  // 1e-6: the root of `rounding`
}

}  // namespace

double coaxial_circles_mutual_h(double radius1_m, double radius2_m, double distance_m) {
  const double far = std::hypot(radius1_m + radius2_m, distance_m),
               near = std::hypot(radius1_m - radius2_m, distance_m);
  const double product = radius1_m * radius2_m, k1 = 4.0 * product / ((far + near) * (far + near));
  if (near == 0.0) return std::numeric_limits<double>::infinity();
  return 2.0 * mu0_h_per_m * std::sqrt(product) * k1 * std::sqrt(k1) * boost::math::ellint_d(k1);
}

Mutual coaxial_coils(const CoilShape& coil1, const CoilShape& coil2, double distance_m) {
  Mutual out{nan, nan, check_shape(coil1).join(check_shape(coil2))};
  if (!out.validity.possible()) return out;
  const double clear = clearance_m(coil1, coil2, distance_m) / std::fmax(coil1.length_m, coil2.length_m);
  out.validity.expect(clear >= 0.1, Verdict::outside,
                      "the coils are only {} of a length apart, too close for a mean over sheets", clear);
  const double mean = mean_over(coil1.length_m, [&](double z1) {
    return mean_over(coil2.length_m, [&](double z2) {
      return coaxial_circles_mutual_h(coil1.diameter_m / 2.0, coil2.diameter_m / 2.0, distance_m + z2 - z1);
    });
  });
  out.mutual_h = coil1.turns * coil2.turns * mean;
  out.factor = coupling_factor(out.mutual_h, current_sheet_inductance_h(coil1.turns, coil1.diameter_m, coil1.length_m),
                               current_sheet_inductance_h(coil2.turns, coil2.diameter_m, coil2.length_m));
  return out;
}

double mutual_from_factor_h(double factor, double inductance1_h, double inductance2_h) {
  return factor * std::sqrt(inductance1_h * inductance2_h);
}
double coupling_factor(double mutual_h, double inductance1_h, double inductance2_h) {
  return mutual_h / std::sqrt(inductance1_h * inductance2_h);
}
double mutual_from_series_aiding_h(double series_h, double inductance1_h, double inductance2_h) {
  return (series_h - inductance1_h - inductance2_h) / 2.0;
}
double leakage_inductance_h(double factor, double inductance_h) {
  return inductance_h * (1.0 - factor) * (1.0 + factor);
}

CouplingCheck check_couplings(int coils, std::span<const double> factors) {
  CouplingCheck out;
  const auto n = static_cast<std::size_t>(coils);
  std::vector<double> lower(n * n, 0.0);
  for (std::size_t row = 0; row < n; ++row) {
    for (std::size_t column = 0; column < row; ++column)
      lower[row * n + column] = below_pivot(what_is_left(lower, factors, n, row, column), lower[column * n + column]);
    const double pivot = what_is_left(lower, factors, n, row, row);
    if (out.coil < 0 || !(pivot >= out.smallest_pivot)) {
      out.smallest_pivot = pivot;
      out.coil = static_cast<int>(row);
    }
    out.validity.expect(pivot >= -rounding, Verdict::impossible,
                        "these coupling factors cannot stand together: coil {} would give power away",
                        static_cast<double>(row + 1));
    if (!out.validity.possible()) return out;
    lower[row * n + row] = std::sqrt(std::max(pivot, 0.0));
  }
  return out;
}

}  // namespace wattfall::physics
