// Binds nodes to unknowns, lists the matrix's entries, chooses the order and writes the operations down.
#include "plan/make_plan.hpp"

#include <algorithm>
#include <utility>

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

/// The sparse pattern. First unknowns are joined; then, in an order, eliminated, which joins those around each; then entries have slots: the columns one
/// after the other as they leave, in each the diagonal and then the rows that are left, as they leave.
class Pattern {
 public:
  Pattern(std::uint32_t unknowns, bool symmetric) : symmetric_(symmetric), joined_(unknowns), place_(unknowns), first_(unknowns) {}

  void join(std::uint32_t i, std::uint32_t j) {
    if (i == j) return;
    joined_[i].push_back(j);
    joined_[j].push_back(i);
  }

  /// No more will be joined: every neighbour once.
  void close() {
    for (std::vector<std::uint32_t>& row : joined_) {
      std::sort(row.begin(), row.end());
      row.erase(std::unique(row.begin(), row.end()), row.end());
    }
  }
  const std::vector<std::uint32_t>& neighbours(std::uint32_t i) const { return joined_[i]; }

  /// What is left around an unknown when it leaves is what it was joined to, and what was left around those whose next it is.
  void eliminate(const std::vector<std::uint32_t>& order) {
    for (std::uint32_t at = 0; at < order.size(); ++at) place_[order[at]] = at;
    left_.assign(joined_.size(), {});
    size_ = 0;
    std::vector<std::vector<std::uint32_t>> next_of(joined_.size());
    std::vector<std::uint32_t> seen(joined_.size(), UINT32_MAX);
    for (std::uint32_t k : order) {
      std::vector<std::uint32_t>& left = left_[k];
      seen[k] = k;
      const auto take = [&](const std::vector<std::uint32_t>& from) {
        for (std::uint32_t i : from)
          if (place_[i] > place_[k] && std::exchange(seen[i], k) != k) left.push_back(i);
      };
      take(joined_[k]);
      for (std::uint32_t earlier : next_of[k]) take(left_[earlier]);
      std::sort(left.begin(), left.end(), [&](std::uint32_t i, std::uint32_t j) { return place_[i] < place_[j]; });
      if (!left.empty()) next_of[left.front()].push_back(k);
      first_[k] = size_;
      size_ += 1 + static_cast<std::uint32_t>(left.size()) * (symmetric_ ? 1 : 2);
    }
  }
  /// The order with the unknowns that are joined to each other one after the other: each tree of "who is left first around whom" from its leaves to its root, with
  /// the same entries and operations. The last `held` unknowns keep their places. Needs `eliminate`, which is to be called again with what comes out.
  std::vector<std::uint32_t> grouped(const std::vector<std::uint32_t>& order, std::size_t held) const {
    const std::size_t free = order.size() - held;
    const auto next_of = [&](std::uint32_t k) { return left_[k].empty() || place_[left_[k].front()] >= free ? UINT32_MAX : left_[k].front(); };
    // Children as lists within two arrays: the first of each, and the next after each.
    std::vector<std::uint32_t> first(order.size(), UINT32_MAX), after(order.size(), UINT32_MAX), stack, result;
    for (std::size_t at = free; at-- > 0;)
      if (const std::uint32_t next = next_of(order[at]); next != UINT32_MAX) after[order[at]] = std::exchange(first[next], order[at]);
    for (std::size_t at = 0; at < free; ++at) {
      if (next_of(order[at]) != UINT32_MAX) continue;
      stack.push_back(order[at]);
      while (!stack.empty()) {
        const std::uint32_t k = stack.back(), child = first[k];
        if (child == UINT32_MAX) {
          result.push_back(k);
          stack.pop_back();
        } else {
          first[k] = after[child];
          stack.push_back(child);
        }
      }
    }
    result.insert(result.end(), order.begin() + static_cast<std::ptrdiff_t>(free), order.end());
    return result;
  }

  /// The unknowns around k when it leaves, as they leave themselves.
  const std::vector<std::uint32_t>& left(std::uint32_t k) const { return left_[k]; }

  /// The slot of a_ij.
  std::uint32_t slot(std::uint32_t i, std::uint32_t j) const {
    if (i == j) return first_[i];
    const bool below = place_[i] > place_[j];
    const std::uint32_t k = below ? j : i, other = below ? i : j;
    const auto at = std::lower_bound(left_[k].begin(), left_[k].end(), place_[other], [&](std::uint32_t row, std::uint32_t place) { return place_[row] < place; });
    return slot_in(k, static_cast<std::uint32_t>(at - left_[k].begin()), below);
  }
  /// The slot of the nth entry left in k's column, or row.
  std::uint32_t slot_in(std::uint32_t k, std::uint32_t n, bool below) const { return first_[k] + 1 + (symmetric_ ? n : 2 * n + (below ? 0 : 1)); }
  std::uint32_t size() const { return size_; }

 private:
  bool symmetric_;
  std::uint32_t size_ = 0;
  std::vector<std::vector<std::uint32_t>> joined_, left_;
  std::vector<std::uint32_t> place_, first_;
};

/// In a symmetric matrix only the lower triangle is kept: what would stand above it is not stamped a second time.
bool mirrored(const Plan& plan, int row, int column) { return plan.symmetric && row < column; }

