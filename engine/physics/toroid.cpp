// Cores: permeability over frequency, then impedance, flux and heat.
#include "physics/toroid.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

double omega(double frequency_hz) {
  return 2.0 * pi * frequency_hz;
}

/// Z = w L0 (mu'' + j mu'), L0 = N^2 times the index for permeability 1.
CoreImpedance impedance_of(double air_h, const Permeability::At& mu, double frequency_hz, Validity validity) {
  const std::complex<double> ohm = omega(frequency_hz) * air_h * std::complex<double>(mu.imaginary, mu.real);
  const double parallel = mu.imaginary > 0.0 ? std::norm(ohm) / ohm.real() : infinity;
  const double quality = mu.imaginary > 0.0 ? mu.real / mu.imaginary : infinity;
  return {ohm, air_h * mu.real, parallel, std::norm(ohm) / ohm.imag(), quality, std::move(validity.join(mu.validity))};
}

CoreImpedance nothing(Validity validity) {
  return {{nan, nan}, nan, nan, nan, nan, std::move(validity)};
}

Validity check_winding(double turns, double frequency_hz) {
  Validity validity;
  return validity.expect_positive("turns", turns).expect_positive("frequency", frequency_hz);
}

}  // namespace

Validity Permeability::check() const {
  Validity validity;
  double before = 0.0;
  for (const Point& point : points) {
    validity.expect(point.frequency_hz > before, Verdict::impossible, "the permeability table is out of order at {} Hz",
                    point.frequency_hz);
    validity.expect(point.imaginary >= 0.0, Verdict::impossible, "mu'' is {}: the core would give power away",
                    point.imaginary);
    validity.expect(std::isfinite(point.real), Verdict::impossible, "mu' is {}", point.real);
    before = point.frequency_hz;
  }
  return validity;
}

Permeability::At Permeability::at(double frequency_hz) const {
  if (points.empty()) return {1.0, 0.0, {}};
  At out{points.front().real, points.front().imaginary, {}};
  if (points.size() == 1) return out;
  const auto above = std::ranges::upper_bound(points, frequency_hz, {}, &Point::frequency_hz);
  if (above == points.begin() || above == points.end()) {
    const Point& end = above == points.begin() ? points.front() : points.back();
    out = {end.real, end.imaginary, {}};
    out.validity.expect(frequency_hz == end.frequency_hz, Verdict::outside,
                        "{} MHz is outside the permeability table, whose end is kept", frequency_hz / 1e6);
    return out;
  }
  const Point &low = *std::prev(above), &high = *above;
  const double share = std::log(frequency_hz / low.frequency_hz) / std::log(high.frequency_hz / low.frequency_hz);
  return {std::lerp(low.real, high.real, share), std::lerp(low.imaginary, high.imaginary, share), {}};
}

Validity check_ring(const Ring& ring) {
  Validity validity;
  validity.expect_positive("core outer diameter", ring.outer_diameter_m);
  validity.expect_positive("core inner diameter", ring.inner_diameter_m).expect_positive("core height", ring.height_m);
  if (!validity.possible()) return validity;
  return validity.expect(ring.outer_diameter_m > ring.inner_diameter_m, Verdict::impossible,
                         "the core's hole is {} of its outer diameter", ring.inner_diameter_m / ring.outer_diameter_m);
}

double air_inductance_index_h(const Ring& ring) {
  return mu0_h_per_m * ring.height_m * std::log(ring.outer_diameter_m / ring.inner_diameter_m) / (2.0 * pi);
}

double ring_section_m2(const Ring& ring) {
  return ring.height_m * (ring.outer_diameter_m - ring.inner_diameter_m) / 2.0;
}

double inductance_from_index_h(double index_h, double turns) {
  return index_h * turns * turns;
}
double turns_for_inductance(double index_h, double inductance_h) {
  return std::sqrt(inductance_h / index_h);
}

CoreImpedance core_impedance(const Ring& ring, const Permeability& permeability, double turns, double frequency_hz) {
  Validity validity = check_winding(turns, frequency_hz).join(check_ring(ring));
  if (!validity.possible()) return nothing(validity);
  const double air_h = inductance_from_index_h(air_inductance_index_h(ring), turns);
  return impedance_of(air_h, permeability.at(frequency_hz), frequency_hz, std::move(validity));
}

CoreImpedance core_impedance(double index_h, double initial_permeability, const Permeability& permeability,
                             double turns, double frequency_hz) {
  Validity validity = check_winding(turns, frequency_hz).expect_positive("AL", index_h);
  validity.expect_positive("initial permeability", initial_permeability);
  if (!validity.possible()) return nothing(validity);
  Permeability::At mu = permeability.at(frequency_hz);
  if (permeability.points.empty()) mu.real = initial_permeability;
  const double air_h = inductance_from_index_h(index_h / initial_permeability, turns);
  return impedance_of(air_h, mu, frequency_hz, std::move(validity));
}

double peak_flux_density_t(double section_m2, double turns, double volts_peak, double frequency_hz) {
  return volts_peak / (omega(frequency_hz) * turns * section_m2);
}

FluxDensity peak_flux_density(const Ring& ring, double turns, double volts_peak, double frequency_hz) {
  const double mean = peak_flux_density_t(ring_section_m2(ring), turns, volts_peak, frequency_hz);
  const double ratio = ring.outer_diameter_m / ring.inner_diameter_m;
  return {mean, mean * (ratio - 1.0) / std::log(ratio)};
}

Validity check_flux(double flux_t, double limit_t) {
  Validity validity;
  return validity.expect(flux_t <= limit_t, Verdict::outside, "the core reaches {} of its saturation flux density",
                         flux_t / limit_t);
}

double winding_length_m(const Ring& ring, double turns, double wire_diameter_m) {
  const double round_section = 2.0 * ring.height_m + ring.outer_diameter_m - ring.inner_diameter_m;
  return turns * (round_section + 4.0 * wire_diameter_m);
}

CoreHeat core_heat(const CoreImpedance& core, double wire_ohm, double amps_rms) {
  const double square = amps_rms * amps_rms;
  return {square * core.series_ohm.real(), square * wire_ohm};
}

}  // namespace wattfall::physics
