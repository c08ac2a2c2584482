// Every answer of the fast path, and of the robust form, held against the plain dense tableau in 80-bit numbers.
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "../../engine/solve/dense_factors.hpp"
#include "../../engine/solve/tableau.hpp"
#include "feed.hpp"
#include "random_feed.hpp"

namespace wattfall::solve {

template <>
std::unique_ptr<Factors<long double>> factorize(int size, const std::vector<Term<long double>>& terms) {
  return std::make_unique<DenseFactors<long double>>(size, terms);
}

}  // namespace wattfall::solve

using namespace wattfall;
using test::Choices;
using test::Feed;
using test::random_feed;

namespace {

/// The largest difference of any element's heat, and of the returned power, as a share of the available power.
double worst_difference(const Feed& feed, std::size_t s) {
  const double hertz = feed.solution.states.frequencies_hz[s];
  std::vector<solve::ElementValue> values;
  for (const graph::Element& element : feed.network.elements)
    values.push_back(solve::element_value(feed.design, element, hertz, feed.solution.states.knobs_at(s)));
  const solve::Tableau<long double> tableau(feed.network, values, 50.0);
  const solve::StateFlows reference = tableau.solve(2.0 * std::sqrt(100.0 * 50.0));
  double worst = 0.0;
  for (std::size_t e = 0; e < feed.network.elements.size(); ++e) {
    const solve::Flow& flow = feed.solution.flows[e];
    const double heat2 = flow.heat2_w.empty() ? 0.0 : flow.heat2_w[s];
    worst = std::max(worst, std::abs(flow.heat1_w[s] + heat2 - reference.elements[e].heat1 - reference.elements[e].heat2));
  }
  const std::complex<double> volts = reference.volts[feed.network.source_node] - reference.volts[feed.network.source_other];
  const double returned = std::norm(volts - 50.0 * reference.source_amps) / 200.0;
  worst = std::max(worst, std::abs(returned - feed.ledger.source.returned_w[s]));
  return worst / 100.0;
}

double worst_of_all(const Choices& choices, solve::Method method) {
  double worst = 0.0;
  for (unsigned seed = 0; seed < LAW_SEEDS; ++seed) {
    const Feed feed(random_feed(seed, choices).text(), method);
    REQUIRE(feed.diagnostics.empty());
    for (std::size_t s = 0; s < feed.solution.states.size(); ++s) {
      const double difference = worst_difference(feed, s);
      if (difference > worst) worst = difference;
      if (difference > (choices.lossless ? 1e-9 : 1e-12)) {
        UNSCOPED_INFO("seed " << seed << ", state " << s << ", guard " << static_cast<int>(feed.solution.guards[s]) << ": " << difference);
        UNSCOPED_INFO(random_feed(seed, choices).text());
      }
    }
  }
  return worst;
}

}  // namespace

TEST_CASE("the fast path agrees with the dense reference to 1e-12 of the source's power on lossy networks") {
  for (const Choices& choices : {Choices{false, false}, Choices{false, true}}) {
    const double worst = worst_of_all(choices, solve::Method::guarded);
    std::cout << "lossy" << (choices.awkward ? ", awkward" : "") << ": fast path within " << worst << " of the reference\n";
    CHECK(worst <= 1e-12);
  }
}

TEST_CASE("the fast path agrees with the dense reference to 1e-9 of the source's power on lossless networks") {
  for (const Choices& choices : {Choices{true, false}, Choices{true, true}}) {
    const double worst = worst_of_all(choices, solve::Method::guarded);
    std::cout << "lossless" << (choices.awkward ? ", awkward" : "") << ": fast path within " << worst << " of the reference\n";
    CHECK(worst <= 1e-9);
  }
}

TEST_CASE("the robust form alone agrees with the dense reference in wider numbers") {
  const double worst = worst_of_all({false, true}, solve::Method::robust);
  std::cout << "lossy, awkward: robust form within " << worst << " of the reference\n";
  CHECK(worst <= 1e-12);
}
