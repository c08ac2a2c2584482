// The adjoint's derivatives against differences of whole solutions: every value of random networks and of the examples, in every figure, moved a little
// each way and everything solved again. Nothing is shared but the figure's definition and the way a value is changed.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "../laws/random_feed.hpp"
#include "feed.hpp"
#include "values.hpp"
#include "weigh/weigh.hpp"

using namespace wattfall;

namespace {

/// Solved again with one value so many parts in a million larger.
double figure_again(const test::Feed& feed, const design::Figure& figure, double hertz, const weigh::Adjustable& value, double factor) {
  design::Design moved = feed.design;
  std::vector<double> knobs = moved.starting_knobs();
  value.scale(moved, knobs, factor);
  moved.frequencies_hz = {hertz};
  solve::States state;
  state.knob_count = knobs.size();
  state.add(hertz, knobs);
  const graph::Network network = std::move(*graph::build_graph(moved).value);
  const auto looks = judge::looks_of(moved);
  const solve::Solution solution = solve::solve(moved, network, plan::make_plan(network), state, looks, solve::Method::robust);
  return judge::figure_in_state(figure, moved, ledger::book(moved, network, solution, looks), 0);
}

/// By Richardson's extrapolation of central differences, which the room itself does not use.
double slope_again(const test::Feed& feed, const design::Figure& figure, double hertz, const weigh::Adjustable& value, double widest) {
  double rows[4];
  for (int i = 0; i < 4; ++i) {
    const double step = widest / std::pow(2.0, i);
    rows[i] = (figure_again(feed, figure, hertz, value, 1.0 + step) - figure_again(feed, figure, hertz, value, 1.0 - step)) / (2.0 * step);
  }
  for (int order = 1; order < 4; ++order)
    for (int i = 3; i >= order; --i) rows[i] += (rows[i] - rows[i - 1]) / (std::pow(4.0, order) - 1.0);
  return rows[3];
}

struct Tally {
  std::map<design::FigureKind, std::size_t> compared;
  std::size_t left_out = 0;
  double worst = 0.0;
  std::string where;
};

/// All of a figure's weights, each within 1e-8 of the strongest.
void compare(const test::Feed& feed, const design::Figure& figure, double hertz, Tally& tally) {
  const std::vector<double> knobs = feed.design.starting_knobs();
  const weigh::Weighing weighing = weigh::weigh(feed.design, feed.network, figure, hertz, knobs);
  if (!std::isfinite(weighing.figure) || weighing.weights.empty()) return;
  // An SWR of a thousand has lost the digits that solving again would need.
  const bool is_swr = figure.kind == design::FigureKind::swr_at || figure.kind == design::FigureKind::swr_on;
  if (is_swr && weighing.figure > 1000.0) return;
  const double strongest = std::max(std::abs(100.0 * weighing.weights.front().per_percent), 1e-3 * std::abs(weighing.figure));
  for (const weigh::Adjustable& value : weigh::values_of(feed.design, hertz, knobs)) {
    const auto found = std::find_if(weighing.weights.begin(), weighing.weights.end(), [&](const weigh::Weight& w) { return w.name == value.name; });
    REQUIRE(found != weighing.weights.end());
    const double again = slope_again(feed, figure, hertz, value, 8e-4), closer = slope_again(feed, figure, hertz, value, 5e-4);
    // Where two widths disagree the figure has a corner between them, or is at the edge of where it exists: there is no slope to compare with.
    if (!(std::abs(again - closer) < 3e-9 * strongest)) {
      ++tally.left_out;
      continue;
    }
    const double error = std::abs(100.0 * found->per_percent - again) / strongest;
    if (error > tally.worst) tally.worst = error, tally.where = figure.text + " by " + value.name;
    ++tally.compared[figure.kind];
  }
}

/// A figure of every kind that the design can have.
std::string figures_for(const test::Feed& feed) {
  std::string text = "require efficiency above 0 %\nrequire total loss below 99 dB\nrequire swr at " + feed.design.nodes[static_cast<std::size_t>(feed.design.source.node.index)].name +
                     " below 99\n";
  for (const char* figure : {"return loss", "resistance", "reactance", "mismatch"})
    text += std::string("require ") + figure + " at " + feed.design.nodes[static_cast<std::size_t>(feed.design.source.node.index)].name + " below 99" +
            (std::string(figure) == "return loss" || std::string(figure) == "mismatch" ? " dB\n" : " ohm\n");
  for (const design::Part& part : feed.design.parts) {
    text += "require heat in " + part.name + " below 99 W\nrequire peak volts across " + part.name + " below 9 kV\nrequire rms amps through " + part.name + " below 99 A\n";
    if (std::holds_alternative<design::Line>(part.model))
      text += "require peak volts on " + part.name + " below 9 kV\nrequire rms amps on " + part.name + " below 99 A\nrequire swr on " + part.name + " below 99\n";
  }
  return text;
}

}  // namespace

TEST_CASE("the adjoint's slopes are those of solving again, on random networks") {
  Tally tally;
  for (unsigned seed = 1; seed <= WEIGH_SEEDS; ++seed) {
    const std::string text = test::random_feed(seed, {}).text();
    const test::Feed plain(text);
    REQUIRE(plain.diagnostics.empty());
    const test::Feed feed(text + figures_for(plain));
    CAPTURE(seed);
    for (const Diagnostic& diagnostic : feed.diagnostics) FAIL_CHECK(diagnostic.text);
    if (!feed.diagnostics.empty()) continue;
    // One figure of each network in turn keeps the time in bounds, and all kinds come up.
    const auto& all = feed.design.requirements;
    for (std::size_t i = seed % 7; i < all.size(); i += 7) compare(feed, all[i].figure, feed.design.frequencies_hz[seed % feed.design.frequencies_hz.size()], tally);
  }
  INFO("worst: " << tally.where);
  CHECK(tally.worst < 1e-8);
  std::size_t compared = 0;
  for (const auto& [kind, count] : tally.compared) compared += count;
  WARN("weights compared: " << compared << " in " << tally.compared.size() << " kinds of figures; worst " << tally.worst << " of the strongest (" << tally.where << "); " << tally.left_out << " without a slope");
  CHECK(10 * tally.left_out < compared);
  CHECK(tally.compared.size() >= WEIGH_KINDS);
}
