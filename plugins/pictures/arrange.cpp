#include "arrange.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "order.hpp"

namespace pictures {
namespace {

/// Who owns each cell. Position 2c is column c, 2s + 1 slot s.
class Cells {
 public:
  explicit Cells(int positions) : positions_(positions) {}

  static int wire(int node) { return node + 1; }
  static int part(int item) { return -item - 1; }

  struct Claim {
    int row, from, to, owner;
  };

  bool free(const Claim& claim) const {
    const auto found = rows_.find(claim.row);
    if (found == rows_.end()) return true;
    for (int p = claim.from; p <= claim.to; ++p) {
      const int owner = found->second[static_cast<std::size_t>(p)];
      if (owner != 0 && (owner != claim.owner || owner < 0)) return false;
    }
    return true;
  }
  void take(const Claim& claim) {
    auto& row = rows_.try_emplace(claim.row, static_cast<std::size_t>(positions_), 0).first->second;
    for (int p = claim.from; p <= claim.to; ++p) row[static_cast<std::size_t>(p)] = claim.owner;
  }
  bool take_all(const std::vector<Claim>& claims) {
    if (!std::all_of(claims.begin(), claims.end(), [&](const Claim& c) { return free(c); })) return false;
    // Claims of one part may clash among themselves: two nodes' wires on one row.
    for (std::size_t i = 0; i < claims.size(); ++i)
      for (std::size_t k = 0; k < i; ++k)
        if (claims[i].row == claims[k].row && claims[i].owner != claims[k].owner && claims[i].from <= claims[k].to &&
            claims[k].from <= claims[i].to)
          return false;
    for (const Claim& claim : claims) take(claim);
    return true;
  }
  const std::map<int, std::vector<int>>& rows() const { return rows_; }

 private:
  int positions_;
  std::map<int, std::vector<int>> rows_;
};

class Arranger {
 public:
  explicit Arranger(const Circuit& circuit)
      : circuit_(circuit), order_(order_nodes(circuit)), cells_(static_cast<int>(2 * order_.nodes.size() + 2)) {
    grid_.columns = order_.nodes;
    grid_.column_of.assign(circuit.nodes.size(), -1);
    for (std::size_t c = 0; c < grid_.columns.size(); ++c)
      if (grid_.columns[c] >= 0) grid_.column_of[static_cast<std::size_t>(grid_.columns[c])] = static_cast<int>(c);
    homes_.assign(circuit.nodes.size(), std::nullopt);
  }

  Grid make() {
    for (const int i : by_importance()) place_lying(i);
    for (const int i : order_.bridges) place_bridge(i);
    settle_homes();
    for (const Order::Chain& chain : order_.chains) hang(chain);
    outline();
    return std::move(grid_);
  }

 private:
  const Item& item(int i) const { return circuit_.items[static_cast<std::size_t>(i)]; }
  int column(int node) const { return grid_.column_of[static_cast<std::size_t>(node)]; }
  std::optional<int>& home(int node) { return homes_[static_cast<std::size_t>(node)]; }

  bool lies(std::size_t i) const {
    return order_.chained_to[i] < 0 &&
           std::find(order_.bridges.begin(), order_.bridges.end(), static_cast<int>(i)) == order_.bridges.end();
  }

  /// What stands on the way to a load first, from the left: it gets the first row.
  std::vector<int> by_importance() const {
    std::vector<int> items;
    for (std::size_t i = 0; i < circuit_.items.size(); ++i)
      if (lies(i)) items.push_back(static_cast<int>(i));
    const auto rank = [&](int i) {
      int off_path = 0, first = static_cast<int>(grid_.columns.size());
      for (const int node : item(i).nodes) {
        if (node == ground) continue;
        off_path += order_.on_main_path[static_cast<std::size_t>(node)] ? 0 : 1;
        first = std::min(first, column(node));
      }
      const bool carries_pair = is_two_port(item(i)) || item(i).symbol == Symbol::selector;
      return std::tuple(off_path > 0 && !carries_pair, first, off_path, i);
    };
    std::sort(items.begin(), items.end(), [&](int a, int b) { return rank(a) < rank(b); });
    return items;
  }

