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

/// Calls `visit` on each node that a part has a terminal at, once.
template <class Visit>
void each_node(const Part& part, const Visit& visit) {
  const std::vector<NodeId>& terminals = part.terminals;
  for (auto node = terminals.begin(); node != terminals.end(); ++node)
    if (std::find(terminals.begin(), node, *node) == node) visit(*node);
}

}  // namespace

Adjacency::Adjacency(const Design& design) : first_of_(design.nodes.size() + 2) {
  // Counted two places on, so that filling in leaves each node's beginning one place on, and then in its own.
  for (const Part& part : design.parts) each_node(part, [&](NodeId node) { ++first_of_[node.index + 2]; });
  for (std::size_t i = 2; i < first_of_.size(); ++i) first_of_[i] += first_of_[i - 1];
  parts_.resize(first_of_.back());
  for (std::size_t i = 0; i < design.parts.size(); ++i)
    each_node(design.parts[i],
              [&](NodeId node) { parts_[first_of_[node.index + 1]++] = PartId{static_cast<int>(i)}; });
}

std::span<const PartId> Adjacency::parts_at(NodeId node) const {
  const std::size_t first = first_of_[node.index];
  return std::span(parts_).subspan(first, first_of_[node.index + 1] - first);
}

std::vector<bool> Adjacency::reached_before(const Design& design, NodeId node) const {
  const auto coupled = coupled_parts(design);
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
    for (const PartId part : parts_at(NodeId{here})) visit_part(part.index);
  }
  return part_seen;
}

}  // namespace wattfall::design
