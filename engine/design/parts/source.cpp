// The source: one a design. It is no part of the network, but stands in the design by itself.
#include "parts/job.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Term;

bool read_foldback_entry(PartJob& job, const Phrase& entry, Scope& scope, Source& source) {
  if (entry.size() != 1 || entry[0].kind != Term::Kind::pair) {
    job.bench.complaints.say("bad-table", syntax::span_of(entry), "this is no entry of a table").expected =
        "SWR: share of the power";
    return false;
  }
  const auto swr = number_of(job.bench, entry[0].operands.first(1), scope, dimension::number, rule::swr);
  const auto share = number_of(job.bench, entry[0].operands.from(1), scope, dimension::number, rule::share);
  if (!swr || !share) return false;
  if (!source.foldback.empty() && *swr <= source.foldback.back().first) {
    job.bench.complaints.say("falling-table", entry[0].operands[0].span, "the keys of a table rise, and this does not");
    return false;
  }
  source.foldback.emplace_back(*swr, *share);
  return true;
}

void read_foldback(PartJob& job, Source& source) {
  const Given* given = job.given.find("foldback");
  if (given == nullptr) return;
  if (!is_list(given->value) || given->value[0].phrases.empty()) {
    job.bench.complaints.say("bad-table", given->span, "this is no table").expected = "foldback [1.5: 100 %, 3: 25 %]";
    return;
  }
  for (const Phrase& entry : given->value[0].phrases) read_foldback_entry(job, entry, *given->scope, source);
}

bool is_the_only_one(PartJob& job) {
  Bench& bench = job.bench;
  if (!bench.source_seen) return bench.source_seen = true;
  auto& wrong =
      bench.complaints.say("second-source", job.text.name.span, "a design has one source, and this is its second");
  wrong.notes.push_back({bench.design.source.span, "the first source"});
  return false;
}

}  // namespace

void build_source(PartJob& job) {
  if (!is_the_only_one(job)) return;
  Source source;
  source.name = job.part.name;
  source.span = job.part.span;
  if (job.part.terminals.size() == 2) {
    source.node = job.part.terminals[0];
    source.other = job.part.terminals[1];
  }
  if (job.given.find("power") == nullptr)
    say_missing(job, "power", "100 W, or 50 dBm");
  else
    source.available_w =
        optional_value(job, "power", {.dim = dimension::power, .rule = rule::positive}).value_or(Value());
  constexpr Due impedance{.dim = dimension::resistance, .rule = rule::positive_resistance, .complex = true};
  if (const auto own = optional_value(job, "impedance", impedance)) source.impedance_ohm = *own;
  source.reference_ohm = optional_value(job, "reference", impedance);
  if (const Given* duty = job.given.find("duty"))
    source.duty = number_of(job.bench, duty->value, *duty->scope, dimension::number, rule::share).value_or(1.0);
  read_foldback(job, source);
  job.bench.design.source = std::move(source);
}

}  // namespace wattfall::design
