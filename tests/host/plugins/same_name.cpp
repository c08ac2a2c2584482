#include "faulty.hpp"

static constexpr sdk::Plugin plugin = sdk::describe("good", "9.9", enroll_honest_cable);
WATTFALL_PLUGIN(plugin)
