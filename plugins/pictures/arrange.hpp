// Circuit -> grid. Columns run from the source to the load: one for each node, and a slot between each two for the
// parts that join them. Rows stack what lies side by side. What goes from one node to ground hangs below its column or
// rises above it.
//
// Every cell of the grid (a row at a column or slot) belongs to one node's wire or to one part, so no wire can run
// through a part and no two nodes' wires along one another; upright wires stand in the columns, where no part is. Cost:
// O(parts x rows x columns) at worst.
#pragma once

#include <vector>

#include "circuit.hpp"

namespace pictures {

/// A pin of a part that lies in a slot.
struct Pin {
  int node = ground;
  int row = 0;         ///< below the part's first row
  bool left = true;    ///< side of the drawing
  int detour_row = 0;  ///< where its node's column is on the other side: the row that its wire goes round by
  bool detour = false;
};

struct Lying {
  int item = 0;
  int slot = 0;
  int row = 0, height = 1;
  bool mirrored = false;  ///< its in side is on the right
  std::vector<Pin> pins;
};

/// Upright between two rows of a slot, from its first node above to its second below.
struct Bridge {
  int item = 0, slot = 0, row = 0;
  bool mirrored = false;  ///< its first node is below
};

/// One part, or several in a row, from a node to ground.
struct Hanging {
  int node = 0;
  std::vector<int> items;
  std::vector<bool> mirrored;
};

struct Grid {
  std::vector<int> columns;    ///< the node of each; -1 for a spacer
  std::vector<int> column_of;  ///< by node; -1 for one inside a chain that hangs
  std::vector<int> home_row;   ///< by node: where what hangs is tapped and where its name stands
  std::vector<Lying> lying;
  std::vector<Bridge> bridges;
  std::vector<Hanging> hanging;  ///< in the order of the document
  std::vector<int> rising;       ///< items: antennas above their column
  int first_row = 0, last_row = 0;
  std::vector<int> top_row, bottom_row;  ///< by column: the outermost rows in which any wire passes

  int slots() const { return static_cast<int>(columns.size()); }  ///< slot s lies right of column s
};

Grid arrange(const Circuit& circuit);

}  // namespace pictures
