#include "program.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

namespace wattfall::solve {
namespace {

using design::Value;
using graph::Element;

class Compiler {
 public:
  Compiler(const design::Design& design, const graph::Network& network, const plan::Plan& plan)
      : design_(design), network_(network), plan_(plan) {}

  /// The admittances of some branches alone.
  Program compile_branches(const std::vector<int>& elements) {
    for (int e : elements) describe_branch(static_cast<std::uint32_t>(e), network_.elements[e]);
    return std::move(program_);
  }

  Program compile() {
    program_.unknowns = plan_.unknowns;
    program_.node_count = static_cast<std::uint32_t>(network_.node_count);
    program_.element_count = static_cast<std::uint32_t>(network_.elements.size());
    program_.entry_count = plan_.entry_slots;
    program_.factor_count = plan_.factor_slots;
    program_.line_of_element.assign(network_.elements.size(), nowhere);
    weigh_nodes();
    for (std::size_t e = 0; e < network_.elements.size(); ++e) add_element(static_cast<std::uint32_t>(e));
    add_source();
    for (int node : network_.floating_reference) add_tie(node);
    write_gathers();
    write_steps();
    write_merged();
    return std::move(program_);
  }

 private:
  using Read = std::function<double(double, std::span<const double>)>;

  std::uint32_t real() { return program_.real_count++; }
  std::uint32_t values(std::uint32_t count) {
    program_.value_count += count;
    return program_.value_count - count;
  }
  std::uint32_t constant(double number) {
    const auto [found, fresh] = constants_.try_emplace(number, program_.real_count);
    if (fresh) program_.constants.push_back({real(), number});
    return found->second;
  }
  std::uint32_t varying(Read read) {
    program_.varying.push_back({real(), std::move(read)});
    return program_.real_count - 1;
  }

  /// A parameter made of values: constant where all of them are.
  template <class Make, class... Values>
  std::uint32_t parameter(Make make, const Values&... given) {
    if ((given.constant() && ...)) return constant(make(given.constant_value().real()...));
    return varying([make, given...](double hertz, std::span<const double> knobs) { return make(given.real_at(hertz, knobs)...); });
  }
  std::uint32_t parameter(const Value& value) {
    return parameter([](double x) { return x; }, value);
  }
  std::uint32_t parameter(const std::optional<Value>& value) { return value ? parameter(*value) : constant(0.0); }

  // ---- nodes ----

  /// A node's share of its unknown, as a real; nowhere for 1.
  void weigh_nodes() {
    weights_.assign(network_.node_count, nowhere);
    chain_.assign(network_.node_count, {});
    for (int node : plan_.binding_order) {
      const plan::NodeBinding& binding = plan_.bindings[node];
      if (binding.via_element >= 0) {
        chain_[node] = chain_[binding.via_node];
        chain_[node].emplace_back(ratio_of(binding.via_element), binding.inverse);
        weights_[node] = weight(chain_[node], {});
      }
      program_.nodes.push_back({static_cast<std::uint32_t>(node), static_cast<std::uint32_t>(binding.unknown), weights_[node]});
    }
  }

  using Chain = std::vector<std::pair<Value, bool>>;

  Value ratio_of(int element) const {
    const auto& model = design_.parts[network_.elements[element].part.index].model;
    if (const auto* transformer = std::get_if<design::Transformer>(&model)) return transformer->ratio;
    return Value(1.0);  // the two windings of a choke
  }

  std::uint32_t weight(const Chain& a, const Chain& b) {
    Chain all = a;
    all.insert(all.end(), b.begin(), b.end());
    const auto product = [all](double hertz, std::span<const double> knobs) {
      double weight = 1.0;
      for (const auto& [ratio, inverse] : all) weight = inverse ? weight / ratio.real_at(hertz, knobs) : weight * ratio.real_at(hertz, knobs);
      return weight;
    };
    const bool fixed = std::all_of(all.begin(), all.end(), [](const auto& link) { return link.first.constant(); });
    return fixed ? constant(product(0.0, {})) : varying(product);
  }

