// Starts from the neighbouring frequency: nearly free where they are good, and no trap where they are not.
#include <catch2/catch.hpp>
#include <cstdio>

#include "cases.hpp"

namespace {

using namespace tuner_test;

Found tune(const Ladder& ladder, const std::vector<double>& start) {
  return ask(
      knobs_of(bounds_of(ladder)), [&](const double* values, double*) { return load_power_w(ladder, values); }, 0,
      start);
}

/// The load as it is a third of a percent up in frequency: reactance moves a little, like that of a wire.
Ladder next_frequency(Ladder ladder) {
  ladder.frequency_hz *= 1 + 1.0 / 300;
  ladder.load += Ohms{0.01 * ladder.load.real(), 0.01 * std::abs(ladder.load)};
  return ladder;
}

}  // namespace

TEST_CASE("a start from the neighbouring frequency gives the cold search's power for a few hundred evaluations") {
  std::vector<Form> forms = two_knob_forms();
  for (const Form& form : three_knob_forms()) forms.push_back(form);
  for (const Form& form : forms) {
    std::vector<double> counts;
    double worst = 2;
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 100u); ++seed) {
      const Ladder first = random_case(form, seed);
      const Ladder second = next_frequency(first);
      const Found before = tune(first, {});
      const Found warm = tune(second, before.setting);
      const Found cold = tune(second, {});
      INFO(form.name << " seed " << seed);
      REQUIRE((before.ok && warm.ok && cold.ok));
      // As against brute force: 0.004 dB.
      CHECK(warm.goal >= 0.999 * cold.goal);
      worst = std::min(worst, warm.goal / cold.goal);
      counts.push_back(double(warm.evaluations));
    }
    std::sort(counts.begin(), counts.end());
    std::printf(
        "%-9s from a neighbour's setting: worst ratio to cold %.9f, evaluations median %.0f, 90 %% %.0f, most %.0f\n",
        form.name.c_str(), worst, counts[counts.size() / 2], counts[counts.size() * 9 / 10], counts.back());
    CHECK(counts[counts.size() / 2] <= (form.parts.size() == 2 ? 300 : 450));
  }
}

TEST_CASE("a start far from the match does not trap the search") {
  for (const Form& form : three_knob_forms())
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 40u); ++seed) {
      const Ladder ladder = random_case(form, seed);
      const Bounds bounds = bounds_of(ladder);
      std::mt19937_64 random(1000 + seed);
      std::vector<double> start;
      for (std::size_t i = 0; i < bounds.lower.size(); ++i)
        start.push_back(bounds.lower[i] * std::pow(bounds.upper[i] / bounds.lower[i], uniform(random)));
      INFO(form.name << " seed " << seed);
      CHECK(tune(ladder, start).goal >= 0.999 * tune(ladder, {}).goal);
    }
}
