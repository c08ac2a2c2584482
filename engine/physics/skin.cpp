// Internal impedances from the Bessel functions of bessel.hpp. Resistance and inductance are kept apart from the start,
// so that neither is the small difference of the other at low frequencies.
#include "physics/skin.hpp"

#include <cmath>
#include <limits>

#include "physics/bessel.hpp"
#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

using Complex = std::complex<double>;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

double omega(double frequency_hz) {
  return 2.0 * pi * frequency_hz;
}
double permeability(const Conductor& metal) {
  return mu0_h_per_m * metal.relative_permeability;
}
/// m = sqrt(j w mu sigma) = (1 + j)/delta
Complex wave_in_metal(const Conductor& metal, double frequency_hz) {
  return Complex(1.0, 1.0) / skin_depth_m(metal, frequency_hz);
}
Complex argument_of(double x) {
  return Complex(1.0, 1.0) * (x / std::numbers::sqrt2);
}

Validity check_frequency(const Conductor& metal, double frequency_hz) {
  Validity validity = check_conductor(metal);
  validity.expect(frequency_hz >= 0.0, Verdict::impossible, "frequency is {} Hz, and must not be below zero",
                  frequency_hz);
  return validity;
}

InternalImpedance nothing(Validity validity) {
  return {nan, nan, std::move(validity)};
}

InternalImpedance from_impedance(Complex ohm_per_m, double frequency_hz, Validity validity) {
  return {ohm_per_m.real(), ohm_per_m.imag() / omega(frequency_hz), std::move(validity)};
}

double ring_resistance(const Conductor& metal, double inner_m, double outer_m) {
  return 1.0 / (pi * (outer_m - inner_m) * (outer_m + inner_m) * metal.conductivity_s_per_m);
}

/// Flux within a ring of uniform current, from the energy of its field:
/// L = mu/(2 pi) (h^4 ln(b/a) - (b^2 - a^2)(3 h^2 - o^2)/4)/(b^2 - a^2)^2, h the side without field, o the other.
double ring_inductance(const Conductor& metal, double inner_m, double outer_m, bool return_inside) {
  const double a2 = inner_m * inner_m, b2 = outer_m * outer_m, area = (outer_m - inner_m) * (outer_m + inner_m);
  const double h2 = return_inside ? b2 : a2, o2 = return_inside ? a2 : b2;
  const double logarithm = h2 * h2 * std::log(outer_m / inner_m);
  return permeability(metal) / (2.0 * pi) * (logarithm - area * (3.0 * h2 - o2) / 4.0) / (area * area);
}

/// Where the wall is so thin against the skin that the direct-current figures are right to (t/delta)^4/15 < 1e-13.
bool skin_is_idle(const Conductor& metal, double thickness_m, double frequency_hz) {
  return thickness_m < 1e-3 * skin_depth_m(metal, frequency_hz);
}

/// (I0(near) K1(far) + K0(near) I1(far)) / |I1 K1 - I1 K1|, of which the near face carries the field.
Complex ring_ratio(Complex m, double near_m, double far_m) {
  const ScaledBessel near = scaled_bessel(m * near_m), far = scaled_bessel(m * far_m);
  const Complex fading = std::exp(-2.0 * m * std::abs(near_m - far_m));
  if (near_m > far_m)
    return (near.i0 * far.k1 + near.k0 * far.i1 * fading) / (near.i1 * far.k1 - near.k1 * far.i1 * fading);
  return (near.k0 * far.i1 + near.i0 * far.k1 * fading) / (near.k1 * far.i1 - near.i1 * far.k1 * fading);
}

InternalImpedance ring(const Conductor& metal, double near_m, double far_m, double frequency_hz, Validity validity) {
  const double inner = std::min(near_m, far_m), outer = std::max(near_m, far_m);
  if (skin_is_idle(metal, outer - inner, frequency_hz))
    return {ring_resistance(metal, inner, outer), ring_inductance(metal, inner, outer, near_m < far_m), validity};
  const Complex m = wave_in_metal(metal, frequency_hz);
  const Complex ohm = m / (2.0 * pi * near_m * metal.conductivity_s_per_m) * ring_ratio(m, near_m, far_m);
  return from_impedance(ohm, frequency_hz, std::move(validity));
}

}  // namespace

