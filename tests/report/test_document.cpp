// The result document against the contract: keys, shapes and units; nulls; the same bytes each time; and what it costs.
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <set>

#include "cabin.hpp"

using nlohmann::json;

namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// Every key there, each an array of numbers (or nulls) over the frequencies.
void check_series(const json& object, const std::vector<std::string>& keys, std::size_t points) {
  for (const std::string& key : keys) {
    INFO(key);
    REQUIRE(object.contains(key));
    REQUIRE(object[key].is_array());
    CHECK(object[key].size() == points);
    for (const json& item : object[key]) CHECK((item.is_number() || item.is_null()));
  }
}

void check_complex(const json& object, const std::vector<std::string>& keys, std::size_t points) {
  for (const std::string& key : keys) {
    INFO(key);
    REQUIRE(object.contains(key));
    CHECK(object[key].size() == points);
    for (const json& item : object[key]) CHECK((item.is_null() || (item.is_array() && item.size() == 2)));
  }
}

void check_text(const json& object, const std::vector<std::string>& keys) {
  for (const std::string& key : keys) {
    INFO(key);
    REQUIRE(object.contains(key));
    CHECK(object[key].is_string());
  }
}

json parsed(const cabin::Options& options = {}) {
  return json::parse(cabin::Cabin(options).document());
}

}  // namespace

TEST_CASE("the envelope has the contract's keys in the contract's order") {
  const auto document = nlohmann::ordered_json::parse(cabin::Cabin().document());
  std::vector<std::string> keys;
  for (const auto& [key, value] : document.items()) keys.push_back(key);
  const std::vector<std::string> first{"schema", "verb", "program", "plugins", "design", "variants"};
  REQUIRE(keys.size() >= first.size());
  CHECK(std::vector<std::string>(keys.begin(), keys.begin() + 6) == first);
  CHECK(document["schema"] == 1);
  CHECK(document["verb"] == "run");
  CHECK(document["program"].get<std::string>().starts_with("wattfall "));
  CHECK(document["plugins"][1]["name"] == "reports");
  CHECK(document["design"]["file"] == "cabin.feed");
}

TEST_CASE("a variant has every key of the contract, of its shape") {
  const json variant = parsed()["variants"][0];
  CHECK(variant["name"] == "coupler at the desk");
  CHECK(variant["tuned"] == true);
  const json& source = variant["sources"][0];
  check_text(source, {"name", "node"});
  check_series(source, {"available_w", "accepted_w", "returned_w", "swr"}, 21);
  check_complex(source, {"load_impedance_ohm", "reflection"}, 21);
  CHECK(source["reference_ohm"] == 50);
  for (const json& part : variant["parts"]) {
    check_text(part, {"name", "kind"});
    CHECK(part["nodes"].is_array());
    CHECK(part["line"].is_number_integer());
    check_series(part, {"heat_w", "volts_peak", "amps_rms"}, 21);
  }
  const json& line = variant["parts"][3];
  check_series(
      line, {"in_w", "out_w", "loss_db", "volts_peak_along", "amps_rms_along", "matched_loss_db", "swr_load_end"}, 21);
  CHECK(line["nodes"] == json::array({"wall", "ground", "feed", "ground"}));
  CHECK(line["line"] == 10);
  CHECK_FALSE(variant["parts"][0].contains("in_w"));
  const json& load = variant["loads"][0];
  check_complex(load, {"impedance_ohm"}, 21);
  check_series(load, {"absorbed_w", "radiated_w", "heat_w", "volts_peak", "amps_rms"}, 21);
  check_series(
      variant["totals"],
      {"available_w", "returned_w", "heat_w", "absorbed_w", "radiated_w", "total_loss_db", "efficiency", "residual_w"},
      21);
  const json& plane = variant["planes"][0];
  check_text(plane, {"name", "node", "into"});
  check_complex(plane, {"toward_load_ohm", "toward_source_ohm"}, 21);
  check_series(plane, {"mismatch_db", "swr"}, 21);
}

