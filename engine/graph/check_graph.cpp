// Connectivity of a network, with Boost.Graph: sections that conductors join, and what is coupled to the source at all.
#include "check_graph.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/connected_components.hpp>
#include <boost/pending/disjoint_sets.hpp>
#include <algorithm>
#include <array>
#include <cctype>
#include <numeric>
#include <set>
#include <string_view>

#include "grammar/nearest_name.hpp"

namespace wattfall::graph {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS>;

/// Component number of every vertex.
std::vector<int> components(const Graph& graph) {
  std::vector<int> component(boost::num_vertices(graph));
  boost::connected_components(graph, component.data());
  return component;
}

std::string quoted(const std::string& name) {
  return "`" + name + "`";
}

std::string list_names(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i == 8) return text + " and " + std::to_string(names.size() - i) + " more";
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + quoted(names[i]);
  }
  return text;
}

/// Conductors: every port of an element fixes the difference of potential between its two nodes.
Graph conductor_graph(const Network& network) {
  Graph graph(network.node_count);
  for (const Element& element : network.elements) {
    boost::add_edge(element.node[0], element.node[1], graph);
    if (element.ports() == 2) boost::add_edge(element.node[2], element.node[3], graph);
  }
  boost::add_edge(network.source_node, network.source_other, graph);
  return graph;
}

/// As conductor_graph, but an element joins all its nodes: power can pass between them. Ground joins nothing by itself,
/// or an island beside the network would count as coupled to it; so each element's own nodes above ground are joined.
Graph coupling_graph(const Network& network) {
  Graph graph(network.node_count);
  const auto join = [&graph](int a, int b) {
    if (a != 0 && b != 0) boost::add_edge(a, b, graph);
  };
  for (const Element& element : network.elements) {
    const int ends = 2 * element.ports();
    int previous = 0;
    for (int i = 0; i < ends; ++i) {
      if (element.node[i] == 0) continue;
      join(previous, element.node[i]);
      previous = element.node[i];
    }
  }
  join(network.source_node, network.source_other);
  return graph;
}

std::vector<std::string> node_names(const design::Design& design, const std::vector<int>& component, int which) {
  std::vector<std::string> names;
  for (std::size_t i = 1; i < design.nodes.size(); ++i)
    if (component[i] == which) names.push_back(design.nodes[i].name);
  return names;
}

std::string list_nodes(const design::Design& design, const std::vector<int>& component, int which) {
  const std::vector<std::string> names = node_names(design, component, which);
  return (names.size() == 1 ? "node " : "nodes ") + list_names(names);
}

void say_island(const design::Design& design, const std::vector<int>& component, int which, Diagnostics& diagnostics) {
  std::vector<std::string> parts;
  Diagnostic diagnostic{.code = "island"};
  for (const design::Part& part : design.parts) {
    bool member = false;
    for (design::NodeId terminal : part.terminals) member |= terminal.index != 0 && component[terminal.index] == which;
    if (!member) continue;
    if (parts.empty())
      diagnostic.span = part.span;
    else if (diagnostic.notes.size() < 8)
      diagnostic.notes.push_back({part.span, "and " + quoted(part.name)});
    parts.push_back(part.name);
    if (design::is_load(part))
      diagnostics.push_back(
          {.code = "unreachable-load",
           .span = part.span,
           .text = "no part leads from the source to the load " + quoted(part.name),
           .expected = "a path of parts from node " + quoted(design.nodes[design.source.node.index].name) + " to it"});
  }
  diagnostic.text = (parts.size() == 1 ? "the part " : "the parts ") + list_names(parts) + " at " +
                    list_nodes(design, component, which) + " are an island: nothing couples them to the source";
  diagnostic.advice = "compare the spelling of the nodes: a misspelt node name makes two nodes of one";
  diagnostics.push_back(std::move(diagnostic));
}

