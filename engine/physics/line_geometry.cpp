// Cross-sections to R, L, G, C.
#include "physics/line_geometry.hpp"

#include <cmath>
#include <limits>

#include "physics/bessel.hpp"
#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double default_wall = 0.1;  // of the outer diameter: thick against the skin above some kHz
constexpr double tem_up_to = 0.1;     // of a wavelength: engineering habit; a pair radiates s^2 w^2 of its power

double wavelength_m(double frequency_hz, const Insulation& insulation) {
  return speed_of_light_m_per_s / frequency_hz / std::sqrt(insulation.relative_permittivity);
}

LineConstants nothing(Validity validity) {
  return {nan, nan, nan, nan, std::move(validity)};
}

Validity check_common(const Insulation& insulation, double frequency_hz) {
  return check_insulation(insulation).expect_positive("frequency", frequency_hz);
}

Validity check(const Coax& coax, double frequency_hz) {
  Validity validity = check_common(coax.insulation, frequency_hz);
  validity.join(check_conductor(coax.inner)).join(check_conductor(coax.outer));
  validity.expect_positive("inner diameter", coax.inner_diameter_m);
  validity.expect_positive("outer diameter", coax.outer_diameter_m);
  validity.expect(coax.shell_wall_m >= 0.0, Verdict::impossible, "shell wall is {} m, and must not be below zero",
                  coax.shell_wall_m);
  if (!validity.possible()) return validity;
  validity.expect(coax.outer_diameter_m > coax.inner_diameter_m, Verdict::impossible,
                  "the inner conductor is {} times as thick as the shell is wide",
                  coax.inner_diameter_m / coax.outer_diameter_m);
  return validity.expect(frequency_hz < 0.9 * coax_mode_limit_hz(coax), Verdict::outside,
                         "the frequency is {} of the coax's first waveguide mode",
                         frequency_hz / coax_mode_limit_hz(coax));
}

/// Sizes of a pair, or of a wire and its image, `apart` between centres.
Validity check_pair(const Conductor& metal, const Insulation& insulation, double diameter_m, double apart_m,
                    double frequency_hz) {
  Validity validity = check_common(insulation, frequency_hz).join(check_conductor(metal));
  validity.expect_positive("wire diameter", diameter_m).expect_positive("spacing", apart_m);
  if (!validity.possible()) return validity;
  validity.expect(apart_m > diameter_m, Verdict::impossible, "the wire is {} times its spacing", diameter_m / apart_m);
  const double share = apart_m / wavelength_m(frequency_hz, insulation);
  return validity.expect(share <= tem_up_to, Verdict::outside,
                         "the spacing is {} of a wavelength (up to 0.1 in range): the line radiates", share);
}

InternalImpedance wire(const Conductor& metal, double diameter_m, double frequency_hz, Skin skin) {
  if (skin == Skin::exact) return round_wire(metal, diameter_m, frequency_hz);
  return {round_wire_thin_skin(metal, diameter_m, frequency_hz).resistance_ohm_per_m, 0.0, {}};
}

InternalImpedance shell(const Coax& coax, double frequency_hz, Skin skin) {
  if (skin == Skin::thin) return wire(coax.outer, coax.outer_diameter_m, frequency_hz, skin);
  const double wall = coax.shell_wall_m > 0.0 ? coax.shell_wall_m : default_wall * coax.outer_diameter_m;
  return round_shell(coax.outer, coax.outer_diameter_m, wall, frequency_hz);
}

/// Both wires of a pair: R and L per metre of line, with the proximity of go and return.
InternalImpedance pair_of_wires(const Conductor& metal, double diameter_m, double u, double frequency_hz, Skin skin) {
  const InternalImpedance lone = wire(metal, diameter_m, frequency_hz, skin);
  const double far = std::log(2.0 * u), near = std::acosh(u), proximity = two_wire_proximity_ratio(u);
  if (skin == Skin::thin) return {2.0 * lone.resistance_ohm_per_m * proximity, mu0_h_per_m / pi * near, {}};
  const double x = skin_argument(metal, diameter_m / 2.0, frequency_hz);
  const double direct = round_wire(metal, diameter_m, 0.0).resistance_ohm_per_m;
  const double excluded = field_exclusion(std::complex<double>(1.0, 1.0) * (x / std::numbers::sqrt2)).real();
  const double ohm = lone.resistance_ohm_per_m + direct * (proximity - 1.0) * transverse_field_ratio(x);
  const double henry = mu0_h_per_m / pi * (far - (far - near) * excluded);
  return {2.0 * ohm, henry + 2.0 * lone.inductance_h_per_m, {}};
}