TEST_CASE("settings say their unit in the key") {
  const json settings = parsed()["variants"][0]["settings"];
  CHECK(settings[0]["knob"] == "atu.Cin");
  check_series(settings[0], {"value_f"}, 21);
  CHECK(settings[0]["lower_f"] == 12e-12);
  check_series(settings[1], {"value_h"}, 21);
  CHECK(settings[2]["at_end"][20] == true);
  CHECK(settings[2]["at_end"][0] == false);
}

TEST_CASE("a selector's setting is a choice with the names of its nodes") {
  cabin::Cabin made;
  wattfall::design::Design& design = *made.designs[0];
  design.parts[1].model = wattfall::design::Selector{};
  design.parts[1].terminals = {{1}, {2}, {3}};
  design.knobs[0].dim = {};
  made.results[0].settings[0].values.assign(21, 1.0);
  const json setting = json::parse(made.document())["variants"][0]["settings"][0];
  CHECK(setting["choice"][0] == 1);
  CHECK(setting["choice_nodes"] == json::array({"atu.mid", "wall"}));
}

TEST_CASE("a plane that looks into all at its node has no part") {
  cabin::Cabin made({.points = 3});
  made.designs[0]->planes[0].look.into = {};
  CHECK(json::parse(made.document())["variants"][0]["planes"][0]["into"].is_null());
}

TEST_CASE("warnings and requirements have the contract's keys") {
  const json variant = parsed()["variants"][0];
  check_text(variant["warnings"][0], {"code", "text", "part"});
  CHECK(variant["warnings"][0]["frequency_hz"] == 7200000);
  const json& requirement = variant["requirements"][1];
  check_text(requirement, {"text", "figure", "bound", "kind"});
  CHECK(requirement["bound"] == "below");
  CHECK(requirement["value"] == 2);
  CHECK(requirement["met"] == false);
  CHECK(requirement["worst_at_hz"] == 7200000);
  CHECK(requirement["line"] == 13);
  CHECK(requirement["kind"] == "total_loss");
}

TEST_CASE("a variant without a name is null, and one variant has no comparison") {
  const json document = parsed({.points = 3, .variants = 1});
  CHECK(document["variants"][0]["name"].is_null());
  CHECK_FALSE(document.contains("comparison"));
}

TEST_CASE("what does not exist is null") {
  cabin::Cabin made;
  made.ledgers[0]->source.swr[3] = infinity;
  made.ledgers[0]->source.load_impedance_ohm[3] = {50.0, not_a_number};
  made.ledgers[0]->totals.total_loss_db[4] = not_a_number;
  made.ledgers[0]->parts[0].heat_w[5] = -infinity;
  const json variant = json::parse(made.document())["variants"][0];
  CHECK(variant["sources"][0]["swr"][3].is_null());
  CHECK(variant["sources"][0]["load_impedance_ohm"][3].is_null());
  CHECK(variant["totals"]["total_loss_db"][4].is_null());
  CHECK(variant["parts"][0]["heat_w"][5].is_null());
}

TEST_CASE("numbers read back the same, and the document has the same bytes each time") {
  const cabin::Cabin made;
  const std::string first = made.document();
  CHECK(first == made.document());
  CHECK(first == cabin::Cabin().document());
  CHECK(first.back() == '\n');
  const json variant = json::parse(first)["variants"][0];
  for (std::size_t i = 0; i < 21; ++i) {
    CHECK(variant["parts"][1]["heat_w"][i].get<double>() == made.ledgers[0]->parts[1].heat_w[i]);
  }
  CHECK(first.find("7010000,") != std::string::npos);
}

