#include "ledger/sample_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wattfall::ledger {
namespace {

using Complex = std::complex<double>;

const design::LineMake* make_of(const design::Part& part) {
  if (const auto* line = std::get_if<design::Line>(&part.model)) return &line->make;
  if (const auto* stub = std::get_if<design::Stub>(&part.model)) return &stub->make;
  return nullptr;
}

int steps_for(Complex gamma_l) {
  constexpr double steps_a_quarter_wave = 24.0;
  const double wanted = std::ceil(steps_a_quarter_wave * std::abs(gamma_l.imag()) / (std::numbers::pi / 2.0));
  return static_cast<int>(std::clamp(wanted, 24.0, 240.0));
}

LineSamples sample(const graph::Element& element, const solve::Solution& solution, int e, std::size_t s, double length_m,
                   double share) {
  const solve::Flow& flow = solution.flows[e];
  const auto volts = [&](int node) { return solution.volts[node][s]; };
  const Complex z0 = flow.impedance_ohm[s], gamma_l = flow.gamma_l[s];
  const Complex v1 = volts(element.node[0]) - volts(element.node[1]), v2 = volts(element.node[2]) - volts(element.node[3]);
  const Complex in = 0.5 * (v1 + z0 * flow.amps1[s]), out = 0.5 * (v2 + z0 * flow.amps2[s]);
  LineSamples samples{.state = s};
  const int steps = steps_for(gamma_l);
  for (int i = 0; i <= steps; ++i) {
    const double from_load = static_cast<double>(i) / steps;
    const Complex forward = in * std::exp(-gamma_l * (1.0 - from_load)), back = out * std::exp(-gamma_l * from_load);
    samples.from_load_m.push_back(from_load * length_m);
    samples.volts_peak.push_back(std::numbers::sqrt2 * std::abs(forward + back) * std::sqrt(share));
    samples.amps_rms.push_back(std::abs((forward - back) / z0) * std::sqrt(share));
  }
  return samples;
}

}  // namespace

std::vector<LineCurve> sample_lines(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
                                    const Ledger& books, const std::vector<std::size_t>& states) {
  std::vector<LineCurve> curves;
  for (std::size_t p = 0; p < design.parts.size(); ++p) {
    const design::LineMake* make = make_of(design.parts[p]);
    if (make == nullptr) continue;
    LineCurve curve{.part = design::PartId{static_cast<int>(p)}, .at = {}};
    const int e = network.elements_of(curve.part).front();
    for (const std::size_t s : states) {
      const double length_m = make->length_m.real_at(solution.states.frequencies_hz[s], solution.states.knobs_at(s));
      const double share = books.source.available_w[s] / solution.available_w[s];
      curve.at.push_back(sample(network.elements[e], solution, e, s, length_m, share));
    }
    curves.push_back(std::move(curve));
  }
  return curves;
}

}  // namespace wattfall::ledger
