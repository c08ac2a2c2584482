#include "faulty.hpp"

static constexpr sdk::Plugin plugin = sdk::describe("", "1.0", enroll_honest_cable);
WATTFALL_PLUGIN(plugin)
