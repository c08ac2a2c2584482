// Takes the figures off what was judged.
#include "baseline/baseline.hpp"

#include <algorithm>

#include "report/moments.hpp"
#include "report/spelling.hpp"

namespace wattfall::baseline {
namespace {

/// "swr at desk", with its range where the requirement has one.
std::string name_of(const design::Requirement& requirement) {
  std::string name = requirement.figure.text;
  if (requirement.over_hz)
    name += " over " + report::spell_frequency(requirement.over_hz->first) + " to " + report::spell_frequency(requirement.over_hz->second);
  return name;
}

void add_once(std::vector<Figure>& figures, Figure figure) {
  const bool known = std::any_of(figures.begin(), figures.end(), [&](const Figure& one) {
    return one.figure == figure.figure && one.less_is_better == figure.less_is_better;
  });
  if (!known) figures.push_back(std::move(figure));
}

Figure worst_of(const std::string& name, const std::string& unit, bool less_is_better, const ledger::Series& series,
                const ledger::Series& frequencies_hz, double tolerance) {
  const std::size_t worst = report::worst_index(series, less_is_better);
  return {name, unit, less_is_better, series[worst], frequencies_hz[worst], tolerance};
}

Variant take_variant(const report::VariantResult& result, double tolerance) {
  Variant variant{result.design->variant, {}, design::quantities_of(*result.design)};
  for (design::Thing& thing : design::things_of(*result.design)) variant.things.push_back(std::move(thing));
  for (const judge::Verdict& verdict : result.judgement.verdicts) {
    const design::Requirement& asked = *verdict.requirement;
    add_once(variant.figures, {name_of(asked), report::unit_of(asked.figure.kind), asked.below, verdict.worst, verdict.worst_at_hz, tolerance,
                               asked.span.line()});
  }
  const ledger::Ledger& books = *result.ledger;
  if (books.frequencies_hz.empty()) return variant;
  add_once(variant.figures, worst_of("efficiency", "share", false, books.totals.efficiency, books.frequencies_hz, tolerance));
  add_once(variant.figures, worst_of("worst SWR", "", true, books.source.swr, books.frequencies_hz, tolerance));
  add_once(variant.figures, worst_of("total loss", "dB", true, books.totals.total_loss_db, books.frequencies_hz, tolerance));
  return variant;
}

}  // namespace

Baseline take(const std::vector<report::VariantResult>& results, double tolerance) {
  Baseline baseline;
  for (const report::VariantResult& result : results) baseline.variants.push_back(take_variant(result, tolerance));
  return baseline;
}

}  // namespace wattfall::baseline
