// One function a verb; each gives the exit code. Private to the program.
#pragma once

#include <string>

#include "arguments.hpp"
#include "grammar/diagnostic.hpp"
#include "host/load_plugins.hpp"

namespace wattfall::app {

int run_verb(const Arguments& arguments, const host::Plugins& plugins);
int list_verb(const Arguments& arguments, const host::Plugins& plugins);
int format_verb(const Arguments& arguments, const host::Plugins& plugins);

/// The text of a feed file, or of standard input for "-".
Result<SourcePtr> read_text(const std::string& file);

/// Diagnostics on standard error; gives their exit code.
int say(const Diagnostics& diagnostics, Color color);

/// What stands in place of the reports where there are none: the diagnostics on standard error or, where standard
/// output was to have JSON, as JSON there. Gives their exit code.
int refuse(const std::vector<Delivery>& deliveries, const Diagnostics& diagnostics, Color color);

}  // namespace wattfall::app
