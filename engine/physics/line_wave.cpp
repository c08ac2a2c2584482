// The two complex roots, written without cancellation.
#include "physics/line_wave.hpp"

#include <cmath>

#include "physics/constants.hpp"

namespace wattfall::physics {

using Complex = std::complex<double>;

double LineWave::loss_db_per_m() const {
  return decibels_per_neper * gamma_per_m.real();
}
double LineWave::wavelength_m() const {
  return 2.0 * pi / gamma_per_m.imag();
}
double LineWave::velocity_m_per_s(double frequency_hz) const {
  return wavelength_m() * frequency_hz;
}
double LineWave::velocity_factor(double frequency_hz) const {
  return velocity_m_per_s(frequency_hz) / speed_of_light_m_per_s;
}

LineWave line_wave(const LineConstants& line, double frequency_hz) {
  LineWave out{{}, {}, line.validity};
  out.validity.expect_positive("frequency", frequency_hz);
  const double omega = 2.0 * pi * frequency_hz;
  const double x = omega * line.inductance_h_per_m, b = omega * line.capacitance_f_per_m;
  const double r = line.resistance_ohm_per_m, g = line.conductance_s_per_m;
  const Complex series(r, x), shunt(g, b);
  const double beta = (std::sqrt(series) * std::sqrt(shunt)).imag();
  const double z = std::sqrt(series / shunt).real();
  out.gamma_per_m = {(r * b + g * x) / (2.0 * beta), beta};
  out.impedance_ohm = {z, (g * x - r * b) / (2.0 * z * std::norm(shunt))};
  return out;
}

LineConstants line_constants(const LineWave& wave, double frequency_hz) {
  const double omega = 2.0 * pi * frequency_hz;
  const Complex series = wave.gamma_per_m * wave.impedance_ohm, shunt = wave.gamma_per_m / wave.impedance_ohm;
  return {series.real(), series.imag() / omega, shunt.real(), shunt.imag() / omega, wave.validity};
}

Complex impedance_from_open_and_short_ohm(Complex open_ohm, Complex short_ohm) {
  const Complex root = std::sqrt(open_ohm) * std::sqrt(short_ohm);
  return root.real() < 0.0 ? -root : root;
}

MatchedLoss low_loss_attenuation(const LineConstants& line) {
  const double z = std::sqrt(line.inductance_h_per_m / line.capacitance_f_per_m);
  return {line.resistance_ohm_per_m / (2.0 * z), line.conductance_s_per_m * z / 2.0};
}

}  // namespace wattfall::physics
