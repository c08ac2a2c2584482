// A piece of work in a process of its own: what it says, what memory it took at most, how long it ran.
#pragma once

#include <functional>
#include <string>

namespace wattfall::fuzz {

struct Bounded {
  bool ended = false;     ///< by itself, and not by a signal or for want of memory
  std::string said;       ///< what the work returned
  double peak_mib = 0.0;  ///< resident memory at most; 0 where it cannot be told (under a sanitizer that keeps shadows)
  double seconds = 0.0;   ///< of the processor; for the reader, not for a test
};

Bounded run_bounded(const std::function<std::string()>& work);

}  // namespace wattfall::fuzz
