// What the network does in every state: potentials of its nodes, currents of its elements, and what both look like from chosen places.
// Structure of arrays: every series runs over the states. Phasors are rms; time runs as e^(+j w t).
#pragma once

#include <complex>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "design/design.hpp"

namespace wattfall::solve {

using Series = std::vector<double>;

/// A complex number in every state, real and imaginary parts apart.
class ComplexSeries {
 public:
  std::complex<double> operator[](std::size_t state) const { return {re_[state], im_[state]}; }
  void set(std::size_t state, std::complex<double> value) {
    re_[state] = value.real();
    im_[state] = value.imag();
  }
  void resize(std::size_t states) {
    // A little more room than a power of two, so that series do not all begin at the same place of the cache.
    if (re_.capacity() < states) re_.reserve(states + 24);
    if (im_.capacity() < states) im_.reserve(states + 24);
    re_.resize(states);
    im_.resize(states);
  }
  std::size_t size() const { return re_.size(); }
  bool empty() const { return re_.empty(); }
  double* real() { return re_.data(); }
  double* imag() { return im_.data(); }

 private:
  std::vector<double> re_, im_;
};

/// The points to solve: a frequency and the value of every knob in each.
struct States {
  std::vector<double> frequencies_hz;
  std::vector<double> knobs;  ///< states x knob_count, row-major
  std::size_t knob_count = 0;

  std::size_t size() const { return frequencies_hz.size(); }
  std::span<const double> knobs_at(std::size_t state) const { return {knobs.data() + state * knob_count, knob_count}; }
  void add(double frequency_hz, std::span<const double> setting) {
    frequencies_hz.push_back(frequency_hz);
    knobs.insert(knobs.end(), setting.begin(), setting.end());
  }
};

/// One element's currents into the first terminals of its ports, and its heat.
struct Flow {
  ComplexSeries amps1, amps2;  ///< amps2: two-ports only
  Series heat1_w, heat2_w;     ///< heat2_w: of the second of two coupled coils; else empty
  ComplexSeries gamma_l, impedance_ohm;  ///< lines only: gamma l, Z0
  Series volts_peak, amps_rms;  ///< the larger port's, where Keep::figures asked for them instead of the currents
};

/// From a design::Look, in every state.
struct LookResponse {
  ComplexSeries admittance_into;    ///< I/V into the part, the source working [S]
  ComplexSeries admittance_behind;  ///< into the part's surroundings from its terminal, the source silent [S]
};

/// Why a state left the fast path for the robust form.
enum class Guard : std::uint8_t { none, pivot, line, shorted, two_port, balance };

struct Solution {
  States states;
  std::vector<ComplexSeries> volts;  ///< by network node, [0] is ground
  std::vector<Flow> flows;           ///< by element
  ComplexSeries source_volts, source_amps;  ///< across the source's terminals, and out of its node into the network
  Series available_w;
  std::vector<LookResponse> looks;
  std::vector<Guard> guards;            ///< none: the fast path's answer stands
  std::vector<std::uint8_t> untrusted;  ///< 1: not even the robust form's answer can be trusted (singular to working accuracy)

  std::size_t robust_count() const;
  /// "9 states: pivot, 2 states: line ..."; empty where the fast path did all.
  std::string robust_why() const;
};

}  // namespace wattfall::solve
