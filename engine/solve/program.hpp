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
/// Steps in a panel: four columns' factors fit the registers.
inline constexpr std::uint32_t most_in_panel = 4;
/// Below this, sinh^2 + sin^2 (or cos^2) of half of gamma l make |sinh gamma l| < 1e-4.
inline constexpr double line_floor = 2.5e-9;

/// A parameter: a lane table's index where it changes from state to state, else one number.
struct Operand {
  std::uint32_t real = nowhere;
  double number = 0.0;
};

/// The admittance of a branch and its heat per |V|^2.
struct BranchCode {
  enum class Formula : std::uint8_t {
    given,      ///< y and g are written from outside, for the whole run or for each batch
    coil,       ///< R + j w L with C across: R = r0 + L (w g1 + sqrt(f) g2)
    capacitor,  ///< r0 + (g1/w + g2 sqrt f)/C + j w Ls in series with j w C + w C tan d
    core,       ///< conductance r0 (or g1/(w L)) beside 1/(j w L); L = 0: none
  };
  Formula formula;
  bool plain;           ///< every parameter is one number, and stray and tangent are zero
  std::uint32_t value;  ///< y
  std::uint32_t heat;   ///< reals: g, where heat = |V|^2 g
  Operand main, r0, g1, g2, stray, tangent;
};

/// A distinct line (length, make): lines alike share one.
struct LineCode {
  std::uint32_t gamma;       ///< values: propagation constant per metre of its make, written for each batch
  std::uint32_t admittance;  ///< values: 1/Z0 of its make, written for each batch
  Operand length;            ///< m
  std::uint32_t value;       ///< values: y11, y12
  std::uint32_t even, odd;   ///< reals: Re Y of the even and the odd mode
};

/// entries[slot] = sum of sign * weight * values; the first `plain` of the terms have no weight.
struct GatherTerm {
  std::uint32_t value;
  std::uint32_t weight;  ///< index of reals or nowhere
  double sign;
};
struct Gather {
  std::uint32_t slot, first, plain, count;
  std::uint32_t rows[2];  ///< the unknowns (after `schedule`: places of their rows) in whose rows the entry stands, for the pivot test; nowhere: none
  bool diagonal;          ///< an unknown's own
};

/// One unknown's elimination: invert the pivot, scale its column, update what is left.
struct Step {
  std::uint32_t unknown, pivot;
  std::uint32_t row = 0;  ///< the place of its row's measure
  std::uint32_t first_scale, scale_count;    ///< into scales
  std::uint32_t first_update, update_count;  ///< into updates
  std::uint32_t panel = 1;  ///< so many steps from this on go together, see Compiler::find_panels
};
struct Scale {
  std::uint32_t factor, entry;
};
struct Update {
  std::uint32_t entry, factor, other;
};
/// Some steps and what they need that none before them did: each number is where the next chunk begins in its list.
struct Chunk {
  std::uint32_t branches, lines, gathers, steps;
};
/// Substitution: see plan::Substitution.
struct Coupled {
  std::uint32_t lower, upper, x;
};
/// By step. Unknowns stand in the table of volts, each at the place of the one node whose potential it is; those of transformers' currents behind the nodes.
struct Back {
  std::uint32_t x, first, count;
};

/// volts[node] = weight * volts[x]: the far nodes of merged transformers.
struct NodeCode {
  std::uint32_t node, x, weight;
};

/// What an element's currents and heat follow from. Amps stand at `amps` (and the next of a two-port), heat at `heat`.
struct BranchFlow {
  std::uint32_t node[2];
  std::uint32_t value, conductance;  ///< values: y; reals: g
  std::uint32_t element, amps;
};
struct LineFlow {
  std::uint32_t node[4];
  std::uint32_t value, even, odd;  ///< values: y11, y12; reals
  std::uint32_t element, amps;
};
struct FlowCode {
  enum class Form : std::uint8_t { matrix, coupled, border };
  Form form;
  std::uint32_t element, amps;
  std::uint32_t node[4];
  std::uint32_t value;    ///< the four admittances of a matrix
  std::uint32_t coils;    ///< coupled: reals, the first of ohms1, ohms2, susceptance1, susceptance2
  std::uint32_t heat2;    ///< coupled: where the second coil's heat stands
  std::uint32_t x;        ///< border: the transformer's current
  std::uint32_t ratio;    ///< border: reals
};

