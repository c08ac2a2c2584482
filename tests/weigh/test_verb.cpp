// `wattfall weigh` as it is called.
#include <catch2/catch.hpp>
#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"

using nlohmann::json;
using wattfall::test::program;
using wattfall::test::Ran;

namespace {

const std::string tuned =
    "design \"two parts\"\nsource rig at desk : 20 W, 50 ohm\ncapacitor C at desk : adjustable 50 pF to 1 nF, Q 1200\n"
    "inductor L from desk to wire : adjustable 0.5 uH to 9 uH, Q 220\nload wire at wire : 12-j180 ohm\nsweep 10.10 MHz to 10.15 MHz step 10 kHz\n"
    "tune C, L at 10.12 MHz for most power into wire\nrequire swr at desk below 1.5\nrequire heat in L below 2 W over 10.10 MHz to 10.12 MHz\n";

json weighed(const std::string& text, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments{"weigh", "-", "--to", "json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Ran ran = program(arguments, {.input = text});
  CAPTURE(ran.err, ran.out);
  REQUIRE(ran.code == 0);
  return json::parse(ran.out);
}

}  // namespace

TEST_CASE("every required figure is weighed where it is worst") {
  const json document = weighed(tuned);
  CHECK(document["schema"] == 1);
  CHECK(document["verb"] == "weigh");
  const json& variant = document["weigh"]["variants"][0];
  CHECK(variant["tuned"] == true);
  REQUIRE(variant["figures"].size() == 2);
  const json& swr = variant["figures"][0];
  CHECK(swr["requirement"] == "swr at desk below 1.5");
  const json run = json::parse(program({"run", "-", "--to", "json"}, {.input = tuned}).out);
  CHECK(swr["frequency_hz"] == run["variants"][0]["requirements"][0]["worst_at_hz"]);
  CHECK(swr["value"].get<double>() > 1.0);
  CHECK(variant["figures"][1]["frequency_hz"].get<double>() <= 10.12e6);
  std::vector<std::string> names;
  double last = std::numeric_limits<double>::infinity();
  for (const json& value : swr["values"]) {
    names.push_back(value["name"]);
    CHECK(std::abs(value["per_percent"].get<double>()) <= last);
    last = std::abs(value["per_percent"].get<double>());
    CHECK(value["per_percent"].get<double>() == Approx(0.01 * value["nominal"].get<double>() * value["per_unit"].get<double>()));
  }
  for (const char* name : {"C", "L", "wire.reactance", "wire.resistance", "rig.impedance", "L.Q", "C.Q"})
    CHECK(std::find(names.begin(), names.end(), name) != names.end());
}

TEST_CASE("a figure of the command line is weighed too, and one frequency where --at says so") {
  const json document = weighed(tuned, {"--figure", "heat in C", "--at", "10.12MHz"});
  const json& figures = document["weigh"]["variants"][0]["figures"];
  REQUIRE(figures.size() >= 2);
  CHECK(figures.back()["text"] == "heat in C");
  CHECK(figures.back()["requirement"].is_null());
  CHECK(figures.back()["frequency_hz"] == 10.12e6);
  CHECK(figures.back()["unit"] == "W");
}

TEST_CASE("what is wrong is said") {
  const Ran unknown = program({"weigh", "-", "--figure", "heat of L"}, {.input = tuned});
  CHECK(unknown.code == 2);
  CHECK(unknown.err.find("--figure") != std::string::npos);
  const Ran nothing = program({"weigh", "-"}, {.input = "source rig at a : 10 W, 50 ohm\nload ant at a : 50 ohm\nsweep at [7 MHz]\n"});
  CHECK(nothing.code == 2);
  CHECK(nothing.err.find("--figure") != std::string::npos);
  const Ran broken = program({"weigh", "-"}, {.input = "load ant at a : 50 ohm\n"});
  CHECK(broken.code == 3);
}

TEST_CASE("text, markdown and csv show the same") {
  const Ran text = program({"weigh", "-"}, {.input = tuned});
  CHECK(text.code == 0);
  CHECK(text.out.find("1 % more does") != std::string::npos);
  CHECK(text.out.find("wire.reactance") != std::string::npos);
  const Ran csv = program({"weigh", "-", "--to", "csv"}, {.input = tuned});
  CHECK(csv.code == 0);
  CHECK(csv.out.starts_with("variant,figure,figure_unit,"));
  CHECK(std::count(csv.out.begin(), csv.out.end(), '\n') > 14);
  const Ran markdown = program({"weigh", "-", "--to", "markdown"}, {.input = tuned});
  CHECK(markdown.code == 0);
  CHECK(markdown.out.find("| wire.reactance") != std::string::npos);
}
