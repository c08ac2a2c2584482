// The compiled network: which unknown leaves when, and the flat list of operations that does it. Made once per network, run over
// any number of states (frequencies, settings of the knobs), many side by side. No values are in it.
//
// Unknowns are node potentials, after ideal transformers with both sides against ground were merged (V_to = ratio V_from makes the to
// node a scaled copy of the from node), and one current for each ideal transformer that could not be merged. The matrix is
// the nodal admittance matrix Y, bordered by those currents; it is symmetric where every part is reciprocal by its form, and then
// one slot holds a_ij and a_ji. Elimination order is minimum degree with the source's unknown last, so that the last pivot
// is the admittance that the source works into plus its own.
#pragma once

#include <cstdint>
#include <vector>

#include "graph/network.hpp"
#include "grammar/diagnostic.hpp"

namespace wattfall::plan {

/// One step on slots of the workspace, for all lanes at once.
struct Operation {
  enum class Code : std::uint8_t {
    invert,  ///< inverse[target] = 1 / a[left]; guarded by the pivot test against `target`'s row
    scale,   ///< factor[target] = a[left] * inverse[right]
    update,  ///< a[target] -= factor[left] * a[right]
  };
  Code code;
  std::uint32_t target, left, right;
};

/// x[row] = b[row] * inverse[row] - sum over entries of factor[entry.factor] * x[entry.unknown], and the forward pass
/// b[entry.unknown] -= factor * b[row].
struct Substitution {
  std::uint32_t row = 0;
  struct Entry { std::uint32_t lower, upper, unknown; };  ///< slots in factor: a_ik / a_kk and a_ki / a_kk
  std::vector<Entry> entries;
};

/// How a network node stands to the unknowns: potential = weight * unknown, where the weight is a product of transformer ratios.
struct NodeBinding {
  int unknown = -1;       ///< -1: ground's potential
  int via_element = -1;   ///< the ideal transformer through which it was merged, or -1
  int via_node = -1;      ///< the node at the transformer's other side, bound before this one
  bool inverse = false;   ///< this node is the from side: potential = potential(via_node) / ratio
};

struct Plan {
  std::uint32_t unknowns = 0;       ///< node unknowns + transformer currents
  std::uint32_t node_unknowns = 0;
  bool symmetric = true;
  std::vector<NodeBinding> bindings;     ///< by network node
  std::vector<int> binding_order;        ///< nodes in an order in which via_node comes first
  std::vector<int> current_unknown;      ///< by element: unknown of an unmerged ideal transformer's current, else -1
  std::uint32_t entry_slots = 0;         ///< a
  std::uint32_t factor_slots = 0;
  std::vector<std::uint32_t> order;      ///< unknowns in the order they are eliminated
  std::vector<Operation> operations;
  std::vector<Substitution> substitutions;  ///< in elimination order
  /// Slot of a_ij; `no_slot` where structurally zero. Dense lookup is for assembly lists made at plan time only.
  static constexpr std::uint32_t no_slot = UINT32_MAX;
  /// By element: the slots its stamp adds to, for terminals s, t in 0..3 (or its current's row): [4*s + t].
  struct Stamp {
    int terminals = 0;
    std::uint32_t slot[16];
    std::uint32_t border[8];  ///< ideal, unmerged: a(terminal, current), a(current, terminal)
  };
  std::vector<Stamp> stamps;
  std::uint32_t source_slot[4] = {no_slot, no_slot, no_slot, no_slot};  ///< (node, node), (node, other), (other, node), (other, other)
  std::vector<std::uint32_t> diagonal;  ///< slot of a_kk, by unknown
  std::vector<std::vector<std::uint32_t>> row_slots;  ///< by unknown: its off-diagonal slots before elimination (for the pivot test)
  std::vector<std::uint32_t> tie_slots;  ///< diagonals of floating sections' reference nodes
};

}  // namespace wattfall::plan
