// The document of `walk`: the hand calculation of each variant, step by step, with a sentence a step.
#pragma once

#include "report/document.hpp"
#include "walk/walk.hpp"

namespace wattfall::report {

/// One variant walked at one frequency. Pointers are to what the caller owns.
struct WalkResult {
  enum class Chosen { only, asked, middle };
  const VariantResult* variant = nullptr;
  const graph::Network* network = nullptr;
  const ledger::Ledger* ledger = nullptr;  ///< the solver's books of that frequency alone
  std::vector<double> knobs;
  Chosen chosen = Chosen::only;            ///< why this frequency
  walk::Walk walk;
  std::vector<walk::Check> checks;
};

/// Schema 1, verb "walk". `variants` are those of the design, for the envelope.
std::string make_walk_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                               const std::vector<WalkResult>& walks, const SetAsides& set_aside = {});

}  // namespace wattfall::report
