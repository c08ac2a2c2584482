// Couplings name coils that may come later in the text, so they are joined once all parts stand.
#include <algorithm>
#include <map>

#include "design/coupled_sets.hpp"
#include "physics/coupling.hpp"
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

/// Three coils and more on one flux: what the network is made of then must stand.
bool stands(const Bench& bench, const CoupledSet& set) {
  for (const int c : set.couplings)
    if (!bench.design.couplings[c].factor.constant()) return false;
  if (on_one_core(bench.design, set)) return true;
  for (const PartId id : set.coils) {
    const auto& coil = std::get<Inductor>(bench.design.parts[id.index].model);
    if (coil.core != nullptr || (coil.wound == nullptr && !coil.henries.constant())) return false;
  }
  return true;
}

void check_set(Bench& bench, const CoupledSet& set) {
  if (set.coils.size() < 3) return;
  const Coupling& last = bench.design.couplings[set.couplings.back()];
  if (!stands(bench, set)) {
    bench.complaints.say("coupled-set", last.span, "three coils and more on one flux stand: this version turns and varies pairs alone").expected =
        "fixed factors, and coils of fixed inductance, or all on one core";
    return;
  }
  const physics::CouplingCheck check = physics::check_couplings(static_cast<int>(set.coils.size()), set.factors);
  // A coil that others hold in full has nothing of its own to stand on: a millionth of its flux must be free.
  if (check.validity.possible() && check.smallest_pivot > 1e-6) return;
  const std::string& coil = bench.design.parts[set.coils[check.coil].index].name;
  auto& wrong = bench.complaints.say("impossible-couplings", last.span,
                                     "these factors cannot stand together: the coils before it hold more than all of the flux of " + in_quotes(coil));
  wrong.expected = "factors whose matrix is positive definite (ones on its diagonal); its pivot for " + in_quotes(coil) + " is " +
                   spell({check.smallest_pivot, dimension::number});
  for (const int c : set.couplings)
    if (c != set.couplings.back()) wrong.notes.push_back({bench.design.couplings[c].span, "coupled here"});
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
    pending.coupling.first = *first;
    pending.coupling.second = *second;
    bench.names[pending.coupling.name].index = static_cast<int>(bench.design.couplings.size());
    bench.design.couplings.push_back(std::move(pending.coupling));
  }
  for (const CoupledSet& set : coupled_sets(bench.design)) check_set(bench, set);
}

}  // namespace wattfall::design