Conductor conductor_of(const Metal& metal) {
  return {metal.conductivity_s_per_m, metal.relative_permeability};
}

Validity check_conductor(const Conductor& metal) {
  Validity validity;
  validity.expect_positive("conductivity", metal.conductivity_s_per_m);
  validity.expect(metal.relative_permeability >= 0.99, Verdict::impossible,
                  "relative permeability is {}, and must be 1 or more", metal.relative_permeability);
  return validity;
}

double skin_depth_m(const Conductor& metal, double frequency_hz) {
  return std::sqrt(2.0 / (omega(frequency_hz) * permeability(metal) * metal.conductivity_s_per_m));
}

double surface_resistance_ohm(const Conductor& metal, double frequency_hz) {
  return std::sqrt(omega(frequency_hz) * permeability(metal) / (2.0 * metal.conductivity_s_per_m));
}

double skin_argument(const Conductor& metal, double radius_m, double frequency_hz) {
  return radius_m * std::sqrt(omega(frequency_hz) * permeability(metal) * metal.conductivity_s_per_m);
}

SkinRatios round_wire_ratios(double x) {
  const Complex tail = bessel_ratio_tail(argument_of(x));  // R/R0 + j x^2/8 L/L0 = 1 + j x^2/4 tail
  return {1.0 - x * x / 4.0 * tail.imag(), 2.0 * tail.real()};
}

double transverse_field_ratio(double x) {
  return x * x / 4.0 * field_exclusion(argument_of(x)).imag();
}

double tube_transverse_field_ratio(const Conductor& metal, double outer_diameter_m, double wall_m,
                                   double frequency_hz) {
  const double outer = outer_diameter_m / 2.0, inner = outer - wall_m;
  const double x = skin_argument(metal, outer, frequency_hz);
  if (inner < 1e-6 * outer || x == 0.0) return transverse_field_ratio(x);
  const Complex m = wave_in_metal(metal, frequency_hz), wb = m * outer, wa = m * inner;
  const ScaledBessel b = scaled_bessel(wb), a = scaled_bessel(wa);
  const auto i2 = [](const ScaledBessel& at, Complex w) { return field_exclusion(w) * at.i0; };
  const auto k2 = [](const ScaledBessel& at, Complex w) { return at.k0 + 2.0 * at.k1 / w; };
  const Complex fading = i2(a, wa) * std::exp(-2.0 * m * wall_m);
  const Complex excluded = (i2(b, wb) * k2(a, wa) - fading * k2(b, wb)) / (b.i0 * k2(a, wa) - fading * b.k0);
  return x * x / 4.0 * excluded.imag();
}

std::complex<double> InternalImpedance::impedance_ohm_per_m(double frequency_hz) const {
  return {resistance_ohm_per_m, omega(frequency_hz) * inductance_h_per_m};
}

InternalImpedance round_wire(const Conductor& metal, double diameter_m, double frequency_hz) {
  Validity validity = check_frequency(metal, frequency_hz).expect_positive("wire diameter", diameter_m);
  if (!validity.possible()) return nothing(validity);
  const SkinRatios ratios = round_wire_ratios(skin_argument(metal, diameter_m / 2.0, frequency_hz));
  return {ring_resistance(metal, 0.0, diameter_m / 2.0) * ratios.resistance,
          permeability(metal) / (8.0 * pi) * ratios.inductance, std::move(validity)};
}

