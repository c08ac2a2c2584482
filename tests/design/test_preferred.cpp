#include <algorithm>
#include <catch2/catch.hpp>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

std::vector<double> choices_of(const std::string& adjustable) {
  const Resolved resolved = resolve_text(with_frame("resistor R at desk : adjustable " + adjustable));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return resolved.knob("R").choices;
}

/// One decade from 100 to below 1000 as whole numbers.
std::vector<int> decade_of(const std::string& series) {
  std::vector<int> values;
  for (const double value : choices_of("series(" + series + ", from 100 ohm, to 999 ohm)"))
    values.push_back(static_cast<int>(value + 0.5));
  return values;
}

}  // namespace

// IEC 60063:2015, table 1 (E3 to E24) and table 2 (E48 and E96), times 10 or 100.
TEST_CASE("the series of preferred values are the standard's") {
  CHECK(decade_of("E3") == std::vector<int>{100, 220, 470});
  CHECK(decade_of("E6") == std::vector<int>{100, 150, 220, 330, 470, 680});
  CHECK(decade_of("E12") == std::vector<int>{100, 120, 150, 180, 220, 270, 330, 390, 470, 560, 680, 820});
  CHECK(decade_of("E24") == std::vector<int>{100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300,
                                             330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910});
  CHECK(decade_of("E48") == std::vector<int>{100, 105, 110, 115, 121, 127, 133, 140, 147, 154, 162, 169,
                                             178, 187, 196, 205, 215, 226, 237, 249, 261, 274, 287, 301,
                                             316, 332, 348, 365, 383, 402, 422, 442, 464, 487, 511, 536,
                                             562, 590, 619, 649, 681, 715, 750, 787, 825, 866, 909, 953});
  CHECK(decade_of("E96") == std::vector<int>{100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137,
                                             140, 143, 147, 150, 154, 158, 162, 165, 169, 174, 178, 182, 187, 191,
                                             196, 200, 205, 210, 215, 221, 226, 232, 237, 243, 249, 255, 261, 267,
                                             274, 280, 287, 294, 301, 309, 316, 324, 332, 340, 348, 357, 365, 374,
                                             383, 392, 402, 412, 422, 432, 442, 453, 464, 475, 487, 499, 511, 523,
                                             536, 549, 562, 576, 590, 604, 619, 634, 649, 665, 681, 698, 715, 732,
                                             750, 768, 787, 806, 825, 845, 866, 887, 909, 931, 953, 976});
}

TEST_CASE("E192 follows the rule but for its one exception") {
  const std::vector<int> e192 = decade_of("E192");
  CHECK(e192.size() == 192);
  CHECK(std::vector<int>(e192.begin(), e192.begin() + 8) == std::vector<int>{100, 101, 102, 104, 105, 106, 107, 109});
  CHECK(e192[185] == 920);  // round(10^(185/192), 3 digits) would be 919
  CHECK(e192.back() == 988);
}

TEST_CASE("a series spans decades, and takes in both its ends") {
  const std::vector<double> values = choices_of("series(E3, from 4.7 ohm, to 470 ohm)");
  CHECK(values == std::vector<double>{4.7, 10, 22, 47, 100, 220, 470});
}

