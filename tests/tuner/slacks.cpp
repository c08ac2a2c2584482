// Slacks: a limit that decides the answer, checked by hand where a closed form exists and by brute force where none
// does.
#include <catch2/catch.hpp>
#include <cstdio>

#include "cases.hpp"

namespace {

using namespace tuner_test;

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

/// Best setting among those that meet `slack`: brute force that gives all others no score.
template <class Goal1, class Slack1>
Brute brute_kept(const Bounds& bounds, const Goal1& goal, const Slack1& slack) {
  const auto kept = [&](const double* x) { return slack(x) >= 0 ? goal(x) : minus_infinity; };
  return bounds.lower.size() == 2 ? brute_force(kept, bounds, 600, 21, 0.7, 10)
                                  : brute_force(kept, bounds, 80, 11, 0.7, 10);
}

/// Peak volts across the first part, for a source of the ladder's available power.
double volts_across_first(const Ladder& ladder, const double* values) {
  const Answer answer = solve(ladder, values);
  const double amps_rms = std::sqrt(answer.load_w / answer.efficiency / answer.input_ohm.real());
  return std::sqrt(2.0) * amps_rms * std::abs(part_impedance(ladder.parts[0], values[0], ladder.frequency_hz));
}

}  // namespace

TEST_CASE("a limit on the load's volts caps its power at V^2/2R exactly") {
  Ladder ladder{form("sL pC").parts, {200, 0}, 14.2e6};
  for (Part& part : ladder.parts) part.q = 200;
  const double limit_v = 150;  // peak; unlimited it is about 200 V at 100 W
  const auto volts = [&](const double* x) { return std::sqrt(2 * load_power_w(ladder, x) * 200); };
  for (double unit : {1.0, 1e-3, 1e6}) {
    const Found found = ask(
        knobs_of(bounds_of(ladder)),
        [&](const double* x, double* slacks) {
          slacks[0] = (limit_v - volts(x)) * unit;
          return load_power_w(ladder, x);
        },
        1);
    REQUIRE(found.ok);
    CHECK(found.feasible);
    CHECK(volts(found.setting.data()) <= limit_v);
    // P = V^2/2R = 56.25 W; the search aims 1e-10 of a median slack inside.
    CHECK(found.goal == Approx(limit_v * limit_v / (2 * 200)).epsilon(1e-7));
  }
}

TEST_CASE("a slack that does not bind changes nothing") {
  const Ladder ladder = random_case(form("sC pL sC"), 4);
  const auto power = [&](const double* x, double*) { return load_power_w(ladder, x); };
  const Found bare = ask(knobs_of(bounds_of(ladder)), power);
  const Found kept = ask(
      knobs_of(bounds_of(ladder)),
      [&](const double* x, double* slacks) {
        slacks[0] = 1e6 - volts_across_first(ladder, x);
        return load_power_w(ladder, x);
      },
      1);
  CHECK(kept.feasible);
  CHECK(kept.goal == Approx(bare.goal).epsilon(1e-9));
}

TEST_CASE("volts across a capacitor are kept below a limit at the most power that leaves") {
  double worst = 2;
  for (const char* name : {"sC pL", "sC pL sC"})
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 12u); ++seed) {
      const Ladder ladder = random_case(form(name), seed);
      const Bounds bounds = bounds_of(ladder);
      const auto power = [&](const double* x) { return load_power_w(ladder, x); };
      const Found bare = ask(knobs_of(bounds), [&](const double* x, double*) { return power(x); });
      const double limit = 0.7 * volts_across_first(ladder, bare.setting.data());
      const auto slack = [&](const double* x) { return limit - volts_across_first(ladder, x); };
      const Found found = ask(
          knobs_of(bounds),
          [&](const double* x, double* slacks) {
            slacks[0] = slack(x);
            return power(x);
          },
          1);
      const Brute brute = brute_kept(bounds, power, slack);
      INFO(name << " seed " << seed << " limit " << limit);
      CHECK(found.feasible);
      CHECK(slack(found.setting.data()) >= 0);
      CHECK(found.goal >= 0.999 * brute.score);
      worst = std::min(worst, found.goal / brute.score);
    }
  std::printf("volts kept: worst ratio to brute force %.6f\n", worst);
}

TEST_CASE("the least heat in the coil keeping the SWR below 1.5: without the slack no power at all would be best") {
  double worst = 0;
  int feasible = 0;
  for (const char* name : {"sL pC", "pC sL", "sC pL sC", "pC sL pC"})
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 12u); ++seed) {
      const Ladder ladder = random_case(form(name), seed);
      const Bounds bounds = bounds_of(ladder);
      const auto heat = [&](const double* x) {
        const Answer answer = solve(ladder, x);
        return answer.load_w / answer.efficiency - answer.load_w;
      };
      const auto slack = [&](const double* x) { return 1.5 - swr(solve(ladder, x).input_ohm); };
      const Found found = ask(
          knobs_of(bounds),
          [&](const double* x, double* slacks) {
            slacks[0] = slack(x);
            return -heat(x);
          },
          1);
      const Brute brute = brute_kept(
          bounds, [&](const double* x) { return -heat(x); }, slack);
      INFO(name << " seed " << seed);
      REQUIRE(found.ok);
      if (brute.score > minus_infinity) {
        ++feasible;
        CHECK(found.feasible);
        CHECK(-found.goal <= -brute.score * 1.001);
        worst = std::max(worst, found.goal / brute.score);
      }
      CHECK(found.feasible == (slack(found.setting.data()) >= 0));
    }
  std::printf("least heat at SWR 1.5: %d can be met, worst ratio to brute force %.6f\n", feasible, worst);
}

TEST_CASE("two slacks that exclude each other: least violated, and said to be infeasible") {
  const Found found = ask(
      {linear_knob(0, 10)},
      [](const double* x, double* slacks) {
        slacks[0] = x[0] - 6;
        slacks[1] = 4 - x[0];
        return x[0];
      },
      2);
  REQUIRE(found.ok);
  CHECK_FALSE(found.feasible);
  CHECK(found.setting[0] >= 4 - 1e-6);
  CHECK(found.setting[0] <= 6 + 1e-6);
}

TEST_CASE("the corner of two limits is found: max x + y within a circle and below a line") {
  // x^2 + y^2 <= 2 and y <= 1/2: the corner is at x = sqrt(7)/2.
  const Found found = ask(
      {linear_knob(-3, 3), linear_knob(-3, 3)},
      [](const double* x, double* slacks) {
        slacks[0] = 2 - x[0] * x[0] - x[1] * x[1];
        slacks[1] = 0.5 - x[1];
        return x[0] + x[1];
      },
      2);
  CHECK(found.feasible);
  CHECK(found.setting[0] == Approx(std::sqrt(7.0) / 2).epsilon(1e-7));
  CHECK(found.setting[1] == Approx(0.5).epsilon(1e-7));
}
