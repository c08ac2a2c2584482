// Batches of states through the compiled kernel; flagged ones through the dense tableau; all into one structure of arrays.
#include "solve/solve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <limits>
#include <numbers>

#include "flows.hpp"
#include "kernel.hpp"
#include "program.hpp"
#include "tableau.hpp"

namespace wattfall::solve {
namespace {

/// What the books of the fast path may be off at most, as a share of the available power: half of what the ledger promises.
constexpr double most_imbalance = 5e-13;

double* lane_numbers(Batch& batch, std::uint32_t real) { return batch.reals[real].data(); }

void fill(LaneReal& real, double number) { std::fill_n(real.data(), lanes, number); }

void set(LaneComplex& value, std::size_t lane, Complex number) {
  value.real()[lane] = number.real();
  value.imag()[lane] = number.imag();
}

Complex get(const LaneComplex& value, std::size_t lane) { return {value.real()[lane], value.imag()[lane]}; }

/// The four port admittances of A V + B I = 0, Y = -B^-1 A; false where B is singular or nearly so.
bool matrix_admittances(const ElementValue& value, std::array<Complex, 4>& y) {
  const auto& a = value.a;
  const auto& b = value.b;
  const Complex determinant = b[0] * b[3] - b[1] * b[2];
  const double size = std::norm(b[0]) + std::norm(b[1]) + std::norm(b[2]) + std::norm(b[3]);
  if (!(std::abs(determinant) >= pivot_floor * size)) return false;
  y = {-(b[3] * a[0] - b[1] * a[2]) / determinant, -(b[3] * a[1] - b[1] * a[3]) / determinant, -(b[0] * a[2] - b[2] * a[0]) / determinant,
       -(b[0] * a[3] - b[2] * a[1]) / determinant};
  return true;
}

/// What the books leave over, as a share of the available power.
double imbalance(Complex source_ohms, double available_w, Complex volts, const StateFlows& state) {
  const double returned = std::norm(volts - std::conj(source_ohms) * state.source_amps) / (4.0 * source_ohms.real());
  double heat = 0.0;
  for (const ElementFlow& flow : state.elements) heat += flow.heat1 + flow.heat2;
  return std::abs(available_w - returned - heat) / available_w;
}

class Solver {
 public:
  Solver(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
         const std::vector<design::Look>& looks)
      : design_(design), network_(network), plan_(plan), looks_(looks), program_(compile(design, network, plan)) {
    solution_.states = states;
    allocate_solution();
    allocate_workspace();
    describe_batch();
  }

  Solution run(Method method) {
    const std::size_t count = solution_.states.size();
    for (std::size_t first = 0; first < count; first += lanes) {
      const std::size_t used = std::min(lanes, count - first);
      write_inputs(first, used);
      if (method == Method::guarded) {
        kernel().run(batch_);
        judge_lanes(first, used);
        store_batch(first, used);
        for (std::size_t k = 0; k < looks_.size(); ++k) probe_look(k, first, used);
      }
      for (std::size_t lane = 0; lane < used; ++lane) {
        if (method == Method::robust) solution_.guards[first + lane] = Guard::pivot;
        if (solution_.guards[first + lane] != Guard::none) robust_state(first + lane, lane);
      }
    }
    return std::move(solution_);
  }

 private:
  // ---- room ----

  void allocate_solution() {
    const std::size_t count = solution_.states.size();
    solution_.volts.resize(network_.node_count);
    for (ComplexSeries& volts : solution_.volts) volts.resize(count);
    solution_.flows.resize(network_.elements.size());
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      const graph::Element& element = network_.elements[e];
      Flow& flow = solution_.flows[e];
      flow.amps1.resize(count);
      flow.heat1_w.resize(count);
      if (element.ports() == 2) flow.amps2.resize(count);
      if (element.role == graph::Element::Role::coupled) flow.heat2_w.resize(count);
      if (element.form != graph::Element::Form::line) continue;
      flow.gamma_l.resize(count);
      flow.impedance_ohm.resize(count);
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
  }

  void allocate_workspace() {
    reals_.resize(program_.real_count);
    values_.resize(program_.value_count);
    entries_.resize(program_.entry_count);
    factors_.resize(program_.factor_count);
    inverses_.resize(program_.unknowns);
    x_.resize(program_.unknowns);
    rows_.resize(program_.unknowns);
    volts_.resize(program_.node_count);
    amps_.resize(2 * program_.element_count);
    heat_.resize(2 * program_.element_count);
    for (const Program::Constant& constant : program_.constants) fill(reals_[constant.real], constant.number);
    for (const Program::FixedValue& fixed : program_.fixed_values)
      for (std::size_t lane = 0; lane < lanes; ++lane) set(values_[fixed.value], lane, fixed.number);
    line_gammas_.resize(program_.lines.size());
    line_impedances_.resize(program_.lines.size());
  }

