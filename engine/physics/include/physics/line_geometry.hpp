// Lines from their cross-section: R, L, G, C per metre at a frequency, for `line_wave` to turn into gamma and Z0.
//
// Equations (d wire, D inner side of the shell, s spacing of centres, h height of the axis, P the proximity ratio):
//   coax        L = mu0 ln(D/d)/(2 pi) + internal of wire and shell,  C = 2 pi e0 er/ln(D/d),  R of wire and shell
//   two wires   C = pi e0 er/acosh(s/d),  u = s/d,  P = u/sqrt(u^2 - 1)
//               R = 2 R0 (R/R0 + (P - 1) transverse_field_ratio)
//               L = mu0/pi (ln 2u - (ln 2u - acosh u) Re(I2/I0)) + 2 internal
//   over ground half the voltage of two wires 2 h apart: L/2, R/2, 2 C; the ground is a perfect conductor
//   dielectric  G = w C tan d
// Sources: coaxial and two-wire closed forms: S. Ramo, J. Whinnery, T. Van Duzer, Fields and Waves in Communication
// Electronics, table of line constants; P: H. B. Dwight, "Proximity effect in wires and thin tubes", Trans. AIEE 42,
// 1923; all from memory. R and L of two wires between low frequencies (uniform current) and high ones (acosh form)
// follow the transverse field's exclusion from a round wire: exact at both ends and to first order in (d/s)^2, own
// derivation. Range: TEM alone, so cross-sections below a tenth of a wavelength; s, 2h > d. Braid counts as a solid
// shell, and real earth, radiation, insulation of part of the field (give an effective permittivity) and roughness are
// left out.
#pragma once

#include "physics/line_wave.hpp"
#include "physics/plates.hpp"
#include "physics/skin.hpp"

namespace wattfall::physics {

/// Exact Bessel forms, or the textbook's thin skin: Rs on the surfaces and no internal inductance.
enum class Skin { exact, thin };

struct Coax {
  double inner_diameter_m = 0.0;
  double outer_diameter_m = 0.0;  ///< inner side of the shell
  double shell_wall_m = 0.0;      ///< 0: a tenth of the outer diameter
  Conductor inner, outer;
  Insulation insulation;
};

struct TwoWire {
  double wire_diameter_m = 0.0;
  double spacing_m = 0.0;  ///< between centres
  Conductor metal;
  Insulation insulation;  ///< effective
};

struct WireOverGround {
  double wire_diameter_m = 0.0;
  double height_m = 0.0;  ///< of the axis
  Conductor metal;
  Insulation insulation;
};

LineConstants coax_constants(const Coax& coax, double frequency_hz, Skin skin = Skin::exact);
LineConstants two_wire_constants(const TwoWire& line, double frequency_hz, Skin skin = Skin::exact);
LineConstants over_ground_constants(const WireOverGround& line, double frequency_hz, Skin skin = Skin::exact);

/// Impedance without loss at high frequencies [ohm]: eta0/(2 pi sqrt er) ln(D/d), eta0/(pi sqrt er) acosh(s/d),
/// eta0/(2 pi sqrt er) acosh(2h/d).
double coax_impedance_ohm(double outer_over_inner, double relative_permittivity = 1.0);
double two_wire_impedance_ohm(double spacing_over_diameter, double relative_permittivity = 1.0);
double over_ground_impedance_ohm(double height_over_diameter, double relative_permittivity = 1.0);
/// The handbooks' 276 log10(2s/d) = eta0/pi ln(2s/d)/sqrt er: 2 % high at s = 2d, 26 % low at s = 1.02 d.
double two_wire_far_impedance_ohm(double spacing_over_diameter, double relative_permittivity = 1.0);
/// (s/d)/sqrt((s/d)^2 - 1), R of go and return wires against a lone one at thin skin.
double two_wire_proximity_ratio(double spacing_over_diameter);
/// Above this the first waveguide mode of a coax runs too: c/(pi (D + d)/2 sqrt er) [Hz], within 8 %.
double coax_mode_limit_hz(const Coax& coax);

}  // namespace wattfall::physics
