// A design's network and plan compiled into flat lists that the kernel runs over a batch of states. Private to the room.
//
// Indices only: `reals` and `values` are tables of lanes in the workspace. Reals hold parameters (constants are written once, those
// that depend on a knob or on frequency by a formula are written for each batch); values hold admittances.
#pragma once

#include <complex>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "lanes.hpp"
#include "plan/plan.hpp"
#include "solve/element_values.hpp"

namespace wattfall::solve {

inline constexpr std::uint32_t nowhere = UINT32_MAX;

/// Below this ratio of a pivot to its row a lane has lost digits to cancellation: 1e-16/1e-4 leaves 1e-12.
inline constexpr double pivot_floor = 1e-4;
/// Below this, sinh^2 + sin^2 (or cos^2) of half of gamma l make |sinh gamma l| < 1e-4.
inline constexpr double line_floor = 2.5e-9;

/// The admittance of a branch and its heat per |V|^2. Parameters are indices of reals.
struct BranchCode {
  enum class Formula : std::uint8_t {
    given,      ///< y and g are written from outside, for the whole run or for each batch
    coil,       ///< R + j w L with C across: R = r0 + L (w g1 + sqrt(f) g2)
    capacitor,  ///< r0 + (g1/w + g2 sqrt f)/C + j w Ls in series with j w C + w C tan d
    core,       ///< conductance r0 (or g1/(w L)) beside 1/(j w L); L = 0: none
  };
  Formula formula;
  std::uint32_t value;  ///< y
  std::uint32_t heat;   ///< reals: g, where heat = |V|^2 g
  std::uint32_t main, r0, g1, g2, stray, tangent;
};

/// A distinct line (length, make): lines alike share one. Half angles: gamma l/2 = a + j b.
struct LineCode {
  std::uint32_t a, b;        ///< reals, written for each batch
  std::uint32_t admittance;  ///< values: 1/Z0, written for each batch
  std::uint32_t value;       ///< values: y11, y12
  std::uint32_t even, odd;   ///< reals: Re Y of the even and the odd mode
};

/// entries[slot] = sum of sign * weight * values; `weight` is an index of reals or nowhere.
struct GatherTerm {
  std::uint32_t value;
  std::uint32_t weight;
  double sign;
};
struct Gather {
  std::uint32_t slot, first, count;
};

/// One unknown's elimination: invert the pivot, scale its column, update what is left.
struct Step {
  std::uint32_t unknown, pivot;
  std::uint32_t first_scale, scale_count;    ///< into scales
  std::uint32_t first_update, update_count;  ///< into updates
  std::uint32_t first_row, row_count;        ///< into row_slots: the row's entries before elimination
};
struct Scale {
  std::uint32_t factor, entry;
};
struct Update {
  std::uint32_t entry, factor, other;
};
/// Substitution: see plan::Substitution.
struct Coupled {
  std::uint32_t lower, upper, unknown;
};
struct Back {
  std::uint32_t row, first, count;
};

/// volts[node] = weight * x[unknown].
struct NodeCode {
  std::uint32_t node, unknown, weight;
};

/// What an element's currents and heat follow from.
struct FlowCode {
  enum class Form : std::uint8_t { branch, line, matrix, coupled, border };
  Form form;
  std::uint32_t element;
  std::uint32_t node[4];
  std::uint32_t value;       ///< y; y11, y12; the four of a matrix
  std::uint32_t even, odd;   ///< line: reals; branch: `even` is g; coupled: first of ohms1, ohms2, susceptance1, susceptance2
  std::uint32_t unknown;     ///< border: the transformer's current
  std::uint32_t ratio;       ///< border: reals
};

/// The current of a merged transformer: what all else at its outer node takes. Terms are currents by index 2 * element + port.
struct CurrentTerm {
  std::uint32_t current;  ///< nowhere: the source's own
  double sign;
};
struct MergedCode {
  std::uint32_t element, ratio;
  bool inverse;  ///< the outer node is the from side
  std::uint32_t node;
  std::uint32_t first, count;
};

struct Program {
  std::uint32_t real_count = 0, value_count = 0, entry_count = 0, factor_count = 0, unknowns = 0, node_count = 0, element_count = 0;
  std::vector<BranchCode> branches;
  std::vector<std::uint32_t> branch_values;  ///< values: y of every branch described, in order
  std::vector<LineCode> lines;
  std::vector<Gather> gathers;
  std::vector<GatherTerm> terms;
  std::vector<Step> steps;
  std::vector<Scale> scales;
  std::vector<Update> updates;
  std::vector<std::uint32_t> row_slots;
  std::vector<Back> backs;
  std::vector<Coupled> coupled;
  std::vector<NodeCode> nodes;
  std::vector<FlowCode> flows;
  std::vector<MergedCode> merged;
  std::vector<CurrentTerm> currents;
  std::uint32_t source_node = 0, source_other = 0, source_value = 0;
  std::uint32_t source_unknown = nowhere, other_unknown = nowhere;
  std::uint32_t source_weight = nowhere, other_weight = nowhere;  ///< reals

  // What the driver writes.
  struct Constant { std::uint32_t real; double number; };
  std::vector<Constant> constants;
  struct FixedValue { std::uint32_t value; std::complex<double> number; };
  std::vector<FixedValue> fixed_values;
  struct Varying { std::uint32_t real; std::function<double(double frequency_hz, std::span<const double> knobs)> read; };
  std::vector<Varying> varying;                ///< knobs, and whatever is computed from them or from `frequency`
  struct Given { std::uint32_t element; std::uint32_t value; std::uint32_t real; bool constant; };
  std::vector<Given> givens;                   ///< elements whose admittances come from element_value
  struct GivenLine { std::uint32_t element; std::uint32_t line; };
  std::vector<GivenLine> given_lines;          ///< one element that stands for each distinct line
  std::vector<std::uint32_t> line_of_element;  ///< by element: its LineCode, or nowhere
};

/// Only the admittances of the given branches (network elements), in `branch_values`, one each.
Program compile_branches(const design::Design& design, const graph::Network& network, const std::vector<int>& elements);

Program compile(const design::Design& design, const graph::Network& network, const plan::Plan& plan);

}  // namespace wattfall::solve
