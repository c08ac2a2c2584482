// Batches of states through the compiled kernel; flagged ones through the dense tableau; all into one structure of arrays.
#include "solve/solve.hpp"

#include <cmath>

#include "flows.hpp"
#include "kernel.hpp"
#include "tableau.hpp"

namespace wattfall::solve {
namespace {

/// The source in one state: Thevenin volts [rms] E with |E|^2 / (4 Re Zs) available.
struct SourceValue {
  Complex ohms;
  double available_w = 0.0;
  Complex volts;
};

SourceValue source_value(const design::Design& design, double frequency_hz, std::span<const double> knobs) {
  SourceValue source;
  source.ohms = design.source.impedance_ohm.at(frequency_hz, knobs);
  source.available_w = design.source.available_w.real_at(frequency_hz, knobs);
  source.volts = 2.0 * std::sqrt(source.available_w * source.ohms.real());
  return source;
}

/// What the books leave over, as a share of the available power: available - returned - heat, with returned power
/// |V - conj(Zs) I|^2 / (4 Re Zs) from the wave that comes back.
double imbalance(const SourceValue& source, Complex volts, const StateFlows& state) {
  const double returned = std::norm(volts - std::conj(source.ohms) * state.source_amps) / (4.0 * source.ohms.real());
  double heat = 0.0;
  for (const ElementFlow& flow : state.elements) heat += flow.heat1 + flow.heat2;
  return std::abs(source.available_w - returned - heat) / source.available_w;
}

class Solver {
 public:
  Solver(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
         const std::vector<design::Look>& looks)
      : design_(design), network_(network), plan_(plan), looks_(looks), kernel_(network, plan), node_weights_(network.node_count) {
    solution_.states = states;
    allocate();
  }

  Solution run(Method method) {
    const std::size_t count = solution_.states.size();
    for (std::size_t first = 0; first < count; first += lanes) {
      const std::size_t used = std::min(lanes, count - first);
      value_batch(first, used);
      if (method == Method::guarded) fast_batch(first, used);
      for (std::size_t lane = 0; lane < used; ++lane) {
        if (method == Method::robust) solution_.guards[first + lane] = Guard::pivot;
        if (solution_.guards[first + lane] != Guard::none) robust_state(first + lane, lane);
      }
    }
    return std::move(solution_);
  }

 private:
  void allocate() {
    const std::size_t count = solution_.states.size();
    solution_.volts.assign(network_.node_count, ComplexSeries(count));
    solution_.flows.resize(network_.elements.size());
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      const graph::Element& element = network_.elements[e];
      Flow& flow = solution_.flows[e];
      flow.amps1.resize(count);
      flow.heat1_w.resize(count);
      if (element.ports() == 2) flow.amps2.resize(count);
      if (element.role == graph::Element::Role::coupled) flow.heat2_w.resize(count);
      if (element.form != graph::Element::Form::line) continue;
      for (ComplexSeries* series : {&flow.gamma_l, &flow.impedance_ohm, &flow.wave1, &flow.wave2}) series->resize(count);
    }
    solution_.source_volts.resize(count);
    solution_.source_amps.resize(count);
    solution_.available_w.resize(count);
    solution_.guards.assign(count, Guard::none);
    solution_.untrusted.assign(count, 0);
    solution_.looks.resize(looks_.size());
    for (LookResponse& look : solution_.looks) {
      look.admittance_into.resize(count);
      look.admittance_behind.resize(count);
    }
    for (auto& values : values_) values.resize(network_.elements.size());
    for (auto& weights : weights_) weights.resize(network_.node_count);
  }

  void value_batch(std::size_t first, std::size_t used) {
    for (std::size_t lane = 0; lane < used; ++lane) {
      const double frequency_hz = solution_.states.frequencies_hz[first + lane];
      const std::span<const double> knobs = solution_.states.knobs_at(first + lane);
      for (std::size_t e = 0; e < network_.elements.size(); ++e)
        values_[lane][e] = element_value(design_, network_.elements[e], frequency_hz, knobs);
      sources_[lane] = source_value(design_, frequency_hz, knobs);
      solution_.available_w[first + lane] = sources_[lane].available_w;
      weigh_nodes(lane);
    }
  }

  /// Potentials as shares of their unknown: products of transformer ratios along the tree of merged nodes.
  void weigh_nodes(std::size_t lane) {
    std::vector<double>& weights = weights_[lane];
    weights[0] = 0.0;
    for (int node : plan_.binding_order) {
      const plan::NodeBinding& binding = plan_.bindings[node];
      if (binding.via_element < 0) {
        weights[node] = 1.0;
        continue;
      }
      const double ratio = values_[lane][binding.via_element].ratio;
      weights[node] = binding.inverse ? weights[binding.via_node] / ratio : weights[binding.via_node] * ratio;
    }
    for (int node = 0; node < network_.node_count; ++node) node_weights_[node][lane] = weights[node];
  }

