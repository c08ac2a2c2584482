// The input impedance of lines taken through the whole pipeline, against Z0 (ZL + Z0 tanh gl) / (Z0 + ZL tanh gl) (the
// telegraph equations; any text on lines) with fifty digits: 1e-12 of its size, from a line of a hundredth of a
// wavelength to one of many, nearly shorted, nearly open, and reactive. The rounding of the line's phase alone, 1e-16
// of up to 80 radians, may grow by the SWR, so that is at most 225.
#include <array>
#include <boost/math/constants/constants.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <catch2/catch.hpp>
#include <complex>
#include <cstdio>

#include "../support/feed.hpp"

namespace wattfall::reference {
namespace {

using Real = boost::multiprecision::cpp_dec_float_50;

struct Wide {
  Real re, im;
};

Wide operator+(const Wide& a, const Wide& b) {
  return {a.re + b.re, a.im + b.im};
}
Wide operator*(const Wide& a, const Wide& b) {
  return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
Wide operator/(const Wide& a, const Wide& b) {
  const Real size = b.re * b.re + b.im * b.im;
  return {(a.re * b.re + a.im * b.im) / size, (a.im * b.re - a.re * b.im) / size};
}

struct Case {
  double megahertz, metres, ohm, velocity, db_per_100m;
  double load_re, load_im;
};

/// tanh(a + jb) = (sinh 2a + j sin 2b) / (cosh 2a + cos 2b)
Wide input_impedance(const Case& c) {
  const Real a = Real(c.db_per_100m) / 100 * c.metres * log(Real(10)) / 20;
  const Real b =
      2 * boost::math::constants::pi<Real>() * Real(c.megahertz) * 1000000 * c.metres / (Real(c.velocity) * 299792458);
  const Real below = cosh(2 * a) + cos(2 * b);
  const Wide tanh{sinh(2 * a) / below, sin(2 * b) / below};
  const Wide line{c.ohm, 0}, load{c.load_re, c.load_im};
  return line * (load + line * tanh) / (line + load * tanh);
}

std::string feed_of(const Case& c) {
  std::array<char, 400> text = {};
  std::snprintf(text.data(), text.size(),
                "design \"a line\"\nsweep at [%.17g MHz]\nsource rig at desk : 100 W, 50 ohm\n"
                "line w from desk to feed : %.17g m, %.17g ohm, velocity %.17g, loss %.17g dB/100m at %.17g MHz\n"
                "load ant at feed : %.17g%+.17gj ohm\n",
                c.megahertz, c.metres, c.ohm, c.velocity, c.db_per_100m, c.megahertz, c.load_re, c.load_im);
  std::string feed = text.data();
  // The language writes j before its number.
  const std::size_t end = feed.rfind("j ohm"), sign = feed.find_last_of("+-", end);
  return feed.substr(0, sign + 1) + "j" + feed.substr(sign + 1, end - sign - 1) + feed.substr(end + 1);
}

TEST_CASE("a line's input impedance agrees with fifty digits") {
  double worst = 0.0;
  int held = 0;
  for (const double metres : {0.3, 7.0, 10.3, 30.0, 90.0})
    for (const double megahertz : {1.85, 7.1, 29.0})
      for (const double db_per_100m : {0.25, 6.5})
        for (const std::array<double, 2> load :
             {std::array<double, 2>{2.0, 0.0}, {25.0, 100.0}, {72.0, -1.5}, {2000.0, -400.0}})
          for (const auto& [ohm, velocity] : {std::pair{50.0, 0.66}, {450.0, 0.91}}) {
            const Case c{megahertz, metres, ohm, velocity, db_per_100m, load[0], load[1]};
            const std::string text = feed_of(c);
            INFO(text);
            const test::Feed feed(text);
            REQUIRE(feed.diagnostics.empty());
            const std::complex<double> found = feed.source_impedance();
            const Wide exact = input_impedance(c);
            const Real re = found.real() - exact.re, im = found.imag() - exact.im;
            const Real off = sqrt((re * re + im * im) / (exact.re * exact.re + exact.im * exact.im));
            CHECK(off < 1e-12);
            worst = std::max(worst, off.convert_to<double>());
            ++held;
          }
  std::printf("input impedance of lines: %d, worst relative difference %.1e\n", held, worst);
}

}  // namespace
}  // namespace wattfall::reference
