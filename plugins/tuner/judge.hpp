// Sends places to the problem in batches, counts them, cleans what comes back (a goal or slack that is no number is the
// worst there is), says which of two results is better, and remembers the best of all. Throws what `evaluate` says when
// it fails.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>
#include <wattfall/sdk.hpp>

#include "space.hpp"

namespace wattfall::tuner {

/// What a place is worth. Feasible: violation is 0.
struct Worth {
  double goal;
  double violation;
};

/// Feasible before infeasible; then the greater goal, or the smaller violation.
bool better(const Worth& a, const Worth& b);

/// Results of a batch of places; slacks are count x slack_count.
struct Batch {
  std::vector<double> places;
  std::vector<double> goals;
  std::vector<double> slacks;
  std::vector<Worth> worths;
  std::size_t count = 0;

  Place place(std::size_t index, std::size_t knobs) const {
    const auto from = places.begin() + std::ptrdiff_t(index * knobs);
    return Place(from, from + std::ptrdiff_t(knobs));
  }
};

class Judge {
 public:
  Judge(const sdk::SearchProblem& problem, const Space& space);

  std::size_t slack_count() const { return problem_.slack_count; }
  std::uint64_t evaluations() const { return evaluations_; }

  /// Evaluates batch.places (any number of places, one after the other) and fills the rest of it.
  void weigh(Batch& batch);
  /// Measures each slack by its median size over this batch, so that volts and ratios can be added.
  void scale_slacks(const Batch& batch);
  /// Slack k over its measure.
  const std::vector<double>& measures() const { return measures_; }
  double scaled_slack(const Batch& batch, std::size_t index, std::size_t k) const;

  /// Counts evaluations that a helper search made.
  void count(std::uint64_t more) { evaluations_ += more; }

  const Place& best_place() const { return best_place_; }
  const Worth& best() const { return best_; }

 private:
  Worth worth(const double* slacks, double goal) const;

  const sdk::SearchProblem& problem_;
  const Space& space_;
  std::vector<double> measures_;
  std::vector<double> settings_;
  std::uint64_t evaluations_ = 0;
  Place best_place_;
  std::vector<double> best_slacks_;
  Worth best_;
};

}  // namespace wattfall::tuner
