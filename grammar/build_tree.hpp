// The second pass: one statement's text becomes its part of the syntax tree. PEGTL stays behind this header. In:
// stretches from layout.hpp, whose brackets match. Out: statements; or Mistakes, already written as diagnostics.
#pragma once

#include <cstddef>
#include <optional>

#include "draft.hpp"
#include "grammar/diagnostic.hpp"
#include "grammar/syntax.hpp"
#include "layout.hpp"

namespace wattfall {

/// Reads the statement at `stretch` (without what stands in its block). None, and diagnostics, where it is wrong.
std::optional<syntax::Statement> build_statement(Draft& draft, const Source& source, const layout::Stretch& stretch,
                                                 const layout::Words& words, Diagnostics& diagnostics);

std::optional<syntax::Phrase> build_expression(Draft& draft, const Source& source, const layout::Stretch& stretch,
                                               Diagnostics& diagnostics);

std::optional<syntax::Sweep> build_sweep(Draft& draft, const Source& source, const layout::Stretch& stretch,
                                         Diagnostics& diagnostics);

/// The faults that PEGTL's own analysis finds in the rules: loops that consume nothing. For the tests; must be 0.
std::size_t count_rule_problems();

}  // namespace wattfall
