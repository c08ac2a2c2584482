// Looks at what a plugin registers before anything relies on it. A plugin is foreign code: a null, an empty name or a
// figure that is no number is refused here, in a sentence, and not met later in the middle of a solution.
#pragma once

#include <string>
#include <string_view>

#include "wattfall/sdk.hpp"

namespace wattfall::host {

/// What is wrong with it, as a sentence without a final full stop ("kind `spark` has 3 ports, and a part has one or
/// two"), or "" where nothing is. The pointer may be null; what it points at is read in full. The first fault found is
/// the one that is said.
std::string what_is_wrong(const sdk::Kind* kind);
std::string what_is_wrong(const sdk::Cable* cable);
std::string what_is_wrong(const sdk::LineModel* model);
std::string what_is_wrong(const sdk::Optimizer* optimizer);
std::string what_is_wrong(const sdk::Writer* writer);
std::string what_is_wrong(const sdk::TunerForm* form);

/// Whether it can be written in an option: a letter, then letters, digits, `_` and hyphens.
bool is_word(std::string_view name);

}  // namespace wattfall::host
