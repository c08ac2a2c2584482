// For tests: a feed text taken through the pipeline, stage by stage, with the built-in plugins.
#pragma once

#include <string>
#include <vector>

#include "design/resolve.hpp"
#include "graph/build_graph.hpp"
#include "host/load_plugins.hpp"
#include "judge/figures.hpp"
#include "ledger/book.hpp"
#include "plan/make_plan.hpp"
#include "solve/solve.hpp"

namespace wattfall::test {

/// The built-in plugins, loaded once.
const host::Registry& registry();

/// Everything that the stages made of one design. `diagnostics` says why where a stage refused.
struct Feed {
  explicit Feed(const std::string& text, solve::Method method = solve::Method::guarded);
  /// For generated designs, past the grammar.
  Feed(design::Design given, solve::Method method);

  const ledger::PartBook& part(const std::string& name) const;
  const ledger::LoadBook& load(const std::string& name) const;
  std::complex<double> source_impedance(std::size_t state = 0) const { return ledger.source.load_impedance_ohm.at(state); }

  SourcePtr source;
  Diagnostics diagnostics;
  design::Design design;
  graph::Network network;
  plan::Plan plan;
  std::vector<design::Look> looks;
  solve::Solution solution;
  ledger::Ledger ledger;

 private:
  void solve_design(solve::Method method);
};

/// Codes of diagnostics, for comparisons.
std::vector<std::string> codes(const Diagnostics& diagnostics);

}  // namespace wattfall::test
