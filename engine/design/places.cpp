// Places -> terminals. One-ports have two, two-ports four, selectors one and their choices.
#include "places.hpp"

namespace wattfall::design {
namespace {

using syntax::Places;
using Wanted = KindInfo::Places;

void say_wrong_places(PartJob& job) {
  const Places& places = job.text.places;
  const bool none = places.form == Places::Form::none;
  auto& wrong = job.bench.complaints.say("wrong-places", none ? job.text.name.span : places.span,
                                         none ? in_quotes(job.part.name) + " does not say where it stands"
                                              : "a " + job.kind.name + " does not stand like this");
  wrong.expected = job.kind.places_text;
  job.good = false;
  job.bench.network_broken = true;
}

/// One node or a bracketed pair; the other conductor of a single node is ground.
bool add_pair(PartJob& job, std::size_t end) {
  const auto& words = job.text.places.ends[end];
  if (words.empty() || words.size() > 2) return false;
  job.part.terminals.push_back(node_of(job.bench, job.frame, words[0]));
  job.part.terminals.push_back(words.size() == 2 ? node_of(job.bench, job.frame, words[1]) : ground);
  return true;
}

bool one_port(PartJob& job) {
  const Places& places = job.text.places;
  if (places.form == Places::Form::at) return places.ends.size() == 1 && add_pair(job, 0);
  if (places.form != Places::Form::from_to || places.ends.size() != 2) return false;
  if (places.ends[0].size() != 1 || places.ends[1].size() != 1) return false;
  for (const auto& end : places.ends) job.part.terminals.push_back(node_of(job.bench, job.frame, end[0]));
  return true;
}

bool two_port(PartJob& job) {
  const Places& places = job.text.places;
  if (places.form != Places::Form::from_to || places.ends.size() != 2) return false;
  return add_pair(job, 0) && add_pair(job, 1);
}

/// A choke's conductors are named in pairs; on one side the second may be ground.
bool node_pair(PartJob& job) {
  if (!two_port(job)) return false;
  return job.text.places.ends[0].size() == 2 || job.text.places.ends[1].size() == 2;
}

bool selector(PartJob& job) {
  const Places& places = job.text.places;
  if (places.form != Places::Form::from_to || places.ends.size() != 2) return false;
  if (places.ends[0].size() != 1 || places.ends[1].size() < 2) return false;
  for (const auto& end : places.ends)
    for (const syntax::Word& word : end) job.part.terminals.push_back(node_of(job.bench, job.frame, word));
  return true;
}

bool between(const Places& places) {
  return places.form == Places::Form::between && places.ends.size() == 2 && places.ends[0].size() == 1 &&
         places.ends[1].size() == 1;
}

}  // namespace

NodeId node_of(Bench& bench, const Frame& frame, const syntax::Word& word) {
  if (word.text == "ground") return ground;
  const auto port = frame.ports.find(word.text);
  if (port != frame.ports.end()) return port->second;
  if (word.text.find('.') != std::string_view::npos) {
    auto& wrong =
        bench.complaints.say("dotted-node", word.span, "a node inside a box cannot be joined to from outside");
    wrong.advice = "give the box a port there";
    return ground;
  }
  const std::string_view name = full_name(bench, frame, word.text);
  const auto [known, is_new] = bench.nodes.try_emplace(name, NodeId{static_cast<int>(bench.design.nodes.size())});
  if (is_new) bench.design.nodes.push_back({std::string(name), word.span});
  return known->second;
}

void read_terminals(PartJob& job) {
  bool good = true;
  switch (job.kind.places) {
    case Wanted::at:
    case Wanted::one_port:
      good = one_port(job);
      break;
    case Wanted::two_port:
      good = two_port(job);
      break;
    case Wanted::node_pair:
      good = node_pair(job);
      break;
    case Wanted::selector:
      good = selector(job);
      break;
    case Wanted::between:
      good = between(job.text.places);
      break;
    case Wanted::box:
      break;
  }
  if (!good) say_wrong_places(job);
}

std::vector<NodeId> flat_nodes(Bench& bench, const Frame& frame, const Places& places) {
  std::vector<NodeId> nodes;
  for (const auto& end : places.ends)
    for (const syntax::Word& word : end) nodes.push_back(node_of(bench, frame, word));
  return nodes;
}

}  // namespace wattfall::design
