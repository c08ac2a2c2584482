// Capacitors from their shape, what their dielectric loses, and the volts at which a gap of air arcs.
//
// Equations (g the gap, er the dielectric between the plates):
//   uniform      C = gaps e0 er A/g
//   rectangle    + fringe of W x L plates: e0 W L/g ((1 + f(W))(1 + f(L)) - 1), f(x) = g/(pi x)(1 + ln(2 pi x/g))
//   discs        + fringe of radius R, thickness t: e0 R (ln(16 pi R (g + t)/g^2) - 1 + t/g ln(1 + g/t))
//   breakdown    V_peak = 6.72 sqrt(p g) + 24.36 p g [kV, bar cm], p the pressure at 20 C of the same density
// Sources: H. B. Palmer, "The capacitance of a parallel-plate capacitor by the Schwarz-Christoffel transformation",
// Trans. AIEE 56, 1937 (rectangle); G. Kirchhoff, "Zur Theorie des Condensators", Monatsber. Akad. Berlin, 1877
// (discs); E. Kuffel, W. S. Zaengl, J. Kuffel, High Voltage Engineering: Fundamentals, 2nd ed. 2000, section 5.5
// (uniform gap). All from memory. Range: fringe g <= W/5 and g <= R/2 (within 2 %); the fringe field runs in air, so er
// applies to the uniform part alone; a stack's fringe is counted once, since inner gaps shield each other. Breakdown
// 0.1 mm to 1 m in clean dry air between smooth parallel plates; edges, dust, rain or a sharp point bring it down to a
// third of that, and above some MHz ions that stay in the gap by about a fifth.
#pragma once

#include "physics/validity.hpp"

namespace wattfall::physics {

struct Insulation {
  double relative_permittivity = 1.0;
  double loss_tangent = 0.0;
};
Validity check_insulation(const Insulation& insulation);

enum class PlateShape { rectangle, disc };
struct Plates {
  PlateShape shape = PlateShape::rectangle;
  double width_m = 0.0;   ///< or the disc's diameter
  double length_m = 0.0;  ///< of a rectangle
  double gap_m = 0.0;
  double thickness_m = 0.0;  ///< of a disc; 0: a sheet
  int plates = 2;            ///< interleaved; their gaps work in parallel
  bool fringe = true;
  Insulation insulation;
};

struct PlateFigures {
  double capacitance_f = 0.0;
  double fringe_f = 0.0;          ///< the share of it beyond the plates
  double loss_tangent = 0.0;      ///< of the whole: the fringe in air has none
  double breakdown_v_peak = 0.0;  ///< of a gap of air; NaN with another dielectric
  Validity validity;
};
PlateFigures plate_figures(const Plates& plates);

/// e0 er A/g [F].
double uniform_capacitance_f(double area_m2, double gap_m, double relative_permittivity);
/// w C tan d [S].
double loss_conductance_s(double capacitance_f, double loss_tangent, double frequency_hz);
/// 4 pi e0 er a [F], a sphere alone; between concentric spheres; 8 e0 R, a thin disc alone.
double sphere_capacitance_f(double diameter_m, double relative_permittivity = 1.0);
double nested_spheres_capacitance_f(double inner_diameter_m, double outer_diameter_m,
                                    double relative_permittivity = 1.0);
double lone_disc_capacitance_f(double diameter_m);

/// Peak volts at which a uniform gap arcs, at a pressure and temperature of the air.
struct Breakdown {
  double volts_peak = 0.0;
  Validity validity;
};
Breakdown air_breakdown(double gap_m, double pressure_pa = 101325.0, double temperature_k = 293.15);

}  // namespace wattfall::physics