  /// Terminals by side and row, before it is known on which side of the drawing they come.
  struct Sides {
    std::vector<std::pair<int, int>> in, out;  ///< node, row
    int height = 1;
  };
  Sides sides_of(const Item& one) const {
    Sides sides;
    if (one.symbol == Symbol::selector) {
      sides.in.push_back({one.nodes[0], 0});
      for (std::size_t k = 1; k < one.nodes.size(); ++k) sides.out.push_back({one.nodes[k], static_cast<int>(k) - 1});
      sides.height = std::max(1, static_cast<int>(one.nodes.size()) - 1);
    } else if (is_two_port(one)) {
      sides.in = {{one.nodes[0], 0}, {one.nodes[1], 1}};
      sides.out = {{one.nodes[2], 0}, {one.nodes[3], 1}};
      const bool pair = one.nodes[1] != ground || one.nodes[3] != ground;
      const bool wound =
          one.symbol == Symbol::transformer || one.symbol == Symbol::coupled || one.symbol == Symbol::choke;
      const bool grounded_above = one.nodes[0] == ground || one.nodes[2] == ground;
      sides.height = pair || wound || grounded_above ? 2 : 1;
    } else {
      const bool turned =
          one.nodes[0] != ground && one.nodes[1] != ground && column(one.nodes[0]) > column(one.nodes[1]);
      sides.in.push_back({one.nodes[turned ? 1 : 0], 0});
      sides.out.push_back({one.nodes[turned ? 0 : 1], 0});
    }
    return sides;
  }

  void place_lying(int i) {
    const Sides sides = sides_of(item(i));
    int in_first = 1 << 20, in_last = -1, out_first = 1 << 20, out_last = -1;
    for (const auto& [node, row] : sides.in)
      if (node != ground) in_first = std::min(in_first, column(node)), in_last = std::max(in_last, column(node));
    for (const auto& [node, row] : sides.out)
      if (node != ground) out_first = std::min(out_first, column(node)), out_last = std::max(out_last, column(node));
    Lying lying{.item = i, .slot = 0, .row = 0, .height = sides.height, .mirrored = false, .pins = {}};
    lying.mirrored = out_last >= 0 && in_last >= 0 && out_last < in_first;
    const int left_last = lying.mirrored ? out_last : in_last, right_first = lying.mirrored ? in_first : out_first;
    lying.slot = right_first > left_last && right_first < (1 << 20) ? right_first - 1 : std::max(left_last, 0);
    for (const auto& [node, row] : sides.in) lying.pins.push_back({.node = node, .row = row, .left = !lying.mirrored});
    for (const auto& [node, row] : sides.out) lying.pins.push_back({.node = node, .row = row, .left = lying.mirrored});
    find_rows(lying);
  }

  void find_rows(Lying lying) {
    const bool parallel = is_one_port(item(lying.item));
    int start = 0;
    bool known = false;
    for (const Pin& pin : lying.pins)
      if (pin.node != ground && home(pin.node) && !known) start = *home(pin.node) - pin.row, known = true;
    for (int step = 0;; ++step) {
      const int down = start + (step + 1) / 2, up = start - (step + 1) / 2;
      const bool upward = parallel ? step % 2 == 1 : step % 2 == 0;
      lying.row = upward ? up : down;
      if (try_rows(lying)) return;
    }
  }

  bool try_rows(Lying& lying) {
    std::vector<Cells::Claim> claims;
    const int middle = 2 * lying.slot + 1;
    for (int d = 0; d < lying.height; ++d) claims.push_back({lying.row + d, middle, middle, Cells::part(lying.item)});
    std::vector<Pin*> around;
    for (Pin& pin : lying.pins) {
      if (pin.node == ground) continue;
      const int at = 2 * column(pin.node), row = lying.row + pin.row;
      pin.detour = pin.left ? at > middle : at < middle;
      if (pin.detour)
        around.push_back(&pin);
      else
        claims.push_back({row, std::min(at, pin.left ? at : middle + 1), std::max(at, pin.left ? middle - 1 : at),
                          Cells::wire(pin.node)});
    }
    if (around.empty()) {
      if (!cells_.take_all(claims)) return false;
      commit(lying);
      return true;
    }
    for (Pin* pin : around) {
      const int at = 2 * column(pin->node);
      bool found = false;
      for (int distance = 1; distance < 4096 && !found; ++distance)
        for (const int row : {lying.row + lying.height - 1 + distance, lying.row - distance}) {
          const Cells::Claim claim{row, std::min(at, middle), std::max(at, middle), Cells::wire(pin->node)};
          auto more = claims;
          more.push_back(claim);
          Cells trial = cells_;
          if (!trial.take_all(more)) continue;
          claims = std::move(more);
          pin->detour_row = row;
          found = true;
          break;
        }
      if (!found) return false;
    }
    if (!cells_.take_all(claims)) return false;
    commit(lying);
    return true;
  }

