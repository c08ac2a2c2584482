#include "quick.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

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
    if (source.available_w.depends_on(knob) || source.impedance_ohm.depends_on(knob) || source.reference_depends_on(knob))
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

bool Quick::asks_what_is_radiated() const {
  const auto radiated = [](const design::Figure& figure) {
    return figure.kind == FigureKind::radiated_from || figure.kind == FigureKind::efficiency || figure.kind == FigureKind::total_loss;
  };
  const auto& keeping = problem_.statement.keeping;
  return radiated(problem_.statement.goal) ||
         std::any_of(keeping.begin(), keeping.end(), [&](const design::Requirement& requirement) { return radiated(requirement.figure); });
}

/// One ledger tells the loads' radiated shares, which no knob but a switch changes. A load that a switch cuts off gets nothing at any setting.
bool Quick::collapse_case(Case& one) const {
  const bool radiated = asks_what_is_radiated();
  for (double hertz : problem_.frequencies_hz) {
    one.collapsed.emplace_back(problem_.design, problem_.network, hertz, one.knobs, active_, watched_);
    if (!one.collapsed.back().sound()) return false;
    one.radiated.emplace_back();
    if (!radiated) continue;
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
    one.radiated.back() = std::move(shares);
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

/// Searches go through the last knob's choices slowest, so that a batch often stands at one choice of a switch.
bool Quick::all_one_case(const std::vector<double>& settings, std::size_t count) const {
  const std::size_t width = problem_.others.size();
  for (design::KnobId knob : switches_) {
    const double* value = settings.data() + knob.index;
    for (std::size_t s = 1; s < count; ++s)
      if (value[s * width] != value[0]) return false;
  }
  return true;
}

/// |V - conj(R) I|/|V + R I| at the source, against a reference.
void Quick::source_reflections(const design::Value* asked, solve::CollapsedAnswer& answer, std::size_t frequency, double* values,
                               std::size_t count) const {
  const std::complex<double> reference =
      asked != nullptr ? asked->at(problem_.frequencies_hz[frequency], problem_.others)
                       : problem_.design.source.reference_at(problem_.frequencies_hz[frequency], problem_.others);
  const double r = reference.real(), x = reference.imag();
  const double *v_re = answer.source_volts.real(), *v_im = answer.source_volts.imag(), *i_re = answer.source_amps.real(), *i_im = answer.source_amps.imag();
  for (std::size_t s = 0; s < count; ++s) {
    const double back_re = v_re[s] - (r * i_re[s] + x * i_im[s]), back_im = v_im[s] - (r * i_im[s] - x * i_re[s]);
    const double out_re = v_re[s] + (r * i_re[s] - x * i_im[s]), out_im = v_im[s] + (r * i_im[s] + x * i_re[s]);
    values[s] = std::sqrt((back_re * back_re + back_im * back_im) / (out_re * out_re + out_im * out_im));
  }
}

/// A rig that folds back gives less.
void Quick::powers_left(solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t count) {
  const design::Source& source = problem_.design.source;
  if (source.foldback.empty()) return;
  left_.resize(count);
  source_reflections(nullptr, answer, frequency, left_.data(), count);
  for (double& left : left_) left = ledger::power_left(source, ledger::swr_of(left));
}

/// Of each state at one frequency.
void Quick::figure_values(const Case& one, const design::Figure& figure, solve::CollapsedAnswer& answer, std::size_t frequency, double* values,
                          std::size_t count) const {
  const std::vector<double>& shares = one.radiated[frequency];
  const auto take = [&](const solve::Series& series, double factor) {
    const double* from = series.data();
    for (std::size_t s = 0; s < count; ++s) values[s] = from[s] * factor;
  };
  // Ratios of powers do not feel a rig's folding back.
  const auto folded_back = [&](bool volts_or_amps) {
    for (std::size_t s = 0; s < left_.size(); ++s) values[s] *= volts_or_amps ? std::sqrt(left_[s]) : left_[s];
  };
  const auto load = static_cast<std::size_t>(std::find(loads_.begin(), loads_.end(), figure.part) - loads_.begin());
  const auto part = static_cast<std::size_t>(std::find(moved_.begin(), moved_.end(), figure.part) - moved_.begin());
  switch (figure.kind) {
    case FigureKind::power_into: take(answer.watched_w[load], 1.0); return folded_back(false);
    case FigureKind::radiated_from: take(answer.watched_w[load], shares[load]); return folded_back(false);
    case FigureKind::heat_in: take(answer.active_w[part], 1.0); return folded_back(false);
    case FigureKind::peak_volts_across: take(answer.active_volts[part], std::numbers::sqrt2); return folded_back(true);
    case FigureKind::rms_amps_through: take(answer.active_amps[part], 1.0); return folded_back(true);
    case FigureKind::efficiency:
    case FigureKind::total_loss: break;
    default:
      source_reflections(figure.reference ? &*figure.reference : nullptr, answer, frequency, values, count);
      for (std::size_t s = 0; s < count; ++s)
        values[s] = figure.kind == FigureKind::swr_at ? ledger::swr_of(values[s]) : values[s] > 0.0 ? -20.0 * std::log10(values[s]) : none;
      return;
  }
  std::fill_n(values, count, 0.0);
  for (std::size_t w = 0; w < watched_.size(); ++w) {
    const double* from = answer.watched_w[w].data();
    for (std::size_t s = 0; s < count; ++s) values[s] += from[s] * shares[w];
  }
  const double available = one.collapsed[frequency].available_w();
  for (std::size_t s = 0; s < count; ++s)
    values[s] = figure.kind == FigureKind::efficiency ? values[s] / available : values[s] > 0.0 ? 10.0 * std::log10(available / values[s]) : none;
}

void Quick::run(const std::vector<double>& settings, std::size_t count, std::vector<std::vector<double>>& values) {
  const std::size_t width = problem_.others.size(), each = problem_.frequencies_hz.size(), figures = 1 + problem_.statement.keeping.size();
  values.resize(figures);
  for (std::vector<double>& all : values) all.resize(count * each);
  if (all_one_case(settings, count)) {
    run_case(cases_[case_of(settings.data())], settings.data(), count);
    for (std::size_t figure = 0; figure < figures; ++figure)
      for (std::size_t f = 0; f < each; ++f)
        for (std::size_t s = 0; s < count; ++s) values[figure][s * each + f] = columns_[(figure * each + f) * count + s];
    return;
  }
  members_.resize(cases_.size());
  for (std::vector<std::size_t>& members : members_) members.clear();
  for (std::size_t s = 0; s < count; ++s) members_[case_of(settings.data() + s * width)].push_back(s);
  for (std::size_t c = 0; c < cases_.size(); ++c) {
    const std::vector<std::size_t>& which = members_[c];
    if (which.empty()) continue;
    grouped_.clear();
    for (std::size_t s : which) grouped_.insert(grouped_.end(), settings.begin() + std::ptrdiff_t(s * width), settings.begin() + std::ptrdiff_t((s + 1) * width));
    run_case(cases_[c], grouped_.data(), which.size());
    for (std::size_t figure = 0; figure < figures; ++figure)
      for (std::size_t f = 0; f < each; ++f)
        for (std::size_t i = 0; i < which.size(); ++i) values[figure][which[i] * each + f] = columns_[(figure * each + f) * which.size() + i];
  }
}

/// Fills columns_.
void Quick::run_case(Case& one, const double* settings, std::size_t count) {
  const std::size_t each = problem_.frequencies_hz.size();
  const auto& keeping = problem_.statement.keeping;
  columns_.resize((1 + keeping.size()) * each * count);
  for (std::size_t f = 0; f < each; ++f) {
    one.collapsed[f].evaluate(settings, count, answer_);
    powers_left(answer_, f, count);
    const auto column = [&](std::size_t figure) { return columns_.data() + (figure * each + f) * count; };
    figure_values(one, problem_.statement.goal, answer_, f, column(0), count);
    for (std::size_t c = 0; c < keeping.size(); ++c) figure_values(one, keeping[c].figure, answer_, f, column(c + 1), count);
  }
}

}  // namespace wattfall::tune
