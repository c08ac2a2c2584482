#include "values.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

#include "design/coupled_sets.hpp"
#include "solve/element_values.hpp"

namespace wattfall::weigh {
namespace {

using namespace design;

/// A Value of a model, or none.
using Access = Value* (*)(Model& model);

Value* given(std::optional<Value>& value) { return value ? &*value : nullptr; }

bool is_number(double value) { return std::isfinite(value) && value != 0.0; }

class Lister {
 public:
  Lister(const Design& design, double frequency_hz, const std::vector<double>& knobs) : design_(design), frequency_hz_(frequency_hz), knobs_(knobs) {}

  std::vector<Adjustable> list() {
    source();
    for (std::size_t p = 0; p < design_.parts.size(); ++p) {
      part_ = p;
      model_ = design_.parts[p].model;
      std::visit([this](auto& model) { of(model); }, model_);
    }
    for (std::size_t c = 0; c < design_.couplings.size(); ++c) coupling(c);
    for (std::size_t k = 0; k < design_.knobs.size(); ++k) knob(k);
    return std::move(found_);
  }

 private:
  bool moves(const Value& value) const {
    for (std::size_t k = 0; k < design_.knobs.size(); ++k)
      if (value.depends_on(KnobId{static_cast<int>(k)})) return true;
    return false;
  }

  /// A coil that shares its flux with two others and more, or its core with one: the network's very form holds its inductance and its factors.
  bool in_shares(PartId coil) const {
    return std::ranges::any_of(sets_, [&](const design::CoupledSet& set) {
      return design::by_shares(design_, set) && std::ranges::find(set.coils, coil) != set.coils.end();
    });
  }

  Adjustable* add(std::string name, std::string unit, Span span, double nominal) {
    if (!is_number(nominal)) return nullptr;
    return &found_.emplace_back(Adjustable{.name = std::move(name), .unit = std::move(unit), .span = span, .nominal = nominal, .scale = {}});
  }

  Adjustable* add_of_part(const char* property, const char* unit, double nominal) {
    const Part& part = design_.parts[part_];
    Adjustable* added = add(part.name + '.' + property, unit, part.span, nominal);
    if (added != nullptr) added->part = static_cast<int>(part_);
    return added;
  }

  void value(const char* property, const char* unit, Access access) {
    const Value* found = access(model_);
    if (found == nullptr || moves(*found)) return;
    Adjustable* added = add_of_part(property, unit, found->real_at(frequency_hz_, knobs_));
    if (added == nullptr) return;
    added->scale = [p = part_, access](Design& design, std::vector<double>&, double factor) {
      Value& here = *access(design.parts[p].model);
      here = here.scaled(factor);
    };
  }

  /// A number of a line's make.
  template <class Scale>
  void number(const char* property, const char* unit, double nominal, Scale scale) {
    if (Adjustable* added = add_of_part(property, unit, nominal))
      added->scale = [p = part_, scale](Design& design, std::vector<double>&, double factor) { scale(design.parts[p].model, factor); };
  }

  /// Resistance and reactance of a complex value apart; one that is computed as a whole.
  template <class Get>
  void impedance(Get get) {
    const Value& whole = *get(model_);
    if (moves(whole)) return;
    const std::complex<double> ohms = whole.at(frequency_hz_, knobs_);
    const bool constant = whole.constant();
    if (constant || ohms.imag() == 0.0)
      number("resistance", "ohm", ohms.real(), [get](Model& model, double factor) {
        Value& here = *get(model);
        here = here.constant() ? Value(std::complex<double>(here.constant_value().real() * factor, here.constant_value().imag())) : here.scaled(factor);
      });
    if (constant)
      number("reactance", "ohm", ohms.imag(), [get](Model& model, double factor) {
        Value& here = *get(model);
        here = Value(std::complex<double>(here.constant_value().real(), here.constant_value().imag() * factor));
      });
    if (!constant && ohms.imag() != 0.0) number("impedance", "ohm", std::abs(ohms), [get](Model& model, double factor) { *get(model) = get(model)->scaled(factor); });
  }

