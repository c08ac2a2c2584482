#include "reducer.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

namespace wattfall::walk {
namespace {

using graph::Element;
using Form = Element::Form;
using Role = Element::Role;

/// A branch or a two-port that still stands in the network.
struct Item {
  bool two_port = false, alive = true, choke = false;
  int which = 0;              ///< index of the branch, or of the element
  std::array<int, 4> node{};  ///< as Element::node
  int terminals() const { return two_port ? 4 : 2; }
};

class Reducer {
 public:
  Reducer(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Task& task)
      : design_(design), network_(network), values_(values), task_(task), at_(static_cast<std::size_t>(network.node_count)) {
    for (int e = 0; e < static_cast<int>(network.elements.size()); ++e) take_element(e);
    if (task.start_element < 0) spine_ = add_branch({.node = task.source_node, .other = task.source_other, .port = task.source});
  }

  Reduction run() {
    if (spine_ < 0) return std::move(out_);  // no such load
    while (!done() && (advance() || tidy())) {
    }
    if (!done()) out_.stop = where();
    out_.spine = items_[spine_].which;
    const OnePort& whole = out_.branches[out_.spine].port;
    if (!std::isfinite(std::abs(whole.n)) || !std::isfinite(std::abs(whole.d)) || (whole.n == 0.0 && whole.d == 0.0))
      out_.stop = Stop{Stop::Why::numbers, items_[spine_].node[0], {}};
    return std::move(out_);
  }

 private:
  // ---- what stands in the network ------------------------------------------------------------------------------

  void take_element(int e) {
    const Element& element = network_.elements[e];
    if (e == task_.left_out_element || is_choke_path(element)) return;
    if (element.form == Form::branch) {
      // An open contact is no branch at all.
      if (values_[e].d == 0.0 && e != task_.start_element) return out_.idle.push_back(e);
      const int item = add_branch({.element = e, .node = element.node[0], .other = element.node[1],
                                   .port = {values_[e].n, values_[e].d}, .loss = values_[e].loss});
      if (e == task_.start_element) spine_ = item;
      return;
    }
    Item item{.two_port = true, .which = e, .node = element.node};
    if (is_choke(element)) {  // the ideal pair joins (a, c) and (b, d): as ports they are (a, b) and (c, d)
      item.choke = true;
      item.node = {element.node[0], element.node[2], element.node[1], element.node[3]};
    }
    add_item(item);
  }

  bool is_choke(const Element& element) const {
    return element.form == Form::ideal && element.role == Role::difference &&
           std::holds_alternative<design::Choke>(design_.parts[element.part.index].model);
  }
  bool is_choke_path(const Element& element) const {
    return element.form == Form::branch && element.role == Role::common_mode;
  }

  int add_item(const Item& item) {
    items_.push_back(item);
    ++standing_;
    const int id = static_cast<int>(items_.size()) - 1;
    for (int t = 0; t < item.terminals(); ++t) at_[item.node[t]].push_back(id);
    return id;
  }
  int add_branch(const Branch& branch) {
    out_.branches.push_back(branch);
    return add_item({.which = static_cast<int>(out_.branches.size()) - 1, .node = {branch.node, branch.other, 0, 0}});
  }
  void remove(int id) {
    items_[id].alive = false;
    --standing_;
    for (int t = 0; t < items_[id].terminals(); ++t) std::erase(at_[items_[id].node[t]], id);
  }
  bool pinned(int node) const { return node == task_.port_node || node == task_.port_other; }
  bool done() const {
    const Item& spine = items_[spine_];
    const bool there = std::minmax(spine.node[0], spine.node[1]) == std::minmax(task_.port_node, task_.port_other);
    return there && standing_ == 1;
  }

  // ---- the rules -------------------------------------------------------------------------------------------------

  int join(Branch::Kind kind, int x, int y, int node, int other) {
    const Branch &first = out_.branches[items_[x].which], &second = out_.branches[items_[y].which];
    const Made made = kind == Branch::Kind::series ? in_series(first.port, second.port) : in_parallel(first.port, second.port);
    const Branch joined{.kind = kind, .first = items_[x].which, .second = items_[y].which, .node = node, .other = other,
                        .port = made.whole, .first_share = made.first, .second_share = made.second};
    remove(x);
    remove(y);
    return add_branch(joined);
  }

