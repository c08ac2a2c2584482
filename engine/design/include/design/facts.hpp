// What a design is made of, as plain facts with names: enough to say what differs between two designs, or between a design and what it was. In
// goes a design; out come its source, parts, couplings, knobs and sweep, in the order of the text. Cost O(parts + measured points).
#pragma once

#include <string>
#include <vector>

#include "design/design.hpp"

namespace wattfall::design {

/// One thing that is settled about a part. A value that varies is taken mid-sweep, with the knobs where they start.
struct Fact {
  std::string what;   ///< "length", "Q", "wiring"
  std::string value;  ///< "26 m" with seven digits at most, or words; equal where the same is meant
};

/// A part, load, source, coupling, knob or quantity, or the sweep.
struct Thing {
  std::string name;  ///< "atu.Cin"; "sweep"
  std::string kind;  ///< "capacitor"
  std::vector<Fact> facts;
  std::string statement;  ///< as it is written, blanks made single, without comments; empty for the sweep
  Span span;              ///< where it stands
};

std::vector<Thing> things_of(const Design& design);

/// What the text sets by name (`set run = 26 m`) for this variant, as it is written: a settled design has only the parts that came of it. The value of
/// a number is a fact in seven digits, that of an expression its text. Reads the design's texts again.
std::vector<Thing> quantities_of(const Design& design);

}  // namespace wattfall::design