TEST_CASE("a waterfall's rows add up to what the source has to give") {
  const json document = parsed();
  for (const json& variant : document["variants"]) {
    CHECK(variant["waterfalls"].size() == 2);
    for (const json& fall : variant["waterfalls"]) {
      double sum_w = 0.0;
      for (const json& row : fall["rows"]) sum_w += row["power_w"].get<double>();
      CHECK(sum_w == Approx(100.0).epsilon(1e-12));
      CHECK(fall["rows"][0]["goes"] == "radiated");
      for (std::size_t i = 2; i < fall["rows"].size(); ++i)
        CHECK(fall["rows"][i]["power_w"] <= fall["rows"][i - 1]["power_w"]);
    }
  }
}

TEST_CASE("points worth dwelling on are among those shown") {
  const json moments = parsed()["variants"][0]["moments"];
  const std::set<int> shown = moments["shown"];
  for (const char* key : {"worst", "best", "middle"}) CHECK(shown.count(moments[key]) == 1);
  CHECK(shown.count(0) == 1);
  CHECK(shown.count(20) == 1);
  CHECK(shown.size() <= 13);
  CHECK(parsed({.points = 5})["variants"][0]["moments"]["shown"].size() == 5);
}

TEST_CASE("the verdict counts requirements and broken ratings") {
  const json document = parsed();
  const json& desk = document["variants"][0]["verdict"];
  CHECK(desk["met"] == 1);
  CHECK(desk["of"] == 3);
  CHECK(desk["ratings_broken"] == 1);
  CHECK(desk["failures"].size() == 3);
  CHECK(document["verdict"]["met"] == 4);
  CHECK(document["verdict"]["of"] == 6);
  CHECK(document["verdict"]["sentence"].get<std::string>().find("coupler at the desk") != std::string::npos);
}

TEST_CASE("the verdict's words suit the count") {
  cabin::Cabin made({.points = 3, .variants = 1});
  const auto sentence = [&] { return json::parse(made.document())["verdict"]["sentence"].get<std::string>(); };
  wattfall::judge::Judgement& judged = made.results[0].judgement;
  judged.ratings.clear();
  const auto keep = [&](std::size_t count) {
    judged.verdicts.resize(count);
    made.designs[0]->requirements.resize(count);
  };
  keep(2);
  for (wattfall::judge::Verdict& verdict : judged.verdicts) verdict.met = true;
  CHECK(sentence() == "Both requirements met; no part has a rating.");
  keep(1);
  CHECK(sentence() == "The one requirement is met; no part has a rating.");
  keep(0);
  CHECK(sentence() == "Nothing was required; no part has a rating.");
}

TEST_CASE("requirements that ask at other frequencies are not said to be none") {
  cabin::Cabin made({.points = 3, .variants = 1});
  const auto sentence = [&] { return json::parse(made.document())["verdict"]["sentence"].get<std::string>(); };
  wattfall::judge::Judgement& judged = made.results[0].judgement;
  judged.ratings.clear();
  REQUIRE(judged.verdicts.size() == 3);
  judged.verdicts.resize(2);
  for (wattfall::judge::Verdict& verdict : judged.verdicts) verdict.met = true;
  CHECK(sentence() == "Both requirements met (1 more asks at other frequencies); no part has a rating.");
  judged.verdicts.clear();
  CHECK(sentence() == "No requirement asks at these frequencies; no part has a rating.");
}

TEST_CASE("ratings say their margin in per cent and dB") {
  const json rating = parsed()["variants"][0]["ratings"][0];
  CHECK(rating["part"] == "atu.Cin");
  CHECK(rating["kept"] == true);
  CHECK(rating["near"] == true);
  CHECK(rating["margin_percent"].get<double>() == Approx(100.0 * (1000.0 - 704.0) / 1000.0));
  CHECK(rating["margin_db"].get<double>() == Approx(20.0 * std::log10(1000.0 / 704.0)));
}

