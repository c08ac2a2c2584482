// Single-layer coils of round wire, tube or strip: inductance, self-capacitance, resistance with skin and proximity, Q
// against frequency. Geometry is worked out once (`wind_coil`), frequency after frequency is then cheap (`coil_at`).
//
// Equations, D the mean diameter (centre to centre of the wire), a = D/2, l = n p the length, p the pitch, d the wire:
//   sheet    Ls = mu0 pi a^2 n^2 K(D/l)/l
//            K = 4/(3 pi k') (k'^2/k^2 (K(k) - E(k)) + E(k) - k),  k^2 = D^2/(D^2 + l^2)
//   turns    L = Ls - mu0 a n (A + B) - s mu0/(8 pi) (1 - L/L0 of the skin),  s the wire's length
//            A = 5/4 - ln(2p/d),  B = -n ln n + 3/2 (n - 1) + 2/n ln G(n + 1),  G Barnes' function
//   heat     R = R0 (R/R0 of the skin + (P - 1) transverse_field_ratio), P Medhurst's ratio for l/D and d/p
//   tube     as the wire of its outer diameter, with the tube's own skin, internal flux and transverse field
//   strip    of width w along the axis, thickness t:  A = ln(0.2235 (w + t)/p) + 3/2,  B less its share (w^2 -
//   t^2)/p^2;
//            R that of its inner face alone, where a coil's current keeps to
//   C        across the coil: H(l/D) D, H Medhurst's table;  self-resonance 1/(2 pi sqrt(L C))
// Sources: H. Nagaoka, "The inductance coefficients of solenoids", J. College of Science Tokyo 27, 1909; E. B. Rosa,
// "Calculation of the self-inductance of single-layer coils", Bull. Bureau of Standards 2, 1906; R. G. Medhurst, "H. F.
// resistance and self-capacitance of single-layer solenoids", Wireless Engineer 24, 1947 (tables); all from memory. B
// is written with Barnes' function (own derivation: Rosa's sum of logarithms telescopes), so that turns need not be
// whole. A is ln(g/p) + 3/2 of the section's geometric mean distance g, which for a rectangle is 0.2235 (w + t) (Rosa
// and Grover 1912; from memory); strips whose edges touch leave A = B = 0, the sheet. Their B by the first term of the
// mean distance of two strips, and the inner face, are own choices: strip coils have no tabulated resistance. Range: n
// >= 1, p >= d, D >= 3 d (a strip D >= 6 t, w >= p/2, w >= 3 t); heat P within 3 % of Medhurst for n >= 10 or so; f
// below 0.5 of the self-resonance for R and Q. Helix pitch, feed leads and nearby metal are left out.
#pragma once

#include <complex>

#include "physics/skin.hpp"
#include "physics/validity.hpp"

namespace wattfall::physics {

/// Nagaoka's coefficient of D/l >= 0, exactly (elliptic integrals); above 2000 by its limit 2/(pi D/l)(ln(4 D/l) -
/// 1/2).
double nagaoka_coefficient(double diameter_over_length);
/// The same by R. Lundin, "A handbook formula for the inductance of a single-layer circular coil", Proc. IEEE 73, 1985;
/// within 3 parts in a million. A check, and the short or long branch may be asked for beyond its own half.
double lundin_coefficient(double diameter_over_length);
/// Rosa's A of d/p, and B of n >= 1 turns (infinite n gives ln 2pi - 3/2).
double rosa_self_correction(double wire_over_pitch);
double rosa_mutual_correction(double turns);
/// Medhurst's P of l/D (may be infinite) and d/p, bilinear in his table (in D/l beyond 10, to 1 at d/p = 0).
double medhurst_resistance_ratio(double length_over_diameter, double wire_over_pitch);
/// Medhurst's H [F/m of diameter], linear in his table of l/D from 0.1 to 50.
double medhurst_capacitance_f_per_m(double length_over_diameter);

/// Ls [H].
double current_sheet_inductance_h(double turns, double diameter_m, double length_m);
/// H. A. Wheeler, "Simple inductance formulas for radio coils", Proc. IRE 16, 1928: r^2 n^2/(9 r + 10 l) uH in inches;
/// within 1 % for l >= 0.8 r. For comparison alone.
double wheeler_inductance_h(double turns, double diameter_m, double length_m);

struct Coil {
  double turns = 0.0;
  double diameter_m = 0.0;  ///< mean, centre to centre of the wire
  double length_m = 0.0;    ///< turns times pitch
  double wire_diameter_m =
      0.0;  ///< of the metal, without enamel; of a tube outside, of a strip its width along the axis
  Conductor metal;
  Profile profile = Profile::wire;
  double thickness_m = 0.0;  ///< wall of a tube, thickness of a strip across the radius

  Section section() const { return {profile, wire_diameter_m, thickness_m, metal}; }
};

/// What does not depend on frequency. All NaN where the geometry is impossible.
struct WoundCoil {
  Coil coil;
  double inductance_h = 0.0;  ///< with uniform current in the wire, at low frequencies
  double self_capacitance_f = 0.0;
  double self_resonance_hz = 0.0;
  double wire_length_m = 0.0;
  double direct_resistance_ohm = 0.0;
  double proximity_ratio = 1.0;  ///< P; 1 of a strip, whose inner face is taken instead
  Validity validity;
};
WoundCoil wind_coil(const Coil& coil);

/// Inductance and resistance in series; the self-capacitance of `WoundCoil` goes across both.
struct CoilAt {
  double inductance_h = 0.0;
  double resistance_ohm = 0.0;
  double quality = 0.0;               ///< w L/R of the bare coil
  std::complex<double> terminal_ohm;  ///< with the self-capacitance across
  Validity validity;                  ///< joins that of the geometry
};
CoilAt coil_at(const WoundCoil& wound, double frequency_hz);

}  // namespace wattfall::physics
