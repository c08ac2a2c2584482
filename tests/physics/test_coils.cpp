// Coils and couplings: exact coefficients, closed identities between them, and limits of resistance and Q.
#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "physics/constants.hpp"
#include "physics/coupling.hpp"
#include "physics/solenoid.hpp"

namespace wattfall::physics {
namespace {

using Real = boost::multiprecision::cpp_bin_float_50;

/// The printed formula, with 50 digits against its cancellation.
double nagaoka_of_50_digits(double u) {
  const Real other = 1 / sqrt(1 + Real(u) * u), k = u * other;
  const Real big_k = boost::math::ellint_1(k), e = boost::math::ellint_2(k);
  const Real sum = other * other / (k * k) * (big_k - e) + e - k;
  return Real(4 * sum / (3 * boost::math::constants::pi<Real>() * other)).convert_to<double>();
}

/// Maxwell's own form: M = mu0 sqrt(ab) ((2/k - k) K - 2/k E).
double circles_of_50_digits(double a, double b, double z) {
  const Real k = sqrt(4 * Real(a) * b / ((Real(a) + b) * (Real(a) + b) + Real(z) * z));
  const Real bracket = (2 / k - k) * boost::math::ellint_1(k) - 2 / k * boost::math::ellint_2(k);
  return Real(4 * boost::math::constants::pi<Real>() / 10000000 * sqrt(Real(a) * b) * bracket).convert_to<double>();
}

/// Rosa's sum over pairs of turns m apart: ln of the mean distance of two collinear unit lengths, less ln m.
double rosa_sum(int turns) {
  const auto f = [](double m) { return m > 0.0 ? m * m * std::log(m) / 2.0 : 0.0; };
  double sum = 0.0;
  for (int m = 1; m < turns; ++m)
    sum += (turns - m) * (f(m + 1.0) - 2.0 * f(m) + f(m - 1.0) - 1.5 - std::log(static_cast<double>(m)));
  return -2.0 * sum / turns;
}

const Coil short_wave_coil{20.0, 0.05, 0.10, 2e-3, {5.8e7, 1.0}};

}  // namespace

TEST_CASE("Nagaoka's coefficient keeps 1e-12 from long coils to flat ones") {
  for (const double u : {1e-6, 1e-3, 0.05, 0.5, 1.0, 2.0, 5.0, 20.0}) {
    INFO("D/l = " << u);
    CHECK(std::fabs(nagaoka_coefficient(u) / nagaoka_of_50_digits(u) - 1.0) < 1e-12);
  }
  for (const double u : {100.0, 1999.0, 2001.0, 1e4}) {
    INFO("D/l = " << u);
    CHECK(std::fabs(nagaoka_coefficient(u) / nagaoka_of_50_digits(u) - 1.0) < 1e-6);
  }
  CHECK(nagaoka_coefficient(0.0) == 1.0);
}

TEST_CASE("Lundin's formula stays within his 3 parts in a million") {
  for (double u = 0.01; u < 100.0; u *= 1.1) {
    INFO("D/l = " << u);
    CHECK(std::fabs(lundin_coefficient(u) / nagaoka_coefficient(u) - 1.0) < 3.2e-6);
  }
}

TEST_CASE("Rosa's B by Barnes' function is his sum") {
  for (const int turns : {1, 2, 3, 5, 11, 12, 13, 40, 200}) {
    INFO(turns << " turns");
    CHECK(std::fabs(rosa_mutual_correction(turns) - rosa_sum(turns)) < 1e-11);
  }
  CHECK(rosa_mutual_correction(7.5) > rosa_mutual_correction(7.0));
  CHECK(rosa_mutual_correction(7.5) < rosa_mutual_correction(8.0));
}

TEST_CASE("a coil's resistance runs from direct current to Medhurst's ratio") {
  const WoundCoil wound = wind_coil(short_wave_coil);
  CHECK(wound.validity.inside());
  CHECK(wound.wire_length_m == Approx(std::hypot(pi * 0.05 * 20.0, 0.1)));
  CHECK(coil_at(wound, 1.0).resistance_ohm == Approx(wound.direct_resistance_ohm).epsilon(1e-6));
  CHECK(wound.proximity_ratio == Approx(medhurst_resistance_ratio(2.0, 0.4)).epsilon(1e-12));
  const double lone = round_wire(short_wave_coil.metal, 2e-3, 1e9).resistance_ohm_per_m * wound.wire_length_m;
  CHECK(coil_at(wound, 1e9).resistance_ohm == Approx(lone * wound.proximity_ratio).epsilon(5e-3));
}

TEST_CASE("a coil's inductance falls as the current leaves the wire's middle") {
  const WoundCoil wound = wind_coil(short_wave_coil);
  CHECK(coil_at(wound, 1e-3).inductance_h == Approx(wound.inductance_h).epsilon(1e-9));
  const double internal = wound.wire_length_m * round_wire(short_wave_coil.metal, 2e-3, 0.0).inductance_h_per_m;
  CHECK(coil_at(wound, 1e12).inductance_h == Approx(wound.inductance_h - internal).epsilon(1e-4));
}

TEST_CASE("Q grows as the root of frequency, and a good coil has some hundreds") {
  const WoundCoil wound = wind_coil(short_wave_coil);
  const CoilAt low = coil_at(wound, 3.5e6), high = coil_at(wound, 14e6);
  CHECK(high.quality / low.quality == Approx(2.0).epsilon(0.05));
  CHECK(low.quality > 300.0);
  CHECK(low.quality < 900.0);
  CHECK(low.validity.inside());
}

TEST_CASE("near its self-resonance a coil warns, and is a large resistance at it") {
  const WoundCoil wound = wind_coil(short_wave_coil);
  CHECK(wound.self_resonance_hz == Approx(1.0 / (2.0 * pi * std::sqrt(wound.inductance_h * 0.5e-10 * 0.05))));
  const CoilAt at = coil_at(wound, wound.self_resonance_hz);
  CHECK(at.validity.verdict == Verdict::outside);
  CHECK(at.validity.sentence == "the frequency is 1 of the coil's self-resonance (up to 0.5 in range)");
  CHECK(std::abs(at.terminal_ohm) > 20.0 * 2.0 * pi * wound.self_resonance_hz * wound.inductance_h);
}

TEST_CASE("Medhurst's tables are met at their corners and monotone in d/p between") {
  for (const double slimness : {0.0, 0.1, 0.5, 1.5, 3.0, 9.0, 12.0, 1e3, std::numeric_limits<double>::infinity()}) {
    double before = 1.0;
    for (double fill = 0.0; fill <= 1.0; fill += 0.01) {
      const double now = medhurst_resistance_ratio(slimness, fill);
      CHECK(now >= before - 1e-12);
      before = now;
    }
  }
  CHECK(medhurst_resistance_ratio(3.0, 1.0) == Approx((4.10 + 3.54) / 2.0));
  CHECK(medhurst_capacitance_f_per_m(0.01) == Approx(0.96e-10));
  CHECK(medhurst_capacitance_f_per_m(50.0) == Approx(5.8e-10));
}

TEST_CASE("a coil of tube lies between direct current in its wall and the solid wire") {
  const Coil tube{20.0, 0.05, 0.10, 3e-3, {5.8e7, 1.0}, Profile::tube, 0.5e-3};
  Coil wire = tube;
  wire.profile = Profile::wire;
  const WoundCoil hollow = wind_coil(tube), solid = wind_coil(wire);
  CHECK(hollow.validity.inside());
  CHECK(hollow.direct_resistance_ohm == Approx(solid.direct_resistance_ohm * 9.0 / (9.0 - 4.0)).epsilon(1e-12));
  CHECK(hollow.inductance_h < solid.inductance_h);
  for (double hz = 1.0; hz < 1e9; hz *= 3.0) {
    INFO("at " << hz << " Hz");
    CHECK(coil_at(hollow, hz).resistance_ohm > 0.9 * coil_at(solid, hz).resistance_ohm);
    // Where the wall is some skin depths thick, what comes back from its inner side swings both figures by a hair.
    CHECK(coil_at(hollow, hz).inductance_h <= coil_at(solid, hz).inductance_h * (1.0 + 1e-4));
  }
  CHECK(coil_at(hollow, 7e6).resistance_ohm == Approx(coil_at(solid, 7e6).resistance_ohm).epsilon(1e-6));
  CHECK(coil_at(hollow, 7e6).inductance_h == Approx(coil_at(solid, 7e6).inductance_h).epsilon(1e-6));
  Coil closed = tube;
  closed.thickness_m = 1.5e-3;
  CHECK(wind_coil(closed).inductance_h == Approx(solid.inductance_h).epsilon(1e-12));
  CHECK(coil_at(wind_coil(closed), 1e4).resistance_ohm == Approx(coil_at(solid, 1e4).resistance_ohm).epsilon(1e-12));
}

TEST_CASE("a tube in a transverse field: fourth powers at low frequencies, the solid wire at high ones") {
  const Conductor copper{5.8e7, 1.0};
  const auto solid = [&](double hz) { return transverse_field_ratio(skin_argument(copper, 5e-3, hz)); };
  CHECK(tube_transverse_field_ratio(copper, 10e-3, 1e-3, 1.0) ==
        Approx(solid(1.0) * (1.0 - std::pow(0.8, 4))).epsilon(1e-3));
  CHECK(tube_transverse_field_ratio(copper, 10e-3, 1e-3, 10e6) == Approx(solid(10e6)).epsilon(1e-9));
  CHECK(tube_transverse_field_ratio(copper, 10e-3, 5e-3, 1e4) == Approx(solid(1e4)).epsilon(1e-12));
  CHECK(tube_transverse_field_ratio(copper, 10e-3, 4.999e-3, 1e4) == Approx(solid(1e4)).epsilon(1e-9));
}

TEST_CASE("a coil of strip is the current sheet where its edges touch, and a thin wire's where it is narrow") {
  const double sheet = current_sheet_inductance_h(20.0, 0.05, 0.10);
  const Coil strip{20.0, 0.05, 0.10, 5e-3, {5.8e7, 1.0}, Profile::strip, 0.05e-3};
  CHECK(wind_coil(strip).inductance_h == Approx(sheet).epsilon(2e-3));
  CHECK(wind_coil(strip).validity.inside());
  // A narrow strip acts as the round wire of its geometric mean distance: 0.2235 w = d/2 exp(-1/4).
  Coil narrow = strip;
  narrow.wire_diameter_m = 0.4e-3;
  narrow.thickness_m = 1e-9;
  const double like = 2.0 * std::exp(0.25) * 0.2235 * 0.4e-3;
  CHECK(wind_coil(narrow).inductance_h ==
        Approx(wind_coil({20.0, 0.05, 0.10, like, {5.8e7, 1.0}}).inductance_h).epsilon(2e-4));
  CHECK(wind_coil(narrow).validity.verdict == Verdict::outside);
  const double rs = surface_resistance_ohm({5.8e7, 1.0}, 30e6);
  CHECK(coil_at(wind_coil(strip), 30e6).resistance_ohm ==
        Approx(rs * wind_coil(strip).wire_length_m / 5e-3).epsilon(0.01));
}

TEST_CASE("tubes and strips that cannot be wound say why") {
  const Coil thick{10.0, 0.05, 0.10, 3e-3, {}, Profile::tube, 2e-3};
  CHECK(wind_coil(thick).validity.sentence == "the wall is 1.333 of the tube's radius");
  CHECK(wind_coil({10.0, 0.05, 0.10, 3e-3, {}, Profile::tube, 0.0}).validity.sentence ==
        "tube wall is 0, and must be above zero");
  CHECK(wind_coil({10.0, 0.05, 0.10, 11e-3, {}, Profile::strip, 1e-3}).validity.sentence ==
        "the wire is 1.1 times the pitch: the turns overlap");
  CHECK_FALSE(wind_coil({10.0, 0.05, 0.10, 8e-3, {}, Profile::strip, 60e-3}).validity.possible());
  CHECK(wind_coil({10.0, 0.05, 0.10, 8e-3, {}, Profile::strip, 9e-3}).validity.verdict == Verdict::outside);
}

TEST_CASE("coils that cannot be wound say why") {
  CHECK(wind_coil({10.0, 0.05, 0.01, 2e-3, {}}).validity.sentence ==
        "the wire is 2 times the pitch: the turns overlap");
  CHECK_FALSE(wind_coil({-1.0, 0.05, 0.01, 1e-3, {}}).validity.possible());
  CHECK_FALSE(wind_coil({1.0, 1e-3, 0.01, 2e-3, {}}).validity.possible());
  CHECK(std::isnan(wind_coil({0.0, 0.05, 0.01, 1e-3, {}}).inductance_h));
  CHECK(wind_coil({0.5, 0.05, 0.01, 1e-3, {}}).validity.verdict == Verdict::outside);
  CHECK(wind_coil({100.0, 0.01, 1.0, 1e-3, {}}).validity.verdict == Verdict::outside);
  CHECK_FALSE(coil_at(wind_coil(short_wave_coil), 0.0).validity.possible());
}

TEST_CASE("circles keep 1e-13 from near to far") {
  for (const double z : {0.0, 1e-6, 1e-3, 0.1, 1.0, 10.0, 1e3}) {
    INFO("apart " << z);
    CHECK(std::fabs(coaxial_circles_mutual_h(0.25, 0.2, z) / circles_of_50_digits(0.25, 0.2, z) - 1.0) < 1e-13);
  }
  CHECK(std::isinf(coaxial_circles_mutual_h(0.1, 0.1, 0.0)));
}

TEST_CASE("a coil in three pieces is the sum of its parts") {
  const auto sheet = [](double pieces) { return current_sheet_inductance_h(10.0 * pieces, 0.05, 0.02 * pieces); };
  const double neighbours = sheet(2.0) / 2.0 - sheet(1.0);                       // L2 = 2 L1 + 2 M12
  const double ends = (sheet(3.0) - 3.0 * sheet(1.0) - 4.0 * neighbours) / 2.0;  // L3 = 3 L1 + 4 M12 + 2 M13
  const CoilShape piece{10.0, 0.05, 0.02};
  const Mutual found = coaxial_coils(piece, piece, 0.04);
  CHECK(found.validity.inside());
  CHECK(found.mutual_h == Approx(ends).epsilon(1e-9));
  CHECK(found.factor == Approx(ends / sheet(1.0)).epsilon(1e-9));
  CHECK(coaxial_coils(piece, piece, 0.02).validity.verdict == Verdict::outside);
}

TEST_CASE("coupling factors that cannot stand together are refused") {
  const std::vector<double> pair{1.0, 0.5, 0.5, 1.0};
  CHECK(check_couplings(2, pair).validity.inside());
  CHECK(check_couplings(2, pair).smallest_pivot == Approx(0.75));
  const std::vector<double> perfect{1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0};
  CHECK(check_couplings(3, perfect).validity.inside());
  const std::vector<double> beyond{1.0, 1.1, 1.1, 1.0};
  CHECK_FALSE(check_couplings(2, beyond).validity.possible());
  const std::vector<double> quarrel{1.0, 0.9, 0.9, 0.9, 1.0, -0.9, 0.9, -0.9, 1.0};
  const CouplingCheck check = check_couplings(3, quarrel);
  CHECK_FALSE(check.validity.possible());
  CHECK(check.coil == 2);
  const std::vector<double> unequal{1.0, 1.0, 0.2, 1.0, 1.0,
                                    0.9, 0.2, 0.9, 1.0};  // two perfect mates, unlike to a third
  CHECK_FALSE(check_couplings(3, unequal).validity.possible());
}

}  // namespace wattfall::physics