void check_islands(const design::Design& design, const Network& network, Diagnostics& diagnostics) {
  const std::vector<int> component = components(coupling_graph(network));
  std::set<int> said{component[network.source_node != 0 ? network.source_node : network.source_other]};
  for (std::size_t i = 1; i < design.nodes.size(); ++i)
    if (said.insert(component[i]).second) say_island(design, component, component[i], diagnostics);
}

/// The words that people write for it.
bool means_ground(std::string_view name) {
  constexpr std::array<std::string_view, 7> words{"gnd", "grd", "grnd", "earth", "chassis", "mass", "ground"};
  std::string lower(name);
  for (char& letter : lower) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return std::find(words.begin(), words.end(), lower) != words.end();
}

void check_ground(const design::Design& design, Network& network, Diagnostics& diagnostics) {
  const std::vector<int> component = components(conductor_graph(network));
  std::set<int> said{component[0]};
  if (component[network.source_node] != component[0]) {
    const std::vector<std::string> names = node_names(design, component, component[network.source_node]);
    const bool misspelt = std::any_of(names.begin(), names.end(), means_ground);
    diagnostics.push_back(
        {.code = "no-path-to-ground",
         .span = design.source.span,
         .text = "nothing joins " + list_nodes(design, component, component[network.source_node]) + " to ground",
         .expected = "at least one part with an end on `ground` on the source's side",
         .hint = misspelt ? "ground" : ""});
    return;
  }
  for (int node = 1; node < network.node_count; ++node)
    if (said.insert(component[node]).second) network.floating_reference.push_back(node);
}

/// A graph whose edges are numbered. Each part joins all its nodes, and so do two coils that share flux: current may flow from any to any.
using Numbered = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                       boost::property<boost::edge_index_t, std::size_t>>;

void join_all(const std::vector<design::NodeId>& nodes, Numbered& graph) {
  for (std::size_t i = 0; i < nodes.size(); ++i)
    for (std::size_t j = i + 1; j < nodes.size(); ++j)
      if (nodes[i] != nodes[j]) boost::add_edge(nodes[i].index, nodes[j].index, boost::num_edges(graph), graph);
}

/// A load between two nodes that hang on the rest at one node alone: what flows in must flow out, so nothing does. (Where the source
/// and the load both have an end on ground that is no matter: their way back.)
void check_ways_back(const design::Design& design, Diagnostics& diagnostics) {
  const auto on_ground = [](const auto& nodes) { return std::find(nodes.begin(), nodes.end(), design::ground) != nodes.end(); };
  const std::vector<design::NodeId> source{design.source.node, design.source.other};
  const bool all_on_ground = std::all_of(design.parts.begin(), design.parts.end(), [&](const design::Part& part) {
    return !design::is_load(part) || on_ground(part.terminals);
  });
  if (all_on_ground && on_ground(source)) return;
  Numbered graph(design.nodes.size());
  join_all(source, graph);
  std::vector<std::size_t> edge_of_load(design.parts.size(), 0);
  for (std::size_t i = 0; i < design.parts.size(); ++i) {
    edge_of_load[i] = boost::num_edges(graph);
    join_all(design.parts[i].terminals, graph);
  }
  for (const design::Coupling& coupling : design.couplings) {
    std::vector<design::NodeId> nodes = design.parts[coupling.first.index].terminals;
    const auto& others = design.parts[coupling.second.index].terminals;
    nodes.insert(nodes.end(), others.begin(), others.end());
    join_all(nodes, graph);
  }
  std::vector<std::size_t> block(boost::num_edges(graph));
  boost::biconnected_components(graph, boost::make_iterator_property_map(block.begin(), boost::get(boost::edge_index, graph)));
  for (std::size_t i = 0; i < design.parts.size(); ++i) {
    const design::Part& part = design.parts[i];
    if (!design::is_load(part) || edge_of_load[i] >= block.size() || block[edge_of_load[i]] == block[0]) continue;
    const bool misspelt = std::any_of(part.terminals.begin(), part.terminals.end(),
                                      [&](design::NodeId node) { return node != design::ground && means_ground(design.nodes[node.index].name); });
    diagnostics.push_back({.code = "unreachable-load",
                           .span = part.span,
                           .text = "no current can flow in the load " + quoted(part.name) +
                                   ": one node alone joins it to the source",
                           .expected = "a second way from it to the source, such as an end on `ground`",
                           .hint = misspelt ? "ground" : ""});
  }
}

