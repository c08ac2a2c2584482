// The writer `page`: structure, numbers, size, and names that would like to be more than names. How it behaves in a browser is tested in tests/pages.
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>

#include "../support/program.hpp"

namespace fs = std::filesystem;
using nlohmann::json;
using wattfall::test::program;
using wattfall::test::Ran;
using wattfall::test::read_file;
using wattfall::test::Scratch;

namespace {

struct Both {
  std::string page;
  json document;
};

Both run_text(const std::string& feed) {
  const Scratch scratch;
  const std::string path = scratch.write("design.feed", feed);
  const Ran ran = program({"run", path, "--to", "page=" + scratch / "report.html", "--to", "json=" + scratch / "report.json", "--quiet"});
  INFO(ran.err);
  REQUIRE(ran.code <= 1);
  return {read_file(scratch / "report.html"), json::parse(read_file(scratch / "report.json"))};
}

json embedded_in(const std::string& page) {
  const std::string opening = "id=\"result\">";
  const std::size_t from = page.find(opening) + opening.size();
  return json::parse(page.substr(from, page.find("</script>", from) - from));
}

struct Shown {
  double value;
  std::string at;
};

std::vector<Shown> numbers_of(const std::string& page) {
  std::vector<Shown> all;
  const std::regex element("<data value=\"([^\"]*)\" data-at=\"([^\"]*)\">");
  for (std::sregex_iterator it(page.begin(), page.end(), element), end; it != end; ++it) all.push_back({std::stod((*it)[1]), (*it)[2]});
  return all;
}

const std::string tuner = R"(source rig at desk : 100 W, 50 ohm
line coax from desk to mast : 26 m of RG-58
capacitor Cin from mast to mid : adjustable 15 pF to 330 pF, Q 1200, limit 1.5 kV
inductor L from mid to ground : adjustable 0.2 uH to 20 uH, Q 180 at 7 MHz
capacitor Cout from mid to feed : adjustable 15 pF to 330 pF, Q 1200
load wires at feed : 61 - j142 ohm, radiates 94 %
plane antenna at feed
require swr at desk below 1.5
)";
const std::string tuned = "tune Cin, L, Cout at 7.1 MHz for most power into wires\n";

}  // namespace

TEST_CASE("every number on a page is that of the document at the place it names") {
  const Both both = run_text("design \"numbers\"\n" + tuner + tuned + "variant \"a\" {\n}\nvariant \"b\" {\n  change coax : 13 m of RG-58\n}\nsweep 7 MHz to 7.2 MHz, 31 points\n");
  const std::vector<Shown> numbers = numbers_of(both.page);
  CHECK(numbers.size() > 300);
  for (const Shown& shown : numbers) {
    const double said = both.document.at(json::json_pointer(shown.at)).get<double>();
    if (shown.value != said) FAIL_CHECK(shown.at << ": " << shown.value << " and not " << said);
  }
}

TEST_CASE("the document stands in the page, to ten digits") {
  const Both both = run_text("design \"numbers\"\n" + tuner + tuned + "sweep 7 MHz to 7.2 MHz, 31 points\n");
  const json inside = embedded_in(both.page);
  const json flat = both.document.flatten(), found = inside.flatten();
  REQUIRE(flat.size() == found.size());
  for (const auto& [key, value] : flat.items()) {
    const json& other = found.at(key);
    if (value.is_number_float()) CHECK(std::abs(other.get<double>() - value.get<double>()) <= 1e-9 * std::abs(value.get<double>()));
    else if (other != value) FAIL_CHECK(key);
  }
}

TEST_CASE("a page of a thousand points is below a megabyte, and keeps the points it dwells on") {
  const Both both = run_text("design \"long\"\n" + tuner + tuned + "sweep 7 MHz to 7.3 MHz, 1000 points\n");
  CHECK(both.page.size() < 1'000'000);
  const json variant = embedded_in(both.page)["variants"][0];
  const std::size_t kept = variant["frequencies_hz"].size();
  CHECK(kept > 300);
  for (const char* series : {"swr", "available_w"}) CHECK(variant["sources"][0][series].size() == kept);
  if (variant.contains("thinned")) {
    const json& whole = both.document["variants"][0];
    for (std::size_t k = 0; k < kept; ++k) {
      const std::size_t point = variant["thinned"][k];
      CHECK(variant["sources"][0]["swr"][k].get<double>() == Approx(whole["sources"][0]["swr"][point].get<double>()).epsilon(1e-9));
    }
    for (const auto& shown : whole["moments"]["shown"]) CHECK(std::count(variant["thinned"].begin(), variant["thinned"].end(), shown) == 1);
  }
}