  std::uint32_t weight_of(int s, int t) {
    if (weights_[s] == nowhere) return weights_[t];
    if (weights_[t] == nowhere) return weights_[s];
    const auto [found, fresh] = products_.try_emplace({std::min(s, t), std::max(s, t)}, nowhere);
    if (fresh) found->second = weight(chain_[s], chain_[t]);
    return found->second;
  }

  // ---- elements ----

  void add_element(std::uint32_t e) {
    const Element& element = network_.elements[e];
    switch (element.form) {
      case Element::Form::branch: return add_branch(e, element);
      case Element::Form::line: return add_line(e, element);
      case Element::Form::matrix: return add_matrix(e, element);
      case Element::Form::ideal: return add_ideal(e, element);
    }
  }

  void add_branch(std::uint32_t e, const Element& element) {
    const BranchCode code = describe_branch(e, element);
    FlowCode flow{.form = FlowCode::Form::branch, .element = e, .value = code.value, .even = code.heat};
    place(flow, element);
    stamp(e, [&](int, int) { return code.value; });
  }

  BranchCode describe_branch(std::uint32_t e, const Element& element) {
    BranchCode code{.formula = BranchCode::Formula::given, .value = values(1), .heat = real()};
    code.main = code.r0 = code.g1 = code.g2 = code.stray = code.tangent = constant(0.0);
    const auto& model = design_.parts[element.part.index].model;
    if (const auto* coil = std::get_if<design::Inductor>(&model)) describe_coil(*coil, code);
    else if (const auto* capacitor = std::get_if<design::Capacitor>(&model)) describe_capacitor(*capacitor, code);
    else if (const auto* resistor = std::get_if<design::Resistor>(&model)) describe_resistor(*resistor, code);
    else if (const auto* transformer = std::get_if<design::Transformer>(&model)) describe_transformer(*transformer, element, code);
    if (code.formula == BranchCode::Formula::given) program_.givens.push_back({e, code.value, code.heat, is_constant(model)});
    else program_.branches.push_back(code);
    program_.branch_values.push_back(code.value);
    return code;
  }

  /// A load of fixed impedance: its admittance is written once.
  static bool is_constant(const design::Model& model) {
    const auto* load = std::get_if<design::Load>(&model);
    if (load == nullptr) return false;
    const auto* value = std::get_if<Value>(&load->impedance);
    return value != nullptr && value->constant();
  }

  void describe_coil(const design::Inductor& coil, BranchCode& code) {
    code.formula = BranchCode::Formula::coil;
    code.main = parameter(coil.henries);
    describe_loss(coil.loss, code, [](double q, double f0) { return 2.0 * std::numbers::pi * std::sqrt(f0) / q; });
    if (coil.resonance_hz)
      code.stray = parameter(
          [](double f0, double henries) {
            const double omega0 = 2.0 * std::numbers::pi * f0;
            return 1.0 / (omega0 * omega0 * henries);
          },
          *coil.resonance_hz, coil.henries);
    else code.stray = parameter(coil.capacitance);
  }

  /// X/Q: g1 = 1/Q of the reactance at w; g2 such that g2 sqrt f, times L or over C, is (X(f0)/Q) sqrt(f/f0).
  template <class G2>
  void describe_loss(const design::SeriesLoss& loss, BranchCode& code, G2 g2) {
    using Form = design::SeriesLoss::Form;
    if (loss.form == Form::resistance) code.r0 = parameter(loss.value);
    if (loss.form == Form::q) code.g1 = parameter([](double q) { return 1.0 / q; }, loss.value);
    if (loss.form == Form::q_at) code.g2 = parameter(g2, loss.value, loss.at_hz);
  }

