// Laws that hold for every network whatever its parts: the books close, passive parts give nothing, names and order mean nothing, and what passes one way
// passes the other.
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>
#include <map>

#include "feed.hpp"
#include "random_feed.hpp"

using namespace wattfall;
using test::Choices;
using test::Feed;
using test::random_feed;

namespace {

const std::vector<Choices> all_choices = {{false, false}, {false, true}, {true, false}, {true, true}};

std::string describe(const Choices& choices, unsigned seed) {
  return std::string(choices.lossless ? "lossless" : "lossy") + (choices.awkward ? ", awkward" : "") + ", seed " + std::to_string(seed);
}

/// Every power of a state, in the order of the names of the parts.
std::map<std::string, double> powers(const Feed& feed, std::size_t state) {
  std::map<std::string, double> all{{" returned", feed.ledger.source.returned_w[state]}};
  for (const auto& part : feed.ledger.parts) all[feed.design.parts[part.part.index].name] = part.heat_w[state];
  for (const auto& load : feed.ledger.loads) all[feed.design.parts[load.part.index].name] = load.absorbed_w[state];
  return all;
}

}  // namespace

TEST_CASE("the books close to 1e-12 of the available power on every network, and no passive part gives power") {
  for (const Choices& choices : all_choices) {
    double worst = 0.0;
    std::size_t robust = 0, states = 0;
    for (unsigned seed = 0; seed < LAW_SEEDS; ++seed) {
      INFO(describe(choices, seed));
      const Feed feed(random_feed(seed, choices).text());
      for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
      REQUIRE(feed.diagnostics.empty());
      robust += feed.solution.robust_count();
      states += feed.solution.states.size();
      for (std::size_t s = 0; s < feed.solution.states.size(); ++s) {
        const double residual = std::abs(feed.ledger.totals.residual_w[s]) / 100.0;
        CHECK(residual <= 1e-12);
        worst = std::max(worst, residual);
        for (const auto& [name, watts] : powers(feed, s)) {
          INFO(name);
          CHECK(watts >= -1e-12 * 100.0);
        }
      }
    }
    std::cout << "books, " << describe(choices, LAW_SEEDS - 1) << ": worst residual " << worst << ", robust form in " << robust << " of "
              << states << " states\n";
  }
}

TEST_CASE("renaming the nodes and reordering the parts changes nothing") {
  for (unsigned seed = 0; seed < LAW_SEEDS / 4; ++seed) {
    INFO("seed " << seed);
    const test::RandomFeed random = random_feed(seed, {false, false});
    const Feed one(random.text()), other(random.shuffled_and_renamed(seed));
    REQUIRE(other.diagnostics.empty());
    for (std::size_t s = 0; s < one.solution.states.size(); ++s) {
      const auto a = powers(one, s), b = powers(other, s);
      REQUIRE(a.size() == b.size());
      for (const auto& [name, watts] : a) {
        INFO(name);
        CHECK(std::abs(b.at(name) - watts) <= 1e-12 * 100.0);
      }
    }
  }
}

TEST_CASE("what passes from the rig to the antenna passes from the antenna to the rig") {
  // Swap source and load: same impedances, so the share of the available power that arrives is the same (reciprocity; every kind here is reciprocal).
  for (unsigned seed = 0; seed < LAW_SEEDS / 4; ++seed) {
    INFO("seed " << seed);
    test::RandomFeed random = random_feed(seed, {false, true});
    const Feed send(random.text());
    for (std::string& statement : random.statements) {
      if (statement.starts_with("source")) statement = "load rig at @desk : 50 ohm";
      else if (statement.starts_with("load")) statement = "source ant at @feed : 100 W," + statement.substr(statement.find(':') + 1);
    }
    const Feed receive(random.text());
    REQUIRE(send.diagnostics.empty());
    REQUIRE(receive.diagnostics.empty());
    for (std::size_t s = 0; s < send.solution.states.size(); ++s)
      CHECK(std::abs(receive.load("rig").absorbed_w[s] - send.load("ant").absorbed_w[s]) <= 1e-12 * 100.0);
  }
}
