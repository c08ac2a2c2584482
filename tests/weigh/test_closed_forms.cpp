// Derivatives that can be had on paper. Own derivations from Ohm's law and the definitions of the figures.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "feed.hpp"
#include "weigh/weigh.hpp"

using namespace wattfall;

namespace {

struct Weighed {
  explicit Weighed(const std::string& text) : feed(text) {
    REQUIRE(feed.diagnostics.empty());
    const std::vector<double> knobs = feed.design.starting_knobs();
    for (const design::Requirement& requirement : feed.design.requirements)
      all.push_back(weigh::weigh(feed.design, feed.network, requirement.figure, feed.design.frequencies_hz[0], knobs));
  }
  double slope(std::size_t figure, const std::string& name) const {
    for (const weigh::Weight& weight : all[figure].weights)
      if (weight.name == name) return weight.per_unit;
    FAIL("no value " << name);
    return 0.0;
  }
  test::Feed feed;
  std::vector<weigh::Weighing> all;
};

Approx near(double value) { return Approx(value).epsilon(1e-9).margin(1e-12); }

}  // namespace

TEST_CASE("a resistor in series with the load") {
  // i = E/(50 + r + R) with E^2 = 4 * 50 * 100: the heat is i^2 r, the power in the load i^2 R.
  const Weighed weighed(
      "source rig at a : 100 W, 50 ohm\nresistor r from a to b : 10 ohm\nload ant at b : 80 ohm\nsweep at [7 MHz]\n"
      "require heat in r below 100 W\nrequire power into ant above 1 W\nrequire rms amps through r below 9 A\nrequire efficiency above 1 %\nrequire total loss below 9 dB\n");
  const double r = 10.0, R = 80.0, s = 50.0 + r + R, e2 = 4.0 * 50.0 * 100.0;
  CHECK(weighed.all[0].figure == near(e2 * r / (s * s)));
  CHECK(weighed.slope(0, "r.resistance") == near(e2 / (s * s) - 2.0 * e2 * r / (s * s * s)));
  CHECK(weighed.slope(0, "ant.resistance") == near(-2.0 * e2 * r / (s * s * s)));
  CHECK(weighed.slope(1, "ant.resistance") == near(e2 / (s * s) - 2.0 * e2 * R / (s * s * s)));
  CHECK(weighed.slope(1, "rig.power") == near(e2 * R / (s * s) / 100.0));
  CHECK(weighed.slope(2, "r.resistance") == near(-std::sqrt(e2) / (s * s)));
  // Of the source's own resistance at the same available power: E^2 = 4 P Z.
  CHECK(weighed.slope(1, "rig.impedance") == near(400.0 * R / (s * s) - 2.0 * 400.0 * 50.0 * R / (s * s * s)));
  CHECK(weighed.slope(3, "r.resistance") == near(-2.0 * e2 * R / (s * s * s) / 100.0));
  CHECK(weighed.slope(4, "r.resistance") == near(20.0 / std::numbers::ln10 / s));
}

TEST_CASE("SWR, return loss, R and X of a load with a coil before it") {
  const Weighed weighed(
      "source rig at a : 100 W, 50 ohm\ninductor L from a to b : 1 uH\nload ant at b : 30 + j20 ohm\nsweep at [7 MHz]\n"
      "require swr at a below 9\nrequire return loss at a above 1 dB\nrequire resistance at a below 99 ohm\nrequire reactance at a below 99 ohm\n");
  const double w = 2.0 * std::numbers::pi * 7e6, r = 30.0, x = 20.0 + w * 1e-6;
  // g^2 = ((R - 50)^2 + X^2)/((R + 50)^2 + X^2).
  const double n = (r - 50.0) * (r - 50.0) + x * x, d = (r + 50.0) * (r + 50.0) + x * x, g = std::sqrt(n / d);
  const double dg_dx = (2.0 * x * d - 2.0 * x * n) / (d * d) / (2.0 * g), dg_dr = (2.0 * (r - 50.0) * d - 2.0 * (r + 50.0) * n) / (d * d) / (2.0 * g);
  const double swr_per_g = 2.0 / ((1.0 - g) * (1.0 - g));
  CHECK(weighed.slope(0, "L.inductance") == near(swr_per_g * dg_dx * w));
  CHECK(weighed.slope(0, "ant.reactance") == near(swr_per_g * dg_dx));
  CHECK(weighed.slope(0, "ant.resistance") == near(swr_per_g * dg_dr));
  CHECK(weighed.slope(1, "ant.resistance") == near(-20.0 / std::numbers::ln10 / g * dg_dr));
  CHECK(weighed.slope(2, "ant.resistance") == near(1.0));
  CHECK(weighed.slope(3, "L.inductance") == near(w));
  CHECK(std::abs(weighed.slope(2, "L.inductance")) < 1e-6 * w);
}

