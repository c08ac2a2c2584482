// Knobs: `adjustable A to B`, `A to B step S`, `[v1, v2]`, `series(E24, from A, to B)` with `pairs` or without,
// `relays(8, smallest x)`.
#include "adjust.hpp"

#include <algorithm>
#include <cmath>

#include "grammar/nearest_name.hpp"
#include "preferred.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

constexpr std::size_t most_choices = 100'000;
constexpr int most_relays = 16;

struct Range {
  double lower = 0.0, upper = 0.0;
  std::vector<double> choices;
  std::optional<double> step = {};
  std::vector<Made> made = {};
};

std::optional<Range> say_bad_range(Bench& bench, Span span) {
  auto& wrong = bench.complaints.say("bad-adjustable", span, "this does not say how far it can be adjusted");
  wrong.expected =
      "adjustable A to B, adjustable A to B step S, adjustable [v1, v2, ...], adjustable series(E24, from A, to B), "
      "adjustable series(E24, from A, to B, pairs), or adjustable relays(8, smallest x)";
  return std::nullopt;
}

/// The same, where it is clear which form was begun.
std::optional<Range> say_bad_form(Bench& bench, Span span, const char* form, std::string hint = {}) {
  auto& wrong = bench.complaints.say("bad-adjustable", span, "this does not say how far it can be adjusted");
  wrong.expected = form;
  wrong.hint = std::move(hint);
  return std::nullopt;
}

constexpr const char* series_form = "adjustable series(E24, from A, to B), with `pairs` behind it for two parts in series or side by side";
constexpr const char* relays_form = "adjustable relays(8, smallest x)";

/// `1 uH - 2 uH`, `relay(8, ...)`, `1 uH and 2 uH`.
std::optional<Range> say_no_range(Bench& bench, const Phrase& range, Span span) {
  if (range.size() != 1) return say_bad_range(bench, span);
  const syntax::Term& only = range[0];
  if (only.kind == syntax::Term::Kind::binary && only.text == "-") {
    const std::string from(only.operands[0].span.text()), to(only.operands[1].span.text());
    return say_bad_form(bench, span, "adjustable A to B", from + " to " + to);
  }
  if (only.kind != syntax::Term::Kind::call) return say_bad_range(bench, span);
  const std::string near = nearest_name(only.text, {"series", "relays"});
  if (near.empty()) return say_bad_range(bench, span);
  return say_bad_form(bench, leading_span(range), near == "series" ? series_form : relays_form, near);
}

std::optional<Range> from_choices(Bench& bench, std::vector<double> choices, Span span) {
  std::sort(choices.begin(), choices.end());
  if (std::adjacent_find(choices.begin(), choices.end()) != choices.end()) {
    bench.complaints.say("repeated-choice", span, "a value stands twice in this list");
    return std::nullopt;
  }
  if (choices.size() < 2) {
    bench.complaints.say("empty-range", span, "there is nothing to choose from here");
    return std::nullopt;
  }
  return Range{choices.front(), choices.back(), std::move(choices)};
}

std::optional<Range> from_list(Bench& bench, const KnobRequest& request, Span span) {
  std::vector<double> choices;
  bool good = true;
  for (const Phrase& entry : request.range[0].phrases) {
    const auto value = request.read(entry);
    good = good && value.has_value();
    if (value) choices.push_back(*value);
  }
  if (!good) return std::nullopt;
  return from_choices(bench, std::move(choices), span);
}

/// What follows `word` in a call's argument.
std::optional<Phrase> argument(Bench& bench, syntax::List<Phrase> arguments, std::size_t at, const char* word) {
  if (at >= arguments.size()) return std::nullopt;
  return rest_after(arguments[at], word, bench.storage);
}

/// `pairs`, `series pairs` or `parallel pairs`.
std::optional<Joined> joined_by(const Phrase& phrase) {
  if (phrase.size() == 1 && leading_word(phrase) == "pairs") return Joined{};
  if (phrase.size() != 2 || phrase[1].text != "pairs") return std::nullopt;
  const std::string_view way = leading_word(phrase);
  if (way == "series") return Joined{true, false};
  if (way == "parallel") return Joined{false, true};
  return std::nullopt;
}

