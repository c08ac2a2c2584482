// Parts by their size, from the text to what the rig sees: held against the trade's plain formulas, written out here.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "feed.hpp"
#include "judge/judge.hpp"

using namespace wattfall;
using test::Feed;
using Complex = std::complex<double>;

namespace {

constexpr double c0 = 299792458.0, mu0 = 4e-7 * std::numbers::pi, e0 = 1.0 / (mu0 * c0 * c0);

/// What the source sees of one part across it, with a 1 ohm resistor in series so that it is never reactive alone.
Complex seen(const std::string& part, double hertz) {
  const Feed feed("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload one from desk to x : 1 ohm\n" + part + "\nsweep at [" + std::to_string(hertz) +
                  " Hz]\n");
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  return feed.source_impedance() - 1.0;
}

}  // namespace

TEST_CASE("a coil by its size has the inductance of Wheeler's formula within its 1 per cent") {
  // H. A. Wheeler, Proc. IRE 16, 1928: L[uH] = r^2 n^2/(9 r + 10 l), inches; from memory. r = 25 mm, l = 60 mm, n = 12.
  const double r = 25.0 / 25.4, l = 60.0 / 25.4, henries = r * r * 144.0 / (9.0 * r + 10.0 * l) * 1e-6, f = 1e6;
  const Complex z = seen("inductor L at x : coil(turns 12, diameter 50 mm, length 60 mm, wire 2 mm)", f);
  CHECK(z.imag() / (2.0 * std::numbers::pi * f) == Approx(henries).epsilon(0.01));
  CHECK(z.real() > 0.0);
}

TEST_CASE("a coil's told Q goes before that of its wire") {
  const Complex z = seen("inductor L at x : coil(turns 12, diameter 50 mm, length 60 mm, wire 2 mm), Q 200, capacitance 0 pF", 3e6);
  CHECK(z.imag() / z.real() == Approx(200.0).epsilon(1e-9));
}

TEST_CASE("a winding on a core is AL n^2, or mu0 mu n^2 h ln(D/d)/(2 pi) with the core's loss") {
  const double w = 2.0 * std::numbers::pi * 7e6;
  CHECK(seen("inductor L at x : core(AL 45 nH, turns 20)", 7e6).imag() == Approx(w * 45e-9 * 400.0).epsilon(1e-12));
  const double unit = mu0 * 81.0 * 13e-3 * std::log(61.0 / 36.0) / (2.0 * std::numbers::pi);
  const Complex z = seen("inductor L at x : core(outer 61 mm, inner 36 mm, height 13 mm, turns 9, permeability 250-j10)", 7e6);
  CHECK(z.imag() == Approx(w * unit * 250.0).epsilon(1e-12));
  // The loss stands beside a reactance 25 times as large: its digits are those of the whole.
  CHECK(z.real() == Approx(w * unit * 10.0).margin(1e-12 * std::abs(z)));
}

