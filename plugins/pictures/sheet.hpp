// Grid -> sheet: everything at its place in pixels, ready to be written.
#pragma once

#include <string>
#include <vector>

#include "arrange.hpp"
#include "pen.hpp"

namespace pictures {

struct Wire {
  int node = 0;
  Point from, to;  ///< upright or level
};

struct Lettering {
  Point at;  ///< the baseline's beginning or middle
  bool centred = false;
  std::string text;
  const char* style = "";  ///< "name", "value", "watts", "node", "box"
  double pixels = 13.0;
  bool bold = false;
  int item = -1;  ///< whose label it is; -1 for nodes and boxes

  Extent extent() const;
};

struct Figure {
  int item = 0;
  std::string svg;
  Extent extent;
  std::string heat;  ///< path behind it; empty where it is cool
  double heat_width = 0.0;
};

struct Frame {
  Extent extent;
};

struct Sheet {
  std::vector<Wire> wires;
  std::vector<Point> joints;
  std::vector<Figure> figures;
  std::vector<Lettering> letterings;
  std::vector<Frame> frames;  ///< dashed, around boxes
  Extent extent;
};

Sheet lay_out(const Circuit& circuit, const Grid& grid);

/// How thick the warm band behind a part is: the root of its share of the available power; 0 below a two-thousandth.
double heat_width(double share);

}  // namespace pictures
