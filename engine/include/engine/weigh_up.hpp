// What every value of a design does to its figures, from text to result document.
#pragma once

#include "engine/run.hpp"

namespace wattfall {

/// Studies the design as `run` does, knobs tuned and then left where they are. Every required figure is weighed at the frequency where it is worst, and every
/// figure of `options.resolve.figures` where it is: of those of which more is better the least, else the largest. A design without either is refused.
/// `requirements_met` is not judged, and stays true.
Outcome weigh_up(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

}  // namespace wattfall