  void fast_batch(std::size_t first, std::size_t used) {
    kernel_.clear();
    std::array<Complex, lanes> norton{};
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      // Unused lanes repeat the first, so that they hold sound numbers.
      const std::size_t from = lane < used ? lane : 0;
      for (std::size_t e = 0; e < network_.elements.size(); ++e) kernel_.stamp(e, values_[from][e], lane, weights_[from]);
      kernel_.stamp_source(1.0 / sources_[from].ohms, lane, weights_[from]);
      norton[lane] = sources_[from].volts / sources_[from].ohms;
    }
    kernel_.stamp_ties();
    kernel_.eliminate();
    kernel_.substitute(network_.source_node, network_.source_other, norton, node_weights_);
    for (std::size_t lane = 0; lane < used; ++lane) {
      solution_.guards[first + lane] = kernel_.guard(lane);
      if (kernel_.guard(lane) != Guard::none) continue;
      StateFlows state = state_of_lane(lane, true);
      // Ten times below what the books may be off: the ledger adds a little rounding of its own.
      if (!(imbalance(sources_[lane], source_port(state), state) < 1e-13 * balance_slack)) {
        solution_.guards[first + lane] = Guard::balance;
        continue;
      }
      store(first + lane, lane, state);
    }
    for (std::size_t k = 0; k < looks_.size(); ++k) fast_look(k, first, used);
  }

  void fast_look(std::size_t k, std::size_t first, std::size_t used) {
    std::array<Complex, lanes> amps;
    amps.fill(1.0);
    kernel_.substitute(looks_[k].node.index, 0, amps, node_weights_);
    for (std::size_t lane = 0; lane < used; ++lane)
      if (solution_.guards[first + lane] == Guard::none) {
        StateFlows probe = state_of_lane(lane, false, looks_[k].node.index);
        store_look(k, first + lane, probe);
      }
  }

  /// Potentials and flows of a lane from the kernel's unknowns. `working`: the source drives it; else 1 A is fed into `probe_node`.
  StateFlows state_of_lane(std::size_t lane, bool working, int probe_node = 0) {
    StateFlows state;
    state.volts.resize(network_.node_count);
    for (int node = 1; node < network_.node_count; ++node)
      state.volts[node] = weights_[lane][node] * kernel_.unknown(plan_.bindings[node].unknown, lane);
    const Complex thevenin = working ? sources_[lane].volts : 0.0;
    state.source_amps = (thevenin - source_port(state)) / sources_[lane].ohms;
    std::vector<Complex> currents(network_.elements.size());
    for (std::size_t e = 0; e < currents.size(); ++e)
      if (plan_.current_unknown[e] >= 0) currents[e] = kernel_.unknown(plan_.current_unknown[e], lane);
    flows_from_volts(network_, plan_, values_[lane], currents, state, working ? 0 : probe_node);
    return state;
  }

  void robust_state(std::size_t index, std::size_t lane) {
    const Tableau<double> tableau(network_, values_[lane], sources_[lane].ohms);
    const StateFlows state = tableau.solve(sources_[lane].volts);
    store(index, lane, state);
    const bool closes = imbalance(sources_[lane], source_port(state), state) < 1e-9;
    solution_.untrusted[index] = !(tableau.trust() > 1e-15) || !closes;
    for (std::size_t k = 0; k < looks_.size(); ++k) store_look(k, index, tableau.solve(0.0, looks_[k].node.index, 1.0));
  }

  Complex source_port(const StateFlows& state) const {
    return state.volts[network_.source_node] - state.volts[network_.source_other];
  }

  void store(std::size_t index, std::size_t lane, const StateFlows& state) {
    for (int node = 0; node < network_.node_count; ++node) solution_.volts[node][index] = state.volts[node];
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      Flow& flow = solution_.flows[e];
      const ElementFlow& from = state.elements[e];
      flow.amps1[index] = from.amps1;
      flow.heat1_w[index] = from.heat1;
      if (!flow.amps2.empty()) flow.amps2[index] = from.amps2;
      if (!flow.heat2_w.empty()) flow.heat2_w[index] = from.heat2;
      if (flow.gamma_l.empty()) continue;
      flow.gamma_l[index] = values_[lane][e].gamma_l;
      flow.impedance_ohm[index] = values_[lane][e].impedance;
      flow.wave1[index] = from.wave1;
      flow.wave2[index] = from.wave2;
    }
    solution_.source_volts[index] = source_port(state);
    solution_.source_amps[index] = state.source_amps;
    for (std::size_t k = 0; k < looks_.size(); ++k)
      solution_.looks[k].admittance_into[index] = amps_of_look(k, state) / state.volts[looks_[k].node.index];
  }

  /// With 1 A fed into the node, what the part does not take the surroundings do.
  void store_look(std::size_t k, std::size_t index, const StateFlows& probe) {
    solution_.looks[k].admittance_behind[index] = (1.0 - amps_of_look(k, probe)) / probe.volts[looks_[k].node.index];
  }

  /// Current from the look's node into its part; with none, into everything but the source.
  Complex amps_of_look(std::size_t k, const StateFlows& state) const {
    if (looks_[k].into) return amps_into(network_, state.elements, looks_[k].into, looks_[k].node.index);
    Complex sum = 0.0;
    for (std::size_t p = 0; p < design_.parts.size(); ++p)
      sum += amps_into(network_, state.elements, design::PartId{static_cast<int>(p)}, looks_[k].node.index);
    return sum;
  }

  /// The guard's share of the books' tolerance, in units of 1e-13.
  static constexpr double balance_slack = 5.0;

  const design::Design& design_;
  const graph::Network& network_;
  const plan::Plan& plan_;
  const std::vector<design::Look>& looks_;
  Kernel kernel_;
  Solution solution_;
  std::array<std::vector<ElementValue>, lanes> values_;
  std::array<std::vector<double>, lanes> weights_;
  std::vector<std::array<double, lanes>> node_weights_;
  std::array<SourceValue, lanes> sources_;
};

}  // namespace

Solution solve(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
               const std::vector<design::Look>& looks, Method method) {
  return Solver(design, network, plan, states, looks).run(method);
}

}  // namespace wattfall::solve
