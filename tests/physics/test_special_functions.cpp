// Bessel functions and sine integrals against their series with a thousand digits, 1e-12 or better.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>

#include "many_digits.hpp"
#include "physics/bessel.hpp"
#include "physics/constants.hpp"
#include "physics/sine_integrals.hpp"
#include "physics/skin.hpp"

namespace wattfall::physics {
namespace {

constexpr double direct_current_to_vhf[] = {1e-6, 1e-3, 0.1, 0.5,  1.0,  1.9,  2.1,   2.9,   4.0,
                                            6.0,  10.0, 20., 29.9, 30.1, 45.0, 100.0, 300.0, 1000.0};

double off(std::complex<double> found, std::complex<double> expected) {
  return std::abs(found - expected) / std::abs(expected);
}
double off(double found, double expected) {
  return std::fabs(found / expected - 1.0);
}

}  // namespace

TEST_CASE("scaled Bessel functions on the diagonal keep 1e-12") {
  for (const double x : direct_current_to_vhf) {
    const many_digits::Bessel exact = many_digits::bessel_on_diagonal(many_digits::Real(x));
    const many_digits::Complex growth = many_digits::growth(exact.w);
    const ScaledBessel found = scaled_bessel(many_digits::rounded(exact.w));
    INFO("x = " << x);
    CHECK(off(found.i0, many_digits::rounded(exact.i0 / growth)) < 1e-12);
    CHECK(off(found.i1, many_digits::rounded(exact.i1 / growth)) < 1e-12);
    CHECK(off(found.k0, many_digits::rounded(exact.k0 * growth)) < 1e-12);
    CHECK(off(found.k1, many_digits::rounded(exact.k1 * growth)) < 1e-12);
  }
}

TEST_CASE("resistance and internal inductance of a round wire keep 1e-12, each") {
  double worst = 0.0;
  for (const double x : direct_current_to_vhf) {
    const many_digits::Bessel exact = many_digits::bessel_on_diagonal(many_digits::Real(x));
    const many_digits::Complex ratio = exact.w / many_digits::Complex(2) * exact.i0 / exact.i1;
    const many_digits::Real inductance = ratio.imag() * 8 / (many_digits::Real(x) * x);
    const SkinRatios found = round_wire_ratios(x);
    worst = std::max({worst, off(found.resistance, ratio.real().convert_to<double>()),
                      off(found.inductance, inductance.convert_to<double>())});
    INFO("x = " << x);
    CHECK(off(found.resistance, ratio.real().convert_to<double>()) < 1e-12);
    CHECK(off(found.inductance, inductance.convert_to<double>()) < 1e-12);
  }
  std::printf("round wire, worst relative difference from a thousand digits %.1e\n", worst);
}

TEST_CASE("the exclusion of a transverse field keeps 1e-12 in size, and its loss 1e-11") {
  for (const double x : direct_current_to_vhf) {
    const many_digits::Bessel exact = many_digits::bessel_on_diagonal(many_digits::Real(x));
    const many_digits::Complex share =
        many_digits::Complex(1) - many_digits::Complex(2) / exact.w * exact.i1 / exact.i0;
    const double loss = many_digits::Real(share.imag() * many_digits::Real(x) * x / 4).convert_to<double>();
    INFO("x = " << x);
    CHECK(off(field_exclusion(many_digits::rounded(exact.w)), many_digits::rounded(share)) < 1e-12);
    CHECK(off(transverse_field_ratio(x), loss) < 1e-11);
  }
}

TEST_CASE("sine and cosine integrals keep 1e-13") {
  for (const double x : {1e-6, 1e-3, 0.1, 0.5, 1.0, 2.0, 3.9, 4.1, 6.0, 10.0, 20.0, 50.0, 100.0}) {
    INFO("x = " << x);
    const many_digits::Real exact(x);
    CHECK(off(sine_integral(x), many_digits::sine_integral(exact).convert_to<double>()) < 1e-13);
    CHECK(std::fabs(cosine_integral(x) - many_digits::cosine_integral(exact).convert_to<double>()) <
          1e-13 * std::max(1.0, std::fabs(std::log(x))) * std::min(1.0, 4.0 / x));
    CHECK(off(entire_cosine_integral(x), many_digits::entire_cosine_integral(exact).convert_to<double>()) < 1e-13);
  }
}

TEST_CASE("sine and cosine integrals at their ends") {
  CHECK(sine_integral(0.0) == 0.0);
  CHECK(entire_cosine_integral(0.0) == 0.0);
  CHECK(std::isinf(cosine_integral(0.0)));
  CHECK(sine_integral(1e8) == Approx(pi / 2.0).epsilon(1e-7));
}

}  // namespace wattfall::physics