  void describe_capacitor(const design::Capacitor& capacitor, BranchCode& code) {
    code.formula = BranchCode::Formula::capacitor;
    code.main = parameter(capacitor.farads);
    describe_loss(capacitor.loss, code, [](double q, double f0) { return 1.0 / (2.0 * std::numbers::pi * f0 * std::sqrt(f0) * q); });
    code.stray = parameter(capacitor.inductance);
    code.tangent = parameter(capacitor.tangent);
  }

  void describe_resistor(const design::Resistor& resistor, BranchCode& code) {
    code.formula = BranchCode::Formula::coil;
    code.main = parameter(resistor.inductance);
    code.r0 = parameter(resistor.ohms);
    code.stray = parameter(resistor.capacitance);
  }

  void describe_transformer(const design::Transformer& transformer, const Element& element, BranchCode& code) {
    if (element.role == Element::Role::winding) {
      code.formula = BranchCode::Formula::coil;
      code.main = parameter(transformer.leakage_henries);
      code.r0 = parameter(transformer.winding_ohms);
    } else {
      code.formula = BranchCode::Formula::core;
      code.main = parameter(transformer.magnetizing_henries);
      const auto inverse = [](double x) { return 1.0 / x; };
      if (transformer.core_ohms) code.r0 = parameter(inverse, *transformer.core_ohms);
      if (transformer.core_q) code.g1 = parameter(inverse, *transformer.core_q);
    }
  }

  void add_line(std::uint32_t e, const Element& element) {
    const design::LineMake& make = make_of(element);
    const std::uint32_t line = distinct_line(e, make);
    program_.line_of_element[e] = line;
    const LineCode code = program_.lines[line];
    FlowCode flow{.form = FlowCode::Form::line, .element = e, .value = code.value, .even = code.even, .odd = code.odd};
    place(flow, element);
    stamp(e, [&](int s, int t) { return code.value + (s / 2 == t / 2 ? 0u : 1u); });
  }

  const design::LineMake& make_of(const Element& element) const {
    const auto& model = design_.parts[element.part.index].model;
    if (const auto* line = std::get_if<design::Line>(&model)) return line->make;
    return std::get<design::Stub>(model).make;
  }

  /// Lines of one make and one fixed length share their hyperbolic functions.
  std::uint32_t distinct_line(std::uint32_t e, const design::LineMake& make) {
    for (std::uint32_t line = 0; line < program_.lines.size(); ++line) {
      const design::LineMake& known = make_of(network_.elements[program_.given_lines[line].element]);
      const bool alike = known.length_m.constant() && make.length_m.constant() && known.length_m.constant_value() == make.length_m.constant_value() &&
                         known.impedance_ohm == make.impedance_ohm && known.velocity == make.velocity && known.k1 == make.k1 &&
                         known.k2 == make.k2 && known.model == make.model && known.losses.size() == make.losses.size();
      if (alike) return line;
    }
    program_.lines.push_back({.a = real(), .b = real(), .admittance = values(1), .value = values(2), .even = real(), .odd = real()});
    program_.given_lines.push_back({e, static_cast<std::uint32_t>(program_.lines.size() - 1)});
    return static_cast<std::uint32_t>(program_.lines.size() - 1);
  }

  void add_matrix(std::uint32_t e, const Element& element) {
    const std::uint32_t value = values(4);
    const bool coupled = element.role == Element::Role::coupled;
    FlowCode flow{.form = coupled ? FlowCode::Form::coupled : FlowCode::Form::matrix, .element = e, .value = value};
    flow.even = program_.real_count;
    if (coupled) program_.real_count += 4;
    program_.givens.push_back({e, value, flow.even, false});
    place(flow, element);
    stamp(e, [&](int s, int t) { return value + static_cast<std::uint32_t>(2 * (s / 2) + t / 2); });
  }

