// Transformers: `turns 1:3` or `impedance 1:9`, from side : to side, with the losses of the from side.
#include <cmath>

#include "parts/job.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Term;

/// To side over from side.
std::optional<double> ratio_of(PartJob& job, const Phrase& phrase, Scope& scope) {
  if (phrase.size() != 1 || phrase[0].kind != Term::Kind::pair) {
    job.bench.complaints
        .say("bad-ratio", phrase.empty() ? job.text.name.span : syntax::span_of(phrase), "this is no ratio")
        .expected = "from side : to side, such as 1:4";
    return std::nullopt;
  }
  const auto from = number_of(job.bench, phrase[0].operands.first(1), scope, dimension::number, rule::positive);
  const auto to = number_of(job.bench, phrase[0].operands.from(1), scope, dimension::number, rule::positive);
  if (!from || !to) return std::nullopt;
  return *to / *from;
}

const Given* ratio_given(PartJob& job) {
  const Given* turns = job.given.find("turns");
  return turns != nullptr ? turns : job.given.find("impedance");
}

/// The main value is a ratio of turns; `impedance 1:9` is one of 1:3.
std::optional<Value> ratio(PartJob& job) {
  const Given* given = ratio_given(job);
  if (given == nullptr && job.given.find("adjustable") == nullptr) {
    say_missing(job, "ratio", "`turns 1:3` or `impedance 1:9`");
    return std::nullopt;
  }
  if (given != nullptr && !given->named) {
    auto& wrong = job.bench.complaints.say("value-without-name", given->span,
                                           "this does not say whether it is a ratio of turns or of impedances");
    wrong.expected = "`turns` or `impedance` before it";
    job.good = false;
    return std::nullopt;
  }
  const bool of_impedances = given != nullptr && given->info->name == "impedance";
  const auto read = [&, of_impedances](const Phrase& phrase, Scope& scope) -> std::optional<double> {
    const auto plain = ratio_of(job, phrase, scope);
    if (!plain) return std::nullopt;
    return of_impedances ? std::sqrt(*plain) : *plain;
  };
  const Given* adjustable = job.given.find("adjustable");
  return main_value(
      job, given, dimension::number, [&](const Phrase& phrase) { return read(phrase, *adjustable->scope); },
      [&](const Given& one) -> std::optional<Value> {
        const auto number = read(one.value, *one.scope);
        if (!number) return std::nullopt;
        return Value(*number);
      });
}

/// The from side's turns, where the ratio is one of turns and fixed.
std::optional<double> from_turns(PartJob& job) {
  const Given* turns = job.given.find("turns");
  if (turns == nullptr || turns->value.size() != 1 || turns->value[0].kind != Term::Kind::pair) return std::nullopt;
  return number_of(job.bench, turns->value[0].operands.first(1), *turns->scope, dimension::number, rule::positive);
}

/// `core(outer .., ...)`: magnetizing inductance and core loss by the core and its turns, and the wire's loss.
void read_wound(PartJob& job, const Given& core, Transformer& transformer) {
  for (const char* property : {"magnetizing", "core Q", "adjustable"})
    if (const Given* other = job.given.find(property)) {
      auto& wrong = job.bench.complaints.say("contradictory-properties", other->span,
                                             in_quotes(property) + " does not go with a core by its size");
      wrong.notes.push_back({core.span, "the core is given here"});
      job.good = false;
    }
  if (job.good) transformer.wound = core_of(job, core, CoreUse::transformer, from_turns(job));
}

}  // namespace

std::optional<Model> build_transformer(PartJob& job) {
  Transformer transformer;
  transformer.ratio = ratio(job).value_or(Value(1.0));
  transformer.winding_ohms = optional_value(job, "winding", {.dim = dimension::resistance, .rule = rule::not_negative});
  transformer.leakage_henries =
      optional_value(job, "leakage", {.dim = dimension::inductance, .rule = rule::not_negative});
  transformer.magnetizing_henries =
      optional_value(job, "magnetizing", {.dim = dimension::inductance, .rule = rule::positive});
  const Given* core = job.given.find("core");
  if (core != nullptr && is_group(*core))
    read_wound(job, *core, transformer);
  else
    transformer.core_ohms = optional_value(job, "core", {.dim = dimension::resistance, .rule = rule::positive});
  transformer.core_q = optional_value(job, "core Q", {.dim = dimension::number, .rule = rule::positive});
  const Given* core_q = job.given.find("core Q");
  if (core_q != nullptr && job.given.find("magnetizing") == nullptr) {
    job.bench.complaints
        .say("missing-value", core_q->span, "`core Q` is that of the magnetizing inductance, which is not given")
        .expected = "`magnetizing`, such as magnetizing 20 uH";
    job.good = false;
  }
  return transformer;
}

}  // namespace wattfall::design
