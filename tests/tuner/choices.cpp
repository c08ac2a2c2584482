// Discrete knobs: relay-switched values, switches between forms, and mixtures with continuous knobs, against trying
// them all.
#include <catch2/catch.hpp>
#include <cstdio>

#include "cases.hpp"

namespace {

using namespace tuner_test;

/// Values 0, s, 2 s ... (2^bits - 1) s of binary-weighted relays; the least stray keeps a coil from being 0.
std::vector<double> relays(int bits, double smallest, double stray) {
  std::vector<double> values;
  for (int k = 0; k < 1 << bits; ++k) values.push_back(stray + k * smallest);
  return values;
}

/// A relay-switched L network: coil choices, capacitor choices.
struct Switched {
  Ladder ladder;
  std::vector<double> first;
  std::vector<double> second;

  double power(const double* choice) const {
    const double values[] = {first[std::size_t(choice[0])], second[std::size_t(choice[1])]};
    return load_power_w(ladder, values);
  }
  double best_of_all() const {
    double best = 0;
    for (double a = 0; a < double(first.size()); ++a)
      for (double b = 0; b < double(second.size()); ++b) {
        const double choice[] = {a, b};
        best = std::max(best, power(choice));
      }
    return best;
  }
};

Switched switched(unsigned seed, int bits) {
  return {random_case(form("sL pC"), seed), relays(bits, 20e-6 / (1 << bits), 20e-9),
          relays(bits, 1500e-12 / (1 << bits), 5e-12)};
}

}  // namespace

TEST_CASE("relay-switched L networks of 2^16 states: the best state, as found by trying all") {
  for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 20u); ++seed) {
    const Switched tuner = switched(seed, 8);
    const Found found = ask({choice_knob(tuner.first), choice_knob(tuner.second)},
                            [&](const double* choice, double*) { return tuner.power(choice); });
    REQUIRE(found.ok);
    CHECK(found.goal == tuner.best_of_all());
    CHECK(found.evaluations <= 65'536 + 10);
  }
}

TEST_CASE("2^22 states are too many to try all: the best state all the same, or all but its power") {
  double worst = 2;
  std::uint64_t most = 0;
  for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 20u); ++seed) {
    const Switched tuner = switched(seed, 11);
    const Found found = ask({choice_knob(tuner.first), choice_knob(tuner.second)},
                            [&](const double* choice, double*) { return tuner.power(choice); });
    const double best = tuner.best_of_all();
    INFO("seed " << seed);
    CHECK(found.goal >= 0.999 * best);
    worst = std::min(worst, found.goal / best);
    most = std::max(most, found.evaluations);
  }
  std::printf("2^22 relay states: worst ratio to all %.6f, evaluations at most %llu\n", worst,
              (unsigned long long)most);
}

TEST_CASE("choices need not rise: a choice's number is handed over, its value only orders the search") {
  const std::vector<double> shuffled{7, 1, 9, 3, 5};
  const Found found = ask({choice_knob(shuffled)}, [&](const double* choice, double*) {
    return -std::abs(shuffled[std::size_t(choice[0])] - 5);
  });
  CHECK(found.setting[0] == 4);
  CHECK(found.goal == 0);
}

TEST_CASE("stepped coil, continuous capacitors: as good as a continuous search of every step") {
  double worst = 2;
  std::vector<double> counts;
  for (const char* name : {"pC sL", "sC pL sC"})
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 10u); ++seed) {
      const Ladder ladder = random_case(form(name), seed);
      const Bounds bounds = bounds_of(ladder);
      const std::vector<double> coil = relays(6, 0.4e-6, 0.05e-6);
      std::vector<sdk::KnobRange> knobs = knobs_of(bounds);
      knobs[1] = choice_knob(coil);
      const auto power = [&](const double* x, double*) {
        double values[3] = {x[0], coil[std::size_t(x[1])], knobs.size() > 2 ? x[2] : 0};
        return load_power_w(ladder, values);
      };
      const Found found = ask(knobs, power);
      double best = 0;
      for (double step = 0; step < double(coil.size()); ++step) {
        knobs[1] = linear_knob(step, step);
        best = std::max(best, ask(knobs, power).goal);
      }
      INFO(name << " seed " << seed);
      CHECK(found.goal >= 0.999 * best);
      worst = std::min(worst, found.goal / best);
      counts.push_back(double(found.evaluations));
    }
  std::sort(counts.begin(), counts.end());
  std::printf("stepped coil: worst ratio to every step %.6f, evaluations median %.0f, most %.0f\n", worst,
              counts[counts.size() / 2], counts.back());
}

TEST_CASE("a switch between two forms is set to the better one") {
  for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 20u); ++seed) {
    Ladder at_rig = random_case(form("pC sL"), seed);
    Ladder at_load = at_rig;
    std::swap(at_load.parts[0], at_load.parts[1]);
    const std::vector<double> sides{0, 1};
    const auto power = [&](const double* x, double*) {
      const double swapped[] = {x[1], x[0]};
      return x[2] == 0 ? load_power_w(at_rig, x) : load_power_w(at_load, swapped);
    };
    std::vector<sdk::KnobRange> knobs = knobs_of(bounds_of(at_rig));
    knobs.push_back(choice_knob(sides));
    const Found found = ask(knobs, power);
    double best = 0;
    for (double side : sides) {
      knobs[2] = linear_knob(side, side);
      best = std::max(best, ask(knobs, power).goal);
    }
    INFO("seed " << seed);
    CHECK(found.goal >= 0.9999 * best);
    CHECK(found.evaluations <= 12'000);
  }
}

TEST_CASE("a stepped knob keeps a slack too") {
  const std::vector<double> steps = relays(5, 1, 0);
  const Found found = ask(
      {choice_knob(steps), linear_knob(0, 10)},
      [&](const double* x, double* slacks) {
        slacks[0] = 20.5 - steps[std::size_t(x[0])] - x[1];
        return 3 * steps[std::size_t(x[0])] + x[1];
      },
      1);
  // 20 whole steps, and the half that is left goes to the continuous knob.
  CHECK(found.feasible);
  CHECK(found.setting[0] == 20);
  CHECK(found.goal == Approx(60.5).epsilon(1e-8));
}
