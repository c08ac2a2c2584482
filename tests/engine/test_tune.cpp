// `tune`, from the text to the setting: held against a brute-force search of an independent ladder model, and both ways round.
#include <catch2/catch.hpp>
#include <iostream>

#include "feed.hpp"
#include "ladder_feed.hpp"
#include "tune/tune.hpp"

using namespace wattfall;
using test::exact;
using test::Feed;
using test::feed_text;

namespace {

tune::Tuning tuned(const Feed& feed) {
  Result<tune::Tuning> result = tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
  for (const Diagnostic& diagnostic : result.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(result.value.has_value());
  return std::move(*result.value);
}

std::vector<std::string> codes_of(const tune::Tuning& tuning) {
  std::vector<std::string> codes;
  for (const judge::Warning& warning : tuning.warnings) codes.push_back(warning.code);
  return codes;
}

void hold_against_brute_force(const tuner_test::Form& form, unsigned seeds, int side, int zoom_side) {
  double worst = 10.0;
  for (unsigned seed = 0; seed < seeds; ++seed) {
    const tuner_test::Ladder ladder = tuner_test::random_case(form, seed);
    const tuner_test::Bounds bounds = tuner_test::bounds_of(ladder);
    const Feed feed(feed_text(ladder, bounds, "most power into ant"));
    INFO(form.name << ", load " << seed);
    REQUIRE(feed.diagnostics.empty());
    const tune::Tuning tuning = tuned(feed);
    const double found = tuner_test::load_power_w(ladder, tuning.settings[0].data());
    const auto brute = tuner_test::brute_force([&](const double* values) { return tuner_test::load_power_w(ladder, values); }, bounds, side,
                                               zoom_side, 0.35, 6);
    worst = std::min(worst, found / brute.score);
    CHECK(found >= 0.999 * brute.score);
    // A rig that gets more than an SWR of 1.5 back is told so, every time.
    const bool matched = tuner_test::swr(tuner_test::solve(ladder, tuning.settings[0].data()).input_ohm) <= 1.5;
    const auto codes = codes_of(tuning);
    CHECK((std::count(codes.begin(), codes.end(), "no-match") == 0) == matched);
  }
  std::cout << "tune " << form.name << ": " << seeds << " loads, worst of found/brute force " << worst << '\n';
}

}  // namespace

TEST_CASE("every L form finds at least 99.9 % of what a brute-force search finds, on 200 random loads") {
  for (const tuner_test::Form& form : tuner_test::two_knob_forms()) hold_against_brute_force(form, TUNE_SEEDS, 200, 15);
}

TEST_CASE("every T and pi form finds at least 99.9 % of what a brute-force search finds, on 200 random loads") {
  for (const tuner_test::Form& form : tuner_test::three_knob_forms()) hold_against_brute_force(form, TUNE_SEEDS, 40, 9);
}

TEST_CASE("least SWR matches 28+j208 ohm with the textbook's two parts") {
  // Exact conjugate match of the high-pass L network: X_C makes the series arm's parallel resistance 50 ohm (see tests/engine/test_ledger.cpp).
  // Q = sqrt(50/28 - 1), series reactance 28 Q capacitive net: X_C = 208 + 28 Q; coil 50/Q.
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [10.1 MHz]\ninductor L at desk : adjustable 0.1 uH to 10 uH\n"
      "capacitor C from desk to feed : adjustable 10 pF to 500 pF\nload ant at feed : 28+j208 ohm\ntune L, C at 10.1 MHz for least swr at desk\n");
  REQUIRE(feed.diagnostics.empty());
  const tune::Tuning tuning = tuned(feed);
  const double q = std::sqrt(50.0 / 28.0 - 1.0), w = 2.0 * M_PI * 10.1e6;
  CHECK(tuning.settings[0][0] == Approx(50.0 / q / w).epsilon(1e-5));
  CHECK(tuning.settings[0][1] == Approx(1.0 / (w * (208.0 + 28.0 * q))).epsilon(1e-5));
  CHECK(codes_of(tuning).empty());
}

TEST_CASE("a knob at its end and a load out of reach are said") {
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7 MHz]\ncapacitor C at desk : adjustable 10 pF to 20 pF\n"
      "load ant at desk : 5 - j400 ohm\ntune C at 7 MHz for most power into ant\n");
  REQUIRE(feed.diagnostics.empty());
  CHECK(codes_of(tuned(feed)) == std::vector<std::string>{"no-match", "knob-at-end"});
}

TEST_CASE("a selector turns to what matches, and its first node is no end of a range") {
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7 MHz, 14 MHz]\nselector deck from desk to (near far) : far, adjustable\n"
      "inductor L from near to feed : 4 uH\ncapacitor C from far to feed : 100 pF\n"
      "load ant at feed : [7 MHz: 50 - j176 ohm, 14 MHz: 50 + j114 ohm]\ntune deck at each frequency for most power into ant\n");
  REQUIRE(feed.diagnostics.empty());
  const tune::Tuning tuning = tuned(feed);
  CHECK(tuning.settings[0][0] == 0.0);
  CHECK(tuning.settings[1][0] == 1.0);
  CHECK(codes_of(tuning).empty());
}

