#include "engine/weigh_up.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "graph/build_graph.hpp"
#include "judge/figures.hpp"
#include "report/weigh_document.hpp"
#include "weigh/weigh.hpp"

namespace wattfall {
namespace {

using design::FigureKind;

bool more_is_better(FigureKind kind) {
  switch (kind) {
    case FigureKind::efficiency:
    case FigureKind::return_loss_at:
    case FigureKind::power_into:
    case FigureKind::radiated_from: return true;
    default: return false;
  }
}

/// Where the figure is worst over the sweep; the first point where it exists nowhere.
std::size_t worst_point(const design::Figure& figure, const design::Design& design, const ledger::Ledger& ledger) {
  const std::vector<double> values = judge::over_sweep(figure, design, ledger);
  std::size_t worst = 0;
  for (std::size_t s = 1; s < values.size(); ++s) {
    const bool worse = more_is_better(figure.kind) ? values[s] < values[worst] : values[s] > values[worst];
    if (std::isnan(values[worst]) ? !std::isnan(values[s]) : worse) worst = s;
  }
  return worst;
}

std::size_t point_at(const design::Design& design, double hertz) {
  const auto& points = design.frequencies_hz;
  const auto found = std::find(points.begin(), points.end(), hertz);
  return found == points.end() ? 0 : static_cast<std::size_t>(found - points.begin());
}

class Scales {
 public:
  explicit Scales(const report::VariantResult& variant)
      : variant_(variant), design_(*variant.design), network_(std::move(*graph::build_graph(design_).value)) {}

  report::WeighResult weigh_all() {
    report::WeighResult result{.variant = &variant_, .figures = {}};
    for (const judge::Verdict& verdict : variant_.judgement.verdicts)
      result.figures.push_back(weigh_at(verdict.requirement->figure, verdict.requirement, point_at(design_, verdict.worst_at_hz)));
    for (const design::Figure& figure : design_.figures) result.figures.push_back(weigh_at(figure, nullptr, worst_point(figure, design_, *variant_.ledger)));
    return result;
  }

 private:
  report::WeighedFigure weigh_at(const design::Figure& figure, const design::Requirement* requirement, std::size_t point) {
    const double hertz = design_.frequencies_hz[point];
    weigh::Point& here = points_.try_emplace(point, design_, network_, hertz, variant_.knobs_at(point)).first->second;
    return {.figure = &figure, .requirement = requirement, .frequency_hz = hertz, .weighing = here.weigh(figure)};
  }

  const report::VariantResult& variant_;
  const design::Design& design_;
  graph::Network network_;  ///< the study has built it without complaint
  std::map<std::size_t, weigh::Point> points_;  ///< by point of the sweep: figures that are worst at one share it
};

Diagnostic nothing_to_weigh(const design::Design& design) {
  return {.code = "nothing-to-weigh",
          .span = {},
          .text = "`" + design.file + "` requires nothing, and no figure was asked for",
          .expected = "a `require` in the design, or a figure on the command line: --figure \"heat in coax\"",
          .hint = {},
          .fault = Fault::usage};
}

}  // namespace

Outcome weigh_up(const SourcePtr& text, const host::Registry& registry, const RunOptions& options) {
  Study found = study(text, registry, options);
  Outcome outcome;
  outcome.sources = std::move(found.sources);
  outcome.diagnostics = std::move(found.diagnostics);
  if (!outcome.diagnostics.empty()) return outcome;
  std::vector<report::WeighResult> weighed;
  bool any = false;
  for (const report::VariantResult& variant : found.results) {
    weighed.push_back(Scales(variant).weigh_all());
    any |= !weighed.back().figures.empty();
  }
  if (!any) {
    outcome.diagnostics.push_back(nothing_to_weigh(*found.results.front().design));
    return outcome;
  }
  outcome.document = report::make_weigh_document(registry, found.results, weighed, found.set_aside);
  return outcome;
}

}  // namespace wattfall
