#include "faulty.hpp"

static constexpr sdk::Plugin plugin{7,     sizeof(sdk::Plugin), sdk::compiler_family, "wrong-interface",
                                    "1.0", enroll_honest_cable};
WATTFALL_PLUGIN(plugin)
