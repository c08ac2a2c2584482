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

}  // namespace

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

}  // namespace wattfall::solve
