// Draws in a symbol's own coordinates and writes absolute ones: u runs along the part, from its first terminal to its
// second, v across it. Keeps the extent of what was drawn. No transforms are left in the picture, so any reader of it
// can measure it.
#pragma once

#include <string>
#include <vector>

namespace pictures {

struct Point {
  double x = 0.0, y = 0.0;
};

struct Extent {
  double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
  void add(double x, double y);
  void add(const Extent& other);
  bool empty() const { return x1 < x0; }
  bool meets(const Extent& other) const { return x0 < other.x1 && other.x0 < x1 && y0 < other.y1 && other.y0 < y1; }
  Extent grown(double by) const { return {x0 - by, y0 - by, x1 + by, y1 + by}; }
};

class Pen {
 public:
  enum class Turn { right, left, down, up };

  Pen(Point origin, Turn turn) : origin_(origin), turn_(turn) {}

  /// Open line through the points (u, v).
  void line(const std::vector<Point>& points, const char* style = "");
  void closed(const std::vector<Point>& points, const char* style = "");
  void rectangle(double u0, double v0, double u1, double v1, const char* style = "");
  void circle(double u, double v, double radius, const char* style = "");
  /// From (u0, v) to (u1, v), bulging to negative v where `bulge` is above zero.
  void arc(double u0, double u1, double v, double bulge, const char* style = "");
  /// Half an ellipse or any cubic: from a, by b and c, to d.
  void curve(Point a, Point b, Point c, Point d, const char* style = "");
  /// The three bars of the ground symbol, hanging from (u, v) towards the bottom of the drawing.
  void ground(double u, double v);
  /// A wave, level whichever way the symbol is turned.
  void sine(double half, double rise);
  /// Across the symbol, from below left to above right whichever way it is turned: it can be adjusted.
  void arrow(double half);
  void dot(double u, double v, double radius) { circle(u, v, radius, "solid"); }

  Point at(double u, double v) const;
  const std::string& svg() const { return svg_; }
  const Extent& extent() const { return extent_; }

 private:
  void path(const std::string& data, const char* style);
  std::string step(char command, Point local);

  Point origin_;
  Turn turn_;
  std::string svg_;
  Extent extent_;
};

}  // namespace pictures
