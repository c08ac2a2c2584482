// Reports leave the program here: to standard output, or to files that are replaced whole or not at all. Private to the
// program.
#pragma once

#include <string>

#include "arguments.hpp"
#include "grammar/diagnostic.hpp"
#include "host/registry.hpp"
#include "progress_bar.hpp"

namespace wattfall::app {

/// Whether to colour what goes to the stream with this descriptor.
bool wants_color(Color color, int descriptor);

/// Writes every delivery: all reports are made before the first is let out, so a writer that fails leaves every old
/// file as it was. `bar` is taken away before anything is let out, and where a writer fails.
Diagnostics deliver(const std::string& document, const std::vector<Delivery>& deliveries,
                    const host::Registry& registry, Color color, ProgressBar& bar);

/// Unknown writers among the deliveries, as wrong use of the command.
Diagnostics check_writers(const std::vector<Delivery>& deliveries, const host::Registry& registry);

/// The document as the writer `text` has it; empty where there is none, or it fails.
std::string read_aloud(const std::string& document, const host::Registry& registry, bool color);

/// Puts `text` in the file's place, whole or not at all.
Diagnostics replace_file(const std::string& path, const std::string& text);

/// Puts `text` on standard output and flushes it.
Diagnostics print(const std::string& text);

}  // namespace wattfall::app
