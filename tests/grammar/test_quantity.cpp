// Units against their definitions: SI prefixes (BIPM, The International System of Units, 9th edition, 2019, table 7),
// the foot of 0.3048 m and the inch of 0.0254 m exactly (international yard, 1959). All scales are compared without
// tolerance, but those of degrees and of decibels per foot, which are quotients.
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "grammar/quantity.hpp"

using namespace wattfall;

TEST_CASE("prefixes scale as the SI says, on every unit that takes them") {
  const std::vector<std::pair<std::string, double>> prefixes = {
      {"f", 1e-15}, {"p", 1e-12}, {"n", 1e-9}, {"u", 1e-6}, {"\u00B5", 1e-6}, {"\u03BC", 1e-6},
      {"m", 1e-3},  {"", 1.0},    {"k", 1e3},  {"M", 1e6},  {"G", 1e9}};
  const std::vector<std::pair<std::string, Dimension>> units = {{"F", dimension::capacitance},
                                                                {"H", dimension::inductance},
                                                                {"ohm", dimension::resistance},
                                                                {"S", dimension::conductance},
                                                                {"\u03A9", dimension::resistance},
                                                                {"\u2126", dimension::resistance},
                                                                {"V", dimension::voltage},
                                                                {"A", dimension::current},
                                                                {"W", dimension::power},
                                                                {"Hz", dimension::frequency},
                                                                {"s", dimension::time},
                                                                {"m", dimension::length}};
  for (const auto& [unit, dim] : units) {
    for (const auto& [prefix, scale] : prefixes) {
      CAPTURE(prefix + unit);
      const auto found = find_unit(prefix + unit);
      REQUIRE(found);
      CHECK(found->scale == scale);
      CHECK(found->dim == dim);
      CHECK_FALSE(found->is_dbm);
    }
  }
}

TEST_CASE("lengths are exact by definition") {
  CHECK(find_unit("ft")->scale == 0.3048);
  CHECK(find_unit("in")->scale == 0.0254);
  CHECK(find_unit("cm")->scale == 0.01);
  CHECK(find_unit("m")->scale == 1.0);
  CHECK(find_unit("mm")->scale == 0.001);
}

TEST_CASE("units without prefixes") {
  CHECK(find_unit("%")->scale == 0.01);
  CHECK(find_unit("%")->dim == dimension::number);
  CHECK(find_unit("dB")->dim == dimension::level);
  CHECK(find_unit("dBm")->is_dbm);
  CHECK(find_unit("dBm")->dim == dimension::power);
  CHECK(find_unit("turns")->dim == dimension::number);
  CHECK(find_unit("dB/m")->scale == 1.0);
  CHECK(find_unit("dB/100m")->scale == Approx(0.01).epsilon(1e-15));
  CHECK(find_unit("dB/100ft")->scale == Approx(1.0 / 30.48).epsilon(1e-15));
  CHECK(find_unit("dB/100ft")->dim == dimension::level / dimension::length);
  CHECK(find_unit("pF/m")->scale == 1e-12);
  CHECK(find_unit("pF/m")->dim == dimension::capacitance / dimension::length);
  CHECK(find_unit("deg")->scale == Approx(std::acos(-1.0) / 180.0).epsilon(1e-15));
  CHECK(find_unit("\u00B0")->dim == dimension::angle);
}

TEST_CASE("what is no unit is none: case counts, and c stands before metres alone") {
  for (const char* wrong : {"",      "mhz",     "MHZ", "hz",   "cF", "cHz",    "mft",  "kdB",  "mdBm", "p",
                            "k",     "M",       "Ohm", "ohms", "pf", "uh",     "K",    "kk",   "kkHz", "min",
                            "dB/ m", "dB/100M", "F/m", " m",   "m ", "\u00B5", "inch", "feet", "rad"}) {
    CAPTURE(wrong);
    CHECK_FALSE(find_unit(wrong));
  }
}

