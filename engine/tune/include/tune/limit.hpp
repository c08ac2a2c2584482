// What no tuner can better: the match of a reactive load over a band, and the power that passive parts can bring at one frequency.
#pragma once

#include <complex>
#include <optional>
#include <vector>

#include "solve/collapse.hpp"

namespace wattfall::tune {

/// A load as resistance with a coil, a capacitor or both: all in series, or all side by side.
struct ReactiveLoad {
  bool series = true;
  double ohms = 0.0;
  double henries = 0.0;  ///< 0: none
  double farads = 0.0;   ///< 0: none
};

/// The load that has these impedances [ohm] at these frequencies [Hz] to within `error` (a share of each impedance), by least squares; none where no such load
/// comes near, or where it has no reactance.
std::optional<ReactiveLoad> reactive_load(const std::vector<double>& frequencies_hz, const std::vector<std::complex<double>>& ohms, double error = 0.01);

/// The least that the largest reflection in the band from `lower_hz` to `upper_hz` can be, whatever passive network stands between a source and the load:
/// exp(-pi R/(L dw)) for a coil in series, exp(-pi R C/(1/w1 - 1/w2)) for a capacitor in series, exp(-pi/(R C dw)) and exp(-pi (L/R)/(1/w1 - 1/w2)) for those
/// side by side; with both, the larger. The reflection is the one at the load's resistance; at the source it is the same where the network loses nothing. At
/// most 1 - its square of the available power reaches the load at the band's worst point, losses or not. Source: R. M. Fano, Theoretical limitations on the broadband
/// matching of arbitrary impedances, J. Franklin Inst. 249, 1950, after H. W. Bode, 1945 (from memory). Exact within the model; cost constant.
double least_reflection(const ReactiveLoad& load, double lower_hz, double upper_hz);

/// The most power [W] that can reach a watched branch, whatever passive parts of whatever values stand at the active ones: lossless ones first of all. Where
/// the rest of the network loses nothing this is the conjugate match, all that the source has to give; with one port it is the best reactance there; with
/// more, parts that may be coupled to each other as well, so that no setting gets above it. None where the rest is not passive, or the bound does not exist in
/// working accuracy. Source: own derivation (a linear form over the ellipsoid of amps that passive parts can draw). Cost: n^3 of the ports.
std::optional<double> most_with_passive_parts(const solve::CollapsedPorts& ports, std::size_t watched);

}  // namespace wattfall::tune
