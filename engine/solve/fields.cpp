#include "solve/fields.hpp"

#include <limits>

#include "flows.hpp"
#include "tableau.hpp"

namespace wattfall::solve {
namespace {

using Equations = Tableau<double>;

FieldVector plain(const Equations::Vector& x) { return {x.data(), x.data() + x.size()}; }
Eigen::Map<const Equations::Vector> mapped(const FieldVector& x) { return {x.data(), static_cast<Eigen::Index>(x.size())}; }

/// Where a network's ports stand among the unknowns, as the tableau has them.
class Places {
 public:
  explicit Places(const graph::Network& network) {
    int next = network.node_count - 1;
    for (const graph::Element& element : network.elements) {
      first_.push_back(next);
      next += element.ports();
    }
    source_ = next;
  }
  std::size_t port(std::size_t element, int port) const { return static_cast<std::size_t>(first_[element] + port); }
  std::size_t source() const { return static_cast<std::size_t>(source_); }

 private:
  std::vector<int> first_;
  int source_ = 0;
};

StateFlows flows_of(const graph::Network& network, const Places& places, const std::vector<ElementValue>& values, const FieldVector& x) {
  StateFlows state;
  state.volts.assign(static_cast<std::size_t>(network.node_count), 0.0);
  for (std::size_t node = 1; node < state.volts.size(); ++node) state.volts[node] = x[node - 1];
  state.source_amps = x[places.source()] / Fields::base_ohms;
  state.elements.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    ElementFlow& flow = state.elements[e];
    flow.amps1 = x[places.port(e, 0)] / Fields::base_ohms;
    if (network.elements[e].ports() == 2) flow.amps2 = x[places.port(e, 1)] / Fields::base_ohms;
    book_heat(network.elements[e], values[e], state.volts, flow);
  }
  return state;
}

Complex amps_of_look(const design::Design& design, const graph::Network& network, const design::Look& look, const StateFlows& state) {
  if (look.into) return amps_into(network, state.elements, look.into, look.node.index);
  Complex sum = 0.0;
  for (std::size_t p = 0; p < design.parts.size(); ++p) sum += amps_into(network, state.elements, design::PartId{static_cast<int>(p)}, look.node.index);
  return sum;
}

void allocate(const graph::Network& network, std::size_t looks, std::size_t count, Solution& solution) {
  solution.volts.resize(static_cast<std::size_t>(network.node_count));
  for (ComplexSeries& series : solution.volts) series.resize(count);
  solution.flows.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const graph::Element& element = network.elements[e];
    Flow& flow = solution.flows[e];
    flow.amps1.resize(count);
    flow.heat1_w.resize(count);
    if (element.ports() == 2) flow.amps2.resize(count);
    if (element.role == graph::Element::Role::coupled) flow.heat2_w.resize(count);
    if (element.form == graph::Element::Form::line) flow.gamma_l.resize(count), flow.impedance_ohm.resize(count);
  }
  solution.source_volts.resize(count);
  solution.source_amps.resize(count);
  solution.looks.resize(looks);
  for (LookResponse& look : solution.looks) look.admittance_into.resize(count), look.admittance_behind.resize(count);
  solution.guards.assign(count, Guard::none);
  solution.untrusted.assign(count, 0);
}

void store(const graph::Network& network, const std::vector<ElementValue>& values, const StateFlows& state, std::size_t s, Solution& solution) {
  for (std::size_t node = 0; node < solution.volts.size(); ++node) solution.volts[node].set(s, state.volts[node]);
  for (std::size_t e = 0; e < solution.flows.size(); ++e) {
    Flow& flow = solution.flows[e];
    const ElementFlow& found = state.elements[e];
    flow.amps1.set(s, found.amps1);
    flow.heat1_w[s] = found.heat1;
    if (!flow.amps2.empty()) flow.amps2.set(s, found.amps2);
    if (!flow.heat2_w.empty()) flow.heat2_w[s] = found.heat2;
    if (flow.gamma_l.empty()) continue;
    flow.gamma_l.set(s, values[e].gamma_l);
    flow.impedance_ohm.set(s, values[e].impedance);
  }
  solution.source_volts.set(s, state.volts[network.source_node] - state.volts[network.source_other]);
  solution.source_amps.set(s, state.source_amps);
}

}  // namespace

struct Fields::Body {
  // The equations refer to the values, so both stand at one place for good.
  std::vector<ElementValue> values;
  Equations equations;
  Places places;

  Body(const graph::Network& network, std::vector<ElementValue> given, Complex source_ohms)
      : values(std::move(given)), equations(network, values, source_ohms), places(network) {}
};

Fields::Fields(const graph::Network& network, std::vector<ElementValue> values, Complex source_ohms)
    : body_(std::make_unique<Body>(network, std::move(values), source_ohms)) {}
Fields::~Fields() = default;
Fields::Fields(Fields&&) noexcept = default;
Fields& Fields::operator=(Fields&&) noexcept = default;

FieldVector Fields::driven(Complex source_volts) const { return plain(body_->equations.driven(source_volts)); }
FieldVector Fields::fed(int node) const { return plain(body_->equations.fed(node)); }
FieldVector Fields::adjoint(const FieldVector& gradient) const { return plain(body_->equations.transposed(mapped(gradient))); }

Complex Fields::element_change(const FieldVector& y, const FieldVector& x, int element, const ElementValue& value, const ElementValue& other) {
  return body_->equations.element_change(mapped(y), mapped(x), element, value, other);
}
Complex Fields::source_change(const FieldVector& y, const FieldVector& x, std::pair<Complex, Complex> ohms, std::pair<Complex, Complex> volts) {
  return body_->equations.source_change(mapped(y), mapped(x), ohms.first, ohms.second) - y[place_of_source()] * (volts.first - volts.second);
}

std::size_t Fields::size() const { return static_cast<std::size_t>(body_->equations.size()); }
std::size_t Fields::place_of_port(int element, int port) const { return body_->places.port(static_cast<std::size_t>(element), port); }
std::size_t Fields::place_of_source() const { return body_->places.source(); }
double Fields::trust() const { return body_->equations.trust(); }

Solution solution_of(const design::Design& design, const graph::Network& network, double frequency_hz, const std::vector<double>& knobs,
                     const std::vector<ElementValue>& values, const std::vector<design::Look>& looks, const std::vector<FieldState>& states) {
  Solution solution;
  solution.states.knob_count = knobs.size();
  for (std::size_t s = 0; s < states.size(); ++s) solution.states.add(frequency_hz, knobs);
  allocate(network, looks.size(), states.size(), solution);
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
