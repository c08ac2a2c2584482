// Capacitances by closed forms, and the breakdown fit.
#include "physics/plates.hpp"

#include <cmath>
#include <limits>

#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double air_up_to = 1.001;  // a dielectric of this permittivity or less is taken for air

constexpr double outer_face_fade = 0.6;  // fitted to a method of moments, sides 1:1 to 1:4, gap 0.02 to 0.2 of a side
constexpr double second_order = 0.15;    // the same fit; F/C0 is up to 0.5

/// Charge beyond one pair of edges, `other_m` apart [F].
double edge_fringe_f(double edge_m, double other_m, double gap_m) {
  const double shortened = 1.0 / (1.0 / other_m + outer_face_fade / edge_m);
  return eps0_f_per_m / pi * edge_m * (1.0 + std::log(2.0 * pi * shortened / gap_m));
}

double rectangle_fringe_f(const Plates& plates) {
  const double first = edge_fringe_f(plates.width_m, plates.length_m, plates.gap_m) +
                       edge_fringe_f(plates.length_m, plates.width_m, plates.gap_m);
  return first *
         (1.0 + second_order * first / uniform_capacitance_f(plates.width_m * plates.length_m, plates.gap_m, 1.0));
}

double disc_fringe_f(const Plates& plates) {
  const double radius = plates.width_m / 2.0, gap = plates.gap_m, thick = plates.thickness_m;
  const double rim = thick > 0.0 ? thick / gap * std::log1p(gap / thick) : 0.0;
  const double logarithm = std::log(16.0 * pi * radius / gap),
               shaw = gap / (4.0 * pi * radius) * (logarithm * logarithm - 2.0);
  return eps0_f_per_m * radius * (logarithm + std::log1p(thick / gap) - 1.0 + rim + shaw);
}

bool is_disc(const Plates& plates) {
  return plates.shape == PlateShape::disc;
}

Validity check_plates(const Plates& plates) {
  Validity validity = check_insulation(plates.insulation);
  validity.expect_positive(is_disc(plates) ? "disc diameter" : "plate width", plates.width_m);
  if (!is_disc(plates)) validity.expect_positive("plate length", plates.length_m);
  validity.expect_positive("gap", plates.gap_m);
  validity.expect(plates.thickness_m >= 0.0, Verdict::impossible, "plate thickness is {} m, and must not be below zero",
                  plates.thickness_m);
  return validity.expect(plates.plates >= 2, Verdict::impossible, "{} plates: two or more make a capacitor",
                         plates.plates);
}

void check_fringe(const Plates& plates, Validity& validity) {
  const double side = is_disc(plates) ? plates.width_m : std::fmin(plates.width_m, plates.length_m);
  const double most = is_disc(plates) ? 0.25 : 0.2;
  validity.expect(plates.gap_m <= most * side, Verdict::outside,
                  "the gap is {} of the plates' smaller side, too wide for the fringe formula", plates.gap_m / side);
}

}  // namespace

Insulation insulation_of(const Dielectric& dielectric) {
  return {dielectric.relative_permittivity, dielectric.loss_tangent};
}

Validity check_insulation(const Insulation& insulation) {
  Validity validity;
  validity.expect(insulation.relative_permittivity >= 1.0, Verdict::impossible,
                  "relative permittivity is {}, and must be 1 or more", insulation.relative_permittivity);
  validity.expect(insulation.loss_tangent >= 0.0, Verdict::impossible, "loss tangent is {}, and must not be below zero",
                  insulation.loss_tangent);
  return validity.expect(!(insulation.loss_tangent > 0.1), Verdict::outside,
                         "loss tangent is {}: the low-loss forms hold up to 0.1", insulation.loss_tangent);
}

PlateFigures plate_figures(const Plates& plates) {
  PlateFigures out{nan, nan, nan, nan, check_plates(plates)};
  if (!out.validity.possible()) return out;
  const double area = is_disc(plates) ? pi / 4.0 * plates.width_m * plates.width_m : plates.width_m * plates.length_m;
  const double uniform =
      (plates.plates - 1) * uniform_capacitance_f(area, plates.gap_m, plates.insulation.relative_permittivity);
  if (plates.fringe) check_fringe(plates, out.validity);
  out.fringe_f = !plates.fringe ? 0.0 : is_disc(plates) ? disc_fringe_f(plates) : rectangle_fringe_f(plates);
  out.capacitance_f = uniform + out.fringe_f;
  out.loss_tangent = plates.insulation.loss_tangent * uniform / out.capacitance_f;
  if (plates.insulation.relative_permittivity > air_up_to) return out;
  const Breakdown arc = air_breakdown(plates.gap_m);
  out.breakdown_v_peak = arc.volts_peak;
  out.validity.join(arc.validity);
  return out;
}

double uniform_capacitance_f(double area_m2, double gap_m, double relative_permittivity) {
  return eps0_f_per_m * relative_permittivity * area_m2 / gap_m;
}

double loss_conductance_s(double capacitance_f, double loss_tangent, double frequency_hz) {
  return 2.0 * pi * frequency_hz * capacitance_f * loss_tangent;
}

double sphere_capacitance_f(double diameter_m, double relative_permittivity) {
  return 2.0 * pi * eps0_f_per_m * relative_permittivity * diameter_m;
}

double nested_spheres_capacitance_f(double inner_diameter_m, double outer_diameter_m, double relative_permittivity) {
  return sphere_capacitance_f(inner_diameter_m, relative_permittivity) / (1.0 - inner_diameter_m / outer_diameter_m);
}

double lone_disc_capacitance_f(double diameter_m) {
  return 4.0 * eps0_f_per_m * diameter_m;
}

Breakdown air_breakdown(double gap_m, double pressure_pa, double temperature_k) {
  Breakdown out{nan, {}};
  out.validity.expect_positive("gap", gap_m).expect_positive("air pressure", pressure_pa);
  out.validity.expect_positive("air temperature", temperature_k);
  if (!out.validity.possible()) return out;
  const double bar_cm = pressure_pa / 1e5 * (293.15 / temperature_k) * gap_m * 100.0;
  out.validity.expect(bar_cm >= 0.01 && bar_cm <= 100.0, Verdict::outside,
                      "a gap of {} bar cm is outside the fit's 0.01 to 100", bar_cm);
  out.volts_peak = 1e3 * (6.72 * std::sqrt(bar_cm) + 24.36 * bar_cm);
  return out;
}

}  // namespace wattfall::physics