/// Ideal transformers tie potentials together; one more between nodes already tied leaves its current undetermined.
void check_transformer_loops(const design::Design& design, const Network& network, Diagnostics& diagnostics) {
  std::vector<int> rank(network.node_count), parent(network.node_count);
  boost::disjoint_sets<int*, int*> sets(rank.data(), parent.data());
  for (int i = 0; i < network.node_count; ++i) sets.make_set(i);
  std::vector<const design::Part*> seen;
  for (const Element& element : network.elements) {
    if (element.form != Element::Form::ideal || element.node[1] != 0 || element.node[3] != 0) continue;
    const design::Part& part = design.parts[element.part.index];
    const bool to_ground = element.node[0] == 0 || element.node[2] == 0;
    if (to_ground || sets.find_set(element.node[0]) == sets.find_set(element.node[2])) {
      Diagnostic diagnostic{.code = "transformer-loop",
                            .span = part.span,
                            .text = "ideal transformers form a loop that " + quoted(part.name) +
                                    " closes: nothing determines the current in it",
                            .advice = "give one of them a `winding` resistance or `leakage`"};
      for (const design::Part* other : seen)
        diagnostic.notes.push_back({other->span, quoted(other->name) + " may be in the loop"});
      diagnostics.push_back(std::move(diagnostic));
    } else {
      sets.union_set(element.node[0], element.node[2]);
    }
    seen.push_back(&part);
  }
}

void check_one_node(const design::Design& design, const design::Part& part, Diagnostics& diagnostics) {
  const auto say = [&](design::NodeId node, const std::string& which) {
    diagnostics.push_back(
        {.code = "both-ends-on-one-node",
         .span = part.span,
         .text = which + " of " + quoted(part.name) + " are on one node, " + quoted(design.nodes[node.index].name),
         .expected = "two different nodes"});
  };
  const auto& ends = part.terminals;
  if (std::holds_alternative<design::Selector>(part.model)) {
    for (std::size_t i = 1; i < ends.size(); ++i)
      if (ends[i] == ends[0]) say(ends[0], "two ends");
    return;
  }
  if (ends[0] == ends[1]) return say(ends[0], ends.size() == 2 ? "both ends" : "both conductors of the in side");
  if (ends.size() < 4) return;
  if (ends[2] == ends[3]) return say(ends[2], "both conductors of the out side");
  if (ends[0] == ends[2] && ends[1] == ends[3]) say(ends[0], "both sides");
}

/// What stands before the last dot, with it: nodes of one box have it in common.
std::string_view box_of(std::string_view name) {
  return name.substr(0, name.rfind('.') + 1);
}

/// `n1` and `n2` are two nodes and no slip of the pen.
bool differ_in_digits_alone(std::string_view a, std::string_view b) {
  const auto is_digit = [](unsigned char c) { return std::isdigit(c) != 0; };
  std::string letters_of_a(a), letters_of_b(b);
  std::erase_if(letters_of_a, is_digit);
  std::erase_if(letters_of_b, is_digit);
  return letters_of_a == letters_of_b && a != b;
}

