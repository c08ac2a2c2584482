// What is said to a user about a mistake, as a value. No stage prints: each hands its diagnostics on, and the
// program shows them at the end, sorted by place.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "grammar/source.hpp"

namespace wattfall {

/// Whose fault it is; decides the exit code (`exit_code`).
enum class Fault {
  design,   ///< the feed file says something that cannot be: exit 3
  usage,    ///< wrong use of the command: exit 2
  numeric,  ///< it could not be solved or tuned: exit 4
  file,     ///< a file or plugin could not be read or written: exit 5
};

struct Diagnostic {
  struct Note {  ///< a second place, "defined here"
    Span span;
    std::string text;
  };

  std::string code;      ///< stable, lower case with hyphens: "unknown-unit"
  Span span;             ///< the whole token or phrase that is wrong
  std::string text;      ///< one sentence: what is wrong
  std::string expected;  ///< what could stand there; empty where `text` says it
  std::string hint;      ///< a spelling or nearest name that was most likely meant; empty where none is near
  std::vector<Note> notes = {};
  Fault fault = Fault::design;
  std::vector<SourcePtr> keeps = {};  ///< texts that the spans point into and nobody else may keep: an included file, an option
  std::string advice = {};            ///< the next step, in words; empty where `expected` and `hint` say enough
};

using Diagnostics = std::vector<Diagnostic>;

/// The gravest of them: 5 (file), 4 (numeric), 3 (design), 2 (usage, alone); 0 for none.
int exit_code(const Diagnostics& diagnostics);

/// Sorts by source (in order of first appearance), then place; drops exact repetitions.
void sort_by_place(Diagnostics& diagnostics);

/// Readable form, for standard error:
///
///     coupler.feed:7:31: error: `mhz` is not a unit [unknown-unit]
///        7 | sweep 7 mhz to 7.2 MHz step 10 kHz
///          |         ^~~
///       expected: a frequency, such as 7.1 MHz
///       did you mean: MHz
///
/// `advice` follows as "try: ...".
/// Long lines are cut to a window round the span; control characters are shown as `?`. `color` adds ANSI colours.
std::string render(const Diagnostic& diagnostic, bool color);
std::string render(const Diagnostics& diagnostics, bool color);

/// A value, or diagnostics that say why there is none. Diagnostics may also stand beside a value (a partial tree).
template <class T>
struct Result {
  std::optional<T> value;
  Diagnostics diagnostics = {};

  bool ok() const { return value.has_value() && diagnostics.empty(); }
};

}  // namespace wattfall
