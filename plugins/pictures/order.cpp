#include "order.hpp"

#include <algorithm>
#include <deque>

namespace pictures {
namespace {

class Orderer {
 public:
  explicit Orderer(const Circuit& circuit)
      : circuit_(circuit),
        at_(circuit.nodes.size()),
        distance_(circuit.nodes.size(), -1),
        parent_(circuit.nodes.size(), -1),
        seen_(circuit.nodes.size(), 0),
        skip_(circuit.nodes.size(), 0) {
    order_.on_main_path.assign(circuit.nodes.size(), 0);
    order_.chained_to.assign(circuit.items.size(), -1);
    for (std::size_t i = 0; i < circuit.items.size(); ++i)
      for (const int node : circuit.items[i].nodes)
        if (node != ground && (at(node).empty() || at(node).back() != static_cast<int>(i)))
          at(node).push_back(static_cast<int>(i));
  }

  Order make() {
    if (!circuit_.items.empty()) {
      for (const int node : circuit_.items[0].nodes) spread_from(node);
      mark_main_path();
      find_chains();
      find_bridges();
      for (const int node : circuit_.items[0].nodes) visit(node);
    }
    for (std::size_t node = 0; node < circuit_.nodes.size(); ++node) {
      spread_from(static_cast<int>(node));
      visit(static_cast<int>(node));
    }
    return std::move(order_);
  }

 private:
  std::vector<int>& at(int node) { return at_[static_cast<std::size_t>(node)]; }
  const Item& item(int i) const { return circuit_.items[static_cast<std::size_t>(i)]; }
  int& distance(int node) { return distance_[static_cast<std::size_t>(node)]; }
  int& parent(int node) { return parent_[static_cast<std::size_t>(node)]; }
  char& main(int node) { return order_.on_main_path[static_cast<std::size_t>(node)]; }

  void spread_from(int start) {
    if (start == ground || distance(start) >= 0) return;
    distance(start) = 0;
    std::deque<int> waiting{start};
    while (!waiting.empty()) {
      const int here = waiting.front();
      waiting.pop_front();
      for (const int i : at(here))
        for (const int next : item(i).nodes) {
          if (next == ground || distance(next) >= 0) continue;
          distance(next) = distance(here) + 1;
          parent(next) = here;
          waiting.push_back(next);
        }
    }
  }

  void mark_main_path() {
    for (const Item& one : circuit_.items) {
      if (one.symbol != Symbol::antenna && one.symbol != Symbol::load) continue;
      for (int node = one.nodes.empty() ? ground : one.nodes[0]; node != ground && !main(node); node = parent(node))
        main(node) = 1;
    }
    for (const int node : circuit_.items[0].nodes)
      if (node != ground) main(node) = 1;
  }

  /// From a part on ground back through nodes where only two parts meet, to the node where the chain hangs.
  void find_chains() {
    for (std::size_t i = 0; i < circuit_.items.size(); ++i) {
      const Item& last = circuit_.items[i];
      if (!is_one_port(last) || (last.nodes[0] == ground) == (last.nodes[1] == ground)) continue;
      Order::Chain chain;
      int here = static_cast<int>(i);
      int lower = ground;
      while (true) {
        const Item& one = item(here);
        chain.items.insert(chain.items.begin(), here);
        chain.mirrored.insert(chain.mirrored.begin(), one.nodes[0] == lower);
        const int upper = one.nodes[0] == lower ? one.nodes[1] : one.nodes[0];
        chain.node = upper;
        if (main(upper) || at(upper).size() != 2 || distance(upper) < 1) break;
        const int next = at(upper)[0] == here ? at(upper)[1] : at(upper)[0];
        const Item& before = item(next);
        if (!is_one_port(before) || before.nodes[0] == ground || before.nodes[1] == ground || next == 0) break;
        const int further = before.nodes[0] == upper ? before.nodes[1] : before.nodes[0];
        if (distance(further) >= distance(upper) || chain.items.size() >= 4) break;
        lower = upper;
        here = next;
      }
      for (const int one : chain.items)
        order_.chained_to[static_cast<std::size_t>(one)] = static_cast<int>(order_.chains.size());
      order_.chains.push_back(std::move(chain));
    }
    for (const Order::Chain& chain : order_.chains)
      for (std::size_t k = 0; k + 1 < chain.items.size(); ++k) {
        const Item& one = item(chain.items[k]);
        skip_[static_cast<std::size_t>(chain.mirrored[k] ? one.nodes[0] : one.nodes[1])] = 1;
      }
  }

