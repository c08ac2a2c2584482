// See space.hpp: checks the ranges once, then maps both ways.
#include "space.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace wattfall::tuner {

Space::Space(const sdk::SearchProblem& problem) {
  for (std::size_t knob = 0; knob < problem.knob_count; ++knob) {
    axes_.push_back(make_axis(problem.knobs[knob]));
    const Axis& axis = axes_.back();
    if (axis.choice_of_rank.size() > 1) discrete_.push_back(knob);
    if (axis.choice_of_rank.empty() && axis.upper > axis.lower) movable_.push_back(knob);
  }
}

Space::Axis Space::make_axis(const sdk::KnobRange& knob) {
  const bool logarithmic = knob.logarithmic != 0 && knob.lower > 0;
  Axis axis{knob.lower, knob.upper, logarithmic, logarithmic ? std::log(knob.upper / knob.lower) : 0, {}, {}};
  if (knob.choices == nullptr) {
    if (!std::isfinite(knob.lower) || !std::isfinite(knob.upper) || knob.lower > knob.upper)
      throw std::invalid_argument("a knob's range is upside down or not finite");
    return axis;
  }
  if (knob.choice_count == 0) throw std::invalid_argument("a discrete knob has no choice");
  axis.choice_of_rank.resize(knob.choice_count);
  std::iota(axis.choice_of_rank.begin(), axis.choice_of_rank.end(), std::size_t{0});
  std::stable_sort(axis.choice_of_rank.begin(), axis.choice_of_rank.end(),
                   [&](std::size_t a, std::size_t b) { return knob.choices[a] < knob.choices[b]; });
  axis.rank_of_choice.resize(knob.choice_count);
  for (std::size_t rank = 0; rank < knob.choice_count; ++rank) axis.rank_of_choice[axis.choice_of_rank[rank]] = rank;
  return axis;
}

std::size_t Space::combinations(std::size_t limit) const {
  std::size_t product = 1;
  for (std::size_t knob : discrete_) {
    product *= axes_[knob].choice_of_rank.size();
    if (product > limit) return limit + 1;
  }
  return product;
}

double Space::setting(std::size_t knob, double place) const {
  const Axis& axis = axes_[knob];
  if (!axis.choice_of_rank.empty()) return double(axis.choice_of_rank[std::size_t(place + 0.5)]);
  if (place <= 0) return axis.lower;
  if (place >= 1) return axis.upper;
  const double value = axis.logarithmic ? axis.lower * std::exp(place * axis.log_ratio)
                                        : axis.lower + place * (axis.upper - axis.lower);
  return std::clamp(value, axis.lower, axis.upper);
}

double Space::place(std::size_t knob, double setting) const {
  const Axis& axis = axes_[knob];
  if (!axis.choice_of_rank.empty()) {
    const double last = double(axis.choice_of_rank.size() - 1);
    const double choice = std::isfinite(setting) ? std::clamp(std::round(setting), 0.0, last) : 0.0;
    return double(axis.rank_of_choice[std::size_t(choice)]);
  }
  if (!(axis.upper > axis.lower)) return 0;
  if (!std::isfinite(setting)) return 0.5;
  const double inside = std::clamp(setting, axis.lower, axis.upper);
  const double share = axis.logarithmic ? std::log(inside / axis.lower) / axis.log_ratio
                                        : (inside - axis.lower) / (axis.upper - axis.lower);
  return std::clamp(share, 0.0, 1.0);
}

Place Space::place_of(const double* settings) const {
  Place result(size());
  for (std::size_t knob = 0; knob < size(); ++knob) result[knob] = place(knob, settings[knob]);
  return result;
}

void Space::settings(const double* places, std::size_t count, double* out) const {
  const std::size_t width = size();
  for (std::size_t knob = 0; knob < width; ++knob) {
    const Axis& axis = axes_[knob];
    if (axis.choice_of_rank.empty()) {
      for (std::size_t i = 0; i < count; ++i) out[i * width + knob] = setting(knob, places[i * width + knob]);
      continue;
    }
    const std::size_t* choices = axis.choice_of_rank.data();
    for (std::size_t i = 0; i < count; ++i) out[i * width + knob] = double(choices[std::size_t(places[i * width + knob] + 0.5)]);
  }
}

}  // namespace wattfall::tuner
