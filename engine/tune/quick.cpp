#include "quick.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "judge/figures.hpp"
#include "ledger/book.hpp"
#include "ledger/swr.hpp"
#include "solve/solve.hpp"
#include "varies.hpp"

namespace wattfall::tune {
namespace {

using design::FigureKind;
using graph::Element;
constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// Beyond this a dense solution of the rest costs more than it saves.
constexpr std::size_t most_elements = 300;

/// Combinations of switches, each of which costs a dense solution a frequency.
constexpr std::size_t most_cases = 64;

bool is_branch_part(const design::Part& part) {
  return std::holds_alternative<design::Inductor>(part.model) || std::holds_alternative<design::Capacitor>(part.model) ||
         std::holds_alternative<design::Resistor>(part.model);
}

}  // namespace

std::unique_ptr<Quick> Quick::make(const Problem& problem) {
  std::unique_ptr<Quick> quick(new Quick(problem));
  if (problem.network.elements.size() > most_elements) return nullptr;
  if (!quick->find_switches() || !quick->find_active() || !quick->find_watched() || !quick->suits(problem.statement.goal)) return nullptr;
  for (const design::Requirement& requirement : problem.statement.keeping)
    if (!quick->suits(requirement.figure) || requirement.over_hz) return nullptr;
  if (!quick->collapse()) return nullptr;
  return quick;
}

/// A part that one collapsed port stands for.
bool Quick::is_port(design::PartId part) const {
  const auto elements = problem_.network.elements_of(part);
  return is_branch_part(problem_.design.parts[part.index]) && elements.size() == 1 &&
         problem_.network.elements[elements.front()].form == Element::Form::branch;
}

/// Knobs that move what no port stands for: they must have few choices.
bool Quick::find_switches() {
  const design::Design& design = problem_.design;
  std::size_t combinations = 1;
  for (design::KnobId knob : problem_.statement.knobs) {
    const design::Source& source = design.source;
    if (source.available_w.depends_on(knob) || source.impedance_ohm.depends_on(knob) || (source.reference_ohm && source.reference_ohm->depends_on(knob)))
      return false;
    bool switches = std::any_of(design.couplings.begin(), design.couplings.end(),
                                [&](const design::Coupling& coupling) { return coupling.factor.depends_on(knob); });
    for (std::size_t p = 0; p < design.parts.size(); ++p)
      switches |= varies_with(design.parts[p], knob) && !is_port(design::PartId{static_cast<int>(p)});
    if (!switches) continue;
    const std::size_t choices = design.knobs[knob.index].choices.size();
    if (choices == 0 || (combinations *= choices) > most_cases) return false;
    switches_.push_back(knob);
  }
  return true;
}

bool Quick::is_switch(design::KnobId knob) const {
  return std::any_of(switches_.begin(), switches_.end(), [&](design::KnobId other) { return other.index == knob.index; });
}

bool Quick::find_active() {
  const design::Design& design = problem_.design;
  for (std::size_t p = 0; p < design.parts.size(); ++p) {
    const design::PartId part{static_cast<int>(p)};
    const auto moves = [&](design::KnobId knob) { return !is_switch(knob) && varies_with(design.parts[p], knob); };
    if (std::none_of(problem_.statement.knobs.begin(), problem_.statement.knobs.end(), moves)) continue;
    active_.push_back(problem_.network.elements_of(part).front());
    moved_.push_back(part);
  }
  return !active_.empty();
}

bool Quick::find_watched() {
  for (std::size_t p = 0; p < problem_.design.parts.size(); ++p) {
    if (!design::is_load(problem_.design.parts[p])) continue;
    loads_.push_back(design::PartId{static_cast<int>(p)});
    watched_.push_back(problem_.network.elements_of(loads_.back()).front());
  }
  return true;
}

/// Looking from the source into all that it feeds: into everything, or into the only part at its node.
bool Quick::at_source(const design::Look& look) const {
  if (look.node != problem_.design.source.node) return false;
  if (!look.into) return true;
  std::size_t parts = 0;
  for (const design::Part& part : problem_.design.parts)
    parts += std::count(part.terminals.begin(), part.terminals.end(), look.node) > 0;
  return parts == 1;
}

bool Quick::suits(const design::Figure& figure) const {
  switch (figure.kind) {
    case FigureKind::power_into:
    case FigureKind::radiated_from: return !figure.box && std::find(loads_.begin(), loads_.end(), figure.part) != loads_.end();
    case FigureKind::heat_in:
    case FigureKind::peak_volts_across:
    case FigureKind::rms_amps_through: return !figure.box && std::find(moved_.begin(), moved_.end(), figure.part) != moved_.end();
    case FigureKind::efficiency:
    case FigureKind::total_loss: return true;
    case FigureKind::swr_at:
    case FigureKind::return_loss_at: return at_source(figure.look);
    default: return false;
  }
}

bool Quick::collapse() {
  std::size_t combinations = 1;
  for (design::KnobId knob : switches_) combinations *= problem_.design.knobs[knob.index].choices.size();
  for (std::size_t c = 0; c < combinations; ++c) {
    Case one;
    one.knobs = problem_.others;
    std::size_t left = c;
    for (std::size_t k = switches_.size(); k-- > 0;) {
      const std::vector<double>& choices = problem_.design.knobs[switches_[k].index].choices;
      one.knobs[switches_[k].index] = choices[left % choices.size()];
      left /= choices.size();
    }
    if (!collapse_case(one)) return false;
    cases_.push_back(std::move(one));
  }
  return true;
}

/// One ledger tells the loads' radiated shares, which no knob but a switch changes. A load that a switch cuts off gets nothing at any setting.
bool Quick::collapse_case(Case& one) const {
  for (double hertz : problem_.frequencies_hz) {
    one.collapsed.emplace_back(problem_.design, problem_.network, hertz, one.knobs, active_, watched_);
    if (!one.collapsed.back().sound()) return false;
    solve::States states;
    states.knob_count = one.knobs.size();
    states.add(hertz, one.knobs);
    const solve::Solution solution = solve::solve(problem_.design, problem_.network, problem_.plan, states);
    const ledger::Ledger ledger = ledger::book(problem_.design, problem_.network, solution, {});
    std::vector<double> shares;
    for (const ledger::LoadBook& load : ledger.loads) {
      if (!(load.absorbed_w[0] > 0.0) && switches_.empty()) return false;
      shares.push_back(load.absorbed_w[0] > 0.0 ? load.radiated_w[0] / load.absorbed_w[0] : 0.0);
    }
    one.radiated.push_back(std::move(shares));
  }
  return true;
}

std::size_t Quick::case_of(const double* knobs) const {
  std::size_t index = 0;
  for (design::KnobId knob : switches_) {
    const std::vector<double>& choices = problem_.design.knobs[knob.index].choices;
    const auto at = std::lower_bound(choices.begin(), choices.end(), knobs[knob.index]);
    index = index * choices.size() + std::min(static_cast<std::size_t>(at - choices.begin()), choices.size() - 1);
  }
  return index;
}

/// SWR at the source, against a reference; NaN for total reflection.
double Quick::source_swr(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const {
  return ledger::swr_of(source_reflection(asked, answer, frequency, state));
}

double Quick::source_reflection(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const {
  const std::complex<double> reference =
      asked != nullptr ? asked->at(problem_.frequencies_hz[frequency], problem_.others)
                       : cases_.front().collapsed[frequency].source_ohms().real();
  const std::complex<double> volts = answer.source_volts[state], amps = answer.source_amps[state];
  return std::abs((volts - std::conj(reference) * amps) / (volts + reference * amps));
}

double Quick::figure_value(const Case& one, const design::Figure& figure, const solve::CollapsedAnswer& answer, std::size_t frequency,
                           std::size_t state) const {
  const double available = one.collapsed[frequency].available_w();
  const std::vector<double>& shares = one.radiated[frequency];
  double radiated = 0.0;
  for (std::size_t w = 0; w < watched_.size(); ++w) radiated += answer.watched_w[w][state] * shares[w];
  const design::Source& source = problem_.design.source;
  const design::Value* own = source.reference_ohm ? &*source.reference_ohm : nullptr;
  // A rig that folds back gives less; ratios of powers do not feel it.
  const auto left = [&] {
    return source.foldback.empty() ? 1.0 : ledger::power_left(source, source_swr(own, answer, frequency, state));
  };
  const auto load = [&] { return static_cast<std::size_t>(std::find(loads_.begin(), loads_.end(), figure.part) - loads_.begin()); };
  const auto part = [&] { return static_cast<std::size_t>(std::find(moved_.begin(), moved_.end(), figure.part) - moved_.begin()); };
  switch (figure.kind) {
    case FigureKind::power_into: return answer.watched_w[load()][state] * left();
    case FigureKind::radiated_from: return answer.watched_w[load()][state] * shares[load()] * left();
    case FigureKind::heat_in: return answer.active_w[part()][state] * left();
    case FigureKind::peak_volts_across: return std::sqrt(2.0 * left()) * answer.active_volts[part()][state];
    case FigureKind::rms_amps_through: return std::sqrt(left()) * answer.active_amps[part()][state];
    case FigureKind::efficiency: return radiated / available;
    case FigureKind::total_loss: return radiated > 0.0 ? 10.0 * std::log10(available / radiated) : none;
    default: break;
  }
  const design::Value* asked = figure.reference ? &*figure.reference : own;
  if (figure.kind == FigureKind::swr_at) return source_swr(asked, answer, frequency, state);
  const double reflection = source_reflection(asked, answer, frequency, state);
  return reflection > 0.0 ? -20.0 * std::log10(reflection) : none;
}

void Quick::run(const std::vector<double>& settings, std::size_t count, std::vector<std::vector<double>>& values) {
  values.assign(1 + problem_.statement.keeping.size(), std::vector<double>(count * problem_.frequencies_hz.size()));
  const std::size_t width = problem_.others.size();
  members_.resize(cases_.size());
  for (std::vector<std::size_t>& members : members_) members.clear();
  for (std::size_t s = 0; s < count; ++s) members_[case_of(settings.data() + s * width)].push_back(s);
  for (std::size_t c = 0; c < cases_.size(); ++c)
    if (!members_[c].empty()) run_case(cases_[c], settings, members_[c], values);
}

void Quick::run_case(Case& one, const std::vector<double>& settings, const std::vector<std::size_t>& which,
                     std::vector<std::vector<double>>& values) {
  const std::size_t width = problem_.others.size(), each = problem_.frequencies_hz.size();
  const auto& keeping = problem_.statement.keeping;
  const double* numbers = settings.data();
  if (cases_.size() > 1) {
    grouped_.clear();
    for (std::size_t s : which) grouped_.insert(grouped_.end(), settings.begin() + std::ptrdiff_t(s * width), settings.begin() + std::ptrdiff_t((s + 1) * width));
    numbers = grouped_.data();
  }
  solve::CollapsedAnswer& answer = answer_;
  for (std::size_t f = 0; f < each; ++f) {
    one.collapsed[f].evaluate(numbers, which.size(), answer);
    for (std::size_t i = 0; i < which.size(); ++i) {
      values[0][which[i] * each + f] = figure_value(one, problem_.statement.goal, answer, f, i);
      for (std::size_t c = 0; c < keeping.size(); ++c) values[c + 1][which[i] * each + f] = figure_value(one, keeping[c].figure, answer, f, i);
    }
  }
}

}  // namespace wattfall::tune
