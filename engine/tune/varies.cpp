#include "varies.hpp"

#include <variant>

namespace wattfall::tune {
namespace {

using namespace design;

/// One member function a sort of value; a part is walked by listing its values once.
struct Watch {
  KnobId knob;

  bool operator()(const Value& value) const { return value.depends_on(knob); }
  bool operator()(const std::optional<Value>& value) const { return value && value->depends_on(knob); }
  bool operator()(const SeriesLoss& loss) const { return (*this)(loss.value) || (*this)(loss.at_hz); }
  bool operator()(const LineMake& make) const { return (*this)(make.length_m); }
  bool operator()(const Table&) const { return false; }
  bool operator()(const physics::Dipole&) const { return false; }
  bool operator()(const physics::Monopole&) const { return false; }
  bool operator()(const std::shared_ptr<const measured::Network>&) const { return false; }
  bool operator()(const Load::Series& series) const { return any(series.ohms, series.henries, series.farads); }
  template <class... Alternatives>
  bool operator()(const std::variant<Alternatives...>& value) const {
    return std::visit([this](const auto& held) { return (*this)(held); }, value);
  }

  bool operator()(const Resistor& part) const { return any(part.ohms, part.inductance, part.capacitance); }
  bool operator()(const Inductor& part) const { return any(part.henries, part.loss, part.capacitance, part.resonance_hz); }
  bool operator()(const Capacitor& part) const { return any(part.farads, part.loss, part.tangent, part.inductance); }
  bool operator()(const Line& part) const { return any(part.make, part.common_impedance); }
  bool operator()(const Stub& part) const { return any(part.make); }
  bool operator()(const Transformer& part) const {
    return any(part.ratio, part.winding_ohms, part.leakage_henries, part.magnetizing_henries, part.core_ohms, part.core_q);
  }
  bool operator()(const TwoPort&) const { return false; }
  bool operator()(const Pad& part) const { return any(part.attenuation_db, part.impedance_ohm); }
  bool operator()(const Choke& part) const { return any(part.impedance_ohm); }
  bool operator()(const Selector& part) const { return any(part.choice); }
  bool operator()(const PluginPart& part) const {
    for (const Value& value : part.values)
      if ((*this)(value)) return true;
    return false;
  }
  bool operator()(const Load& part) const { return any(part.impedance, part.radiates, part.loss_ohms); }

  template <class... Values>
  bool any(const Values&... values) const {
    return ((*this)(values) || ...);
  }
};

}  // namespace

bool varies_with(const Part& part, KnobId knob) { return Watch{knob}(part.model); }

}  // namespace wattfall::tune
