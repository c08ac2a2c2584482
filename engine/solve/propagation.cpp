#include "propagation.hpp"

#include <numbers>
#include <vector>

#include "physics/constants.hpp"

namespace wattfall::solve {
namespace {

bool by_model(const design::LineMake& make, const double* frequencies_hz, std::size_t points, Complex* gamma_per_m, Complex* impedance_ohm) {
  const sdk::LineData data{{make.impedance_ohm.real(), make.impedance_ohm.imag()}, make.velocity, make.losses.data(), make.losses.size()};
  constexpr std::size_t most = 16;
  sdk::Complex gamma[most], impedance[most];
  sdk::Failure failure{};
  for (std::size_t first = 0; first < points; first += most) {
    const std::size_t count = points - first < most ? points - first : most;
    if (make.model->propagate(make.model->self, &data, make.k1, make.k2, frequencies_hz + first, count, gamma, impedance, &failure) != sdk::Status::ok)
      return false;
    for (std::size_t i = 0; i < count; ++i) {
      gamma_per_m[first + i] = {gamma[i].re, gamma[i].im};
      impedance_ohm[first + i] = {impedance[i].re, impedance[i].im};
    }
  }
  return true;
}

physics::LineConstants constants_of(const physics::Coax& section, double hertz) { return physics::coax_constants(section, hertz); }
physics::LineConstants constants_of(const physics::TwoWire& section, double hertz) { return physics::two_wire_constants(section, hertz); }
physics::LineConstants constants_of(const physics::WireOverGround& section, double hertz) { return physics::over_ground_constants(section, hertz); }
physics::LineConstants constants_of(std::monostate, double) { return {}; }

}  // namespace

const design::LineMake& make_of(const design::Design& design, const graph::Element& element) {
  const auto& model = design.parts[element.part.index].model;
  if (const auto* line = std::get_if<design::Line>(&model)) return line->make;
  return std::get<design::Stub>(model).make;
}

bool propagate(const design::Design& design, const graph::Element& element, const double* frequencies_hz, std::size_t points, Complex* gamma_per_m,
               Complex* impedance_ohm) {
  const design::LineMake& make = make_of(design, element);
  const bool common = element.role == graph::Element::Role::common_mode;
  if (!common && std::holds_alternative<std::monostate>(make.section)) return by_model(make, frequencies_hz, points, gamma_per_m, impedance_ohm);
  for (std::size_t i = 0; i < points; ++i) {
    if (common) {
      const auto& line = std::get<design::Line>(design.parts[element.part.index].model);
      gamma_per_m[i] = {0.0, 2.0 * std::numbers::pi * frequencies_hz[i] / physics::speed_of_light_m_per_s};
      impedance_ohm[i] = line.common_impedance->at(frequencies_hz[i], {});
      continue;
    }
    const physics::LineConstants constants =
        std::visit([&](const auto& section) { return constants_of(section, frequencies_hz[i]); }, make.section);
    const physics::LineWave wave = physics::line_wave(constants, frequencies_hz[i]);
    gamma_per_m[i] = wave.gamma_per_m;
    impedance_ohm[i] = wave.impedance_ohm;
  }
  return true;
}

}  // namespace wattfall::solve
