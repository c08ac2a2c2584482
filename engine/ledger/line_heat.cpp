// With V = p + q and Z0 I = p - q the heat is (a + b)(|p|^2 + |q|^2) + 2 (b - a) Re(p q*), a = R/|Z0|^2, b = G: the ripple
// of volts and amps along a line again, its swing scaled by (b - a)/(a + b). (Telegrapher's equations; any textbook.)
#include "line_heat.hpp"

#include <algorithm>
#include <cmath>

#include "ledger/along_line.hpp"

namespace wattfall::ledger {
namespace {

/// a: of the conductors, b: of the dielectric [1/(ohm m)].
struct Densities {
  double a, b;
};

physics::LineConstants constants_of(const physics::Coax& section, double hertz) { return physics::coax_constants(section, hertz); }
physics::LineConstants constants_of(const physics::TwoWire& section, double hertz) { return physics::two_wire_constants(section, hertz); }
physics::LineConstants constants_of(const physics::WireOverGround& section, double hertz) { return physics::over_ground_constants(section, hertz); }
physics::LineConstants constants_of(std::monostate, double) { return {}; }

/// Of one wave alone the heat is 2 alpha Re(1/Z0) |p|^2.
Densities densities(const design::LineMake& make, double hertz, double alpha_per_m, std::complex<double> z0) {
  if (!std::holds_alternative<std::monostate>(make.section)) {
    const auto constants = std::visit([&](const auto& section) { return constants_of(section, hertz); }, make.section);
    return {constants.resistance_ohm_per_m / std::norm(z0), constants.conductance_s_per_m};
  }
  const double skin = make.k1 * std::sqrt(hertz), dielectric = make.k2 * hertz;
  const double share = skin + dielectric > 0.0 ? std::clamp(dielectric / (skin + dielectric), 0.0, 1.0) : 0.0;
  const double both = 2.0 * alpha_per_m * (1.0 / z0).real();
  return {both * (1.0 - share), both * share};
}

}  // namespace

WorstMetre worst_metre(const design::LineMake& make, double frequency_hz, double length_m, std::complex<double> wave1,
                       std::complex<double> wave2, std::complex<double> gamma_l, std::complex<double> impedance_ohm) {
  const auto [a, b] = densities(make, frequency_hz, gamma_l.real() / length_m, impedance_ohm);
  if (!(a + b > 0.0)) return {};
  const Largest largest = largest_along(wave1, wave2, gamma_l, (b - a) / (a + b));
  return {(a + b) * largest.value * largest.value, largest.place};
}

}  // namespace wattfall::ledger
