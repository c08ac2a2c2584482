// The built line plugin, met as the program meets it: through the host and the plugin interface alone.
#pragma once

#include <catch2/catch.hpp>
#include <complex>
#include <string>
#include <vector>

#include "host/load_plugins.hpp"

namespace line_test {

namespace sdk = wattfall::sdk;
using complex = std::complex<double>;

inline const wattfall::host::Registry& registry() {
  static const wattfall::host::Plugins plugins = wattfall::host::load_plugins({{}, WATTFALL_PLUGIN_DIR});
  return plugins.registry();
}

inline const sdk::LineModel& model() {
  const sdk::LineModel* found = registry().find_line_model("skin-dielectric");
  if (found == nullptr) throw std::runtime_error("the line plugin is not in " WATTFALL_PLUGIN_DIR);
  return *found;
}

struct Fit {
  double k1 = 0.0, k2 = 0.0, worst = 0.0;
};

inline Fit fit(const std::vector<sdk::LossPoint>& losses) {
  const sdk::LineData line{{50.0, 0.0}, 0.66, losses.data(), losses.size()};
  Fit result;
  sdk::Failure failure{};
  const auto status = model().fit(model().self, &line, &result.k1, &result.k2, &result.worst, &failure);
  if (status != sdk::Status::ok) throw std::runtime_error(failure.text);
  return result;
}

/// A line at one frequency.
struct Propagation {
  complex gamma_per_m, impedance_ohm;

  double alpha() const { return gamma_per_m.real(); }
  double beta() const { return gamma_per_m.imag(); }
  /// Input impedance [ohm] of a length that ends in a load.
  complex input_ohm(double length_m, complex load_ohm) const {
    const complex t = std::tanh(gamma_per_m * length_m);
    return impedance_ohm * (load_ohm + impedance_ohm * t) / (impedance_ohm + load_ohm * t);
  }
  /// 10 lg (power in / power into the load) [dB], from the chain matrix of the line.
  double loss_db(double length_m, complex load_ohm) const {
    const complex c = std::cosh(gamma_per_m * length_m), s = std::sinh(gamma_per_m * length_m);
    const complex volts = c * load_ohm + impedance_ohm * s, amps = s * load_ohm / impedance_ohm + c;
    return 10.0 * std::log10((volts * std::conj(amps)).real() / load_ohm.real());
  }
};

inline Propagation propagate(complex impedance_ohm, double velocity, Fit k, double frequency_hz) {
  const sdk::LineData line{{impedance_ohm.real(), impedance_ohm.imag()}, velocity, nullptr, 0};
  sdk::Complex gamma{}, impedance{};
  sdk::Failure failure{};
  const auto status =
      model().propagate(model().self, &line, k.k1, k.k2, &frequency_hz, 1, &gamma, &impedance, &failure);
  if (status != sdk::Status::ok) throw std::runtime_error(failure.text);
  return {{gamma.re, gamma.im}, {impedance.re, impedance.im}};
}

/// Coefficients of a line that loses this much a metre at this frequency.
inline Fit losing(double db_per_m, double frequency_hz) {
  return fit({{frequency_hz, db_per_m * 100.0}});
}

inline Fit fit_of(const sdk::Cable& cable) {
  return fit({cable.losses, cable.losses + cable.loss_count});
}

inline const sdk::Cable& cable(const std::string& name) {
  const sdk::Cable* found = registry().find_cable(name);
  if (found == nullptr) throw std::runtime_error("no cable " + name);
  return *found;
}

}  // namespace line_test
