#include "sheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "lettering.hpp"
#include "markup.hpp"
#include "symbols.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

constexpr double line_height = 16.0, most_label = 190.0, lead = 14.0, track = 12.0, bus_inset = 16.0;
constexpr double name_px = 13.0, value_px = 12.5, node_px = 11.5;

/// What stands beside a part: its name, its value, its watts.
struct Label {
  std::string name, value, watts;
  double width = 0.0;
};

std::string watts_of(const Item& item) {
  if (item.symbol == Symbol::source || !std::isfinite(item.heat_w)) return "";
  if (item.share < 5e-6) return "";
  const std::string watts =
      item.heat_w >= 1.0 ? reports::fixed(item.heat_w, 1) + " W" : reports::spell(item.heat_w, "W", 2);
  return item.symbol == Symbol::antenna || item.symbol == Symbol::load ? watts + " heat" : watts;
}

Label label_of(const Item& item) {
  Label label{fit(item.label, most_label, name_px, true), fit(item.value, most_label, value_px), watts_of(item), 0.0};
  label.width = std::max(
      {width_of(label.name, name_px, true), width_of(label.value, value_px), width_of(label.watts, value_px, true)});
  return label;
}

class Layout {
 public:
  Layout(const Circuit& circuit, const Grid& grid) : circuit_(circuit), grid_(grid) {
    for (const Item& one : circuit.items) labels_.push_back(label_of(one));
    for (const std::string& name : circuit.nodes) {
      node_labels_.push_back(fit(name.substr(name.rfind('.') + 1), 120.0, node_px));
    }
  }

  Sheet make() {
    measure_columns();
    measure_slots();
    set_columns();
    set_rows();
    for (const Lying& lying : grid_.lying) draw(lying);
    for (const Bridge& bridge : grid_.bridges) draw(bridge);
    for (std::size_t c = 0; c < grid_.columns.size(); ++c) draw_column(c);
    draw_wires();
    mark_joints();
    draw_frames();
    measure();
    return std::move(sheet_);
  }

 private:
  const Item& item(int i) const { return circuit_.items[static_cast<std::size_t>(i)]; }
  const Label& label(int i) const { return labels_[static_cast<std::size_t>(i)]; }
  std::size_t column(int node) const {
    return static_cast<std::size_t>(grid_.column_of[static_cast<std::size_t>(node)]);
  }
  int home(int node) const { return grid_.home_row[static_cast<std::size_t>(node)]; }
  double row_y(int row) const { return rows_.at(row); }

  // ---- widths ---------------------------------------------------------------------------------------------------

  struct Tap {
    double x = 0.0;  ///< from the column's left edge, later absolute
    int hanging = -1, rising = -1;
  };
  struct Column {
    double x = 0.0, width = 0.0, bus = 0.0;
    std::vector<Tap> taps;
  };
  struct Slot {
    double x = 0.0, width = 0.0, middle = 0.0;
    int left_tracks = 0, right_tracks = 0;
    double body = 0.0;
  };

  void measure_columns() {
    columns_.resize(grid_.columns.size());
    for (std::size_t h = 0; h < grid_.hanging.size(); ++h)
      columns_[column(grid_.hanging[h].node)].taps.push_back({.x = 0.0, .hanging = static_cast<int>(h), .rising = -1});
    for (const int i : grid_.rising) {
      const int node = item(i).nodes[0] == ground ? item(i).nodes[1] : item(i).nodes[0];
      columns_[column(node)].taps.push_back({.x = 0.0, .hanging = -1, .rising = i});
    }
    for (std::size_t c = 0; c < columns_.size(); ++c) measure_column(c);
  }

  void measure_column(std::size_t c) {
    Column& here = columns_[c];
    if (grid_.columns[c] < 0) {
      here.width = 8.0;
      return;
    }
    here.bus = bus_inset;
    const double name_end =
        bus_inset + 8.0 + width_of(node_labels_[static_cast<std::size_t>(grid_.columns[c])], node_px);
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
    slots_.resize(static_cast<std::size_t>(grid_.slots()));
    for (const Lying& lying : grid_.lying) {
      Slot& slot = slots_[static_cast<std::size_t>(lying.slot)];
      const double half = is_one_port(lying) ? one_port_half : two_port_half;
      slot.body = std::max({slot.body, 2.0 * half + 2.0 * lead, label(lying.item).width + 12.0});
      int left = 0, right = 0;
      for (const Pin& pin : lying.pins) (pin.left ? left : right) += pin.detour ? 1 : 0;
      // Tracks of a slot are not shared, so that upright wires of two parts never meet.
      slot.left_tracks += left;
      slot.right_tracks += right;
    }
    for (const Bridge& bridge : grid_.bridges) {
      Slot& slot = slots_[static_cast<std::size_t>(bridge.slot)];
      slot.body = std::max(slot.body, 2.0 * (label(bridge.item).width + 30.0));
    }
  }

