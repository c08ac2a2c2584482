// A network between its points and beyond its ends, and how far it is from passive.
#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

const char* const sweep = "# MHz RI\n7.0 .1 .2\n7.1 .3 -.2\n7.3 .7 .2\n";

Network network_of(int ports, std::vector<Complex> parameters) {
  Network network;
  network.ports = ports;
  network.frequencies_hz = {1e6};
  network.parameters = std::move(parameters);
  network.reference_ohm.assign(static_cast<std::size_t>(ports), 50);
  return network;
}

}  // namespace

TEST_CASE("at its points a network is the file's own, between them it runs straight") {
  const Network network = *read(sweep).value;
  CHECK(*reflection_at(network, 7.0e6) == Complex(.1, .2));
  CHECK(*reflection_at(network, network.frequencies_hz[1]) == Complex(.3, -.2));
  CHECK(*reflection_at(network, 7.3e6) == Complex(.7, .2));
  CHECK(near(*reflection_at(network, 7.05e6), {.2, 0}, 1e-9));
  CHECK(near(*reflection_at(network, 7.15e6), {.4, -.1}, 1e-9));
}

TEST_CASE("outside its range a network says nothing, but for a rounding at the ends") {
  const Network network = *read(sweep).value;
  CHECK_FALSE(reflection_at(network, 6.99e6));
  CHECK_FALSE(reflection_at(network, 7.31e6));
  CHECK_FALSE(reflection_at(network, 7.0e6 * (1 - 2e-9)));
  CHECK_FALSE(reflection_at(network, std::numeric_limits<double>::quiet_NaN()));
  CHECK(*reflection_at(network, 7.0e6 * (1 - 5e-10)) == Complex(.1, .2));
  CHECK(*reflection_at(network, 7.3e6 * (1 + 5e-10)) == Complex(.7, .2));
  CHECK_FALSE(reflection_at(Network(), 1));
}

TEST_CASE("all parameters of a two-port are interpolated, and left alone outside") {
  const Network network = *read("# Hz RI\n1 0 0 2 0 1 0 3 0\n2 1 0 4 0 1 1 3 2\n", 2).value;
  std::vector<Complex> out(4, 9);
  CHECK_FALSE(parameters_at(network, 3, out.data()));
  CHECK(out == std::vector<Complex>(4, 9));
  REQUIRE(parameters_at(network, 1.5, out.data()));
  CHECK(out == std::vector<Complex>{.5, Complex(1, .5), 3, Complex(3, 1)});
  REQUIRE(parameters_at(network, 2, out.data()));
  CHECK(out == std::vector<Complex>{1, Complex(1, 1), 4, Complex(3, 2)});
}

TEST_CASE("the largest singular value of known matrices") {
  CHECK(largest_singular_value(network_of(1, {Complex(.3, .4)}), 0) == Approx(.5).epsilon(1e-15));
  CHECK(largest_singular_value(network_of(2, {0, 1, 1, 0}), 0) == 1);
  CHECK(largest_singular_value(network_of(2, {.6, .8, .8, -.6}), 0) == Approx(1).epsilon(1e-15));
  CHECK(largest_singular_value(network_of(2, {0, 0, 4, 0}), 0) == 4);
  // A circulator without loss is unitary; with a gain of 2 in one path it is not passive.
  CHECK(largest_singular_value(network_of(3, {0, 0, 1, 1, 0, 0, 0, 1, 0}), 0) == Approx(1).epsilon(1e-14));
  CHECK(largest_singular_value(network_of(3, {0, 0, 1, 2, 0, 0, 0, 1, 0}), 0) == Approx(2).epsilon(1e-14));
}

TEST_CASE("two ports in closed form agree with a third port that is matched and apart") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> part(-1, 1);
  for (int i = 0; i < 200; ++i) {
    std::vector<Complex> s(4);
    for (Complex& one : s) one = {part(random), part(random)};
    const double two = largest_singular_value(network_of(2, s), 0);
    const double three = largest_singular_value(network_of(3, {s[0], s[1], 0, s[2], s[3], 0, 0, 0, 0}), 0);
    CHECK(two == Approx(three).epsilon(1e-13));
  }
}

TEST_CASE("a network is as passive as its worst frequency") {
  const Network network = *read("# Hz RI\n1 .5 0\n2 1.01 0\n3 -1 0\n").value;
  CHECK(worst_gain(network).index == 1);
  CHECK(worst_gain(network).singular_value == 1.01);
  CHECK_FALSE(passive(network));
  CHECK(passive(network, .02));
  CHECK(passive(*read("# Hz RI\n1 .6 0 .8 0 .8 0 -.6 0\n").value));
}

}  // namespace wattfall::measured
