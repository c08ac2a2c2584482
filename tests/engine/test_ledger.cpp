// The books, held against closed forms of the trade's textbooks; and the places along a line where volts and amps are largest.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>
#include <set>

#include "feed.hpp"
#include "ledger/along_line.hpp"

using namespace wattfall;
using test::Feed;
using Complex = std::complex<double>;

namespace {
const std::string head = "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [10 MHz]\n";
}

TEST_CASE("a resistive divider's watts are those of Ohm's law") {
  // 100 W available at 50 ohm: E = 2 sqrt(100 * 50) = 141.42 V rms. Into 25 + 75 ohm: I = E/150, 22.2 W and 66.7 W; returned: the rest.
  const Feed feed(head + "resistor R from desk to feed : 25 ohm\nload ant at feed : 75 ohm, radiates 90 %\n");
  REQUIRE(feed.diagnostics.empty());
  const double amps = 2.0 * std::sqrt(5000.0) / 150.0;
  CHECK(feed.part("R").heat_w[0] == Approx(amps * amps * 25.0).epsilon(1e-13));
  CHECK(feed.part("R").volts_peak[0] == Approx(std::numbers::sqrt2 * amps * 25.0).epsilon(1e-13));
  CHECK(feed.part("R").amps_rms[0] == Approx(amps).epsilon(1e-13));
  CHECK(feed.load("ant").absorbed_w[0] == Approx(amps * amps * 75.0).epsilon(1e-13));
  CHECK(feed.load("ant").radiated_w[0] == Approx(0.9 * amps * amps * 75.0).epsilon(1e-13));
  CHECK(feed.ledger.source.returned_w[0] == Approx(100.0 - amps * amps * 100.0).epsilon(1e-12));
  CHECK(feed.ledger.source.swr[0] == Approx(2.0).epsilon(1e-13));
  CHECK(feed.ledger.totals.total_loss_db[0] == Approx(-10.0 * std::log10(0.9 * amps * amps * 0.75)).epsilon(1e-12));
}

