#include "faulty.hpp"

// Says this interface, and hands over a shorter description than it has.
static constexpr sdk::Plugin plugin{sdk::interface_number, 16, sdk::compiler_family, nullptr, nullptr, nullptr};
WATTFALL_PLUGIN(plugin)