/// The node that was most likely meant by this one, without its box; "" where none is near. Its own part's other ends are not.
std::string nearest_node(const design::Design& design, std::size_t node, const std::vector<design::NodeId>& own) {
  const std::string_view whole = design.nodes[node].name;
  const std::string_view box = box_of(whole);
  const std::string_view name = whole.substr(box.size());
  std::vector<std::string> known;
  if (std::none_of(own.begin(), own.end(), [](design::NodeId id) { return id == design::ground; })) {
    if (means_ground(name)) return "ground";
    known.emplace_back("ground");
  }
  for (std::size_t i = 1; i < design.nodes.size(); ++i) {
    const std::string_view other = design.nodes[i].name;
    const bool beside = std::any_of(own.begin(), own.end(), [i](design::NodeId id) { return std::size_t(id.index) == i; });
    if (beside || box_of(other) != box || differ_in_digits_alone(other, whole)) continue;
    if (other.size() - box.size() > 2) known.emplace_back(other.substr(box.size()));
  }
  return name.size() > 2 ? nearest_name(name, known) : "";
}

void check_single_ends(const design::Design& design, Diagnostics& diagnostics) {
  std::vector<int> ends(design.nodes.size(), 0);
  std::vector<const design::Part*> first(design.nodes.size(), nullptr);
  ++ends[design.source.node.index];
  ++ends[design.source.other.index];
  for (const design::Part& part : design.parts)
    for (design::NodeId terminal : part.terminals) {
      ++ends[terminal.index];
      if (first[terminal.index] == nullptr) first[terminal.index] = &part;
    }
  constexpr int most_searches = 20;  // each looks at every node
  int searched = 0;
  for (std::size_t i = 1; i < design.nodes.size(); ++i) {
    if (ends[i] != 1) continue;
    const bool source = first[i] == nullptr;
    const design::Part* part = first[i];
    const std::vector<design::NodeId> own =
        source ? std::vector{design.source.node, design.source.other} : part->terminals;
    const Span word = design.nodes[i].span;
    diagnostics.push_back({.code = "single-end",
                           .span = word.source != nullptr ? word : source ? design.source.span : part->span,
                           .text = "node " + quoted(design.nodes[i].name) + " has a single end, that of " +
                                   quoted(source ? design.source.name : part->name) + ": no current can flow there",
                           .expected = "a second part at " + quoted(design.nodes[i].name),
                           .hint = searched++ < most_searches ? nearest_node(design, i, own) : "",
                           .advice = "compare the spelling of the nodes: a misspelt node name makes two nodes of one"});
  }
}

void check_short(const design::Design& design, Diagnostics& diagnostics) {
  const design::Source& source = design.source;
  if (source.node == source.other)
    diagnostics.push_back({.code = "shorted-source",
                           .span = source.span,
                           .text = "the source " + quoted(source.name) + " is shorted: both its ends are on " +
                                   quoted(design.nodes[source.node.index].name)});
  for (const design::Part& part : design.parts) {
    const auto* resistor = std::get_if<design::Resistor>(&part.model);
    if (resistor == nullptr || !resistor->ohms.constant() || resistor->ohms.constant_value() != 0.0 ||
        resistor->inductance)
      continue;
    const bool across = (part.terminals[0] == source.node && part.terminals[1] == source.other) ||
                        (part.terminals[1] == source.node && part.terminals[0] == source.other);
    if (across)
      diagnostics.push_back({.code = "shorted-source",
                             .span = part.span,
                             .text = quoted(part.name) + " of 0 ohm shorts the source " + quoted(source.name),
                             .notes = {{source.span, "the source is here"}}});
  }
}

}  // namespace

void check_ends(const design::Design& design, Diagnostics& diagnostics) {
  for (const design::Part& part : design.parts) check_one_node(design, part, diagnostics);
  check_single_ends(design, diagnostics);
  check_short(design, diagnostics);
}

void check_sections(const design::Design& design, Network& network, Diagnostics& diagnostics) {
  check_islands(design, network, diagnostics);
  if (!diagnostics.empty()) return;
  check_ground(design, network, diagnostics);
  check_ways_back(design, diagnostics);
  check_transformer_loops(design, network, diagnostics);
}

}  // namespace wattfall::graph