TEST_CASE("a line's total loss with a mismatched load follows the textbook formula") {
  // Total loss = 10 lg((a^2 - r^2)/(a (1 - r^2))), a = 10^(matched dB/10), r the load's reflection (common practice, no source).
  // True for a source that sees the line through any match; the line's own in/out ratio is that loss exactly.
  const double r = std::abs((Complex(200.0, 100.0) - 50.0) / (Complex(200.0, 100.0) + 50.0));
  const double a = std::pow(10.0, 0.31);
  const Feed feed(head + "line w from desk to feed : 100 m, 50 ohm, velocity 0.66, loss 3.1 dB/100m at 10 MHz\nload ant at feed : 200+j100 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  CHECK(feed.part("w").matched_loss_db[0] == Approx(3.1).epsilon(1e-12));
  CHECK(feed.part("w").loss_db[0] == Approx(10.0 * std::log10((a * a - r * r) / (a * (1.0 - r * r)))).epsilon(1e-12));
  CHECK(feed.part("w").swr_load_end[0] == Approx((1.0 + r) / (1.0 - r)).epsilon(1e-12));
  CHECK(feed.part("w").heat_w[0] == Approx(feed.part("w").in_w[0] - feed.part("w").out_w[0]).epsilon(1e-12));
}

TEST_CASE("a lossless line's largest volts and amps are V+(1 + r) and V+(1 + r)/Z0, a whole crest from the ends") {
  // 100 W through 50 ohm into SWR 4 (200 ohm): crest of volts at the load (0 m), of amps a quarter wave before it.
  const Feed feed(head + "line w from desk to feed : 300 deg at 10 MHz, 50 ohm\nload ant at feed : 200 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  const auto& line = feed.part("w");
  const double volts = std::sqrt(feed.load("ant").absorbed_w[0] * 200.0);
  CHECK(line.volts_peak_along[0] == Approx(std::numbers::sqrt2 * volts).epsilon(1e-12));
  CHECK(line.amps_rms_along[0] == Approx(volts / 50.0).epsilon(1e-12));
  const double wave = 299792458.0 / 10e6;
  const double from_half = std::fmod(line.volts_at_m[0] + 1e-9, wave / 2.0);
  CHECK(from_half < 1e-5);
  CHECK(std::fmod(line.amps_at_m[0], wave / 2.0) == Approx(wave / 4.0).epsilon(1e-5));
}

TEST_CASE("the largest along a line found from the waves is what a fine walk along it finds") {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  for (int i = 0; i < 400; ++i) {
    const Complex wave1{unit(random), unit(random)}, wave2{unit(random), unit(random)};
    const Complex gamma_l{std::pow(10.0, 3.0 * unit(random) - 2.0), 12.0 * (unit(random) + 1.0) + 1e-3};
    for (double s : {1.0, -1.0}) {
      const auto found = ledger::largest_along(wave1, wave2, gamma_l, s);
      const auto at = [&](double t) { return std::abs(wave1 * std::exp(-gamma_l * t) + s * wave2 * std::exp(-gamma_l * (1.0 - t))); };
      double walked = 0.0;
      for (int k = 0; k <= 20000; ++k) walked = std::max(walked, at(k / 20000.0));
      // The walk's step is 1/20000 of the line: it misses a crest by at most (24 rad/20000)^2/8 of it.
      CHECK(found.value >= walked * (1.0 - 1e-12));
      CHECK(found.value <= walked * (1.0 + 1e-6));
      CHECK(at(found.place) == Approx(found.value).epsilon(1e-10));
    }
  }
}

TEST_CASE("a plane looks both ways, and a lossless match is conjugate at every plane") {
  // High-pass L network (common practice, no source): 28+j208 ohm at 10.1 MHz, 67.47 pF in series at the load, 0.87 uH across the rig.
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [10.1 MHz]\ninductor L at desk : 0.87 uH\n"
      "capacitor C from desk to feed : 67.47 pF\nload ant at feed : 28+j208 ohm\nplane p at feed\n");
  REQUIRE(feed.diagnostics.empty());
  const auto& look = feed.ledger.looks.at(0);
  CHECK(std::abs(look.toward_load_ohm[0] - Complex(28.0, 208.0)) < 1e-9);
  // 50 ohm with the coil across is 27.5+j24.9; with the capacitor 27.5-j208.7 (common practice, no source; three figures).
  CHECK(look.toward_source_ohm[0].real() == Approx(27.5).margin(0.05));
  CHECK(look.toward_source_ohm[0].imag() == Approx(-208.7).margin(0.06));
  CHECK(look.mismatch_db[0] < 0.01);
  // Nothing is lost in ideal parts, so the mismatch is the same seen at the source.
  const double returned = feed.ledger.source.returned_w[0] / 100.0;
  CHECK(look.mismatch_db[0] == Approx(-10.0 * std::log10(1.0 - returned)).margin(1e-12));
}

TEST_CASE("a transformer's core and winding take what circuit theory says") {
  // Turns 1:3, winding 1 ohm in series, core 1000 ohm across: the rig sees 1 + 1000 || 50 for 450 ohm at the far side.
  const Feed feed(head + "transformer T from desk to up : turns 1:3, winding 1 ohm, core 1000 ohm\nload ant at up : 450 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  const double seen = 1.0 + 1000.0 * 50.0 / 1050.0;
  CHECK(std::abs(feed.source_impedance() - seen) < 1e-10);
  const double amps = 2.0 * std::sqrt(5000.0) / (50.0 + seen);
  const double volts = amps * (seen - 1.0);
  CHECK(feed.part("T").heat_w[0] == Approx(amps * amps + volts * volts / 1000.0).epsilon(1e-12));
  CHECK(feed.part("T").in_w[0] - feed.part("T").out_w[0] == Approx(feed.part("T").heat_w[0]).epsilon(1e-11));
}

TEST_CASE("a box is booked as it looks from outside") {
  const Feed feed(head +
                  "box ell (in, out) {\n  inductor L from in to out : 1 uH, resistance 2 ohm\n  capacitor C at out : 100 pF\n}\n"
                  "ell net from desk to feed\nload ant at feed : 50 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  const auto& box = feed.ledger.boxes.at(0);
  CHECK(box.in_w[0] == Approx(feed.ledger.source.accepted_w[0]).epsilon(1e-12));
  CHECK(box.out_w[0] == Approx(feed.load("ant").absorbed_w[0]).epsilon(1e-12));
  CHECK(box.heat_w[0] == Approx(feed.part("net.L").heat_w[0]).epsilon(1e-12));
}

TEST_CASE("figures off their own pages are those of the whole books, to the bit") {
  const Feed feed(
      "design \"t\"\n"
      "source rig at desk : 100 W, 50 ohm, foldback [1.5: 100 %, 3: 50 %]\n"
      "line coax from desk to mast : 26 m of RG-58\n"
      "stub  s at mast : 1 m of RG-58, open\n"
      "box match (in, out) {\n  capacitor C at in : 120 pF, Q 900\n  inductor L from in to out : 2 uH, Q 200\n}\n"
      "match m from mast to mid\n"
      "transformer t from mid to feed : turns 1:2, winding 0.1 ohm, leakage 0.1 uH\n"
      "load ant at feed : 61-j142 ohm, radiates 90 %\n"
      "sweep 7 MHz to 7.2 MHz step 50 kHz\n"
      "require swr at desk below 1.5\nrequire return loss at feed into ant above 3 dB\nrequire resistance at mid above 1 ohm\nrequire reactance at feed below 1 kohm\n"
      "require mismatch at mast into m.L below 3 dB\nrequire power into ant above 1 W\nrequire power into m above 1 W\nrequire power into coax above 1 W\n"
      "require radiated from ant above 1 W\nrequire heat in ant below 1 kW\nrequire heat in m.L below 1 kW\nrequire heat in m below 1 kW\n"
      "require loss in coax below 9 dB\nrequire loss in m below 9 dB\nrequire peak volts across m.C below 1 kV\nrequire rms amps through m.L below 9 A\n"
      "require peak volts across ant below 1 kV\nrequire rms amps through ant below 9 A\nrequire peak volts on coax below 1 kV\nrequire rms amps on coax below 9 A\n"
      "require heat in s below 1 kW\nrequire swr on coax below 9\nrequire efficiency above 1 %\nrequire total loss below 20 dB\n");
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.code << ": " << diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  std::set<design::FigureKind> kinds;
  for (const design::Requirement& requirement : feed.design.requirements) {
    const design::Figure& figure = requirement.figure;
    kinds.insert(figure.kind);
    const ledger::Ledger pages = ledger::book(feed.design, feed.network, feed.solution, feed.looks, judge::pages_of({&figure, 1}));
    for (std::size_t s = 0; s < feed.solution.states.size(); ++s) {
      const double found = judge::figure_in_state(figure, feed.design, pages, s);
      CAPTURE(static_cast<int>(figure.kind), s);
      CHECK(std::isfinite(found));
      CHECK(found == judge::figure_in_state(figure, feed.design, feed.ledger, s));
    }
  }
  CHECK(kinds.size() == 16);  // all but the width, which is of a sweep
}
