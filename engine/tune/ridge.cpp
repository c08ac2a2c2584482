#include "ridge.hpp"

#include <algorithm>
#include <cmath>

#include "straight.hpp"
#include "study.hpp"

namespace wattfall::tune {
namespace {

/// Along the ridge all match this well; at its ends one knob has run out.
constexpr double on_the_ridge = 1.1;
constexpr std::size_t coarse = 9, fine = 8;

bool about_power(design::FigureKind kind) {
  using design::FigureKind;
  return kind == FigureKind::power_into || kind == FigureKind::radiated_from || kind == FigureKind::efficiency || kind == FigureKind::total_loss ||
         kind == FigureKind::swr_at || kind == FigureKind::return_loss_at;
}

/// By the statement's knobs.
using Settings = std::vector<std::vector<double>>;

class Tracer {
 public:
  Tracer(const Problem& problem, const sdk::Optimizer& optimizer)
      : problem_(problem), optimizer_(optimizer), solvable_(!matching_settings(problem).empty()) {}

  std::optional<Ridge> run(const Found& found) {
    Ridge ridge;
    Settings best;
    for (std::size_t held = 0; held < 3; ++held) {
      Settings settings = along(held, places(knob(held).lower, knob(held).upper, coarse));
      if (settings.size() > best.size()) best = std::move(settings), ridge.held = held;
    }
    if (best.empty()) return std::nullopt;
    const std::size_t held = ridge.held;
    double lower = found.setting[held], upper = lower;
    for (const std::vector<double>& setting : best) {
      lower = std::min(lower, setting[held]);
      upper = std::max(upper, setting[held]);
    }
    // The ridge ends somewhere inside the next step of the first look.
    const double step = std::pow(knob(held).upper / knob(held).lower, 1.0 / double(coarse - 1));
    Settings all = along(held, places(std::max(knob(held).lower, lower / step * 1.02), std::min(knob(held).upper, upper * step / 1.02), fine));
    std::erase_if(all, [&](const std::vector<double>& setting) { return std::abs(setting[held] / found.setting[held] - 1.0) < 0.02; });
    all.push_back(found.setting);
    std::stable_sort(all.begin(), all.end(), [&](const auto& a, const auto& b) { return a[held] < b[held]; });
    ridge.settings = matches_at(problem_, all);
    if (ridge.settings.size() < 3 || !(ridge.settings.back().values[held] > 1.05 * ridge.settings.front().values[held])) return std::nullopt;
    const auto least = std::max_element(ridge.settings.begin(), ridge.settings.end(), [](const Match& a, const Match& b) { return a.load_w < b.load_w; });
    ridge.best = static_cast<std::size_t>(least - ridge.settings.begin());
    return ridge;
  }

 private:
  const design::Knob& knob(std::size_t k) const { return problem_.design.knobs[problem_.statement.knobs[k].index]; }

  static std::vector<double> places(double lower, double upper, std::size_t count) {
    std::vector<double> all;
    for (std::size_t i = 0; i < count; ++i) all.push_back(lower * std::pow(upper / lower, double(i) / double(count - 1)));
    return all;
  }

  /// The settings that match with one knob held at each of these values; of several matches there, the one that loses least.
  Settings along(std::size_t held, const std::vector<double>& values) {
    design::Tune statement = problem_.statement;
    statement.knobs.erase(statement.knobs.begin() + std::ptrdiff_t(held));
    Settings settings;
    for (double value : values) {
      std::vector<double> others = problem_.others;
      others[problem_.statement.knobs[held].index] = value;
      const Problem problem{problem_.design, problem_.network, problem_.plan, statement, problem_.frequencies_hz, others, {}};
      if (solvable_ && matching_settings(problem).empty()) continue;
      const Found found = search(problem, optimizer_);
      if (!found.found || !found.keeping || !(found.swr <= on_the_ridge)) continue;
      settings.push_back(found.setting);
      settings.back().insert(settings.back().begin() + std::ptrdiff_t(held), value);
    }
    return settings;
  }

  const Problem& problem_;
  const sdk::Optimizer& optimizer_;
  /// The closed forms know where nothing comes back: a value without such a setting stands beyond the ridge's end, and
  /// needs no search. (Next to the end an SWR of 1.1 is still to be had; that is not told.)
  bool solvable_;
};

}  // namespace

std::optional<Ridge> find_ridge(const Problem& problem, const Found& found, const sdk::Optimizer& optimizer) {
  const auto& knobs = problem.statement.knobs;
  const auto continuous = [&](design::KnobId id) {
    const design::Knob& knob = problem.design.knobs[id.index];
    return knob.choices.empty() && knob.lower > 0.0;
  };
  if (knobs.size() != 3 || problem.frequencies_hz.size() != 1 || !about_power(problem.statement.goal.kind)) return std::nullopt;
  if (!std::all_of(knobs.begin(), knobs.end(), continuous)) return std::nullopt;
  return Tracer(problem, optimizer).run(found);
}

}  // namespace wattfall::tune
