// A drawing read back: where its wires, symbols and letters lie. Letters are measured here by the widths of a wide sans-serif face, and not by the
// writer's own measure.
#pragma once

#include <pugixml.hpp>
#include <string>
#include <vector>

namespace pictures_tests {

struct Box {
  double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
  void add(double x, double y);
  bool meets(const Box& other) const { return x0 < other.x1 && other.x0 < x1 && y0 < other.y1 && other.y0 < y1; }
  Box grown(double by) const { return {x0 - by, y0 - by, x1 + by, y1 + by}; }
};

struct Named {
  std::string name;
  Box box;
};

struct Net {
  std::vector<int> nodes;                     ///< of each wire
  std::vector<Named> wires, symbols, letters;  ///< symbols: each closed or thick stroke group of a part
  std::vector<Box> joints;
};

/// Every network of a drawing. Throws where the text is no XML or has no network.
std::vector<Net> read_nets(const std::string& svg);

/// What is wrong with a network, in words: labels that overlap, wires through symbols or letters, symbols on each other, wires of one node that meet
/// three ways without a joint, a joint or a shared stretch of wires of two nodes.
std::vector<std::string> faults(const Net& net);

}  // namespace pictures_tests