/// The current of a merged transformer: what all else at its outer node takes. Terms are places of amps.
struct CurrentTerm {
  std::uint32_t current;  ///< nowhere: the source's own
  double sign;
};
struct MergedCode {
  std::uint32_t element, amps, ratio;
  bool inverse;  ///< the outer node is the from side
  std::uint32_t node[4];  ///< the outer node is node[2], of an inverse one node[0]
  std::uint32_t first, count;
};

struct Program {
  std::uint32_t real_count = 0, value_count = 0, entry_count = 0, row_count = 0, factor_count = 0, unknowns = 0, node_count = 0, element_count = 0;
  std::uint32_t amps_count = 0, heat_count = 0;
  std::vector<BranchCode> branches;
  std::vector<std::uint32_t> branch_values;  ///< values: y of every branch described, in order
  std::vector<std::uint32_t> branch_heats;   ///< reals: and its g
  std::vector<LineCode> lines;
  std::vector<Gather> gathers;
  std::vector<GatherTerm> terms;
  std::vector<Step> steps;
  std::vector<Scale> scales;
  std::vector<Update> updates;
  std::vector<Chunk> chunks;
  std::vector<Back> backs;
  std::vector<Coupled> coupled;
  std::vector<NodeCode> nodes;
  std::vector<BranchFlow> branch_flows;
  std::vector<LineFlow> line_flows;
  std::vector<FlowCode> flows;
  std::vector<MergedCode> merged;
  std::vector<CurrentTerm> currents;
  std::uint32_t source_node = 0, source_other = 0, source_value = 0;
  std::uint32_t source_x = nowhere, other_x = nowhere;
  std::uint32_t source_weight = nowhere, other_weight = nowhere;  ///< reals

  // What the driver writes.
  struct Constant { std::uint32_t real; double number; };
  std::vector<Constant> constants;
  struct FixedValue { std::uint32_t value; std::complex<double> number; };
  std::vector<FixedValue> fixed_values;
  struct Varying {
    std::uint32_t real;
    int knob;  ///< the value is this knob's; -1: read it
    std::function<double(double frequency_hz, std::span<const double> knobs)> read;
  };
  std::vector<Varying> varying;                ///< knobs, and whatever is computed from them or from `frequency`
  struct Given { std::uint32_t element; std::uint32_t value; std::uint32_t real; bool constant; };
  std::vector<Given> givens;                   ///< elements whose admittances come from element_value
  struct GivenMake { std::uint32_t element; std::uint32_t gamma; std::uint32_t admittance; std::uint32_t impedance; };
  std::vector<GivenMake> given_makes;          ///< one element that stands for each make of line; values: per metre, 1/Z0, Z0
  std::vector<std::uint32_t> line_of_element;  ///< by element: its LineCode, or nowhere
  std::vector<std::uint32_t> make_of_line;     ///< by LineCode: its place in given_makes
  // By element: places of its amps and of its second heat (or nowhere); by node: its unknown's place among the volts and its share of it.
  std::vector<std::uint32_t> amps_of_element, heat2_of_element, x_of_node, weight_of_node;
};

/// Only the admittances of the given branches (network elements), in `branch_values`, one each.
Program compile_branches(const design::Design& design, const graph::Network& network, const std::vector<int>& elements);

Program compile(const design::Design& design, const graph::Network& network, const plan::Plan& plan);

}  // namespace wattfall::solve
