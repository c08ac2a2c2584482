// Worked examples of the books, step by step.
#include <catch2/catch.hpp>
#include <cmath>

#include "walked.hpp"

using namespace wattfall;
using test::Feed;
using test::walked;
using walk::Rule;

namespace {

walk::Walk walk_of(const std::string& text) {
  const Feed feed(text);
  REQUIRE(feed.diagnostics.empty());
  return walked(feed);
}

void near(const walk::Ohms& z, double r, double x, double within) {
  REQUIRE(z);
  CHECK(z->real() == Approx(r).margin(within));
  CHECK(z->imag() == Approx(x).margin(within));
}

}  // namespace

TEST_CASE("an L network: across first, then in series") {
  // Pozar, Microwave Engineering, example 5.1, printed solution (b = 0.29, x = 1.22 normalized to 100 ohm; 0.92 pF, 38.985 nH), from memory; the parts exact.
  const walk::Walk walk = walk_of(
      "source rig at desk : 100 W, 100 ohm\n"
      "inductor L from desk to feed : 3.8984840061683805e-8 H\n"
      "capacitor C at feed : 9.2277383009977087e-13 F\n"
      "load ant at feed : 200-j100 ohm\n"
      "sweep at [500 MHz]\n");
  const auto& steps = walk.to_source.steps;
  REQUIRE(steps.size() == 3);
  CHECK(steps[0].rule == Rule::start);
  CHECK(steps[1].rule == Rule::parallel);
  CHECK((1.0 / *steps[1].added).imag() * 100.0 == Approx(0.29).margin(0.005));
  CHECK(steps[2].rule == Rule::series);
  CHECK(steps[2].added->imag() / 100.0 == Approx(1.22).margin(0.005));
  near(walk.to_source.end, 100.0, 0.0, 1e-9);
  // Seen from the load: the conjugate of 200-j100.
  near(walk.to_load.end, 200.0, 100.0, 1e-9);
  for (const walk::Plane& plane : walk.planes) CHECK(plane.mismatch_db == Approx(0.0).margin(1e-12));
  CHECK(walk.part_w[2] == Approx(100.0));
  CHECK(walk.accepted_w == Approx(100.0));
}

TEST_CASE("a line turns the load's impedance") {
  // Sadiku, Elements of Electromagnetics, example 11.4: 60+j40 ohm through 30 m of lossless 50 ohm line at 2 MHz, u = 0.6 c, is 23.97+j1.35 ohm; figures as
  // printed by a textbook companion.
  const walk::Walk walk = walk_of(
      "source rig at desk : 100 W, 50 ohm\nline w from desk to feed : 30 m, 50 ohm, velocity 1.8e8/299792458\nload ant at feed : 60+j40 ohm\n"
      "sweep at [2 MHz]\n");
  REQUIRE(walk.to_source.steps.size() == 2);
  CHECK(walk.to_source.steps[1].rule == Rule::line);
  near(walk.to_source.end, 23.97, 1.35, 0.005);
  near(walk.to_source.end, 23.972955408728924, 1.3515496382448893, 1e-9);
  CHECK(walk.to_source.steps[1].lost_w == 0.0);
}

TEST_CASE("a lossy line of complex impedance turns the load's impedance, and takes its watts") {
  // Sadiku, example 11.3: 2 m of 60+j40 ohm, 8 dB/m, 1 rad/m, behind 40 ohm, closed by 20+j50 ohm: Zin = 60.25+j38.79 ohm; X as printed by a textbook companion.
  const walk::Walk walk = walk_of(
      "source rig at desk : 10^2/(4*40) * 1 W, 40 ohm\nline w from desk to feed : 2 m, 60+j40 ohm, loss 8 dB/m at 47713451.592369423 Hz\n"
      "load ant at feed : 20+j50 ohm\nsweep at [47713451.592369423 Hz]\n");
  CHECK(walk.to_source.end->imag() == Approx(38.79).margin(0.005));
  CHECK(walk.to_source.end->imag() == Approx(38.788983416575593).epsilon(1e-9));
  // Pozar, chapter 2, lossy line problem (statement from memory, figure computed two ways): 100 ohm on 2.3 wavelengths of 50 ohm, 0.5 dB a wavelength.
  const walk::Walk lossy = walk_of(
      "source rig at desk : 10^2/2/(4*50) * 1 W, 50 ohm\nline w from desk to feed : 2.3 * 360 deg at 10 MHz, 50 ohm, loss (0.5 dB/m) / 29.9792458 at 10 MHz\n"
      "load ant at feed : 100 ohm\nsweep at [10 MHz]\n");
  CHECK(lossy.accepted_w == Approx(0.23364323179567808).epsilon(1e-9));
  CHECK(lossy.to_source.steps[1].lost_w == Approx(0.063118456381940541).epsilon(1e-9));
}

