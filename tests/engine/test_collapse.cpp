// The collapsed network says what the whole solution says, at any setting.
#include <catch2/catch.hpp>
#include <random>

#include "feed.hpp"
#include "solve/collapse.hpp"

using namespace wattfall;
using test::Feed;

TEST_CASE("a collapsed network agrees with the whole solution to 1e-10 of the source's power") {
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50+j5 ohm\nsweep at [3.6 MHz, 14.2 MHz]\n"
      "capacitor Cin from desk to mid : adjustable 15 pF to 1 nF, Q 1200\ninductor L at mid : adjustable 0.1 uH to 20 uH, Q 180 at 7 MHz, capacitance 3 pF\n"
      "capacitor Cout from mid to up : adjustable 15 pF to 1 nF, Q 900, inductance 8 nH\n"
      "line coax from up to feed : 20 m of RG-58\ntransformer T from feed to wire : turns 1:3, winding 0.2 ohm, core 3000 ohm\n"
      "load ant at wire : 300 - j700 ohm, radiates 80 %\nload dummy at up : 2000 ohm, radiates 0 %\n");
  REQUIRE(feed.diagnostics.empty());
  std::vector<int> active, watched;
  for (std::size_t e = 0; e < feed.network.elements.size(); ++e) {
    const design::Part& part = feed.design.parts[feed.network.elements[e].part.index];
    if (part.name == "Cin" || part.name == "L" || part.name == "Cout") active.push_back(static_cast<int>(e));
    if (design::is_load(part)) watched.push_back(static_cast<int>(e));
  }
  REQUIRE(active.size() == 3);
  std::mt19937_64 random(3);
  const auto between = [&](double a, double b) { return a * std::pow(b / a, static_cast<double>(random() >> 11) * 0x1p-53); };
  for (double hertz : feed.design.frequencies_hz) {
    std::vector<double> settings;
    solve::States states;
    states.knob_count = 3;
    for (int i = 0; i < 500; ++i) {
      const std::vector<double> knobs = {between(15e-12, 1e-9), between(0.1e-6, 20e-6), between(15e-12, 1e-9)};
      settings.insert(settings.end(), knobs.begin(), knobs.end());
      states.add(hertz, knobs);
    }
    solve::Collapsed collapsed(feed.design, feed.network, hertz, feed.design.starting_knobs(), active, watched);
    REQUIRE(collapsed.sound());
    solve::CollapsedAnswer answer;
    collapsed.evaluate(settings.data(), 500, answer);
    const solve::Solution whole = solve::solve(feed.design, feed.network, feed.plan, states);
    double worst = 0.0;
    for (std::size_t s = 0; s < 500; ++s) {
      for (std::size_t w = 0; w < watched.size(); ++w) worst = std::max(worst, std::abs(answer.watched_w[w][s] - whole.flows[watched[w]].heat1_w[s]) / 100.0);
      worst = std::max(worst, std::abs(answer.source_volts[s] - whole.source_volts[s]) / std::abs(whole.source_volts[s]));
      for (std::size_t p = 0; p < active.size(); ++p) {
        const auto& ends = feed.network.elements[active[p]].node;
        const double volts = std::abs(whole.volts[ends[0]][s] - whole.volts[ends[1]][s]);
        worst = std::max(worst, std::abs(answer.active_volts[p][s] - volts) / volts);
      }
    }
    // Digits go where a port's own Z and its admittance nearly cancel: up to the circuit's Q times the reference's mismatch.
    CHECK(worst < 1e-10);
  }
}