LineConstants with_dielectric(const InternalImpedance& metal, double farad, const Insulation& insulation,
                              double frequency_hz, Validity validity) {
  const double siemens = loss_conductance_s(farad, insulation.loss_tangent, frequency_hz);
  return {metal.resistance_ohm_per_m, metal.inductance_h_per_m, siemens, farad, std::move(validity)};
}

}  // namespace

LineConstants coax_constants(const Coax& coax, double frequency_hz, Skin skin) {
  Validity validity = check(coax, frequency_hz);
  if (!validity.possible()) return nothing(std::move(validity));
  const double logarithm = std::log(coax.outer_diameter_m / coax.inner_diameter_m);
  const InternalImpedance inside = wire(coax.inner, coax.inner_diameter_m, frequency_hz, skin);
  const InternalImpedance outside = shell(coax, frequency_hz, skin);
  const InternalImpedance both{
      inside.resistance_ohm_per_m + outside.resistance_ohm_per_m,
      mu0_h_per_m * logarithm / (2.0 * pi) + inside.inductance_h_per_m + outside.inductance_h_per_m,
      {}};
  const double farad = 2.0 * pi * eps0_f_per_m * coax.insulation.relative_permittivity / logarithm;
  return with_dielectric(both, farad, coax.insulation, frequency_hz, std::move(validity));
}

LineConstants two_wire_constants(const TwoWire& line, double frequency_hz, Skin skin) {
  Validity validity = check_pair(line.metal, line.insulation, line.wire_diameter_m, line.spacing_m, frequency_hz);
  if (!validity.possible()) return nothing(std::move(validity));
  const double u = line.spacing_m / line.wire_diameter_m;
  const InternalImpedance both = pair_of_wires(line.metal, line.wire_diameter_m, u, frequency_hz, skin);
  const double farad = pi * eps0_f_per_m * line.insulation.relative_permittivity / std::acosh(u);
  return with_dielectric(both, farad, line.insulation, frequency_hz, std::move(validity));
}

LineConstants over_ground_constants(const WireOverGround& line, double frequency_hz, Skin skin) {
  const TwoWire image{line.wire_diameter_m, 2.0 * line.height_m, line.metal, line.insulation};
  LineConstants out = two_wire_constants(image, frequency_hz, skin);
  out.resistance_ohm_per_m /= 2.0;
  out.inductance_h_per_m /= 2.0;
  out.conductance_s_per_m *= 2.0;
  out.capacitance_f_per_m *= 2.0;
  return out;
}

double coax_impedance_ohm(double outer_over_inner, double relative_permittivity) {
  return eta0_ohm / (2.0 * pi) * std::log(outer_over_inner) / std::sqrt(relative_permittivity);
}
double two_wire_impedance_ohm(double spacing_over_diameter, double relative_permittivity) {
  return eta0_ohm / pi * std::acosh(spacing_over_diameter) / std::sqrt(relative_permittivity);
}
double over_ground_impedance_ohm(double height_over_diameter, double relative_permittivity) {
  return two_wire_impedance_ohm(2.0 * height_over_diameter, relative_permittivity) / 2.0;
}
double two_wire_far_impedance_ohm(double spacing_over_diameter, double relative_permittivity) {
  return eta0_ohm / pi * std::log(2.0 * spacing_over_diameter) / std::sqrt(relative_permittivity);
}

double two_wire_proximity_ratio(double spacing_over_diameter) {
  const double u = spacing_over_diameter;
  return u / std::sqrt((u - 1.0) * (u + 1.0));
}

double coax_mode_limit_hz(const Coax& coax) {
  const double mean_turn = pi * (coax.outer_diameter_m + coax.inner_diameter_m) / 2.0;
  return speed_of_light_m_per_s / (mean_turn * std::sqrt(coax.insulation.relative_permittivity));
}

}  // namespace wattfall::physics
