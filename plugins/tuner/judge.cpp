// See judge.hpp.
#include "judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace wattfall::tuner {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Most settings in one call of evaluate: enough to fill any batch, small enough to stay in the cache.
constexpr std::size_t largest_batch = 4096;

/// Stands for a slack of -infinity, so that such a place still comes before one without a goal.
constexpr double largest_violation = 1e300;

void clean(double* values, std::size_t count) {
  for (std::size_t i = 0; i < count; ++i)
    if (std::isnan(values[i])) values[i] = -infinity;
}

}  // namespace

bool better(const Worth& a, const Worth& b) {
  if (a.violation != b.violation) return a.violation < b.violation;
  return a.goal > b.goal;
}

Judge::Judge(const sdk::SearchProblem& problem, const Space& space)
    : problem_(problem),
      space_(space),
      measures_(problem.slack_count, 1.0),
      best_slacks_(problem.slack_count, -infinity),
      best_{-infinity, infinity} {}

void Judge::weigh(Batch& batch) {
  const std::size_t knobs = space_.size();
  const std::size_t slacks = problem_.slack_count;
  batch.count = knobs == 0 ? 1 : batch.places.size() / knobs;
  batch.goals.resize(batch.count);
  batch.slacks.resize(batch.count * slacks);
  batch.worths.resize(batch.count);
  settings_.resize(batch.places.size());
  space_.settings(batch.places.data(), batch.count, settings_.data());
  for (std::size_t done = 0; done < batch.count; done += largest_batch) {
    const std::size_t count = std::min(largest_batch, batch.count - done);
    sdk::Failure failure{};
    if (problem_.evaluate(problem_.self, settings_.data() + done * knobs, count, &batch.goals[done],
                          batch.slacks.data() + done * slacks, &failure) != sdk::Status::ok)
      throw std::runtime_error(failure.text[0] != '\0' ? failure.text : "the goal could not be evaluated");
  }
  evaluations_ += batch.count;
  clean(batch.goals.data(), batch.goals.size());
  clean(batch.slacks.data(), batch.slacks.size());
  for (std::size_t i = 0; i < batch.count; ++i) {
    const double* own = batch.slacks.data() + i * slacks;
    batch.worths[i] = worth(own, batch.goals[i]);
    if (!better(batch.worths[i], best_)) continue;
    best_ = batch.worths[i];
    best_place_ = batch.place(i, knobs);
    best_slacks_.assign(own, own + slacks);
  }
}

Worth Judge::worth(const double* slacks, double goal) const {
  double violation = goal == -infinity ? infinity : 0;
  for (std::size_t k = 0; k < problem_.slack_count; ++k)
    if (!(slacks[k] >= 0)) violation += std::min(-slacks[k] / measures_[k], largest_violation);
  return {goal, violation};
}

void Judge::scale_slacks(const Batch& batch) {
  for (std::size_t k = 0; k < problem_.slack_count; ++k) {
    std::vector<double> sizes;
    for (std::size_t i = 0; i < batch.count; ++i) {
      const double size = std::abs(batch.slacks[i * problem_.slack_count + k]);
      if (std::isfinite(size) && size > 0) sizes.push_back(size);
    }
    if (sizes.empty()) continue;
    const auto middle = sizes.begin() + std::ptrdiff_t(sizes.size() / 2);
    std::nth_element(sizes.begin(), middle, sizes.end());
    measures_[k] = *middle;
  }
  best_ = worth(best_slacks_.data(), best_.goal);
}

double Judge::scaled_slack(const Batch& batch, std::size_t index, std::size_t k) const {
  return batch.slacks[index * problem_.slack_count + k] / measures_[k];
}

}  // namespace wattfall::tuner
