// Cores and plates.
#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "physics/constants.hpp"
#include "physics/plates.hpp"
#include "physics/toroid.hpp"

namespace wattfall::physics {
namespace {

const Ring ring{0.061, 0.03555, 0.0127};
const Permeability lossy{{{1e6, 800.0, 10.0}, {1e7, 500.0, 400.0}, {1e8, 80.0, 200.0}}};

/// E. R. Love, "The electrostatic field of two equal circular co-axial conducting disks", Quart. J. Mech. 2, 1949:
/// f(x) - (1/pi) int_-1^1 h f(t)/(h^2 + (x - t)^2) dt = 1, C = 2 e0 R int f, h = gap/R; by simple iteration of
/// Nystrom's sum, which converges since the kernel's mass is below one.
double love_capacitance_f(double radius_m, double gap_m) {
  using Rule = boost::math::quadrature::gauss<double, 200>;
  std::vector<double> place, weight;
  for (std::size_t i = 0; i < Rule::abscissa().size(); ++i)
    for (const double sign : {-1.0, 1.0}) {
      place.push_back(sign * Rule::abscissa()[i]);
      weight.push_back(Rule::weights()[i]);
    }
  const double h = gap_m / radius_m;
  std::vector<double> f(place.size(), 1.0), next = f;
  for (int round = 0; round < 800; ++round) {
    for (std::size_t i = 0; i < f.size(); ++i) {
      double sum = 0.0;
      for (std::size_t k = 0; k < f.size(); ++k) {
        const double apart = place[i] - place[k];
        sum += weight[k] * h * f[k] / (h * h + apart * apart);
      }
      next[i] = 1.0 + sum / pi;
    }
    f.swap(next);
  }
  double integral = 0.0;
  for (std::size_t i = 0; i < f.size(); ++i) integral += weight[i] * f[i];
  return 2.0 * eps0_f_per_m * radius_m * integral;
}

}  // namespace

TEST_CASE("a core's series and parallel forms are one impedance") {
  const CoreImpedance core = core_impedance(ring, lossy, 10.0, 3e6);
  const std::complex<double> across =
      1.0 / core.parallel_ohm + 1.0 / std::complex<double>(0.0, core.parallel_reactance_ohm);
  CHECK(std::abs(1.0 / across - core.series_ohm) < 1e-12 * std::abs(core.series_ohm));
  CHECK(core.series_ohm.real() > 0.0);
  CHECK(core.quality == Approx(core.series_ohm.imag() / core.series_ohm.real()));
  CHECK(core.validity.inside());
}

TEST_CASE("a core by AL and by dimensions agree where the index says the same") {
  const double index = 800.0 * air_inductance_index_h(ring);
  const CoreImpedance by_index = core_impedance(index, 800.0, lossy, 10.0, 3e6);
  const CoreImpedance by_ring = core_impedance(ring, lossy, 10.0, 3e6);
  CHECK(std::abs(by_index.series_ohm - by_ring.series_ohm) < 1e-12 * std::abs(by_ring.series_ohm));
  const CoreImpedance lossless = core_impedance(index, 800.0, {}, 10.0, 3e6);
  CHECK(lossless.inductance_h == Approx(100.0 * index));
  CHECK(lossless.series_ohm.real() == 0.0);
  CHECK(std::isinf(lossless.parallel_ohm));
}

TEST_CASE("permeability is linear over the logarithm of frequency, and warns outside") {
  CHECK(lossy.at(std::sqrt(1e6 * 1e7)).real == Approx(650.0));
  CHECK(lossy.at(1e7).imaginary == Approx(400.0));
  CHECK(lossy.at(1e8).validity.inside());
  CHECK(lossy.at(2e8).real == Approx(80.0));
  CHECK(lossy.at(2e8).validity.sentence == "200 MHz is outside the permeability table, whose end is kept");
  CHECK(lossy.check().inside());
  CHECK_FALSE(Permeability{{{2e6, 100.0, 1.0}, {1e6, 90.0, 2.0}}}.check().possible());
  CHECK_FALSE(Permeability{{{2e6, 100.0, -1.0}}}.check().possible());
}

TEST_CASE("flux density follows Faraday, and is largest at the inner edge") {
  // 100 W in 50 ohm, 100 V peak, across 10 turns at 1.8 MHz
  const FluxDensity flux = peak_flux_density(ring, 10.0, 100.0, 1.8e6);
  CHECK(flux.mean_t == Approx(100.0 / (2.0 * pi * 1.8e6 * 10.0 * 0.0127 * (0.061 - 0.03555) / 2.0)));
  // B = mu H with H = N I/(2 pi r): the edge from the current, without the section
  const double amps_peak = 100.0 / std::abs(core_impedance(ring, {{{1e6, 800.0, 0.0}}}, 10.0, 1.8e6).series_ohm);
  CHECK(flux.inner_edge_t == Approx(mu0_h_per_m * 800.0 * 10.0 * amps_peak / (pi * 0.03555)).epsilon(1e-12));
  CHECK(check_flux(flux.inner_edge_t, 0.3).inside());
  CHECK(check_flux(0.45, 0.3).sentence == "the core reaches 1.5 of its saturation flux density");
}

TEST_CASE("a core's heat and its wire's heat stand apart") {
  const CoreImpedance core = core_impedance(ring, lossy, 10.0, 3e6);
  const CoreHeat heat = core_heat(core, 0.05, 2.0);
  CHECK(heat.core_w == Approx(4.0 * core.series_ohm.real()));
  CHECK(heat.wire_w == Approx(0.2));
  CHECK(winding_length_m(ring, 10.0, 1e-3) == Approx(10.0 * (2.0 * 0.0127 + 0.061 - 0.03555 + 0.004)));
}

TEST_CASE("impossible cores say why") {
  CHECK_FALSE(core_impedance(Ring{0.03, 0.05, 0.01}, lossy, 10.0, 3e6).validity.possible());
  CHECK_FALSE(core_impedance(ring, lossy, 0.0, 3e6).validity.possible());
  CHECK_FALSE(core_impedance(-1e-9, 800.0, lossy, 10.0, 3e6).validity.possible());
}

TEST_CASE("the fringe of discs is Love's exact capacitance") {
  const double radius = 0.05;
  const std::array<std::array<double, 2>, 4> within{{{0.05, 1e-4}, {0.1, 3e-4}, {0.25, 2e-3}, {0.5, 7e-3}}};
  for (const auto& [ratio, tolerance] : within) {
    const Plates discs{.shape = PlateShape::disc, .width_m = 2.0 * radius, .gap_m = ratio * radius};
    INFO("gap/R = " << ratio);
    CHECK(1e12 * plate_figures(discs).capacitance_f ==
          Approx(1e12 * love_capacitance_f(radius, ratio * radius)).epsilon(tolerance));
  }
}

TEST_CASE("the fringe of rectangles is that of a method of moments") {
  // C/C0 of plates 1 : aspect at gap/side: own computation of 2026 with 676 graded panels a quarter, converged to 0.1 %
  struct Row {
    double aspect, gap_over_side, ratio;
  };
  for (const Row& row : {Row{1, 0.02, 1.0784}, Row{1, 0.1, 1.3059}, Row{1, 0.2, 1.5530}, Row{2, 0.04, 1.1105},
                         Row{2, 0.2, 1.4303}, Row{4, 0.02, 1.0525}, Row{4, 0.1, 1.2044}, Row{4, 0.2, 1.3658}}) {
    INFO("sides 1 : " << row.aspect << ", gap " << row.gap_over_side);
    const Plates plates{.width_m = 0.05, .length_m = 0.05 * row.aspect, .gap_m = 0.05 * row.gap_over_side};
    const double uniform = uniform_capacitance_f(0.05 * 0.05 * row.aspect, plates.gap_m, 1.0);
    CHECK(plate_figures(plates).capacitance_f / uniform == Approx(row.ratio).epsilon(7e-3));
  }
}

TEST_CASE("plates in a stack, with a dielectric and its loss") {
  Plates plates{.width_m = 0.05, .length_m = 0.05, .gap_m = 1.5e-3, .plates = 13, .fringe = false};
  CHECK(plate_figures(plates).capacitance_f == Approx(177.0837563524078e-12).epsilon(1e-9));
  plates.insulation = {2.1, 2e-4};
  CHECK(plate_figures(plates).loss_tangent == Approx(2e-4));
  CHECK(std::isnan(plate_figures(plates).breakdown_v_peak));
  plates.fringe = true;
  CHECK(plate_figures(plates).loss_tangent < 2e-4);
  CHECK(loss_conductance_s(100e-12, 1e-3, 1e7) == Approx(2.0 * pi * 1e7 * 1e-13));
}

TEST_CASE("air breaks down near 30 kV a centimetre, relatively more in small gaps") {
  // Measured peak values of a uniform gap at 20 C, 101.3 kPa: 1 mm 4.5 kV, 1 cm 31.4 kV, 10 cm 265 kV (tables of high
  // voltage engineering; from memory)
  CHECK(air_breakdown(1e-3).volts_peak == Approx(4.5e3).epsilon(0.05));
  CHECK(air_breakdown(1e-2).volts_peak == Approx(31.4e3).epsilon(0.02));
  CHECK(air_breakdown(0.1).volts_peak == Approx(265e3).epsilon(0.03));
  CHECK(air_breakdown(1e-2, 70e3).volts_peak < air_breakdown(1e-2).volts_peak);
  CHECK(air_breakdown(1e-5).validity.verdict == Verdict::outside);
  CHECK_FALSE(air_breakdown(-1e-3).validity.possible());
}

TEST_CASE("spheres and a lone disc") {
  CHECK(sphere_capacitance_f(2.0) == Approx(111.265e-12).epsilon(1e-5));
  CHECK(nested_spheres_capacitance_f(1.0, 1e9) == Approx(sphere_capacitance_f(1.0)));
  CHECK(lone_disc_capacitance_f(1.0) / sphere_capacitance_f(1.0) == Approx(2.0 / pi));
}

TEST_CASE("impossible plates say why") {
  CHECK_FALSE(plate_figures({.width_m = 0.05, .length_m = 0.05, .gap_m = 0.0}).validity.possible());
  CHECK_FALSE(plate_figures({.width_m = 0.05, .length_m = 0.05, .gap_m = 1e-3, .plates = 1}).validity.possible());
  CHECK(plate_figures({.width_m = 0.05, .length_m = 0.05, .gap_m = 1e-3, .insulation = {0.5, 0.0}}).validity.sentence ==
        "relative permittivity is 0.5, and must be 1 or more");
  CHECK(plate_figures({.width_m = 0.05, .length_m = 0.05, .gap_m = 0.03}).validity.verdict == Verdict::outside);
}

}  // namespace wattfall::physics
