// Every form of tuner on random loads: the search against a brute force that knows nothing of it.
#include <catch2/catch.hpp>
#include <cstdio>

#include "cases.hpp"

namespace {

using namespace tuner_test;

/// Worst ratio of the search's goal to the brute force's, and what it took.
struct Tally {
  double worst = 2;
  unsigned worst_seed = 0;
  int beaten = 0;
  std::vector<double> evaluations;

  void add(double ratio, unsigned seed, std::uint64_t count) {
    if (ratio < worst) {
      worst = ratio;
      worst_seed = seed;
    }
    if (ratio > 1 + 1e-9) ++beaten;
    evaluations.push_back(double(count));
  }
  void print(const std::string& form) {
    std::sort(evaluations.begin(), evaluations.end());
    std::printf("%-9s worst ratio %.9f (seed %3u), brute force beaten %2d of %zu, evaluations median %.0f, most %.0f\n",
                form.c_str(), worst, worst_seed, beaten, evaluations.size(), evaluations[evaluations.size() / 2],
                evaluations.back());
  }
};

// 400 points a knob (two knobs) and 60 (three): half a percent of the range, then zooms that shrink by 0.6.
Brute brute_power(const Ladder& ladder, const Bounds& bounds) {
  const auto power = [&](const double* values) { return load_power_w(ladder, values); };
  return bounds.lower.size() == 2 ? brute_force(power, bounds, 400, 11, 0.6, 4)
                                  : brute_force(power, bounds, 60, 9, 0.6, 5);
}

void hold_to_brute_force(const std::vector<Form>& forms, std::uint64_t most_evaluations, unsigned seeds = TUNER_SEEDS) {
  for (const Form& form : forms) {
    Tally tally;
    for (unsigned seed = 1; seed <= seeds; ++seed) {
      const Ladder ladder = random_case(form, seed);
      const Bounds bounds = bounds_of(ladder);
      const Brute brute = brute_power(ladder, bounds);
      const Found found =
          ask(knobs_of(bounds), [&](const double* values, double*) { return load_power_w(ladder, values); });
      INFO(form.name << " seed " << seed << " load " << ladder.load << " at " << ladder.frequency_hz);
      REQUIRE(found.ok);
      // 0.1 % of the power is 0.004 dB: no operator can tell.
      CHECK(found.goal >= 0.999 * brute.score);
      CHECK(found.goal == load_power_w(ladder, found.setting.data()));
      CHECK(found.evaluations <= most_evaluations);
      tally.add(found.goal / brute.score, seed, found.evaluations);
    }
    tally.print(form.name);
  }
}

}  // namespace

TEST_CASE("the eight L forms get the power that brute force finds, on every load") {
  hold_to_brute_force(two_knob_forms(), 6'000);
}

TEST_CASE("T and pi forms get the power that brute force finds, on every load") {
  hold_to_brute_force(three_knob_forms(), 15'000);
}

// Minutes of brute force: asked for by name, test_tuner "[thousand]".
TEST_CASE("every form gets the power that brute force finds, on a thousand loads each", "[.thousand]") {
  hold_to_brute_force(two_knob_forms(), 6'000, 1000);
  hold_to_brute_force(three_knob_forms(), 15'000, 1000);
}

TEST_CASE("the least SWR is found where the goal has a cone's tip") {
  for (const Form& form : two_knob_forms()) {
    double worst = 0;
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 60u); ++seed) {
      const Ladder ladder = random_case(form, seed);
      const Bounds bounds = bounds_of(ladder);
      const auto minus_swr = [&](const double* values) { return -swr(solve(ladder, values).input_ohm); };
      const Brute brute = brute_force(minus_swr, bounds, 400, 11, 0.6, 4);
      const Found found = ask(knobs_of(bounds), [&](const double* values, double*) { return minus_swr(values); });
      INFO(form.name << " seed " << seed);
      REQUIRE(found.ok);
      // Both end a little off the tip: 1e-4 of SWR is past any meter.
      CHECK(found.goal >= brute.score * (1 + 1e-4));
      worst = std::max(worst, found.goal / brute.score);
    }
    std::printf("%-9s least SWR: worst ratio to brute force %.9f\n", form.name.c_str(), worst);
  }
}
