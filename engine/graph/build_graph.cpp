// Lowers parts to elements: one function for each sort of part that is more than a single element.
#include "graph/build_graph.hpp"

#include <cmath>

#include "check_graph.hpp"
#include "design/coupled_sets.hpp"

namespace wattfall::graph {
namespace {

using design::PartId;

class Builder {
 public:
  explicit Builder(const design::Design& design) : design_(design) {
    network_.node_count = static_cast<int>(design.nodes.size());
    network_.source_node = design.source.node.index;
    network_.source_other = design.source.other.index;
    coupled_with_.assign(design.parts.size(), -1);
    set_of_.assign(design.parts.size(), -1);
    sets_ = design::coupled_sets(design);
    for (std::size_t s = 0; s < sets_.size(); ++s)
      for (const PartId coil : sets_[s].coils)
        if (design::by_shares(design, sets_[s])) set_of_[coil.index] = static_cast<int>(s);
        else coupled_with_[coil.index] = sets_[s].couplings.front();
  }

  Network build() {
    std::vector<std::vector<int>> elements_of(design_.parts.size());
    owners_ = &elements_of;
    for (std::size_t i = 0; i < design_.parts.size(); ++i) lower(PartId{static_cast<int>(i)}, design_.parts[i]);
    network_.first_element.reserve(design_.parts.size() + 1);
    for (const std::vector<int>& own : elements_of) {
      network_.first_element.push_back(static_cast<int>(network_.part_elements.size()));
      network_.part_elements.insert(network_.part_elements.end(), own.begin(), own.end());
    }
    network_.first_element.push_back(static_cast<int>(network_.part_elements.size()));
    return std::move(network_);
  }

 private:
  void lower(PartId id, const design::Part& part) {
    if (coupled_with_[id.index] >= 0) return lower_coupled(id);
    if (const int set = set_of_[id.index]; set >= 0) return sets_[set].coils.front() == id ? lower_set(sets_[set]) : void();
    if (const auto* stub = std::get_if<design::Stub>(&part.model)) return lower_stub(id, part, *stub);
    if (const auto* transformer = std::get_if<design::Transformer>(&part.model)) return lower_transformer(id, part, *transformer);
    if (std::holds_alternative<design::Choke>(part.model)) return lower_choke(id, part);
    if (std::holds_alternative<design::Selector>(part.model)) return lower_selector(id, part);
    if (!design::is_two_port(part)) return add(id, {.form = Element::Form::branch, .node = {at(part, 0), at(part, 1), 0, 0}});
    const auto* line = std::get_if<design::Line>(&part.model);
    add(id, {.form = line != nullptr ? Element::Form::line : Element::Form::matrix,
             .node = {at(part, 0), at(part, 1), at(part, 2), at(part, 3)}});
    if (line != nullptr && line->common_impedance) lower_common_mode(id, part);
  }

  /// A stub is a line whose far end is an inner node with nothing on it, or joined to the near end's other conductor.
  void lower_stub(PartId id, const design::Part& part, const design::Stub& stub) {
    const int near = at(part, 0), other = at(part, 1);
    add(id, {.form = Element::Form::line, .node = {near, other, stub.open ? inner_node() : other, other}});
  }

  /// A pair against ground: between the middles of its ends runs a second line, on which both conductors go together. A middle is where two equal windings
  /// meet: (a, m) and (m, b) with V_am = V_mb, so that each conductor carries half of what goes through m.
  void lower_common_mode(PartId id, const design::Part& part) {
    const int near = inner_node(), far = inner_node();
    for (const auto& [a, b, middle] : {std::array{at(part, 0), at(part, 1), near}, std::array{at(part, 2), at(part, 3), far}})
      add(id, {.form = Element::Form::ideal, .role = Element::Role::difference, .node = {a, middle, middle, b}});
    add(id, {.form = Element::Form::line, .role = Element::Role::common_mode, .node = {near, 0, far, 0}});
  }

  void lower_transformer(PartId id, const design::Part& part, const design::Transformer& made) {
    int from = at(part, 0);
    const int from_other = at(part, 1);
    if (made.winding_ohms || made.leakage_henries || (made.wound != nullptr && made.wound->wire)) {
      const int inside = inner_node();
      add(id, {.form = Element::Form::branch, .role = Element::Role::winding, .node = {from, inside, 0, 0}});
      from = inside;
    }
    if (made.magnetizing_henries || made.core_ohms || made.wound != nullptr)
      add(id, {.form = Element::Form::branch, .role = Element::Role::core, .node = {from, from_other, 0, 0}});
    add(id, {.form = Element::Form::ideal, .role = Element::Role::turns, .node = {from, from_other, at(part, 2), at(part, 3)}});
  }

  /// A choke winds both conductors together with perfect coupling: U_ac = U_bd = Z (I_a + I_b). So the two windings are an ideal 1:1
  /// between (a, c) and (b, d), with the common-mode impedance across one of them.
  void lower_choke(PartId id, const design::Part& part) {
    const int a = at(part, 0), b = at(part, 1), c = at(part, 2), d = at(part, 3);
    add(id, {.form = Element::Form::branch, .role = Element::Role::common_mode, .node = {b, d, 0, 0}});
    add(id, {.form = Element::Form::ideal, .role = Element::Role::difference, .node = {a, c, b, d}});
  }

