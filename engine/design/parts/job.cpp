// The readers that the builders of parts share.
#include "parts/job.hpp"

#include "files.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

std::optional<Value> knob_value(PartJob& job, const Given& adjustable, Dimension dim, const Reader& read,
                                std::optional<double> start, Span start_span) {
  KnobRequest request{.name = job.part.name,
                      .dim = dim,
                      .range = adjustable.value,
                      .span = adjustable.span,
                      .scope = adjustable.scope,
                      .read = read,
                      .start = start,
                      .start_span = start_span};
  const auto knob = make_knob(job.bench, request);
  if (!knob) {
    job.good = false;
    return std::nullopt;
  }
  job.bench.part_knobs[job.name] = *knob;
  return to_value(settled_knob(*knob, dim));
}

}  // namespace

void say_missing(PartJob& job, const std::string& what, const std::string& expected) {
  job.good = false;
  if (!job.given.complete()) return;
  auto& wrong =
      job.bench.complaints.say("missing-value", job.text.name.span, in_quotes(job.part.name) + " has no " + what);
  wrong.expected = expected;
}

std::optional<Value> optional_value(PartJob& job, const char* property, const Due& due) {
  const Given* given = job.given.find(property);
  if (given == nullptr) return std::nullopt;
  if (given->value.empty()) {
    job.good = false;
    job.bench.complaints.say("missing-value", given->span, in_quotes(property) + " has no value").expected =
        given->info->form;
    return std::nullopt;
  }
  auto value = value_of(job.bench, given->value, *given->scope, due);
  job.good = job.good && value.has_value();
  return value;
}

std::optional<Value> main_value(PartJob& job, const Given* main, Dimension dim, const Reader& read,
                                const std::function<std::optional<Value>(const Given&)>& as_written) {
  const Given* adjustable = job.given.find("adjustable");
  if (main != nullptr && main->value.empty()) main = nullptr;
  std::optional<Value> value;
  if (main != nullptr) {
    value = as_written(*main);
    job.good = job.good && value.has_value();
    if (adjustable == nullptr || !value) return value;
    if (!value->constant()) {
      job.bench.complaints.say("varying-value", main->span,
                               "a start that is to be adjusted does not depend on anything else");
      job.good = false;
      return std::nullopt;
    }
  }
  if (adjustable == nullptr) return std::nullopt;
  std::optional<double> start;
  if (value) start = value->constant_value().real();
  return knob_value(job, *adjustable, dim, read, start, main == nullptr ? Span{} : main->span);
}

std::optional<Value> main_value(PartJob& job, const char* property, const Due& due) {
  const Given* main = job.given.find(property);
  const Given* adjustable = job.given.find("adjustable");
  if (main == nullptr && adjustable == nullptr) {
    say_missing(job, property, in_quotes(property) + ", such as " + job.kind.properties[0].form);
    return std::nullopt;
  }
  if (adjustable == nullptr && !main->value.empty()) {
    auto value = value_of(job.bench, main->value, *main->scope, due);
    job.good = job.good && value.has_value();
    return value;
  }
  const Rule ends = due.rule.holds == rule::positive.holds ? rule::not_negative : due.rule;
  const Reader read = [&](const Phrase& phrase) {
    return number_of(job.bench, phrase, *adjustable->scope, due.dim, ends);
  };
  return main_value(job, main, due.dim, read,
                    [&](const Given& given) { return value_of(job.bench, given.value, *given.scope, due); });
}

SeriesLoss series_loss(PartJob& job) {
  SeriesLoss loss;
  if (job.given.find("resistance") != nullptr) {
    loss.form = SeriesLoss::Form::resistance;
    loss.value =
        optional_value(job, "resistance", {.dim = dimension::resistance, .rule = rule::not_negative}).value_or(Value());
    return loss;
  }
  const Given* q = job.given.find("Q");
  if (q == nullptr) return loss;
  const auto split = split_at_word(job.bench, q->value, "at");
  if (!split) {
    loss.form = SeriesLoss::Form::q;
    loss.value = optional_value(job, "Q", {.dim = dimension::number, .rule = rule::positive}).value_or(Value());
    return loss;
  }
  loss.form = SeriesLoss::Form::q_at;
  const auto value = value_of(job.bench, split->before, *q->scope, {.dim = dimension::number, .rule = rule::positive});
  const auto at_hz = frequency_of(job.bench, split->after, *q->scope);
  job.good = job.good && value && at_hz;
  loss.value = value.value_or(Value());
  loss.at_hz = Value(at_hz.value_or(0.0));
  return loss;
}

std::optional<Table> table_of(PartJob& job, const Phrase& phrase, Scope& scope, const Due& due,
                              const std::string& what) {
  Bench& bench = job.bench;
  Table table;
  bool good = is_list(phrase) && !phrase[0].phrases.empty();
  if (!good) {
    bench.complaints.say("bad-table", phrase.empty() ? job.text.name.span : syntax::span_of(phrase), "this is no table")
        .expected = "[f: value, f: value, ...]";
    job.good = false;
    return std::nullopt;
  }
  for (const Phrase& entry : phrase[0].phrases) {
    if (entry.size() != 1 || entry[0].kind != syntax::Term::Kind::pair) {
      bench.complaints.say("bad-table", syntax::span_of(entry), "this is no entry of a table").expected = "f: value";
      good = false;
      continue;
    }
    const auto f = frequency_of(bench, entry[0].operands.first(1), scope);
    const auto value = complex_number_of(bench, entry[0].operands.from(1), scope, due);
    good = good && f && value;
    if (!f || !value) continue;
    if (!table.frequencies_hz.empty() && *f <= table.frequencies_hz.back()) {
      bench.complaints.say("falling-table", entry[0].operands[0].span, "the keys of a table rise, and this does not");
      good = false;
    }
    table.frequencies_hz.push_back(*f);
    table.values.push_back(*value);
  }
  job.good = job.good && good;
  if (!good) return std::nullopt;
  bench.data_ranges.push_back(
      {what, table.frequencies_hz.front(), table.frequencies_hz.back(), syntax::span_of(phrase)});
  return table;
}

}  // namespace wattfall::design
