// Searches over discrete knobs: every combination where there are few, ascents over neighbouring choices where there
// are many.
#pragma once

#include "climber.hpp"

namespace wattfall::tuner {

/// All combinations of the discrete knobs, `base` for the others. The judge remembers the best.
void enumerate_all(const Space& space, Judge& judge, const Place& base);

/// Ascent over neighbouring choices, one or two knobs at a time; the continuous ones follow by `ascent` (null: there
/// are none).
Climber walk_choices(const Space& space, Judge& judge, Ascent* ascent, Climber climber);

}  // namespace wattfall::tuner
