// The wires of a sheet: along the rows that a node reaches, up and down between them, and the joints where its ways
// meet.
#pragma once

#include <functional>
#include <map>
#include <set>
#include <utility>

#include "sheet.hpp"

namespace pictures {

/// Node and row: every x at which something is to be joined to the node's wire there.
using Reach = std::map<std::pair<int, int>, std::set<double>>;

/// `bus_of` is the x of a node's upright wire, `rows_y` the y of each row.
void join(Sheet& sheet, const Reach& reach, const std::function<double(int)>& bus_of,
          const std::map<int, double>& rows_y);

/// A joint where three or more ways of one node meet.
void mark_joints(Sheet& sheet);

}  // namespace pictures
