#include "wiring.hpp"

namespace pictures {
namespace {

int ways(const std::vector<const Wire*>& wires, const Point& p) {
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

}  // namespace

void join(Sheet& sheet, const Reach& reach, const std::function<double(int)>& bus_of,
          const std::map<int, double>& rows_y) {
  std::map<int, std::set<int>> rows_of;
  for (const auto& [where, xs] : reach) rows_of[where.first].insert(where.second);
  for (const auto& [node, rows] : rows_of) {
    const double bus = bus_of(node);
    for (const int row : rows) {
      std::set<double> xs = reach.at({node, row});
      if (rows.size() > 1) xs.insert(bus);
      if (*xs.rbegin() > *xs.begin())
        sheet.wires.push_back({node, {*xs.begin(), rows_y.at(row)}, {*xs.rbegin(), rows_y.at(row)}});
    }
    if (rows.size() > 1)
      sheet.wires.push_back({node, {bus, rows_y.at(*rows.begin())}, {bus, rows_y.at(*rows.rbegin())}});
  }
}

void mark_joints(Sheet& sheet) {
  std::map<int, std::vector<const Wire*>> by_node;
  for (const Wire& wire : sheet.wires) by_node[wire.node].push_back(&wire);
  for (const auto& [node, wires] : by_node) {
    std::set<std::pair<double, double>> meetings;
    for (const Wire* wire : wires) {
      meetings.insert({{wire->from.x, wire->from.y}, {wire->to.x, wire->to.y}});
      for (const Wire* other : wires)
        if (wire->from.x == wire->to.x && other->from.y == other->to.y) meetings.insert({wire->from.x, other->from.y});
    }
    for (const auto& [x, y] : meetings)
      if (ways(wires, {x, y}) >= 3) sheet.joints.push_back({x, y});
  }
}

}  // namespace pictures
