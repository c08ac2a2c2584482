// Slacks on the local models: the augmented Lagrangian of goal and slacks, its multipliers by least squares from the
// models' slopes (Fletcher, 1970), and the shortest step that meets slacks which are missed by little.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "quadratic.hpp"

namespace wattfall::tuner {

/// A multiplier and a penalty a slack. The term of slack s is -(max(0, multiplier - penalty s)^2 - multiplier^2)/(2
/// penalty).
struct Weights {
  std::vector<double> multipliers;
  std::vector<double> penalties;

  double term(std::size_t k, double slack) const;
};

/// Room of each knob to both sides: how far a step may go.
struct Room {
  std::vector<double> lower;  ///< <= 0
  std::vector<double> upper;  ///< >= 0
};

/// Weights at a place from which steps of `radius` are tried. Knobs nearer to a bound than `touching` push against it
/// only.
Weights fit_weights(const Quadratic& goal, std::span<const Quadratic> slacks, const Room& room, double touching,
                    double radius);

/// Second-order model of the augmented Lagrangian.
Quadratic lagrangian(const Quadratic& goal, std::span<const Quadratic> slacks, const Weights& weights);

/// Least step within the room after which every slack's model is at least `aim`, as near as that can be done.
std::vector<double> step_to_meet(std::span<const Quadratic> slacks, const Room& room, double aim);

}  // namespace wattfall::tuner
