// Puts the work of a program in an order that suits the cache. Private to the room.
#pragma once

#include "program.hpp"

namespace wattfall::solve {

/// Parts the elimination into chunks of some steps, each with the admittances and entries that nothing before it needed, and lets columns that have been
/// eliminated give their places to those that come. So what is gathered is eliminated while it is near, and a ladder of any length has but a few columns in
/// memory. The program is complete but for its chunks, each entry at the place that the plan gave it; the numbers do not change.
void schedule(Program& program);

}  // namespace wattfall::solve
