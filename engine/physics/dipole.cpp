// Sine and cosine integrals to ohms.
#include "physics/dipole.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <limits>

#include "physics/sine_integrals.hpp"
#include "physics/straight_wire.hpp"

namespace wattfall::physics {
namespace {

using Complex = std::complex<double>;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double quadrature_below = 1.0;  // of k l: there the closed form loses (k l)^4 of its digits

/// int over -1..1 of (cos(x t/2) - cos(x/2))^2/(1 - t^2) dt, the pattern's power, smooth at the ends.
double pattern_power(double x) {
  const auto density = [x](double t) {
    const double difference = 2.0 * std::sin(x * (1.0 + t) / 4.0) * std::sin(x * (1.0 - t) / 4.0);
    return difference * difference / ((1.0 + t) * (1.0 - t));
  };
  return boost::math::quadrature::gauss<double, 20>::integrate(density, -1.0, 1.0);
}

double pattern_closed_form(double x) {
  const double cin = entire_cosine_integral(x), cin2 = entire_cosine_integral(2.0 * x);
  const double si = sine_integral(x), si2 = sine_integral(2.0 * x);
  return cin + 0.5 * std::sin(x) * (si2 - 2.0 * si) + 0.5 * std::cos(x) * (2.0 * cin - cin2);
}

double reactance_at_maximum(double x, double radius_over_length, double eta_ohm) {
  const double si = sine_integral(x), si2 = sine_integral(2.0 * x);
  const double thin = cosine_integral(2.0 * x * radius_over_length * radius_over_length);
  const double ci = 2.0 * cosine_integral(x) - cosine_integral(2.0 * x) - thin;
  return eta_ohm / (4.0 * pi) * (2.0 * si + std::cos(x) * (2.0 * si - si2) - std::sin(x) * ci);
}

double to_feed(double length_wl) {
  const double sine = std::sin(pi * length_wl);
  return 1.0 / (sine * sine);
}

/// Ci(v) - j Si(v): the integral of e^-jv/v.
Complex wave_integral(double v) {
  return {cosine_integral(v), -sine_integral(v)};
}

/// int_0^h e^(-jkR + j sign k z)/R dz, R the distance from (0, center) to (spacing, z); all lengths times k.
Complex half_arm(double h, double center, double spacing, int sign) {
  const auto phase = [&](double z) {  // R - sign (z - center), without cancellation
    const double along = sign * (z - center), far = std::hypot(spacing, along);
    return along > 0.0 ? spacing * spacing / (far + along) : far - along;
  };
  const Complex turn = std::polar(1.0, sign * center);
  return static_cast<double>(sign) * turn * (wave_integral(phase(0.0)) - wave_integral(phase(h)));
}

Validity check_thin(double length_m, double diameter_m, double frequency_hz) {
  Validity validity;
  validity.expect_positive("dipole length", length_m).expect_positive("wire diameter", diameter_m);
  validity.expect_positive("frequency", frequency_hz);
  if (!validity.possible()) return validity;
  const double wl = length_m * frequency_hz / speed_of_light_m_per_s, slim = length_m / diameter_m;
  validity.expect(wl >= 0.01 && wl <= 0.6, Verdict::outside,
                  "the dipole (or a monopole with its image) is {} wavelengths long, outside 0.01 to 0.6", wl);
  return validity.expect(slim >= 50.0, Verdict::outside,
                         "the wire is only {} times as long as thick (50 or more in range)", slim);
}

/// R' l/2 (1 - sin x/x)/sin^2(x/2) of the whole dipole at its feed.
double wire_loss_ohm(const Conductor& metal, const Dipole& dipole, double frequency_hz) {
  const double wl = dipole.length_m * frequency_hz / speed_of_light_m_per_s, x = 2.0 * pi * wl;
  const double per_m = round_wire(metal, dipole.diameter_m, frequency_hz).resistance_ohm_per_m;
  return per_m * dipole.length_m / 2.0 * (1.0 - std::sin(x) / x) * to_feed(wl);
}

ThinWire with_losses(Complex lossless_ohm, double wire_ohm, double ground_ohm, Validity validity) {
  const Complex all = lossless_ohm + wire_ohm + ground_ohm;
  return {all, lossless_ohm.real(), wire_ohm, ground_ohm, lossless_ohm.real() / all.real(), std::move(validity)};
}

}  // namespace

double dipole_radiation_resistance_ohm(double length_wl, double eta_ohm) {
  const double x = 2.0 * pi * length_wl;
  return eta_ohm / (2.0 * pi) * (x < quadrature_below ? pattern_power(x) : pattern_closed_form(x));
}

Complex dipole_input_ohm(double length_wl, double radius_wl, double eta_ohm) {
  const double x = 2.0 * pi * length_wl, scale = to_feed(length_wl);
  return {scale * dipole_radiation_resistance_ohm(length_wl, eta_ohm),
          scale * reactance_at_maximum(x, radius_wl / length_wl, eta_ohm)};
}

Complex side_by_side_mutual_ohm(double length_wl, double spacing_wl, double eta_ohm) {
  const double h = pi * length_wl, d = 2.0 * pi * spacing_wl;
  const auto from = [&](double center) {
    return std::polar(1.0, h) * half_arm(h, center, d, -1) - std::polar(1.0, -h) * half_arm(h, center, d, +1);
  };
  const Complex sum = from(h) + from(-h) - 2.0 * std::cos(h) * from(0.0);
  return eta_ohm / (4.0 * pi) * to_feed(length_wl) * sum;
}

double dipole_broadside_directivity(double length_wl) {
  const double field = 1.0 - std::cos(pi * length_wl);
  return eta0_ohm / (pi * dipole_radiation_resistance_ohm(length_wl)) * field * field;
}

ThinWire dipole_at(const Dipole& dipole, double frequency_hz) {
  Validity validity = check_thin(dipole.length_m, dipole.diameter_m, frequency_hz);
  if (dipole.metal) validity.join(check_conductor(*dipole.metal));
  if (!validity.possible()) return {{nan, nan}, nan, nan, nan, nan, std::move(validity)};
  const double per_m = frequency_hz / speed_of_light_m_per_s;
  const Complex ohm = dipole_input_ohm(dipole.length_m * per_m, dipole.diameter_m / 2.0 * per_m);
  return with_losses(ohm, dipole.metal ? wire_loss_ohm(*dipole.metal, dipole, frequency_hz) : 0.0, 0.0,
                     std::move(validity));
}

ThinWire monopole_at(const Monopole& monopole, double frequency_hz) {
  const Dipole with_image{2.0 * monopole.height_m, monopole.diameter_m, monopole.metal};
  ThinWire whole = dipole_at(with_image, frequency_hz);
  whole.validity.expect(monopole.ground_loss_ohm >= 0.0, Verdict::impossible,
                        "ground loss is {} ohm, and must not be below zero", monopole.ground_loss_ohm);
  const Complex lossless(whole.radiation_ohm / 2.0, whole.input_ohm.imag() / 2.0);
  return with_losses(lossless, whole.wire_loss_ohm / 2.0, monopole.ground_loss_ohm, std::move(whole.validity));
}

double short_uniform_dipole_ohm(double length_wl, double eta_ohm) {
  return 2.0 * pi / 3.0 * eta_ohm * length_wl * length_wl;
}
double short_dipole_ohm(double length_wl, double eta_ohm) {
  return short_uniform_dipole_ohm(length_wl, eta_ohm) / 4.0;
}
double short_monopole_ohm(double height_wl, double eta_ohm) {
  return short_dipole_ohm(2.0 * height_wl, eta_ohm) / 2.0;
}

double small_loop_ohm(double circumference_wl, double turns, double eta_ohm) {
  const double square = circumference_wl * circumference_wl;
  return pi / 6.0 * eta_ohm * turns * turns * square * square;
}

LoopAt loop_at(const Loop& loop, double frequency_hz) {
  Validity validity = check_round_loop(loop.diameter_m, loop.wire_diameter_m);
  validity.join(check_conductor(loop.metal)).expect_positive("frequency", frequency_hz);
  if (!validity.possible()) return {{nan, nan}, nan, nan, nan, std::move(validity)};
  const double around = pi * loop.diameter_m, wl = around * frequency_hz / speed_of_light_m_per_s;
  validity.expect(wl <= 0.1, Verdict::outside, "the loop is {} wavelengths around (up to 0.1 in range)", wl);
  const InternalImpedance wire = round_wire(loop.metal, loop.wire_diameter_m, frequency_hz);
  const double henry = round_loop_inductance_h(loop.diameter_m, loop.wire_diameter_m, Current::surface) +
                       around * wire.inductance_h_per_m;
  const double radiation = small_loop_ohm(wl), loss = around * wire.resistance_ohm_per_m;
  return {{radiation + loss, 2.0 * pi * frequency_hz * henry},
          radiation,
          loss,
          radiation / (radiation + loss),
          std::move(validity)};
}

Complex slot_impedance_ohm(Complex dipole_ohm, double eta_ohm) {
  return eta_ohm * eta_ohm / (4.0 * dipole_ohm);
}

Complex folded_dipole_ohm(Complex dipole_ohm, int wires) {
  return static_cast<double>(wires) * wires * dipole_ohm;
}

}  // namespace wattfall::physics
