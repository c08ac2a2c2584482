// The writer `drawing`: what it draws is read back and measured.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"
#include "picture_parts.hpp"
#include "random_networks.hpp"

namespace fs = std::filesystem;
using namespace pictures_tests;
using wattfall::test::program;
using wattfall::test::Ran;

namespace {

std::string drawing_of(const fs::path& feed) {
  const Ran ran = program({"run", feed.string(), "--to", "drawing", "--quiet"});
  INFO(ran.err);
  REQUIRE((ran.code == 0 || ran.code == 1));
  return ran.out;
}

std::string drawing_of_text(const std::string& feed) {
  const Ran ran = program({"run", "-", "--to", "drawing", "--quiet"}, {.input = feed});
  return ran.code <= 1 ? ran.out : "";
}

void check_clean(const std::string& svg) {
  for (const Net& net : read_nets(svg))
    for (const std::string& fault : faults(net)) FAIL_CHECK(fault);
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

const std::string plain = R"(source rig at desk : 100 W, 50 ohm
line coax from desk to feed : 20 m of RG-58
load wires at feed : 61 - j142 ohm
sweep at [7.1 MHz]
)";

}  // namespace

TEST_CASE("the drawings of all examples have no label over another and no wire through a symbol") {
  int drawn = 0;
  for (const fs::directory_entry& entry : fs::directory_iterator(WATTFALL_EXAMPLES)) {
    if (entry.path().extension() != ".feed") continue;
    INFO(entry.path().filename());
    check_clean(drawing_of(entry.path()));
    ++drawn;
  }
  CHECK(drawn >= 10);
}

TEST_CASE("so do those of tangled networks") {
  int drawn = 0;
  for (std::uint32_t seed = 1; seed <= 90; ++seed) {
    const std::string feed = random_feed(seed, 3 + static_cast<int>(seed % 7), static_cast<int>(seed % 11));
    const std::string svg = drawing_of_text(feed);
    if (svg.empty()) continue;  // a network that cannot be solved; the count below holds how many may be
    INFO(feed);
    check_clean(svg);
    ++drawn;
  }
  CHECK(drawn >= 45);
}

TEST_CASE("every part stands in the drawing with its name, its value and its watts") {
  const fs::path feed = fs::path(WATTFALL_EXAMPLES) / "02_tuner_at_rig_or_mast.feed";
  const std::string svg = drawing_of(feed);
  const Ran ran = program({"run", feed.string(), "--to", "json", "--quiet"});
  const auto document = nlohmann::json::parse(ran.out);
  const std::vector<Net> nets = read_nets(svg);
  REQUIRE(nets.size() == document["variants"].size());
  for (std::size_t v = 0; v < nets.size(); ++v) {
    const auto& variant = document["variants"][v];
    const std::size_t point = variant["moments"]["worst"];
    std::string letters;
    for (const Named& text : nets[v].letters) letters += text.name + '\n';
    for (const auto& part : variant["parts"]) {
      const std::string name = part["name"];
      INFO(name);
      CHECK(letters.find(name.substr(name.rfind('.') + 1) + '\n') != std::string::npos);
      const double heat_w = part["heat_w"][point];
      char watts[32];
      if (heat_w >= 1.0) {
        std::snprintf(watts, sizeof watts, "%.1f W", heat_w);
        CHECK(letters.find(watts) != std::string::npos);
      }
      if (name.ends_with(".Cin")) {
        std::snprintf(watts, sizeof watts, "%.4g pF", 1e12 * (part["value_f"].is_array() ? part["value_f"][point] : part["value_f"]).get<double>());
        CHECK(letters.find(watts) != std::string::npos);
      }
    }
  }
}

TEST_CASE("no name gets out of its place in the drawing") {
  const std::string hostile = "<script>alert(1)</script>' \\\"& ]]> --";
  const std::string svg = drawing_of_text("design \"" + hostile + "\"\n" + plain + "variant \"" + hostile + "\" {\n}\n");
  REQUIRE_FALSE(svg.empty());
  CHECK(svg.find("<script") == std::string::npos);
  pugi::xml_document document;
  REQUIRE(document.load_string(svg.c_str()));
  CHECK(std::string(document.child("svg").child_value("title")).find("<script>alert(1)</script>'") != std::string::npos);
}

TEST_CASE("a title of ten thousand letters leaves the drawing as wide as it was") {
  const auto width = [](const std::string& svg) {
    pugi::xml_document document;
    REQUIRE(document.load_string(svg.c_str()));
    return document.child("svg").attribute("width").as_double();
  };
  CHECK(width(drawing_of_text("design \"" + std::string(10000, 'W') + "\"\n" + plain)) == width(drawing_of_text(plain)));
}

TEST_CASE("a screen reader gets a title and the parts in words") {
  const std::string svg = drawing_of_text("design \"plain\"\n" + plain);
  pugi::xml_document document;
  REQUIRE(document.load_string(svg.c_str()));
  const pugi::xml_node root = document.child("svg");
  CHECK(std::string(root.attribute("role").value()) == "img");
  CHECK(std::string(root.child_value("title")) == "plain");
  const std::string description = root.child_value("desc");
  CHECK(description.find("line coax, 20 m of RG-58 (desk, ground, feed, ground), heat ") != std::string::npos);
}

