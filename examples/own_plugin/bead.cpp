// Beads on a wire: a coil of inductance n L whose ferrite relaxes at the crossover frequency fc, where R and X are
// equal. The permeability falls as 1/(1 + j f/fc) (one relaxation, after Debye), so
//
//     Z = j w n L / (1 + j f/fc),   Re Z = w n L (f/fc) / (1 + (f/fc)^2) >= 0:
//
// a coil well below fc, where R grows with the square of f, and the resistance 2 pi fc n L well above.
#include "bead.hpp"

#include <algorithm>
#include <cmath>

namespace own {
namespace {

namespace sdk = wattfall::sdk;

constexpr double pi = 3.14159265358979323846;

constexpr sdk::Property properties[] = {
    {"inductance", "H", nullptr, "of one bead, far below the crossover"},
    {"crossover", "Hz", "25 MHz", "where resistance and reactance are equal"},
    {"count", "", "1", "beads in a row"},
};

/// The row (1 + j x) V - j w n L I = 0, x = f/fc, divided by its larger entry, currents counted in amps at 50 ohm.
sdk::Status rows(void*, const sdk::Complex* values, const double* frequencies_hz, std::size_t points, sdk::Complex* a,
                 sdk::Complex* b, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    const double henries = values[0].re * values[2].re, crossover_hz = values[1].re;
    if (henries < 0.0) return sdk::fail(failure, "a bead's inductance and count are not negative");
    if (crossover_hz <= 0.0) return sdk::fail(failure, "a bead's crossover is above zero");
    for (std::size_t i = 0; i < points; ++i) {
      const double x = frequencies_hz[i] / crossover_hz;
      const double reactance_ohm = 2.0 * pi * frequencies_hz[i] * henries;
      const double scale = 1.0 / std::max(std::hypot(1.0, x), reactance_ohm / 50.0);
      a[i] = {scale, x * scale};
      b[i] = {0.0, -reactance_ohm * scale};
    }
    return sdk::Status::ok;
  });
}

}  // namespace

constexpr sdk::Kind bead{"bead", "ferrite beads on a wire", 1, properties, 3, nullptr, rows};

}  // namespace own
