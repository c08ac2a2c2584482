// network -> plan.
#pragma once

#include "plan/plan.hpp"

namespace wattfall::plan {

/// Chooses the elimination order and compiles the operations. The network has passed build_graph's checks (no loop of ideal
/// transformers). Cost: that of symbolic elimination, O(fill).
Plan make_plan(const graph::Network& network);

}  // namespace wattfall::plan
