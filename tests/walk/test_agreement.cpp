// The walk and the solver share no step: each is held against the other on thousands of random networks.
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "../laws/random_feed.hpp"
#include "random_tree.hpp"
#include "walked.hpp"

using namespace wattfall;
using test::apart;
using test::Feed;
using test::walked;

namespace {

/// The largest differences met, and how many walks there were.
struct Tally {
  double source = 0.0, load = 0.0, power = 0.0;
  std::size_t walks = 0, stopped = 0;
};

/// What the load sees, by the solver: the source's impedance sent back is not asked of it here where neither conductor is ground, so the share of the power
/// that arrives stands in for it.
void compare(const Feed& feed, std::size_t state, Tally& tally, bool must_come_through) {
  const walk::Walk walk = walked(feed, state);
  ++tally.walks;
  if (must_come_through) {
    REQUIRE_FALSE(walk.to_source.stop);
    REQUIRE_FALSE(walk.to_load.stop);
  }
  CHECK(walk.to_source.stop.has_value() == walk.to_load.stop.has_value());
  if (walk.to_source.stop || walk.to_load.stop) {
    ++tally.stopped;
    return;
  }
  if (feed.solution.untrusted[state] != 0) return;
  tally.source = std::max(tally.source, apart(walk.to_source.end, feed.ledger.source.load_impedance_ohm[state]));
  for (const walk::Check& check : walk::compare(walk, feed.design, feed.ledger, state))
    if (check.what == walk::Check::What::power) tally.power = std::max(tally.power, check.relative);
  // What arrives is what is available less the mismatch and the heat: seen from the load's side too, for a matched pair of looks.
  const auto& book = feed.ledger.loads.front();
  tally.power = std::max(tally.power, std::abs(walk.part_w[book.part.index] - book.absorbed_w[state]) / 100.0);
}

void report(const char* what, const Tally& tally) {
  std::cout << "walk, " << what << ": " << tally.walks << " walks, " << tally.stopped << " stopped; apart by at most " << tally.source << " in reflection, "
            << tally.power << " of the power\n";
}

}  // namespace

TEST_CASE("every network made by series and parallel joints reduces, and agrees with the solver") {
  for (const bool lossless : {false, true}) {
    Tally tally;
    for (unsigned seed = 0; seed < WALK_SEEDS; ++seed) {
      const std::string text = test::random_tree(seed, lossless);
      INFO(text);
      const Feed feed(text);
      for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
      REQUIRE(feed.diagnostics.empty());
      for (std::size_t s = 0; s < feed.solution.states.size(); ++s) compare(feed, s, tally, true);
    }
    report(lossless ? "trees without loss" : "trees", tally);
    CHECK(tally.source <= (lossless ? 1e-7 : 1e-9));
    CHECK(tally.power <= (lossless ? 1e-7 : 1e-9));
  }
}

TEST_CASE("ladders of every kind of part agree with the solver wherever they reduce") {
  const std::vector<test::Choices> all = {{false, false}, {false, true}, {true, false}, {true, true}};
  for (const test::Choices& choices : all) {
    Tally tally;
    for (unsigned seed = 0; seed < WALK_SEEDS / 2; ++seed) {
      INFO("seed " << seed << (choices.lossless ? ", lossless" : "") << (choices.awkward ? ", awkward" : ""));
      const test::RandomFeed random = test::random_feed(seed, choices);
      const Feed feed(random.text());
      REQUIRE(feed.diagnostics.empty());
      // Only a part that goes round others, or coils coupled across the ladder, can keep one from reducing.
      bool plain = true;
      for (const std::string& statement : random.statements)
        plain &= !statement.starts_with("coupling") && !(statement.starts_with("capacitor") && statement.find("from @desk") != std::string::npos);
      for (std::size_t s = 0; s < feed.solution.states.size(); ++s) compare(feed, s, tally, plain);
    }
    report((std::string(choices.lossless ? "ladders without loss" : "ladders") + (choices.awkward ? ", awkward" : "")).c_str(), tally);
    CHECK(3 * (tally.walks - tally.stopped) > tally.walks);  // a third at least goes all the way
    CHECK(tally.source <= (choices.lossless ? 1e-6 : 1e-9));
    CHECK(tally.power <= (choices.lossless ? 1e-6 : 1e-9));
  }
}

TEST_CASE("renaming and reordering change nothing that a walk finds") {
  for (unsigned seed = 0; seed < WALK_SEEDS / 10; ++seed) {
    INFO("seed " << seed);
    const test::RandomFeed random = test::random_feed(seed, {false, false});
    const walk::Walk one = walked(Feed(random.text())), other = walked(Feed(random.shuffled_and_renamed(seed)));
    REQUIRE(one.to_source.stop.has_value() == other.to_source.stop.has_value());
    if (one.to_source.stop) continue;
    CHECK(std::abs(*one.to_source.end - *other.to_source.end) <= 1e-9 * std::abs(*one.to_source.end));
    CHECK(std::abs(*one.to_load.end - *other.to_load.end) <= 1e-9 * std::abs(*one.to_load.end));
  }
}

TEST_CASE("where nothing is lost, a conjugate match at one plane is one at all, and the mismatch is the same both ways") {
  // A lossless two-port passes the same share seen from either end (a theorem of every textbook; from memory: Everitt, 1932).
  for (unsigned seed = 0; seed < WALK_SEEDS / 10; ++seed) {
    INFO("seed " << seed);
    const walk::Walk walk = walked(Feed(test::random_feed(seed, {true, false}).text()));
    if (walk.to_source.stop) continue;
    const double at_source = walk.planes.front().mismatch_db, at_load = walk.planes.back().mismatch_db;
    if (std::isnan(at_source) || at_source > 60.0) continue;  // nothing but rounding passes
    CHECK(at_load == Approx(at_source).epsilon(1e-5).margin(1e-9));
  }
}
