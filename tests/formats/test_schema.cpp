// Every document of every example and verb against engine/report/schema-1.json; and that the schema refuses what the contract does not allow.
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"
#include "schema.hpp"

using nlohmann::json;
using wattfall::test::program;
using wattfall::test::Scratch;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> examples() {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(WATTFALL_EXAMPLES))
    if (entry.path().extension() == ".feed") names.push_back(entry.path().string());
  std::sort(names.begin(), names.end());
  return names;
}

const std::string example = std::string(WATTFALL_EXAMPLES) + "/03_quarter_wave_section.feed";

/// A valid document with one change.
template <class Change>
std::string changed(const json& valid, const Change& change) {
  json copy = valid;
  change(copy);
  return copy.dump();
}

}  // namespace

TEST_CASE("every example's document is of the schema") {
  for (const std::string& feed : examples()) {
    CAPTURE(feed);
    // As written where it may be: the schema asks nothing of the settings' values.
    const auto ran = program({"run", feed, "--to", "json"});
    CHECK(ran.code <= 1);
    CHECK(formats::schema_faults(ran.out) == "");
  }
}

TEST_CASE("the documents of compare, walk and check are of the schema") {
  const Scratch scratch;
  const auto compared = program({"compare", example, "--to", "json"});
  CHECK(compared.code <= 1);
  CHECK(formats::schema_faults(compared.out) == "");
  CHECK(json::parse(compared.out)["verb"] == "compare");

  const auto walked = program({"walk", std::string(WATTFALL_EXAMPLES) + "/01_l_network_by_hand.feed", "--to", "json"});
  CHECK(walked.code <= 1);
  CHECK(json::parse(walked.out)["verb"] == "walk");
  CHECK(formats::schema_faults(walked.out) == "");

  fs::copy_file(example, scratch / "a.feed");
  for (const std::vector<std::string>& more : {std::vector<std::string>{}, {"--accept"}, {}}) {
    std::vector<std::string> arguments{"check", scratch.path().string(), "--to", "json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const auto checked = program(arguments);
    CHECK(checked.code <= 1);
    CHECK(formats::schema_faults(checked.out) == "");
  }
}

TEST_CASE("the document of errors is of the schema") {
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"run", "-", "--to", "json"}, {"check", "nowhere", "--to", "json"}, {"compare", "nowhere", "--to", "json"}}) {
    const auto ran = program(arguments, {.input = "source rig at desk : 100 W, 50 ohms\n"});
    CHECK(ran.code >= 2);
    CHECK(formats::schema_faults(ran.out) == "");
  }
}

TEST_CASE("the schema refuses what the contract does not allow") {
  const json run = json::parse(program({"run", example, "--to", "json"}).out);
  REQUIRE(formats::schema_faults(run.dump()) == "");
  for (const char* key : {"schema", "verb", "program", "design", "variants"})
    CHECK(formats::schema_faults(changed(run, [&](json& one) { one.erase(key); })) != "");
  for (const char* key : {"name", "tuned", "frequencies_hz", "sources", "parts", "loads", "totals", "planes", "settings", "warnings", "requirements"}) {
    CAPTURE(key);
    CHECK(formats::schema_faults(changed(run, [&](json& one) { one["variants"][0].erase(key); })) != "");
    CHECK(formats::schema_faults(changed(run, [&](json& one) { one["variants"][0][key] = 7; })) != "");
  }
  for (const char* key : {"available_w", "residual_w", "efficiency"})
    CHECK(formats::schema_faults(changed(run, [&](json& one) { one["variants"][0]["totals"].erase(key); })) != "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["schema"] = 2; })) != "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["verb"] = "sing"; })) != "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["variants"][0]["sources"][0]["swr"][0] = "1.5"; })) != "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["variants"][0]["sources"][0]["reflection"][0] = json::array({1.0}); })) != "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["variants"][0]["requirements"][0]["bound"] = "about"; })) != "");
  // A number that does not exist is null; a key that nobody knows is passed over.
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["variants"][0]["sources"][0]["swr"][0] = nullptr; })) == "");
  CHECK(formats::schema_faults(changed(run, [](json& one) { one["variants"][0]["new"] = {{"key", 1}}; })) == "");
  // A two-port's keys come together.
  const json parts = run.at("variants").at(0).at("parts");
  for (const json& part : parts) {
    if (!part.contains("in_w")) continue;
    const std::string name = part["name"];
    CHECK(formats::schema_faults(changed(run, [&](json& one) {
            for (json& own : one["variants"][0]["parts"])
              if (own["name"] == name) own.erase("out_w");
          })) != "");
  }
}
