#include "judge/judge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "grammar/quantity.hpp"
#include "judge/figures.hpp"
#include "models.hpp"
#include "physics/plates.hpp"

namespace wattfall::judge {
namespace {

using design::Design;
using ledger::Ledger;
constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// None where no point lies in its range: only where options put other points in the place of the design's own sweeps.
std::optional<Verdict> judge_requirement(const design::Requirement& requirement, const Design& design, const Ledger& ledger) {
  Verdict verdict{.requirement = &requirement, .met = true, .worst = none};
  const std::vector<double> values = over_sweep(requirement.figure, design, ledger);
  bool any = false;
  for (std::size_t s = 0; s < values.size(); ++s) {
    if (!requirement.asks_at(ledger.frequencies_hz[s])) continue;
    verdict.met &= meets(requirement, values[s]);
    // The worst: one that does not exist, else the farthest on the wrong side.
    const bool worse = !any || (!std::isnan(verdict.worst) &&
                                (std::isnan(values[s]) || (requirement.below ? values[s] > verdict.worst : values[s] < verdict.worst)));
    if (worse) {
      verdict.worst = values[s];
      verdict.worst_at_hz = ledger.frequencies_hz[s];
    }
    any = true;
  }
  return any ? std::optional(verdict) : std::nullopt;
}

Rating rate(design::PartId part, char unit, double limit, const std::vector<double>& series, double factor, const Ledger& ledger) {
  Rating rating{.part = part, .unit = unit, .limit = limit};
  for (std::size_t s = 0; s < series.size(); ++s) {
    if (!(factor * series[s] > rating.worst) && s > 0) continue;
    rating.worst = factor * series[s];
    rating.worst_at_hz = ledger.frequencies_hz[s];
  }
  return rating;
}

/// Volts and amps at the peak of the envelope; watts are averages and shrink with the source's duty.
void rate_part(const Design& design, const Ledger& ledger, design::PartId id, const ledger::Series& volts, const ledger::Series& amps,
               const ledger::Series& watts, std::vector<Rating>& ratings) {
  const design::Limits& limits = design.parts[id.index].limits;
  if (limits.volts_peak) ratings.push_back(rate(id, 'V', *limits.volts_peak, volts, 1.0, ledger));
  if (limits.amps_rms) ratings.push_back(rate(id, 'A', *limits.amps_rms, amps, 1.0, ledger));
  if (limits.watts) ratings.push_back(rate(id, 'W', *limits.watts, watts, design.source.duty, ledger));
}

std::string in_unit(double value, char unit) {
  if (unit == 'M') return spell({value, dimension::power_per_length});
  const Dimension dim = unit == 'V' ? dimension::voltage : unit == 'A' ? dimension::current : dimension::power;
  return spell({value, dim});
}

void warn_of_ratings(const Design& design, Judgement& judgement) {
  for (const Rating& rating : judgement.ratings) {
    if (rating.kept()) continue;
    const std::string& part = design.parts[rating.part.index].name;
    const char* what = rating.unit == 'V' ? "volts" : rating.unit == 'A' ? "amps" : rating.unit == 'W' ? "watts" : "watts-per-metre";
    const bool gap = rating.unit == 'V' && design.parts[rating.part.index].limits.volts_of_air_gap;
    const std::string caution = gap ? std::string(": its gap of air arcs there ") + physics::breakdown_caution : "";
    judgement.warnings.push_back(
        {fmt::format("rating-{}", what),
         fmt::format("{} stands {}{} at {}, above its limit of {}{}", part, in_unit(rating.worst, rating.unit),
                     rating.unit == 'V' ? " peak" : rating.unit == 'A' ? " rms" : " of heat", spell({rating.worst_at_hz, dimension::frequency}),
                     in_unit(rating.limit, rating.unit), caution),
         part, rating.worst_at_hz});
  }
}

/// A gap's figure is the best that it can do: from a third of it on, edges and dust may make it arc.
void warn_of_gaps(const Design& design, Judgement& judgement) {
  for (const Rating& rating : judgement.ratings) {
    const design::Part& part = design.parts[rating.part.index];
    if (rating.unit != 'V' || !part.limits.volts_of_air_gap || !rating.kept() || rating.worst < rating.limit / 3.0) continue;
    judgement.warnings.push_back({"air-gap",
                                  fmt::format("{} stands {} peak at {}; its gap of air arcs at {} {}", part.name, in_unit(rating.worst, 'V'),
                                              spell({rating.worst_at_hz, dimension::frequency}), in_unit(rating.limit, 'V'), physics::breakdown_caution),
                                  part.name, rating.worst_at_hz});
  }
}

void warn_of_trust(const Ledger& ledger, const solve::Solution& solution, Judgement& judgement) {
  std::size_t lost = 0, first = 0;
  double worst = 0.0;
  std::size_t worst_at = 0;
  for (std::size_t s = 0; s < ledger.frequencies_hz.size(); ++s) {
    if (solution.untrusted[s] && lost++ == 0) first = s;
    const double share = std::abs(ledger.totals.residual_w[s]) / ledger.totals.available_w[s];
    if (share > worst || std::isnan(share)) worst = share, worst_at = s;
  }
  if (lost > 0)
    judgement.warnings.push_back({"untrusted",
                                  fmt::format("the network leaves something undetermined at {} of {} points (first at {}): the numbers there "
                                              "cannot be trusted",
                                              lost, ledger.frequencies_hz.size(), spell({ledger.frequencies_hz[first], dimension::frequency}, 7)),
                                  "", ledger.frequencies_hz[first]});
  // language.md's promise about the books: at most 1e-12 of the available power.
  if (!(worst <= 1e-12))
    judgement.warnings.push_back({"residual",
                                  fmt::format("the books leave {:.2g} of the available power unexplained at {}", worst,
                                              spell({ledger.frequencies_hz[worst_at], dimension::frequency}, 7)),
                                  "", ledger.frequencies_hz[worst_at]});
}

/// Only a measured two-port, or a plugin's part, can give power; rounding may make a lossless one seem to, by a hair.
void warn_of_gain(const Design& design, const Ledger& ledger, Judgement& judgement) {
  const auto look = [&](design::PartId id, const ledger::Series& heat) {
    std::size_t worst = 0;
    for (std::size_t s = 1; s < heat.size(); ++s)
      if (heat[s] < heat[worst]) worst = s;
    if (heat.empty() || heat[worst] >= -1e-10 * ledger.totals.available_w[worst]) return;
    const std::string& part = design.parts[id.index].name;
    judgement.warnings.push_back({"gives-power",
                                  fmt::format("{} gives {} at {} instead of taking any: its figures are not those of a passive part", part,
                                              spell({-heat[worst], dimension::power}), spell({ledger.frequencies_hz[worst], dimension::frequency})),
                                  part, ledger.frequencies_hz[worst]});
  };
  for (const ledger::PartBook& part : ledger.parts) look(part.part, part.heat_w);
  for (const ledger::LoadBook& load : ledger.loads) look(load.part, load.absorbed_w);
}

}  // namespace

bool meets(const design::Requirement& requirement, double value) {
  const double slack = 1e-12 * std::abs(requirement.value);
  return requirement.below ? value <= requirement.value + slack : value >= requirement.value - slack;
}

std::vector<Rating> ratings_of(const Design& design, const Ledger& ledger) {
  std::vector<Rating> ratings;
  for (const ledger::PartBook& part : ledger.parts) {
    const bool line = !part.volts_peak_along.empty();
    const auto& per_m = design.parts[part.part.index].limits.watts_per_m;
    if (line && per_m) ratings.push_back(rate(part.part, 'M', *per_m, part.heat_w_per_m, design.source.duty, ledger));
    rate_part(design, ledger, part.part, line ? part.volts_peak_along : part.volts_peak,
              line ? part.amps_rms_along : part.amps_rms, part.heat_w, ratings);
  }
  for (const ledger::LoadBook& load : ledger.loads)
    rate_part(design, ledger, load.part, load.volts_peak, load.amps_rms, load.heat_w, ratings);
  std::stable_sort(ratings.begin(), ratings.end(),
                   [](const Rating& a, const Rating& b) { return a.worst / a.limit > b.worst / b.limit; });
  return ratings;
}

Judgement judge(const Design& design, const Ledger& ledger, const solve::Solution& solution) {
  Judgement judgement;
  for (const design::Requirement& requirement : design.requirements)
    if (auto verdict = judge_requirement(requirement, design, ledger))
      judgement.verdicts.push_back(*verdict);
    else
      judgement.warnings.push_back({"not-judged",
                                    "not judged, since no point of this run lies in its range: " + requirement.text, "",
                                    std::nullopt});
  judgement.ratings = ratings_of(design, ledger);
  warn_of_ratings(design, judgement);
  warn_of_gaps(design, judgement);
  warn_of_gain(design, ledger, judgement);
  warn_of_models(design, ledger, judgement.warnings);
  warn_of_trust(ledger, solution, judgement);
  return judgement;
}

}  // namespace wattfall::judge
