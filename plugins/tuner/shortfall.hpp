// The easier problem that comes first where no place is known that keeps every slack: same knobs, no slack, and the
// goal is minus the sum of the squared violations, each measured by its median size; 0 is reached where all are kept.
#pragma once

#include <vector>
#include <wattfall/sdk.hpp>

namespace wattfall::tuner {

struct Shortfall {
  const sdk::SearchProblem& asked;
  const std::vector<double>& measures;

  /// Holds on to this object.
  sdk::SearchProblem problem();
};

}  // namespace wattfall::tuner
