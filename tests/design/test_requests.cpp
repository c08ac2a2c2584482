#include <catch2/catch.hpp>
#include <cmath>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

const std::string no_sweep = "source rig at desk : 100 W\nload ant at desk : 50 ohm\n";

std::vector<double> points_of(const std::string& lines) {
  const Resolved resolved = resolve_text(no_sweep + lines + "\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return resolved.design().frequencies_hz;
}

/// rig - a: series - b: line - feed: ant, with a shunt at the desk that does not count.
const std::string chain =
    "source rig at desk : 100 W\nresistor a from desk to mid : 1 ohm\nline b from mid to feed : 10 m of RG-58\n"
    "load ant at feed : 50 ohm\nsweep at [7 MHz]\n";

std::string into_at(const std::string& text, const std::string& figure) {
  const Resolved resolved = resolve_text(text + "require " + figure + "\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const PartId into = resolved.design().requirements[0].figure.look.into;
  return into ? resolved.design().parts[static_cast<std::size_t>(into.index)].name : "everything";
}

}  // namespace

TEST_CASE("a sweep by steps always has its end") {
  CHECK(points_of("sweep 7 MHz to 7.2 MHz step 100 kHz") == std::vector<double>{7e6, 7.1e6, 7.2e6});
  CHECK(points_of("sweep 7 MHz to 7.25 MHz step 100 kHz") == std::vector<double>{7e6, 7.1e6, 7.2e6, 7.25e6});
  CHECK(points_of("sweep 7 MHz to 7.2 MHz step 1 MHz") == std::vector<double>{7e6, 7.2e6});
  CHECK(points_of("sweep 1.8 MHz to 30 MHz step 0.1 MHz").size() == 283);
}

TEST_CASE("a sweep by points has as many, evenly or by equal ratios") {
  CHECK(points_of("sweep 7 MHz to 7.2 MHz, 3 points") == std::vector<double>{7e6, 7.1e6, 7.2e6});
  const std::vector<double> ratios = points_of("sweep 1 MHz to 100 MHz, 3 points, by ratio");
  REQUIRE(ratios.size() == 3);
  CHECK(ratios[1] == Approx(10e6));
  CHECK(ratios[2] == 100e6);
}

TEST_CASE("sweeps join, in order and without repetitions") {
  CHECK(points_of("sweep at [14.2 MHz, 7.1 MHz]\nsweep 7 MHz to 7.2 MHz, 3 points") ==
        std::vector<double>{7e6, 7.1e6, 7.2e6, 14.2e6});
  CHECK(points_of("sweep at [7.1 MHz, 7.1000000000001 MHz]").size() == 1);
}

TEST_CASE("a band may be swept and required over") {
  const Resolved resolved = resolve_text(
      no_sweep +
      "sweep band \"40 m\", 5 points\nband \"40 m\" 7.0 MHz to 7.2 MHz\n"
      "require swr at desk below 2 over band \"40 m\"\nrequire swr at desk below 2 over 7 MHz to 7.1 MHz\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(resolved.design().frequencies_hz.size() == 5);
  CHECK(*resolved.design().requirements[0].over_hz == std::pair(7.0e6, 7.2e6));
  CHECK(*resolved.design().requirements[1].over_hz == std::pair(7.0e6, 7.1e6));
}

TEST_CASE("where two parts meet, a look goes into the one on the load's side") {
  CHECK(into_at(chain, "swr at mid below 2") == "b");
  CHECK(into_at(chain, "swr at feed below 2") == "ant");
  CHECK(into_at(chain, "swr at desk below 2") == "a");
  CHECK(into_at(chain, "swr at mid into a below 2") == "a");
}

TEST_CASE("where several parts meet at the source, a look goes into all of them together") {
  CHECK(into_at(chain + "resistor shunt at desk : 1 ohm\n", "swr at desk below 2") == "everything");
  CHECK(into_at(chain + "resistor shunt at desk : 1 ohm\n", "swr at desk into a below 2") == "a");
}

TEST_CASE("where more than two parts meet away from the source, a look has to say into which") {
  const Resolved resolved = resolve_text(chain + "resistor shunt at mid : 1 ohm\nrequire swr at mid below 2\n");
  REQUIRE(resolved.diagnostics.size() == 1);
  CHECK(resolved.diagnostics[0].code == "ambiguous-look");
  CHECK(resolved.diagnostics[0].expected == "`into` and one of a, b, shunt");
  CHECK(resolved.diagnostics[0].notes.size() == 3);
}

TEST_CASE("power crosses between coupled coils, so the side of the source is known beyond them") {
  const std::string coupled =
      "source rig at desk : 100 W\ninductor p at desk : 1 uH\ninductor s at top : 1 uH\ncoupling k between p and s : "
      "factor 0.5\n"
      "line b from top to feed : 10 m of RG-58\nload ant at feed : 50 ohm\nsweep at [7 MHz]\n";
  CHECK(into_at(coupled, "swr at top below 2") == "b");
}

TEST_CASE("a look into a box goes into its one part at the node") {
  const std::string boxed =
      "box ell (in, out) {\n  inductor L from in to out : 1 uH\n  capacitor C at out : 1 pF\n}\n"
      "source rig at desk : 100 W\nell x from desk to feed\nload ant at feed : 50 ohm\nsweep at [7 MHz]\n";
  CHECK(into_at(boxed, "swr at desk into x below 2") == "x.L");
  CHECK(into_at(boxed, "swr at feed into ant below 2") == "ant");
}

TEST_CASE("every figure of the language can be required") {
  struct Case {
    const char* text;
    FigureKind kind;
    double value;
  };
  const Case cases[] = {{"swr at mid below 1.5", FigureKind::swr_at, 1.5},
                        {"return loss at mid above 10 dB", FigureKind::return_loss_at, 10},
                        {"resistance at mid above 40 ohm", FigureKind::resistance_at, 40},
                        {"reactance at mid above -5 ohm", FigureKind::reactance_at, -5},
                        {"mismatch at mid below 0.5 dB", FigureKind::mismatch_at, 0.5},
                        {"swr on b below 2", FigureKind::swr_on, 2},
                        {"power into ant above 90 W", FigureKind::power_into, 90},
                        {"radiated from ant above 49 dBm", FigureKind::radiated_from, 79.432823472428},
                        {"heat in b below 10 W", FigureKind::heat_in, 10},
                        {"loss in b below 1 dB", FigureKind::loss_in, 1},
                        {"total loss below 2 dB", FigureKind::total_loss, 2},
                        {"efficiency above 80 %", FigureKind::efficiency, 0.8},
                        {"peak volts across a below 1 kV", FigureKind::peak_volts_across, 1000},
                        {"rms amps through a below 2 A", FigureKind::rms_amps_through, 2},
                        {"peak volts on b below 1 kV", FigureKind::peak_volts_on, 1000},
                        {"rms amps on b below 2 A", FigureKind::rms_amps_on, 2},
                        {"width of swr at mid below 2 above 100 kHz", FigureKind::width_of_swr_at, 100e3}};
  for (const Case& one : cases) {
    const Resolved resolved = resolve_text(chain + "require   " + one.text + "  # as is\n");
    INFO(one.text << '\n' << resolved.errors());
    REQUIRE(resolved.good());
    const Requirement& requirement = resolved.design().requirements.at(0);
    CHECK(requirement.figure.kind == one.kind);
    CHECK(requirement.value == Approx(one.value));
    CHECK(requirement.text == one.text);
    CHECK(requirement.below == (std::string(one.text).rfind("above") == std::string::npos));
  }
}

TEST_CASE("a figure keeps its text with single blanks, its reference, and the SWR of a width") {
  const Resolved resolved = resolve_text(
      chain +
      "require swr  at mid into b\treference 75 ohm below 2\nrequire width of swr at mid below 2.5 above 100 kHz\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const Figure& first = resolved.design().requirements[0].figure;
  CHECK(first.text == "swr at mid into b reference 75 ohm");
  CHECK(first.reference->constant_value() == 75.0);
  CHECK(resolved.design().requirements[1].figure.below == 2.5);
}

TEST_CASE("heat, loss and power may be those of a whole box") {
  const Resolved resolved = resolve_text(
      "box b (a, c) {\n  resistor R from a to c : 1 ohm\n}\nsource rig at desk : 1 W\nb x from desk to feed\nload ant "
      "at feed : 50 ohm\n"
      "sweep at [7 MHz]\nrequire heat in x below 1 W\nrequire loss in x below 1 dB\nrequire power into x below 1 "
      "W\nrequire heat in x.R below 1 W\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(resolved.design().requirements[0].figure.box == BoxId{0});
  CHECK_FALSE(resolved.design().requirements[0].figure.part);
  CHECK(resolved.design().requirements[3].figure.part == PartId{0});
}

TEST_CASE("tuning is once, at several frequencies, at each, or over a range") {
  const std::string knobs = chain + "capacitor C at feed : adjustable 1 pF to 2 pF\n";
  const auto tune = [&](const std::string& line) {
    const Resolved resolved = resolve_text(knobs + line + "\n");
    INFO(resolved.errors());
    REQUIRE(resolved.good());
    return resolved.design().tunes.at(0);
  };
  const Tune once = tune("tune C at 7 MHz for least swr at mid");
  CHECK(once.when == Tune::When::at);
  CHECK(once.at_hz == std::vector<double>{7e6});
  CHECK_FALSE(once.most);
  CHECK(tune("tune C at [7.1 MHz, 7 MHz] for most efficiency").at_hz == std::vector<double>{7e6, 7.1e6});
  const Tune over =
      tune("tune C over 7 MHz to 7.2 MHz for least total loss, keeping swr at desk below 2 and heat in b below 5 W");
  CHECK(over.when == Tune::When::over);
  CHECK(over.over_hz == std::pair(7e6, 7.2e6));
  REQUIRE(over.keeping.size() == 2);
  CHECK(over.keeping[1].value == 5.0);
}

TEST_CASE("planes look from a node") {
  const Resolved resolved = resolve_text(chain + "plane shack at mid\nplane mast at feed into b\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  REQUIRE(resolved.design().planes.size() == 2);
  CHECK(resolved.design().planes[0].name == "shack");
  CHECK(resolved.design().planes[0].look.into == PartId{1});
  CHECK(resolved.design().planes[1].look.into == PartId{1});
}
