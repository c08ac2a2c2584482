// Tells a mistake of its own from one that only follows from a statement that could not be read. Private to the room:
// run calls it.
#pragma once

#include "grammar/diagnostic.hpp"

namespace wattfall {

/// `unread` is what the parser said of the design's `text`; `found` what the resolver said of the partial tree. Gives
/// `found` without those that may vanish once the statements in `unread` can be read: names that they may have defined,
/// a source or sweep that may be one of them, values that may have stood in them. The same for what included files left
/// unread, and for files that were not read.
Diagnostics without_follow_ups(const Source& text, const Diagnostics& unread, Diagnostics found);

/// Whether the text was given up, so that nothing can be said of what is missing in it.
bool gave_up(const Diagnostics& unread);

}  // namespace wattfall
