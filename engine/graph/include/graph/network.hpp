// The design as an electrical network: which elements join which nodes, with no values yet. Parts become one or more elements; parts
// made of several stages (a transformer's winding, core and ideal turns) get inner nodes. Boost.Graph is used to build and check it,
// and stays in this room's and the plan's sources.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "design/design.hpp"

namespace wattfall::graph {

/// An element is one of four forms; every kind of part is made of them.
struct Element {
  enum class Form : std::uint8_t {
    branch,  ///< one port: d V = n I
    line,    ///< two ports: uniform line of (gamma l, Z0)
    ideal,   ///< two ports: V2 = ratio V1, I1 = -ratio I2
    matrix,  ///< two ports: A V + B I = 0
  };
  /// Which stage of its part it is: tells solve/element_values which formula to use.
  enum class Role : std::uint8_t {
    whole,        ///< the part's only element
    winding,      ///< transformer: winding resistance and leakage in series
    core,         ///< transformer: magnetizing inductance and core loss across
    turns,        ///< transformer: the ideal one
    common_mode,  ///< line or choke: the path of the common current
    difference,   ///< choke: the ideal 1:1 between the pairs
    coupled,      ///< two coupled coils as one two-port
    // three coils and more on one flux, and windings on one core, each a chain from its first terminal to its second:
    own_loss,     ///< its series resistance
    own_flux,     ///< a branch of `number` henries, on a core of that share of its impedance: what no earlier coil of the set accounts for
    shared_flux,  ///< ideal, 1:`number`: the flux of an earlier coil's `own_flux` in this one. Port 1 is `part`'s, port 2 `other`'s
    own_stray,    ///< its capacitance, across the chain
  };
  Form form = Form::branch;
  Role role = Role::whole;
  design::PartId part;            ///< the first of a coupled pair
  int coupling = -1;              ///< index into design.couplings for Role::coupled
  design::PartId other;           ///< Role::shared_flux: whose chain port 2 stands in
  double number = 0.0;            ///< Role::own_flux [H]; Role::shared_flux: the ratio
  int choice = -1;                ///< selectors: the choice that this branch closes
  std::array<int, 4> node{};      ///< network nodes: {a, b} or {in, in', out, out'}; 0 is ground
  int ports() const { return form == Form::branch ? 1 : 2; }
};

struct Network {
  /// Network nodes: the design's nodes first (same numbers, 0 = ground), then inner nodes.
  int node_count = 0;
  std::vector<Element> elements;
  /// Elements of a part: [first_element[p], first_element[p + 1]) of `part_elements`. A coupled coil lists the shared element.
  std::vector<int> first_element, part_elements;
  /// One node of each section that no conductor joins to ground; its potential is set to zero, which draws no current because there is
  /// no way back. Only differences of potential mean anything in such a section.
  std::vector<int> floating_reference;
  int source_node = -1, source_other = 0;

  /// Calls visit(element, port, sign) for every port of `part` that has a terminal on `node`: sign is +1 at the port's first terminal, -1 at its
  /// second. Of an element that two coils share each has its own port only.
  template <class Visit>
  void visit_terminals(design::PartId part, int on_node, Visit visit) const {
    for (int e : elements_of(part)) {
      const Element& element = elements[e];
      for (int port = 0; port < element.ports(); ++port) {
        const bool of_two = element.role == Element::Role::coupled || element.role == Element::Role::shared_flux;
        if (of_two && (port == 0) != (element.part == part)) continue;
        if (element.node[2 * port] == on_node) visit(e, port, 1.0);
        if (element.node[2 * port + 1] == on_node) visit(e, port, -1.0);
      }
    }
  }

  /// The elements of part `p`.
  std::span<const int> elements_of(design::PartId p) const {
    return {part_elements.data() + first_element[p.index], part_elements.data() + first_element[p.index + 1]};
  }
};

}  // namespace wattfall::graph
