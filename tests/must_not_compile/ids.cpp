// Compiles where a node's number stands for a node.
#include "design/ids.hpp"

namespace design = wattfall::design;

int row_of(design::NodeId node) {
  return node.index;
}

#ifdef WRONG
int row = row_of(design::PartId{3});
#else
int row = row_of(design::NodeId{3});
#endif