  /// One-ports that join the two conductors of a side of a two-port.
  void find_bridges() {
    const auto pair = [&](int a, int b) {
      for (const int i : at(a)) {
        const Item& one = item(i);
        if (!is_two_port(one)) continue;
        for (std::size_t side = 0; side < 4; side += 2)
          if ((one.nodes[side] == a && one.nodes[side + 1] == b) || (one.nodes[side] == b && one.nodes[side + 1] == a))
            return true;
      }
      return false;
    };
    for (std::size_t i = 0; i < circuit_.items.size(); ++i) {
      const Item& one = circuit_.items[i];
      if (!is_one_port(one) || one.nodes[0] == ground || one.nodes[1] == ground || order_.chained_to[i] >= 0) continue;
      if (pair(one.nodes[0], one.nodes[1]) || (i == 0 && one.nodes[1] != ground))
        order_.bridges.push_back(static_cast<int>(i));
    }
  }

  /// Without recursion: networks may be long ladders. Children that lead to a load come last.
  void visit(int start) {
    if (start == ground || skip_[static_cast<std::size_t>(start)]) return;
    std::vector<int> waiting{start};
    while (!waiting.empty()) {
      const int here = waiting.back();
      waiting.pop_back();
      if (seen_[static_cast<std::size_t>(here)]) continue;
      seen_[static_cast<std::size_t>(here)] = 1;
      order_.nodes.push_back(here);
      leave_room_for_bridges();
      for (const int child : children_of(here)) waiting.push_back(child);
    }
  }

  /// A bridge stands right of both its nodes.
  void leave_room_for_bridges() {
    for (const int i : order_.bridges) {
      const Item& one = item(i);
      const int last = order_.nodes.back();
      if (last != one.nodes[0] && last != one.nodes[1]) continue;
      const int other = last == one.nodes[0] ? one.nodes[1] : one.nodes[0];
      if (seen_[static_cast<std::size_t>(other)]) room_ += 1;
    }
    for (; room_ > 0; --room_) order_.nodes.push_back(-1);
  }

  /// On the stack: the last is visited first. Of a pair the lower conductor stands nearer to its two-port, of a
  /// selector the lowest contact.
  std::vector<int> children_of(int here) {
    std::vector<int> ahead, beside, aside;  // on the way to a load; at a part that leads there; branches
    for (const int i : at(here)) {
      const bool leads = std::any_of(item(i).nodes.begin(), item(i).nodes.end(),
                                     [&](int n) { return n != ground && main(n) && parent(n) == here; });
      for (const int next : item(i).nodes) {
        if (next == ground || parent(next) != here || seen_[static_cast<std::size_t>(next)] ||
            skip_[static_cast<std::size_t>(next)])
          continue;
        auto& where = main(next) ? ahead : leads ? beside : aside;
        if (std::find(where.begin(), where.end(), next) == where.end()) where.push_back(next);
      }
    }
    ahead.insert(ahead.end(), beside.begin(), beside.end());
    ahead.insert(ahead.end(), aside.begin(), aside.end());
    return ahead;
  }

  const Circuit& circuit_;
  std::vector<std::vector<int>> at_;
  std::vector<int> distance_, parent_;
  std::vector<char> seen_, skip_;
  int room_ = 0;
  Order order_;
};

}  // namespace

bool is_one_port(const Item& item) {
  return !is_two_port(item) && item.symbol != Symbol::selector && item.nodes.size() == 2;
}

Order order_nodes(const Circuit& circuit) {
  return Orderer(circuit).make();
}

}  // namespace pictures
