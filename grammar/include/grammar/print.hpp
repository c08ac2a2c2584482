// A feed file in the standard layout: the same statements and comments, every blank where the house style wants it.
// README.md says what that layout is. In: a text. Out: the text that `wattfall format` writes.
#pragma once

#include <string>

#include "grammar/diagnostic.hpp"
#include "grammar/parse.hpp"

namespace wattfall {

/// The text in the standard layout, or diagnostics where it has mistakes. Numbers, names, strings and comments stay as
/// they were written and in their order; units get their plain spelling (`µ` is `u`, `Ω` is `ohm`, `°` is `deg`); line
/// ends are LF. The result parses to the same tree, and formatting it again changes nothing. Cost: linear in the text.
Result<std::string> format(const SourcePtr& source, const Vocabulary& vocabulary = standard_vocabulary());

}  // namespace wattfall
