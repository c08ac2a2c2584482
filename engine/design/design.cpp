// Small questions that can be answered from the plain data of a design.
#include "design/design.hpp"

#include <cmath>

namespace wattfall::design {
namespace {

/// The geometric mean of a range above zero, the middle of any other; the middle one of discrete values.
double middle_of(const Knob& knob) {
  if (!knob.choices.empty()) return knob.choices[(knob.choices.size() - 1) / 2];
  if (knob.lower > 0.0) return std::sqrt(knob.lower) * std::sqrt(knob.upper);
  return 0.5 * (knob.lower + knob.upper);
}

}  // namespace

bool is_load(const Part& part) {
  return std::holds_alternative<Load>(part.model);
}

bool is_two_port(const Part& part) {
  const bool by_model = std::holds_alternative<Line>(part.model) || std::holds_alternative<Transformer>(part.model) ||
                        std::holds_alternative<TwoPort>(part.model) || std::holds_alternative<Pad>(part.model) ||
                        std::holds_alternative<Choke>(part.model);
  const auto* plugin = std::get_if<PluginPart>(&part.model);
  return by_model || (plugin != nullptr && plugin->kind->ports == 2);
}

const CoreWinding* core_of(const Part& part) {
  if (const auto* coil = std::get_if<Inductor>(&part.model)) return coil->core.get();
  if (const auto* choke = std::get_if<Choke>(&part.model)) return choke->core.get();
  if (const auto* transformer = std::get_if<Transformer>(&part.model)) return transformer->wound.get();
  return nullptr;
}

std::complex<double> Source::reference_at(double frequency_hz, std::span<const double> knobs) const {
  return reference_ohm ? reference_ohm->at(frequency_hz, knobs) : impedance_ohm.at(frequency_hz, knobs).real();
}

bool Source::reference_depends_on(KnobId knob) const { return (reference_ohm ? *reference_ohm : impedance_ohm).depends_on(knob); }

bool Requirement::asks_at(double frequency_hz) const {
  constexpr double slack = 1e-11;  // a tenth of a hertz in ten gigahertz
  return !over_hz || (frequency_hz >= over_hz->first * (1.0 - slack) && frequency_hz <= over_hz->second * (1.0 + slack));
}

std::vector<double> Design::starting_knobs() const {
  std::vector<double> settings;
  settings.reserve(knobs.size());
  for (const Knob& knob : knobs) settings.push_back(knob.start.value_or(middle_of(knob)));
  return settings;
}

}  // namespace wattfall::design
