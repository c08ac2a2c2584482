// One function a verb; each gives the exit code. Private to the program.
#pragma once

#include "arguments.hpp"
#include "host/load_plugins.hpp"

namespace wattfall::app {

int run_verb(const Arguments& arguments, const host::Plugins& plugins);
int list_verb(const Arguments& arguments, const host::Plugins& plugins);

/// Diagnostics on standard error; gives their exit code.
int say(const Diagnostics& diagnostics, Color color);

}  // namespace wattfall::app
