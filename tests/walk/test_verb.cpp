// `wattfall walk` as it is called: the document, the writers, the options, the examples.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "../support/program.hpp"

using nlohmann::json;
using wattfall::test::program;
using wattfall::test::Ran;

namespace fs = std::filesystem;

namespace {

const std::string tuner =
    "design \"two parts\"\nsource rig at desk : 20 W, 50 ohm\ncapacitor C at desk : 533 pF, Q 1200\ninductor L from desk to wire : 3.175 uH, Q 220\n"
    "load wire at wire : 12-j180 ohm\nsweep 10.10 MHz to 10.15 MHz step 10 kHz\n";

const std::string bridge =
    "source rig at desk : 100 W, 50 ohm\nresistor A from desk to left : 50 ohm\nresistor B from desk to right : 70 ohm\n"
    "capacitor M from left to right : 100 pF\nresistor C at left : 60 ohm\nload ant at right : 50 ohm\nsweep at [7 MHz]\n";

json walk_of(const std::string& text, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments{"walk", "-", "--to", "json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Ran ran = program(arguments, {.input = text});
  CAPTURE(ran.err, ran.out);
  REQUIRE(ran.code == 0);
  return json::parse(ran.out);
}

std::size_t columns_of(const std::string& line) {
  return static_cast<std::size_t>(std::count_if(line.begin(), line.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

void every_step(const json& steps, const auto& visit) {
  for (const json& step : steps) {
    visit(step);
    if (step.contains("inside")) every_step(step["inside"], visit);
  }
}

}  // namespace

TEST_CASE("the document has the envelope, both ways, a sentence a step, and the agreement") {
  const json document = walk_of(tuner);
  CHECK(document["schema"] == 1);
  CHECK(document["verb"] == "walk");
  CHECK(document["design"]["title"] == "two parts");
  REQUIRE(document["walk"]["variants"].size() == 1);
  const json& walk = document["walk"]["variants"][0];
  CHECK(walk["load"]["name"] == "wire");
  CHECK(walk["to_source"]["steps"].size() == 3);
  CHECK(walk["to_load"]["steps"].size() == 3);
  for (const char* way : {"to_source", "to_load"})
    every_step(walk[way]["steps"], [](const json& step) {
      CAPTURE(step.dump());
      const std::string sentence = step["sentence"];
      CHECK(sentence.size() > 20);
      CHECK(sentence.back() == '.');
      CHECK(step["after_ohm"].is_array());
    });
  // By hand, in examples/01: 12.9 + j21.9 ohm after the coil.
  CHECK(walk["to_source"]["steps"][1]["after_ohm"][0].get<double>() == Approx(12.9).margin(0.05));
  CHECK(walk["planes"].size() == 2);
  CHECK(walk["agreement"]["worst_relative"].get<double>() < 1e-12);
}

TEST_CASE("of a sweep the middle frequency is walked, of --at each that is asked") {
  CHECK(walk_of(tuner)["walk"]["variants"][0]["frequency_hz"].get<double>() == Approx(10.12e6));
  CHECK(walk_of(tuner)["walk"]["variants"][0]["chosen"] == "the middle one of 6 points");
  const json asked = walk_of(tuner, {"--at", "10.11MHz", "--at", "10.14MHz"})["walk"]["variants"];
  REQUIRE(asked.size() == 2);
  CHECK(asked[1]["frequency_hz"].get<double>() == Approx(10.14e6));
  CHECK(asked[1]["chosen"] == "as asked");
}

TEST_CASE("--set, --variant and --as-written are honoured, and knobs are tuned first") {
  const json other = walk_of(tuner, {"--set", "C=560pF"});
  CHECK(other["walk"]["variants"][0]["to_source"]["steps"][2]["what"] == "capacitor, 560 pF");
  const std::string tuned =
      "source rig at desk : 20 W, 50 ohm\ncapacitor C at desk : 300 pF, adjustable 100 pF to 1000 pF\ninductor L from desk to wire : 2 uH, adjustable 1 uH to 9 uH\n"
      "load wire at wire : 12-j180 ohm\nsweep at [10.12 MHz]\ntune C, L at 10.12 MHz for most power into wire\nvariant \"a\" {\n}\nvariant \"b\" {\n  change wire : 400-j100 ohm\n}\n";
  const json both = walk_of(tuned)["walk"]["variants"];
  REQUIRE(both.size() == 2);
  CHECK(both[0]["planes"][0]["mismatch_db"].get<double>() < 1e-6);
  CHECK(both[0]["tuned"] == true);
  const json written = walk_of(tuned, {"--as-written", "--variant", "b"})["walk"]["variants"];
  REQUIRE(written.size() == 1);
  CHECK(written[0]["name"] == "b");
  CHECK(written[0]["tuned"] == false);
  CHECK(written[0]["planes"][0]["mismatch_db"].get<double>() > 1.0);
}

TEST_CASE("where it stops the place and the lines of the file are named, the solver's values follow, and the code is 0") {
  const json walk = walk_of(bridge)["walk"]["variants"][0];
  const json& stop = walk["to_source"]["stop"];
  CHECK(stop["node"] == "right");
  REQUIRE(stop["parts"].size() == 2);
  CHECK(stop["parts"][0]["line"] == 3);
  CHECK(stop["solver_ohm"].is_array());
  CHECK(walk["power"]["from"] == "solver");
  const Ran text = program({"walk", "-"}, {.input = bridge});
  CHECK(text.code == 0);
  CHECK(text.out.find("STOP") != std::string::npos);
  CHECK(text.out.find("(line 3)") != std::string::npos);
  CHECK(text.out.find("as the solver has it") != std::string::npos);
}

TEST_CASE("the csv has a row a step") {
  const Ran ran = program({"walk", "-", "--to", "csv"}, {.input = tuner});
  REQUIRE(ran.code == 0);
  CHECK(ran.out.starts_with("variant,frequency_hz,way,step,rule,name,what,"));
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 7);
  CHECK(ran.out.find(",to_source,2,series,L,\"inductor, 3.175 uH\",4,") != std::string::npos);
}

TEST_CASE("markdown has a table a way and the sentences under it") {
  const Ran ran = program({"walk", "-", "--to", "markdown"}, {.input = tuner});
  REQUIRE(ran.code == 0);
  CHECK(ran.out.find("# two parts\n") == 0);
  CHECK(ran.out.find("| step | part | what | rule |") != std::string::npos);
  CHECK(ran.out.find("| 2 | L | inductor, 3.175 uH | in series | 12 - j180 | 0.9177 + j201.9 | 12.92 + j21.89 |") != std::string::npos);
  CHECK(ran.out.find("- **2** One current flows through both") != std::string::npos);
}

TEST_CASE("the same input gives the same bytes; wrong use and mistakes keep their codes") {
  CHECK(program({"walk", "-"}, {.input = tuner}).out == program({"walk", "-", "--threads", "3"}, {.input = tuner}).out);
  CHECK(program({"walk"}).code == 2);
  CHECK(program({"walk", "-", "--variant", "none"}, {.input = tuner}).code == 2);
  CHECK(program({"walk", "-"}, {.input = "design\n"}).code == 3);
  CHECK(program({"walk", "no-such.feed"}).code == 5);
  const Ran no_load = program({"walk", "-"}, {.input = "source rig at desk : 1 W, 50 ohm\nresistor r at desk : 50 ohm\nsweep at [7 MHz]\n"});
  CHECK(no_load.code == 3);
  CHECK(no_load.err.find("[no-load]") != std::string::npos);
}

TEST_CASE("every example is walked, fits 100 columns, and agrees with the solver wherever it comes through") {
  std::size_t through = 0;
  for (const fs::directory_entry& entry : fs::directory_iterator(WATTFALL_EXAMPLES)) {
    if (entry.path().extension() != ".feed") continue;
    CAPTURE(entry.path());
    const Ran text = program({"walk", entry.path().string()});
    CHECK(text.code == 0);
    CHECK(text.err.empty());
    std::istringstream lines(text.out);
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(line);
      CHECK(columns_of(line) <= 100);
    }
    const Ran ran = program({"walk", entry.path().string(), "--to", "json"});
    const json document = json::parse(ran.out);
    for (const json& walk : document["walk"]["variants"]) {
      CAPTURE(walk["name"]);
      CHECK(walk["to_source"]["came_through"] == walk["to_load"]["came_through"]);
      if (walk["to_source"]["came_through"] != true) continue;
      ++through;
      CHECK(walk["agreement"]["worst_relative"].get<double>() < 1e-9);
      double lost = 0.0, taken = 0.0;
      for (const json& part : walk["parts"]) (part["load"] == true ? taken : lost) += part["walk_w"].get<double>();
      CHECK(lost + taken == Approx(walk["power"]["accepted_w"].get<double>()).epsilon(1e-9));
    }
  }
  CHECK(through >= 12);
}

TEST_CASE("a walk has a page, with every step's sentence, and no name becomes markup") {
  const std::string feed =
      "design \"<script>x</script>\"\nsource rig at a : 100 W, 50 ohm\ninductor L from a to b : 1 uH\ncapacitor C at b : 100 pF\nload ant at b : 50 ohm\nsweep at [7 MHz]\n";
  const auto page = wattfall::test::program({"walk", "-", "--no-plugins", "--to", "page"}, {.input = feed});
  REQUIRE(page.code == 0);
  CHECK(page.out.find("<script>x") == std::string::npos);
  CHECK(page.out.find("id=\"by-hand\"") != std::string::npos);
  CHECK(page.out.find("id=\"verdict\"") == std::string::npos);  // a walk judges nothing
  const auto sentences = [](const std::string& text, const std::string& part) {
    std::size_t found = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++found;
    return found;
  };
  const std::string shown = page.out.substr(0, page.out.find("application/json"));
  CHECK(sentences(shown, "One current flows through both") == 2);
  CHECK(sentences(shown, "One voltage stands across both") == 2);
}
