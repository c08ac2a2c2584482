// Which parts meet at a node, and which of them lie on the source's side of it.
#include <algorithm>

#include "figures.hpp"

namespace wattfall::design {
namespace {

/// Coils that share flux carry power to each other without a common node.
std::vector<std::vector<int>> coupled_parts(const Design& design) {
  std::vector<std::vector<int>> coupled(design.parts.size());
  for (const Coupling& coupling : design.couplings) {
    coupled[coupling.first.index].push_back(coupling.second.index);
    coupled[coupling.second.index].push_back(coupling.first.index);
  }
  return coupled;
}

}  // namespace

Adjacency::Adjacency(const Design& design) : parts_at(design.nodes.size()), coupled(coupled_parts(design)) {
  for (std::size_t i = 0; i < design.parts.size(); ++i)
    for (const NodeId node : design.parts[i].terminals) {
      auto& parts = parts_at[node.index];
      const PartId part{static_cast<int>(i)};
      if (parts.empty() || parts.back() != part) parts.push_back(part);
    }
}

std::vector<bool> Adjacency::reached_before(const Design& design, NodeId node) const {
  std::vector<bool> part_seen(design.parts.size()), node_seen(design.nodes.size());
  std::vector<int> nodes;
  const auto visit_node = [&](NodeId next) {
    if (next == ground || next == node || !next || node_seen[next.index]) return;
    node_seen[next.index] = true;
    nodes.push_back(next.index);
  };
  std::vector<int> parts;
  const auto visit_part = [&](int part) {
    if (part_seen[part]) return;
    part_seen[part] = true;
    parts.push_back(part);
  };
  visit_node(design.source.node);
  visit_node(design.source.other);
  while (!nodes.empty() || !parts.empty()) {
    while (!parts.empty()) {
      const int part = parts.back();
      parts.pop_back();
      for (const NodeId next : design.parts[part].terminals) visit_node(next);
      for (const int other : coupled[part]) visit_part(other);
    }
    if (nodes.empty()) break;
    const int here = nodes.back();
    nodes.pop_back();
    for (const PartId part : parts_at[here]) visit_part(part.index);
  }
  return part_seen;
}

}  // namespace wattfall::design
