#include "solve/fields.hpp"

#include <limits>

#include "flows.hpp"
#include "tableau.hpp"

namespace wattfall::solve {

struct Fields::Body {
  // The equations refer to the values, so both stand at one place for good.
  std::vector<ElementValue> values;
  Tableau<double> equations;
  Places places;

  Body(const graph::Network& network, std::vector<ElementValue> given, Complex source_ohms)
      : values(std::move(given)), equations(network, values, source_ohms), places(network) {}
};

Fields::Fields(const graph::Network& network, std::vector<ElementValue> values, Complex source_ohms)
    : body_(std::make_unique<Body>(network, std::move(values), source_ohms)) {}
Fields::~Fields() = default;
Fields::Fields(Fields&&) noexcept = default;
Fields& Fields::operator=(Fields&&) noexcept = default;

FieldVector Fields::driven(Complex source_volts) const { return body_->equations.driven(source_volts); }
FieldVector Fields::fed(int node) const { return body_->equations.fed(node); }
FieldVector Fields::adjoint(const FieldVector& gradient) const { return body_->equations.transposed(gradient); }

Complex Fields::element_change(const FieldVector& y, const FieldVector& x, int element, const ElementValue& value, const ElementValue& other) {
  return body_->equations.element_change(y, x, element, value, other);
}
Complex Fields::source_change(const FieldVector& y, const FieldVector& x, std::pair<Complex, Complex> ohms, std::pair<Complex, Complex> volts) {
  return body_->equations.source_change(y, x, ohms.first, ohms.second) - y[place_of_source()] * (volts.first - volts.second);
}

std::size_t Fields::place_of_port(int element, int port) const { return static_cast<std::size_t>(body_->places.port(static_cast<std::size_t>(element), port)); }
std::size_t Fields::place_of_source() const { return static_cast<std::size_t>(body_->places.source()); }
double Fields::trust() const { return body_->equations.trust(); }

Solution solution_of(const design::Design& design, const graph::Network& network, double frequency_hz, const std::vector<double>& knobs,
                     const std::vector<ElementValue>& values, const std::vector<design::Look>& looks, const std::vector<FieldState>& states) {
  Solution solution;
  solution.states.knob_count = knobs.size();
  for (std::size_t s = 0; s < states.size(); ++s) solution.states.add(frequency_hz, knobs);
  allocate(network, looks.size(), states.size(), Keep::books, solution);
  solution.available_w.assign(states.size(), design.source.available_w.real_at(frequency_hz, knobs));
  const Places places(network);
  constexpr Complex unknown{std::numeric_limits<double>::quiet_NaN(), 0.0};
  for (std::size_t s = 0; s < states.size(); ++s) {
    const StateFlows state = flows_of(network, places, values, states[s].driven);
    store(network, values, state, s, solution);
    for (std::size_t k = 0; k < looks.size(); ++k) {
      const std::size_t node = static_cast<std::size_t>(looks[k].node.index);
      solution.looks[k].admittance_into.set(s, amps_of_look(design, network, looks[k], state) / state.volts[node]);
      solution.looks[k].admittance_behind.set(s, unknown);
      if (states[s].probes.empty()) continue;
      const StateFlows probe = flows_of(network, places, values, states[s].probes[k]);
      solution.looks[k].admittance_behind.set(s, (1.0 - amps_of_look(design, network, looks[k], probe)) / probe.volts[node]);
    }
  }
  return solution;
}

}  // namespace wattfall::solve
