// The coil's geometry, then its figures at a frequency.
#include "physics/solenoid.hpp"

#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/special_functions/ellint_d.hpp>
#include <cmath>
#include <limits>

#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double zeta_prime_at_minus_one = -0.1654211437004509292;  // DLMF 25.11, Glaisher's constant: 1/12 - ln A
constexpr double metres_per_inch = 0.0254;

/// B(n) for n of 12 and more, from Barnes' asymptotic series (DLMF 5.17.5): error below 1e-14.
double mutual_correction_of_many(double n) {
  const double n2 = n * n;
  const double logarithm = std::isinf(n) ? 0.0 : std::log(n) / (6.0 * n);
  const double series = -1.0 / 240.0 + (1.0 / 1008.0 - (1.0 / 1440.0 - 1.0 / (1056.0 * n2)) / n2) / n2;
  return std::log(2.0 * pi) - 1.5 - logarithm + 2.0 * (zeta_prime_at_minus_one + series / n2) / n;
}

Validity check_coil(const Coil& coil) {
  Validity validity = check_conductor(coil.metal);
  validity.expect_positive("coil turns", coil.turns).expect_positive("coil diameter", coil.diameter_m);
  validity.expect_positive("coil length", coil.length_m).expect_positive("wire diameter", coil.wire_diameter_m);
  if (!validity.possible()) return validity;
  const double fill = coil.wire_diameter_m * coil.turns / coil.length_m;
  validity.expect(fill <= 1.0 + 1e-9, Verdict::impossible, "the wire is {} times the pitch: the turns overlap", fill);
  validity.expect(coil.wire_diameter_m < coil.diameter_m, Verdict::impossible, "the wire is {} of the coil's diameter",
                  coil.wire_diameter_m / coil.diameter_m);
  return validity;
}

void check_range(const Coil& coil, Validity& validity) {
  const double slimness = coil.length_m / coil.diameter_m, wire = coil.wire_diameter_m / coil.diameter_m;
  validity.expect(coil.turns >= 1.0, Verdict::outside, "{} turns are fewer than one", coil.turns);
  validity.expect(wire <= 1.0 / 3.0, Verdict::outside, "the wire is {} of the coil's diameter (up to 0.33 in range)",
                  wire);
  validity.expect(slimness >= 0.1 && slimness <= 50.0, Verdict::outside,
                  "length/diameter is {}, outside the 0.1 to 50 of the self-capacitance table", slimness);
}

double resonance_hz(double henry, double farad) {
  return 1.0 / (2.0 * pi * std::sqrt(henry * farad));
}

}  // namespace

double nagaoka_coefficient(double diameter_over_length) {
  const double u = diameter_over_length;
  if (u == 0.0) return 1.0;
  if (u > 2000.0) return 2.0 / (pi * u) * (std::log(4.0 * u) - 0.5);
  const double other = 1.0 / std::hypot(1.0, u), k = u * other;
  const double e = boost::math::ellint_2(k), d = boost::math::ellint_d(k);  // d = (K - E)/k^2
  return 4.0 / (3.0 * pi * other) * (other * other * d + (e - k));
}

double lundin_coefficient(double diameter_over_length) {
  const auto f1 = [](double x) { return (1.0 + x * (0.383901 + 0.017108 * x)) / (1.0 + 0.258952 * x); };
  const auto f2 = [](double x) { return x * (0.093842 + x * (0.002029 - 0.000801 * x)); };
  const double u = diameter_over_length;
  if (u <= 1.0) return f1(u * u) - 4.0 * u / (3.0 * pi);
  const double short_coil = (std::log(4.0 * u) - 0.5) * f1(1.0 / (u * u)) + f2(1.0 / (u * u));
  return 2.0 / (pi * u) * short_coil;
}

double rosa_self_correction(double wire_over_pitch) {
  return 1.25 - std::log(2.0 / wire_over_pitch);
}

