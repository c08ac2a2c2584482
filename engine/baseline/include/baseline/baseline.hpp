// What a design was when it was accepted: its figures, the tolerance that each is held to, and what its parts were, so that a later check can say
// not only what got worse but which part was changed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/facts.hpp"
#include "grammar/diagnostic.hpp"
#include "report/document.hpp"

namespace wattfall::baseline {

inline constexpr double default_tolerance = 0.005;

/// One figure at its worst over the sweep.
struct Figure {
  std::string figure;        ///< "swr at desk", "efficiency"
  std::string unit;          ///< "" for a ratio, "dB", "W", "V", "A", "Hz", "ohm", "share"
  bool less_is_better = true;
  double value = 0.0;        ///< [SI, dB, ratio]; NaN where it does not exist (an infinite SWR)
  double at_hz = 0.0;
  double tolerance = default_tolerance;  ///< how much worse it may get, as a share of `value`
  int line = 0;              ///< of the requirement; 0 for what every variant is held to
};

struct Variant {
  std::optional<std::string> name;
  std::vector<Figure> figures;         ///< the required ones in the order of the text, then efficiency, worst SWR, total loss
  std::vector<design::Thing> things;   ///< spans are empty where it was read from a file
};

struct Baseline {
  std::vector<Variant> variants;
};

/// The design as it now is. A figure that is required twice, in the same sense, is held once. Cost O(parts + points).
Baseline take(const std::vector<report::VariantResult>& results, double tolerance);

/// JSON; the same baseline gives the same bytes. No program version stands in it. `file` is the design's name without its folder.
std::string write(const Baseline& baseline, const std::string& title, const std::string& file);

/// What `write` wrote. A text that is none gives a diagnostic (`baseline-broken`, Fault::file), located where JSON itself is broken.
Result<Baseline> read(const SourcePtr& text);

}  // namespace wattfall::baseline
