#include "sheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "frames.hpp"
#include "lettering.hpp"
#include "markup.hpp"
#include "measures.hpp"
#include "symbols.hpp"
#include "wiring.hpp"

namespace pictures {
namespace {

class Layout {
 public:
  Layout(const Circuit& circuit, const Grid& grid)
      : circuit_(circuit), grid_(grid), measures_(measure(circuit, grid)) {}

  Sheet make() {
    for (const Lying& lying : grid_.lying) draw(lying);
    for (const Bridge& bridge : grid_.bridges) draw(bridge);
    for (std::size_t c = 0; c < grid_.columns.size(); ++c) draw_column(c);
    join(
        sheet_, reach_, [this](int node) { return measures_.columns[column(node)].bus; }, measures_.rows);
    mark_joints(sheet_);
    frame_boxes(sheet_, circuit_);
    add_up();
    return std::move(sheet_);
  }

 private:
  const Item& item(int i) const { return circuit_.items[static_cast<std::size_t>(i)]; }
  const Label& label(int i) const { return measures_.labels[static_cast<std::size_t>(i)]; }
  std::size_t column(int node) const {
    return static_cast<std::size_t>(grid_.column_of[static_cast<std::size_t>(node)]);
  }
  int home(int node) const { return grid_.home_row[static_cast<std::size_t>(node)]; }
  double row_y(int row) const { return measures_.rows.at(row); }

  void write(double x, double y, bool centred, const std::string& text, const char* style, double pixels, bool bold,
             int i = -1) {
    if (!text.empty()) sheet_.letterings.push_back({{x, y}, centred, text, style, pixels, bold, i});
  }

  void add_figure(int i, const Pen& pen, const std::string& heat_path) {
    Figure figure{i, pen.svg(), pen.extent(), "", heat_width(item(i).share)};
    if (figure.heat_width > 0.0 || heat_width(item(i).warmest) > 0.0) figure.heat = heat_path;
    sheet_.figures.push_back(std::move(figure));
  }

  static std::string stroke(Point a, Point b) {
    return 'M' + coordinate(a.x) + ' ' + coordinate(a.y) + 'L' + coordinate(b.x) + ' ' + coordinate(b.y);
  }

  void draw(const Lying& lying) {
    const Item& one = item(lying.item);
    const Slot& slot = measures_.slots[static_cast<std::size_t>(lying.slot)];
    const double y = row_y(lying.row), last_y = row_y(lying.row + lying.height - 1);
    std::vector<double> rows;
    for (int d = 0; d < lying.height; ++d) rows.push_back(row_y(lying.row + d) - y);
    const bool turned = lies_between_two(one) ? lying.pins[0].node != one.nodes[0] : lying.mirrored;
    Pen pen({slot.middle, y}, turned ? Pen::Turn::left : Pen::Turn::right);
    if (one.symbol == Symbol::selector)
      draw_selector(pen, one, rows);
    else if (is_two_port(one))
      draw_two_port(pen, one, rows);
    else
      draw_one_port(pen, one);
    const bool tube = one.symbol == Symbol::line && !drawn_as_wires(one);
    const double half = lies_between_two(one) ? 22.0 : 34.0, heat_y = tube ? y : (y + last_y) / 2.0;
    add_figure(lying.item, pen,
               lying.height > 1 && is_two_port(one) && !tube
                   ? stroke({slot.middle, y + 4}, {slot.middle, last_y - 4})
                   : stroke({slot.middle - half, heat_y}, {slot.middle + half, heat_y}));
    const Label& said = label(lying.item);
    const double value_y = y - 25.0;
    write(slot.middle, said.value.empty() ? value_y : value_y - line_height, true, said.name, "name", name_px, true,
          lying.item);
    write(slot.middle, value_y, true, said.value, "value", value_px, false, lying.item);
    write(slot.middle, std::max(last_y, pen.extent().y1 - 14.0) + 24.0 + 6.0, true, said.watts, "watts", value_px, true,
          lying.item);
    connect(lying);
  }

  void connect(const Lying& lying) {
    const Slot& slot = measures_.slots[static_cast<std::size_t>(lying.slot)];
    const double half = lies_between_two(item(lying.item)) ? one_port_half : two_port_half;
    for (const Pin& pin : lying.pins) {
      if (pin.node == ground) continue;
      const double x = slot.middle + (pin.left ? -half : half), y = row_y(lying.row + pin.row);
      if (!pin.detour) {
        reach_[{pin.node, lying.row + pin.row}].insert(x);
        continue;
      }
      int& used = (pin.left ? left_used_ : right_used_)[lying.slot];
      const double offset = track * (used++ + 0.5);
      const double track_x = pin.left ? slot.x + offset : slot.x + slot.width - offset;
      const double around_y = row_y(pin.detour_row);
      sheet_.wires.push_back({pin.node, {std::min(x, track_x), y}, {std::max(x, track_x), y}});
      sheet_.wires.push_back({pin.node, {track_x, std::min(y, around_y)}, {track_x, std::max(y, around_y)}});
      reach_[{pin.node, pin.detour_row}].insert(track_x);
    }
  }

