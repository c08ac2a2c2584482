// Coils that share flux with each other, directly or by way of others.
#pragma once

#include <vector>

#include "design/design.hpp"

namespace wattfall::design {

struct CoupledSet {
  std::vector<PartId> coils;    ///< in the order of the design
  std::vector<int> couplings;   ///< indices into design.couplings
  std::vector<double> factors;  ///< coils x coils, ones on the diagonal, 0 where no coupling is written; NaN where it varies
};

/// Every set of a design that has couplings.
std::vector<CoupledSet> coupled_sets(const Design& design);

/// Whether its coils are windings on one core: each by its core, and the cores alike but for turns and wire.
bool on_one_core(const Design& design, const CoupledSet& set);

/// Whether the network is made of what each coil holds for itself and what it shares (graph/build_graph.cpp): three coils
/// and more, and windings on one core, which have its loss in common. Any other pair is one two-port.
bool by_shares(const Design& design, const CoupledSet& set);

/// Lower triangle G of factors = G G^T (Cholesky), row-major. The factors must have passed physics::check_couplings.
std::vector<double> triangle_of(const CoupledSet& set);

}  // namespace wattfall::design
