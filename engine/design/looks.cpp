// A place to look both ways from: a node, and the part that begins the load's side of it. Where two parts meet, that is
// the one which power cannot reach but through the node; where more meet, the text has to say.
#include <algorithm>

#include "figures.hpp"

namespace wattfall::design {
namespace {

using syntax::Word;

std::optional<NodeId> find_node(Bench& bench, const Word& word) {
  if (word.text == "ground") {
    bench.complaints.say("unknown-node", word.span, "nothing can be looked at from ground").expected =
        "a node above ground";
    return std::nullopt;
  }
  const auto known = bench.nodes.find(word.text);
  if (known != bench.nodes.end()) return known->second;
  const auto box = bench.names.find(word.text.substr(0, word.text.find('.')));
  if (bench.network_broken && box != bench.names.end() && box->second.broken) return std::nullopt;
  auto& wrong = bench.complaints.say("unknown-node", word.span, "there is no node " + in_quotes(word.text));
  wrong.expected = "a node that a part stands at";
  wrong.hint = bench.complaints.nearest(word.text, [&] { return keys_of(bench.nodes); });
  return std::nullopt;
}

bool in_box(const Design& design, const Part& part, BoxId box) {
  for (BoxId at = part.box; at; at = design.boxes[at.index].parent)
    if (at == box) return true;
  return false;
}

std::vector<std::string> names_of(const Design& design, std::span<const PartId> parts) {
  std::vector<std::string> names;
  for (const PartId part : parts) names.push_back(design.parts[part.index].name);
  return names;
}

std::string list_of(const Design& design, std::span<const PartId> parts) {
  std::string text;
  for (const PartId part : parts) {
    if (text.size() > 200) return text + ", ...";
    text += (text.empty() ? "" : ", ") + design.parts[part.index].name;
  }
  return text;
}

std::optional<Look> say_candidates(Bench& bench, NodeId node, std::span<const PartId> parts, Span span,
                                   std::string text) {
  if (bench.network_broken) return std::nullopt;
  auto& wrong = bench.complaints.say("ambiguous-look", span, std::move(text));
  wrong.expected = "`into` and one of " + list_of(bench.design, parts);
  for (std::size_t i = 0; i < std::min<std::size_t>(parts.size(), 8); ++i)
    wrong.notes.push_back(
        {bench.design.parts[parts[i].index].span, in_quotes(bench.design.parts[parts[i].index].name) + " stands at " +
                                                      in_quotes(bench.design.nodes[node.index].name)});
  return std::nullopt;
}

/// Of a box, its one part at the node.
std::optional<Look> look_into_box(Bench& bench, std::span<const PartId> here, NodeId node, const Word& into,
                                  BoxId box) {
  std::vector<PartId> inside;
  for (const PartId part : here)
    if (in_box(bench.design, bench.design.parts[part.index], box)) inside.push_back(part);
  if (inside.size() == 1) return Look{node, inside[0]};
  if (!inside.empty())
    return say_candidates(bench, node, inside, into.span,
                          "several parts of " + in_quotes(into.text) + " stand at this node");
  return say_candidates(bench, node, here, into.span,
                        in_quotes(into.text) + " does not stand at " + in_quotes(bench.design.nodes[node.index].name));
}

std::optional<Look> look_into(Bench& bench, std::span<const PartId> here, NodeId node, const Word& into) {
  const auto named = bench.names.find(into.text);
  if (named == bench.names.end()) {
    if (bench.network_broken) return std::nullopt;
    auto& wrong = bench.complaints.say("unknown-part", into.span, "there is no part " + in_quotes(into.text));
    wrong.expected = "one of " + list_of(bench.design, here);
    wrong.hint = bench.complaints.nearest(into.text, [&] { return names_of(bench.design, here); });
    return std::nullopt;
  }
  if (named->second.what == Named::What::box && !named->second.broken)
    return look_into_box(bench, here, node, into, BoxId{named->second.index});
  const PartId part{named->second.index};
  if (named->second.what == Named::What::part && std::find(here.begin(), here.end(), part) != here.end())
    return Look{node, part};
  if (named->second.broken) return std::nullopt;
  return say_candidates(bench, node, here, into.span,
                        in_quotes(into.text) + " does not stand at " + in_quotes(bench.design.nodes[node.index].name));
}

}  // namespace

std::optional<Look> settle_look(Bench& bench, const Adjacency& adjacency, const Word& node_word, const Word& into) {
  const auto node = find_node(bench, node_word);
  if (!node) return std::nullopt;
  const Design& design = bench.design;
  const std::span<const PartId> here = adjacency.parts_at(*node);
  if (into) return look_into(bench, here, *node, into);
  if (here.size() == 1) return Look{*node, here[0]};
  if (*node == design.source.node || *node == design.source.other) return Look{*node, PartId{}};
  if (here.size() == 2) {
    const auto reached = adjacency.reached_before(design, *node);
    const bool first = reached[here[0].index], second = reached[here[1].index];
    if (first != second) return Look{*node, first ? here[1] : here[0]};
    return say_candidates(
        bench, *node, here, node_word.span,
        "which of the two parts at " + in_quotes(node_word.text) + " is the load's side cannot be told");
  }
  return say_candidates(
      bench, *node, here, node_word.span,
      std::to_string(here.size()) + " parts meet at " + in_quotes(node_word.text) + ": say into which to look");
}

}  // namespace wattfall::design
