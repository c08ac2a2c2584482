#include "best_possible.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <variant>

#include "grammar/quantity.hpp"
#include "ledger/book.hpp"
#include "ledger/swr.hpp"
#include "solve/solve.hpp"
#include "source_side.hpp"
#include "study.hpp"
#include "tune/limit.hpp"
#include "varies.hpp"

namespace wattfall::tune {
namespace {

/// Nothing where the limit is as good as a match.
std::string least_swr_text(double swr) {
  if (swr < 1.0005) return "";
  return fmt::format(", nor, losing nothing, an SWR below {:.{}g}", swr, swr < 1.05 ? 4 : 3);
}

/// Takes the loss from a coil or capacitor; false where it lies in its size or core.
bool make_ideal(design::Part& part, bool& changed) {
  const bool lossy_before = changed;
  if (auto* coil = std::get_if<design::Inductor>(&part.model)) {
    if (coil->wound != nullptr || coil->core != nullptr) return false;
    changed = lossy_before || coil->loss.form != design::SeriesLoss::Form::none;
    coil->loss = {};
  } else if (auto* capacitor = std::get_if<design::Capacitor>(&part.model)) {
    changed = lossy_before || capacitor->loss.form != design::SeriesLoss::Form::none || capacitor->tangent;
    capacitor->loss = {};
    capacitor->tangent.reset();
  }
  return true;
}

std::optional<Limit> with_ideal_parts(const Problem& problem, const Match& taken, const sdk::Optimizer& optimizer) {
  design::Design ideal = problem.design;
  bool changed = false;
  for (design::Part& part : ideal.parts)
    for (design::KnobId knob : problem.statement.knobs)
      if (varies_with(part, knob) && !make_ideal(part, changed)) return std::nullopt;
  if (!changed) return std::nullopt;
  const Problem again{ideal,          problem.network, problem.plan,   problem.statement, problem.frequencies_hz,
                      problem.others, {taken.values},  problem.also_hz};
  const Found best = search(again, optimizer);
  if (!best.found || !best.keeping) return std::nullopt;
  const double load_w = load_w_at(again, best.setting);
  return Limit{
      "ideal parts", load_w, std::numeric_limits<double>::quiet_NaN(),
      fmt::format("with coils and capacitors that lose nothing, in the same ranges, {} would reach the load: {} more",
                  spell({load_w, dimension::power}, 4),
                  spell({std::max(0.0, load_w - taken.load_w), dimension::power}, 3))};
}

/// The parts that the knobs move, if each is one branch.
std::optional<std::vector<int>> moved_branches(const Problem& problem) {
  std::vector<int> branches;
  for (design::KnobId knob : problem.statement.knobs) {
    for (const design::Coupling& coupling : problem.design.couplings)
      if (coupling.factor.depends_on(knob)) return std::nullopt;
    const design::Source& source = problem.design.source;
    if (source.available_w.depends_on(knob) || source.impedance_ohm.depends_on(knob)) return std::nullopt;
    for (std::size_t p = 0; p < problem.design.parts.size(); ++p) {
      if (!varies_with(problem.design.parts[p], knob)) continue;
      const auto elements = problem.network.elements_of(design::PartId{static_cast<int>(p)});
      if (design::is_load(problem.design.parts[p]) || elements.size() != 1) return std::nullopt;
      if (problem.network.elements[elements.front()].form != graph::Element::Form::branch) return std::nullopt;
      if (std::find(branches.begin(), branches.end(), elements.front()) == branches.end()) branches.push_back(elements.front());
    }
  }
  return branches;
}

/// The conjugate match, or what the rest of the network leaves of it.
std::optional<Limit> with_any_parts(const Problem& problem) {
  const auto branches = moved_branches(problem);
  if (!branches || branches->empty()) return std::nullopt;
  std::vector<int> loads;
  std::string load_names;
  for (std::size_t p = 0; p < problem.design.parts.size(); ++p) {
    if (!design::is_load(problem.design.parts[p])) continue;
    loads.push_back(problem.network.elements_of(design::PartId{static_cast<int>(p)}).front());
    load_names = loads.size() == 1 ? problem.design.parts[p].name : "the loads";
  }
  double load_w = std::numeric_limits<double>::infinity(), available_w = load_w;
  for (double hertz : problem.frequencies_hz) {
    const solve::Collapsed collapsed(problem.design, problem.network, hertz, problem.others, *branches, loads);
    if (!collapsed.sound()) return std::nullopt;
    const double share = most_left(problem.design.source), all_w = collapsed.available_w() * share;
    double most_w = 0.0;
    for (std::size_t w = 0; w < loads.size(); ++w) {
      const auto one_w = most_with_passive_parts(collapsed.ports(), w);
      if (!one_w) return std::nullopt;
      most_w += *one_w * share;
    }
    load_w = std::min({load_w, most_w, all_w});
    available_w = std::min(available_w, all_w);
  }
  const bool all = load_w >= available_w * (1.0 - 1e-6);
  if (all) load_w = available_w;
  const std::string watts = spell({load_w, dimension::power}, 4);
  return Limit{"any parts", load_w, std::numeric_limits<double>::quiet_NaN(),
               all ? fmt::format("no tuner brings more than the conjugate match, {} into {}: all that the rig gives", watts, load_names)
                   : fmt::format("no tuner in this place, however it is made, brings more than {} into {}: at least {} is lost beside it or comes back", watts,
                                 load_names, spell({available_w - load_w, dimension::power}, 3))};
}

std::string load_text(const ReactiveLoad& load) {
  std::string text = spell({load.ohms, dimension::resistance}, 3);
  const char* joined = load.series ? " in series with " : " beside ";
  if (load.henries > 0.0) text += joined + spell({load.henries, dimension::inductance}, 3);
  if (load.farads > 0.0) text += (load.henries > 0.0 ? " and " : joined) + spell({load.farads, dimension::capacitance}, 3);
  return text;
}

std::optional<Limit> over_the_band(const Problem& problem) {
  if (problem.statement.when != design::Tune::When::over || problem.frequencies_hz.size() < 2) return std::nullopt;
  const double lower = problem.frequencies_hz.front(), upper = problem.frequencies_hz.back();
  constexpr std::size_t samples = 9;
  solve::States states;
  states.knob_count = problem.others.size();
  for (std::size_t i = 0; i < samples; ++i) states.add(lower + (upper - lower) * double(i) / double(samples - 1), problem.others);
  const ledger::Ledger books =
      ledger::book(problem.design, problem.network, solve::solve(problem.design, problem.network, problem.plan, states), {});
  if (books.loads.size() != 1) return std::nullopt;
  for (design::KnobId knob : problem.statement.knobs)
    if (varies_with(problem.design.parts[books.loads[0].part.index], knob)) return std::nullopt;
  const auto load = reactive_load(states.frequencies_hz, books.loads[0].impedance_ohm);
  if (!load) return std::nullopt;
  const double reflection = least_reflection(*load, lower, upper);
  double available = std::numeric_limits<double>::infinity();
  for (double hertz : problem.frequencies_hz) available = std::min(available, problem.design.source.available_w.real_at(hertz, problem.others));
  const double load_w = available * (1.0 - reflection * reflection);
  return Limit{
      "bode-fano", load_w, reflection,
      fmt::format(
          "over this band {} is {}; no network whatever gets more than {} into it at the worst point{} (Bode, Fano)",
          problem.design.parts[books.loads[0].part.index].name, load_text(*load), spell({load_w, dimension::power}, 4),
          least_swr_text((1.0 + reflection) / (1.0 - reflection)))};
}

}  // namespace

std::vector<Limit> limits_of(const Problem& problem, const Match& taken, const sdk::Optimizer& optimizer) {
  std::vector<Limit> limits;
  if (auto limit = with_ideal_parts(problem, taken, optimizer)) limits.push_back(std::move(*limit));
  if (auto limit = with_any_parts(problem)) limits.push_back(std::move(*limit));
  if (auto limit = over_the_band(problem)) limits.push_back(std::move(*limit));
  return limits;
}

}  // namespace wattfall::tune
