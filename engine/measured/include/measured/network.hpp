// A measured network: scattering parameters over frequency, with where they were read. In comes a Network (from
// `read_touchstone`, or filled by hand); out go its parameters at any frequency inside its range and how far it is
// from passive.
#pragma once

#include <complex>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "grammar/source.hpp"

namespace wattfall::measured {

using Complex = std::complex<double>;

/// One line of a file's noise data. Read so that the file is known to be whole; nothing here computes with it.
struct NoisePoint {
  double frequency_hz = 0;
  double minimum_figure_db = 0;
  Complex optimum_reflection;  ///< of the source, for the minimum noise figure
  double resistance_ohm = 0;   ///< effective noise resistance
};

/// Something in a file that is no mistake, but that its owner may want to know (an ignored line, unused noise data).
struct Remark {
  std::string code;  ///< stable, lower case with hyphens, begins with `touchstone-`
  Span span;
  std::string text;  ///< one sentence
};

/// S over frequency. Sizes: `frequencies_hz` and `lines` F, `reference_ohm` N = ports, `parameters` F * N * N.
struct Network {
  int ports = 0;
  std::vector<double> frequencies_hz;  ///< [Hz], strictly rising, the first may be 0
  std::vector<Complex> parameters;     ///< S, row-major N x N for each frequency; row: where the wave leaves
  std::vector<double> reference_ohm;   ///< [ohm], positive and real, one a port
  std::vector<NoisePoint> noise;       ///< empty in most files
  SourcePtr source;                    ///< the file; null for a network that was not read
  std::vector<int> lines;              ///< line of each frequency in `source`, from 1
  std::vector<Remark> remarks;
};

/// S at `frequency_hz` [Hz], row-major N x N, into `out` (room for N * N). Between two points real and imaginary parts
/// run straight in frequency; at a point the value is the file's own. Outside the range false, and `out` is untouched;
/// the ends have a slack of 1 part in 1e9, within which the end's value holds. Cost O(log F + N^2).
bool parameters_at(const Network& network, double frequency_hz, Complex* out);

/// S11 at `frequency_hz` [Hz], as `parameters_at`; none outside the range.
std::optional<Complex> reflection_at(const Network& network, double frequency_hz);

/// The largest singular value of S at frequency number `index`: the square root of the largest ratio of power that
/// leaves to power that comes in. Above 1 the network gives power. Cost O(N^3).
double largest_singular_value(const Network& network, std::size_t index);

struct Gain {
  double singular_value = 0;
  std::size_t index = 0;  ///< which frequency
};

/// The frequency at which the network is least passive (the first such); value 0 for a network without points.
Gain worst_gain(const Network& network);

/// No frequency has a singular value above 1 + `slack`. Passive parts measured with few digits exceed 1 slightly.
bool passive(const Network& network, double slack = 1e-6);

}  // namespace wattfall::measured
