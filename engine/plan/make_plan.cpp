// Binds nodes to unknowns, lists the matrix's entries, chooses the order and writes the operations down.
#include "plan/make_plan.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include "elimination_order.hpp"

namespace wattfall::plan {
namespace {

using graph::Element;

bool merges(const Element& element) {
  return element.form == Element::Form::ideal && element.node[1] == 0 && element.node[3] == 0;
}

/// Gives every node its unknown, walking trees of merged transformers from the source's node outwards.
void bind_nodes(const graph::Network& network, Plan& plan) {
  std::vector<std::vector<int>> joined(network.node_count);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    if (!merges(network.elements[e])) continue;
    joined[network.elements[e].node[0]].push_back(static_cast<int>(e));
    joined[network.elements[e].node[2]].push_back(static_cast<int>(e));
  }
  plan.bindings.assign(network.node_count, {});
  std::vector<bool> bound(network.node_count, false);
  bound[0] = true;
  const auto grow = [&](int root) {
    if (bound[root]) return;
    bound[root] = true;
    plan.bindings[root].unknown = static_cast<int>(plan.node_unknowns++);
    std::vector<int> queue{root};
    for (std::size_t next = 0; next < queue.size(); ++next) {
      const int node = queue[next];
      plan.binding_order.push_back(node);
      for (int e : joined[node]) {
        const Element& element = network.elements[e];
        const bool from_side = element.node[0] == node;
        const int other = from_side ? element.node[2] : element.node[0];
        if (bound[other]) continue;
        bound[other] = true;
        plan.bindings[other] = {plan.bindings[root].unknown, e, node, !from_side};
        queue.push_back(other);
      }
    }
  };
  grow(network.source_node);
  for (int node = 1; node < network.node_count; ++node) grow(node);
}

/// The sparse pattern while it is being filled: which unknowns each is joined to.
class Pattern {
 public:
  Pattern(std::uint32_t unknowns, bool symmetric) : symmetric_(symmetric), rows_(unknowns) {}

  /// The slot of a_ij, made where there is none yet.
  std::uint32_t slot(std::uint32_t i, std::uint32_t j) {
    if (symmetric_ && j > i) std::swap(i, j);
    const auto [found, fresh] = slots_.try_emplace((std::uint64_t{i} << 32) | j, static_cast<std::uint32_t>(slots_.size()));
    if (fresh && i != j) {
      rows_[i].insert(j);
      rows_[j].insert(i);
    }
    return found->second;
  }
  const std::set<std::uint32_t>& neighbours(std::uint32_t i) const { return rows_[i]; }
  void remove(std::uint32_t i) {
    for (std::uint32_t j : rows_[i]) rows_[j].erase(i);
  }
  std::uint32_t size() const { return static_cast<std::uint32_t>(slots_.size()); }

 private:
  bool symmetric_;
  std::vector<std::set<std::uint32_t>> rows_;
  std::unordered_map<std::uint64_t, std::uint32_t> slots_;
};

/// In a symmetric matrix only the lower triangle is kept: what would stand above it is not stamped a second time.
bool mirrored(const Plan& plan, int row, int column) { return plan.symmetric && row < column; }

void stamp_elements(const graph::Network& network, Plan& plan, Pattern& pattern) {
  plan.stamps.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const Element& element = network.elements[e];
    Plan::Stamp& stamp = plan.stamps[e];
    std::fill(std::begin(stamp.slot), std::end(stamp.slot), Plan::no_slot);
    std::fill(std::begin(stamp.border), std::end(stamp.border), Plan::no_slot);
    if (merges(element)) continue;
    stamp.terminals = 2 * element.ports();
    for (int s = 0; s < stamp.terminals; ++s) {
      const int row = plan.bindings[element.node[s]].unknown;
      if (row < 0) continue;
      if (element.form == Element::Form::ideal) {
        const auto current = static_cast<std::uint32_t>(plan.current_unknown[e]);
        if (!plan.symmetric) stamp.border[2 * s] = pattern.slot(row, current);
        stamp.border[2 * s + 1] = pattern.slot(current, row);
        continue;
      }
      for (int t = 0; t < stamp.terminals; ++t) {
        const int column = plan.bindings[element.node[t]].unknown;
        if (column >= 0 && !mirrored(plan, row, column)) stamp.slot[4 * s + t] = pattern.slot(row, column);
      }
    }
  }
}