  bool is_one_port(const Lying& lying) const {
    return !is_two_port(item(lying.item)) && item(lying.item).symbol != Symbol::selector;
  }

  void set_columns() {
    double x = 0.0;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      columns_[c].x = x;
      columns_[c].bus += x;
      for (Tap& tap : columns_[c].taps) tap.x += x;
      x += columns_[c].width;
      Slot& slot = slots_[c];
      slot.x = x;
      slot.width = slot.body + track * (slot.left_tracks + slot.right_tracks);
      slot.middle = x + track * slot.left_tracks + slot.body / 2.0;
      x += slot.width;
    }
  }

  // ---- heights --------------------------------------------------------------------------------------------------

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
      rows_[row] = y;
      y += std::max(below[row] + above[row + 1], apart[row]);
    }
  }

  bool has_grounds(const Lying& lying) const {
    return std::any_of(lying.pins.begin(), lying.pins.end(), [&](const Pin& pin) { return pin.node == ground; }) &&
           lying.height > 1;
  }

  // ---- parts ----------------------------------------------------------------------------------------------------

  void write(double x, double y, bool centred, const std::string& text, const char* style, double pixels, bool bold,
             int i = -1) {
    if (!text.empty()) sheet_.letterings.push_back({{x, y}, centred, text, style, pixels, bold, i});
  }

  void add_figure(int i, const Pen& pen, const std::string& heat_path) {
    Figure figure{i, pen.svg(), pen.extent(), "", heat_width(item(i).share)};
    if (figure.heat_width > 0.0) figure.heat = heat_path;
    sheet_.figures.push_back(std::move(figure));
  }

  static std::string stroke(Point a, Point b) {
    return 'M' + coordinate(a.x) + ' ' + coordinate(a.y) + 'L' + coordinate(b.x) + ' ' + coordinate(b.y);
  }

  void draw(const Lying& lying) {
    const Item& one = item(lying.item);
    const Slot& slot = slots_[static_cast<std::size_t>(lying.slot)];
    const double y = row_y(lying.row), last_y = row_y(lying.row + lying.height - 1);
    std::vector<double> rows;
    for (int d = 0; d < lying.height; ++d) rows.push_back(row_y(lying.row + d) - y);
    const bool turned = is_one_port(lying) ? lying.pins[0].node != one.nodes[0] : lying.mirrored;
    Pen pen({slot.middle, y}, turned ? Pen::Turn::left : Pen::Turn::right);
    if (one.symbol == Symbol::selector)
      draw_selector(pen, one, rows);
    else if (is_two_port(one))
      draw_two_port(pen, one, rows);
    else
      draw_one_port(pen, one);
    const bool tube = one.symbol == Symbol::line && !drawn_as_wires(one);
    const double half = is_one_port(lying) ? 22.0 : 34.0, heat_y = tube ? y : (y + last_y) / 2.0;
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
    Slot& slot = slots_[static_cast<std::size_t>(lying.slot)];
    const double half = is_one_port(lying) ? one_port_half : two_port_half;
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
    const Slot& slot = slots_[static_cast<std::size_t>(bridge.slot)];
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
    const Column& here = columns_[c];
    const double y = row_y(home(node));
    write(here.bus + 5.0, y - 8.0, false, node_labels_[static_cast<std::size_t>(node)], "node", node_px, false);
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

  // ---- wires ----------------------------------------------------------------------------------------------------

  void draw_wires() {
    std::map<int, std::set<int>> rows_of;
    for (const auto& [where, xs] : reach_) rows_of[where.first].insert(where.second);
    for (const auto& [node, rows] : rows_of) {
      const double bus = columns_[column(node)].bus;
      for (const int row : rows) {
        std::set<double> xs = reach_[{node, row}];
        if (rows.size() > 1) xs.insert(bus);
        if (*xs.rbegin() > *xs.begin())
          sheet_.wires.push_back({node, {*xs.begin(), row_y(row)}, {*xs.rbegin(), row_y(row)}});
      }
      if (rows.size() > 1) sheet_.wires.push_back({node, {bus, row_y(*rows.begin())}, {bus, row_y(*rows.rbegin())}});
    }
  }

  /// A joint where three or more ways of one node meet.
  void mark_joints() {
    std::map<int, std::vector<const Wire*>> by_node;
    for (const Wire& wire : sheet_.wires) by_node[wire.node].push_back(&wire);
    for (const auto& [node, wires] : by_node) {
      std::set<std::pair<double, double>> meetings;
      for (const Wire* wire : wires) {
        meetings.insert({{wire->from.x, wire->from.y}, {wire->to.x, wire->to.y}});
        for (const Wire* other : wires)
          if (wire->from.x == wire->to.x && other->from.y == other->to.y)
            meetings.insert({wire->from.x, other->from.y});
      }
      for (const auto& [x, y] : meetings)
        if (ways(wires, {x, y}) >= 3) sheet_.joints.push_back({x, y});
    }
  }

  static int ways(const std::vector<const Wire*>& wires, const Point& p) {
    std::set<std::pair<int, int>> directions;
    for (const Wire* wire : wires) {
      if (p.x < wire->from.x - 0.01 || p.x > wire->to.x + 0.01 || p.y < wire->from.y - 0.01 || p.y > wire->to.y + 0.01)
        continue;
      if (p.x > wire->from.x + 0.01) directions.insert({-1, 0});
      if (p.x < wire->to.x - 0.01) directions.insert({1, 0});
      if (p.y > wire->from.y + 0.01) directions.insert({0, -1});
      if (p.y < wire->to.y - 0.01) directions.insert({0, 1});
    }
    return static_cast<int>(directions.size());
  }

  // ---- boxes ----------------------------------------------------------------------------------------------------

  /// Around the parts of a box, where nothing else stands in between.
  void draw_frames() {
    for (const BoxName& box : circuit_.boxes) {
      Extent inside;
      std::set<int> members;
      for (std::size_t i = 0; i < circuit_.items.size(); ++i)
        if (circuit_.items[i].box == box.name || circuit_.items[i].box.starts_with(box.name + '.'))
          members.insert(static_cast<int>(i));
      for (const Figure& figure : sheet_.figures)
        if (members.contains(figure.item)) inside.add(figure.extent);
      for (const Lettering& text : sheet_.letterings)
        if (members.contains(text.item)) inside.add(text.extent());
      if (inside.empty()) continue;
      const std::string title = fit(box.name + (box.kind.empty() ? "" : ": " + box.kind),
                                    std::max(80.0, inside.x1 - inside.x0), node_px, true);
      Extent frame = inside.grown(8.0);
      frame.y0 -= 16.0;
      const Lettering heading{{frame.x0 + 6.0, frame.y0 + 14.0}, false, title, "box", node_px, true};
      if (!clear_of_others(frame, heading, members)) continue;
      sheet_.letterings.push_back(heading);
      sheet_.frames.push_back({frame});
    }
  }

  bool clear_of_others(const Extent& frame, const Lettering& heading, const std::set<int>& members) const {
    for (const Figure& figure : sheet_.figures)
      if (!members.contains(figure.item) && frame.meets(figure.extent.grown(2.0))) return false;
    for (const Lettering& text : sheet_.letterings) {
      const Extent extent = text.extent().grown(1.0);
      if (extent.meets(heading.extent())) return false;
      const bool inside = extent.x0 > frame.x0 && extent.x1 < frame.x1 && extent.y0 > frame.y0 && extent.y1 < frame.y1;
      if (!inside && extent.meets(frame)) return false;
    }
    for (const Wire& wire : sheet_.wires) {
      const Extent extent = Extent{wire.from.x, wire.from.y, wire.to.x, wire.to.y}.grown(1.5);
      if (extent.meets(heading.extent())) return false;
    }
    return std::none_of(sheet_.frames.begin(), sheet_.frames.end(), [&](const Frame& other) {
      const Extent& o = other.extent;
      const bool within = o.x0 > frame.x0 && o.x1 < frame.x1 && o.y0 > frame.y0 && o.y1 < frame.y1;
      const bool around = o.x0 < frame.x0 && o.x1 > frame.x1 && o.y0 < frame.y0 && o.y1 > frame.y1;
      return o.meets(frame) && !within && !around;
    });
  }

  void measure() {
    for (const Figure& figure : sheet_.figures) sheet_.extent.add(figure.extent);
    for (const Lettering& text : sheet_.letterings) sheet_.extent.add(text.extent());
    for (const Wire& wire : sheet_.wires) sheet_.extent.add(Extent{wire.from.x, wire.from.y, wire.to.x, wire.to.y});
    for (const Frame& frame : sheet_.frames) sheet_.extent.add(frame.extent);
  }

  const Circuit& circuit_;
  const Grid& grid_;
  std::vector<Label> labels_;
  std::vector<std::string> node_labels_;
  std::vector<Column> columns_;
  std::vector<Slot> slots_;
  std::map<int, double> rows_;
  std::map<std::pair<int, int>, std::set<double>> reach_;  ///< node, row: every x that its wire reaches there
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
