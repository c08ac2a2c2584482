#include "flows.hpp"

#include <cmath>

namespace wattfall::solve {
namespace {

using graph::Element;
constexpr Complex j{0.0, 1.0};

Complex across(const Element& element, const std::vector<Complex>& volts, int port) {
  return volts[element.node[2 * port]] - volts[element.node[2 * port + 1]];
}

/// P = G0 (1 - |e|^2)(|p1|^2 + |p2|^2) + 4 B0 Im e Re(p2 conj p1), with Y0 = G0 + j B0, e = e^(-gamma l) and p the waves that enter at the
/// ends: from integrating Re(V conj I)'s loss along the line in closed form. No cancellation for a real Z0.
double line_heat(const ElementValue& value, const ElementFlow& flow) {
  const Complex y0 = 1.0 / value.impedance;
  const Complex e = std::exp(-value.gamma_l);
  const double absorbed = -std::expm1(-2.0 * value.gamma_l.real());
  return y0.real() * absorbed * (std::norm(flow.wave1) + std::norm(flow.wave2)) +
         4.0 * y0.imag() * e.imag() * (flow.wave2 * std::conj(flow.wave1)).real();
}

/// V1 = p1 + e p2 and V2 = p2 + e p1, solved for the waves; then I = (p - e p')/Z0.
void line_flow(const Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow) {
  const Complex e = std::exp(-value.gamma_l);
  const Complex denominator = -exp_minus_one(-2.0 * value.gamma_l);
  const Complex v1 = across(element, volts, 0), v2 = across(element, volts, 1);
  flow.wave1 = (v1 - e * v2) / denominator;
  flow.wave2 = (v2 - e * v1) / denominator;
  flow.amps1 = (flow.wave1 - e * flow.wave2) / value.impedance;
  flow.amps2 = (flow.wave2 - e * flow.wave1) / value.impedance;
}

/// I = -B^-1 A V.
void matrix_flow(const Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow) {
  const Complex v1 = across(element, volts, 0), v2 = across(element, volts, 1);
  const auto& b = value.b;
  const Complex r1 = -(value.a[0] * v1 + value.a[1] * v2), r2 = -(value.a[2] * v1 + value.a[3] * v2);
  const Complex determinant = b[0] * b[3] - b[1] * b[2];
  flow.amps1 = (b[3] * r1 - b[1] * r2) / determinant;
  flow.amps2 = (b[0] * r2 - b[2] * r1) / determinant;
}

/// Kirchhoff's law at the nodes of merged transformers, outermost first: what the other elements take is what the transformer brings.
void merged_currents(const plan::Plan& plan, const std::vector<ElementValue>& values, StateFlows& state,
                     std::vector<Complex>& taken) {
  for (std::size_t i = plan.binding_order.size(); i-- > 0;) {
    const int node = plan.binding_order[i];
    const plan::NodeBinding& binding = plan.bindings[node];
    if (binding.via_element < 0) continue;
    const double ratio = values[binding.via_element].ratio;
    ElementFlow& flow = state.elements[binding.via_element];
    if (binding.inverse) {
      flow.amps1 = -taken[node];
      flow.amps2 = -flow.amps1 / ratio;
      taken[binding.via_node] += flow.amps2;
    } else {
      flow.amps2 = -taken[node];
      flow.amps1 = -ratio * flow.amps2;
      taken[binding.via_node] += flow.amps1;
    }
  }
}

}  // namespace

Complex exp_minus_one(Complex z) {
  const double half = std::sin(0.5 * z.imag());
  const double grown = std::exp(z.real());
  return {std::expm1(z.real()) - 2.0 * grown * half * half, grown * std::sin(z.imag())};
}

void book_heat(const Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow) {
  flow.heat1 = flow.heat2 = 0.0;
  const Complex v1 = across(element, volts, 0);
  if (element.form == Element::Form::branch) {
    // k = V/n = I/d: whichever divides by the larger number. 50 ohm compares volts with amps.
    const double k2 = std::norm(value.n) >= 2500.0 * std::norm(value.d) ? std::norm(v1) / std::norm(value.n)
                                                                        : std::norm(flow.amps1) / std::norm(value.d);
    flow.heat1 = k2 * value.loss;
  } else if (element.form == Element::Form::line) {
    flow.heat1 = line_heat(value, flow);
  } else if (element.role == Element::Role::coupled) {
    const Complex v2 = across(element, volts, 1);
    // The coil's own current is the terminal's less that of the capacitance across it.
    flow.heat1 = std::norm(flow.amps1 - value.coil_susceptance[0] * j * v1) * value.coil_ohms[0];
    flow.heat2 = std::norm(flow.amps2 - value.coil_susceptance[1] * j * v2) * value.coil_ohms[1];
  } else if (element.form == Element::Form::matrix) {
    flow.heat1 = (v1 * std::conj(flow.amps1)).real() + (across(element, volts, 1) * std::conj(flow.amps2)).real();
  }
}

void flows_from_volts(const graph::Network& network, const plan::Plan& plan, const std::vector<ElementValue>& values,
                      const std::vector<Complex>& currents, StateFlows& state, int probe_node) {
  std::vector<Complex> taken(network.node_count);
  if (probe_node != 0) taken[probe_node] -= 1.0;
  taken[network.source_node] -= state.source_amps;
  taken[network.source_other] += state.source_amps;
  state.elements.resize(network.elements.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const Element& element = network.elements[e];
    ElementFlow& flow = state.elements[e];
    switch (element.form) {
      case Element::Form::branch: flow.amps1 = across(element, state.volts, 0) * values[e].d / values[e].n; break;
      case Element::Form::line: line_flow(element, values[e], state.volts, flow); break;
      case Element::Form::matrix: matrix_flow(element, values[e], state.volts, flow); break;
      case Element::Form::ideal:
        if (plan.current_unknown[e] < 0) continue;
        flow.amps2 = currents[e];
        flow.amps1 = -values[e].ratio * flow.amps2;
        break;
    }
    taken[element.node[0]] += flow.amps1;
    taken[element.node[1]] -= flow.amps1;
    if (element.ports() == 2) {
      taken[element.node[2]] += flow.amps2;
      taken[element.node[3]] -= flow.amps2;
    }
  }
  merged_currents(plan, values, state, taken);
  for (std::size_t e = 0; e < network.elements.size(); ++e) book_heat(network.elements[e], values[e], state.volts, state.elements[e]);
}

Complex amps_into(const graph::Network& network, const std::vector<ElementFlow>& flows, design::PartId part, int node) {
  Complex sum = 0.0;
  network.visit_terminals(part, node, [&](int e, int port, double sign) { sum += sign * (port == 0 ? flows[e].amps1 : flows[e].amps2); });
  return sum;
}

}  // namespace wattfall::solve
