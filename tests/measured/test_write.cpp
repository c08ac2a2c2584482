// What is written reads back: exactly in real and imaginary parts and hertz, to a rounding otherwise.
#include <catch2/catch.hpp>
#include <random>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

Network random_network(int ports, std::vector<double> reference_ohm) {
  std::mt19937 random(static_cast<unsigned>(ports));
  std::uniform_real_distribution<double> part(-1, 1);
  Network network;
  network.ports = ports;
  network.reference_ohm = std::move(reference_ohm);
  for (int point = 0; point < 7; ++point) {
    network.frequencies_hz.push_back(7e6 + 1e5 / 3 * point);
    for (int i = 0; i < ports * ports; ++i) network.parameters.emplace_back(part(random), part(random));
  }
  network.parameters.back() = 0;  // no magnitude: decibels have no number for it
  return network;
}

void check_same(const Network& one, const Network& other, double tolerance) {
  REQUIRE(one.ports == other.ports);
  REQUIRE(one.frequencies_hz.size() == other.frequencies_hz.size());
  CHECK(one.reference_ohm == other.reference_ohm);
  for (std::size_t i = 0; i < one.frequencies_hz.size(); ++i) {
    CHECK(std::abs(one.frequencies_hz[i] - other.frequencies_hz[i]) <= tolerance * one.frequencies_hz[i]);
  }
  for (std::size_t i = 0; i < one.parameters.size(); ++i) {
    CHECK(near(one.parameters[i], other.parameters[i], tolerance));
  }
}

std::vector<Network> networks() {
  return {random_network(1, {75}),
          random_network(2, {50, 50}),
          random_network(2, {50, 200}),
          random_network(3, {50, 50, 50}),
          random_network(5, {1, 2, 3, 4, 5}),
          random_network(6, std::vector<double>(6, 50))};
}

}  // namespace

TEST_CASE("real and imaginary parts in hertz read back bit for bit") {
  for (const Network& network : networks()) {
    const std::string text = write_touchstone(network, NumberFormat::real_imaginary, FrequencyUnit::hz);
    const Reading back = read(text, network.ports);
    REQUIRE(codes(back) == "");
    CHECK(back.value->frequencies_hz == network.frequencies_hz);
    CHECK(back.value->parameters == network.parameters);
    CHECK(back.value->reference_ohm == network.reference_ohm);
    CHECK(write_touchstone(*back.value, NumberFormat::real_imaginary, FrequencyUnit::hz) == text);
  }
}

TEST_CASE("every format and unit reads back to a rounding") {
  for (const Network& network : networks()) {
    for (const NumberFormat format :
         {NumberFormat::real_imaginary, NumberFormat::magnitude_angle, NumberFormat::decibel_angle}) {
      for (const FrequencyUnit unit : {FrequencyUnit::hz, FrequencyUnit::khz, FrequencyUnit::mhz, FrequencyUnit::ghz}) {
        const Reading back = read(write_touchstone(network, format, unit), network.ports);
        REQUIRE(codes(back) == "");
        check_same(network, *back.value, 4e-15);  // some 18 units in the last place of 1: angles up to 180 degrees
      }
    }
  }
}

TEST_CASE("the text that is written") {
  Network network;
  network.ports = 2;
  network.frequencies_hz = {7.1e6};
  network.parameters = {.1, Complex(.25, -.5), 1, 0};
  network.reference_ohm = {50, 50};
  CHECK(write_touchstone(network, NumberFormat::real_imaginary, FrequencyUnit::mhz) ==
        "# MHz S RI R 50\n7.1 0.1 0 1 0 0.25 -0.5 0 0\n");
  network.reference_ohm = {50, 12.5};
  CHECK(write_touchstone(network, NumberFormat::real_imaginary, FrequencyUnit::khz) ==
        "[Version] 2.0\n# kHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] 1\n"
        "[Reference] 50 12.5\n[Network Data]\n7100 0.1 0 1 0 0.25 -0.5 0 0\n[End]\n");
}

}  // namespace wattfall::measured
