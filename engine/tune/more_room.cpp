#include "more_room.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "grammar/quantity.hpp"
#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "weigh/weigh.hpp"

namespace wattfall::tune {
namespace {

/// A demand this near to its bound, as a share of it, is one that holds the goal back.
constexpr double just_kept = 1e-4;

/// Below this share of the goal, what one per cent brings is nothing that anyone would build for.
constexpr double worth_saying = 1e-4;

/// Of the goal: a step that gains less has only rounding, or what the optimizer leaves, to gain.
constexpr double no_gain = 1e-6;

/// Steps along the slopes, in nepers of the knobs.
constexpr double longest_step = 0.1, shortest_step = 1e-8;

/// Slopes along the knobs [the goal's unit per neper of the knob], upwards better.
using Slopes = std::vector<double>;

double dot(const Slopes& a, const Slopes& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

class Prices {
 public:
  Prices(const Problem& problem, const Found& found)
      : problem_(problem),
        found_(found),
        setting_(knobs_with(problem, found.setting)),
        point_(problem.design, problem.network, problem.frequencies_hz.front(), setting_) {}

  Uphill run() {
    goal_ = slopes(problem_.statement.goal, problem_.statement.most);
    if (!finite(goal_)) return {};
    find_ends();
    find_demands();
    balance();
    return {more_room(), demands_.empty() ? gain_uphill() : 0.0};
  }

 private:
  struct Demand {
    std::size_t which;  ///< of `keeping`
    Slopes slopes;      ///< of what is left of its bound
    double multiplier = 0.0;
  };

  std::vector<MoreRoom> more_room() const {
    std::vector<MoreRoom> all;
    const Slopes slopes = balanced();
    for (std::size_t k = 0; k < slopes.size(); ++k)
      add(all, end_[k] * slopes[k] / 100.0, [&](MoreRoom& room) {
        room.knob = k;
        room.text = fmt::format("one per cent beyond the {} end of {}", end_[k] > 0 ? "upper" : "lower", knob(k).name);
      });
    for (const Demand& demand : demands_)
      add(all, demand.multiplier * std::abs(problem_.statement.keeping[demand.which].value) / 100.0,
          [&](MoreRoom& room) {
            room.demand = demand.which;
            const design::Requirement& requirement = problem_.statement.keeping[demand.which];
            const std::string unit = judge::unit_of(requirement.figure.kind);
            room.text =
                fmt::format("one per cent more room in keeping {} {} {:.4g}{}{}", requirement.figure.text,
                            requirement.below ? "below" : "above", requirement.value, unit.empty() ? "" : " ", unit);
          });
    return all;
  }

  /// Knobs at an end that the slope holds there stay.
  double gain_uphill() const {
    Slopes uphill = goal_;
    for (std::size_t k = 0; k < uphill.size(); ++k)
      if (end_[k] * uphill[k] > 0.0) uphill[k] = 0.0;
    const double steepest = std::sqrt(dot(uphill, uphill));
    if (!(steepest > 0.0)) return 0.0;
    std::vector<std::vector<double>> steps;
    for (double length = longest_step; length > shortest_step; length *= 0.5)
      steps.push_back(step(uphill, length / steepest));
    const double best = best_gain(steps);
    return best > no_gain * std::abs(found_.goal) ? best : 0.0;
  }

  const design::Knob& knob(std::size_t k) const { return problem_.design.knobs[problem_.statement.knobs[k].index]; }
  static bool finite(const Slopes& slopes) {
    return std::all_of(slopes.begin(), slopes.end(), [](double slope) { return std::isfinite(slope); });
  }

  Slopes slopes(const design::Figure& figure, bool upwards) {
    Slopes all = point_.slopes(figure, problem_.statement.knobs);
    if (!upwards)
      for (double& slope : all) slope = -slope;
    return all;
  }

  void find_ends() {
    for (std::size_t k = 0; k < goal_.size(); ++k)
      end_.push_back(stands_at(found_.setting[k], knob(k).upper)   ? 1.0
                     : stands_at(found_.setting[k], knob(k).lower) ? -1.0
                                                                   : 0.0);
  }

  void find_demands() {
    for (std::size_t c = 0; c < problem_.statement.keeping.size(); ++c) {
      const design::Requirement& requirement = problem_.statement.keeping[c];
      if (!(std::abs(found_.kept[c] - requirement.value) <= just_kept * std::abs(requirement.value))) continue;
      Demand demand{c, slopes(requirement.figure, !requirement.below)};
      if (finite(demand.slopes)) demands_.push_back(std::move(demand));
    }
  }

  /// The multipliers >= 0 with which the demands best balance the goal over the knobs that are free: least squares, one
  /// demand after the other until nothing moves (Gauss and Seidel; a few demands at most).
  void balance() {
    constexpr int rounds = 200;
    for (int round = 0; round < rounds; ++round)
      for (Demand& demand : demands_) {
        demand.multiplier = 0.0;
        const Slopes free = of_free_knobs(demand.slopes);
        const double squared = dot(free, free);
        if (squared > 0.0) demand.multiplier = std::max(0.0, -dot(balanced(), free) / squared);
      }
  }

  Slopes of_free_knobs(Slopes slopes) const {
    for (std::size_t k = 0; k < slopes.size(); ++k)
      if (end_[k] != 0.0) slopes[k] = 0.0;
    return slopes;
  }

  /// The goal's slopes with the demands' pulls, as far as their multipliers are known.
  Slopes balanced() const {
    Slopes sum = goal_;
    for (const Demand& demand : demands_)
      for (std::size_t k = 0; k < sum.size(); ++k) sum[k] += demand.multiplier * demand.slopes[k];
    return sum;
  }

  template <class Fill>
  void add(std::vector<MoreRoom>& all, double gain, const Fill& fill) const {
    if (!(gain > worth_saying * std::abs(found_.goal))) return;
    MoreRoom room;
    room.gain = gain;
    fill(room);
    room.text += " would bring " + gain_text(problem_.statement, gain) + ", the other knobs following";
    all.push_back(std::move(room));
  }

  std::vector<double> step(const Slopes& uphill, double length) const {
    std::vector<double> moved = found_.setting;
    for (std::size_t k = 0; k < moved.size(); ++k)
      moved[k] = std::clamp(moved[k] * std::exp(length * uphill[k]), knob(k).lower, knob(k).upper);
    return knobs_with(problem_, moved);
  }

  /// Of the steps that keep every demand.
  double best_gain(const std::vector<std::vector<double>>& steps) const {
    const bool most = problem_.statement.most;
    const auto& keeping = problem_.statement.keeping;
    const std::vector<std::vector<double>> figures = worst_figures(problem_, steps);
    double best = 0.0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const double gain = most ? figures[0][i] - found_.goal : found_.goal - figures[0][i];
      bool kept = true;
      for (std::size_t c = 0; c < keeping.size(); ++c)
        kept &= asked_hz(problem_, keeping[c]).empty() || judge::meets(keeping[c], figures[c + 1][i]);
      if (kept && gain > best) best = gain;
    }
    return best;
  }

  const Problem& problem_;
  const Found& found_;
  std::vector<double> setting_;
  weigh::Point point_;
  Slopes goal_;
  std::vector<double> end_;  ///< 1 at the upper, -1 at the lower end, 0 between them
  std::vector<Demand> demands_;
};

bool suits(const Problem& problem) {
  return problem.frequencies_hz.size() == 1 && problem.also_hz.empty() &&
         std::all_of(problem.statement.knobs.begin(), problem.statement.knobs.end(), [&](design::KnobId id) {
           const design::Knob& knob = problem.design.knobs[id.index];
           return knob.choices.empty() && knob.lower > 0.0;
         });
}

}  // namespace

std::string gain_text(const design::Tune& statement, double gain) {
  const std::string unit = judge::unit_of(statement.goal.kind);
  return fmt::format("{} {:.3g}{}{} {}", statement.goal.text, gain, unit.empty() ? "" : " ", unit,
                     statement.most ? "more" : "less");
}

Uphill look_uphill(const Problem& problem, const Found& found) {
  return suits(problem) ? Prices(problem, found).run() : Uphill{};
}

}  // namespace wattfall::tune