  /// Another branch between the same two nodes, or -1.
  int beside(int id) const {
    const Item& item = items_[id];
    const bool first = at_[item.node[0]].size() <= at_[item.node[1]].size();
    for (int other : at_[item.node[first ? 0 : 1]]) {
      const Item& found = items_[other];
      if (other != id && !found.two_port && std::minmax(found.node[0], found.node[1]) == std::minmax(item.node[0], item.node[1])) return other;
    }
    return -1;
  }

  /// The one branch that goes on from an end of this one, or -1.
  int onward(int id, int end) const {
    const int node = items_[id].node[end];
    const auto& here = at_[node];
    if (pinned(node) || here.size() != 2) return -1;
    const int other = here[0] == id ? here[1] : here[0];
    return other != id && !items_[other].two_port ? other : -1;
  }

  int series(int id, int end, int other) {
    const Item &one = items_[id], &two = items_[other];
    const int shared = one.node[end];
    const int near = one.node[1 - end], far = two.node[0] == shared ? two.node[1] : two.node[0];
    return join(Branch::Kind::series, id, other, near, far);
  }

  /// Whether nothing but branch `id` (-1: nothing at all) and the two-port stand at this node.
  bool alone(int node, int two_port, int id) const {
    const auto& here = at_[node];
    if (pinned(node) || std::count(here.begin(), here.end(), two_port) != 1) return false;
    return here.size() == (id < 0 ? 1u : 2u) && (id < 0 || std::count(here.begin(), here.end(), id) == 1);
  }

  /// Whether what stands at this port carries equal and opposite currents in its two conductors.
  bool closed_by(int two_port, int port, int id) const {
    const Item& item = items_[two_port];
    const int c = item.node[2 * port], d = item.node[2 * port + 1];
    if (item.choke) {
      const bool shared = item.node[1] == item.node[3] && item.node[1] == d;
      return shared ? alone(c, two_port, id) : alone(c, two_port, id) && alone(d, two_port, id);
    }
    return alone(c, two_port, id) || alone(d, two_port, id);
  }

  /// What a two-port makes of a branch at one of its ports.
  Made made_of(const Item& item, const OnePort& end, bool from_second) const {
    const solve::ElementValue& value = values_[item.which];
    switch (network_.elements[item.which].form) {
      case Form::line: return through_line(end, value.gamma_l, value.impedance);
      case Form::matrix: return through_matrix(end, value.a, value.b, from_second);
      default: return item.choke ? Made{end} : through_turns(end, value.ratio, from_second);
    }
  }

  int pass(int two_port, int port, int branch) {
    const Item item = items_[two_port];
    const bool from_second = port == 1;
    const Made made = made_of(item, out_.branches[branch].port, from_second);
    const int near = 1 - port;
    return add_branch({.kind = Branch::Kind::through, .element = item.which, .first = branch, .from_second = from_second,
                       .node = item.node[2 * near], .other = item.node[2 * near + 1], .port = made.whole, .first_share = made.first});
  }

  /// Tries to take branch `id` through a two-port; the new branch's item or -1.
  int through(int id) {
    for (int end : {0, 1}) {
      for (int other : at_[items_[id].node[end]]) {
        if (!items_[other].two_port) continue;
        for (int port : {1, 0}) {
          const Item& item = items_[other];
          const auto ends = std::minmax(item.node[2 * port], item.node[2 * port + 1]);
          if (ends != std::minmax(items_[id].node[0], items_[id].node[1]) || !closed_by(other, port, id)) continue;
          const int branch = items_[id].which;
          remove(id);
          remove(other);
          return pass(other, port, branch);
        }
      }
    }
    return -1;
  }

  /// One step of the branch that is followed.
  bool advance() {
    if (const int other = beside(spine_); other >= 0) {
      const Item& item = items_[spine_];
      spine_ = join(Branch::Kind::parallel, spine_, other, item.node[0], item.node[1]);
      return true;
    }
    for (int end : {0, 1})
      if (const int other = onward(spine_, end); other >= 0) return spine_ = series(spine_, end, other), true;
    if (const int next = through(spine_); next >= 0) return spine_ = next, true;
    return false;
  }

  // ---- branches beside -------------------------------------------------------------------------------------------

