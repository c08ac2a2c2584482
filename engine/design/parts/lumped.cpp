// Resistors, coils, capacitors.
#include "parts/job.hpp"

namespace wattfall::design {
namespace {

constexpr Due stray_inductance{.dim = dimension::inductance, .rule = rule::not_negative};
constexpr Due stray_capacitance{.dim = dimension::capacitance, .rule = rule::not_negative};

/// A main value given by size cannot be turned: a knob would say nothing of turns or plates.
const Given* by_size(PartJob& job, const char* property) {
  const Given* given = job.given.find(property);
  const Given* adjustable = job.given.find("adjustable");
  if (given == nullptr || adjustable == nullptr) return given;
  auto& wrong = job.bench.complaints.say("contradictory-properties", adjustable->span,
                                         "a part given by its size cannot be adjusted");
  wrong.notes.push_back({given->span, "given by size here"});
  job.good = false;
  return given;
}

}  // namespace

std::optional<Model> build_resistor(PartJob& job) {
  Resistor resistor;
  if (const Given* skin = job.given.find("skin")) resistor.skin = skin_of(job, *skin);
  resistor.ohms =
      main_value(job, "resistance", {.dim = dimension::resistance, .rule = rule::not_negative}).value_or(Value());
  resistor.inductance = optional_value(job, "inductance", stray_inductance);
  resistor.capacitance = optional_value(job, "capacitance", stray_capacitance);
  return resistor;
}

std::optional<Model> build_inductor(PartJob& job) {
  Inductor inductor;
  if (const Given* coil = by_size(job, "coil")) inductor.wound = coil_of(job, *coil);
  else if (const Given* core = by_size(job, "core")) inductor.core = core_of(job, *core, CoreUse::inductor);
  else
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
  Capacitor capacitor;
  capacitor.tangent = optional_value(job, "tangent", {.dim = dimension::number, .rule = rule::not_negative});
  if (const Given* plates = by_size(job, "plates")) {
    const auto made = plates_of(job, *plates);
    if (made) capacitor.farads = Value(made->farads);
    if (made) capacitor.outside = made->outside;
    if (made && !capacitor.tangent && made->tangent > 0.0) capacitor.tangent = Value(made->tangent);
  } else {
    capacitor.farads =
        main_value(job, "capacitance", {.dim = dimension::capacitance, .rule = rule::positive}).value_or(Value());
  }
  capacitor.loss = series_loss(job);
  capacitor.inductance = optional_value(job, "inductance", stray_inductance);
  return capacitor;
}

}  // namespace wattfall::design
