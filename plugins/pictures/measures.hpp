// Grid -> pixels: what is written beside each part, how wide columns and slots are by it, how high rows are. The first
// half of the layout; nothing is drawn yet.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "arrange.hpp"

namespace pictures {

inline constexpr double line_height = 16.0;  ///< of what stands beside a part
inline constexpr double name_px = 13.0, value_px = 12.5, node_px = 11.5;
inline constexpr double track = 12.0;  ///< a wire that goes round a part has so much room

/// What stands beside a part: its name, its value, its watts. Cut where it is longer than there is room.
struct Label {
  std::string name, value, watts;
  double width = 0.0;
};

/// Where something that hangs or rises meets the wire of its node.
struct Tap {
  double x = 0.0;
  int hanging = -1, rising = -1;  ///< index into Grid::hanging, or an item; -1 for none
};

struct Column {
  double x = 0.0, width = 0.0;
  double bus = 0.0;  ///< x of the upright wire that joins the rows of its node
  std::vector<Tap> taps;
};

struct Slot {
  double x = 0.0, width = 0.0, middle = 0.0;
  int left_tracks = 0, right_tracks = 0;
  double body = 0.0;
};

struct Measures {
  std::vector<Label> labels;  ///< by item
  std::vector<std::string> node_labels;
  std::vector<Column> columns;
  std::vector<Slot> slots;
  std::map<int, double> rows;  ///< row: its y
};

Measures measure(const Circuit& circuit, const Grid& grid);

/// Drawn along its row between two terminals, whatever else it has.
bool lies_between_two(const Item& item);

}  // namespace pictures
