// The main job from text to result document, each stage in its order.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "design/resolve.hpp"
#include "grammar/diagnostic.hpp"
#include "host/registry.hpp"
#include "progress/progress.hpp"
#include "report/document.hpp"

namespace wattfall {

struct RunOptions {
  design::ResolveOptions resolve;
  unsigned threads = 1;  ///< variants are solved side by side; the document is the same for any number
  Progress* progress = nullptr;  ///< counts what is done, where somebody watches
};

/// What came of it: a document, or diagnostics that say why there is none.
struct Outcome {
  std::string document;            ///< schema 1; empty where there are diagnostics
  Diagnostics diagnostics;
  bool requirements_met = true;
  std::vector<SourcePtr> sources;  ///< keeps alive what the diagnostics point at
};

/// All of the main job but its document: for what speaks of several designs at once.
struct Study {
  std::vector<report::VariantResult> results;  ///< one a variant, in the order of the text; none where there are diagnostics
  report::SetAsides set_aside;                 ///< forms of tuner that cannot do what is asked, where another form can
  Diagnostics diagnostics;
  bool requirements_met = true;
  std::vector<SourcePtr> sources;     ///< keeps alive what the diagnostics point at
  std::shared_ptr<const void> keeps;  ///< keeps alive what the results point at
};

Study study(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

/// Parses, resolves, and for each variant builds, checks, plans, tunes, solves, books and judges; then writes the document.
Outcome run(const SourcePtr& text, const host::Registry& registry, const RunOptions& options);

}  // namespace wattfall