  void describe_batch() {
    batch_.program = &program_;
    batch_.branches = program_.branches.data();
    batch_.lines = program_.lines.data();
    batch_.gathers = program_.gathers.data();
    batch_.terms = program_.terms.data();
    batch_.steps = program_.steps.data();
    batch_.scales = program_.scales.data();
    batch_.updates = program_.updates.data();
    batch_.row_slots = program_.row_slots.data();
    batch_.backs = program_.backs.data();
    batch_.coupled = program_.coupled.data();
    batch_.nodes = program_.nodes.data();
    batch_.flows = program_.flows.data();
    batch_.merged = program_.merged.data();
    batch_.currents_of_merged = program_.currents.data();
    batch_.branch_count = program_.branches.size();
    batch_.line_count = program_.lines.size();
    batch_.gather_count = program_.gathers.size();
    batch_.step_count = program_.steps.size();
    batch_.back_count = program_.backs.size();
    batch_.node_code_count = program_.nodes.size();
    batch_.flow_count = program_.flows.size();
    batch_.merged_count = program_.merged.size();
    batch_.source_node = program_.source_node;
    batch_.source_other = program_.source_other;
    batch_.source_value = program_.source_value;
    batch_.source_unknown = program_.source_unknown;
    batch_.other_unknown = program_.other_unknown;
    batch_.source_weight = program_.source_weight;
    batch_.other_weight = program_.other_weight;
    batch_.element_count = program_.element_count;
    batch_.unknowns = program_.unknowns;
    batch_.reals = reals_.data();
    batch_.values = values_.data();
    batch_.entries = entries_.data();
    batch_.factors = factors_.data();
    batch_.inverses = inverses_.data();
    batch_.x = x_.data();
    batch_.rows = rows_.data();
    batch_.volts = volts_.data();
    batch_.amps = amps_.data();
    batch_.heat = heat_.data();
  }

  // ---- what goes in ----

  /// Lanes beyond the last state repeat it, so that they hold sound numbers.
  std::size_t state_of(std::size_t first, std::size_t used, std::size_t lane) const { return first + std::min(lane, used - 1); }

  void write_inputs(std::size_t first, std::size_t used) {
    given_guards_.fill(Guard::none);
    for (std::size_t lane = 0; lane < lanes; ++lane) hertz_[lane] = solution_.states.frequencies_hz[state_of(first, used, lane)];
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      batch_.omega.data()[lane] = 2.0 * std::numbers::pi * hertz_[lane];
      batch_.root_hz.data()[lane] = std::sqrt(hertz_[lane]);
    }
    for (const Program::Varying& varying : program_.varying)
      for (std::size_t lane = 0; lane < lanes; ++lane)
        lane_numbers(batch_, varying.real)[lane] = varying.read(hertz_[lane], solution_.states.knobs_at(state_of(first, used, lane)));
    write_source(first, used);
    for (const Program::GivenLine& given : program_.given_lines) write_line(given, first, used);
    for (const Program::Given& given : program_.givens)
      if (!given.constant || first == 0) write_given(given, first, used);
  }

  void write_source(std::size_t first, std::size_t used) {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const auto knobs = solution_.states.knobs_at(state_of(first, used, lane));
      const Complex ohms = design_.source.impedance_ohm.at(hertz_[lane], knobs);
      const double available = design_.source.available_w.real_at(hertz_[lane], knobs);
      batch_.source_ohms_re.data()[lane] = ohms.real();
      batch_.source_ohms_im.data()[lane] = ohms.imag();
      batch_.available_w.data()[lane] = available;
      batch_.source_volts.data()[lane] = 2.0 * std::sqrt(available * ohms.real());
      set(values_[program_.source_value], lane, 1.0 / ohms);
    }
  }

  const design::LineMake& make_of(std::uint32_t element) const {
    const auto& model = design_.parts[network_.elements[element].part.index].model;
    if (const auto* line = std::get_if<design::Line>(&model)) return line->make;
    return std::get<design::Stub>(model).make;
  }