TEST_CASE("plates by their area are e0 er A/g, and arc at their gap") {
  const double farads = e0 * 2.1 * 20e-4 / 1e-3;
  const Complex z = seen("capacitor C at x : plates(area 4 cm * 5 cm, gap 1 mm, dielectric 2.1)", 7e6);
  CHECK(-1.0 / (2.0 * std::numbers::pi * 7e6 * z.imag()) == Approx(farads).epsilon(1e-12));
  const Feed feed("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload ant at desk : 50 ohm\ncapacitor C at desk : plates(width 4 cm, length 5 cm, gap 1 mm)\n"
                  "sweep at [7 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  // About 4.5 kV at 1 mm (6.72 sqrt g + 24.36 g kV, cm; Kuffel and others; from memory).
  CHECK(*feed.design.parts[1].limits.volts_peak == Approx(1e3 * (6.72 * std::sqrt(0.1) + 24.36 * 0.1)).epsilon(0.02));
}

TEST_CASE("lines by their cross-section have the textbook's impedances") {
  // A quarter wave turns R into Z0^2/R; losses and internal inductance at 30 MHz leave a few per cent.
  const double coax = 0.5 * std::log(7.2 / 2.2) / std::numbers::pi * mu0 * c0 / std::sqrt(2.26);
  const double pair = std::acosh(100.0 / 2.0) / std::numbers::pi * mu0 * c0;
  const double wire = std::acosh(2.0 * 100.0 / 2.0) / (2.0 * std::numbers::pi) * mu0 * c0;
  const auto quarter = [](const std::string& section, double ohms) {
    return seen("line w from x to far : 90 deg at 30 MHz, " + section + "\nload end at far : " + std::to_string(ohms) + " ohm", 30e6);
  };
  CHECK(std::abs(quarter("coax(outer 7.2 mm, inner 2.2 mm, dielectric 2.26)", coax) - coax) < 0.03 * coax);
  CHECK(std::abs(quarter("twowire(spacing 100 mm, diameter 2 mm)", pair) - pair) < 0.03 * pair);
  CHECK(std::abs(quarter("overground(height 100 mm, diameter 2 mm)", wire) - wire) < 0.03 * wire);
}

TEST_CASE("a wire resistor's resistance is its own at low frequencies and grows with the root at high ones") {
  const double low = seen("resistor R at x : 10 ohm, skin(diameter 1 mm)", 1e3).real(), mid = seen("resistor R at x : 10 ohm, skin(diameter 1 mm)", 10e6).real(),
               high = seen("resistor R at x : 10 ohm, skin(diameter 1 mm)", 40e6).real();
  CHECK(low == Approx(10.0).epsilon(1e-4));
  CHECK(high / mid == Approx(2.0).epsilon(0.02));
}

TEST_CASE("a thin half-wave dipole is about 73 + j42 ohm") {
  // Textbooks' 73.1 + j42.5 (C. A. Balanis, Antenna Theory; from memory), at exactly half a wave.
  const Complex z = seen("load ant at x : dipole(length 20 m, diameter 1 mm)", c0 / 40.0);
  CHECK(z.real() == Approx(73.1).margin(0.3));
  CHECK(z.imag() == Approx(42.5).margin(1.0));
}

TEST_CASE("a pair's common impedance is met by what both conductors carry together, and by nothing else") {
  // Both ends tied together: a line of 300 ohm against ground, closed in itself, whatever the pair's own impedance.
  const std::string tied =
      "resistor ra from x to a : 1 uohm\nresistor rb from x to b : 1 uohm\n"
      "line w from (a b) to (c d) : 7 m, 450 ohm, common impedance 300 ohm\nresistor rc from c to y : 1 uohm\nresistor rd from d to y : 1 uohm\n"
      "load end at y : 300 ohm";
  CHECK(std::abs(seen(tied, 7.1e6) - 300.0) < 1e-4);
}

TEST_CASE("a model outside its range warns once, with the figure") {
  const Feed feed("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload ant at desk : dipole(length 20 m, diameter 2 mm)\nsweep at [7 MHz, 14.9 MHz, 15 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const judge::Judgement judgement = judge::judge(feed.design, feed.ledger, feed.solution);
  REQUIRE(judgement.warnings.size() == 1);
  CHECK(judgement.warnings[0].code == "outside-model");
  CHECK(judgement.warnings[0].frequency_hz == 14.9e6);
}

TEST_CASE("impossible sizes are located errors") {
  const Feed feed("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload ant at desk : 50 ohm\ninductor L at desk : coil(turns 12, diameter 50 mm, length 10 mm, wire 2 mm)\n"
                  "capacitor C at desk : plates(area 4 cm * 5 cm, gap 1 mm, dielectric 0.5)\nline w from desk to far : 5 m, twowire(spacing 1 mm, diameter 2 mm)\n"
                  "load end at far : coil(turns 3)\nresistor R at far : 10 ohm, skin(diameter 1 mm, metal coper)\nsweep at [7 MHz]\n");
  CHECK(test::codes(feed.diagnostics) ==
        std::vector<std::string>{"impossible-size", "value-out-of-range", "impossible-size", "unknown-property", "unknown-material"});
}

TEST_CASE("a coil of tube is the coil of solid wire on the short waves, and has the tube's own resistance at low frequencies") {
  // The skin is 0.03 mm at 4 MHz: a wall of 1 mm is as good as solid.
  const std::string coil = "inductor L at x : coil(turns 8, diameter 80 mm, length 120 mm, ";
  const Complex tube = seen(coil + "tube 6 mm, wall 1 mm)", 4e6), solid = seen(coil + "wire 6 mm)", 4e6);
  CHECK(tube.real() == Approx(solid.real()).epsilon(1e-9));
  CHECK(tube.imag() == Approx(solid.imag()).epsilon(1e-9));
  const double length = std::hypot(std::numbers::pi * 0.08 * 8.0, 0.12);
  // The skin is 2 mm deep at 1 kHz: a wall of 0.2 mm carries evenly.
  const double section = std::numbers::pi * (1.0 - 0.8 * 0.8) * 1e-6;
  CHECK(seen(coil + "tube 2 mm, wall 0.2 mm)", 1e3).real() == Approx(length / (5.8e7 * section)).epsilon(5e-3));
}

TEST_CASE("a coil of strip whose turns nearly touch is the current sheet, with the inner face's resistance") {
  // Nagaoka's K is 0.7351 at diameter/length 0.8 (table of 1909; from memory).
  const double f = 7e6, w = 2.0 * std::numbers::pi * f, turns = 10.0, a = 0.04, l = 0.1;
  const double sheet = mu0 * std::numbers::pi * a * a * turns * turns / l * 0.7351;
  const Complex z = seen("inductor L at x : coil(turns 10, diameter 8 cm, length 10 cm, strip 9.9 mm, thickness 0.1 mm), capacitance 0 pF", f);
  CHECK(z.imag() / w == Approx(sheet).epsilon(0.01));
  const double surface = std::sqrt(w * mu0 / (2.0 * 5.8e7));
  CHECK(z.real() == Approx(surface * std::hypot(2.0 * std::numbers::pi * a * turns, l) / 9.9e-3).epsilon(2e-3));  // four skins thick
}

TEST_CASE("resistors of tube and strip grow by their own skin effect") {
  // Thin sheets keep their resistance up to where the skin is as deep; then R/R0 = t/delta for a tube, half of it for both faces of a strip.
  const double f = 100e6, delta = std::sqrt(2.0 / (2.0 * std::numbers::pi * f * mu0 * 5.8e7));
  CHECK(seen("resistor R at x : 10 ohm, skin(tube 10 mm, wall 10 um)", 1e6).real() == Approx(10.0).epsilon(1e-3));
  CHECK(seen("resistor R at x : 10 ohm, skin(tube 10 mm, wall 200 um)", f).real() == Approx(10.0 * 200e-6 / delta).epsilon(0.03));
  CHECK(seen("resistor R at x : 10 ohm, skin(strip 10 mm, thickness 200 um)", f).real() == Approx(10.0 * 100e-6 / delta).epsilon(1e-6));
}

TEST_CASE("a coax's shell has the resistance of the wall that is told") {
  const auto ohms = [](const std::string& wall) {
    return seen("line w from x to far : 1 m, coax(outer 7 mm, inner 2 mm" + wall + ")\nload end at far : 1e-6 ohm", 1e3).real();
  };
  const auto shell = [](double wall) { return 1.0 / (5.8e7 * std::numbers::pi * ((3.5e-3 + wall) * (3.5e-3 + wall) - 3.5e-3 * 3.5e-3)); };
  CHECK(ohms(", wall 0.1 mm") - ohms(", wall 0.2 mm") == Approx(shell(0.1e-3) - shell(0.2e-3)).epsilon(0.01));
  CHECK(ohms("") == Approx(ohms(", wall 0.7 mm")).epsilon(1e-9));
}
