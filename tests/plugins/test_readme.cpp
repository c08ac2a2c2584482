// The example of plugins/README.md, cut out of the page and built by CMake: it loads and does what the page says.
#include <catch2/catch.hpp>
#include <cmath>

#include "host/load_plugins.hpp"

namespace sdk = wattfall::sdk;

TEST_CASE("the example of the plugin page loads without a trouble") {
  const auto plugins = wattfall::host::load_plugins({{README_PLUGINS}, {}});
  for (const auto& trouble : plugins.troubles()) FAIL_CHECK(trouble.text);
  REQUIRE(plugins.registry().plugins.size() == 1);
  CHECK(plugins.registry().plugins[0].name == "my-parts");
  CHECK(plugins.registry().find_cable("Shed-Coax") != nullptr);
}

TEST_CASE("the example's kind is a resistor and a capacitor in series") {
  const auto plugins = wattfall::host::load_plugins({{README_PLUGINS}, {}});
  const sdk::Kind* snubber = plugins.registry().find_kind("snubber");
  REQUIRE(snubber != nullptr);
  const double pi = 3.14159265358979323846, hz = 1e6;
  const sdk::Complex values[] = {{50.0, 0.0}, {1.0 / (2.0 * pi * hz * 50.0), 0.0}};  // 50 ohm each at 1 MHz
  sdk::Complex a{}, b{};
  sdk::Failure failure{};
  REQUIRE(snubber->rows(snubber->self, values, &hz, 1, &a, &b, &failure) == sdk::Status::ok);
  CHECK(-b.re / a.re == Approx(50.0));
  CHECK(b.im / a.re == Approx(50.0));  // Z = 50 - j50
  CHECK(a.re == Approx(std::sqrt(0.5)));

  const sdk::Complex no_capacitance[] = {{50.0, 0.0}, {0.0, 0.0}};
  CHECK(snubber->rows(snubber->self, no_capacitance, &hz, 1, &a, &b, &failure) == sdk::Status::failed);
  CHECK(std::string(failure.text) == "a snubber's capacitance is positive");
}