  void write_line(const Program::GivenLine& given, std::size_t first, std::size_t used) {
    const design::LineMake& make = make_of(given.element);
    const LineCode& code = program_.lines[given.line];
    const sdk::LineData data{{make.impedance_ohm.real(), make.impedance_ohm.imag()}, make.velocity, make.losses.data(), make.losses.size()};
    std::array<sdk::Complex, lanes> gamma{}, impedance{};
    sdk::Failure failure{};
    const bool good = make.model->propagate(make.model->self, &data, make.k1, make.k2, hertz_.data(), lanes, gamma.data(), impedance.data(),
                                            &failure) == sdk::Status::ok;
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const double length = make.length_m.real_at(hertz_[lane], solution_.states.knobs_at(state_of(first, used, lane)));
      const Complex gamma_l = good ? Complex{gamma[lane].re, gamma[lane].im} * length : std::numeric_limits<double>::quiet_NaN();
      lane_numbers(batch_, code.a)[lane] = 0.5 * gamma_l.real();
      lane_numbers(batch_, code.b)[lane] = 0.5 * gamma_l.imag();
      const Complex z0{impedance[lane].re, impedance[lane].im};
      set(values_[code.admittance], lane, 1.0 / z0);
      set(line_gammas_[given.line], lane, gamma_l);
      set(line_impedances_[given.line], lane, z0);
    }
  }

  /// An element whose admittances the kernel has no formula for.
  void write_given(const Program::Given& given, std::size_t first, std::size_t used) {
    const graph::Element& element = network_.elements[given.element];
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const ElementValue value = element_value(design_, element, hertz_[lane], solution_.states.knobs_at(state_of(first, used, lane)));
      if (element.form == graph::Element::Form::branch) write_branch(given, value, lane);
      else write_matrix(given, value, lane);
    }
  }

  void flag(std::size_t lane, Guard why) {
    if (given_guards_[lane] == Guard::none) given_guards_[lane] = why;
  }

  void write_branch(const Program::Given& given, const ElementValue& value, std::size_t lane) {
    const bool sound = std::norm(value.n) >= 1e-12 * std::norm(value.d);
    if (!sound) flag(lane, Guard::shorted);
    set(values_[given.value], lane, sound ? value.d / value.n : 1.0);
    lane_numbers(batch_, given.real)[lane] = sound ? value.loss / std::norm(value.n) : 0.0;
  }

  void write_matrix(const Program::Given& given, const ElementValue& value, std::size_t lane) {
    std::array<Complex, 4> y{1.0, 0.0, 0.0, 1.0};
    if (!matrix_admittances(value, y)) flag(lane, Guard::two_port);
    for (std::uint32_t i = 0; i < 4; ++i) set(values_[given.value + i], lane, y[i]);
    if (network_.elements[given.element].role != graph::Element::Role::coupled) return;
    for (std::uint32_t i = 0; i < 2; ++i) {
      lane_numbers(batch_, given.real + i)[lane] = value.coil_ohms[i];
      lane_numbers(batch_, given.real + 2 + i)[lane] = value.coil_susceptance[i];
    }
  }

  // ---- what comes out ----

  void judge_lanes(std::size_t first, std::size_t used) {
    const auto flagged = [](const VectorMask* masks, std::size_t lane) {
      return reinterpret_cast<const std::int64_t*>(masks)[lane] != 0;
    };
    for (std::size_t lane = 0; lane < used; ++lane) {
      Guard guard = given_guards_[lane];
      if (guard == Guard::none && flagged(batch_.bad_line, lane)) guard = Guard::line;
      if (guard == Guard::none && flagged(batch_.bad_branch, lane)) guard = Guard::shorted;
      if (guard == Guard::none && flagged(batch_.bad_pivot, lane)) guard = Guard::pivot;
      if (guard == Guard::none && !(batch_.imbalance.data()[lane] < most_imbalance)) guard = Guard::balance;
      solution_.guards[first + lane] = guard;
    }
  }

  static void copy(const LaneReal& from, Series& to, std::size_t first, std::size_t used) {
    std::memcpy(to.data() + first, from.data(), used * sizeof(double));
  }
  static void copy(const LaneComplex& from, ComplexSeries& to, std::size_t first, std::size_t used) {
    std::memcpy(to.real() + first, from.real(), used * sizeof(double));
    std::memcpy(to.imag() + first, from.imag(), used * sizeof(double));
  }

  void store_batch(std::size_t first, std::size_t used) {
    for (std::size_t node = 1; node < volts_.size(); ++node) copy(volts_[node], solution_.volts[node], first, used);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      Flow& flow = solution_.flows[e];
      copy(amps_[2 * e], flow.amps1, first, used);
      copy(heat_[2 * e], flow.heat1_w, first, used);
      if (!flow.amps2.empty()) copy(amps_[2 * e + 1], flow.amps2, first, used);
      if (!flow.heat2_w.empty()) copy(heat_[2 * e + 1], flow.heat2_w, first, used);
      if (program_.line_of_element[e] == nowhere) continue;
      copy(line_gammas_[program_.line_of_element[e]], flow.gamma_l, first, used);
      copy(line_impedances_[program_.line_of_element[e]], flow.impedance_ohm, first, used);
    }
    copy(batch_.available_w, solution_.available_w, first, used);
    copy(batch_.source_amps, solution_.source_amps, first, used);
    for (std::size_t lane = 0; lane < used; ++lane) {
      solution_.source_volts.set(first + lane, get(volts_[program_.source_node], lane) - get(volts_[program_.source_other], lane));
      for (std::size_t k = 0; k < looks_.size(); ++k)
        solution_.looks[k].admittance_into.set(first + lane, lane_amps_of_look(k, lane) / get(volts_[looks_[k].node.index], lane));
    }
  }

  /// Current from a look's node into its part in a lane; with none, into everything but the source.
  Complex lane_amps_of_look(std::size_t k, std::size_t lane) const {
    Complex sum = 0.0;
    const auto add = [&](int e, int port, double sign) { sum += sign * get(amps_[2 * static_cast<std::size_t>(e) + static_cast<std::size_t>(port)], lane); };
    if (looks_[k].into) network_.visit_terminals(looks_[k].into, looks_[k].node.index, add);
    else
      for (std::size_t p = 0; p < design_.parts.size(); ++p)
        network_.visit_terminals(design::PartId{static_cast<int>(p)}, looks_[k].node.index, add);
    return sum;
  }

  void probe_look(std::size_t k, std::size_t first, std::size_t used) {
    const int node = looks_[k].node.index;
    for (const NodeCode& code : program_.nodes)
      if (static_cast<int>(code.node) == node) kernel().probe(batch_, code.node, code.unknown, code.weight);
    for (std::size_t lane = 0; lane < used; ++lane)
      solution_.looks[k].admittance_behind.set(first + lane, (1.0 - lane_amps_of_look(k, lane)) / get(volts_[node], lane));
  }

  void robust_state(std::size_t index, std::size_t lane) {
    const double hertz = solution_.states.frequencies_hz[index];
    const auto knobs = solution_.states.knobs_at(index);
    std::vector<ElementValue> values;
    for (const graph::Element& element : network_.elements) values.push_back(element_value(design_, element, hertz, knobs));
    const Complex ohms{batch_.source_ohms_re.data()[lane], batch_.source_ohms_im.data()[lane]};
    const Tableau<double> tableau(network_, values, ohms);
    const StateFlows state = tableau.solve(batch_.source_volts.data()[lane]);
    store_state(index, lane, state, values);
    const Complex port = state.volts[network_.source_node] - state.volts[network_.source_other];
    const bool closes = imbalance(ohms, batch_.available_w.data()[lane], port, state) < 1e-9;
    solution_.untrusted[index] = !(tableau.trust() > 1e-15) || !closes;
    for (std::size_t k = 0; k < looks_.size(); ++k) {
      const int node = looks_[k].node.index;
      solution_.looks[k].admittance_into.set(index, amps_of_look(k, state) / state.volts[node]);
      const StateFlows probe = tableau.solve(0.0, node, 1.0);
      solution_.looks[k].admittance_behind.set(index, (1.0 - amps_of_look(k, probe)) / probe.volts[node]);
    }
  }

  void store_state(std::size_t index, std::size_t lane, const StateFlows& state, const std::vector<ElementValue>& values) {
    for (std::size_t node = 0; node < solution_.volts.size(); ++node) solution_.volts[node].set(index, state.volts[node]);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      Flow& flow = solution_.flows[e];
      flow.amps1.set(index, state.elements[e].amps1);
      flow.heat1_w[index] = state.elements[e].heat1;
      if (!flow.amps2.empty()) flow.amps2.set(index, state.elements[e].amps2);
      if (!flow.heat2_w.empty()) flow.heat2_w[index] = state.elements[e].heat2;
      if (flow.gamma_l.empty()) continue;
      flow.gamma_l.set(index, values[e].gamma_l);
      flow.impedance_ohm.set(index, values[e].impedance);
    }
    solution_.available_w[index] = batch_.available_w.data()[lane];
    solution_.source_volts.set(index, state.volts[network_.source_node] - state.volts[network_.source_other]);
    solution_.source_amps.set(index, state.source_amps);
  }

  Complex amps_of_look(std::size_t k, const StateFlows& state) const {
    if (looks_[k].into) return amps_into(network_, state.elements, looks_[k].into, looks_[k].node.index);
    Complex sum = 0.0;
    for (std::size_t p = 0; p < design_.parts.size(); ++p)
      sum += amps_into(network_, state.elements, design::PartId{static_cast<int>(p)}, looks_[k].node.index);
    return sum;
  }

  const design::Design& design_;
  const graph::Network& network_;
  const plan::Plan& plan_;
  const std::vector<design::Look>& looks_;
  Program program_;
  Solution solution_;
  Batch batch_{};
  std::array<double, lanes> hertz_{};
  std::array<Guard, lanes> given_guards_{};
  std::vector<LaneReal> reals_, rows_, heat_;
  std::vector<LaneComplex> values_, entries_, factors_, inverses_, x_, volts_, amps_, line_gammas_, line_impedances_;
};

}  // namespace

Solution solve(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
               const std::vector<design::Look>& looks, Method method) {
  return Solver(design, network, plan, states, looks).run(method);
}

}  // namespace wattfall::solve
