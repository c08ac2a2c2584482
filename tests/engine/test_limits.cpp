// What no setting can better, and what the tuner may therefore claim: the most that passive parts bring, the best of all settings over a band, and preferred
// values in pairs.
#include <catch2/catch.hpp>
#include <iostream>

#include "../../engine/tune/search.hpp"
#include "../tuner/brute_force.hpp"
#include "feed.hpp"
#include "ladder_feed.hpp"
#include "tune/limit.hpp"
#include "tune/tune.hpp"

using namespace wattfall;
using test::exact;
using test::Feed;
using test::feed_text;

namespace {

tune::Tuning tuned(const std::string& text) {
  const Feed feed(text);
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  Result<tune::Tuning> result = tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
  for (const Diagnostic& diagnostic : result.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(result.value.has_value());
  return std::move(*result.value);
}

const tune::Limit* limit_of(const tune::Tuning& tuning, const std::string& kind) {
  for (const tune::Limit& limit : tuning.searches.front().limits)
    if (limit.kind == kind) return &limit;
  return nullptr;
}

const std::string head = "design \"t\"\nsource rig at desk : 100 W, 50 ohm\n";

std::string replaced(std::string text, const std::string& what, const std::string& by) { return text.replace(text.find(what), what.size(), by); }

/// Random ladders, every second one with a lossy cable before the load, and every fourth with a pad's loss before the tuner.
void hold_to_the_bound(unsigned cases) {
  double nearest = 0.0;
  unsigned reached = 0;
  for (unsigned seed = 1; seed <= cases; ++seed) {
    const auto forms = seed % 8 < 6 ? tuner_test::two_knob_forms() : tuner_test::three_knob_forms();
    tuner_test::Ladder ladder = tuner_test::random_case(forms[seed / 8 % forms.size()], 5000 + seed);
    if (seed % 3 == 0)
      for (tuner_test::Part& part : ladder.parts) part.q = 1e9;
    std::string text = feed_text(ladder, tuner_test::bounds_of(ladder), "most power into ant");
    if (seed % 2 == 0) {
      const std::string at = "load ant at n" + std::to_string(std::count_if(ladder.parts.begin(), ladder.parts.end(), [](const auto& part) { return part.series; }));
      text = replaced(text, at + " ", "line coax from " + at.substr(12) + " to far : " + exact(1 + 0.37 * (seed % 100)) + " m of RG-58\nload ant at far ");
    }
    if (seed % 4 == 0) text = replaced(text, "source rig at n0", "pad first from rig to n0 : 1 dB\nsource rig at rig");
    const tune::Tuning tuning = tuned(text);
    const tune::Limit* limit = limit_of(tuning, "any parts");
    INFO("seed " << seed << "\n" << text);
    REQUIRE(limit != nullptr);
    const double load_w = tuning.searches[0].matches[0].load_w;
    CHECK(load_w <= limit->load_w * (1 + 1e-9));
    CHECK(limit->load_w <= 100.0);
    if (seed % 2 == 1) CHECK(limit->load_w == Approx(100.0).epsilon(1e-6));
    nearest = std::max(nearest, load_w / limit->load_w);
    // What does not lose anything and matches gets all of it.
    if (seed % 12 == 6 && tuning.searches[0].matches[0].swr < 1.0001) {
      CHECK(load_w >= limit->load_w * (1 - 1e-4));
      ++reached;
    }
  }
  std::cout << "power against the most that passive parts bring, " << cases << " networks: at most " << nearest << " of it; reached by " << reached << "\n";
  CHECK(nearest > 0.999);
}

std::vector<tuner_test::Form> all_forms() {
  std::vector<tuner_test::Form> forms = tuner_test::two_knob_forms();
  for (const tuner_test::Form& form : tuner_test::three_knob_forms()) forms.push_back(form);
  return forms;
}

/// A search as `at each frequency` has it, with nothing told beside, against the optimizer's own from nothing, which tests/tuner holds to brute force.
void hold_closed_forms(unsigned loads) {
  double worst = 2.0;
  std::vector<std::size_t> evaluations;
  for (const tuner_test::Form& form : all_forms())
    for (unsigned seed = 1; seed <= loads; ++seed) {
      const tuner_test::Ladder ladder = tuner_test::random_case(form, seed);
      tuner_test::Bounds bounds = tuner_test::bounds_of(ladder);
      // Every second tuner has ranges that are easily too small.
      std::mt19937_64 random(seed);
      for (std::size_t i = 0; i < bounds.lower.size() && seed % 2 == 0; ++i) {
        bounds.lower[i] *= std::pow(6.0, tuner_test::uniform(random));
        bounds.upper[i] /= std::pow(6.0, tuner_test::uniform(random));
      }
      const Feed feed(feed_text(ladder, bounds, "most power into ant"));
      const design::Tune& statement = feed.design.tunes.front();
      const tune::Problem problem{feed.design, feed.network, feed.plan, statement, statement.at_hz, feed.design.starting_knobs(), {}};
      const tune::Found found = tune::search(problem, *test::registry().find_optimizer());
      const tuner_test::Found cold = tuner_test::ask(tuner_test::knobs_of(bounds), [&](const double* values, double*) { return tuner_test::load_power_w(ladder, values); });
      INFO(form.name << " seed " << seed);
      REQUIRE(found.found);
      CHECK(found.goal >= 0.999 * cold.goal);
      CHECK(found.goal == Approx(tuner_test::load_power_w(ladder, found.setting.data())).epsilon(1e-9));
      worst = std::min(worst, found.goal / cold.goal);
      evaluations.push_back(found.evaluations);
    }
  std::sort(evaluations.begin(), evaluations.end());
  std::cout << "searches from closed forms against searches from nothing, " << evaluations.size() << " networks: worst " << worst << ", evaluations median "
            << evaluations[evaluations.size() / 2] << ", most " << evaluations.back() << "\n";
}

/// An SWR that must be kept is kept, by the independent ladder's figures; where it is said that no setting keeps it, neither a fine grid with its zooms nor a
/// search for the least SWR finds one.
void hold_keeping(unsigned loads) {
  std::size_t kept = 0, refused = 0;
  double least = tuner_test::brute::infinity;
  for (const tuner_test::Form& form : all_forms())
    for (unsigned seed = 1; seed <= loads; ++seed) {
      const tuner_test::Ladder ladder = tuner_test::random_case(form, 9000 + seed);
      const tuner_test::Bounds bounds = tuner_test::bounds_of(ladder);
      const Feed feed(feed_text(ladder, bounds, "most power into ant, keeping swr at n0 below 1.5"));
      const design::Tune& statement = feed.design.tunes.front();
      const tune::Problem problem{feed.design, feed.network, feed.plan, statement, statement.at_hz, feed.design.starting_knobs(), {}};
      const tune::Found found = tune::search(problem, *test::registry().find_optimizer());
      const auto swr = [&](const double* values) { return tuner_test::swr(tuner_test::solve(ladder, values).input_ohm); };
      INFO(form.name << " seed " << seed);
      REQUIRE(found.found);
      if (found.keeping) {
        ++kept;
        CHECK(swr(found.setting.data()) <= 1.5 * (1 + 1e-9));
        continue;
      }
      ++refused;
      const int side = bounds.lower.size() == 2 ? 300 : 50;
      const auto best = tuner_test::brute_force([&](const double* values) { return -swr(values); }, bounds, side, 11, 0.6, 4);
      CHECK(-best.score > 1.5);
      least = std::min(least, -best.score);
      CHECK(-tuner_test::ask(tuner_test::knobs_of(bounds), [&](const double* values, double*) { return -swr(values); }).goal > 1.5);
    }
  std::cout << "keeping an SWR of 1.5: " << kept << " kept it, " << refused << " cannot: the least that brute force finds of these is " << least << "\n";
  CHECK(kept > 0);
  CHECK(refused > 0);
}

}  // namespace

TEST_CASE("a search from the closed forms comes to what one from nothing does") { hold_closed_forms(std::min(40u, TUNE_SEEDS)); }

TEST_CASE("what must be kept is kept, or said to be out of reach") { hold_keeping(std::min(25u, TUNE_SEEDS)); }

// Minutes: asked for by name, test_engine "[thousand]".
TEST_CASE("a thousand loads each: searches from closed forms", "[.thousand]") { hold_closed_forms(1'000); }
TEST_CASE("a thousand loads each: what must be kept", "[.thousand]") { hold_keeping(1'000); }

TEST_CASE("no tuner brings more than the conjugate match, or what the rest of the network leaves of it") { hold_to_the_bound(std::min(240u, 5 * TUNE_SEEDS)); }

// Minutes: asked for by name, test_engine "[tenthousand]".
TEST_CASE("no tuner brings more than the conjugate match, on 10,000 networks", "[.tenthousand]") { hold_to_the_bound(10'000); }

TEST_CASE("one reactance in series brings what cancelling the load's own does") {
  const tune::Tuning tuning = tuned(head + "inductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\nload ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\n"
                                           "tune L at 7 MHz for most power into ant\n");
  // 4 Rs Rl/(Rs + Rl)^2 of what there is.
  REQUIRE(limit_of(tuning, "any parts") != nullptr);
  CHECK(limit_of(tuning, "any parts")->load_w == Approx(100.0 * 4 * 50 * 12 / (62.0 * 62.0)).epsilon(1e-9));
}

TEST_CASE("a tuner at the rig brings at the most what the line loses as it stands") {
  const std::string text = head + "capacitor C at desk : adjustable 10 pF to 2 nF, Q 500\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 100\n"
                                  "line coax from feed to far : 20 m of RG-58\nload ant at far : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant\n";
  const tune::Tuning tuning = tuned(text);
  const Feed feed(text);
  const double through = feed.load("ant").absorbed_w[0] / (feed.load("ant").absorbed_w[0] + feed.part("coax").heat_w[0]);
  REQUIRE(limit_of(tuning, "any parts") != nullptr);
  CHECK(limit_of(tuning, "any parts")->load_w == Approx(100.0 * through).epsilon(1e-9));
}

TEST_CASE("the most that passive parts bring bounds every setting, ideal or lossy, wherever they stand") {
  // Two places in one network with losses before, between and behind them; any passive branches there.
  const Feed feed(head +
                  "pad before from desk to a : 1.5 dB\ncapacitor C from a to b : 100 pF, adjustable 1 pF to 5 nF\nline coax from b to c : 9 m of RG-58\n"
                  "inductor L at c : 2 uH, adjustable 10 nH to 50 uH\nload ant at c : 30 + j90 ohm\nsweep at [14 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const auto element = [&](const std::string& name) {
    for (std::size_t p = 0; p < feed.design.parts.size(); ++p)
      if (feed.design.parts[p].name == name) return feed.network.elements_of(design::PartId{static_cast<int>(p)}).front();
    return -1;
  };
  const std::vector<double> knobs = feed.design.starting_knobs();
  const solve::Collapsed collapsed(feed.design, feed.network, 14e6, knobs, {element("C"), element("L")}, {element("ant")});
  const solve::CollapsedPorts ports = collapsed.ports();
  const auto most = tune::most_with_passive_parts(ports, 0);
  REQUIRE(most.has_value());
  std::mt19937_64 random(3);
  double best = 0.0;
  for (int i = 0; i < 200'000; ++i) {
    std::complex<double> y[2];
    for (auto& one : y) {
      const double x = 2000.0 * std::pow(2 * tuner_test::uniform(random) - 1, 3), r = i % 2 == 0 ? 0.0 : 50 * tuner_test::uniform(random);
      one = 1.0 / std::complex<double>(r, x);
    }
    // (1 + Z D) V = V0, D the admittances less the reference.
    const auto d0 = y[0] - ports.reference, d1 = y[1] - ports.reference;
    const auto a = 1.0 + ports.z[0] * d0, b = ports.z[1] * d1, c = ports.z[2] * d0, d = 1.0 + ports.z[3] * d1, over = 1.0 / (a * d - b * c);
    const auto v0 = (d * ports.v[0] - b * ports.v[1]) * over, v1 = (a * ports.v[1] - c * ports.v[0]) * over;
    const auto volts = ports.u[3] - ports.u[4] * d0 * v0 - ports.u[5] * d1 * v1;
    best = std::max(best, ports.watched_siemens[0] * std::norm(volts));
  }
  CHECK(best <= *most * (1 + 1e-9));
  CHECK(best > 0.8 * *most);
}

TEST_CASE("over a band the best of all settings is not bettered by brute force") {
  unsigned proved = 0, all = 0;
  for (const tuner_test::Form& form : tuner_test::two_knob_forms())
    for (unsigned seed = 700; seed < 700 + std::min(12u, TUNE_SEEDS); ++seed) {
      tuner_test::Ladder ladder = tuner_test::random_case(form, seed);
      const tuner_test::Bounds bounds = tuner_test::bounds_of(ladder);
      const double middle = ladder.frequency_hz, lower = 0.985 * middle, upper = 1.015 * middle;
      std::string text = feed_text(ladder, bounds, "most power into ant");
      text = text.substr(0, text.find("sweep")) + "sweep from " + exact(lower) + " Hz to " + exact(upper) + " Hz, 3 points\ntune P0, P1 over " + exact(lower) + " Hz to " +
             exact(upper) + " Hz for most power into ant\n";
      text = replaced(text, "sweep from ", "sweep ");
      const tune::Tuning tuning = tuned(text);
      const auto worst = [&](const double* values) {
        double least = 1e9;
        for (double hertz : {lower, 0.5 * (lower + upper), upper}) {
          ladder.frequency_hz = hertz;
          least = std::min(least, tuner_test::load_power_w(ladder, values));
        }
        return least;
      };
      INFO(form.name << " seed " << seed);
      const tune::Search& search = tuning.searches[0];
      CHECK(search.matches[0].load_w == Approx(worst(search.matches[0].values.data())).epsilon(1e-9));
      ++all;
      if (search.certainty != "best of all settings") continue;
      ++proved;
      const auto best = tuner_test::brute_force(worst, bounds, 150, 11, 0.5, 4);
      CHECK(best.score <= search.matches[0].load_w + 0.10001);
    }
  std::cout << "proved over three frequencies: " << proved << " of " << all << "\n";
  CHECK(proved > all * 9 / 10);
}

TEST_CASE("over a band nothing is proved of a setting that something else holds back") {
  const tune::Tuning tuning = tuned(head +
                                    "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n"
                                    "load ant at feed : 12 - j200 ohm\nsweep 7 MHz to 7.1 MHz, 5 points\n"
                                    "tune C, L over 7 MHz to 7.1 MHz for most power into ant, keeping peak volts across L below 300 V\n");
  CHECK(tuning.searches[0].certainty == "best found");
  CHECK_THAT(tuning.searches[0].certain_why, Catch::Contains("boxes of the ranges"));
}

TEST_CASE("an SWR that is kept is part of the proof") {
  // The heat that the SWR costs would be more than the margin: the goal alone has better settings.
  const tune::Tuning tuning = tuned(head +
                                    "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 30\n"
                                    "load ant at feed : 2 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant, keeping swr at desk below 1.1\n");
  CHECK(tuning.searches[0].certainty == "best of all settings");
}

TEST_CASE("what stands in a proof's way is said") {
  const std::string ends = "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\n";
  const tune::Tuning goal = tuned(head + "inductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 30\n" + ends + "tune L at 7 MHz for least heat in L\n");
  CHECK(goal.searches[0].certainty == "best found");
  CHECK_THAT(goal.searches[0].certain_why, Catch::Contains("no proof is known for such a goal"));
  const tune::Tuning line = tuned(head + "line W from desk to feed : adjustable 1 m to 12 m, 75 ohm\n" + ends + "tune W at 7 MHz for most power into ant\n");
  CHECK_THAT(line.searches[0].certain_why, Catch::Contains("and W turns something else"));
}

TEST_CASE("pairs of preferred values come nearer to the best than single ones, and are the best of their own") {
  const auto text = [](const std::string& series) {
    return head + "capacitor C at desk : adjustable series(E12, from 47 pF, to 2.2 nF" + series + "), Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n" +
           "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant\n";
  };
  const tune::Tuning single = tuned(text("")), pairs = tuned(text(", pairs")), parallel = tuned(text(", parallel pairs"));
  const auto load_w = [](const tune::Tuning& tuning) { return tuning.searches[0].matches[0].load_w; };
  CHECK(load_w(pairs) >= load_w(single) * (1 - 1e-9));
  CHECK(load_w(pairs) >= load_w(parallel) * (1 - 1e-9));
  CHECK(load_w(parallel) >= load_w(single) * (1 - 1e-9));
  const Feed feed(text(", pairs"));
  const design::Knob& knob = feed.design.knobs[0];
  const auto choice = std::find(knob.choices.begin(), knob.choices.end(), pairs.settings[0][0]);
  REQUIRE(choice != knob.choices.end());
  const design::Made& made = knob.made[std::size_t(choice - knob.choices.begin())];
  const double both = made.second == 0.0 ? made.first : made.in_series ? made.first * made.second / (made.first + made.second) : made.first + made.second;
  CHECK(both == Approx(*choice).epsilon(1e-9));
}