  /// A table's real and imaginary parts, each as a whole; the nominal is that at the frequency.
  template <class Get>
  void table(Get get) {
    const std::complex<double> at = solve::interpolate(*get(model_), frequency_hz_);
    number("resistance", "ohm", at.real(), [get](Model& model, double factor) {
      for (std::complex<double>& z : get(model)->values) z = {z.real() * factor, z.imag()};
    });
    number("reactance", "ohm", at.imag(), [get](Model& model, double factor) {
      for (std::complex<double>& z : get(model)->values) z = {z.real(), z.imag() * factor};
    });
  }

  /// Loss in series, told as Q or in ohms.
  template <class Kind>
  void loss(const SeriesLoss& told) {
    if (told.form == SeriesLoss::Form::none) return;
    const bool ohms = told.form == SeriesLoss::Form::resistance;
    value(ohms ? "resistance" : "Q", ohms ? "ohm" : "", [](Model& model) { return &std::get<Kind>(model).loss.value; });
  }

  template <class Kind>
  void make(const LineMake& line) {
    value("length", "m", [](Model& model) { return &std::get<Kind>(model).make.length_m; });
    if (!std::holds_alternative<std::monostate>(line.section)) return;
    number("impedance", "ohm", line.impedance_ohm.real(), [](Model& model, double factor) { std::get<Kind>(model).make.impedance_ohm *= factor; });
    number("velocity", "", line.velocity, [](Model& model, double factor) { std::get<Kind>(model).make.velocity *= factor; });
    if (line.losses.empty()) return;
    number("loss", "dB/100m", 100.0 * (line.k1 * std::sqrt(frequency_hz_) + line.k2 * frequency_hz_), [](Model& model, double factor) {
      LineMake& here = std::get<Kind>(model).make;
      here.k1 *= factor;
      here.k2 *= factor;
    });
  }

  void of(Resistor&) {
    value("resistance", "ohm", [](Model& model) { return &std::get<Resistor>(model).ohms; });
    value("inductance", "H", [](Model& model) { return given(std::get<Resistor>(model).inductance); });
    value("capacitance", "F", [](Model& model) { return given(std::get<Resistor>(model).capacitance); });
  }
  void of(Inductor& coil) {
    if (coil.wound == nullptr && coil.core == nullptr && !in_shares(PartId{static_cast<int>(part_)})) value("inductance", "H", [](Model& model) { return &std::get<Inductor>(model).henries; });
    loss<Inductor>(coil.loss);
    value("capacitance", "F", [](Model& model) { return given(std::get<Inductor>(model).capacitance); });
    value("resonance", "Hz", [](Model& model) { return given(std::get<Inductor>(model).resonance_hz); });
  }
  void of(Capacitor& capacitor) {
    value("capacitance", "F", [](Model& model) { return &std::get<Capacitor>(model).farads; });
    loss<Capacitor>(capacitor.loss);
    value("tangent", "", [](Model& model) { return given(std::get<Capacitor>(model).tangent); });
    value("inductance", "H", [](Model& model) { return given(std::get<Capacitor>(model).inductance); });
  }
  void of(Line& line) {
    make<Line>(line.make);
    value("common impedance", "ohm", [](Model& model) { return given(std::get<Line>(model).common_impedance); });
  }
  void of(Stub& stub) { make<Stub>(stub.make); }
  void of(Transformer&) {
    value("turns", "", [](Model& model) { return &std::get<Transformer>(model).ratio; });
    value("winding", "ohm", [](Model& model) { return given(std::get<Transformer>(model).winding_ohms); });
    value("leakage", "H", [](Model& model) { return given(std::get<Transformer>(model).leakage_henries); });
    value("magnetizing", "H", [](Model& model) { return given(std::get<Transformer>(model).magnetizing_henries); });
    value("core", "ohm", [](Model& model) { return given(std::get<Transformer>(model).core_ohms); });
    value("core Q", "", [](Model& model) { return given(std::get<Transformer>(model).core_q); });
  }
  void of(TwoPort&) {}
  void of(Pad&) {
    value("attenuation", "dB", [](Model& model) { return &std::get<Pad>(model).attenuation_db; });
    value("impedance", "ohm", [](Model& model) { return &std::get<Pad>(model).impedance_ohm; });
  }
  void of(Choke& choke) {
    if (choke.core != nullptr) return;
    if (choke.table) return table([](Model& model) { return &*std::get<Choke>(model).table; });
    impedance([](Model& model) { return &std::get<Choke>(model).impedance_ohm; });
  }
  void of(Selector&) {}
  void of(PluginPart& part) {
    for (std::size_t i = 0; i < part.values.size(); ++i) {
      if (moves(part.values[i])) continue;
      const sdk::Property& property = part.kind->properties[i];
      number(property.name, property.unit, part.values[i].real_at(frequency_hz_, knobs_), [i](Model& model, double factor) {
        Value& here = std::get<PluginPart>(model).values[i];
        here = here.scaled(factor);
      });
    }
  }
  void of(Load& load) {
    if (std::holds_alternative<Value>(load.impedance)) impedance([](Model& model) { return &std::get<Value>(std::get<Load>(model).impedance); });
    if (std::holds_alternative<Table>(load.impedance)) table([](Model& model) { return &std::get<Table>(std::get<Load>(model).impedance); });
    if (std::holds_alternative<Load::Series>(load.impedance)) {
      value("resistance", "ohm", [](Model& model) { return given(std::get<Load::Series>(std::get<Load>(model).impedance).ohms); });
      value("inductance", "H", [](Model& model) { return given(std::get<Load::Series>(std::get<Load>(model).impedance).henries); });
      value("capacitance", "F", [](Model& model) { return given(std::get<Load::Series>(std::get<Load>(model).impedance).farads); });
    }
    if (load.loss_ohms) value("loss", "ohm", [](Model& model) { return given(std::get<Load>(model).loss_ohms); });
    else if (std::holds_alternative<Value>(load.radiates)) value("radiates", "", [](Model& model) { return &std::get<Value>(std::get<Load>(model).radiates); });
  }