std::optional<Range> from_pairs(Bench& bench, const KnobRequest& request, const std::vector<double>& singles,
                                const Phrase& phrase) {
  const Span span = syntax::span_of(phrase);
  const auto joined = joined_by(phrase);
  if (!joined) {
    bench.complaints.say("bad-adjustable", span, "this does not say how two parts may be joined").expected =
        "pairs, series pairs, or parallel pairs";
    return std::nullopt;
  }
  if (request.dim != dimension::capacitance && request.dim != dimension::inductance &&
      request.dim != dimension::resistance) {
    auto& wrong =
        bench.complaints.say("bad-adjustable", span, "only coils, capacitors and resistors are made of pairs");
    wrong.advice = "leave `" + std::string(leading_word(phrase)) + (phrase.size() > 1 ? " pairs" : "") + "` out";
    return std::nullopt;
  }
  if (pair_count(singles.size(), *joined) > most_choices) {
    auto& wrong = bench.complaints.say("too-many-steps", span,
                                       std::to_string(singles.size()) + " preferred values make " +
                                           std::to_string(pair_count(singles.size(), *joined)) +
                                           " pairs; a knob may have 100000 choices at most");
    wrong.advice = "take a coarser series or a smaller range, or ask for `series pairs` or `parallel pairs` alone";
    return std::nullopt;
  }
  Range range;
  for (const MadeValue& one : preferred_pairs(singles, *joined, request.dim != dimension::capacitance)) {
    range.choices.push_back(one.value);
    range.made.push_back(one.made);
  }
  if (range.choices.size() < 2) return from_choices(bench, std::move(range.choices), syntax::span_of(request.range));
  range.lower = range.choices.front();
  range.upper = range.choices.back();
  return range;
}

std::optional<Range> from_series(Bench& bench, const KnobRequest& request, Span span) {
  const syntax::List<Phrase> arguments = request.range[0].phrases;
  const auto from = argument(bench, arguments, 1, "from"), to = argument(bench, arguments, 2, "to");
  if (arguments.size() < 3 || arguments.size() > 4 || !from || !to) return say_bad_form(bench, span, series_form);
  const std::string series(leading_word(arguments[0]));
  if (preferred_decade(series).empty()) {
    auto& wrong = bench.complaints.say("unknown-series", syntax::span_of(arguments[0]),
                                       "there is no such series of preferred values");
    wrong.expected = "E3, E6, E12, E24, E48, E96 or E192";
    return std::nullopt;
  }
  const auto lower = request.read(*from), upper = request.read(*to);
  if (!lower || !upper || !rising(bench, *lower, *upper, request.dim, span)) return std::nullopt;
  if (!(*lower > 0.0)) {
    bench.complaints.say("value-out-of-range", syntax::span_of(*from),
                         "a series of preferred values begins above zero");
    return std::nullopt;
  }
  std::vector<double> values = preferred_values(series, *lower, *upper, most_choices);
  if (arguments.size() == 4) return from_pairs(bench, request, values, arguments[3]);
  return from_choices(bench, std::move(values), span);
}

std::optional<Range> from_relays(Bench& bench, const KnobRequest& request, Span span) {
  const syntax::List<Phrase> arguments = request.range[0].phrases;
  const auto smallest = argument(bench, arguments, 1, "smallest");
  if (arguments.size() != 2 || !smallest) return say_bad_form(bench, span, relays_form);
  const auto count = number_of(bench, arguments[0], *request.scope, dimension::number);
  const auto step = request.read(*smallest);
  if (!count || !step) return std::nullopt;
  if (*count != std::round(*count) || *count < 1 || *count > most_relays) {
    bench.complaints.say("value-out-of-range", syntax::span_of(arguments[0]),
                         "the number of relays is a whole number from 1 to 16");
    return std::nullopt;
  }
  if (!(*step > 0.0)) {
    bench.complaints.say("value-out-of-range", syntax::span_of(*smallest), "the smallest value must be above zero");
    return std::nullopt;
  }
  return from_choices(bench, relay_values(static_cast<int>(*count), *step), span);
}

