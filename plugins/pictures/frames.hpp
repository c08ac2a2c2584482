// The dashed frames of boxes, when everything else of a sheet stands.
#pragma once

#include "circuit.hpp"
#include "sheet.hpp"

namespace pictures {

/// Adds a frame with the name around the parts of each box. Where other parts stand in between, several frames of one
/// name, as few as can be, each around what stands together; a part around which no frame fits has none. Cost O(parts
/// of a box ^3 x what is drawn) where one frame does not do.
void frame_boxes(Sheet& sheet, const Circuit& circuit);

}  // namespace pictures
