// Pads, chokes, selectors, couplings, and the kinds that plugins bring.
#include <algorithm>

#include "parts/job.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Term;

constexpr Due choke_due{.dim = dimension::resistance, .rule = rule::passive, .complex = true};

/// The number of the node that a selector stands on.
std::optional<double> choice_of(PartJob& job, const Given& given) {
  const auto& choices = job.text.places.ends[1];
  const bool one_word = given.value.size() == 1 && given.value[0].kind == Term::Kind::name;
  if (one_word)
    for (std::size_t i = 0; i < choices.size(); ++i)
      if (choices[i].text == given.value[0].text) return static_cast<double>(i);
  std::vector<std::string> names;
  for (const syntax::Word& choice : choices) names.emplace_back(choice.text);
  auto& wrong = job.bench.complaints.say("unknown-node", given.span, "the selector cannot be joined to this");
  if (one_word) wrong.hint = job.bench.complaints.nearest(given.value[0].text, [&] { return names; });
  for (const std::string& name : names) wrong.expected += (wrong.expected.empty() ? "" : ", ") + name;
  return std::nullopt;
}

Value knob_of_selector(PartJob& job, std::optional<double> start, Span span) {
  Knob knob;
  knob.name = job.part.name;
  knob.start = start;
  knob.span = span;
  for (std::size_t i = 0; i + 1 < job.part.terminals.size(); ++i) knob.choices.push_back(static_cast<double>(i));
  knob.upper = knob.choices.back();
  if (!start && job.bench.options.as_written) {
    job.bench.complaints.say("unset-knob", span,
                             in_quotes(knob.name) + " has no value of its own to be taken as written");
    job.good = false;
  }
  const KnobId id{static_cast<int>(job.bench.design.knobs.size())};
  job.bench.design.knobs.push_back(std::move(knob));
  job.bench.part_knobs[job.name] = id;
  return to_value(settled_knob(id, dimension::number));
}

std::optional<syntax::Loose<Phrase>> fallback_of(Bench& bench, const PropertyInfo& info, SourcePtr& source) {
  source = std::make_shared<const wattfall::Source>("default of " + info.name, info.fallback);
  auto parsed = parse_phrase(source);
  if (parsed.ok()) return parsed.value;
  bench.complaints.keep(source);
  bench.complaints.pass_on(std::move(parsed.diagnostics));
  return std::nullopt;
}

std::optional<Value> plugin_value(PartJob& job, const PropertyInfo& info) {
  const Due due{.dim = info.dim.value_or(dimension::number), .complex = true};
  if (info.main && (job.given.find("adjustable") != nullptr || info.fallback.empty()))
    return main_value(job, info.name.c_str(), due);
  if (job.given.find(info.name) != nullptr) return optional_value(job, info.name.c_str(), due);
  if (info.fallback.empty()) {
    say_missing(job, in_quotes(info.name), info.name + " " + info.form);
    return std::nullopt;
  }
  SourcePtr source;
  const auto fallback = fallback_of(job.bench, info, source);
  if (!fallback) return std::nullopt;
  return value_of(job.bench, fallback->what, job.bench.file_frame.scope, due);
}

}  // namespace

std::optional<Model> build_pad(PartJob& job) {
  Pad pad;
  pad.attenuation_db =
      main_value(job, "attenuation", {.dim = dimension::level, .rule = rule::not_negative}).value_or(Value());
  pad.impedance_ohm =
      optional_value(job, "impedance", {.dim = dimension::resistance, .rule = rule::positive}).value_or(Value(50.0));
  return pad;
}

std::optional<Model> build_choke(PartJob& job) {
  Choke choke;
  if (const Given* core = job.given.find("core")) {
    choke.core = core_of(job, *core, CoreUse::choke);
    return choke;
  }
  const Given* impedance = job.given.find("impedance");
  const Given* table = job.given.find("table");
  if (impedance == nullptr && table == nullptr) {
    say_missing(job, "common-mode impedance", "a value, such as 2000+j3000 ohm, or table [f: z, ...]");
  } else if (table != nullptr || is_list(impedance->value)) {
    const Given& given = table != nullptr ? *table : *impedance;
    choke.table = table_of(job, given.value, *given.scope, choke_due, "this table");
  } else {
    choke.impedance_ohm = optional_value(job, "impedance", choke_due).value_or(Value());
  }
  return choke;
}

std::optional<Model> build_selector(PartJob& job) {
  if (job.part.terminals.size() < 3) return std::nullopt;
  const Given* choice = job.given.find("choice");
  const Given* adjustable = job.given.find("adjustable");
  if (choice == nullptr && adjustable == nullptr) {
    say_missing(job, "choice", "the node that it stands on");
    return std::nullopt;
  }
  if (adjustable != nullptr && !adjustable->value.empty()) {
    job.bench.complaints.say("unexpected-words", syntax::span_of(adjustable->value),
                             "a selector's `adjustable` takes no value: it has its nodes to choose from");
    job.good = false;
  }
  std::optional<double> start;
  if (choice != nullptr) {
    start = choice_of(job, *choice);
    job.good = job.good && start;
  }
  if (!job.good) return std::nullopt;
  if (adjustable == nullptr) return Selector{Value(*start)};
  return Selector{knob_of_selector(job, start, adjustable->span)};
}

void build_coupling(PartJob& job) {
  const auto& ends = job.text.places.ends;
  const auto factor = main_value(job, "factor", {.dim = dimension::number, .rule = rule::coupling});
  if (job.text.places.form != syntax::Places::Form::between || ends.size() != 2 || ends[0].size() != 1 ||
      ends[1].size() != 1)
    return;
  PendingCoupling pending;
  pending.coupling.name = job.part.name;
  pending.coupling.factor = factor.value_or(Value());
  pending.coupling.span = job.part.span;
  pending.first = full_name(job.bench, job.frame, ends[0][0].text);
  pending.second = full_name(job.bench, job.frame, ends[1][0].text);
  pending.first_span = ends[0][0].span;
  pending.second_span = ends[1][0].span;
  job.bench.pending_couplings.push_back(std::move(pending));
}

std::optional<Model> build_plugin_part(PartJob& job) {
  PluginPart part;
  part.kind = job.kind.plugin_kind;
  for (std::size_t i = 0; i < part.kind->property_count; ++i)
    part.values.push_back(plugin_value(job, job.kind.properties[i]).value_or(Value()));
  return part;
}

}  // namespace wattfall::design
