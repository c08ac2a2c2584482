// The main job from text to result document, each stage in its order.
#pragma once

#include <string>
#include <vector>

#include "design/resolve.hpp"
#include "grammar/diagnostic.hpp"
#include "host/registry.hpp"

namespace wattfall {

struct RunOptions {
  design::ResolveOptions resolve;
  unsigned threads = 1;  ///< variants are solved side by side; the document is the same for any number
};

/// What came of it: a document, or diagnostics that say why there is none.
struct Outcome {
  std::string document;            ///< schema 1; empty where there are diagnostics
  Diagnostics diagnostics;
  bool requirements_met = true;
  std::vector<SourcePtr> sources;  ///< keeps alive what the diagnostics point at
};

/// Parses, resolves, and for each variant builds, checks, plans, tunes, solves, books and judges; then writes the document.
Outcome run(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

}  // namespace wattfall
