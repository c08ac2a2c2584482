// One function a verb; each gives the exit code. Private to the program.
#pragma once

#include <string>

#include "arguments.hpp"
#include "engine/run.hpp"
#include "grammar/diagnostic.hpp"
#include "host/load_plugins.hpp"

namespace wattfall::app {

int run_verb(const Arguments& arguments, const host::Plugins& plugins);
int compare_verb(const Arguments& arguments, const host::Plugins& plugins);
int check_verb(const Arguments& arguments, const host::Plugins& plugins);
int walk_verb(const Arguments& arguments, const host::Plugins& plugins);
int weigh_verb(const Arguments& arguments, const host::Plugins& plugins);
int list_verb(const Arguments& arguments, const host::Plugins& plugins);
int format_verb(const Arguments& arguments, const host::Plugins& plugins);

/// What the engine does with one file.
using Work = Outcome (*)(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

/// A verb about one file, from its text to its reports; 1 where a requirement was judged and is not met.
int one_file(const Arguments& arguments, const host::Plugins& plugins, Work work);

/// The text of a feed file, or of standard input for "-". By default no more than a feed file may have and one byte, enough to see that it has
/// too many.
Result<SourcePtr> read_text(const std::string& file, std::size_t most_bytes = (1u << 20) + 1);

/// What the command line says about solving the design of this file; what is done is counted in `progress`, if any.
RunOptions options_for(const Arguments& arguments, const std::string& file, Progress* progress = nullptr);

/// As many as were asked for, else as the machine has.
unsigned threads_of(const Arguments& arguments);

/// Diagnostics on standard error; gives their exit code.
int say(const Diagnostics& diagnostics, Color color);

/// What stands in place of the reports where there are none: the diagnostics on standard error or, where standard
/// output was to have JSON, as JSON there. Gives their exit code.
int refuse(const std::vector<Delivery>& deliveries, const Diagnostics& diagnostics, Color color);

}  // namespace wattfall::app
