// Dipoles and loops: the closed forms against a thousand digits and against plain quadrature of the fields.
#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>

#include "many_digits.hpp"
#include "physics/dipole.hpp"

namespace wattfall::physics {
namespace {

using Integral = boost::math::quadrature::gauss_kronrod<double, 61>;

/// The radiation resistance's closed form, where digits cannot run out.
double closed_form_of_many_digits(double length_wl) {
  using many_digits::Real;
  const Real x = 2 * boost::math::constants::pi<Real>() * length_wl;
  const Real cin = many_digits::entire_cosine_integral(x), cin2 = many_digits::entire_cosine_integral(2 * x);
  const Real si = many_digits::sine_integral(x), si2 = many_digits::sine_integral(2 * x);
  const Real sum = cin + sin(x) * (si2 - 2 * si) / 2 + cos(x) * (2 * cin - cin2) / 2;
  return eta0_ohm / (2.0 * pi) * sum.convert_to<double>();
}

/// V21/I1 of two dipoles side by side from the near field of a sine current (Carter 1932), by quadrature.
std::complex<double> mutual_by_quadrature(double length_wl, double spacing_wl) {
  const double h = pi * length_wl, d = 2.0 * pi * spacing_wl;
  const auto wave = [d](double z) { return std::polar(1.0 / std::hypot(d, z), -std::hypot(d, z)); };
  const auto density = [&](double z) {
    return std::sin(h - z) * (wave(z - h) + wave(z + h) - 2.0 * std::cos(h) * wave(z));
  };
  const double real = Integral::integrate([&](double z) { return density(z).real(); }, 0.0, h, 10, 1e-12);
  const double imaginary = Integral::integrate([&](double z) { return density(z).imag(); }, 0.0, h, 10, 1e-12);
  const double feed = std::sin(h) * std::sin(h);
  return std::complex<double>(0.0, 1.0) * eta0_ohm / (2.0 * pi) * std::complex<double>(real, imaginary) / feed;
}

}  // namespace

TEST_CASE("radiation resistance keeps 1e-12 from a ten-thousandth to three half waves") {
  double worst = 0.0;
  for (const double length : {1e-4, 1e-3, 0.01, 0.05, 0.1, 0.15, 0.159, 0.16, 0.25, 0.5, 0.75, 1.0, 1.5}) {
    INFO("length " << length);
    const double off = std::fabs(dipole_radiation_resistance_ohm(length) / closed_form_of_many_digits(length) - 1.0);
    worst = std::max(worst, off);
    CHECK(off < 1e-12);
  }
  std::printf("radiation resistance, worst relative difference from a thousand digits %.1e\n", worst);
}

TEST_CASE("the mutual impedance is the integral of the field") {
  for (const double length : {0.1, 0.3, 0.5, 0.6, 0.7})
    for (const double spacing : {0.05, 0.2, 0.5, 1.0, 3.0}) {
      INFO("length " << length << ", spacing " << spacing);
      const std::complex<double> expected = mutual_by_quadrature(length, spacing);
      CHECK(std::abs(side_by_side_mutual_ohm(length, spacing) - expected) < 1e-9 * std::abs(expected));
    }
}

TEST_CASE("the thin limit is the surface integral of a thin wire") {
  for (const double length : {0.1, 0.25, 0.4, 0.48, 0.6}) {
    const std::complex<double> thin = dipole_input_ohm(length, 1e-6), surface = side_by_side_mutual_ohm(length, 1e-6);
    INFO("length " << length);
    CHECK(thin.real() == Approx(surface.real()).epsilon(1e-6));
    CHECK(thin.imag() == Approx(surface.imag()).epsilon(1e-4));
  }
}

TEST_CASE("a short dipole has the triangular current's resistance") {
  CHECK(dipole_input_ohm(1e-3, 1e-6).real() == Approx(short_dipole_ohm(1e-3)).epsilon(1e-5));
  CHECK(short_monopole_ohm(0.05) == Approx(short_dipole_ohm(0.1) / 2.0));
  CHECK(short_uniform_dipole_ohm(0.01) == Approx(4.0 * short_dipole_ohm(0.01)));
  CHECK(dipole_broadside_directivity(1e-3) == Approx(1.5).epsilon(1e-5));
}

TEST_CASE("a dipole in metres: resonance below a half wave, loss in its wire") {
  const Dipole dipole{20.0, 2e-3, Conductor{5.8e7, 1.0}};
  const ThinWire low = dipole_at(dipole, 7.0e6), high = dipole_at(dipole, 7.4e6);
  CHECK(low.validity.inside());
  CHECK(low.input_ohm.imag() < 0.0);
  CHECK(high.input_ohm.imag() > 0.0);
  CHECK(low.input_ohm.real() == Approx(low.radiation_ohm + low.wire_loss_ohm));
  // R' l/2 of a half wave, the mean of a squared sine
  const double wave_m = speed_of_light_m_per_s / 7.4e6;
  const ThinWire half = dipole_at({wave_m / 2.0, 2e-3, Conductor{5.8e7, 1.0}}, 7.4e6);
  CHECK(half.wire_loss_ohm ==
        Approx(round_wire({5.8e7, 1.0}, 2e-3, 7.4e6).resistance_ohm_per_m * wave_m / 4.0).epsilon(1e-9));
  CHECK(half.efficiency > 0.98);
  CHECK(half.efficiency < 0.99);
}

TEST_CASE("a monopole is half of its dipole, and the ground takes its share") {
  const Dipole dipole{20.0, 2e-3, Conductor{5.8e7, 1.0}};
  const ThinWire whole = dipole_at(dipole, 7.0e6);
  const ThinWire half = monopole_at({10.0, 2e-3, 15.0, Conductor{5.8e7, 1.0}}, 7.0e6);
  CHECK(half.input_ohm.real() == Approx(whole.input_ohm.real() / 2.0 + 15.0));
  CHECK(half.input_ohm.imag() == Approx(whole.input_ohm.imag() / 2.0));
  CHECK(half.efficiency == Approx(half.radiation_ohm / half.input_ohm.real()));
  CHECK_FALSE(monopole_at({10.0, 2e-3, -1.0, {}}, 7.0e6).validity.possible());
}

TEST_CASE("antennas out of range say so with their length") {
  CHECK(dipole_at({40.0, 2e-3, {}}, 7.0e6).validity.verdict == Verdict::outside);
  CHECK(dipole_at({40.0, 2e-3, {}}, 7.0e6).validity.sentence ==
        "the dipole (or a monopole with its image) is 0.934 wavelengths long, outside 0.01 to 0.6");
  CHECK(dipole_at({1.0, 0.05, {}}, 144e6).validity.verdict == Verdict::outside);
  CHECK_FALSE(dipole_at({-1.0, 0.05, {}}, 144e6).validity.possible());
  CHECK(loop_at({1.0, 22e-3, {}}, 14e6).validity.verdict == Verdict::outside);
}

TEST_CASE("a small transmitting loop") {
  const LoopAt loop = loop_at({0.5, 22e-3, {5.8e7, 1.0}}, 14e6);
  CHECK(loop.validity.inside());
  CHECK(loop.radiation_ohm == Approx(small_loop_ohm(pi * 0.5 * 14e6 / speed_of_light_m_per_s)));
  CHECK(loop.efficiency == Approx(loop.radiation_ohm / (loop.radiation_ohm + loop.loss_ohm)));
  CHECK(loop.input_ohm.imag() > 0.0);
}

}  // namespace wattfall::physics
