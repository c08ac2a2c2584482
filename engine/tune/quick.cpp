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

bool is_branch_part(const design::Part& part) {
  return std::holds_alternative<design::Inductor>(part.model) || std::holds_alternative<design::Capacitor>(part.model) ||
         std::holds_alternative<design::Resistor>(part.model);
}

}  // namespace

std::unique_ptr<Quick> Quick::make(const Problem& problem) {
  std::unique_ptr<Quick> quick(new Quick(problem));
  if (problem.network.elements.size() > most_elements) return nullptr;
  if (!quick->find_active() || !quick->find_watched() || !quick->suits(problem.statement.goal)) return nullptr;
  for (const design::Requirement& requirement : problem.statement.keeping)
    if (!quick->suits(requirement.figure) || requirement.over_hz) return nullptr;
  if (!quick->collapse()) return nullptr;
  return quick;
}

bool Quick::find_active() {
  const design::Design& design = problem_.design;
  for (design::KnobId knob : problem_.statement.knobs) {
    const design::Source& source = design.source;
    if (source.available_w.depends_on(knob) || source.impedance_ohm.depends_on(knob) || (source.reference_ohm && source.reference_ohm->depends_on(knob)))
      return false;
  }
  for (std::size_t p = 0; p < design.parts.size(); ++p) {
    const auto moves = [&](design::KnobId knob) { return varies_with(design.parts[p], knob); };
    if (std::none_of(problem_.statement.knobs.begin(), problem_.statement.knobs.end(), moves)) continue;
    const auto elements = problem_.network.elements_of(design::PartId{static_cast<int>(p)});
    if (!is_branch_part(design.parts[p]) || elements.size() != 1) return false;
    if (problem_.network.elements[elements.front()].form != Element::Form::branch) return false;
    active_.push_back(elements.front());
  }
  for (const design::Coupling& coupling : design.couplings)
    for (design::KnobId knob : problem_.statement.knobs)
      if (coupling.factor.depends_on(knob)) return false;
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
    case FigureKind::efficiency:
    case FigureKind::total_loss: return true;
    case FigureKind::swr_at:
    case FigureKind::return_loss_at: return at_source(figure.look);
    default: return false;
  }
}

/// One ledger at the present setting tells the loads' radiated shares, which no knob changes.
bool Quick::collapse() {
  for (double hertz : problem_.frequencies_hz) {
    collapsed_.emplace_back(problem_.design, problem_.network, hertz, problem_.others, active_, watched_);
    if (!collapsed_.back().sound()) return false;
    solve::States states;
    states.knob_count = problem_.others.size();
    states.add(hertz, problem_.others);
    const solve::Solution solution = solve::solve(problem_.design, problem_.network, problem_.plan, states);
    const ledger::Ledger ledger = ledger::book(problem_.design, problem_.network, solution, {});
    std::vector<double> shares;
    for (const ledger::LoadBook& load : ledger.loads) {
      if (!(load.absorbed_w[0] > 0.0)) return false;
      shares.push_back(load.radiated_w[0] / load.absorbed_w[0]);
    }
    radiated_.push_back(std::move(shares));
  }
  return true;
}

/// SWR at the source, against a reference; NaN for total reflection.
double Quick::source_swr(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const {
  return ledger::swr_of(source_reflection(asked, answer, frequency, state));
}

double Quick::source_reflection(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const {
  const std::complex<double> reference =
      asked != nullptr ? asked->at(problem_.frequencies_hz[frequency], problem_.others) : collapsed_[frequency].source_ohms().real();
  const std::complex<double> volts = answer.source_volts[state], amps = answer.source_amps[state];
  return std::abs((volts - std::conj(reference) * amps) / (volts + reference * amps));
}

double Quick::figure_value(const design::Figure& figure, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const {
  const double available = collapsed_[frequency].available_w();
  double radiated = 0.0;
  for (std::size_t w = 0; w < watched_.size(); ++w) radiated += answer.watched_w[w][state] * radiated_[frequency][w];
  const design::Source& source = problem_.design.source;
  const design::Value* own = source.reference_ohm ? &*source.reference_ohm : nullptr;
  // A rig that folds back gives less; ratios of powers do not feel it.
  const auto left = [&] {
    return source.foldback.empty() ? 1.0 : ledger::power_left(source, source_swr(own, answer, frequency, state));
  };
  const auto load = [&] { return static_cast<std::size_t>(std::find(loads_.begin(), loads_.end(), figure.part) - loads_.begin()); };
  switch (figure.kind) {
    case FigureKind::power_into: return answer.watched_w[load()][state] * left();
    case FigureKind::radiated_from: return answer.watched_w[load()][state] * radiated_[frequency][load()] * left();
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
  const std::size_t each = problem_.frequencies_hz.size();
  const auto& keeping = problem_.statement.keeping;
  values.assign(1 + keeping.size(), std::vector<double>(count * each));
  solve::CollapsedAnswer answer;
  for (std::size_t f = 0; f < each; ++f) {
    collapsed_[f].evaluate(settings.data(), count, answer);
    for (std::size_t s = 0; s < count; ++s) {
      values[0][s * each + f] = figure_value(problem_.statement.goal, answer, f, s);
      for (std::size_t c = 0; c < keeping.size(); ++c) values[c + 1][s * each + f] = figure_value(keeping[c].figure, answer, f, s);
    }
  }
}

}  // namespace wattfall::tune
