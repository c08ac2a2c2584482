// One state of a network as the linear equations it is, kept factored: M x = s. For derivatives: with y the solution of transposed(M) y = g, a change dM, ds
// of the equations moves g^T x by -y^T (dM x - ds) (the adjoint method; common practice, no source).
#pragma once

#include <complex>
#include <memory>
#include <utility>
#include <vector>

#include "graph/network.hpp"
#include "solve/element_values.hpp"
#include "solve/solution.hpp"

namespace wattfall::solve {

/// Potentials of the nodes 1 .. [V], then `base_ohms` times every port's current and the source's [V]; phasors, rms.
using FieldVector = std::vector<Complex>;

class Fields {
 public:
  static constexpr double base_ohms = 50.0;

  /// `values`: one an element, in the network's order. Cost: one dense (beyond 600 unknowns sparse) factorisation.
  Fields(const graph::Network& network, std::vector<ElementValue> values, Complex source_ohms);
  ~Fields();
  Fields(Fields&&) noexcept;
  Fields& operator=(Fields&&) noexcept;

  /// The source working with these Thevenin volts; the source silent and 1 A fed into a node.
  FieldVector driven(Complex source_volts) const;
  FieldVector fed(int node) const;
  /// y with transposed(M) y = gradient. Cost: a back-substitution, as the two above.
  FieldVector adjoint(const FieldVector& gradient) const;

  /// y^T (dM x - ds) over the rows of one element, or of the source, where dM and ds are what one value has more than another.
  Complex element_change(const FieldVector& y, const FieldVector& x, int element, const ElementValue& value, const ElementValue& other);
  Complex source_change(const FieldVector& y, const FieldVector& x, std::pair<Complex, Complex> ohms, std::pair<Complex, Complex> volts);

  std::size_t place_of_node(int node) const { return static_cast<std::size_t>(node - 1); }  ///< of nodes other than ground
  std::size_t place_of_port(int element, int port) const;
  std::size_t place_of_source() const;
  /// Reciprocal of the condition number; below 1e-15 nothing can be trusted.
  double trust() const;

 private:
  struct Body;
  std::unique_ptr<Body> body_;
};

/// What one state's fields look like.
struct FieldState {
  FieldVector driven;
  std::vector<FieldVector> probes;  ///< by look: 1 A fed into its node; may be empty, then what stands behind is NaN
};

/// The fields as a solution, one state each, all at one frequency and setting: what the books are made of. `values` need not be those that the fields
/// were solved with: heat, for one, follows from both.
Solution solution_of(const design::Design& design, const graph::Network& network, double frequency_hz, const std::vector<double>& knobs,
                     const std::vector<ElementValue>& values, const std::vector<design::Look>& looks, const std::vector<FieldState>& states);

}  // namespace wattfall::solve
