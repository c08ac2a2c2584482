#include "measures.hpp"

#include <algorithm>
#include <cmath>

#include "lettering.hpp"
#include "symbols.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

constexpr double most_label = 190.0, lead = 14.0, bus_inset = 16.0;

Label label_of(const Item& item) {
  Label label{fit(item.label, most_label, name_px, true), fit(item.value, most_label, value_px), item.watts, 0.0};
  label.width = std::max(
      {width_of(label.name, name_px, true), width_of(label.value, value_px), width_of(label.watts, value_px, true)});
  for (const std::string& other : item.wider)
    label.width = std::max(label.width, std::min(most_label, width_of(other, value_px, true)));
  return label;
}

class Measurer {
 public:
  Measurer(const Circuit& circuit, const Grid& grid) : circuit_(circuit), grid_(grid) {}

  Measures make() {
    for (const Item& one : circuit_.items) made_.labels.push_back(label_of(one));
    for (const std::string& name : circuit_.nodes)
      made_.node_labels.push_back(fit(name.substr(name.rfind('.') + 1), 120.0, node_px));
    measure_columns();
    measure_slots();
    set_columns();
    set_rows();
    return std::move(made_);
  }

 private:
  const Item& item(int i) const { return circuit_.items[static_cast<std::size_t>(i)]; }
  const Label& label(int i) const { return made_.labels[static_cast<std::size_t>(i)]; }
  std::size_t column(int node) const {
    return static_cast<std::size_t>(grid_.column_of[static_cast<std::size_t>(node)]);
  }

  void measure_columns() {
    made_.columns.resize(grid_.columns.size());
    for (std::size_t h = 0; h < grid_.hanging.size(); ++h)
      made_.columns[column(grid_.hanging[h].node)].taps.push_back(
          {.x = 0.0, .hanging = static_cast<int>(h), .rising = -1});
    for (const int i : grid_.rising) {
      const int node = item(i).nodes[0] == ground ? item(i).nodes[1] : item(i).nodes[0];
      made_.columns[column(node)].taps.push_back({.x = 0.0, .hanging = -1, .rising = i});
    }
    for (std::size_t c = 0; c < made_.columns.size(); ++c) measure_column(c);
  }

  void measure_column(std::size_t c) {
    Column& here = made_.columns[c];
    if (grid_.columns[c] < 0) {
      here.width = 8.0;
      return;
    }
    here.bus = bus_inset;
    const double name_end =
        bus_inset + 8.0 + width_of(made_.node_labels[static_cast<std::size_t>(grid_.columns[c])], node_px);
    double below = bus_inset + 6.0, above = name_end + 4.0;
    for (Tap& tap : here.taps) {
      double& from = tap.hanging >= 0 ? below : above;
      tap.x = from + 24.0;
      double widest = 0.0;
      if (tap.hanging >= 0)
        for (const int i : grid_.hanging[static_cast<std::size_t>(tap.hanging)].items)
          widest = std::max(widest, label(i).width);
      else
        widest = label(tap.rising).width;
      from = tap.x + 26.0 + widest;
    }
    here.width = std::max(below, above) + 10.0;
  }

  void measure_slots() {
    made_.slots.resize(static_cast<std::size_t>(grid_.slots()));
    for (const Lying& lying : grid_.lying) {
      Slot& slot = made_.slots[static_cast<std::size_t>(lying.slot)];
      const double half = lies_between_two(item(lying.item)) ? one_port_half : two_port_half;
      slot.body = std::max({slot.body, 2.0 * half + 2.0 * lead, label(lying.item).width + 12.0});
      int left = 0, right = 0;
      for (const Pin& pin : lying.pins) (pin.left ? left : right) += pin.detour ? 1 : 0;
      // Tracks of a slot are not shared, so that upright wires of two parts never meet.
      slot.left_tracks += left;
      slot.right_tracks += right;
    }
    for (const Bridge& bridge : grid_.bridges) {
      Slot& slot = made_.slots[static_cast<std::size_t>(bridge.slot)];
      slot.body = std::max(slot.body, 2.0 * (label(bridge.item).width + 30.0));
    }
  }

  void set_columns() {
    double x = 0.0;
    for (std::size_t c = 0; c < made_.columns.size(); ++c) {
      made_.columns[c].x = x;
      made_.columns[c].bus += x;
      for (Tap& tap : made_.columns[c].taps) tap.x += x;
      x += made_.columns[c].width;
      Slot& slot = made_.slots[c];
      slot.x = x;
      slot.width = slot.body + track * (slot.left_tracks + slot.right_tracks);
      slot.middle = x + track * slot.left_tracks + slot.body / 2.0;
      x += slot.width;
    }
  }

  void set_rows() {
    std::map<int, double> above, below, apart;  // apart: at least so far from a row to the next
    const auto need = [](std::map<int, double>& of, int row, double pixels) { of[row] = std::max(of[row], pixels); };
    for (int row = grid_.first_row; row <= grid_.last_row; ++row)
      above[row] = 12.0, below[row] = 12.0, apart[row] = 0.0;
    for (std::size_t node = 0; node < grid_.home_row.size(); ++node) need(above, grid_.home_row[node], 24.0);
    for (const Lying& lying : grid_.lying) {
      const int last = lying.row + lying.height - 1;
      need(above, lying.row, 24.0 + 2.0 * line_height);
      need(below, last, has_grounds(lying) ? 26.0 + line_height + 6.0 : 24.0 + line_height);
      for (int row = lying.row; row < last; ++row) need(apart, row, is_two_port(item(lying.item)) ? 76.0 : 44.0);
      if (has_grounds(lying)) need(apart, lying.row, 76.0);
    }
    for (const Bridge& bridge : grid_.bridges) need(apart, bridge.row, 120.0);
    double y = 0.0;
    for (int row = grid_.first_row; row <= grid_.last_row; ++row) {
      made_.rows[row] = y;
      y += std::max(below[row] + above[row + 1], apart[row]);
    }
  }

  bool has_grounds(const Lying& lying) const {
    return std::any_of(lying.pins.begin(), lying.pins.end(), [&](const Pin& pin) { return pin.node == ground; }) &&
           lying.height > 1;
  }

  const Circuit& circuit_;
  const Grid& grid_;
  Measures made_;
};

}  // namespace

bool lies_between_two(const Item& item) {
  return !is_two_port(item) && item.symbol != Symbol::selector;
}

Measures measure(const Circuit& circuit, const Grid& grid) {
  return Measurer(circuit, grid).make();
}

}  // namespace pictures