void stamp_source(const graph::Network& network, Plan& plan, Pattern& pattern) {
  const int ends[2] = {plan.bindings[network.source_node].unknown, plan.bindings[network.source_other].unknown};
  for (int s = 0; s < 2; ++s)
    for (int t = 0; t < 2; ++t)
      if (ends[s] >= 0 && ends[t] >= 0 && !mirrored(plan, ends[s], ends[t])) plan.source_slot[2 * s + t] = pattern.slot(ends[s], ends[t]);
}

/// Transformer currents have no diagonal of their own, so they wait for the nodes; the source's node is the last of all.
std::vector<unsigned> held_back(const graph::Network& network, const Plan& plan) {
  std::vector<unsigned> last;
  for (std::uint32_t current = plan.node_unknowns; current < plan.unknowns; ++current) last.push_back(current);
  const int source = plan.bindings[network.source_node].unknown, other = plan.bindings[network.source_other].unknown;
  if (other >= 0 && other != source) last.push_back(other);
  last.push_back(source);
  return last;
}

std::vector<std::pair<unsigned, unsigned>> edges_of(const Plan& plan, const Pattern& pattern) {
  std::vector<std::pair<unsigned, unsigned>> edges;
  for (std::uint32_t i = 0; i < plan.unknowns; ++i)
    for (std::uint32_t j : pattern.neighbours(i))
      if (i < j) edges.emplace_back(i, j);
  return edges;
}

/// Symbolic elimination in the chosen order: every operation that the numbers will need, once and for all.
void compile(Plan& plan, Pattern& pattern) {
  for (std::uint32_t k : plan.order) {
    const std::vector<std::uint32_t> joined(pattern.neighbours(k).begin(), pattern.neighbours(k).end());
    plan.operations.push_back({Operation::Code::invert, k, pattern.slot(k, k), 0});
    Substitution substitution{.row = k, .entries = {}};
    for (std::uint32_t i : joined) {
      const std::uint32_t lower = plan.factor_slots++;
      plan.operations.push_back({Operation::Code::scale, lower, pattern.slot(i, k), k});
      std::uint32_t upper = lower;
      if (!plan.symmetric) {
        upper = plan.factor_slots++;
        plan.operations.push_back({Operation::Code::scale, upper, pattern.slot(k, i), k});
      }
      substitution.entries.push_back({lower, upper, i});
    }
    for (std::size_t m = 0; m < joined.size(); ++m)
      for (std::size_t n = 0; n < joined.size(); ++n) {
        const std::uint32_t i = joined[m], j = joined[n];
        if (plan.symmetric && j > i) continue;
        plan.operations.push_back({Operation::Code::update, pattern.slot(i, j), substitution.entries[m].lower, pattern.slot(k, j)});
      }
    plan.substitutions.push_back(std::move(substitution));
    pattern.remove(k);
  }
}

}  // namespace

Plan make_plan(const graph::Network& network) {
  Plan plan;
  bind_nodes(network, plan);
  plan.unknowns = plan.node_unknowns;
  plan.current_unknown.assign(network.elements.size(), -1);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const Element& element = network.elements[e];
    plan.symmetric &= element.form != Element::Form::matrix || element.role == Element::Role::coupled;
    if (element.form == Element::Form::ideal && !merges(element)) plan.current_unknown[e] = static_cast<int>(plan.unknowns++);
  }
  Pattern pattern(plan.unknowns, plan.symmetric);
  for (std::uint32_t k = 0; k < plan.unknowns; ++k) plan.diagonal.push_back(pattern.slot(k, k));
  stamp_elements(network, plan, pattern);
  stamp_source(network, plan, pattern);
  for (int node : network.floating_reference) plan.tie_slots.push_back(plan.diagonal[plan.bindings[node].unknown]);
  plan.row_slots.resize(plan.unknowns);
  for (std::uint32_t i = 0; i < plan.unknowns; ++i)
    for (std::uint32_t j : pattern.neighbours(i)) plan.row_slots[i].push_back(pattern.slot(i, j));
  plan.order = elimination_order(plan.unknowns, edges_of(plan, pattern), held_back(network, plan));
  compile(plan, pattern);
  plan.entry_slots = pattern.size();
  return plan;
}

}  // namespace wattfall::plan
