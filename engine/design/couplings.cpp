// Couplings name coils that may come later in the text, so they are joined once all parts stand.
#include <algorithm>
#include <map>

#include "place_parts.hpp"

namespace wattfall::design {
namespace {

std::vector<std::string> coils_of(const Design& design) {
  std::vector<std::string> coils;
  for (const Part& part : design.parts)
    if (std::holds_alternative<Inductor>(part.model)) coils.push_back(part.name);
  return coils;
}

std::optional<PartId> find_coil(Bench& bench, std::string_view name, Span span) {
  const auto known = bench.names.find(name);
  if (known == bench.names.end()) {
    const auto head = bench.names.find(name.substr(0, name.find('.')));
    if (head != bench.names.end() && head->second.broken) return std::nullopt;
    auto& wrong = bench.complaints.say("unknown-part", span, "there is no coil " + in_quotes(name));
    wrong.expected = "the names of two inductors";
    wrong.hint = bench.complaints.nearest(name, [&] { return coils_of(bench.design); });
    return std::nullopt;
  }
  if (known->second.broken) return std::nullopt;
  const PartId part{known->second.index};
  if (known->second.what == Named::What::part && std::holds_alternative<Inductor>(bench.design.parts[part.index].model))
    return part;
  auto& wrong =
      bench.complaints.say("wrong-kind", span, in_quotes(name) + " is no inductor, and a coupling is between two");
  wrong.notes.push_back({known->second.span, "it stands here"});
  return std::nullopt;
}

/// A pair of coils is one two-port: a third coil on the same flux has no element to stand in.
bool stands_in_another(Bench& bench, PartId coil, Span span) {
  for (const Coupling& coupling : bench.design.couplings) {
    if (coupling.first != coil && coupling.second != coil) continue;
    auto& wrong = bench.complaints.say("coupled-twice", span, in_quotes(bench.design.parts[coil.index].name) + " is coupled to another coil already");
    wrong.expected = "couplings in pairs: this version has no three coils on one flux";
    wrong.notes.push_back({coupling.span, "coupled here"});
    return true;
  }
  return false;
}

}  // namespace

void join_couplings(Bench& bench) {
  std::map<std::pair<int, int>, Span> pairs;
  for (PendingCoupling& pending : bench.pending_couplings) {
    const auto first = find_coil(bench, pending.first, pending.first_span);
    const auto second = find_coil(bench, pending.second, pending.second_span);
    if (!first || !second) continue;
    if (*first == *second) {
      bench.complaints.say("wrong-kind", pending.second_span, "a coil cannot be coupled to itself");
      continue;
    }
    const auto [known, is_new] = pairs.try_emplace(std::minmax(first->index, second->index), pending.coupling.span);
    if (!is_new) {
      auto& wrong =
          bench.complaints.say("repeated-coupling", pending.coupling.span, "these two coils are coupled already");
      wrong.notes.push_back({known->second, "the first coupling"});
      continue;
    }
    if (stands_in_another(bench, *first, pending.first_span) || stands_in_another(bench, *second, pending.second_span)) continue;
    pending.coupling.first = *first;
    pending.coupling.second = *second;
    bench.names[pending.coupling.name].index = static_cast<int>(bench.design.couplings.size());
    bench.design.couplings.push_back(std::move(pending.coupling));
  }
}

}  // namespace wattfall::design
