// Capacitors from their shape, what their dielectric loses, and the volts at which a gap of air arcs.
//
// Equations (g the gap, er the dielectric between the plates):
//   uniform      C = gaps e0 er A/g
//   rectangle    + fringe F (1 + 0.15 F/C0), F = e0/pi sum over both sides x of x (1 + ln(2 pi y'/g)),
//                y' the other side y shortened to 1/(1/y + 0.6/x), since a plate's outer face fades with both
//   discs        + fringe of radius R, thickness t: e0 R (ln(16 pi R (g + t)/g^2) - 1 + t/g ln(1 + g/t)
//                + g/(4 pi R) (ln(16 pi R/g)^2 - 2))
//   breakdown    V_peak = 6.72 sqrt(p g) + 24.36 p g [kV, bar cm], p the pressure at 20 C of the same density
// Sources: A. E. H. Love, "Some electrostatic distributions in two dimensions", Proc. London Math. Soc. 22, 1923 (the
// strip's 1 + ln(2 pi y/g), which the rectangle meets when it is long; 0.6 and 0.15 are fitted here to a method of
// moments); G. Kirchhoff, "Zur Theorie des Condensators", Monatsber. Akad. Berlin, 1877 (discs); S. J. N. Shaw,
// "Circular-disk viscometer and related electrostatic problems", Physics of Fluids 13, 1970 (the last term of discs);
// E. Kuffel, W. S. Zaengl, J. Kuffel, High Voltage Engineering: Fundamentals, 2nd ed. 2000, section 5.5
// (uniform gap). All from memory. Range: fringe g <= the smaller side/5 and g <= R/2 (each within 1 %); the fringe
// field runs in air, so er applies to the uniform part alone; a stack's fringe is counted once, since inner gaps shield
// each other. Breakdown 0.1 mm to 1 m in clean dry air between smooth parallel plates; edges, dust, rain or a sharp
// point bring it down to a third of that, and above some MHz ions that stay in the gap by about a fifth.
#pragma once

#include "physics/materials.hpp"
#include "physics/validity.hpp"

namespace wattfall::physics {

struct Insulation {
  double relative_permittivity = 1.0;
  double loss_tangent = 0.0;
};
Insulation insulation_of(const Dielectric& dielectric);
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
/// What every report of a breakdown figure has to say beside it.
inline constexpr const char* breakdown_caution =
    "between smooth parallel plates in clean dry air; edges, dust and moisture bring it down to a third";
Breakdown air_breakdown(double gap_m, double pressure_pa = 101325.0, double temperature_k = 293.15);

}  // namespace wattfall::physics
