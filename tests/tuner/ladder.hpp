// An independent model of matching networks: a ladder of series and shunt parts between a 50 ohm source and a load,
// solved by chain (ABCD) matrices from the load back to the source. Nothing here is shared with the engine or the
// search.
#pragma once

#include <cmath>
#include <complex>
#include <cstddef>
#include <limits>
#include <random>
#include <string>
#include <vector>
#include <wattfall/sdk.hpp>

namespace tuner_test {

using Ohms = std::complex<double>;

/// A coil or capacitor with series resistance |X|/Q, from the source to the load in order.
struct Part {
  bool coil;
  bool series;
  double q;  ///< infinity: ideal
};

struct Ladder {
  std::vector<Part> parts;
  Ohms load;
  double frequency_hz;
  double source_ohm = 50;
  double available_w = 100;
};

/// Impedance of a part of `value` [H or F]: R = X/Q in series.
inline Ohms part_impedance(const Part& part, double value, double frequency_hz) {
  const double w = 2 * 3.141592653589793238 * frequency_hz;
  const double x = part.coil ? w * value : -1 / (w * value);
  return {std::abs(x) / part.q, x};
}

/// What the source sees and what the load gets.
struct Answer {
  Ohms input_ohm;
  double load_w;
  double efficiency;  ///< load power over input power
};

/// Chain matrix of the whole network times the load's state (V = Z, I = 1), then the source's divider.
inline Answer solve(const Ladder& ladder, const double* values) {
  Ohms volts = ladder.load;
  Ohms amps = 1;
  for (std::size_t i = ladder.parts.size(); i-- > 0;) {
    const Ohms z = part_impedance(ladder.parts[i], values[i], ladder.frequency_hz);
    if (ladder.parts[i].series)
      volts += z * amps;
    else
      amps += volts * std::conj(z) / std::norm(z);
  }
  // Available power E^2/(4 R); the load's amps are 1 where E = volts + R amps.
  const double e = std::norm(volts + ladder.source_ohm * amps);
  const double in = (volts * std::conj(amps)).real();
  return {volts / amps, ladder.available_w * 4 * ladder.source_ohm * ladder.load.real() / e, ladder.load.real() / in};
}

/// Against 50 ohm; infinite where nothing is taken up.
inline double swr(Ohms input_ohm) {
  const double r = std::abs((input_ohm - 50.0) / (input_ohm + 50.0));
  return r < 1 ? (1 + r) / (1 - r) : std::numeric_limits<double>::infinity();
}

inline double load_power_w(const Ladder& ladder, const double* values) {
  return solve(ladder, values).load_w;
}

}  // namespace tuner_test
