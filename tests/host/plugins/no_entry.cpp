#include "faulty.hpp"

// A shared library that is no plugin.
extern "C" WATTFALL_EXPORT int some_other_function() {
  return 1;
}
