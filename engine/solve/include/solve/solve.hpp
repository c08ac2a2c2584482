// plan + states -> solution.
#pragma once

#include <vector>

#include "plan/plan.hpp"
#include "solve/solution.hpp"

namespace wattfall::solve {

enum class Method {
  guarded,  ///< the compiled fast path, each state checked, flagged ones solved again in the robust form
  robust,   ///< every state in the robust form (dense, wave rows, partial pivoting): for tests and comparisons
};

/// Solves every state. Cost: operations of the plan per state, 16 states side by side; a state in the robust form costs
/// O((nodes + ports)^3). Never throws for numbers; what cannot be solved is NaN and marked untrusted.
Solution solve(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
               const std::vector<design::Look>& looks = {}, Method method = Method::guarded);

}  // namespace wattfall::solve