TEST_CASE("keeping that no setting keeps is an error with the best that was found") {
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7 MHz]\ncapacitor C at desk : adjustable 10 pF to 200 pF\n"
      "load ant at desk : 500 ohm\ntune C at 7 MHz for most power into ant, keeping swr at desk below 2\n");
  REQUIRE(feed.diagnostics.empty());
  const Result<tune::Tuning> result = tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
  REQUIRE(test::codes(result.diagnostics) == std::vector<std::string>{"keeping-not-reached"});
  CHECK(exit_code(result.diagnostics) == 4);
  CHECK_THAT(result.diagnostics[0].text, Catch::Contains("swr at desk is"));
}

TEST_CASE("at each frequency retunes, at one frequency does not, and over a band the worst point is best") {
  const std::string text =
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep 7.0 MHz to 7.2 MHz, 5 points\ninductor L from desk to feed : adjustable 0.1 uH to 30 uH, Q 200\n"
      "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\nload ant at feed : series(resistance 12 ohm, capacitance 140 pF)\n";
  const Feed each(text + "tune L, C at each frequency for most power into ant\n");
  const Feed one(text + "tune L, C at 7.1 MHz for most power into ant\n");
  const Feed band(text + "tune L, C over 7.0 MHz to 7.2 MHz for most power into ant\n");
  REQUIRE(each.diagnostics.empty());
  const auto power = [&](const Feed& feed, std::size_t state) {
    const tune::Tuning tuning = tuned(feed);
    solve::States states;
    states.knob_count = 2;
    for (std::size_t s = 0; s < 5; ++s) states.add(feed.design.frequencies_hz[s], tuning.settings[s]);
    const auto solution = solve::solve(feed.design, feed.network, feed.plan, states);
    return ledger::book(feed.design, feed.network, solution, {}).loads[0].absorbed_w[state];
  };
  for (std::size_t s : {0u, 2u, 4u}) CHECK(power(each, s) >= power(one, s) * (1.0 - 1e-9));
  CHECK(power(one, 2) == Approx(power(each, 2)).epsilon(1e-6));
  CHECK(std::min(power(band, 0), power(band, 4)) > std::min(power(one, 0), power(one, 4)) * (1.0 + 1e-6));
}

TEST_CASE("a knob that no tune turns, and for which no value is written, is said to stand mid-range") {
  const auto warnings = [](const std::string& more) {
    std::vector<std::string> texts;
    const Feed feed("source rig at desk : 100 W, 50 ohm\nload ant at feed : 20 ohm\nsweep at [7 MHz]\n"
                    "inductor L from desk to feed : adjustable 1 uH to 4 uH\n" + more);
    const Result<tune::Tuning> result = tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
    REQUIRE(result.value.has_value());
    for (const judge::Warning& warning : result.value->warnings)
      if (warning.code == "not-tuned") texts.push_back(warning.text);
    return texts;
  };
  REQUIRE(warnings("").size() == 1);
  CHECK_THAT(warnings("")[0], Catch::Contains("this knob: L at 2 uH, in the middle of its range"));
  CHECK(warnings("tune L at 7 MHz for most power into ant\n").empty());
  CHECK(warnings("capacitor C at feed : adjustable 100 pF to 900 pF\ntune L at 7 MHz for most power into ant\n").front().find("C at 300 pF") != std::string::npos);
  CHECK(warnings("capacitor C at feed : 200 pF, adjustable 100 pF to 900 pF\ntune L at 7 MHz for most power into ant\n").empty());
}

TEST_CASE("what matches for sending matches for receiving") {
  // Turn the network round: the antenna as a source of its own impedance, the rig as a 50 ohm load. The share of power that
  // passes is the same (reciprocity), at the tuned setting and at any other.
  const Feed send(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7.05 MHz]\ncapacitor C1 from desk to mid : adjustable 20 pF to 400 pF, Q 1000\n"
      "inductor L at mid : adjustable 0.2 uH to 20 uH, Q 200\ncapacitor C2 from mid to feed : adjustable 20 pF to 400 pF, Q 1000\n"
      "load ant at feed : 61 - j140 ohm\ntune C1, L, C2 at 7.05 MHz for least swr at desk\n");
  REQUIRE(send.diagnostics.empty());
  const std::vector<double> knobs = tuned(send).settings[0];
  const std::string c1 = exact(knobs[0]) + " F", l = exact(knobs[1]) + " H", c2 = exact(knobs[2]) + " F";
  const std::string parts = "capacitor C1 from desk to mid : " + c1 + ", Q 1000\ninductor L at mid : " + l + ", Q 200\ncapacitor C2 from mid to feed : " + c2 +
                            ", Q 1000\nsweep at [7.05 MHz]\n";
  const Feed again("design \"s\"\nsource rig at desk : 100 W, 50 ohm\nload ant at feed : 61 - j140 ohm\n" + parts);
  const Feed receive("design \"r\"\nsource ant at feed : 1 mW, 61 - j140 ohm\nload rig at desk : 50 ohm\n" + parts);
  REQUIRE(again.diagnostics.empty());
  REQUIRE(receive.diagnostics.empty());
  CHECK(receive.load("rig").absorbed_w[0] / 1e-3 == Approx(again.load("ant").absorbed_w[0] / 100.0).epsilon(1e-11));
  CHECK(again.ledger.source.swr[0] < 1.0001);
}
