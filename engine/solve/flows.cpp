#include "flows.hpp"

#include <cmath>

namespace wattfall::solve {
namespace {

using graph::Element;
constexpr Complex j{0.0, 1.0};

Complex across(const Element& element, const std::vector<Complex>& volts, int port) {
  return volts[element.node[2 * port]] - volts[element.node[2 * port + 1]];
}

/// P = G0 (1 - |e|^2)(|p1|^2 + |p2|^2) + 4 B0 Im e Re(p2 conj p1), with Y0 = G0 + j B0, e = e^(-gamma l) and p = (V + Z0 I)/2 the waves that enter
/// at the ends: the loss of Re(V conj I) along the line, integrated in closed form. No cancellation for a real Z0.
double line_heat(const ElementValue& value, Complex v1, Complex v2, const ElementFlow& flow) {
  const Complex y0 = 1.0 / value.impedance;
  const Complex e = std::exp(-value.gamma_l);
  const Complex p1 = 0.5 * (v1 + value.impedance * flow.amps1), p2 = 0.5 * (v2 + value.impedance * flow.amps2);
  const double absorbed = -std::expm1(-2.0 * value.gamma_l.real());
  return y0.real() * absorbed * (std::norm(p1) + std::norm(p2)) + 4.0 * y0.imag() * e.imag() * (p2 * std::conj(p1)).real();
}

/// Long series of a length that is a power of two would all begin at the same place of the cache: a little more room spreads them.
void resize(Series& series, std::size_t count) {
  if (series.capacity() < count && count >= 256) series.reserve(count + 24);
  series.resize(count);
}
void resize(ComplexSeries& series, std::size_t count) { series.resize(count); }

void allocate_flow(const Element& element, Keep keep, std::size_t count, Flow& flow) {
  const std::size_t waves = keep == Keep::books ? count : 0, figures = keep == Keep::figures ? count : 0;
  const bool line = element.form == Element::Form::line;
  resize(flow.heat1_w, count);
  resize(flow.heat2_w, element.role == Element::Role::coupled ? count : 0);
  resize(flow.amps1, waves);
  resize(flow.amps2, element.ports() == 2 ? waves : 0);
  resize(flow.gamma_l, line ? waves : 0);
  resize(flow.impedance_ohm, line ? waves : 0);
  resize(flow.volts_peak, figures);
  resize(flow.amps_rms, figures);
}

}  // namespace

Places::Places(const graph::Network& network) {
  int next = network.node_count - 1;
  for (const Element& element : network.elements) {
    first_.push_back(next);
    next += element.ports();
  }
  source_ = next;
}

StateFlows flows_of(const graph::Network& network, const Places& places, const std::vector<ElementValue>& values, const FieldVector& x) {
  const auto amps_at = [&](int place) { return x[static_cast<std::size_t>(place)] / Fields::base_ohms; };
  StateFlows state;
  state.volts.assign(static_cast<std::size_t>(network.node_count), 0.0);
  for (std::size_t node = 1; node < state.volts.size(); ++node) state.volts[node] = x[node - 1];
  state.source_amps = amps_at(places.source());
  state.elements.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const Element& element = network.elements[e];
    ElementFlow& flow = state.elements[e];
    flow.amps1 = amps_at(places.port(e, 0));
    if (element.ports() == 2) flow.amps2 = amps_at(places.port(e, 1));
    book_heat(element, values[e], state.volts, flow);
  }
  return state;
}

void book_heat(const Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow) {
  flow.heat1 = flow.heat2 = 0.0;
  const Complex v1 = across(element, volts, 0);
  if (element.form == Element::Form::branch) {
    // k = V/n = I/d: whichever divides by the larger number. 50 ohm compares volts with amps.
    const double k2 = std::norm(value.n) >= 2500.0 * std::norm(value.d) ? std::norm(v1) / std::norm(value.n)
                                                                        : std::norm(flow.amps1) / std::norm(value.d);
    flow.heat1 = k2 * value.loss;
    return;
  }
  const Complex v2 = across(element, volts, 1);
  if (element.form == Element::Form::line) {
    flow.heat1 = line_heat(value, v1, v2, flow);
  } else if (element.role == Element::Role::coupled) {
    // The coil's own current is the terminal's less that of the capacitance across it.
    flow.heat1 = std::norm(flow.amps1 - value.coil_susceptance[0] * j * v1) * value.coil_ohms[0];
    flow.heat2 = std::norm(flow.amps2 - value.coil_susceptance[1] * j * v2) * value.coil_ohms[1];
  } else if (element.form == Element::Form::matrix) {
    flow.heat1 = (v1 * std::conj(flow.amps1)).real() + (v2 * std::conj(flow.amps2)).real();
  }
}

Complex amps_into(const graph::Network& network, const std::vector<ElementFlow>& flows, design::PartId part, int node) {
  Complex sum = 0.0;
  network.visit_terminals(part, node, [&](int e, int port, double sign) { sum += sign * (port == 0 ? flows[e].amps1 : flows[e].amps2); });
  return sum;
}

Complex amps_of_look(const design::Design& design, const graph::Network& network, const design::Look& look, const StateFlows& state) {
  if (look.into) return amps_into(network, state.elements, look.into, look.node.index);
  Complex sum = 0.0;
  for (std::size_t p = 0; p < design.parts.size(); ++p) sum += amps_into(network, state.elements, design::PartId{static_cast<int>(p)}, look.node.index);
  return sum;
}

void allocate(const graph::Network& network, std::size_t looks, std::size_t states, Keep keep, Solution& solution) {
  solution.volts.resize(keep == Keep::books ? static_cast<std::size_t>(network.node_count) : 0);
  for (ComplexSeries& volts : solution.volts) resize(volts, states);
  solution.flows.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) allocate_flow(network.elements[e], keep, states, solution.flows[e]);
  resize(solution.source_volts, states);
  resize(solution.source_amps, states);
  resize(solution.available_w, states);
  solution.guards.assign(states, Guard::none);
  solution.untrusted.assign(states, 0);
  solution.looks.resize(looks);
  for (LookResponse& look : solution.looks) {
    resize(look.admittance_into, states);
    resize(look.admittance_behind, states);
  }
}

void store(const graph::Network& network, const std::vector<ElementValue>& values, const StateFlows& state, std::size_t place, Solution& solution) {
  for (std::size_t node = 0; node < solution.volts.size(); ++node) solution.volts[node].set(place, state.volts[node]);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    Flow& flow = solution.flows[e];
    const ElementFlow& found = state.elements[e];
    flow.heat1_w[place] = found.heat1;
    if (!flow.heat2_w.empty()) flow.heat2_w[place] = found.heat2;
    if (!flow.amps1.empty()) flow.amps1.set(place, found.amps1);
    if (!flow.amps2.empty()) flow.amps2.set(place, found.amps2);
    if (flow.gamma_l.empty()) continue;
    flow.gamma_l.set(place, values[e].gamma_l);
    flow.impedance_ohm.set(place, values[e].impedance);
  }
  solution.source_volts.set(place, state.volts[network.source_node] - state.volts[network.source_other]);
  solution.source_amps.set(place, state.source_amps);
}

}  // namespace wattfall::solve
