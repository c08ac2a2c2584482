// Which parts a knob moves. Private to the room.
#pragma once

#include "design/design.hpp"

namespace wattfall::tune {

/// Whether any of the part's electrical values depends on the knob.
bool varies_with(const design::Part& part, design::KnobId knob);

}  // namespace wattfall::tune