/// Every step from the lower end, and the upper end.
std::optional<Range> from_steps(Bench& bench, double lower, double upper, double step, Span span) {
  if (!(step > 0.0)) {
    bench.complaints.say("value-out-of-range", span, "a knob's step must be above zero");
    return std::nullopt;
  }
  constexpr double slack = 1e-9;
  const double steps = std::floor((upper - lower) / step + slack);
  if (steps < 1.0) {
    auto& wrong = bench.complaints.say("empty-range", span, "this step is wider than the range");
    wrong.advice = "make it smaller, or write the two values as a list: adjustable [a, b]";
    return std::nullopt;
  }
  if (steps > double(most_choices)) {
    auto& wrong = bench.complaints.say("too-many-steps", span, "a knob may have 100000 steps at most");
    wrong.advice = "leave `step` out: the knob then turns without steps";
    return std::nullopt;
  }
  std::vector<double> choices;
  for (double i = 0.0; i <= steps; i += 1.0) choices.push_back(lower + i * step);
  if (upper - choices.back() > slack * step) choices.push_back(upper);
  choices.back() = upper;
  return Range{lower, upper, std::move(choices), step};
}

std::optional<Range> range_of(Bench& bench, const KnobRequest& request) {
  const Span span = request.range.empty() ? request.span : syntax::span_of(request.range);
  if (is_list(request.range)) return from_list(bench, request, span);
  if (is_call_of(request.range, "series")) return from_series(bench, request, span);
  if (is_call_of(request.range, "relays")) return from_relays(bench, request, span);
  if (leading_word(request.range) == "from") {
    bench.complaints.say("bad-adjustable", leading_span(request.range), "a range begins without `from`").expected =
        "adjustable A to B";
    return std::nullopt;
  }
  const auto ends = split_at_word(bench, request.range, "to");
  if (!ends || ends->after.empty()) return say_no_range(bench, request.range, span);
  const auto stepped = split_at_word(bench, ends->after, "step");
  const auto lower = request.read(ends->before), upper = request.read(stepped ? stepped->before : ends->after);
  if (!lower || !upper || !rising(bench, *lower, *upper, request.dim, span)) return std::nullopt;
  if (!stepped) return Range{*lower, *upper, {}};
  if (stepped->before.empty() || stepped->after.empty()) return say_bad_range(bench, span);
  const auto step = request.read(stepped->after);
  if (!step) return std::nullopt;
  return from_steps(bench, *lower, *upper, *step, syntax::span_of(stepped->after));
}

bool near_to(double a, double b) {
  return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b));
}

/// The start, put exactly on an end or a choice that it is within rounding of.
std::optional<double> start_inside(Bench& bench, const KnobRequest& request, const Range& range) {
  const double start = *request.start;
  for (const double choice : range.choices)
    if (near_to(start, choice)) return choice;
  if (near_to(start, range.lower)) return range.lower;
  if (near_to(start, range.upper)) return range.upper;
  const bool inside = start > range.lower && start < range.upper;
  // A value that no step of the dial meets may be written all the same: it is where the design stands untuned.
  if (inside && (range.choices.empty() || range.step)) return start;
  const std::string value = spell({start, request.dim});
  auto& wrong = bench.complaints.say(
      inside ? "start-not-a-choice" : "start-outside-range", request.start_span,
      value + (inside ? " is none of the values to choose from" : " lies outside the range it can be adjusted in"));
  constexpr std::size_t few = 8;
  std::string values;
  for (std::size_t i = 0; i < range.choices.size() && range.choices.size() <= few; ++i)
    values += (i == 0 ? "" : ", ") + spell({range.choices[i], request.dim});
  wrong.notes.push_back({request.span, !values.empty() ? values
                                                       : "from " + spell({range.lower, request.dim}) + " to " +
                                                             spell({range.upper, request.dim})});
  if (inside) {
    const auto above = std::upper_bound(range.choices.begin(), range.choices.end(), start);
    wrong.hint = spell({*(above - 1), request.dim}) + " or " + spell({*above, request.dim});
  }
  return std::nullopt;
}

