// Resistors, coils, capacitors.
#include "parts/job.hpp"

namespace wattfall::design {
namespace {

constexpr Due stray_inductance{.dim = dimension::inductance, .rule = rule::not_negative};
constexpr Due stray_capacitance{.dim = dimension::capacitance, .rule = rule::not_negative};

}  // namespace

std::optional<Model> build_resistor(PartJob& job) {
  if (not_yet(job, {"skin"})) return std::nullopt;
  Resistor resistor;
  resistor.ohms =
      main_value(job, "resistance", {.dim = dimension::resistance, .rule = rule::not_negative}).value_or(Value());
  resistor.inductance = optional_value(job, "inductance", stray_inductance);
  resistor.capacitance = optional_value(job, "capacitance", stray_capacitance);
  return resistor;
}

std::optional<Model> build_inductor(PartJob& job) {
  if (not_yet(job, {"coil", "core"})) return std::nullopt;
  Inductor inductor;
  inductor.henries =
      main_value(job, "inductance", {.dim = dimension::inductance, .rule = rule::positive}).value_or(Value());
  inductor.loss = series_loss(job);
  inductor.capacitance = optional_value(job, "capacitance", stray_capacitance);
  if (const Given* resonance = job.given.find("resonance")) {
    const auto at_hz = frequency_of(job.bench, resonance->value, *resonance->scope);
    job.good = job.good && at_hz;
    if (at_hz) inductor.resonance_hz = Value(*at_hz);
  }
  return inductor;
}

std::optional<Model> build_capacitor(PartJob& job) {
  if (not_yet(job, {"plates"})) return std::nullopt;
  Capacitor capacitor;
  capacitor.farads =
      main_value(job, "capacitance", {.dim = dimension::capacitance, .rule = rule::positive}).value_or(Value());
  capacitor.loss = series_loss(job);
  capacitor.tangent = optional_value(job, "tangent", {.dim = dimension::number, .rule = rule::not_negative});
  capacitor.inductance = optional_value(job, "inductance", stray_inductance);
  return capacitor;
}

}  // namespace wattfall::design
