// What is odd about a problem must not break the search: nothing to turn, knobs without effect, goals that do not
// exist.
#include <catch2/catch.hpp>

#include "cases.hpp"

namespace {

using namespace tuner_test;

constexpr double infinity = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("no knob: the one setting is weighed") {
  const Found found = ask({}, [](const double*, double*) { return 7.0; });
  CHECK(found.ok);
  CHECK(found.goal == 7);
  CHECK(found.feasible);
  CHECK(found.evaluations == 1);
}

TEST_CASE("a range of no width is kept, whether logarithmic, linear, or at zero") {
  const Found found = ask({log_knob(2, 2), linear_knob(0, 0), log_knob(1, 9)},
                          [](const double* x, double*) { return x[0] + x[1] - std::abs(x[2] - 4); });
  CHECK(found.setting[0] == 2);
  CHECK(found.setting[1] == 0);
  CHECK(found.setting[2] == Approx(4).epsilon(1e-7));
  const Found fixed = ask({log_knob(3, 3)}, [](const double* x, double*) { return x[0]; });
  CHECK(fixed.goal == 3);
}

TEST_CASE("a knob that changes nothing does not hinder the others") {
  const Ladder ladder = random_case(form("sL pC"), 3);
  std::vector<sdk::KnobRange> knobs = knobs_of(bounds_of(ladder));
  const auto power = [&](const double* x, double*) { return load_power_w(ladder, x); };
  const double alone = ask(knobs, power).goal;
  knobs.push_back(log_knob(1, 100));
  CHECK(ask(knobs, power).goal == Approx(alone).epsilon(1e-9));
}

TEST_CASE("two knobs that do the same share the work") {
  Ladder ladder = random_case(form("sC pL"), 5);
  std::vector<sdk::KnobRange> knobs = knobs_of(bounds_of(ladder));
  const double alone = ask(knobs, [&](const double* x, double*) { return load_power_w(ladder, x); }).goal;
  // The coil as two in series, each of half the range: their sum alone matters.
  knobs = {knobs[0], log_knob(0.025e-6, 15e-6), log_knob(0.025e-6, 15e-6)};
  const Found shared = ask(knobs, [&](const double* x, double*) {
    const double values[] = {x[0], x[1] + x[2]};
    return load_power_w(ladder, values);
  });
  CHECK(shared.goal == Approx(alone).epsilon(1e-9));
}

TEST_CASE("a goal that exists nowhere is refused in a sentence") {
  for (double nothing : {-infinity, std::numeric_limits<double>::quiet_NaN()}) {
    const Found found = ask({log_knob(1, 2)}, [&](const double*, double*) { return nothing; });
    CHECK_FALSE(found.ok);
    CHECK(found.text == "no setting within the knobs' ranges gives the goal a value");
  }
}

TEST_CASE("a goal that exists in a corner alone is found there, and no number counts as the worst") {
  const Found found = ask({linear_knob(0, 1), linear_knob(0, 1)}, [](const double* x, double*) {
    return x[0] > 0.6 && x[1] < 0.4 ? 1 - (x[0] - 0.7) * (x[0] - 0.7) - x[1] * x[1]
                                    : std::numeric_limits<double>::quiet_NaN();
  });
  REQUIRE(found.ok);
  CHECK(found.goal == Approx(1).epsilon(1e-9));
}

TEST_CASE("a slack that is no number counts as missed") {
  const Found found = ask(
      {linear_knob(0, 1)},
      [](const double* x, double* slacks) {
        slacks[0] = x[0] > 0.5 ? std::numeric_limits<double>::quiet_NaN() : 1.0;
        return x[0];
      },
      1);
  CHECK(found.feasible);
  CHECK(found.setting[0] <= 0.5);
  CHECK(found.setting[0] > 0.49);
}

TEST_CASE("a goal without end stops the search at once") {
  const Found found = ask({linear_knob(-1, 1)}, [](const double* x, double*) { return 1 / std::abs(x[0]); });
  CHECK(found.goal == infinity);
  CHECK(found.setting[0] == 0);
}

TEST_CASE("a failing goal hands its sentence on") {
  int calls = 0;
  const Found found = ask({log_knob(1, 2)}, [&](const double*, double*) -> double {
    if (++calls > 40) throw std::runtime_error("the coax was cut");
    return 1;
  });
  CHECK_FALSE(found.ok);
  CHECK(found.text == "the coax was cut");
}

TEST_CASE("a range upside down or without end is refused") {
  CHECK(ask({log_knob(2, 1)}, [](const double*, double*) { return 0.0; }).text ==
        "a knob's range is upside down or not finite");
  CHECK_FALSE(ask({linear_knob(0, infinity)}, [](const double*, double*) { return 0.0; }).ok);
  const double none = 0;
  CHECK_FALSE(ask({sdk::KnobRange{0, 0, 0, 0, &none, 0}}, [](const double*, double*) { return 0.0; }).ok);
}

TEST_CASE("a flat goal ends soon") {
  const Found found = ask({log_knob(1, 2), log_knob(1, 2)}, [](const double*, double*) { return 5.0; });
  CHECK(found.goal == 5);
  CHECK(found.evaluations < 6'000);
}

TEST_CASE("the same problem gives the same bits") {
  const Ladder ladder = random_case(form("pC sL pC"), 8);
  const auto power = [&](const double* x, double*) { return load_power_w(ladder, x); };
  const Found first = ask(knobs_of(bounds_of(ladder)), power);
  const Found again = ask(knobs_of(bounds_of(ladder)), power);
  CHECK(first.setting == again.setting);
  CHECK(first.goal == again.goal);
  CHECK(first.evaluations == again.evaluations);
}

TEST_CASE("settings stay within their ranges to the last bit") {
  const double lower = 12e-12, upper = 240e-12;
  bool inside = true;
  const Found found = ask({log_knob(lower, upper), linear_knob(0.1, 0.7)}, [&](const double* x, double*) {
    inside = inside && x[0] >= lower && x[0] <= upper && x[1] >= 0.1 && x[1] <= 0.7;
    return x[0] * x[1];
  });
  CHECK(inside);
  CHECK(found.setting[0] == upper);
  CHECK(found.setting[1] == 0.7);
}

TEST_CASE("twelve knobs: a curved valley of many dimensions is walked to its end") {
  // Rosenbrock (1960), a standard test of searches: the greatest value is 0 at 1, 1, ...
  std::vector<sdk::KnobRange> knobs(12, linear_knob(-2, 2));
  const Found found = ask(knobs, [](const double* x, double*) {
    double sum = 0;
    for (int i = 0; i < 11; ++i) sum += 100 * std::pow(x[i + 1] - x[i] * x[i], 2) + std::pow(1 - x[i], 2);
    return -sum;
  });
  CHECK(found.goal > -1e-8);
}
