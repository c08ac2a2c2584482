// What only the network can tell: islands, single ends, missing ground, loops; and what floats without harm.
#include <catch2/catch.hpp>

#include "feed.hpp"

using namespace wattfall;
using test::codes;
using test::Feed;

namespace {

const std::string head = "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7 MHz]\n";

struct Mistake {
  const char* why;
  const char* text;
  std::vector<std::string> codes;
  std::vector<int> lines;
  const char* says;
};

const std::vector<Mistake> mistakes = {
    {"a part that touches nothing else", "load ant at desk : 50 ohm\nresistor R from a to b : 5 ohm\n",
     {"single-end", "single-end"}, {5, 5}, "`a` has a single end, that of `R`"},
    {"a loop of parts beside the network", "load ant at desk : 50 ohm\nresistor R from a to b : 5 ohm\ninductor L from a to b : 1 uH\n",
     {"island"}, {5}, "`R` and `L`"},
    {"parts to ground beside the network are an island too", "load ant at desk : 50 ohm\nresistor R at a : 5 ohm\ninductor L at a : 1 uH\n",
     {"island"}, {5}, "at node `a`"},
    {"a load that nothing leads to", "resistor R at desk : 5 ohm\nload ant at feed : 50 ohm\ncapacitor C at feed : 10 pF\n",
     {"unreachable-load", "island"}, {5, 5}, "no part leads from the source to the load `ant`"},
    {"both ends on one node", "load ant at desk : 50 ohm\nresistor R from desk to desk : 5 ohm\n",
     {"both-ends-on-one-node"}, {5}, "both ends of `R` are on one node, `desk`"},
    {"a line from a node to itself", "load ant at desk : 50 ohm\nline w from desk to desk : 5 m, 50 ohm\n",
     {"both-ends-on-one-node"}, {5}, "both sides of `w`"},
    {"a node with a single end", "resistor R from desk to feed : 5 ohm\nload ant at fed : 50 ohm\n",
     {"single-end", "single-end"}, {4, 5}, "`feed` has a single end"},
    {"a load that one node alone joins to the source", "load ant from desk to gnd : 50 ohm\nresistor R from desk to gnd : 5 ohm\n",
     {"unreachable-load"}, {4}, "no current can flow in the load `ant`"},
    {"a source shorted by a part", "load ant at desk : 50 ohm\nresistor R at desk : 0 ohm\n", {"shorted-source"}, {5}, "`R` of 0 ohm shorts the source `rig`"},
    {"a loop of ideal transformers",
     "transformer T from desk to up : turns 1:2\ntransformer U from desk to up : turns 1:2\nload ant at up : 50 ohm\n",
     {"transformer-loop"}, {5}, "`U` closes"},
};

}  // namespace

TEST_CASE("what the network alone can tell is said with parts, nodes and lines") {
  for (const Mistake& mistake : mistakes) {
    INFO(mistake.why);
    const Feed feed(head + mistake.text);
    REQUIRE(codes(feed.diagnostics) == mistake.codes);
    std::string said;
    for (std::size_t i = 0; i < mistake.lines.size(); ++i) {
      CHECK(feed.diagnostics[i].span.line() == mistake.lines[i]);
      said += feed.diagnostics[i].text + "\n";
    }
    CHECK_THAT(said, Catch::Contains(mistake.says));
  }
}

TEST_CASE("a design without ground on the source's side is refused") {
  const Feed feed("design \"t\"\nsource rig at (a b) : 100 W, 50 ohm\nsweep at [7 MHz]\nload ant at (a b) : 50 ohm\n");
  REQUIRE(codes(feed.diagnostics) == std::vector<std::string>{"no-path-to-ground"});
  CHECK(feed.diagnostics[0].span.line() == 2);
}

TEST_CASE("a balanced section behind a transformer floats, and its books close") {
  // 1:2 turns make 200 ohm of 50; the balanced 200 ohm load takes all.
  const Feed feed(head + "transformer T from (desk ground) to (a b) : turns 1:2\nload ant at (a b) : 200 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  CHECK(feed.network.floating_reference.size() == 1);
  CHECK(feed.load("ant").absorbed_w[0] == Approx(100.0).epsilon(1e-12));
  CHECK(std::abs(feed.source_impedance() - 50.0) < 1e-10);
}

TEST_CASE("a load between the ends of a coil that floats is reached through its flux") {
  const Feed feed(head + "inductor A at desk : 1 uH\ninductor B from a to b : 1 uH\ncoupling K between A and B : factor 0.9\n"
                         "load ant from a to b : 50 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  CHECK(feed.load("ant").absorbed_w[0] > 1.0);
}

TEST_CASE("a pair of wires carries power to a floating load") {
  // A lossless half wave repeats its load: 7 MHz, 90 degrees twice.
  const Feed feed(head + "transformer T from (desk ground) to (a b) : turns 1:1\n"
                         "line w from (a b) to (c d) : 180 deg at 7 MHz, 450 ohm\nload ant at (c d) : 30+j40 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  CHECK(std::abs(feed.source_impedance() - std::complex<double>(30.0, 40.0)) < 1e-9);
}