InternalImpedance round_wire_thin_skin(const Conductor& metal, double diameter_m, double frequency_hz) {
  Validity validity = check_frequency(metal, frequency_hz).expect_positive("wire diameter", diameter_m);
  if (!validity.possible()) return nothing(validity);
  const double x = skin_argument(metal, diameter_m / 2.0, frequency_hz);
  validity.expect(x >= 7.0, Verdict::outside, "the wire is {} skin depths thick, too thin for a thin skin",
                  x * std::numbers::sqrt2);
  const double ohm = surface_resistance_ohm(metal, frequency_hz) / (pi * diameter_m);
  return from_impedance({ohm, ohm}, frequency_hz, std::move(validity));
}

InternalImpedance round_tube(const Conductor& metal, double outer_diameter_m, double wall_m, double frequency_hz) {
  Validity validity = check_frequency(metal, frequency_hz).expect_positive("tube diameter", outer_diameter_m);
  validity.expect_positive("tube wall", wall_m);
  validity.expect(wall_m <= outer_diameter_m / 2.0 * (1.0 + 1e-12), Verdict::impossible,
                  "the wall is {} of the tube's radius", wall_m / (outer_diameter_m / 2.0));
  if (!validity.possible()) return nothing(validity);
  const double outer = outer_diameter_m / 2.0, inner = outer - wall_m;
  if (inner < 1e-6 * outer) return round_wire(metal, outer_diameter_m, frequency_hz);
  return ring(metal, outer, inner, frequency_hz, std::move(validity));
}

InternalImpedance round_shell(const Conductor& metal, double inner_diameter_m, double wall_m, double frequency_hz) {
  Validity validity = check_frequency(metal, frequency_hz).expect_positive("shell diameter", inner_diameter_m);
  validity.expect_positive("shell wall", wall_m);
  if (!validity.possible()) return nothing(validity);
  return ring(metal, inner_diameter_m / 2.0, inner_diameter_m / 2.0 + wall_m, frequency_hz, std::move(validity));
}

InternalImpedance flat_strip(const Conductor& metal, double width_m, double thickness_m, Faces faces,
                             double frequency_hz) {
  Validity validity = check_frequency(metal, frequency_hz).expect_positive("strip width", width_m);
  validity.expect_positive("strip thickness", thickness_m);
  if (!validity.possible()) return nothing(validity);
  validity.expect(width_m >= 3.0 * thickness_m, Verdict::outside, "the strip is only {} times as wide as thick",
                  width_m / thickness_m);
  const double n = static_cast<double>(faces), depth = thickness_m / n;
  if (skin_is_idle(metal, depth, frequency_hz))
    return {1.0 / (metal.conductivity_s_per_m * width_m * thickness_m),
            permeability(metal) * depth / (3.0 * n * width_m), std::move(validity)};
  const Complex m = wave_in_metal(metal, frequency_hz);
  const Complex ohm = m / (n * width_m * metal.conductivity_s_per_m) / std::tanh(m * depth);
  return from_impedance(ohm, frequency_hz, std::move(validity));
}

InternalImpedance internal_impedance(const Section& section, Faces faces, double frequency_hz) {
  if (section.profile == Profile::tube)
    return round_tube(section.metal, section.width_m, section.thickness_m, frequency_hz);
  if (section.profile == Profile::strip)
    return flat_strip(section.metal, section.width_m, section.thickness_m, faces, frequency_hz);
  return round_wire(section.metal, section.width_m, frequency_hz);
}

double skin_scaled_resistance_ohm(double direct_ohm, const Conductor& metal, double diameter_m, double frequency_hz) {
  return direct_ohm * round_wire_ratios(skin_argument(metal, diameter_m / 2.0, frequency_hz)).resistance;
}

double skin_scaled_resistance_ohm(double direct_ohm, const Section& section, double frequency_hz) {
  if (section.profile == Profile::wire)
    return skin_scaled_resistance_ohm(direct_ohm, section.metal, section.width_m, frequency_hz);
  const auto ohm_at = [&](double hertz) {
    return internal_impedance(section, Faces::both, hertz).resistance_ohm_per_m;
  };
  return direct_ohm * ohm_at(frequency_hz) / ohm_at(0.0);
}

}  // namespace wattfall::physics
