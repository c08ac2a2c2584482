// The line-loss model and the cable table: laws of the fit, of the propagation constant, and of every cable.
#include <cmath>
#include <limits>

#include "line_under_test.hpp"

using namespace line_test;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double c0 = 299792458.0;  // [m/s], exact

/// dB/100m that the coefficients give.
double db_per_100m(Fit k, double hz) {
  return 100.0 * (k.k1 * std::sqrt(hz) + k.k2 * hz);
}

double sum_of_squares(Fit k, const std::vector<sdk::LossPoint>& losses) {
  double sum = 0.0;
  for (const auto& point : losses) sum += std::pow(db_per_100m(k, point.frequency_hz) / point.db_per_100m - 1.0, 2);
  return sum;
}

}  // namespace

TEST_CASE("the line plugin brings the default model and the table") {
  REQUIRE(registry().find_line_model("skin-dielectric") != nullptr);
  CHECK(registry().cables.size() >= 20);
  for (const char* name :
       {"RG-58", "RG-59", "RG-8X", "RG-213", "RG-6", "RG-11", "RG-174", "RG-316", "RG-400", "RG-142", "low-loss 10 mm",
        "hardline 1/2", "hardline 7/8", "twin-lead 300", "window line 450", "open wire 600", "rg213", "Rg 8 x"}) {
    INFO(name);
    CHECK(registry().find_cable(name) != nullptr);
  }
}

TEST_CASE("one loss point grows as the square root of frequency") {
  const Fit k = fit({{10e6, 3.1}});
  CHECK(k.k2 == 0.0);
  CHECK(k.worst < 1e-15);
  CHECK(db_per_100m(k, 10e6) == Approx(3.1).epsilon(1e-14));
  CHECK(db_per_100m(k, 40e6) == Approx(6.2).epsilon(1e-14));
}

TEST_CASE("no loss points, or one of zero, make a lossless line") {
  CHECK(propagate(50.0, 0.66, fit({}), 7.1e6).alpha() == 0.0);
  CHECK(propagate(50.0, 0.66, fit({{10e6, 0.0}}), 7.1e6).alpha() == 0.0);
}

TEST_CASE("two points that both terms can explain are met exactly") {
  for (const double upper_hz : {10.1e6, 20e6, 100e6, 10e9}) {
    const std::vector<sdk::LossPoint> losses = {{10e6, 6.5}, {upper_hz, 6.5 * std::pow(upper_hz / 10e6, 0.7)}};
    const Fit k = fit(losses);
    INFO(upper_hz);
    CHECK(k.k1 > 0.0);
    CHECK(k.k2 > 0.0);
    CHECK(k.worst < 1e-11);  // rounding, grown by 0.01 relative spacing at the closest
    CHECK(db_per_100m(k, losses[1].frequency_hz) == Approx(losses[1].db_per_100m).epsilon(1e-11));
  }
}

TEST_CASE("a loss that grows slower than the square root leaves the skin term alone") {
  const Fit k = fit({{10e6, 4.0}, {100e6, 8.0}});
  CHECK(k.k2 == 0.0);
  CHECK(k.k1 > 0.0);
  CHECK(k.worst > 0.1);
}

TEST_CASE("a loss that grows faster than frequency leaves the dielectric term alone") {
  const Fit k = fit({{10e6, 1.0}, {100e6, 20.0}});
  CHECK(k.k1 == 0.0);
  CHECK(k.k2 > 0.0);
}

