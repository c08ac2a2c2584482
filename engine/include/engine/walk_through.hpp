// The hand calculation from text to result document.
#pragma once

#include "engine/run.hpp"

namespace wattfall {

/// Studies the design as `run` does, knobs tuned, then walks each variant: at the frequencies of `--at`, else at the middle one of its sweep. The document
/// also says how the walk and the solver agree. `requirements_met` is not judged, and stays true.
Outcome walk_through(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

}  // namespace wattfall