  void lower_selector(PartId id, const design::Part& part) {
    for (std::size_t i = 1; i < part.terminals.size(); ++i)
      add(id, {.form = Element::Form::branch, .choice = static_cast<int>(i) - 1,
               .node = {at(part, 0), part.terminals[i].index, 0, 0}});
  }

  /// Two coupled coils are one two-port, owned by both; it is added with the first of them.
  void lower_coupled(PartId id) {
    const int index = coupled_with_[id.index];
    const design::Coupling& coupling = design_.couplings[index];
    if (coupling.first != id) return;
    const design::Part& first = design_.parts[coupling.first.index];
    const design::Part& second = design_.parts[coupling.second.index];
    add(id, {.form = Element::Form::matrix, .role = Element::Role::coupled, .coupling = index,
             .node = {at(first, 0), at(first, 1), at(second, 0), at(second, 1)}});
    (*owners_)[coupling.second.index].push_back(static_cast<int>(network_.elements.size()) - 1);
  }

  /// Three coils and more, and windings on one core: with the matrix of factors G G^T (Cholesky), coil i holds the flux of inductances L_k G_kk^2 of its own and of the
  /// coils before it, those by ideal transformers of sqrt(L_i/L_k) G_ik/G_kk. What comes out is M_ij = k_ij sqrt(L_i L_j) exactly.
  /// On one core L is complex, of one angle for all: they share its loss as they share its flux, and what is shared is the first coil's heat.
  void lower_set(const design::CoupledSet& set) {
    const std::vector<double> g = design::triangle_of(set);
    const std::size_t n = set.coils.size();
    std::vector<std::array<int, 2>> own(n);
    for (std::size_t i = 0; i < n; ++i) {
      const PartId id = set.coils[i];
      const design::Part& part = design_.parts[id.index];
      const auto& coil = std::get<design::Inductor>(part.model);
      int here = at(part, 0);
      const auto step_to = [&](bool last) { return last ? at(part, 1) : inner_node(); };
      const auto shares = [&](std::size_t k) { return g[i * n + k] != 0.0; };
      std::size_t left = 1;
      for (std::size_t k = 0; k < i; ++k) left += shares(k) ? 1 : 0;
      if (coil.wound != nullptr || coil.loss.form != design::SeriesLoss::Form::none || (coil.core != nullptr && coil.core->wire)) {
        const int next = inner_node();
        add(id, {.role = Element::Role::own_loss, .node = {here, next, 0, 0}});
        here = next;
      }
      own[i] = {here, step_to(--left == 0)};
      add(id, {.role = Element::Role::own_flux, .number = (coil.core != nullptr ? 1.0 : inductance(coil)) * g[i * n + i] * g[i * n + i], .node = {own[i][0], own[i][1], 0, 0}});
      here = own[i][1];
      for (std::size_t k = 0; k < i; ++k) {
        if (!shares(k)) continue;
        const auto& earlier = std::get<design::Inductor>(design_.parts[set.coils[k].index].model);
        const int next = step_to(--left == 0);
        add(set.coils[k], {.form = Element::Form::ideal, .role = Element::Role::shared_flux, .other = id,
                           .number = std::sqrt(inductance(coil) / inductance(earlier)) * g[i * n + k] / g[k * n + k],
                           .node = {own[k][0], own[k][1], here, next}});
        (*owners_)[id.index].push_back(static_cast<int>(network_.elements.size()) - 1);
        here = next;
      }
      if (coil.wound != nullptr || coil.capacitance || coil.resonance_hz)
        add(id, {.role = Element::Role::own_stray, .node = {at(part, 0), at(part, 1), 0, 0}});
    }
  }

  /// Sets are of coils whose inductance stands (design/couplings.cpp), or of windings on one core, where only ratios are asked for. A wound coil's falls by
  /// a per cent or so with frequency: left out here.
  static double inductance(const design::Inductor& coil) {
    if (coil.core != nullptr) return coil.core->turns * coil.core->turns;
    return coil.wound != nullptr ? coil.wound->inductance_h : coil.henries.constant_value().real();
  }

  void add(PartId id, Element element) {
    element.part = id;
    (*owners_)[id.index].push_back(static_cast<int>(network_.elements.size()));
    network_.elements.push_back(element);
  }
  static int at(const design::Part& part, std::size_t terminal) { return part.terminals[terminal].index; }
  int inner_node() { return network_.node_count++; }

  const design::Design& design_;
  Network network_;
  std::vector<design::CoupledSet> sets_;
  std::vector<int> coupled_with_;  ///< by part: its coupling, of a pair
  std::vector<int> set_of_;        ///< by part: its set of three coils and more
  std::vector<std::vector<int>>* owners_ = nullptr;
};

}  // namespace

Result<Network> build_graph(const design::Design& design) {
  Result<Network> result;
  check_ends(design, result.diagnostics);
  if (!result.diagnostics.empty()) return result;
  Network network = Builder(design).build();
  check_sections(design, network, result.diagnostics);
  if (result.diagnostics.empty()) result.value = std::move(network);
  return result;
}

}  // namespace wattfall::graph