TEST_CASE("no other non-negative pair explains the points better") {
  const std::vector<std::vector<sdk::LossPoint>> sets = {{{10e6, 4.0}, {100e6, 8.0}},
                                                         {{10e6, 1.0}, {100e6, 20.0}},
                                                         {{1e6, 0.5}, {10e6, 2.0}, {100e6, 9.0}, {1e9, 31.0}},
                                                         {{1e6, 6.0}, {10e6, 10.0}, {100e6, 29.0}, {1e9, 100.0}}};
  for (const auto& losses : sets) {
    const Fit best = fit(losses);
    const double least = sum_of_squares(best, losses);
    const double step1 = 1e-4 * losses[0].db_per_100m / std::sqrt(losses[0].frequency_hz);
    const double step2 = 1e-4 * losses[0].db_per_100m / losses[0].frequency_hz;
    for (int i = -3; i <= 3; ++i) {
      for (int j = -3; j <= 3; ++j) {
        const Fit other{std::max(0.0, best.k1 + i * step1), std::max(0.0, best.k2 + j * step2), 0.0};
        CHECK(sum_of_squares(other, losses) >= least * (1.0 - 1e-12));
      }
    }
  }
}

TEST_CASE("the worst relative error is the one that the points show") {
  const std::vector<sdk::LossPoint> losses = {{1e6, 0.5}, {10e6, 2.0}, {100e6, 9.0}, {1e9, 31.0}};
  const Fit k = fit(losses);
  double worst = 0.0;
  for (const auto& point : losses) {
    worst = std::max(worst, std::abs(db_per_100m(k, point.frequency_hz) / point.db_per_100m - 1.0));
  }
  CHECK(k.worst == Approx(worst).epsilon(1e-12));
}

TEST_CASE("losses that make no sense are refused in a sentence") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_WITH(fit({{10e6, 1.0}, {10e6, 2.0}}), "losses must be given at rising frequencies");
  CHECK_THROWS_WITH(fit({{0.0, 1.0}}), "a loss is given at a frequency that is not positive");
  CHECK_THROWS_WITH(fit({{nan, 1.0}}), "a loss is given at a frequency that is not positive");
  CHECK_THROWS_WITH(fit({{10e6, -1.0}}), "a loss is negative");
  CHECK_THROWS_WITH(fit({{10e6, 0.0}, {20e6, 1.0}}), "a loss of zero among others has no relative error to fit to");
}

TEST_CASE("phase follows velocity, loss turns into nepers, the impedance stays as given") {
  const Propagation line = propagate({50.0, -1.5}, 0.66, losing(0.031, 10e6), 40e6);
  CHECK(line.beta() == Approx(2.0 * pi * 40e6 / (0.66 * c0)).epsilon(1e-15));
  CHECK(line.alpha() == Approx(0.062 * std::log(10.0) / 20.0).epsilon(1e-14));
  CHECK(line.impedance_ohm == complex(50.0, -1.5));
}

TEST_CASE("a line that makes no sense is refused in a sentence") {
  CHECK_THROWS_WITH(propagate(50.0, 1.5, {}, 7e6), "a line's velocity lies above 0 and at most at 1");
  CHECK_THROWS_WITH(propagate(0.0, 0.66, {}, 7e6), "a line's impedance has a positive real part");
  CHECK_THROWS_WITH(propagate(50.0, 0.66, {-1e-6, 0.0, 0.0}, 7e6), "a line's loss coefficients are not negative");
  CHECK_THROWS_WITH(propagate(50.0, 0.66, {}, 0.0), "a frequency is not positive");
}

TEST_CASE("every cable's loss rises, and its curve stays near its own points") {
  for (const auto& entry : registry().cables) {
    const sdk::Cable& it = *entry.thing;
    INFO(it.name);
    const Fit k = fit_of(it);
    CHECK(k.k1 >= 0.0);
    CHECK(k.k2 >= 0.0);
    CHECK(k.k1 + k.k2 > 0.0);
    // RG-174 needs it (12 %), the others stay below 8 %; makers of one type differ by as much.
    CHECK(k.worst < 0.13);
    for (std::size_t i = 1; i < it.loss_count; ++i) CHECK(it.losses[i].db_per_100m > it.losses[i - 1].db_per_100m);
    if (k.worst > 0.08) CHECK(std::string(it.name) == "RG-174");
    CHECK(std::string(it.origin).find_first_not_of(' ') != std::string::npos);
  }
}