  void source() {
    const auto of_source = [&](const char* property, const char* unit, Value design::Source::*member) {
      const Value& here = design_.source.*member;
      if (moves(here)) return;
      if (Adjustable* added = add(design_.source.name + '.' + property, unit, design_.source.span, here.real_at(frequency_hz_, knobs_)))
        added->scale = [member](Design& design, std::vector<double>&, double factor) { design.source.*member = (design.source.*member).scaled(factor); };
    };
    of_source("power", "W", &design::Source::available_w);
    of_source("impedance", "ohm", &design::Source::impedance_ohm);
  }

  void coupling(std::size_t c) {
    const Coupling& here = design_.couplings[c];
    if (moves(here.factor) || in_shares(here.first)) return;
    if (Adjustable* added = add(here.name + ".factor", "", here.span, here.factor.real_at(frequency_hz_, knobs_))) {
      added->coupling = static_cast<int>(c);
      added->scale = [c](Design& design, std::vector<double>&, double factor) { design.couplings[c].factor = design.couplings[c].factor.scaled(factor); };
    }
  }

  /// A switch has no slope.
  bool is_switch(KnobId id) const {
    for (const Part& part : design_.parts)
      if (const auto* selector = std::get_if<Selector>(&part.model); selector != nullptr && selector->choice.depends_on(id)) return true;
    return false;
  }

  void knob(std::size_t k) {
    const Knob& here = design_.knobs[k];
    if (is_switch(KnobId{static_cast<int>(k)})) return;
    if (Adjustable* added = add(here.name, si_symbol(here.dim), here.span, knobs_[k]))
      added->scale = scale_knob(k);
  }

  const Design& design_;
  const std::vector<design::CoupledSet> sets_ = design::coupled_sets(design_);
  double frequency_hz_;
  const std::vector<double>& knobs_;
  std::size_t part_ = 0;
  Model model_ = Resistor{};
  std::vector<Adjustable> found_;
};

}  // namespace

std::function<void(Design&, std::vector<double>&, double)> scale_knob(std::size_t knob) {
  return [knob](Design&, std::vector<double>& knobs, double factor) { knobs[knob] *= factor; };
}

std::vector<Adjustable> values_of(const Design& design, double frequency_hz, const std::vector<double>& knobs) {
  return Lister(design, frequency_hz, knobs).list();
}

}  // namespace wattfall::weigh
