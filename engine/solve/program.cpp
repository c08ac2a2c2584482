#include "program.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "propagation.hpp"
#include "schedule.hpp"

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
    terms_.resize(plan_.entry_slots);
    place_amps();
    weigh_nodes();
    for (std::size_t e = 0; e < network_.elements.size(); ++e) add_element(static_cast<std::uint32_t>(e));
    add_source();
    for (int node : network_.floating_reference) add_tie(node);
    write_gathers();
    write_steps();
    write_merged();
    schedule(program_);
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
  std::uint32_t varying(Read read, int knob = -1) {
    program_.varying.push_back({real(), knob, std::move(read)});
    return program_.real_count - 1;
  }

  /// A parameter made of values: one number where all of them are.
  template <class Make, class... Values>
  Operand parameter(Make make, const Values&... given) {
    if ((given.constant() && ...)) return {nowhere, make(given.constant_value().real()...)};
    return {varying([make, given...](double hertz, std::span<const double> knobs) { return make(given.real_at(hertz, knobs)...); }), 0.0};
  }
  Operand parameter(const Value& value) {
    if (value.constant()) return {nowhere, value.constant_value().real()};
    return {varying([value](double hertz, std::span<const double> knobs) { return value.real_at(hertz, knobs); }, value.plain_knob().index), 0.0};
  }
  Operand parameter(const std::optional<Value>& value) { return value ? parameter(*value) : Operand{}; }
  /// As a table of lanes whatever it is.
  std::uint32_t lanes_of(const Value& value) {
    const Operand operand = parameter(value);
    return operand.real == nowhere ? constant(operand.number) : operand.real;
  }

  // ---- places ----

  void place_amps() {
    program_.heat_count = program_.element_count;
    for (const Element& element : network_.elements) {
      program_.amps_of_element.push_back(program_.amps_count);
      program_.amps_count += static_cast<std::uint32_t>(element.ports());
      program_.heat2_of_element.push_back(element.role == Element::Role::coupled ? program_.heat_count++ : nowhere);
    }
  }

  // ---- nodes ----

  /// A node's share of its unknown, as a real; nowhere for 1.
  void weigh_nodes() {
    weights_.assign(network_.node_count, nowhere);
    chain_.assign(network_.node_count, {});
    program_.x_of_node.assign(network_.node_count, nowhere);
    x_of_unknown_.resize(plan_.unknowns);
    for (std::uint32_t current = plan_.node_unknowns; current < plan_.unknowns; ++current)
      x_of_unknown_[current] = program_.node_count + current - plan_.node_unknowns;
    for (int node : plan_.binding_order) {
      const plan::NodeBinding& binding = plan_.bindings[node];
      if (binding.via_element >= 0) {
        chain_[node] = chain_[binding.via_node];
        chain_[node].emplace_back(ratio_of(binding.via_element), binding.inverse);
        weights_[node] = weight(chain_[node], {});
        program_.nodes.push_back({static_cast<std::uint32_t>(node), x_of_unknown_[binding.unknown], weights_[node]});
      } else {
        x_of_unknown_[binding.unknown] = static_cast<std::uint32_t>(node);
      }
      program_.x_of_node[node] = x_of_unknown_[binding.unknown];
    }
    program_.weight_of_node = weights_;
  }

  using Chain = std::vector<std::pair<Value, bool>>;

  Value ratio_of(int element) const {
    if (network_.elements[element].role == Element::Role::shared_flux) return Value(network_.elements[element].number);
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
    BranchFlow flow{.node = {}, .value = code.value, .conductance = code.heat, .element = e, .amps = program_.amps_of_element[e]};
    place(flow, element);
    program_.branch_flows.push_back(flow);
    stamp(e, [&](int, int) { return code.value; });
  }

  BranchCode describe_branch(std::uint32_t e, const Element& element) {
    BranchCode code{.formula = BranchCode::Formula::given, .plain = false, .value = values(1), .heat = real()};
    const auto& model = design_.parts[element.part.index].model;
    if (const auto* coil = std::get_if<design::Inductor>(&model)) {
      if (element.role == Element::Role::whole) describe_coil(*coil, code);  // else given, as one of a set
    }
    else if (const auto* capacitor = std::get_if<design::Capacitor>(&model)) describe_capacitor(*capacitor, code);
    else if (const auto* resistor = std::get_if<design::Resistor>(&model)) describe_resistor(*resistor, code);
    else if (const auto* transformer = std::get_if<design::Transformer>(&model)) describe_transformer(*transformer, element, code);
    if (code.formula == BranchCode::Formula::given) program_.givens.push_back({e, code.value, code.heat, is_constant(model)});
    else add_code(code);
    program_.branch_values.push_back(code.value);
    program_.branch_heats.push_back(code.heat);
    return code;
  }

  void add_code(BranchCode& code) {
    code.plain = code.stray.number == 0.0 && code.tangent.number == 0.0;
    for (const Operand* operand : {&code.main, &code.r0, &code.g1, &code.g2, &code.stray, &code.tangent}) code.plain &= operand->real == nowhere;
    program_.branches.push_back(code);
  }

  /// A load of fixed impedance: its admittance is written once.
  static bool is_constant(const design::Model& model) {
    const auto* load = std::get_if<design::Load>(&model);
    if (load == nullptr) return false;
    const auto* value = std::get_if<Value>(&load->impedance);
    return value != nullptr && value->constant();
  }

  void describe_coil(const design::Inductor& coil, BranchCode& code) {
    if (coil.wound != nullptr || coil.core != nullptr) return;  // given: its geometry is worked out frequency by frequency
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
    if (resistor.skin) return;
    code.formula = BranchCode::Formula::coil;
    code.main = parameter(resistor.inductance);
    code.r0 = parameter(resistor.ohms);
    code.stray = parameter(resistor.capacitance);
  }

  void describe_transformer(const design::Transformer& transformer, const Element& element, BranchCode& code) {
    if (transformer.wound != nullptr) return;  // given, as a coil by its size
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
    const std::uint32_t line = distinct_line(e, make_of(design_, element));
    program_.line_of_element[e] = line;
    const LineCode code = program_.lines[line];
    LineFlow flow{.node = {}, .value = code.value, .even = code.even, .odd = code.odd, .element = e, .amps = program_.amps_of_element[e]};
    place(flow, element);
    program_.line_flows.push_back(flow);
    stamp(e, [&](int s, int t) { return code.value + (s / 2 == t / 2 ? 0u : 1u); });
  }

  /// Lines of one make and one fixed length share their hyperbolic functions; those of one make its propagation constant.
  std::uint32_t distinct_line(std::uint32_t e, const design::LineMake& make) {
    const std::uint32_t known = distinct_make(e, make);
    const auto next = static_cast<std::uint32_t>(program_.lines.size());
    if (make.length_m.constant()) {
      const auto [found, fresh] = lines_.try_emplace({known, make.length_m.constant_value().real()}, next);
      if (!fresh) return found->second;
    }
    const Program::GivenMake& given = program_.given_makes[known];
    program_.lines.push_back({.gamma = given.gamma, .admittance = given.admittance, .length = parameter(make.length_m), .value = values(2),
                              .even = real(), .odd = real()});
    program_.make_of_line.push_back(known);
    return next;
  }

  std::uint32_t distinct_make(std::uint32_t e, const design::LineMake& make) {
    std::vector<double> key{make.impedance_ohm.real(), make.impedance_ohm.imag(), make.velocity, make.k1, make.k2};
    for (const sdk::LossPoint& loss : make.losses) key.insert(key.end(), {loss.frequency_hz, loss.db_per_100m});
    // A cross-section and a pair's common mode are each evaluated on their own.
    const bool alone = !std::holds_alternative<std::monostate>(make.section) || network_.elements[e].role == Element::Role::common_mode;
    if (alone) key.push_back(static_cast<double>(e));
    const auto [found, fresh] = makes_.try_emplace({make.model, std::move(key)}, static_cast<std::uint32_t>(program_.given_makes.size()));
    if (fresh) program_.given_makes.push_back({e, values(1), values(1), values(1)});
    return found->second;
  }

  void add_matrix(std::uint32_t e, const Element& element) {
    const std::uint32_t value = values(4);
    const bool coupled = element.role == Element::Role::coupled;
    FlowCode flow{.form = coupled ? FlowCode::Form::coupled : FlowCode::Form::matrix, .element = e, .amps = program_.amps_of_element[e],
                  .node = {}, .value = value, .coils = program_.real_count, .heat2 = program_.heat2_of_element[e], .x = nowhere, .ratio = nowhere};
    if (coupled) program_.real_count += 4;
    program_.givens.push_back({e, value, flow.coils, false});
    place(flow, element);
    program_.flows.push_back(flow);
    stamp(e, [&](int s, int t) { return value + static_cast<std::uint32_t>(2 * (s / 2) + t / 2); });
  }

  void add_ideal(std::uint32_t e, const Element& element) {
    if (plan_.current_unknown[e] < 0) return;
    const auto current = static_cast<std::uint32_t>(plan_.current_unknown[e]);
    const std::uint32_t ratio = lanes_of(ratio_of(static_cast<int>(e)));
    FlowCode flow{.form = FlowCode::Form::border, .element = e, .amps = program_.amps_of_element[e], .node = {}, .value = nowhere, .coils = nowhere,
                  .heat2 = nowhere, .x = x_of_unknown_[current], .ratio = ratio};
    place(flow, element);
    program_.flows.push_back(flow);
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

  template <class Flow>
  static void place(Flow& flow, const Element& element) {
    for (std::size_t i = 0; i < std::size(flow.node); ++i) flow.node[i] = static_cast<std::uint32_t>(element.node[i]);
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
    program_.source_x = program_.x_of_node[network_.source_node];
    program_.other_x = program_.x_of_node[network_.source_other];
    program_.source_weight = weights_[network_.source_node];
    program_.other_weight = weights_[network_.source_other];
  }

  /// Any admittance to ground will do, since no current can flow through it: that of 50 ohm keeps the pivots of a size.
  void add_tie(int node) {
    terms_[plan_.diagonal[plan_.bindings[node].unknown]].push_back({unit_value(), constant(0.02), 1.0});
  }

  // ---- lists for the kernel ----

  void write_gathers() {
    std::vector<std::array<std::uint32_t, 2>> rows(plan_.entry_slots, {nowhere, nowhere});
    for (std::uint32_t unknown = 0; unknown < plan_.unknowns; ++unknown)
      for (std::uint32_t slot : plan_.row_slots[unknown]) rows[slot][rows[slot][0] == nowhere ? 0 : 1] = unknown;
    std::vector<bool> written(plan_.entry_slots, false);
    for (std::uint32_t unknown = 0; unknown < plan_.unknowns; ++unknown) {
      write_gather(plan_.diagonal[unknown], {unknown, nowhere}, true);
      written[plan_.diagonal[unknown]] = true;
    }
    for (std::uint32_t slot = 0; slot < plan_.entry_slots; ++slot)
      if (!written[slot]) write_gather(slot, rows[slot], false);
  }

  void write_gather(std::uint32_t slot, const std::array<std::uint32_t, 2>& rows, bool diagonal) {
    std::vector<GatherTerm>& terms = terms_[slot];
    const auto weighted = std::stable_partition(terms.begin(), terms.end(), [](const GatherTerm& term) { return term.weight == nowhere; });
    program_.gathers.push_back({slot, static_cast<std::uint32_t>(program_.terms.size()), static_cast<std::uint32_t>(weighted - terms.begin()),
                                static_cast<std::uint32_t>(terms.size()), {rows[0], rows[1]}, diagonal});
    program_.terms.insert(program_.terms.end(), terms.begin(), terms.end());
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
      program_.backs.push_back({x_of_unknown_[substitution.row], static_cast<std::uint32_t>(program_.coupled.size()),
                                static_cast<std::uint32_t>(substitution.entries.size())});
      for (const auto& entry : substitution.entries) program_.coupled.push_back({entry.lower, entry.upper, x_of_unknown_[entry.unknown]});
    }
    find_panels();
  }

  /// In a symmetric matrix, steps whose columns have the same entries but for the unknowns that leave among them: what is left is updated with all of
  /// their factors at once, which takes each entry out of memory once. Their entries and factors stand in rows. Short columns are quicker by themselves.
  void find_panels() {
    constexpr std::uint32_t few = 3;
    const std::vector<Back>& backs = program_.backs;
    const auto follows = [&](std::size_t i) {
      return backs[i].count == backs[i + 1].count + 1 && program_.coupled[backs[i].first].x == backs[i + 1].x;
    };
    for (std::size_t i = 0; plan_.symmetric && i < program_.steps.size(); i += program_.steps[i].panel)
      while (program_.steps[i].scale_count > few && program_.steps[i].panel < most_in_panel && i + program_.steps[i].panel < program_.steps.size() && follows(i + program_.steps[i].panel - 1))
        ++program_.steps[i].panel;
  }

  void open_step(const plan::Operation& operation) {
    program_.steps.push_back({.unknown = operation.target, .pivot = operation.left, .first_scale = static_cast<std::uint32_t>(program_.scales.size()), .scale_count = 0,
                              .first_update = static_cast<std::uint32_t>(program_.updates.size()), .update_count = 0});
  }

  /// Kirchhoff's law at the outer nodes of merged transformers, outermost first.
  void write_merged() {
    if (program_.nodes.empty()) return;
    std::vector<std::vector<CurrentTerm>> taken(network_.node_count);
    const auto take = [&](std::uint32_t e, int port) {
      const Element& element = network_.elements[e];
      taken[element.node[2 * port]].push_back({program_.amps_of_element[e] + static_cast<std::uint32_t>(port), 1.0});
      taken[element.node[2 * port + 1]].push_back({program_.amps_of_element[e] + static_cast<std::uint32_t>(port), -1.0});
    };
    for (std::uint32_t e = 0; e < network_.elements.size(); ++e)
      if (network_.elements[e].form != Element::Form::ideal || plan_.current_unknown[e] >= 0)
        for (int port = 0; port < network_.elements[e].ports(); ++port) take(e, port);
    taken[network_.source_node].push_back({nowhere, -1.0});
    taken[network_.source_other].push_back({nowhere, 1.0});
    for (std::size_t i = plan_.binding_order.size(); i-- > 0;) {
      const int node = plan_.binding_order[i];
      const plan::NodeBinding& binding = plan_.bindings[node];
      if (binding.via_element < 0) continue;
      const auto e = static_cast<std::uint32_t>(binding.via_element);
      MergedCode code{e, program_.amps_of_element[e], lanes_of(ratio_of(binding.via_element)), binding.inverse, {},
                      static_cast<std::uint32_t>(program_.currents.size()), static_cast<std::uint32_t>(taken[node].size())};
      place(code, network_.elements[e]);
      program_.merged.push_back(code);
      program_.currents.insert(program_.currents.end(), taken[node].begin(), taken[node].end());
      taken[binding.via_node].push_back({program_.amps_of_element[e] + (binding.inverse ? 1u : 0u), 1.0});
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
  std::vector<std::vector<GatherTerm>> terms_;  ///< by slot
  std::vector<std::uint32_t> x_of_unknown_;
  std::map<std::pair<std::uint32_t, double>, std::uint32_t> lines_;
  std::map<std::pair<const sdk::LineModel*, std::vector<double>>, std::uint32_t> makes_;
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