  void add_ideal(std::uint32_t e, const Element& element) {
    if (plan_.current_unknown[e] < 0) return;
    const auto current = static_cast<std::uint32_t>(plan_.current_unknown[e]);
    const std::uint32_t ratio = parameter(ratio_of(static_cast<int>(e)));
    FlowCode flow{.form = FlowCode::Form::border, .element = e, .unknown = current, .ratio = ratio};
    place(flow, element);
    const std::uint32_t unit = unit_value();
    for (int s = 0; s < 4; ++s)
      for (int half = 0; half < 2; ++half) {
        const std::uint32_t slot = plan_.stamps[e].border[2 * s + half];
        if (slot == plan::Plan::no_slot) continue;
        // V2 - ratio V1 = 0, and the same coefficients in the nodes' laws.
        const int node = element.node[s];
        const double sign = (s % 2 == 0 ? 1.0 : -1.0) * (s < 2 ? -1.0 : 1.0);
        const std::uint32_t weight_real = s >= 2 ? weights_[node] : weights_[node] == nowhere ? ratio : border_weight(e, node);
        terms_[slot].push_back({unit, weight_real, sign});
      }
  }

  std::uint32_t border_weight(std::uint32_t e, int node) { return weight(chain_[node], {{ratio_of(static_cast<int>(e)), false}}); }

  std::uint32_t unit_value() {
    if (unit_value_ == nowhere) {
      unit_value_ = values(1);
      program_.fixed_values.push_back({unit_value_, 1.0});
    }
    return unit_value_;
  }

  void place(FlowCode& flow, const Element& element) {
    for (int i = 0; i < 4; ++i) flow.node[i] = static_cast<std::uint32_t>(element.node[i]);
    program_.flows.push_back(flow);
  }

  /// `value_at(s, t)`: the value that couples terminals s and t; signs alternate within a port.
  template <class ValueAt>
  void stamp(std::uint32_t e, ValueAt value_at) {
    const plan::Plan::Stamp& slots = plan_.stamps[e];
    const Element& element = network_.elements[e];
    for (int s = 0; s < slots.terminals; ++s)
      for (int t = 0; t < slots.terminals; ++t)
        if (slots.slot[4 * s + t] != plan::Plan::no_slot)
          terms_[slots.slot[4 * s + t]].push_back({value_at(s, t), weight_of(element.node[s], element.node[t]), (s + t) % 2 == 0 ? 1.0 : -1.0});
  }

  // ---- source, ties ----

  void add_source() {
    program_.source_node = static_cast<std::uint32_t>(network_.source_node);
    program_.source_other = static_cast<std::uint32_t>(network_.source_other);
    program_.source_value = values(1);
    const int node[2] = {network_.source_node, network_.source_other};
    for (int s = 0; s < 2; ++s)
      for (int t = 0; t < 2; ++t)
        if (plan_.source_slot[2 * s + t] != plan::Plan::no_slot)
          terms_[plan_.source_slot[2 * s + t]].push_back({program_.source_value, weight_of(node[s], node[t]), s == t ? 1.0 : -1.0});
    program_.source_unknown = unknown_of(network_.source_node);
    program_.other_unknown = unknown_of(network_.source_other);
    program_.source_weight = weights_[network_.source_node];
    program_.other_weight = weights_[network_.source_other];
  }

  std::uint32_t unknown_of(int node) const {
    const int unknown = plan_.bindings[node].unknown;
    return unknown < 0 ? nowhere : static_cast<std::uint32_t>(unknown);
  }

  /// Any admittance to ground will do, since no current can flow through it: that of 50 ohm keeps the pivots of a size.
  void add_tie(int node) {
    terms_[plan_.diagonal[plan_.bindings[node].unknown]].push_back({unit_value(), constant(0.02), 1.0});
  }

  // ---- lists for the kernel ----

  void write_gathers() {
    for (std::uint32_t slot = 0; slot < plan_.entry_slots; ++slot) {
      const auto found = terms_.find(slot);
      const std::size_t count = found == terms_.end() ? 0 : found->second.size();
      program_.gathers.push_back({slot, static_cast<std::uint32_t>(program_.terms.size()), static_cast<std::uint32_t>(count)});
      if (count > 0) program_.terms.insert(program_.terms.end(), found->second.begin(), found->second.end());
    }
  }