TEST_CASE("the comparison names the better variant and its lead") {
  const json comparison = parsed()["comparison"];
  CHECK(comparison["variants"].size() == 2);
  std::set<std::string> figures;
  for (const json& figure : comparison["figures"]) {
    figures.insert(figure["figure"].get<std::string>());
    CHECK(figure["worst"]["values"].size() == 2);
    CHECK(figure["worst"]["better"] == 1);
    const double first = figure["middle"]["values"][0], second = figure["middle"]["values"][1];
    CHECK(figure["middle"]["lead"].get<double>() == Approx(std::abs(first - second)));
  }
  CHECK(figures ==
        std::set<std::string>{"radiated_w", "efficiency", "total_loss_db", "swr", "heat_w", "hottest_part_w"});
  CHECK(comparison["sentences"][0].get<std::string>().starts_with("\"coupler at the mast\" puts "));
}

TEST_CASE("a figure that does not exist loses, and equal ones tie") {
  cabin::Cabin made;
  made.ledgers[1]->source.swr[2] = not_a_number;
  made.ledgers[1]->totals.radiated_w = made.ledgers[0]->totals.radiated_w;
  const json figures = json::parse(made.document())["comparison"]["figures"];
  CHECK(figures[0]["worst"]["better"].is_null());
  CHECK(figures[3]["worst"]["better"] == 0);
  CHECK(figures[3]["worst"]["values"][1].is_null());
}

TEST_CASE("cautions give the largest peak volts of the design") {
  const json cautions = parsed()["cautions"];
  REQUIRE(cautions.size() == 4);
  CHECK(cautions[1].get<std::string>().find("1.144 kV") == std::string::npos);
  CHECK(cautions[1].get<std::string>().find("1.14 kV peak, on atu.Cout in \"coupler at the desk\" at 7.2 MHz") !=
        std::string::npos);
}

TEST_CASE("any name makes a valid document") {
  const std::string wild = std::string("<script>\"\\\n\x01\x7f \xff\xc0\xaf caf\xc3\xa9 ") + std::string(10000, 'x');
  const json document = parsed({.title = wild, .first_name = wild});
  const std::string title = document["design"]["title"];
  CHECK(title.find("<script>\"\\\n\x01\x7f \xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD caf\xc3\xa9") == 0);
  CHECK(document["variants"][0]["name"] == title);
}

TEST_CASE("a design without a point makes a valid document") {
  const json document = parsed({.points = 0, .variants = 0});
  CHECK(document["variants"].empty());
}

TEST_CASE("errors have a place counted from one, or none") {
  using namespace wattfall;
  const auto source = std::make_shared<const Source>("bad.feed", "design \"x\"\nsweep 7 mhz to 8 MHz\n");
  Diagnostics diagnostics;
  diagnostics.push_back({"unknown-unit",
                         {source.get(), 19, 22},
                         "`mhz` is no unit",
                         "a frequency",
                         "MHz",
                         {{{source.get(), 0, 6}, "here"}}});
  diagnostics.push_back({"no-sweep", {}, "nothing to sweep", "", "", {}});
  const json document = json::parse(report::make_error_document(diagnostics));
  CHECK(document["schema"] == 1);
  const json& first = document["errors"][0];
  CHECK(first["code"] == "unknown-unit");
  CHECK(first["file"] == "bad.feed");
  CHECK(first["line"] == 2);
  CHECK(first["column"] == 9);
  CHECK(first["hint"] == "MHz");
  CHECK(first["expected"] == "a frequency");
  CHECK(first["notes"][0]["line"] == 1);
  CHECK(document["errors"][1]["line"].is_null());
}

TEST_CASE("a sweep of 100,000 points is written quickly") {
  const cabin::Cabin made({.points = 100000});
  const auto start = std::chrono::steady_clock::now();
  const std::string document = made.document();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  WARN("100,000 points, 2 variants: " << document.size() / 1000000 << " MB in " << took.count() << " s");
  CHECK(took.count() < 30.0);  // generous: sanitizers and busy machines
}
