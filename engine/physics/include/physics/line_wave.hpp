// A uniform line per metre: from R, L, G, C to the wave on it and back.
//
//   gamma = sqrt((R + j w L)(G + j w C)),  Z0 = sqrt((R + j w L)/(G + j w C)) = (R + j w L)/gamma
// with Re gamma = (R w C + G w L)/(2 beta) and Im Z0 = (G w L - R w C)/(2 Re Z0 |G + j w C|^2), so that a loss of 1e-12
// keeps its digits. Exact for any R, G >= 0 above 0 Hz. Source: O. Heaviside's telegraph equations, as in any textbook
// of lines (S. Ramo, J. Whinnery, T. Van Duzer, Fields and Waves in Communication Electronics; from memory).
#pragma once

#include <complex>

#include "physics/validity.hpp"

namespace wattfall::physics {

struct LineConstants {
  double resistance_ohm_per_m = 0.0;
  double inductance_h_per_m = 0.0;
  double conductance_s_per_m = 0.0;
  double capacitance_f_per_m = 0.0;
  Validity validity;
};

struct LineWave {
  std::complex<double> gamma_per_m;    ///< Np/m + j rad/m
  std::complex<double> impedance_ohm;  ///< Z0
  Validity validity;

  double loss_db_per_m() const;
  double wavelength_m() const;
  double velocity_m_per_s(double frequency_hz) const;
  /// Against light in vacuum.
  double velocity_factor(double frequency_hz) const;
};

LineWave line_wave(const LineConstants& constants, double frequency_hz);
/// The way back: R + j w L = gamma Z0, G + j w C = gamma/Z0.
LineConstants line_constants(const LineWave& wave, double frequency_hz);

/// Z0 of a line whose input was measured with its end open and shorted: sqrt(Zo Zs), the root with a positive
/// resistance.
std::complex<double> impedance_from_open_and_short_ohm(std::complex<double> open_ohm, std::complex<double> short_ohm);

/// The low-loss forms R/(2 Z) and G Z/2 with Z = sqrt(L/C), each [Np/m].
struct MatchedLoss {
  double conductor_np_per_m, dielectric_np_per_m;
};
MatchedLoss low_loss_attenuation(const LineConstants& constants);

}  // namespace wattfall::physics