TEST_CASE("four variants of a thousand points still fit") {
  std::string feed = "design \"long\"\n" + tuner;
  for (const char* name : {"a", "b", "c", "d"}) feed += "variant \"" + std::string(name) + "\" {\n" + tuned + "}\n";
  CHECK(run_text(feed + "sweep 7 MHz to 7.3 MHz, 1000 points\n").page.size() < 1'000'000);
}

TEST_CASE("no name gets out of its place in the page") {
  const std::string hostile = "</script><script>alert(1)</script>' \\\"onload=x <img src=x onerror=y> ]]>";
  const Both both = run_text("design \"" + hostile + "\"\n" + tuner + tuned + "variant \"" + hostile + "\" {\n}\nvariant \"b\" {\n}\nsweep at [7 MHz, 7.1 MHz]\n");
  CHECK(both.page.find("<script>alert") == std::string::npos);
  CHECK(both.page.find("<img") == std::string::npos);
  std::size_t scripts = 0;
  for (std::size_t at = both.page.find("</script>"); at != std::string::npos; at = both.page.find("</script>", at + 1)) ++scripts;
  CHECK(scripts == 2);  // the document, and the page's own
  CHECK(embedded_in(both.page)["design"]["title"] == both.document["design"]["title"]);
}

TEST_CASE("a page asks for nothing outside itself") {
  const std::string page = run_text("design \"alone\"\n" + tuner + tuned + "sweep at [7.1 MHz]\n").page;
  CHECK(page.find("default-src 'none'") != std::string::npos);
  // The one address is the name of SVG, which is not fetched.
  std::string rest = page;
  for (std::size_t at = rest.find("http://www.w3.org/2000/svg"); at != std::string::npos; at = rest.find("http://www.w3.org/2000/svg")) rest.erase(at, 26);
  CHECK(rest.find("http:") == std::string::npos);
  CHECK(rest.find("https:") == std::string::npos);
  CHECK(rest.find("@import") == std::string::npos);
  CHECK_FALSE(std::regex_search(rest, std::regex("(src|href)=\"[^#d]")));
}

TEST_CASE("every section has its heading, every chart its title and its table, and ids are there once") {
  const std::string page = run_text("design \"whole\"\n" + tuner + tuned + "sweep 7 MHz to 7.2 MHz, 5 points\n").page;
  std::map<std::string, int> ids;
  const std::regex id(" id=\"([^\"]+)\"");
  for (std::sregex_iterator it(page.begin(), page.end(), id), end; it != end; ++it) ++ids[(*it)[1]];
  for (const auto& [name, count] : ids) {
    INFO(name);
    CHECK(count == 1);
  }
  for (const char* section : {"verdict", "network", "watts", "sweep", "reflection", "planes", "lines", "ratings", "dial", "cautions", "trust", "data"}) {
    INFO(section);
    CHECK(ids.count(section) == 1);
    CHECK(ids.count(std::string(section) + "-title") == 1);
  }
  const std::regex labelled("aria-labelledby=\"([^\"]+)\"");
  for (std::sregex_iterator it(page.begin(), page.end(), labelled), end; it != end; ++it) {
    std::istringstream names((*it)[1]);
    for (std::string name; names >> name;) {
      INFO(name);
      CHECK(ids.count(name) == 1);
    }
  }
}

TEST_CASE("pages of walks, weighings and checks show the document's numbers, and no name gets out of its place") {
  const Scratch scratch;
  const std::string hostile = "</script><script>alert(1)</script>";
  const std::string feed = scratch.write("a.feed", "design \"" + hostile + "\"\nset run = 26 m\n" + tuner + "sweep at [7.1 MHz]\n");
  for (const std::string verb : {"walk", "weigh", "check"}) {
    CAPTURE(verb);
    const Ran ran = program({verb, feed, "--set", "Cin=120pF", "--set", "L=2.4uH", "--set", "Cout=330pF", "--as-written", "--to", "page=" + scratch / "page.html", "--to", "json=" + scratch / "page.json", "--quiet"});
    INFO(ran.err);
    REQUIRE(ran.code <= 1);
    const std::string page = read_file(scratch / "page.html");
    const json document = json::parse(read_file(scratch / "page.json"));
    const std::vector<Shown> numbers = numbers_of(page);
    CHECK(numbers.size() > 10);
    for (const Shown& shown : numbers)
      if (shown.value != document.at(json::json_pointer(shown.at)).get<double>()) FAIL_CHECK(shown.at);
    CHECK(page.find("<script>alert") == std::string::npos);
    CHECK(embedded_in(page)["verb"] == verb);
  }
}
