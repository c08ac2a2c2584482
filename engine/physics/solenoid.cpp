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

bool is_strip(const Coil& coil) {
  return coil.profile == Profile::strip;
}

/// How thick the winding is across the radius.
double across_m(const Coil& coil) {
  return is_strip(coil) ? coil.thickness_m : coil.wire_diameter_m;
}

/// A + B of the conductor's section, with uniform current in it (a tube's as if it were solid).
double turns_correction(const Coil& coil) {
  const double pitch = coil.length_m / coil.turns, w = coil.wire_diameter_m, t = coil.thickness_m;
  const double mutual = rosa_mutual_correction(coil.turns);
  if (!is_strip(coil)) return rosa_self_correction(w / pitch) + mutual;
  return std::log(0.2235 * (w + t) / pitch) + 1.5 + mutual * (1.0 - (w * w - t * t) / (pitch * pitch));
}

/// The flux within a metre of the metal at direct current, as if it were not magnetic.
double air_internal_h_per_m(const Coil& coil) {
  Section section = coil.section();
  section.metal.relative_permeability = 1.0;
  return internal_impedance(section, Faces::one, 0.0).inductance_h_per_m;
}

/// Resistance that the neighbours' fields add a metre.
double proximity_ohm_per_m(const WoundCoil& wound, double frequency_hz) {
  const Coil& coil = wound.coil;
  if (is_strip(coil)) return 0.0;
  const double solid = round_wire(coil.metal, coil.wire_diameter_m, 0.0).resistance_ohm_per_m;
  const double field =
      coil.profile == Profile::tube
          ? tube_transverse_field_ratio(coil.metal, coil.wire_diameter_m, coil.thickness_m, frequency_hz)
          : transverse_field_ratio(skin_argument(coil.metal, coil.wire_diameter_m / 2.0, frequency_hz));
  return solid * (wound.proximity_ratio - 1.0) * field;
}

Validity check_coil(const Coil& coil) {
  Validity validity = check_conductor(coil.metal);
  validity.expect_positive("coil turns", coil.turns).expect_positive("coil diameter", coil.diameter_m);
  validity.expect_positive("coil length", coil.length_m).expect_positive("wire diameter", coil.wire_diameter_m);
  if (!validity.possible()) return validity;
  const double fill = coil.wire_diameter_m * coil.turns / coil.length_m;
  validity.expect(fill <= 1.0 + 1e-9, Verdict::impossible, "the wire is {} times the pitch: the turns overlap", fill);
  validity.expect(across_m(coil) < coil.diameter_m, Verdict::impossible, "the wire is {} of the coil's diameter",
                  across_m(coil) / coil.diameter_m);
  if (coil.profile != Profile::wire) validity.join(internal_impedance(coil.section(), Faces::one, 0.0).validity);
  return validity;
}

void check_range(const Coil& coil, Validity& validity) {
  const double slimness = coil.length_m / coil.diameter_m, wire = across_m(coil) / coil.diameter_m;
  validity.expect(coil.turns >= 1.0, Verdict::outside, "{} turns are fewer than one", coil.turns);
  if (is_strip(coil)) {
    const double cover = coil.wire_diameter_m * coil.turns / coil.length_m;
    validity.expect(wire <= 1.0 / 6.0, Verdict::outside,
                    "the strip's thickness is {} of the coil's diameter (up to 0.17 in range)", wire);
    validity.expect(
        cover >= 0.5, Verdict::outside,
        "the strip covers {} of the pitch (0.5 or more in range): its outer face and edges carry current too", cover);
  } else {
    validity.expect(wire <= 1.0 / 3.0, Verdict::outside, "the wire is {} of the coil's diameter (up to 0.33 in range)",
                    wire);
  }
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
  wound.inductance_h = current_sheet_inductance_h(coil.turns, coil.diameter_m, coil.length_m) -
                       mu0_h_per_m * coil.diameter_m / 2.0 * coil.turns * turns_correction(coil);
  wound.wire_length_m = std::hypot(pi * coil.diameter_m * coil.turns, coil.length_m);
  if (coil.profile == Profile::tube)  // there is no flux in the bore
    wound.inductance_h -= (mu0_h_per_m / (8.0 * pi) - air_internal_h_per_m(coil)) * wound.wire_length_m;
  wound.self_capacitance_f = medhurst_capacitance_f_per_m(slimness) * coil.diameter_m;
  wound.self_resonance_hz = resonance_hz(wound.inductance_h, wound.self_capacitance_f);
  wound.direct_resistance_ohm =
      internal_impedance(coil.section(), Faces::one, 0.0).resistance_ohm_per_m * wound.wire_length_m;
  wound.proximity_ratio = coil.turns > 1.0 && !is_strip(coil) ? medhurst_resistance_ratio(slimness, fill) : 1.0;
  return wound;
}

CoilAt coil_at(const WoundCoil& wound, double frequency_hz) {
  CoilAt out{nan, nan, nan, {nan, nan}, wound.validity};
  out.validity.expect_positive("frequency", frequency_hz);
  if (!out.validity.possible()) return out;
  out.validity.expect(frequency_hz <= 0.5 * wound.self_resonance_hz, Verdict::outside,
                      "the frequency is {} of the coil's self-resonance (up to 0.5 in range)",
                      frequency_hz / wound.self_resonance_hz);
  const double omega = 2.0 * pi * frequency_hz;
  const InternalImpedance metal = internal_impedance(wound.coil.section(), Faces::one, frequency_hz);
  out.inductance_h =
      wound.inductance_h + (metal.inductance_h_per_m - air_internal_h_per_m(wound.coil)) * wound.wire_length_m;
  out.resistance_ohm = (metal.resistance_ohm_per_m + proximity_ohm_per_m(wound, frequency_hz)) * wound.wire_length_m;
  out.quality = omega * out.inductance_h / out.resistance_ohm;
  const std::complex<double> series(out.resistance_ohm, omega * out.inductance_h);
  out.terminal_ohm = series / (1.0 + std::complex<double>(0.0, omega * wound.self_capacitance_f) * series);
  return out;
}

}  // namespace wattfall::physics
