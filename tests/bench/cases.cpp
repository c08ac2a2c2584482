#include "cases.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace wattfall::bench {
namespace {

using graph::Element;

void check(bool good, const std::string& what) {
  if (!good) throw std::runtime_error(what);
}

double number(const std::optional<design::Value>& value) {
  return value ? value->constant_value().real() : 0.0;
}

/// A formula that is one knob: found by turning each.
int knob_of(const design::Value& value, std::size_t knob_count) {
  for (std::size_t k = 0; k < knob_count; ++k)
    if (value.depends_on(design::KnobId{static_cast<int>(k)})) return static_cast<int>(k);
  return -1;
}

class Flattener {
 public:
  explicit Flattener(const test::Feed& feed) : feed_(feed) {}

  FlatNetwork flatten(std::vector<int>& element_of_flat) {
    FlatNetwork flat;
    weigh_nodes();
    flat.unknowns = static_cast<int>(feed_.plan.unknowns);
    flat.source_unknown = feed_.plan.bindings[feed_.network.source_node].unknown;
    for (std::size_t e = 0; e < feed_.network.elements.size(); ++e) {
      const Element& element = feed_.network.elements[e];
      if (element.form == Element::Form::ideal) continue;
      flat.parts.push_back(part(element));
      element_of_flat.push_back(static_cast<int>(e));
    }
    return flat;
  }

 private:
  void weigh_nodes() {
    weights_.assign(static_cast<std::size_t>(feed_.network.node_count), 1.0);
    for (int node : feed_.plan.binding_order) {
      const plan::NodeBinding& binding = feed_.plan.bindings[node];
      if (binding.via_element < 0) continue;
      const auto& model = feed_.design.parts[feed_.network.elements[binding.via_element].part.index].model;
      const double ratio = std::get<design::Transformer>(model).ratio.constant_value().real();
      weights_[node] = weights_[binding.via_node] * (binding.inverse ? 1.0 / ratio : ratio);
    }
  }

  FlatPart part(const Element& element) const {
    FlatPart flat;
    for (int t = 0; t < 2 * element.ports(); ++t) {
      flat.unknown[t] = feed_.plan.bindings[element.node[t]].unknown;
      flat.weight[t] = weights_[element.node[t]];
    }
    const auto& model = feed_.design.parts[element.part.index].model;
    if (const auto* coil = std::get_if<design::Inductor>(&model)) {
      flat.kind = FlatPart::Kind::coil;
      describe(flat, coil->henries, coil->loss);
    } else if (const auto* capacitor = std::get_if<design::Capacitor>(&model)) {
      flat.kind = FlatPart::Kind::capacitor;
      describe(flat, capacitor->farads, capacitor->loss);
    } else if (const auto* line = std::get_if<design::Line>(&model)) {
      flat.kind = FlatPart::Kind::line;
      flat.main = line->make.length_m.constant_value().real();
      flat.impedance = line->make.impedance_ohm;
      flat.velocity = line->make.velocity;
      flat.k1 = line->make.k1;
      flat.k2 = line->make.k2;
    } else if (const auto* transformer = std::get_if<design::Transformer>(&model)) {
      const bool winding = element.role == Element::Role::winding;
      flat.kind = winding ? FlatPart::Kind::coil : FlatPart::Kind::core;
      flat.main = number(winding ? transformer->leakage_henries : transformer->magnetizing_henries);
      flat.ohms = number(winding ? transformer->winding_ohms : transformer->core_ohms);
    } else {
      flat.kind = FlatPart::Kind::impedance;
      flat.impedance = std::get<design::Value>(std::get<design::Load>(model).impedance).constant_value();
    }
    return flat;
  }

  void describe(FlatPart& flat, const design::Value& main, const design::SeriesLoss& loss) const {
    flat.main = main.constant() ? main.constant_value().real() : 0.0;
    flat.knob = main.constant() ? -1 : knob_of(main, feed_.design.knobs.size());
    if (loss.form == design::SeriesLoss::Form::none) return;
    flat.q = loss.value.constant_value().real();
    if (loss.form == design::SeriesLoss::Form::q_at) flat.q_at_hz = loss.at_hz.constant_value().real();
  }

  const test::Feed& feed_;
  std::vector<double> weights_;
};

}  // namespace

Case::Case(const std::string& text, std::vector<double> hertz, std::vector<double> knobs) : feed(text) {
  for (const Diagnostic& diagnostic : feed.diagnostics) throw std::runtime_error(diagnostic.text);
  states.frequencies_hz = std::move(hertz);
  states.knobs = std::move(knobs);
  states.knob_count = feed.design.knobs.size();
  flat = Flattener(feed).flatten(element_of_flat);
}

FlatStates Case::flat_states() const {
  return {states.frequencies_hz.data(), states.knobs.empty() ? nullptr : states.knobs.data(), states.size(),
          states.knob_count};
}

void Case::show_that_they_agree(const char* baseline) const {
  const auto other = make_baseline(baseline, flat);
  FlatAnswer answer;
  other->run(flat_states(), answer);
  solve::Solution solution;
  solve::Solver(feed.design, feed.network, feed.plan).run(states, solution, solve::Keep::figures);
  const std::size_t parts = flat.parts.size();
  for (std::size_t s = 0; s < states.size(); ++s) {
    double volts = 0.0, amps = 0.0, most_volts = 0.0, most_amps = 0.0, heat = 0.0;
    for (std::size_t p = 0; p < parts; ++p) {
      const solve::Flow& flow = solution.flows[element_of_flat[p]];
      const std::size_t at = s * parts + p;
      heat = std::max(heat, std::abs(answer.heat_w[at] - flow.heat1_w[s]));
      volts = std::max(volts, std::abs(answer.volts_peak[at] - flow.volts_peak[s]));
      amps = std::max(amps, std::abs(answer.amps_rms[at] - flow.amps_rms[s]));
      most_volts = std::max(most_volts, answer.volts_peak[at]);
      most_amps = std::max(most_amps, answer.amps_rms[at]);
    }
    check(heat <= 1e-9 * flat.available_w && volts <= 1e-9 * most_volts && amps <= 1e-9 * most_amps,
          feed.design.title + ": " + baseline + " and the solver differ at " +
              std::to_string(states.frequencies_hz[s]) + " Hz");
  }
}

}  // namespace wattfall::bench