  void commit(const Lying& lying) {
    for (const Pin& pin : lying.pins)
      if (pin.node != ground && !home(pin.node)) home(pin.node) = pin.detour ? pin.detour_row : lying.row + pin.row;
    grid_.lying.push_back(lying);
  }

  /// Where its two nodes have neighbouring rows that are free up to the slot right of both; else it lies like any
  /// other.
  void place_bridge(int i) {
    const Item& one = item(i);
    const int a = one.nodes[0], b = one.nodes[1];
    if (!home(a) && !home(b)) home(a) = 0, home(b) = 1;
    if (home(a) && home(b) && std::abs(*home(a) - *home(b)) == 1) {
      const bool mirrored = *home(a) > *home(b);
      const int upper = mirrored ? b : a, lower = mirrored ? a : b, row = *home(upper);
      const int last = std::max(column(a), column(b));
      for (int slot = last; slot < last + 3 && slot < grid_.slots(); ++slot) {
        const int middle = 2 * slot + 1;
        const std::vector<Cells::Claim> claims = {{row, middle, middle, Cells::part(i)},
                                                  {row + 1, middle, middle, Cells::part(i)},
                                                  {row, 2 * column(upper), middle - 1, Cells::wire(upper)},
                                                  {row + 1, 2 * column(lower), middle - 1, Cells::wire(lower)}};
        if (!cells_.take_all(claims)) continue;
        grid_.bridges.push_back({i, slot, row, mirrored});
        return;
      }
    }
    place_lying(i);
  }

  void settle_homes() {
    for (std::size_t node = 0; node < homes_.size(); ++node) {
      if (grid_.column_of[node] < 0) continue;
      const int at = 2 * grid_.column_of[node];
      int row = homes_[node].value_or(0);
      while (!cells_.take_all({{row, at, at, Cells::wire(static_cast<int>(node))}})) ++row;
      homes_[node] = row;
    }
    for (const auto& row : homes_) grid_.home_row.push_back(row.value_or(0));
  }

  void hang(const Order::Chain& chain) {
    if (chain.items.size() == 1 && item(chain.items[0]).symbol == Symbol::antenna) {
      grid_.rising.push_back(chain.items[0]);
      return;
    }
    grid_.hanging.push_back({chain.node, chain.items, chain.mirrored});
  }

  void outline() {
    grid_.top_row.assign(grid_.columns.size(), 0);
    grid_.bottom_row.assign(grid_.columns.size(), 0);
    std::vector<char> seen(grid_.columns.size(), 0);
    bool any = false;
    for (const auto& [row, owners] : cells_.rows()) {
      for (std::size_t c = 0; c < grid_.columns.size(); ++c) {
        if (owners[2 * c] == 0) continue;
        grid_.top_row[c] = seen[c] ? std::min(grid_.top_row[c], row) : row;
        grid_.bottom_row[c] = seen[c] ? std::max(grid_.bottom_row[c], row) : row;
        seen[c] = 1;
      }
      grid_.first_row = any ? std::min(grid_.first_row, row) : row;
      grid_.last_row = any ? std::max(grid_.last_row, row) : row;
      any = true;
    }
  }

  const Circuit& circuit_;
  Order order_;
  Cells cells_;
  Grid grid_;
  std::vector<std::optional<int>> homes_;
};

}  // namespace

Grid arrange(const Circuit& circuit) {
  return Arranger(circuit).make();
}

}  // namespace pictures