TEST_CASE("a quarter wave inverts, and n squared multiplies") {
  // Liao, Microwave Devices and Circuits, example 3.4.1: 75 ohm on 2.25 wavelengths of 50 ohm is 33.33 ohm; figures as printed by a textbook companion.
  const walk::Walk line = walk_of(
      "source rig at desk : 100 W, 50 ohm\nline w from desk to feed : 810 deg at 10 MHz, 50 ohm\nload ant at feed : 75 ohm\nsweep at [10 MHz]\n");
  near(line.to_source.end, 33.33, 0.0, 0.005);
  const walk::Walk turns = walk_of(
      "source rig at desk : 100 W, 50 ohm\ntransformer t from desk to feed : turns 1:3\nload ant at feed : 450 ohm\nsweep at [10 MHz]\n");
  CHECK(turns.to_source.steps[1].rule == Rule::turns);
  near(turns.to_source.end, 50.0, 0.0, 1e-9);
  near(turns.to_load.end, 450.0, 0.0, 1e-9);
}

TEST_CASE("a pad closed by an open hides it by twice its attenuation") {
  // 6 dB of a 50 ohm pad: the reflection that comes back is 10^(-12/20) of what went in (common practice, no source).
  const walk::Walk walk = walk_of("source rig at desk : 1 W, 50 ohm\npad a from desk to feed : 6 dB\nload ant at feed : 1e9 ohm\nsweep at [10 MHz]\n");
  const std::complex<double> z = *walk.to_source.end;
  CHECK(std::abs((z - 50.0) / (z + 50.0)) == Approx(std::pow(10.0, -12.0 / 20.0)).epsilon(1e-6));
}

TEST_CASE("a trap across the line is a branch of its own, and a stub begins at its far end") {
  const walk::Walk walk = walk_of(
      "source rig at desk : 100 W, 50 ohm\ninductor Lt from desk to x : 2 uH, Q 200\ncapacitor Ct at x : 100 pF\n"
      "stub S at desk : 1 m, 50 ohm, shorted\nload ant at desk : 50 ohm\nsweep at [7 MHz]\n");
  const auto& steps = walk.to_source.steps;
  REQUIRE(steps.size() == 3);
  std::size_t traps = 0, stubs = 0;
  for (const walk::Step& step : steps) {
    if (step.rule != Rule::parallel) continue;
    REQUIRE(step.inside.size() == 2);
    if (step.inside[1].rule == Rule::series) ++traps;
    if (step.inside[0].end == walk::Step::End::shorted && step.inside[1].rule == Rule::line) ++stubs;
  }
  CHECK(traps == 1);
  CHECK(stubs == 1);
}

TEST_CASE("a box is one step with its own inside") {
  const walk::Walk walk = walk_of(
      "box tee (in, out) {\n  capacitor A from in to mid : 100 pF\n  inductor L from mid to ground : 2 uH, Q 200\n  capacitor B from mid to out : 100 pF\n}\n"
      "source rig at desk : 100 W, 50 ohm\ntee atu from desk to mast\nline coax from mast to feed : 10 m of RG-213\nload ant at feed : 20-j100 ohm\nsweep at [7 MHz]\n");
  REQUIRE(walk.to_source.steps.size() == 3);
  const walk::Step& box = walk.to_source.steps[2];
  CHECK(box.rule == Rule::box);
  REQUIRE(box.inside.size() == 3);
  CHECK(box.before == box.inside.front().before);
  CHECK(box.after == box.inside.back().after);
  double inside = 0.0;
  for (const walk::Step& step : box.inside) inside += step.lost_w;
  CHECK(box.lost_w == Approx(inside));
  CHECK(box.lost_w > 0.0);
}
