// Monotone changes of the goal under which it is nearest to a parabola. Power into a load that is fed through series
// reactances X and shunt susceptances B is 1/|D|^2, D affine in each X and B alone, so 1/power is a parabola where
// power itself is a needle on a plateau; likewise SWR + 1/SWR = 2(1+|r|^2)/(1-|r|^2), where SWR has a cone's tip at the
// match, and 10^(dB/10).
#pragma once

#include <span>

namespace wattfall::tuner {

enum class Shape { plain, reciprocal, swr, decibel };
inline constexpr int shape_count = 4;

/// The goal in that shape, still to be maximised.
double reshape(Shape shape, double goal);

/// Whether every one of these goals can be reshaped: finite before and after, and on the branch where the shape rises.
bool fits(Shape shape, std::span<const double> goals);

}  // namespace wattfall::tuner
