// Skin effect: the internal impedance per metre of round wires, tubes, shells and flat conductors, from direct current
// to VHF. Internal means resistance and the flux within the metal; the flux outside belongs to the geometry.
//
// Equations (time e^(+j w t), delta = sqrt(2/(w mu sigma)), m = (1 + j)/delta, a the radius):
//   wire   Z = 1/(pi a^2 sigma) (m a/2) I0(m a)/I1(m a)                      = J0/J1 form with k = (1 - j)/delta
//   tube   Z = m/(2 pi b sigma) (I0(mb) K1(ma) + K0(mb) I1(ma)) / (I1(mb) K1(ma) - I1(ma) K1(mb))   return outside
//   shell  Z = m/(2 pi a sigma) (I0(ma) K1(mb) + K0(ma) I1(mb)) / (I1(mb) K1(ma) - I1(ma) K1(mb))   return inside
//   strip  Z = m/(n w sigma) coth(m t/n), n faces that carry the current; edges are left out
// Sources: S. A. Schelkunoff, "The electromagnetic theory of coaxial transmission lines and cylindrical shields", Bell
// System Technical Journal 13, 1934 (wire, tube, shell); H. A. Wheeler, "Formulas for the skin effect", Proc. IRE 30,
// 1942 (flat). Both from memory. Accuracy of the wire 1e-12 relative in both parts; surface roughness is left out.
// Range: 0 Hz up to where the section is thick against a wavelength; a strip at least three times as wide as thick, whose
// edges carry more than its faces: alone in space its R is low by some ten per cent and more. Coats are left out.
// The metal is held by two figures, so that a temperature or a measured alloy may be given in place of the table's.
#pragma once

#include <complex>

#include "physics/materials.hpp"
#include "physics/validity.hpp"

namespace wattfall::physics {

struct Conductor {
  double conductivity_s_per_m = 5.8e7;  ///< annealed copper, IEC 60028:1925
  double relative_permeability = 1.0;
};

Conductor conductor_of(const Metal& metal);
/// Conductivity above zero, permeability 1 or more.
Validity check_conductor(const Conductor& metal);

/// delta [m]; infinite at 0 Hz.
double skin_depth_m(const Conductor& metal, double frequency_hz);
/// Rs = 1/(sigma delta) [ohm], the resistance of a thick square.
double surface_resistance_ohm(const Conductor& metal, double frequency_hz);

/// x = a sqrt(w mu sigma) = sqrt 2 a/delta, the argument of the tables of ber and bei.
double skin_argument(const Conductor& metal, double radius_m, double frequency_hz);

/// Round wire against direct current, by its argument x >= 0: R/R0 and L/L0 with L0 = mu/(8 pi) per metre.
struct SkinRatios {
  double resistance, inductance;
};
SkinRatios round_wire_ratios(double x);

/// What a metre of conductor adds to a circuit.
struct InternalImpedance {
  double resistance_ohm_per_m = 0.0;
  double inductance_h_per_m = 0.0;  ///< internal alone; mu/(8 pi) in a wire at 0 Hz
  Validity validity;

  std::complex<double> impedance_ohm_per_m(double frequency_hz) const;
};

InternalImpedance round_wire(const Conductor& metal, double diameter_m, double frequency_hz);
/// The high-frequency estimate Rs/(pi d) and its equal reactance: good to 1 % above x = 70, and 1/4 short of R/R0
/// always.
InternalImpedance round_wire_thin_skin(const Conductor& metal, double diameter_m, double frequency_hz);
/// A tube with its return outside. A wall as thick as the radius makes a wire.
InternalImpedance round_tube(const Conductor& metal, double outer_diameter_m, double wall_m, double frequency_hz);
/// A shell with its return inside, as the outer conductor of a cable.
InternalImpedance round_shell(const Conductor& metal, double inner_diameter_m, double wall_m, double frequency_hz);

enum class Faces { one = 1, both = 2 };  ///< one: its return lies close to one face; both: it stands alone
InternalImpedance flat_strip(const Conductor& metal, double width_m, double thickness_m, Faces faces,
                             double frequency_hz);

/// The cross-section of a conductor that carries a current along itself, its return outside.
enum class Profile { wire, tube, strip };
struct Section {
  Profile profile = Profile::wire;
  double width_m = 0.0;      ///< diameter of a wire, outer diameter of a tube, width of a strip
  double thickness_m = 0.0;  ///< wall of a tube, thickness of a strip; of no meaning for a wire
  Conductor metal;
};
/// `faces` are a strip's alone.
InternalImpedance internal_impedance(const Section& section, Faces faces, double frequency_hz);

/// A part with a resistance of its own, whose body is round (a wire resistor): R(f) for R0 at direct current.
double skin_scaled_resistance_ohm(double direct_ohm, const Conductor& metal, double diameter_m, double frequency_hz);
/// The same of any section that stands alone (a strip carries on both faces).
double skin_scaled_resistance_ohm(double direct_ohm, const Section& section, double frequency_hz);

/// Resistance a transverse field adds to a round wire, in units of R0, scaled to meet the growth of R/R0 at high
/// frequencies: x^2/4 Im(I2/I0) of m a; x^4/32 at low ones (S. Butterworth, "Eddy-current losses in cylindrical
/// conductors", Phil. Trans. Royal Soc. A 222, 1922; from memory). A proximity ratio P measured at thin skin then gives
/// R = R0 (R/R0 + (P - 1) this) at every frequency.
double transverse_field_ratio(double x);

/// The same of a tube, still in units of the solid wire's R0: x^2/4 Im E with
/// E = (I2(mb) K2(ma) - I2(ma) K2(mb))/(I0(mb) K2(ma) - I2(ma) K0(mb)), from the vector potential of a hollow cylinder
/// in a uniform field (own derivation: I1 and K1 within the wall, matched to the fields inside and outside); I2/I0 as
/// the wall closes, (1 - (a/b)^4) times the solid wire's at low frequencies.
double tube_transverse_field_ratio(const Conductor& metal, double outer_diameter_m, double wall_m, double frequency_hz);

}  // namespace wattfall::physics
