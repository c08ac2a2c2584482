// The plan's operations on a batch of states side by side. Private to the room.
//
// Workspace: structure of arrays, `lanes` doubles of real parts and as many of imaginary parts a slot, so that the loops over lanes
// become vector instructions. Every lane is guarded: a pivot below pivot_floor times the largest entry of its row, before or
// during elimination, has lost digits to cancellation, and the lane is flagged for the robust form.
#pragma once

#include <array>
#include <complex>
#include <cstdint>
#include <vector>

#include "plan/plan.hpp"
#include "solve/element_values.hpp"
#include "solve/solution.hpp"

namespace wattfall::solve {

inline constexpr std::size_t lanes = 16;

/// Below this ratio of a pivot to its row, and below this |sinh(gamma l)|, a lane goes to the robust form. 1e-16 / 1e-4 leaves 1e-12.
inline constexpr double pivot_floor = 1e-4;

struct alignas(64) LaneVector {
  std::array<double, lanes> re{};
  std::array<double, lanes> im{};

  void add(std::size_t lane, Complex value) {
    re[lane] += value.real();
    im[lane] += value.imag();
  }
  Complex get(std::size_t lane) const { return {re[lane], im[lane]}; }
  void set(std::size_t lane, Complex value) {
    re[lane] = value.real();
    im[lane] = value.imag();
  }
};

class Kernel {
 public:
  Kernel(const graph::Network& network, const plan::Plan& plan);

  void clear();
  /// Adds an element's stamp to one lane; `weights` are the nodes' shares of their unknowns (see plan::NodeBinding).
  void stamp(std::size_t element, const ElementValue& value, std::size_t lane, const std::vector<double>& weights);
  void stamp_source(Complex siemens, std::size_t lane, const std::vector<double>& weights);
  void stamp_ties();
  /// Runs the operations on all lanes.
  void eliminate();
  /// Solves for one right side per lane: `amps[lane]` fed into `node` and out of `other`. Results by `unknown`.
  void substitute(int node, int other, const std::array<Complex, lanes>& amps, const std::vector<std::array<double, lanes>>& weights);
  Complex unknown(std::size_t index, std::size_t lane) const { return solution_[index].get(lane); }
  Guard guard(std::size_t lane) const { return guards_[lane]; }
  void flag(std::size_t lane, Guard why) {
    if (guards_[lane] == Guard::none) guards_[lane] = why;
  }

 private:
  void invert(const plan::Operation& operation);

  const graph::Network& network_;
  const plan::Plan& plan_;
  std::vector<LaneVector> entries_, factors_, inverses_, solution_;
  std::vector<std::array<double, lanes>> row_largest_;  ///< squared
  std::array<Guard, lanes> guards_{};
};

/// The 2 x 2 (line, matrix) or 1 x 1 (branch, in [0]) port admittances of an element; false where they are not to be trusted, with why.
bool port_admittances(const graph::Element& element, const ElementValue& value, std::array<Complex, 4>& y, Guard& why);

}  // namespace wattfall::solve
