#include "engine/walk_through.hpp"

#include <algorithm>
#include <deque>

#include "graph/build_graph.hpp"
#include "ledger/book.hpp"
#include "plan/make_plan.hpp"
#include "report/walk_document.hpp"
#include "solve/solve.hpp"
#include "walk/walk.hpp"

namespace wattfall {
namespace {

/// What the results of a walk point into. Deques: nothing moves.
struct Kept {
  std::deque<graph::Network> networks;
  std::deque<ledger::Ledger> ledgers;
};

/// The places to compare at: the design's planes, and every load's own terminal.
std::vector<design::Look> looks_of(const design::Design& design) {
  std::vector<design::Look> looks;
  for (const design::Plane& plane : design.planes) looks.push_back(plane.look);
  for (std::size_t p = 0; p < design.parts.size(); ++p)
    if (design::is_load(design.parts[p])) looks.push_back({design.parts[p].terminals[0], design::PartId{static_cast<int>(p)}});
  return looks;
}

report::WalkResult walk_at(const report::VariantResult& variant, const graph::Network& network, std::size_t point, Kept& kept) {
  const design::Design& design = *variant.design;
  report::WalkResult result{.variant = &variant, .network = &network, .knobs = variant.knobs_at(point), .walk = {}, .checks = {}};
  solve::States state;
  state.knob_count = result.knobs.size();
  state.add(design.frequencies_hz[point], result.knobs);
  const std::vector<design::Look> looks = looks_of(design);
  const solve::Solution solution = solve::solve(design, network, plan::make_plan(network), state, looks);
  result.ledger = &kept.ledgers.emplace_back(ledger::book(design, network, solution, looks));
  result.walk = walk::take_walk(design, network, design.frequencies_hz[point], result.knobs, walk::choose_load(*result.ledger, 0));
  walk::take_powers_from_books(result.walk, design, *result.ledger, 0);
  result.checks = walk::compare(result.walk, design, *result.ledger, 0);
  return result;
}

/// Where `--at` asked for frequencies each of them, else the middle one.
std::vector<std::size_t> points_of(const design::Design& design, bool asked) {
  std::vector<std::size_t> points;
  for (std::size_t point = 0; asked && point < design.frequencies_hz.size(); ++point) points.push_back(point);
  if (points.empty()) points.push_back((design.frequencies_hz.size() - 1) / 2);
  return points;
}

bool has_load(const design::Design& design) {
  return std::any_of(design.parts.begin(), design.parts.end(), [](const design::Part& part) { return design::is_load(part); });
}

Diagnostic no_load(const design::Design& design) {
  return {.code = "no-load",
          .span = design.source.span,
          .text = "the design has no load, so there is nothing to walk from and to",
          .expected = "a load, such as `load ant at feed : 50 ohm`",
          .hint = {}};
}

}  // namespace

Outcome walk_through(const SourcePtr& text, const host::Registry& registry, const RunOptions& options) {
  Study found = study(text, registry, options);
  Outcome outcome;
  outcome.sources = std::move(found.sources);
  outcome.diagnostics = std::move(found.diagnostics);
  if (!outcome.diagnostics.empty()) return outcome;
  for (const report::VariantResult& variant : found.results)
    if (!has_load(*variant.design)) outcome.diagnostics.push_back(no_load(*variant.design));
  if (!outcome.diagnostics.empty()) return outcome;
  using Chosen = report::WalkResult::Chosen;
  const bool asked = !options.resolve.at.empty();
  Kept kept;
  std::vector<report::WalkResult> walks;
  for (const report::VariantResult& variant : found.results) {
    // The study has built it without complaint.
    const graph::Network& network = kept.networks.emplace_back(std::move(*graph::build_graph(*variant.design).value));
    for (std::size_t point : points_of(*variant.design, asked)) {
      walks.push_back(walk_at(variant, network, point, kept));
      walks.back().chosen = asked ? Chosen::asked : variant.design->frequencies_hz.size() == 1 ? Chosen::only : Chosen::middle;
    }
  }
  outcome.document = report::make_walk_document(registry, found.results, walks, found.set_aside);
  return outcome;
}

}  // namespace wattfall