TEST_CASE("heat is never told by colour alone") {
  const std::string svg = drawing_of_text(plain);
  CHECK(count_of(svg, "class=\"heat\"") == 1);
  CHECK(count_of(svg, "class=\"t-watts\"") == 1);
}

TEST_CASE("each part of a box stands in a frame with the box's name, whatever stands in between") {
  // The antenna rises from the node that the box's last part hangs from, so one frame around all would hold it too.
  const std::string box = "box bank (in, out) {\n  capacitor C at in : 100 pF\n  inductor L from in to out : 1 uH, Q 200\n  resistor R at out : 5 kohm\n}\n";
  const std::string svg = drawing_of_text("source rig at desk : 100 W, 50 ohm\n" + box + "bank atu from desk to feed\nload wires at feed : 61 - j142 ohm\nload more at desk : 500 - j20 ohm\nsweep at [7.1 MHz]\n");
  pugi::xml_document document;
  REQUIRE(document.load_string(svg.c_str()));
  struct Rect {
    double x0, y0, x1, y1;
  };
  std::vector<Rect> frames;
  for (const auto& found : document.select_nodes("//*[@class='frame']")) {
    const pugi::xml_node node = found.node();
    const double x = node.attribute("x").as_double(), y = node.attribute("y").as_double();
    frames.push_back({x, y, x + node.attribute("width").as_double(), y + node.attribute("height").as_double()});
  }
  CHECK(!frames.empty());
  CHECK(frames.size() == count_of(svg, "class=\"t-box\""));
  const auto framed = [&](const std::string& name) {
    for (const auto& found : document.select_nodes("//*[@class='t-name']")) {
      const pugi::xml_node node = found.node();
      if (node.text().get() != name) continue;
      const double x = node.attribute("x").as_double(), y = node.attribute("y").as_double();
      return std::any_of(frames.begin(), frames.end(), [&](const Rect& r) { return x > r.x0 && x < r.x1 && y > r.y0 && y < r.y1; });
    }
    return false;
  };
  for (const char* name : {"C", "L", "R"}) CHECK(framed(name));
  for (const char* name : {"rig", "wires", "more"}) CHECK_FALSE(framed(name));
}

TEST_CASE("a network of very many parts is thinned, and the drawing says so") {
  std::string feed = "source rig at n0 : 100 W, 50 ohm\n";
  for (int n = 0; n < 400; ++n)
    feed += "inductor L" + std::to_string(n) + " from n" + std::to_string(n) + " to n" + std::to_string(n + 1) + " : 1 nH, Q 100\n";
  const std::string svg = drawing_of_text(feed + "load wires at n400 : 50 ohm\nsweep at [7 MHz]\n");
  CHECK(svg.find("parts that take the least heat are left out") != std::string::npos);
  CHECK(svg.size() < 1'000'000);
}

TEST_CASE("the gallery's pictures are those that the script draws, but for their last digits") {
  const wattfall::test::Scratch scratch;
  const fs::path gallery = fs::path(WATTFALL_EXAMPLES) / "gallery";
  const Ran ran = wattfall::test::shell("sh '" + (gallery / "draw").string() + "' \"$WATTFALL\" '" + scratch.path().string() + "'");
  INFO(ran.err);
  REQUIRE(ran.code <= 1);
  const auto without_numbers = [](const std::string& svg) {
    std::string rest;
    for (const char c : svg)
      if (std::string("0123456789.-").find(c) == std::string::npos) rest += c;
    return rest;
  };
  for (const char* picture : {"network.svg", "watts.svg"}) {
    const std::string kept = wattfall::test::read_file(gallery / picture), drawn = wattfall::test::read_file(scratch.path() / picture);
    CHECK(without_numbers(kept) == without_numbers(drawn));
    pugi::xml_document document;
    CHECK(document.load_string(kept.c_str()));
  }
}

TEST_CASE("the measure itself finds what is wrong") {
  const auto faults_of = [](const std::string& inside) {
    return faults(read_nets("<svg><svg class='net'>" + inside + "</svg></svg>").front()).size();
  };
  const std::string symbol = "<g class='part'><title>R</title><path class='s' d='M0 0L40 0L40 16L0 16Z'/></g>";
  const auto wire = [](const std::string& d) { return "<g class='wires'><path class='w' d='" + d + "'/></g>"; };
  const auto text = [](const std::string& x) { return "<text class='t-name' x='" + x + "' y='40'>label</text>"; };
  CHECK(faults_of(symbol + wire("M-20 8L0 8")) == 0);
  CHECK(faults_of(symbol + wire("M-20 8L60 8")) == 1);
  CHECK(faults_of("<g class='letters'>" + text("0") + text("60") + "</g>") == 0);
  CHECK(faults_of("<g class='letters'>" + text("0") + text("30") + "</g>") == 1);
  const auto wires = [](const std::string& second, const std::string& joint) {
    return "<g class='wires'><path class='w' data-node='1' d='M0 0L40 0'/><path class='w' data-node='" + second + "' d='M20 0L20 40'/>" + joint + "</g>";
  };
  CHECK(faults_of(wires("1", "<circle class='joint' cx='20' cy='0' r='3'/>")) == 0);
  CHECK(faults_of(wires("1", "")) == 1);
  CHECK(faults_of(wires("2", "<circle class='joint' cx='20' cy='0' r='3'/>")) == 2);
  CHECK(faults_of(wire("M-20 36L60 36") + "<g class='letters'>" + text("0") + "</g>") == 1);
}
