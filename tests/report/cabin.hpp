// A design and its books made by hand: a doublet with its coupler at the desk or at the mast. The numbers are plausible
// and the books close; they come from plain formulas, not from the solver, so these tests stand on their own.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "report/document.hpp"

namespace cabin {

struct Options {
  std::size_t points = 21;
  std::size_t variants = 2;
  std::string title = "40 m doublet at the lake cabin";
  std::string first_name = "coupler at the desk";
};

/// Owns what the results point at.
struct Cabin {
  explicit Cabin(const Options& options = {});
  Cabin(const Cabin&) = delete;
  Cabin& operator=(const Cabin&) = delete;

  std::string document() const { return wattfall::report::make_document("run", registry, results); }

  wattfall::host::Registry registry;
  std::vector<std::unique_ptr<wattfall::design::Design>> designs;
  std::vector<std::unique_ptr<wattfall::ledger::Ledger>> ledgers;
  std::vector<wattfall::report::VariantResult> results;
};

}  // namespace cabin
