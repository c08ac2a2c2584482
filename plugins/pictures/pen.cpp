#include "pen.hpp"

#include <algorithm>

#include "markup.hpp"

namespace pictures {

void Extent::add(double x, double y) {
  x0 = std::min(x0, x);
  y0 = std::min(y0, y);
  x1 = std::max(x1, x);
  y1 = std::max(y1, y);
}

void Extent::add(const Extent& other) {
  if (other.empty()) return;
  add(other.x0, other.y0);
  add(other.x1, other.y1);
}

Point Pen::at(double u, double v) const {
  switch (turn_) {
    case Turn::left:
      return {origin_.x - u, origin_.y + v};
    case Turn::down:
      return {origin_.x - v, origin_.y + u};
    case Turn::up:
      return {origin_.x + v, origin_.y - u};
    default:
      return {origin_.x + u, origin_.y + v};
  }
}

std::string Pen::step(char command, Point local) {
  const Point p = at(local.x, local.y);
  extent_.add(p.x, p.y);
  return std::string(1, command) + coordinate(p.x) + ' ' + coordinate(p.y);
}

void Pen::path(const std::string& data, const char* style) {
  svg_ += "<path class=\"s";
  if (*style != '\0') svg_ += ' ' + std::string(style);
  svg_ += "\" d=\"" + data + "\"/>";
}

void Pen::line(const std::vector<Point>& points, const char* style) {
  std::string data;
  for (const Point& point : points) data += step(data.empty() ? 'M' : 'L', point);
  path(data, style);
}

void Pen::closed(const std::vector<Point>& points, const char* style) {
  std::string data;
  for (const Point& point : points) data += step(data.empty() ? 'M' : 'L', point);
  path(data + 'Z', style);
}

void Pen::rectangle(double u0, double v0, double u1, double v1, const char* style) {
  closed({{u0, v0}, {u1, v0}, {u1, v1}, {u0, v1}}, style);
}

void Pen::circle(double u, double v, double radius, const char* style) {
  const Point centre = at(u, v);
  extent_.add(centre.x - radius, centre.y - radius);
  extent_.add(centre.x + radius, centre.y + radius);
  svg_ += "<circle class=\"s";
  if (*style != '\0') svg_ += ' ' + std::string(style);
  svg_ +=
      "\" cx=\"" + coordinate(centre.x) + "\" cy=\"" + coordinate(centre.y) + "\" r=\"" + coordinate(radius) + "\"/>";
}

void Pen::arc(double u0, double u1, double v, double bulge, const char* style) {
  // Control points 4/3 as far out as the curve itself.
  curve({u0, v}, {u0, v - bulge * 4.0 / 3.0}, {u1, v - bulge * 4.0 / 3.0}, {u1, v}, style);
}

void Pen::curve(Point a, Point b, Point c, Point d, const char* style) {
  const std::string start = step('M', a), first = step('C', b), second = step(' ', c), end = step(' ', d);
  path(start + first + second + end, style);
}

void Pen::ground(double u, double v) {
  const Point p = at(u, v);
  const auto bar = [&](double half, double below) {
    extent_.add(p.x - half, p.y + below);
    extent_.add(p.x + half, p.y + below);
    return 'M' + coordinate(p.x - half) + ' ' + coordinate(p.y + below) + 'H' + coordinate(p.x + half);
  };
  extent_.add(p.x, p.y);
  path('M' + coordinate(p.x) + ' ' + coordinate(p.y) + 'V' + coordinate(p.y + 8.0) + bar(10.0, 8.0) + bar(6.0, 12.0) +
           bar(2.5, 16.0),
       "");
}

void Pen::sine(double half, double rise) {
  Pen level(origin_, Turn::right);
  level.curve({-half, 0}, {-half / 2.0, -2.0 * rise}, {-half / 2.0, -2.0 * rise}, {0, 0}, "thin");
  level.curve({0, 0}, {half / 2.0, 2.0 * rise}, {half / 2.0, 2.0 * rise}, {half, 0}, "thin");
  svg_ += level.svg_;
  extent_.add(level.extent_);
}

void Pen::arrow(double half) {
  Pen level(origin_, Turn::right);
  level.line({{-half, half}, {half - 4.0, -half + 4.0}}, "thin");
  level.closed({{half, -half}, {half - 8.0, -half + 3.6}, {half - 3.6, -half + 8.0}}, "solid");
  svg_ += level.svg_;
  extent_.add(level.extent_);
}

}  // namespace pictures
