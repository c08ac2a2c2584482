#include "faulty.hpp"

static constexpr sdk::Plugin plugin{
    sdk::interface_number, sizeof(sdk::Plugin), "another-family", "wrong-compiler", "1.0", enroll_honest_cable};
WATTFALL_PLUGIN(plugin)