  void draw(const Bridge& bridge) {
    const Item& one = item(bridge.item);
    const Slot& slot = measures_.slots[static_cast<std::size_t>(bridge.slot)];
    const double top = row_y(bridge.row), bottom = row_y(bridge.row + 1), middle = (top + bottom) / 2.0;
    const double x = slot.x + 24.0;
    Pen pen({x, middle}, bridge.mirrored ? Pen::Turn::up : Pen::Turn::down);
    draw_one_port(pen, one);
    add_figure(bridge.item, pen, stroke({x, middle - 22}, {x, middle + 22}));
    write_beside(x + 24.0, middle, bridge.item);
    const int upper = one.nodes[bridge.mirrored ? 1 : 0], lower = one.nodes[bridge.mirrored ? 0 : 1];
    sheet_.wires.push_back({upper, {x, top}, {x, middle - one_port_half}});
    sheet_.wires.push_back({lower, {x, middle + one_port_half}, {x, bottom}});
    reach_[{upper, bridge.row}].insert(x);
    reach_[{lower, bridge.row + 1}].insert(x);
  }

  void write_beside(double x, double middle, int i) {
    const Label& said = label(i);
    const int lines = (said.name.empty() ? 0 : 1) + (said.value.empty() ? 0 : 1) + (said.watts.empty() ? 0 : 1);
    double y = middle - line_height * (lines - 1) / 2.0 + 4.5;
    const auto next = [&](const std::string& text, const char* style, double pixels, bool bold) {
      write(x, y, false, text, style, pixels, bold, i);
      if (!text.empty()) y += line_height;
    };
    next(said.name, "name", name_px, true);
    next(said.value, "value", value_px, false);
    next(said.watts, "watts", value_px, true);
  }

  void draw_column(std::size_t c) {
    const int node = grid_.columns[c];
    if (node < 0) return;
    const Column& here = measures_.columns[c];
    const double y = row_y(home(node));
    write(here.bus + 5.0, y - 8.0, false, measures_.node_labels[static_cast<std::size_t>(node)], "node", node_px,
          false);
    for (const Tap& tap : here.taps) {
      reach_[{node, home(node)}].insert(tap.x);
      if (tap.hanging >= 0)
        hang(c, tap.x, y, grid_.hanging[static_cast<std::size_t>(tap.hanging)]);
      else
        rise(c, tap.x, y, tap.rising);
    }
  }

  void hang(std::size_t c, double x, double from_y, const Hanging& hanging) {
    const int node = grid_.columns[c];
    double y = row_y(grid_.bottom_row[c]) + 22.0;
    sheet_.wires.push_back({node, {x, from_y}, {x, y}});
    for (std::size_t k = 0; k < hanging.items.size(); ++k) {
      const Item& one = item(hanging.items[k]);
      const double middle = y + one_port_half;
      Pen pen({x, middle}, hanging.mirrored[k] ? Pen::Turn::up : Pen::Turn::down);
      draw_one_port(pen, one);
      const bool last = k + 1 == hanging.items.size();
      const bool stub = one.symbol == Symbol::stub_open || one.symbol == Symbol::stub_shorted;
      if (last && !stub) {
        Pen foot({x, y + 2.0 * one_port_half}, Pen::Turn::right);
        foot.ground(0, 0);
        sheet_.figures.push_back({hanging.items[k], foot.svg(), foot.extent(), "", 0.0});
      }
      add_figure(hanging.items[k], pen, stroke({x, middle - 22}, {x, middle + 22}));
      write_beside(x + 24.0, middle, hanging.items[k]);
      y += 2.0 * one_port_half;
      if (!last) {
        const int inner = hanging.mirrored[k] ? one.nodes[0] : one.nodes[1];
        sheet_.wires.push_back({inner, {x, y}, {x, y + 14.0}});
        y += 14.0;
      }
    }
  }

  void rise(std::size_t c, double x, double from_y, int i) {
    const int node = grid_.columns[c];
    const double y = row_y(grid_.top_row[c]) - 18.0;
    sheet_.wires.push_back({node, {x, y}, {x, from_y}});
    Pen pen({x, y}, Pen::Turn::right);
    draw_antenna(pen);
    add_figure(i, pen, stroke({x, y - 8}, {x, y - antenna_height + 8}));
    write_beside(x + 24.0, y - antenna_height / 2.0, i);
  }

  void add_up() {
    for (const Figure& figure : sheet_.figures) sheet_.extent.add(figure.extent);
    for (const Lettering& text : sheet_.letterings) sheet_.extent.add(text.extent());
    for (const Wire& wire : sheet_.wires) sheet_.extent.add(Extent{wire.from.x, wire.from.y, wire.to.x, wire.to.y});
    for (const Frame& frame : sheet_.frames) sheet_.extent.add(frame.extent);
  }

  const Circuit& circuit_;
  const Grid& grid_;
  const Measures measures_;
  Reach reach_;
  std::map<int, int> left_used_, right_used_;
  Sheet sheet_;
};

}  // namespace

Extent Lettering::extent() const {
  const double width = width_of(text, pixels, bold), from = centred ? at.x - width / 2.0 : at.x;
  return {from, at.y - 0.80 * pixels, from + width, at.y + 0.25 * pixels};
}

double heat_width(double share) {
  if (!(share >= 5e-4)) return 0.0;
  return std::min(34.0, 4.0 + 38.0 * std::sqrt(share));
}

Sheet lay_out(const Circuit& circuit, const Grid& grid) {
  return Layout(circuit, grid).make();
}

}  // namespace pictures
