// Where the hand cannot go on it says so, and where.
#include <algorithm>
#include <catch2/catch.hpp>

#include "walked.hpp"

using namespace wattfall;
using test::Feed;
using test::walked;
using Why = walk::Stop::Why;

namespace {

std::vector<std::string> names(const Feed& feed, const std::vector<design::PartId>& parts) {
  std::vector<std::string> found;
  for (design::PartId part : parts) found.push_back(feed.design.parts[part.index].name);
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

TEST_CASE("a bridge stops both ways, at a node where its arms meet") {
  const Feed feed(
      "source rig at desk : 100 W, 50 ohm\nresistor A from desk to left : 50 ohm\nresistor B from desk to right : 70 ohm\n"
      "capacitor M from left to right : 100 pF\nresistor C at left : 60 ohm\nload ant at right : 50 ohm\nsweep at [7 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  walk::Walk walk = walked(feed);
  REQUIRE(walk.to_source.stop);
  REQUIRE(walk.to_load.stop);
  CHECK(walk.to_source.stop->why == Why::crossing);
  CHECK(feed.design.nodes[walk.to_source.stop->node].name == "right");
  CHECK(names(feed, walk.to_source.stop->parts) == std::vector<std::string>{"B", "M"});
  CHECK(walk.part_w.empty());
  CHECK(walk::compare(walk, feed.design, feed.ledger, 0).empty());
}

TEST_CASE("a choke on a line whose shield has another way round is no two-port") {
  const Feed feed(
      "source rig at desk : 100 W, 50 ohm\nline coax from desk to (core shield) : 20 m, 50 ohm\nresistor rod at shield : 40 ohm\n"
      "choke guard from (core shield) to (west east) : 500 ohm\nload left at west : 36 ohm\nload right at east : 34 ohm\nsweep at [7.1 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const walk::Walk walk = walked(feed);
  REQUIRE(walk.to_source.stop);
  CHECK(walk.to_source.stop->why == Why::not_port);
  CHECK(names(feed, walk.to_source.stop->parts) == std::vector<std::string>{"guard"});
}

TEST_CASE("a choke that feeds a pair with no other way round passes as it is") {
  const Feed feed(
      "source rig at desk : 100 W, 50 ohm\nchoke guard from (desk ground) to (west east) : 500 ohm\nload ant at (west east) : 70+j10 ohm\nsweep at [7.1 MHz]\n");
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  const walk::Walk walk = walked(feed);
  REQUIRE_FALSE(walk.to_source.stop);
  CHECK(*walk.to_source.end == std::complex<double>(70.0, 10.0));
  CHECK(test::apart(walk.to_source.end, feed.source_impedance()) < 1e-12);
}

TEST_CASE("what a selector cuts off takes no current and is named; what it closes adds nothing") {
  const Feed feed(
      "source rig at desk : 100 W, 50 ohm\nselector s from desk to (a b) : b\ninductor La from a to feed : 2 uH\ninductor Lb from b to feed : 1 uH\n"
      "load ant at feed : 40-j50 ohm\nsweep at [7 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const walk::Walk walk = walked(feed);
  REQUIRE_FALSE(walk.to_source.stop);
  CHECK(names(feed, walk.idle) == std::vector<std::string>{"La"});
  CHECK(test::apart(walk.to_source.end, feed.source_impedance()) < 1e-12);
}

TEST_CASE("coupled coils are one step where each closes its own loop") {
  const Feed feed(
      "source rig at desk : 100 W, 50 ohm\ninductor La at desk : 3 uH, Q 200\ninductor Lb at feed : 2 uH, Q 150\ncoupling K between La and Lb : factor 0.5\n"
      "capacitor C from feed to end : 300 pF\nload ant at end : 50 ohm\nsweep at [7 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const walk::Walk walk = walked(feed);
  REQUIRE_FALSE(walk.to_source.stop);
  CHECK(walk.to_source.steps.back().rule == walk::Rule::coupled);
  CHECK(test::apart(walk.to_source.end, feed.source_impedance()) < 1e-12);
  CHECK(walk::worst(walk::compare(walk, feed.design, feed.ledger, 0)) < 1e-12);
}