/// A quantity's dimension, where only its range is given: that of the first value in it.
std::optional<Dimension> dimension_of_range(Bench& bench, const Phrase& range, Scope& scope) {
  Phrase first = range;
  if (is_list(range) && !range[0].phrases.empty()) first = range[0].phrases[0];
  if (const auto ends = split_at_word(bench, range, "to")) first = ends->before;
  if (is_call_of(range, "series")) first = argument(bench, range[0].phrases, 1, "from").value_or(Phrase{});
  if (is_call_of(range, "relays")) first = argument(bench, range[0].phrases, 1, "smallest").value_or(Phrase{});
  if (first.empty()) {
    say_bad_range(bench, syntax::span_of(range));
    return std::nullopt;
  }
  const auto settled = settle(bench, first, scope, Varies::no);
  if (!settled) return std::nullopt;
  return settled->dim;
}

}  // namespace

std::optional<KnobId> make_knob(Bench& bench, const KnobRequest& request) {
  auto range = range_of(bench, request);
  if (!range) return std::nullopt;
  Knob knob;
  knob.name = request.name;
  knob.dim = request.dim;
  knob.lower = range->lower;
  knob.upper = range->upper;
  if (request.start) {
    knob.start = start_inside(bench, request, *range);
    if (!knob.start) return std::nullopt;
  } else if (bench.options.as_written && !bench.settling_unused) {
    auto& wrong = bench.complaints.say("unset-knob", request.span,
                                       in_quotes(request.name) + " has no value of its own to be taken as written");
    wrong.advice = "write a value before `adjustable`, or leave --as-written out";
    return std::nullopt;
  }
  knob.choices = std::move(range->choices);
  knob.made = std::move(range->made);
  knob.step = range->step;
  knob.span = request.span;
  bench.design.knobs.push_back(std::move(knob));
  return KnobId{static_cast<int>(bench.design.knobs.size()) - 1};
}

Settled settled_knob(KnobId knob, Dimension dim) {
  Settled result;
  result.formula.op = Formula::Op::knob;
  result.formula.knob = knob;
  result.dim = dim;
  result.uses_knobs = true;
  return result;
}

bool is_adjustable(const NamedQuantity& quantity) {
  for (const Phrase& property : quantity.properties)
    if (leading_word(property) == "adjustable") return true;
  return false;
}

std::optional<Settled> settle_adjustable(Bench& bench, NamedQuantity& quantity) {
  KnobRequest request{.name = quantity.name, .scope = quantity.home};
  std::optional<Settled> start;
  bool good = true;
  for (const Phrase& property : quantity.properties) {
    const auto range = rest_after(property, "adjustable", bench.storage);
    if (range && request.range.empty()) {
      request.range = *range;
      request.span = syntax::span_of(property);
    } else if (!range && &property == &quantity.properties[0]) {
      start = settle(bench, property, *quantity.home, Varies::no);
      request.start_span = syntax::span_of(property);
      good = start && fits(bench, *start, {.dim = start->dim}, request.start_span);
    } else {
      bench.complaints.say("unknown-property", syntax::span_of(property),
                           "a quantity takes one value and one `adjustable`");
      good = false;
    }
  }
  if (request.range.empty()) return say_bad_range(bench, request.span), std::nullopt;
  if (!good) return std::nullopt;
  const auto dim = start ? start->dim : dimension_of_range(bench, request.range, *quantity.home);
  if (!dim) return std::nullopt;
  request.dim = *dim;
  if (start) request.start = start->formula.constant.real();
  request.read = [&](const Phrase& phrase) { return number_of(bench, phrase, *quantity.home, *dim); };
  const auto knob = make_knob(bench, request);
  if (!knob) return std::nullopt;
  bench.quantity_knobs[quantity.name] = *knob;
  return settled_knob(*knob, *dim);
}

}  // namespace wattfall::design
