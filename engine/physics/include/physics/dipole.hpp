// Input impedance of thin wires: dipoles fed at the centre, monopoles on perfect ground, two dipoles side by side; what
// their wire and the ground lose. The induced-EMF method with a sinusoidal current I_m sin k(l/2 - |z|).
//
// Equations (k = 2 pi/lambda, x = k l, a the wire's radius, eta the impedance of space, C Euler's constant):
//   R_m = eta/(2 pi) (Cin x + 1/2 sin x (Si 2x - 2 Si x) + 1/2 cos x (2 Cin x - Cin 2x))
//   X_m = eta/(4 pi) (2 Si x + cos x (2 Si x - Si 2x) - sin x (2 Ci x - Ci 2x - Ci(2 k a^2/l)))
//   Z   = (R_m + j X_m)/sin^2(x/2)    referred to the feed
//   side by side at d: the same integral with exact distances, in terms of Ci - j Si of k(R -+ z); d = a gives the self
//   impedance without the thin limit.  wire loss  R' l/2 (1 - sin x/x)/sin^2(x/2)
// Sources: C. A. Balanis, Antenna Theory, 3rd ed. 2005, equations 8-60 and 4-70; P. S. Carter, "Circuit relations in
// radiating systems and applications to antenna problems", Proc. IRE 20, 1932 (from memory; general length derived
// here). Range: 0.01 <= l/lambda <= 0.6, l/d >= 50. Near a full wave sin(x/2) vanishes and the current is no sine:
// infinite there, wrong by tens of per cent from 0.7 to 1.3. The shortening by wire thickness (5 % at a half wave) is
// in X. Free space: height over ground, sag and insulation are left out. R below l = lambda/6 by quadrature of the
// pattern, which has no cancellation.
#pragma once

#include <complex>
#include <optional>

#include "physics/constants.hpp"
#include "physics/skin.hpp"
#include "physics/validity.hpp"

namespace wattfall::physics {

/// In wavelengths, for tables; `eta_ohm` 120 pi in books. Referred to the current's maximum.
double dipole_radiation_resistance_ohm(double length_wl, double eta_ohm = eta0_ohm);
/// Referred to the feed, thin limit.
std::complex<double> dipole_input_ohm(double length_wl, double radius_wl, double eta_ohm = eta0_ohm);
/// Of two equal parallel dipoles side by side, referred to their feeds; any spacing above zero.
std::complex<double> side_by_side_mutual_ohm(double length_wl, double spacing_wl, double eta_ohm = eta0_ohm);
/// Broadside, against a point source: eta/(pi R_m) (1 - cos(x/2))^2.
double dipole_broadside_directivity(double length_wl);

struct Dipole {
  double length_m = 0.0;  ///< tip to tip
  double diameter_m = 0.0;
  std::optional<Conductor> metal;  ///< none: no loss in the wire
};
struct Monopole {
  double height_m = 0.0;
  double diameter_m = 0.0;
  double ground_loss_ohm = 0.0;  ///< in series at the feed
  std::optional<Conductor> metal;
};

struct ThinWire {
  std::complex<double> input_ohm;  ///< with all losses
  double radiation_ohm = 0.0;      ///< its resistance without them, at the feed
  double wire_loss_ohm = 0.0;      ///< at the feed
  double ground_loss_ohm = 0.0;    ///< at the feed
  double efficiency = 0.0;         ///< radiation's share of the input resistance
  Validity validity;
};
ThinWire dipole_at(const Dipole& dipole, double frequency_hz);
ThinWire monopole_at(const Monopole& monopole, double frequency_hz);

/// Small against a wavelength: 2 pi/3 eta (l/lambda)^2 with uniform current, a quarter of it with triangular current,
/// twice that for a monopole over ground (books: 80, 20, 40 pi^2); C. A. Balanis, Antenna Theory, chapter 4.
double short_uniform_dipole_ohm(double length_wl, double eta_ohm = eta0_ohm);
double short_dipole_ohm(double length_wl, double eta_ohm = eta0_ohm);
double short_monopole_ohm(double height_wl, double eta_ohm = eta0_ohm);

/// eta pi/6 N^2 (C/lambda)^4 (books: 20 pi^2), C the circumference, up to 0.1 wavelength; Balanis, chapter 5.
double small_loop_ohm(double circumference_wl, double turns = 1.0, double eta_ohm = eta0_ohm);

struct Loop {
  double diameter_m = 0.0;
  double wire_diameter_m = 0.0;
  Conductor metal;
};
/// One turn: radiation, wire loss with exact skin effect, inductance (surface current plus internal).
struct LoopAt {
  std::complex<double> input_ohm;
  double radiation_ohm = 0.0;
  double loss_ohm = 0.0;
  double efficiency = 0.0;
  Validity validity;
};
LoopAt loop_at(const Loop& loop, double frequency_hz);

/// H. G. Booker, "Slot aerials and their relation to complementary wire aerials", J. IEE 93 IIIA, 1946: eta^2/(4 Z).
std::complex<double> slot_impedance_ohm(std::complex<double> dipole_ohm, double eta_ohm = eta0_ohm);
/// A folded dipole of equal wires multiplies the half-wave dipole's impedance by their number squared.
std::complex<double> folded_dipole_ohm(std::complex<double> dipole_ohm, int wires);

}  // namespace wattfall::physics
