// Curves over frequency, or along a line, as SVG that a script can add to: what it needs to find a point again stands
// in data- attributes.
#pragma once

#include <string>
#include <vector>

#include "html.hpp"

namespace pictures {

inline constexpr double plot_width = 380.0;

/// Frequency -> pixels. Far gaps between bands are cut out.
class Axis {
 public:
  Axis(const std::vector<double>& values, double from, double to);
  double at(double value) const;
  /// Which band a value lies in; a curve is broken between two.
  std::size_t piece_of(double value) const;
  struct Piece {
    double first, last, from, to;
  };
  const std::vector<Piece>& pieces() const { return pieces_; }

 private:
  std::vector<Piece> pieces_;
};

struct Curve {
  std::string name;                 ///< shown in legends
  std::vector<double> x, y;         ///< NaN leaves a gap
  std::vector<std::size_t> marked;  ///< points that get a marker
  std::size_t style = 0;            ///< colour, dash and marker
  std::size_t variant = 0;
  std::string path;  ///< of the series within its variant: "sources/0/swr"
};

struct Plot {
  std::string id, title, unit;
  std::string x_title, x_unit = "Hz";
  std::vector<double> x;  ///< of all curves together, rising
  std::vector<Curve> curves;
  bool logarithmic = false;  ///< from 1: SWR
  bool from_zero = false;
  double height = 250.0;
  double at_hz = 0.0;  ///< along a line: the frequency that is drawn
  std::string table;   ///< the same as numbers
};

/// `<figure>` with the drawing, the legend where there are several curves, a place for what is read out, and the table.
std::string draw_plot(const Plot& plot);

/// Round steps over a span.
std::vector<double> ticks(double low, double high, int about);

}  // namespace pictures