TEST_CASE("a matched line's loss with its length, and a quarter wave of another line") {
  // Matched, the loss in dB goes as the length; R = Z^2/R_L at the end of a quarter wave without loss.
  const Weighed weighed(
      "source rig at a : 100 W, 50 ohm\nline coax from a to b : 20 m, 50 ohm, velocity 0.66, loss 4 dB/100m at 7 MHz\nload ant at b : 50 ohm\nsweep at [7 MHz]\n"
      "require loss in coax below 3 dB\n");
  CHECK(weighed.all[0].figure == Approx(0.8).epsilon(1e-3));
  CHECK(weighed.slope(0, "coax.length") == Approx(weighed.all[0].figure / 20.0).epsilon(1e-6));
  const Weighed quarter(
      "source rig at a : 100 W, 50 ohm\nline q from a to b : 90 deg at 7 MHz, 75 ohm, velocity 0.66\nload ant at b : 112 ohm\nsweep at [7 MHz]\nrequire resistance at a below 99 ohm\n");
  CHECK(quarter.all[0].figure == near(75.0 * 75.0 / 112.0));
  CHECK(quarter.slope(0, "q.impedance") == near(2.0 * 75.0 / 112.0));
  CHECK(quarter.slope(0, "ant.resistance") == near(-75.0 * 75.0 / (112.0 * 112.0)));
}

TEST_CASE("a width is not weighed, and the strongest value comes first") {
  const Weighed weighed(
      "source rig at a : 100 W, 50 ohm\nresistor r from a to b : 1 ohm\nload ant at b : 70 ohm\nsweep 7 MHz to 7.2 MHz step 50 kHz\n"
      "require width of swr at a below 2 above 1 kHz\nrequire heat in r below 9 W\n");
  CHECK(std::isnan(weighed.all[0].figure));
  CHECK(weighed.all[0].weights.empty());
  const auto& weights = weighed.all[1].weights;
  REQUIRE(weights.size() == 5);
  CHECK(std::is_sorted(weights.begin(), weights.end(), [](const auto& a, const auto& b) { return std::abs(a.per_percent) > std::abs(b.per_percent); }));
}

TEST_CASE("slopes along knobs are the knobs' weights, and 0.01 of them what one per cent does") {
  const test::Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nset gap = adjustable 1 m to 20 m\ncapacitor C at desk : adjustable 20 pF to 500 pF, Q 900\n"
      "inductor L from desk to mid : adjustable 0.3 uH to 20 uH, Q 150\nline w from mid to ant : gap of RG-58\nstub s at ant : gap / 4 of RG-58, open\n"
      "load wire at ant : 12-j40 ohm\nsweep at [3.6 MHz]\nrequire power into wire above 1 W\nrequire mismatch at desk into L below 1 dB\nrequire peak volts on w below 1 kV\n");
  REQUIRE(feed.diagnostics.empty());
  std::vector<design::KnobId> ids;
  for (std::size_t k = 0; k < feed.design.knobs.size(); ++k) ids.push_back({static_cast<int>(k)});
  REQUIRE(ids.size() == 3);
  weigh::Point point(feed.design, feed.network, 3.6e6, feed.design.starting_knobs());
  for (const design::Requirement& requirement : feed.design.requirements) {
    const weigh::Weighing weighing = point.weigh(requirement.figure);
    const std::vector<double> slopes = point.slopes(requirement.figure, ids);
    std::size_t found = 0;
    for (const weigh::Weight& weight : weighing.weights)
      for (std::size_t k = 0; k < ids.size(); ++k)
        if (weight.name == feed.design.knobs[k].name) {
          CHECK(0.01 * slopes[k] == Approx(weight.per_percent).epsilon(1e-12));
          ++found;
        }
    CHECK(found == ids.size());
  }
}
