// `limit` and `tolerance`, which every kind takes.
#include "parts/job.hpp"

namespace wattfall::design {
namespace {

std::optional<double>* limit_of(Limits& limits, Dimension dim, bool line) {
  if (line && dim == dimension::power_per_length) return &limits.watts_per_m;
  if (dim == dimension::voltage) return &limits.volts_peak;
  if (dim == dimension::current) return &limits.amps_rms;
  if (dim == dimension::power) return &limits.watts;
  return nullptr;
}

void read_limit(PartJob& job, const Given& given, std::vector<std::pair<Dimension, Span>>& before) {
  if (given.value.empty()) {
    job.bench.complaints.say("missing-value", given.span, "`limit` has no value").expected =
        "limit 1 kV, limit 5 A or limit 10 W";
    return;
  }
  const auto settled = settle(job.bench, given.value, *given.scope, Varies::no);
  if (!settled) return;
  std::optional<double>* limit = limit_of(job.part.limits, settled->dim, job.kind.name == "line" || job.kind.name == "stub");
  if (limit == nullptr) {
    auto& wrong = job.bench.complaints.say(settled->dim == dimension::number ? "missing-unit" : "wrong-dimension",
                                           syntax::span_of(given.value), "a limit is in volts, amps or watts");
    wrong.expected = "limit 1 kV, limit 5 A or limit 10 W";
    return;
  }
  for (const auto& [dim, span] : before)
    if (dim == settled->dim) {
      auto& wrong = job.bench.complaints.say("repeated-property", given.span, "this limit is given twice");
      wrong.notes.push_back({span, "given here first"});
      return;
    }
  before.emplace_back(settled->dim, given.span);
  if (!fits(job.bench, *settled, {.dim = settled->dim, .rule = rule::positive}, syntax::span_of(given.value))) return;
  *limit = settled->formula.constant.real();
  job.part.limits.span = job.part.limits.span.source == nullptr ? given.span : join(job.part.limits.span, given.span);
}

/// The dimension that an absolute tolerance must have: the main value's.
std::optional<Dimension> absolute_dimension(const PartJob& job) {
  const std::optional<Dimension> dim = job.kind.properties[0].dim;
  return dim == dimension::number ? std::nullopt : dim;
}

void read_tolerance(PartJob& job, const Given& given) {
  Tolerance tolerance;
  syntax::Phrase amount = given.value;
  if (amount.size() > 1 && amount.back().kind == syntax::Term::Kind::name && amount.back().text == "normal") {
    tolerance.normal = true;
    amount = amount.first(amount.size() - 1);
  }
  if (amount.empty()) {
    job.bench.complaints.say("missing-value", given.span, "`tolerance` has no value").expected = given.info->form;
    return;
  }
  const auto settled = settle(job.bench, amount, *given.scope, Varies::no);
  if (!settled) return;
  tolerance.relative = settled->dim == dimension::number;
  const Span span = syntax::span_of(amount);
  const Dimension due = tolerance.relative ? dimension::number : absolute_dimension(job).value_or(dimension::number);
  if (!fits(job.bench, *settled, {.dim = due, .rule = tolerance.relative ? rule::share : rule::not_negative}, span))
    return;
  tolerance.amount = settled->formula.constant.real();
  job.part.tolerance = tolerance;
}

}  // namespace

void read_ratings(PartJob& job) {
  std::vector<std::pair<Dimension, Span>> before;
  for (const Given& given : job.given.all()) {
    if (given.info->name == "limit") read_limit(job, given, before);
    if (given.info->name == "tolerance") read_tolerance(job, given);
  }
}

}  // namespace wattfall::design