TEST_CASE("a wrong unit offers the right one") {
  const std::vector<std::pair<std::string, std::string>> rows = {{"mhz", "MHz"},
                                                                 {"Mhz", "MHz"},
                                                                 {"MHZ", "MHz"},
                                                                 {"khz", "kHz"},
                                                                 {"KHz", "kHz"},
                                                                 {"hz", "Hz"},
                                                                 {"ghz", "GHz"},
                                                                 {"p", "pF"},
                                                                 {"n", "nF"},
                                                                 {"u", "uH"},
                                                                 {"\u00B5", "uH"},
                                                                 {"k", "kohm"},
                                                                 {"M", "MHz"},
                                                                 {"pf", "pF"},
                                                                 {"PF", "pF"},
                                                                 {"uf", "uF"},
                                                                 {"uh", "uH"},
                                                                 {"nh", "nH"},
                                                                 {"Ohm", "ohm"},
                                                                 {"OHM", "ohm"},
                                                                 {"ohms", "ohm"},
                                                                 {"Ohms", "ohm"},
                                                                 {"kohms", "kohm"},
                                                                 {"w", "W"},
                                                                 {"watts", "W"},
                                                                 {"mw", "mW"},
                                                                 {"kw", "kW"},
                                                                 {"v", "V"},
                                                                 {"kv", "kV"},
                                                                 {"volts", "V"},
                                                                 {"amps", "A"},
                                                                 {"ma", "mA"},
                                                                 {"meters", "m"},
                                                                 {"metres", "m"},
                                                                 {"feet", "ft"},
                                                                 {"foot", "ft"},
                                                                 {"inch", "in"},
                                                                 {"inches", "in"},
                                                                 {"\"", "in"},
                                                                 {"'", "ft"},
                                                                 {"db", "dB"},
                                                                 {"DB", "dB"},
                                                                 {"dbm", "dBm"},
                                                                 {"degrees", "deg"},
                                                                 {"turn", "turns"},
                                                                 {"percent", "%"},
                                                                 {"sec", "s"},
                                                                 {"db/100m", "dB/100m"},
                                                                 {"dB/100M", "dB/100m"},
                                                                 {"DB/M", "dB/m"},
                                                                 {"pf/m", "pF/m"},
                                                                 {"pF", ""},
                                                                 {"", ""},
                                                                 {"xyzzy", ""},
                                                                 {"CM", "cm"},
                                                                 {"picofarad", "pF"},
                                                                 {"mikrohenry", "uH"},
                                                                 {"farads", "F"},
                                                                 {"\u00B5h", "uH"},
                                                                 {"kft", "ft"},
                                                                 {"O", "ohm"}};
  for (const auto& [wrong, right] : rows) {
    CAPTURE(wrong);
    if (right.empty()) {
      CHECK(!find_unit(suggest_unit(wrong)));
    } else {
      CHECK(suggest_unit(wrong) == right);
      CHECK(find_unit(right));
    }
  }
}

TEST_CASE("dimensions multiply, divide and have names") {
  CHECK(dimension::voltage / dimension::current == dimension::resistance);
  CHECK(dimension::voltage * dimension::current == dimension::power);
  CHECK(dimension::inductance * dimension::capacitance == dimension::time.power(2));
  CHECK(dimension::resistance * dimension::conductance == dimension::number);
  CHECK(dimension::inductance * dimension::frequency == dimension::resistance);
  CHECK(dimension::capacitance * dimension::frequency == dimension::conductance);
  CHECK(dimension::number / dimension::time == dimension::frequency);
  CHECK(describe(dimension::frequency) == "a frequency");
  CHECK(describe(dimension::capacitance) == "a capacitance");
  CHECK(describe(dimension::number) == "a plain number");
  CHECK(describe(dimension::length.power(2) * dimension::time) == "a value in m^2 s");
  CHECK(describe(dimension::resistance * dimension::frequency) == "a value in ohm x Hz");
  CHECK(describe(dimension::number / dimension::length) == "a value in 1/m");
  CHECK(describe(dimension::voltage / dimension::length) == "a value in V/m");
  CHECK(describe(dimension::resistance.power(2)) == "a value in ohm^2");
  CHECK(si_symbol(dimension::frequency) == "Hz");
  CHECK(si_symbol(dimension::number).empty());
  CHECK(si_symbol(dimension::level) == "dB");
  CHECK(si_symbol(dimension::length.power(-1)) == "m^-1");
}

TEST_CASE("values are spelled as in the trade") {
  const double degree = std::acos(-1.0) / 180.0;
  const double infinite = std::numeric_limits<double>::infinity();
  const std::vector<std::pair<Quantity, std::string>> rows = {
      {{67.47e-12, dimension::capacitance}, "67.47 pF"},
      {{100e-12, dimension::capacitance}, "100 pF"},
      {{999.96e-12, dimension::capacitance}, "1 nF"},
      {{0.87e-6, dimension::inductance}, "0.87 uH"},
      {{18e-6, dimension::inductance}, "18 uH"},
      {{50e-9, dimension::inductance}, "50 nH"},
      {{{28, -233.6}, dimension::resistance}, "28 - j233.6 ohm"},
      {{{0, 50}, dimension::resistance}, "j50 ohm"},
      {{{0, -50}, dimension::resistance}, "-j50 ohm"},
      {{{1500, 20}, dimension::resistance}, "1.5 + j0.02 kohm"},
      {{7.1e6, dimension::frequency}, "7.1 MHz"},
      {{24, dimension::length}, "24 m"},
      {{-24, dimension::length}, "-24 m"},
      {{0.002, dimension::length}, "2 mm"},
      {{100, dimension::power}, "100 W"},
      {{1500, dimension::power}, "1.5 kW"},
      {{1000, dimension::voltage}, "1 kV"},
      {{0, dimension::resistance}, "0 ohm"},
      {{1.5, dimension::number}, "1.5"},
      {{12345, dimension::number}, "12340"},
      {{2, dimension::level}, "2 dB"},
      {{90 * degree, dimension::angle}, "90 deg"},
      {{0.031, dimension::level_per_length}, "3.1 dB/100m"},
      {{100e-12, dimension::capacitance_per_length}, "100 pF/m"},
      {{2, dimension::length.power(2)}, "2 m^2"},
      {{infinite, dimension::number}, "infinite"},
  };
  for (const auto& [quantity, text] : rows) CHECK(spell(quantity) == text);
  CHECK(spell({67.4678e-12, dimension::capacitance}, 6) == "67.4678 pF");
}
