// Conversions between S and Z, Y, H, G: circuits worked by hand, laws over random networks, and the ends where one of
// them does not exist.
#include <array>
#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

using Matrix = std::vector<Complex>;

Matrix random_matrix(std::mt19937& random, int ports) {
  // Each element within 0.4 / N: the norm stays below 1, so every kind of matrix exists.
  std::uniform_real_distribution<double> part(-.4 / ports, .4 / ports);
  Matrix s(static_cast<std::size_t>(ports * ports));
  for (Complex& one : s) one = {part(random), part(random)};
  return s;
}

double distance(const Matrix& one, const Matrix& other) {
  double worst = 0;
  for (std::size_t i = 0; i < one.size(); ++i) worst = std::max(worst, std::abs(one[i] - other[i]));
  return worst;
}

}  // namespace

TEST_CASE("one port: open, short, match and their like") {
  CHECK(impedance_from_reflection(1, 50) == Complex(infinity, 0));
  CHECK(impedance_from_reflection(-1, 50) == Complex(0));
  CHECK(impedance_from_reflection(0, 75) == Complex(75));
  CHECK(admittance_from_reflection(-1, 50) == Complex(infinity, 0));
  CHECK(near(admittance_from_reflection(0, 50), .02));
  CHECK(reflection_from_impedance({infinity, 0}, 50) == Complex(1));
  CHECK(reflection_from_impedance({0, -infinity}, 50) == Complex(1));
  CHECK(reflection_from_impedance(-50, 50) == Complex(infinity, 0));
  CHECK(near(reflection_from_impedance({0, 50}, 50), {0, 1}));
  CHECK(reflection_from_admittance({infinity, 0}, 50) == Complex(-1));
  CHECK(near(reflection_from_admittance(.04, 50), -1.0 / 3));
}

TEST_CASE("one port there and back is the same") {
  std::mt19937 random(1);
  std::uniform_real_distribution<double> part(-.7, .7);
  for (int i = 0; i < 100; ++i) {
    const Complex s(part(random), part(random));
    CHECK(near(reflection_from_impedance(impedance_from_reflection(s, 75), 75), s, 1e-14));
    CHECK(near(reflection_from_admittance(admittance_from_reflection(s, 75), 75), s, 1e-14));
  }
}

TEST_CASE("every kind there and back is the same, for references that differ") {
  std::mt19937 random(2);
  const std::array<double, 5> references = {50, 75, 200, 5, 450};
  for (const int ports : {1, 2, 3, 5}) {
    for (const Immittance kind :
         {Immittance::impedance, Immittance::admittance, Immittance::hybrid, Immittance::inverse_hybrid}) {
      if (ports != 2 && kind >= Immittance::hybrid) continue;
      for (int i = 0; i < 50; ++i) {
        const Matrix s = random_matrix(random, ports);
        Matrix there = s;
        REQUIRE(from_scattering(kind, ports, references.data(), there.data()));
        REQUIRE(to_scattering(kind, ports, references.data(), there.data()));
        CHECK(distance(there, s) < 1e-13);
      }
    }
  }
}

TEST_CASE("the admittance is the inverse of the impedance") {
  std::mt19937 random(3);
  const std::array<double, 2> references = {50, 200};
  for (int i = 0; i < 100; ++i) {
    Matrix z = random_matrix(random, 2);
    Matrix y = z;
    REQUIRE(from_scattering(Immittance::impedance, 2, references.data(), z.data()));
    REQUIRE(from_scattering(Immittance::admittance, 2, references.data(), y.data()));
    CHECK(near(z[0] * y[0] + z[1] * y[2], 1, 1e-12));
    CHECK(near(z[0] * y[1] + z[1] * y[3], 0, 1e-12));
    CHECK(near(z[2] * y[0] + z[3] * y[2], 0, 1e-12));
    CHECK(near(z[2] * y[1] + z[3] * y[3], 1, 1e-12));
  }
}

TEST_CASE("the kinds that a network does not have are refused") {
  const std::array<double, 2> references = {50, 50};
  const auto has = [&](Immittance kind, Matrix s) { return from_scattering(kind, 2, references.data(), s.data()); };
  const Matrix through = {0, 1, 1, 0};
  CHECK_FALSE(has(Immittance::impedance, through));
  CHECK_FALSE(has(Immittance::admittance, through));
  CHECK(has(Immittance::hybrid, through));
  const Matrix transformer = {.6, .8, .8, -.6};
  CHECK_FALSE(has(Immittance::impedance, transformer));
  CHECK_FALSE(has(Immittance::admittance, transformer));
  CHECK(has(Immittance::hybrid, transformer));
  CHECK(has(Immittance::inverse_hybrid, transformer));
  const Matrix series_arm = {.5, .5, .5, .5};  // 100 ohm
  CHECK_FALSE(has(Immittance::impedance, series_arm));
  CHECK(has(Immittance::admittance, series_arm));
}

TEST_CASE("hybrid kinds need two ports, and an impedance of -R has no S") {
  const std::array<double, 3> references = {50, 50, 50};
  Matrix one = {-50};
  CHECK_FALSE(to_scattering(Immittance::impedance, 1, references.data(), one.data()));
  Matrix three(9, .1);
  CHECK_FALSE(to_scattering(Immittance::hybrid, 3, references.data(), three.data()));
  CHECK_FALSE(from_scattering(Immittance::inverse_hybrid, 1, references.data(), one.data()));
}

}  // namespace wattfall::measured