/// Calls visit(where, row, column) for every entry that an element adds to; `where` is what to remember its slot in.
template <class Visit>
void visit_stamp(const Element& element, Plan& plan, std::size_t e, Visit visit) {
  Plan::Stamp& stamp = plan.stamps[e];
  for (int s = 0; s < stamp.terminals; ++s) {
    const int row = plan.bindings[element.node[s]].unknown;
    if (row < 0) continue;
    if (element.form == Element::Form::ideal) {
      const int current = plan.current_unknown[e];
      if (!plan.symmetric) visit(stamp.border[2 * s], row, current);
      visit(stamp.border[2 * s + 1], current, row);
      continue;
    }
    for (int t = 0; t < stamp.terminals; ++t) {
      const int column = plan.bindings[element.node[t]].unknown;
      if (column >= 0 && !mirrored(plan, row, column)) visit(stamp.slot[4 * s + t], row, column);
    }
  }
}

template <class Visit>
void visit_stamps(const graph::Network& network, Plan& plan, Visit visit) {
  for (std::size_t e = 0; e < network.elements.size(); ++e) visit_stamp(network.elements[e], plan, e, visit);
  const int ends[2] = {plan.bindings[network.source_node].unknown, plan.bindings[network.source_other].unknown};
  for (int s = 0; s < 2; ++s)
    for (int t = 0; t < 2; ++t)
      if (ends[s] >= 0 && ends[t] >= 0 && !mirrored(plan, ends[s], ends[t])) visit(plan.source_slot[2 * s + t], ends[s], ends[t]);
}

void make_stamps(const graph::Network& network, Plan& plan) {
  plan.stamps.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    Plan::Stamp& stamp = plan.stamps[e];
    std::fill(std::begin(stamp.slot), std::end(stamp.slot), Plan::no_slot);
    std::fill(std::begin(stamp.border), std::end(stamp.border), Plan::no_slot);
    if (!merges(network.elements[e])) stamp.terminals = 2 * network.elements[e].ports();
  }
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

/// Every operation that the numbers will need, once and for all.
class Writer {
 public:
  Writer(Plan& plan, const Pattern& pattern) : plan_(plan), pattern_(pattern) {}

  void write() {
    for (std::uint32_t k : plan_.order) {
      const std::vector<std::uint32_t>& left = pattern_.left(k);
      plan_.operations.push_back({Operation::Code::invert, k, pattern_.slot(k, k), 0});
      Substitution substitution{.row = k, .entries = {}};
      substitution.entries.reserve(left.size());
      for (std::uint32_t m = 0; m < left.size(); ++m) substitution.entries.push_back(write_factors(k, m));
      find_slots(left);
      for (std::uint32_t m = 0; m < left.size(); ++m)
        for (std::uint32_t n = 0; n < left.size(); ++n)
          if (!plan_.symmetric || n <= m)
            plan_.operations.push_back({Operation::Code::update, slots_[m * left.size() + n], substitution.entries[m].lower, pattern_.slot_in(k, n, false)});
      plan_.substitutions.push_back(std::move(substitution));
    }
  }

 private:
  Substitution::Entry write_factors(std::uint32_t k, std::uint32_t m) {
    const std::uint32_t lower = plan_.factor_slots++;
    plan_.operations.push_back({Operation::Code::scale, lower, pattern_.slot_in(k, m, true), k});
    std::uint32_t upper = lower;
    if (!plan_.symmetric) {
      upper = plan_.factor_slots++;
      plan_.operations.push_back({Operation::Code::scale, upper, pattern_.slot_in(k, m, false), k});
    }
    return {lower, upper, pattern_.left(k)[m]};
  }

  /// Slots of a_ij for all pairs of `rows`, which stand in the order they leave in: those later than one are all left when it leaves, so one walk along its
  /// column finds them.
  void find_slots(const std::vector<std::uint32_t>& rows) {
    const std::size_t count = rows.size();
    slots_.resize(count * count);
    for (std::size_t n = 0; n < count; ++n) {
      slots_[n * count + n] = pattern_.slot(rows[n], rows[n]);
      const std::vector<std::uint32_t>& column = pattern_.left(rows[n]);
      std::uint32_t at = 0;
      for (std::size_t m = n + 1; m < count; ++m) {
        while (column[at] != rows[m]) ++at;
        slots_[m * count + n] = pattern_.slot_in(rows[n], at, true);
        slots_[n * count + m] = pattern_.slot_in(rows[n], at, false);
      }
    }
  }

  Plan& plan_;
  const Pattern& pattern_;
  std::vector<std::uint32_t> slots_;
};

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
  make_stamps(network, plan);
  Pattern pattern(plan.unknowns, plan.symmetric);
  visit_stamps(network, plan, [&](std::uint32_t&, int row, int column) { pattern.join(static_cast<std::uint32_t>(row), static_cast<std::uint32_t>(column)); });
  pattern.close();
  const std::vector<unsigned> last = held_back(network, plan);
  plan.order = elimination_order(plan.unknowns, edges_of(plan, pattern), last);
  pattern.eliminate(plan.order);
  plan.order = pattern.grouped(plan.order, last.size());
  pattern.eliminate(plan.order);
  visit_stamps(network, plan, [&](std::uint32_t& slot, int row, int column) { slot = pattern.slot(static_cast<std::uint32_t>(row), static_cast<std::uint32_t>(column)); });
  for (std::uint32_t k = 0; k < plan.unknowns; ++k) plan.diagonal.push_back(pattern.slot(k, k));
  for (int node : network.floating_reference) plan.tie_slots.push_back(plan.diagonal[plan.bindings[node].unknown]);
  plan.row_slots.resize(plan.unknowns);
  for (std::uint32_t i = 0; i < plan.unknowns; ++i)
    for (std::uint32_t j : pattern.neighbours(i)) plan.row_slots[i].push_back(pattern.slot(i, j));
  Writer(plan, pattern).write();
  plan.entry_slots = pattern.size();
  return plan;
}

}  // namespace wattfall::plan