  void write_steps() {
    using Code = plan::Operation::Code;
    for (const plan::Operation& operation : plan_.operations) {
      switch (operation.code) {
        case Code::invert: open_step(operation); break;
        case Code::scale:
          program_.scales.push_back({operation.target, operation.left});
          ++program_.steps.back().scale_count;
          break;
        case Code::update:
          program_.updates.push_back({operation.target, operation.left, operation.right});
          ++program_.steps.back().update_count;
          break;
      }
    }
    for (const plan::Substitution& substitution : plan_.substitutions) {
      program_.backs.push_back({substitution.row, static_cast<std::uint32_t>(program_.coupled.size()),
                                static_cast<std::uint32_t>(substitution.entries.size())});
      for (const auto& entry : substitution.entries) program_.coupled.push_back({entry.lower, entry.upper, entry.unknown});
    }
  }

  void open_step(const plan::Operation& operation) {
    const std::vector<std::uint32_t>& row = plan_.row_slots[operation.target];
    program_.steps.push_back({operation.target, operation.left, static_cast<std::uint32_t>(program_.scales.size()), 0,
                              static_cast<std::uint32_t>(program_.updates.size()), 0,
                              static_cast<std::uint32_t>(program_.row_slots.size()), static_cast<std::uint32_t>(row.size())});
    program_.row_slots.insert(program_.row_slots.end(), row.begin(), row.end());
  }

  /// Kirchhoff's law at the outer nodes of merged transformers, outermost first.
  void write_merged() {
    std::vector<std::vector<CurrentTerm>> taken(network_.node_count);
    const auto take = [&](std::uint32_t e, int port) {
      const Element& element = network_.elements[e];
      taken[element.node[2 * port]].push_back({2 * e + static_cast<std::uint32_t>(port), 1.0});
      taken[element.node[2 * port + 1]].push_back({2 * e + static_cast<std::uint32_t>(port), -1.0});
    };
    for (const FlowCode& flow : program_.flows)
      for (int port = 0; port < network_.elements[flow.element].ports(); ++port) take(flow.element, port);
    taken[network_.source_node].push_back({nowhere, -1.0});
    taken[network_.source_other].push_back({nowhere, 1.0});
    for (std::size_t i = plan_.binding_order.size(); i-- > 0;) {
      const int node = plan_.binding_order[i];
      const plan::NodeBinding& binding = plan_.bindings[node];
      if (binding.via_element < 0) continue;
      const auto e = static_cast<std::uint32_t>(binding.via_element);
      program_.merged.push_back({e, parameter(ratio_of(binding.via_element)), binding.inverse, static_cast<std::uint32_t>(node),
                                 static_cast<std::uint32_t>(program_.currents.size()), static_cast<std::uint32_t>(taken[node].size())});
      program_.currents.insert(program_.currents.end(), taken[node].begin(), taken[node].end());
      taken[binding.via_node].push_back({2 * e + (binding.inverse ? 1u : 0u), 1.0});
    }
  }

  const design::Design& design_;
  const graph::Network& network_;
  const plan::Plan& plan_;
  Program program_;
  std::map<double, std::uint32_t> constants_;
  std::vector<std::uint32_t> weights_;
  std::vector<Chain> chain_;
  std::map<std::pair<int, int>, std::uint32_t> products_;
  std::map<std::uint32_t, std::vector<GatherTerm>> terms_;
  std::uint32_t unit_value_ = nowhere;
};

}  // namespace

Program compile(const design::Design& design, const graph::Network& network, const plan::Plan& plan) {
  return Compiler(design, network, plan).compile();
}

Program compile_branches(const design::Design& design, const graph::Network& network, const std::vector<int>& elements) {
  static const plan::Plan none;
  return Compiler(design, network, none).compile_branches(elements);
}

}  // namespace wattfall::solve