TEST_CASE("pairs give what two parts make in series or side by side, each value once, by one part where that can be") {
  // 10, 22 and 47 alone; side by side 5, 6.875, 8.2456, 11, 14.986, 23.5; in series 20, 32, 44, 57, 69, 94.
  const Resolved resolved = resolve_text(with_frame("resistor R at desk : adjustable series(E3, from 10 ohm, to 47 ohm, pairs)\n"
                                                    "capacitor C at desk : adjustable series(E3, from 10 pF, to 47 pF, pairs)\n"
                                                    "inductor L at desk : adjustable series(E3, from 10 uH, to 47 uH, parallel pairs)\n"
                                                    "capacitor D at desk : adjustable series(E3, from 10 pF, to 47 pF, parallel pairs)"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const std::vector<double> ohms{5, 6.875, 10 * 47 / 57.0, 10, 11, 22 * 47 / 69.0, 20, 22, 23.5, 32, 44, 47, 57, 69, 94};
  const Knob &r = resolved.knob("R"), &c = resolved.knob("C"), &l = resolved.knob("L"), &d = resolved.knob("D");
  REQUIRE(r.choices.size() == ohms.size());
  REQUIRE(r.made.size() == ohms.size());
  REQUIRE(c.choices.size() == ohms.size());
  for (std::size_t i = 0; i < ohms.size(); ++i) {
    CHECK(r.choices[i] == Approx(ohms[i]));
    CHECK(c.choices[i] == Approx(1e-12 * ohms[i]));
    const auto alone = [](const Made& made) { return made.second == 0.0; };
    CHECK(alone(r.made[i]) == (ohms[i] == 10 || ohms[i] == 22 || ohms[i] == 47));
    if (alone(r.made[i])) continue;
    // What adds up for resistors does not for capacitors.
    CHECK(r.made[i].in_series != c.made[i].in_series);
    const double a = r.made[i].first, b = r.made[i].second;
    CHECK((r.made[i].in_series ? a + b : a * b / (a + b)) == Approx(ohms[i]));
  }
  CHECK(l.choices.size() == 9);
  CHECK(l.upper == Approx(47e-6));
  CHECK(d.choices.size() == 9);
  CHECK(d.lower == Approx(10e-12));
  CHECK(d.upper == Approx(94e-12));
}

TEST_CASE("of several pairs of one value the two that are nearest to each other are taken") {
  // 66 = 33 + 33 = 56 + 10 = 51 + 15.
  const Resolved resolved = resolve_text(with_frame("resistor R at desk : adjustable series(E24, from 10 ohm, to 56 ohm, series pairs)"));
  REQUIRE(resolved.good());
  const Knob& r = resolved.knob("R");
  for (std::size_t i = 0; i < r.choices.size(); ++i) {
    if (r.choices[i] != Approx(66.0)) continue;
    CHECK(r.made[i].first == Approx(33.0));
    CHECK(r.made[i].second == Approx(33.0));
    CHECK(r.made[i].in_series);
  }
  CHECK(std::count_if(r.choices.begin(), r.choices.end(), [](double value) { return value == Approx(66.0); }) == 1);
}

TEST_CASE("relays give binary-weighted values from zero") {
  const std::vector<double> values = choices_of("relays(8, smallest 0.5 ohm)");
  REQUIRE(values.size() == 256);
  CHECK(values.front() == 0.0);
  CHECK(values[1] == 0.5);
  CHECK(values.back() == 127.5);
}

TEST_CASE("a list of choices is put in order, and the start is one of them") {
  const Resolved resolved =
      resolve_text(with_frame("capacitor C at desk : 100 pF, adjustable [220 pF, 100 pF, 47 pF]"));
  REQUIRE(resolved.good());
  const Knob& knob = resolved.knob("C");
  REQUIRE(knob.choices.size() == 3);
  CHECK(knob.choices.front() == Approx(47e-12));
  CHECK(knob.lower == knob.choices.front());
  CHECK(knob.upper == knob.choices.back());
  CHECK(*knob.start == knob.choices[1]);
}

TEST_CASE("a knob without a written value starts mid-range") {
  const Resolved resolved = resolve_text(
      with_frame("capacitor C at desk : adjustable 10 pF to 1000 pF\nresistor R at desk : adjustable 0 ohm to 10 ohm\n"
                 "inductor L at desk : adjustable relays(2, smallest 1 uH)"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const std::vector<double> settings = resolved.design().starting_knobs();
  REQUIRE(settings.size() == 3);
  CHECK(settings[0] == Approx(100e-12));  // the geometric mean of a range above zero
  CHECK(settings[1] == Approx(5.0));
  CHECK(settings[2] == Approx(1e-6));
  CHECK_FALSE(resolved.knob("C").start);
}
