// How much every value of a design moves a figure: derivatives, all from one solution of the network and one of its transpose (the adjoint method).
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "design/design.hpp"
#include "graph/network.hpp"

namespace wattfall::weigh {

/// One value's part in a figure.
struct Weight {
  std::string name;    ///< "L.inductance", "rig.impedance"; a knob's own name
  std::string unit;    ///< SI; "" for a plain number
  Span span;           ///< where it is written
  double nominal = 0.0;
  double per_unit = 0.0;     ///< d figure/d value
  double per_percent = 0.0;  ///< what one per cent more of the value does to the figure, to first order
};

struct Weighing {
  double figure = 0.0;           ///< in its own unit; NaN where it does not exist, and then there are no weights
  std::vector<Weight> weights;   ///< the largest |per_percent| first; equal ones in the order of the text
  bool trusted = true;           ///< false: the network is singular to working accuracy here
};

/// A network at one frequency and setting of the knobs, factored once, for as many figures as are weighed there. What it is made from must outlive it. Not for
/// use by several threads at once.
class Point {
 public:
  Point(const design::Design& design, const graph::Network& network, double frequency_hz, std::vector<double> knobs);
  ~Point();
  Point(Point&&) noexcept;
  Point& operator=(Point&&) noexcept;

  /// Weighs every value that is not zero. Cost: one (for a mismatch two) back-substitutions more than the figures before it, and eight looks at the law of each
  /// element for each of its values. Figures of a whole sweep (`width of swr`) have no weights: NaN.
  ///
  /// Errors: about 1e-10 of the largest derivative. Where a figure has a corner (the larger end of a line, a table's point) it is the mean of both sides.
  Weighing weigh(const design::Figure& figure);

  /// The slopes alone, along some knobs: d figure/d ln knob, so that a hundredth of it is what one per cent more of the knob does. Errors and corners as above;
  /// 0 for a knob that stands at 0, NaN where the figure does not exist. Cost: as above, for these knobs instead of every value.
  std::vector<double> slopes(const design::Figure& figure, std::span<const design::KnobId> knobs);

 private:
  struct Body;
  std::unique_ptr<Body> body_;
};

/// The same for one figure alone. Cost: one factorisation of the network beside.
Weighing weigh(const design::Design& design, const graph::Network& network, const design::Figure& figure, double frequency_hz,
               const std::vector<double>& knobs);

}  // namespace wattfall::weigh
