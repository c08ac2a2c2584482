// Lines from geometry: both ends of the frequency range, laws between the shapes, and the wave on a line.
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <catch2/catch.hpp>
#include <cmath>

#include "physics/constants.hpp"
#include "physics/line_geometry.hpp"

namespace wattfall::physics {
namespace {

using Real = boost::multiprecision::cpp_bin_float_50;

const Coax cable{2.1e-3, 7.24e-3, 0.3e-3, {5.8e7}, {5.8e7}, {2.25, 3e-4}};
const TwoWire open_wire{2e-3, 50e-3, {5.8e7}, {}};

/// alpha^2 = (|zy| + Re zy)/2 with 50 digits.
double alpha_of_50_digits(const LineConstants& line, double hz) {
  const Real w = 2 * boost::math::constants::pi<Real>() * hz;
  const Real r = line.resistance_ohm_per_m, g = line.conductance_s_per_m;
  const Real x = w * line.inductance_h_per_m, b = w * line.capacitance_f_per_m;
  const Real real = r * g - x * b, imaginary = r * b + g * x;
  return Real(sqrt((sqrt(real * real + imaginary * imaginary) + real) / 2)).convert_to<double>();
}

}  // namespace

TEST_CASE("attenuation keeps its digits from a lossless line to one that is all loss") {
  for (const double ohm : {1e-12, 1e-6, 1e-2, 1.0, 1e4})
    for (const double siemens : {0.0, 1e-12, 1e-6, 1e-2}) {
      const LineConstants line{ohm, 250e-9, siemens, 100e-12, {}};
      INFO(ohm << " ohm/m, " << siemens << " S/m");
      CHECK(line_wave(line, 7e6).gamma_per_m.real() == Approx(alpha_of_50_digits(line, 7e6)).epsilon(1e-12));
    }
}

TEST_CASE("constants and wave are two ways to say one line") {
  for (const double hz : {100.0, 1e5, 1e8}) {
    const LineConstants line = coax_constants(cable, hz);
    const LineConstants back = line_constants(line_wave(line, hz), hz);
    CHECK(back.resistance_ohm_per_m == Approx(line.resistance_ohm_per_m).epsilon(1e-9));
    CHECK(back.inductance_h_per_m == Approx(line.inductance_h_per_m).epsilon(1e-12));
    CHECK(back.conductance_s_per_m == Approx(line.conductance_s_per_m).epsilon(1e-9));
    CHECK(back.capacitance_f_per_m == Approx(line.capacitance_f_per_m).epsilon(1e-12));
  }
}

TEST_CASE("at low frequencies a cable is its wire's resistance, and Z0 is not real") {
  const LineConstants line = coax_constants(cable, 10.0);
  const double inner = 1.0 / (5.8e7 * pi * 1.05e-3 * 1.05e-3),
               outer = 1.0 / (5.8e7 * pi * (3.92e-3 * 3.92e-3 - 3.62e-3 * 3.62e-3));
  CHECK(line.resistance_ohm_per_m == Approx(inner + outer).epsilon(1e-5));
  const LineWave wave = line_wave(line, 10.0);
  CHECK(std::arg(wave.impedance_ohm) == Approx(-pi / 4.0).epsilon(0.01));
  CHECK(std::abs(wave.impedance_ohm) > 1000.0);
  CHECK(wave.gamma_per_m.real() == Approx(wave.gamma_per_m.imag()).epsilon(0.01));
}

TEST_CASE("at high frequencies a cable is the textbook's: its Z0, its two losses") {
  const double hz = 1e9;
  const LineWave wave = line_wave(coax_constants(cable, hz), hz);
  CHECK(wave.impedance_ohm.real() == Approx(coax_impedance_ohm(7.24 / 2.1, 2.25)).epsilon(1e-3));
  const MatchedLoss thin = low_loss_attenuation(coax_constants(cable, hz, Skin::thin));
  CHECK(wave.gamma_per_m.real() == Approx(thin.conductor_np_per_m + thin.dielectric_np_per_m).epsilon(2e-3));
  CHECK(wave.velocity_factor(hz) == Approx(1.0 / 1.5).epsilon(1e-3));
}

TEST_CASE("R rises, L falls, C stays with frequency, in every line") {
  LineConstants before_pair = two_wire_constants(open_wire, 1.0), before_coax = coax_constants(cable, 1.0);
  const TwoWire close{2e-3, 2.4e-3, {5.8e7}, {}};
  LineConstants before_close = two_wire_constants(close, 1.0);
  for (double hz = 1.3; hz < 3e8; hz *= 1.3) {
    const auto check = [hz](LineConstants& before, LineConstants now) {
      INFO("at " << hz << " Hz");
      CHECK(now.resistance_ohm_per_m >= before.resistance_ohm_per_m * (1.0 - 1e-12));
      CHECK(now.inductance_h_per_m <= before.inductance_h_per_m * (1.0 + 1e-9));
      CHECK(now.capacitance_f_per_m == before.capacitance_f_per_m);
      before = now;
    };
    check(before_pair, two_wire_constants(open_wire, hz));
    check(before_close, two_wire_constants(close, hz));
    check(before_coax, coax_constants(cable, hz));
  }
}

TEST_CASE("a pair's ends of the frequency range are the closed forms") {
  const LineConstants slow = two_wire_constants(open_wire, 1e-3), fast = two_wire_constants(open_wire, 5e8);
  CHECK(slow.inductance_h_per_m == Approx(mu0_h_per_m / pi * (std::log(50.0) + 0.25)).epsilon(1e-9));
  CHECK(slow.resistance_ohm_per_m == Approx(2.0 / (5.8e7 * pi * 1e-6)).epsilon(1e-9));
  const double velocity = 1.0 / std::sqrt(fast.inductance_h_per_m * fast.capacitance_f_per_m);
  CHECK(velocity == Approx(speed_of_light_m_per_s).epsilon(1e-3));
  const double thin = two_wire_constants(open_wire, 5e8, Skin::thin).resistance_ohm_per_m;
  CHECK(fast.resistance_ohm_per_m == Approx(thin).epsilon(5e-3));
}

TEST_CASE("a wire over ground is half of the pair with its image") {
  const LineConstants pair = two_wire_constants({2e-3, 0.2, {5.8e7}, {1.0, 1e-4}}, 7e6);
  const LineConstants wire = over_ground_constants({2e-3, 0.1, {5.8e7}, {1.0, 1e-4}}, 7e6);
  CHECK(line_wave(wire, 7e6).impedance_ohm.real() ==
        Approx(line_wave(pair, 7e6).impedance_ohm.real() / 2.0).epsilon(1e-12));
  CHECK(line_wave(wire, 7e6).gamma_per_m.real() == Approx(line_wave(pair, 7e6).gamma_per_m.real()).epsilon(1e-12));
  CHECK(over_ground_impedance_ohm(50.0) == Approx(two_wire_impedance_ohm(100.0) / 2.0));
}

TEST_CASE("lines that cannot be built, and those out of range, say so") {
  CHECK(two_wire_constants({2e-3, 1e-3, {}, {}}, 7e6).validity.sentence == "the wire is 2 times its spacing");
  CHECK_FALSE(coax_constants({8e-3, 7e-3, 0.0, {}, {}, {}}, 7e6).validity.possible());
  CHECK_FALSE(coax_constants({1e-3, 7e-3, 0.0, {}, {}, {0.9, 0.0}}, 7e6).validity.possible());
  CHECK_FALSE(coax_constants(cable, 0.0).validity.possible());
  CHECK(two_wire_constants(open_wire, 2e9).validity.verdict == Verdict::outside);
  CHECK(coax_constants(cable, 2e10).validity.verdict == Verdict::outside);
  CHECK(coax_constants(cable, 1e9).validity.inside());
  CHECK_FALSE(over_ground_constants({2e-3, 0.5e-3, {}, {}}, 7e6).validity.possible());
}

}  // namespace wattfall::physics
