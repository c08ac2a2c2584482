// Goals that are the worst of several frequencies: creases along the valleys, where second-order models lie.
#include <catch2/catch.hpp>
#include <cstdio>

#include "cases.hpp"

namespace {

using namespace tuner_test;

double worst_power(const Ladder& ladder, const double* values) {
  return worst_power_w(ladder, {0.985, 1.0, 1.015}, values);
}

}  // namespace

TEST_CASE("the one setting whose worst frequency is best is found") {
  for (const char* name : {"sL pC", "pC sL", "sC pL", "sC pL sC", "pC sL pC"}) {
    double worst = 2;
    std::vector<double> counts;
    for (unsigned seed = 1; seed <= std::min(TUNER_SEEDS, 30u); ++seed) {
      const Ladder ladder = random_case(form(name), seed);
      const Bounds bounds = bounds_of(ladder);
      const auto goal = [&](const double* x) { return worst_power(ladder, x); };
      const Brute brute = bounds.lower.size() == 2 ? brute_force(goal, bounds, 400, 15, 0.6, 6)
                                                   : brute_force(goal, bounds, 60, 11, 0.7, 8);
      const Found found = ask(knobs_of(bounds), [&](const double* x, double*) { return goal(x); });
      INFO(name << " seed " << seed);
      REQUIRE(found.ok);
      CHECK(found.goal >= 0.999 * brute.score);
      worst = std::min(worst, found.goal / brute.score);
      counts.push_back(double(found.evaluations));
    }
    std::sort(counts.begin(), counts.end());
    std::printf("%-9s worst of three frequencies: worst ratio %.6f, evaluations median %.0f, most %.0f\n", name, worst,
                counts[counts.size() / 2], counts.back());
  }
}

TEST_CASE("the edge of a pyramid is climbed to its top") {
  const Found found = ask({linear_knob(0, 1), linear_knob(0, 1)}, [](const double* x, double*) {
    return -100 * std::abs(x[0] - 0.5 * x[1] - 0.2) - std::abs(x[1] - 0.7);
  });
  CHECK(found.goal >= -1e-6);
}
