// The knobs as a unit cube: a continuous knob runs from 0 to 1 (in the logarithm where equal ratios matter), a discrete
// one over the ranks of its choices, sorted by value. In: the problem's knobs; out: places (one number a knob) turned
// to settings.
#pragma once

#include <cstddef>
#include <vector>
#include <wattfall/sdk.hpp>

namespace wattfall::tuner {

/// One number a knob: 0..1 for a continuous knob, a rank for a discrete one.
using Place = std::vector<double>;

class Space {
 public:
  /// Throws std::invalid_argument where a range is upside down, not finite, or has no choice.
  explicit Space(const sdk::SearchProblem& problem);

  std::size_t size() const { return axes_.size(); }
  /// Continuous knobs that can move at all.
  const std::vector<std::size_t>& movable() const { return movable_; }
  /// Discrete knobs with two choices or more.
  const std::vector<std::size_t>& discrete() const { return discrete_; }
  std::size_t choice_count(std::size_t knob) const { return axes_[knob].choice_of_rank.size(); }
  /// Product of the discrete knobs' choices; stops counting past `limit`.
  std::size_t combinations(std::size_t limit) const;

  double setting(std::size_t knob, double place) const;
  double place(std::size_t knob, double setting) const;
  Place place_of(const double* settings) const;
  /// Writes the settings of `count` places, size() numbers each.
  void settings(const double* places, std::size_t count, double* out) const;

 private:
  struct Axis {
    double lower;
    double upper;
    bool logarithmic;
    double log_ratio;  ///< of upper to lower, where logarithmic
    std::vector<std::size_t> choice_of_rank;
    std::vector<std::size_t> rank_of_choice;
  };
  static Axis make_axis(const sdk::KnobRange& knob);

  std::vector<Axis> axes_;
  std::vector<std::size_t> movable_;
  std::vector<std::size_t> discrete_;
};

}  // namespace wattfall::tuner