double rosa_mutual_correction(double turns) {
  constexpr double many = 12.0;
  if (turns >= many) return mutual_correction_of_many(turns);
  const int steps = static_cast<int>(std::ceil(many - turns));
  const double n = turns + steps;
  double barnes = n / 2.0 * (mutual_correction_of_many(n) + n * std::log(n) - 1.5 * (n - 1.0));  // ln G(n + 1)
  for (int i = 1; i <= steps; ++i) barnes -= std::lgamma(turns + i);  // G(z + 1) = Gamma(z) G(z)
  return -turns * std::log(turns) + 1.5 * (turns - 1.0) + 2.0 / turns * barnes;
}

double current_sheet_inductance_h(double turns, double diameter_m, double length_m) {
  const double turn_area = pi * diameter_m * diameter_m / 4.0;
  return mu0_h_per_m * turn_area * turns * turns / length_m * nagaoka_coefficient(diameter_m / length_m);
}

double wheeler_inductance_h(double turns, double diameter_m, double length_m) {
  const double radius_in = diameter_m / 2.0 / metres_per_inch, length_in = length_m / metres_per_inch;
  return 1e-6 * radius_in * radius_in * turns * turns / (9.0 * radius_in + 10.0 * length_in);
}

WoundCoil wind_coil(const Coil& coil) {
  WoundCoil wound{coil, nan, nan, nan, nan, nan, nan, check_coil(coil)};
  if (!wound.validity.possible()) return wound;
  check_range(coil, wound.validity);
  const double fill = coil.wire_diameter_m * coil.turns / coil.length_m, slimness = coil.length_m / coil.diameter_m;
  const double correction = rosa_self_correction(fill) + rosa_mutual_correction(coil.turns);
  wound.inductance_h = current_sheet_inductance_h(coil.turns, coil.diameter_m, coil.length_m) -
                       mu0_h_per_m * coil.diameter_m / 2.0 * coil.turns * correction;
  wound.self_capacitance_f = medhurst_capacitance_f_per_m(slimness) * coil.diameter_m;
  wound.self_resonance_hz = resonance_hz(wound.inductance_h, wound.self_capacitance_f);
  wound.wire_length_m = std::hypot(pi * coil.diameter_m * coil.turns, coil.length_m);
  wound.direct_resistance_ohm =
      round_wire(coil.metal, coil.wire_diameter_m, 0.0).resistance_ohm_per_m * wound.wire_length_m;
  wound.proximity_ratio = coil.turns > 1.0 ? medhurst_resistance_ratio(slimness, fill) : 1.0;
  return wound;
}

CoilAt coil_at(const WoundCoil& wound, double frequency_hz) {
  CoilAt out{nan, nan, nan, {nan, nan}, wound.validity};
  out.validity.expect_positive("frequency", frequency_hz);
  if (!out.validity.possible()) return out;
  out.validity.expect(frequency_hz <= 0.5 * wound.self_resonance_hz, Verdict::outside,
                      "the frequency is {} of the coil's self-resonance (up to 0.5 in range)",
                      frequency_hz / wound.self_resonance_hz);
  const double x = skin_argument(wound.coil.metal, wound.coil.wire_diameter_m / 2.0, frequency_hz);
  const double omega = 2.0 * pi * frequency_hz;
  const SkinRatios skin = round_wire_ratios(x);
  const double internal = mu0_h_per_m * wound.coil.metal.relative_permeability / (8.0 * pi) * wound.wire_length_m;
  const double magnetic = mu0_h_per_m * (wound.coil.metal.relative_permeability - 1.0) / (8.0 * pi);
  out.inductance_h = wound.inductance_h + magnetic * wound.wire_length_m - internal * (1.0 - skin.inductance);
  out.resistance_ohm =
      wound.direct_resistance_ohm * (skin.resistance + (wound.proximity_ratio - 1.0) * transverse_field_ratio(x));
  out.quality = omega * out.inductance_h / out.resistance_ohm;
  const std::complex<double> series(out.resistance_ohm, omega * out.inductance_h);
  out.terminal_ohm = series / (1.0 + std::complex<double>(0.0, omega * wound.self_capacitance_f) * series);
  return out;
}

}  // namespace wattfall::physics