  /// One step of anything else, the nearest to the branch that is followed first; ground is near to everything, so it comes last.
  bool tidy() {
    std::vector<char> seen_node(at_.size(), 0), seen_item(items_.size(), 0);
    std::deque<int> nodes;
    seen_item[spine_] = 1;
    const auto reach = [&](int node) {
      if (node != 0 && seen_node[node] == 0) seen_node[node] = 1, nodes.push_back(node);
    };
    reach(items_[spine_].node[0]);
    reach(items_[spine_].node[1]);
    while (!nodes.empty()) {
      const std::vector<int> here = at_[nodes.front()];
      nodes.pop_front();
      for (int id : here) {
        if (seen_item[id] != 0) continue;
        seen_item[id] = 1;
        if (tidy_item(id)) return true;
        for (int t = 0; t < items_[id].terminals(); ++t) reach(items_[id].node[t]);
      }
    }
    for (int id = 0; id < static_cast<int>(items_.size()); ++id)
      if (items_[id].alive && seen_item[id] == 0 && tidy_item(id)) return true;
    return false;
  }
  bool tidy_item(int id) { return items_[id].two_port ? close_end(id) : reduce_branch(id); }

  bool reduce_branch(int id) {
    const Item item = items_[id];
    const auto dangles = [this](int node) { return !pinned(node) && at_[node].size() == 1; };
    if (item.node[0] == item.node[1] || dangles(item.node[0]) || dangles(item.node[1])) return drop(id), true;
    if (const int other = beside(id); other >= 0 && other != spine_)
      return join(Branch::Kind::parallel, id, other, item.node[0], item.node[1]), true;
    for (int end : {0, 1})
      if (const int other = onward(id, end); other >= 0 && other != spine_) return series(id, end, other), true;
    return through(id) >= 0;
  }

  /// A two-port that ends in nothing or in a short.
  bool close_end(int id) {
    for (int port : {1, 0}) {
      const int c = items_[id].node[2 * port], d = items_[id].node[2 * port + 1];
      const bool shorted = c == d;
      if (!shorted && (items_[id].choke || !(alone(c, id, -1) || alone(d, id, -1)))) continue;
      out_.branches.push_back({.kind = Branch::Kind::end, .element = items_[id].which, .node = c, .other = d,
                               .port = shorted ? OnePort{0.0, 1.0} : OnePort{1.0, 0.0}});
      remove(id);
      pass(id, port, static_cast<int>(out_.branches.size()) - 1);
      return true;
    }
    return false;
  }

  /// No current goes where there is no way on.
  void drop(int id) {
    std::vector<int> below{items_[id].which};
    while (!below.empty()) {
      const Branch& branch = out_.branches[below.back()];
      below.pop_back();
      if (branch.element >= 0 && branch.kind != Branch::Kind::end) out_.idle.push_back(branch.element);
      if (branch.first >= 0) below.push_back(branch.first);
      if (branch.second >= 0) below.push_back(branch.second);
    }
    remove(id);
  }

  // ---- where it stops --------------------------------------------------------------------------------------------

  void name_parts(int id, std::vector<design::PartId>& parts) const {
    int element = items_[id].which;
    if (!items_[id].two_port) {
      int branch = items_[id].which;
      while (out_.branches[branch].element < 0 && out_.branches[branch].first >= 0) branch = out_.branches[branch].first;
      element = out_.branches[branch].element;
    }
    if (element < 0) return;
    const design::PartId part = network_.elements[element].part;
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
  }

  Stop where() const {
    const Item& spine = items_[spine_];
    int end = spine.node[0] == 0 ? 1 : 0;
    if (at_[spine.node[end]].size() <= 1 && spine.node[1 - end] != 0) end = 1 - end;
    Stop stop{.node = spine.node[end], .parts = {}};
    if (at_[stop.node].size() <= 1) return stop.why = Stop::Why::cut_off, stop;
    bool two_port = false;
    for (int id : at_[stop.node]) {
      if (id == spine_) continue;
      two_port |= items_[id].two_port;
      name_parts(id, stop.parts);
    }
    stop.why = two_port && at_[stop.node].size() == 2 ? Stop::Why::not_port : Stop::Why::crossing;
    return stop;
  }

  const design::Design& design_;
  const graph::Network& network_;
  std::span<const solve::ElementValue> values_;
  Task task_;
  std::vector<std::vector<int>> at_;  ///< items at a node, once a terminal
  std::vector<Item> items_;
  int standing_ = 0;  ///< items that are left
  int spine_ = -1;
  Reduction out_;
};

}  // namespace

Reduction reduce(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Task& task) {
  return Reducer(design, network, values, task).run();
}

}  // namespace wattfall::walk
