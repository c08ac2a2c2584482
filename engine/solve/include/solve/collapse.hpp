// Searches and studies change a few parts many times at one frequency. Everything else is reduced, once, to the ports those parts stand at;
// then a state costs their admittances and a solution of as many equations as there are such parts.
//
// With every changing branch at a reference admittance y0: V0 the volts at the ports while the source works, Z the volts from 1 A into each port,
// and D the branches' admittances less y0, the volts are (1 + Z D) V = V0, and any other volts U = U0 - T D V, T its response to the ports'
// currents (the matrix inversion lemma; common practice, no source). y0 is a plain 50 ohm, with which no port resonates.
#pragma once

#include <memory>
#include <vector>

#include "graph/network.hpp"
#include "solve/solution.hpp"

namespace wattfall::solve {

/// What is asked of every state: of the source's port, of each watched branch (loads), of each active one.
struct CollapsedAnswer {
  ComplexSeries source_volts, source_amps;  ///< as in Solution
  std::vector<Series> watched_w;            ///< heat in each watched branch
  std::vector<Series> active_w;             ///< and in each active one
  std::vector<Series> watched_volts, active_volts, active_amps;  ///< rms
};

/// The fixed rest as linear equations, every active branch at `reference` [S]: port volts V0 + Z I for amps I into the ports, and the volts across the
/// source's terminals and the watched branches, u0 + t I.
struct CollapsedPorts {
  std::size_t active = 0, watched = 0;
  double reference = 0.0, source_volts = 0.0;  ///< source_volts: of the source itself, behind its impedance
  std::vector<std::complex<double>> v;         ///< active
  std::vector<std::complex<double>> z;         ///< active x active, row-major
  std::vector<std::complex<double>> u;         ///< (1 + watched) x (1 + active): u0, then t; the source's row first
  std::vector<double> watched_siemens;         ///< heat in a watched branch over its volts squared
};

class Collapsed {
 public:
  /// `active` and `watched` are network elements of Form::branch, apart from each other; only active ones may depend on the knobs that change. `knobs` are
  /// the design's, for all else. Cost: one dense solution of the network.
  Collapsed(const design::Design& design, const graph::Network& network, double frequency_hz, std::span<const double> knobs,
            const std::vector<int>& active, const std::vector<int>& watched);
  ~Collapsed();
  Collapsed(Collapsed&&) noexcept;
  Collapsed& operator=(Collapsed&&) noexcept;

  /// Whether the fixed rest could be solved to working accuracy.
  bool sound() const;
  double available_w() const;
  std::complex<double> source_ohms() const;
  CollapsedPorts ports() const;

  /// `settings`: count x the design's knobs. A state that cannot be solved gives NaN. Not for use from several threads at once.
  void evaluate(const double* settings, std::size_t count, CollapsedAnswer& answer);

 private:
  struct Body;
  std::unique_ptr<Body> body_;
};

}  // namespace wattfall::solve
