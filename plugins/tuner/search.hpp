// The search as a whole: starts, a scan, a race of ascents, and the best of all that was seen.
#pragma once

#include <wattfall/sdk.hpp>

namespace wattfall::tuner {

/// Fills `result`. Throws std::exception with a sentence where the problem is malformed, evaluate fails, or no setting
/// has a goal.
void search(const sdk::SearchProblem& problem, sdk::SearchResult& result);

}  // namespace wattfall::tuner
