// What a good programmer writes with a linear-algebra library: for every point the parts' admittances with the
// functions of the standard library, the matrix, its solution, and every part's power, volts and amps. In a library of
// its own, built for the machine it runs on, so that its inlined code is its alone.
#pragma once

#include <complex>
#include <cstddef>
#include <memory>
#include <vector>

namespace wattfall::bench {

/// A part between unknowns: `unknown` -1 is ground; volts = weight * unknown (an ideal transformer's far side is a
/// scaled copy of its near side).
struct FlatPart {
  enum class Kind { coil, capacitor, core, impedance, line } kind = Kind::impedance;
  int unknown[4] = {-1, -1, -1, -1};
  double weight[4] = {1.0, 1.0, 1.0, 1.0};
  double main = 0.0;                          ///< H, F, m
  double ohms = 0.0;                          ///< in series; of a core: across
  double q = 0.0;                             ///< 0: none
  double q_at_hz = 0.0;                       ///< 0: the same at every frequency
  std::complex<double> impedance;             ///< of a load; Z0 of a line
  double velocity = 1.0, k1 = 0.0, k2 = 0.0;  ///< loss k1 sqrt f + k2 f [dB/m]
  int knob = -1;                              ///< instead of `main`
};

struct FlatNetwork {
  std::vector<FlatPart> parts;
  int unknowns = 0;
  int source_unknown = 0;
  double source_ohms = 50.0, available_w = 100.0;
};

struct FlatStates {
  const double* hertz = nullptr;  ///< by point
  const double* knobs = nullptr;  ///< by point and knob
  std::size_t count = 0, knob_count = 0;
};

/// Per point and part (point-major): heat, the larger end's volts and amps; per point: the power that comes back.
struct FlatAnswer {
  std::vector<double> heat_w, volts_peak, amps_rms, returned_w;
};

class Baseline {
 public:
  virtual ~Baseline() = default;
  virtual void run(const FlatStates& states, FlatAnswer& answer) = 0;
};

/// "dense": Eigen, partial pivoting, size known at run time. "fixed": size known to the compiler (5 or 2 unknowns, else
/// null). "sparse": Eigen SparseLU, pattern analysed once. "klu": analysed and factored once, refactored in every
/// point.
__attribute__((visibility("default"))) std::unique_ptr<Baseline> make_baseline(const char* name,
                                                                               const FlatNetwork& network);

}  // namespace wattfall::bench
