// Pairs figures and parts by their names: a line that moved, or statements in another order, change nothing.
#include "baseline/check.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "report/spelling.hpp"
#include "report/verdict.hpp"

namespace wattfall::baseline {
namespace {

using State = HeldFigure::State;
constexpr double none = std::numeric_limits<double>::quiet_NaN();

double slack_of(const Figure& figure, double before, double tolerance) {
  return tolerance * std::abs(before) + (figure.unit == "dB" ? 1e-4 : 1e-9 * std::max(1.0, std::abs(before)));
}

std::string at(double hz) {
  return std::isfinite(hz) && hz > 0.0 ? " at " + report::spell_frequency(hz) : "";
}

std::string spell_of(double value, const std::string& unit) {
  return report::spell_figure(value, unit);
}

const Figure* find_figure(const Variant* was, const std::string& name, bool less_is_better) {
  if (was == nullptr) return nullptr;
  for (const Figure& figure : was->figures)
    if (figure.figure == name && figure.less_is_better == less_is_better) return &figure;
  return nullptr;
}

std::vector<HeldFigure> hold_figures(const Variant& now, const Variant* was) {
  std::vector<HeldFigure> held;
  for (const Figure& figure : now.figures) {
    HeldFigure one{figure, none, State::fresh};
    if (const Figure* before = find_figure(was, figure.figure, figure.less_is_better)) {
      one.now.tolerance = before->tolerance;
      one.before = before->value;
      Figure turned = figure;
      turned.less_is_better = !figure.less_is_better;
      one.state = is_worse(figure, before->value, before->tolerance)   ? State::worse
                  : is_worse(turned, before->value, before->tolerance) ? State::better
                                                                       : State::kept;
      // To exist at last is no loss, whichever side is the better.
      if (std::isnan(before->value) && !std::isnan(figure.value)) one.state = State::better;
      if (!std::isnan(before->value) && std::isnan(figure.value)) one.state = State::worse;
    }
    held.push_back(one);
  }
  if (was == nullptr) return held;
  for (const Figure& figure : was->figures)
    if (find_figure(&now, figure.figure, figure.less_is_better) == nullptr) {
      HeldFigure one{figure, figure.value, State::gone};
      one.now.value = one.now.at_hz = none;
      held.push_back(one);
    }
  return held;
}

std::string per_cent(double share) {
  return std::isfinite(share) ? report::spell_share(std::abs(share)) : "";
}

Break broken_baseline(const HeldFigure& held) {
  const Figure& now = held.now;
  Break broken{Break::Kind::baseline, now.figure, now.unit, held.before, now.value, now.at_hz, none, {}, now.line};
  const double slack = slack_of(now, held.before, now.tolerance);
  broken.limit = now.less_is_better ? held.before + slack : held.before - slack;
  if (held.state == State::gone) {
    broken.text = "Worse than its baseline: " + now.figure + " was " + spell_of(held.before, now.unit) + ", and is no longer a figure of this design.";
    return broken;
  }
  broken.text = "Worse than its baseline: " + now.figure + " was " + spell_of(held.before, now.unit) + " and is " + spell_of(now.value, now.unit) +
                at(now.at_hz);
  const std::string by = per_cent(held.change());
  if (!by.empty()) broken.text += ", " + by + (held.change() > 0.0 ? " more" : " less");
  broken.text += "; it is held to " + report::spell_share(now.tolerance) + '.';
  return broken;
}

/// Requirements and ratings, in the words of the verdict.
void break_what_is_asked(const report::VariantResult& result, const Variant& now, const Variant* was, VariantCheck& check) {
  std::vector<Break>& breaks = check.breaks;
  const report::Summary summary = report::summarize(result);
  std::size_t sentence = 0;
  for (const judge::Verdict& verdict : result.judgement.verdicts) {
    const design::Requirement& asked = *verdict.requirement;
    check.asked.push_back({false, asked.text, {}});
    if (verdict.met) continue;
    Break broken{Break::Kind::requirement, asked.figure.text, report::unit_of(asked.figure.kind), {}, verdict.worst, verdict.worst_at_hz, asked.value,
                 summary.failures[sentence++], asked.span.line()};
    for (const Figure& figure : now.figures)
      if (figure.line == broken.line && figure.line > 0)
        if (const Figure* before = find_figure(was, figure.figure, figure.less_is_better)) broken.before = before->value;
    if (broken.before) broken.text += " It was " + spell_of(*broken.before, broken.unit) + '.';
    check.asked.back().said = broken.text;
    breaks.push_back(std::move(broken));
  }
  for (const judge::Rating& rating : result.judgement.ratings) {
    const design::Part& part = result.design->parts[rating.part.index];
    const char* unit = rating.unit == 'V' ? " peak" : rating.unit == 'A' ? " rms" : " of heat";
    check.asked.push_back({true, part.name + " stands at most " + spell_of(rating.limit, std::string(1, rating.unit)) + unit, {}});
    if (rating.kept()) continue;
    check.asked.back().said = summary.failures[sentence];
    const char* what = rating.unit == 'V' ? "peak volts on " : rating.unit == 'A' ? "rms amps through " : "heat in ";
    breaks.push_back({Break::Kind::rating, what + part.name, std::string(1, rating.unit), {}, rating.worst, rating.worst_at_hz, rating.limit,
                      summary.failures[sentence++], part.span.line()});
  }
}

// ---- what was changed -------------------------------------------------------------------------------------------

Change change_of(const design::Thing& thing, std::string what, std::optional<std::string> before, std::optional<std::string> after) {
  Change change{thing.name, thing.kind, std::move(what), std::move(before), std::move(after), {}, 0, 0, thing.statement};
  if (thing.span.source == nullptr) return change;
  const Position place = thing.span.source->position(thing.span.begin);
  change.file = thing.span.source->name();
  change.line = place.line;
  change.column = place.column;
  return change;
}

const std::string* find_fact(const design::Thing& thing, const std::string& what) {
  for (const design::Fact& fact : thing.facts)
    if (fact.what == what) return &fact.value;
  return nullptr;
}

std::optional<std::string> copy(const std::string* text) {
  return text == nullptr ? std::nullopt : std::optional<std::string>(*text);
}

/// Facts first; where none differs, the statement may say what no fact speaks of.
void compare_thing(const design::Thing& now, const design::Thing& was, std::vector<Change>& changes) {
  const std::size_t before = changes.size();
  if (now.kind != was.kind) changes.push_back(change_of(now, "kind", was.kind, now.kind));
  for (const design::Fact& fact : now.facts) {
    const std::string* old = find_fact(was, fact.what);
    if (old == nullptr || *old != fact.value) changes.push_back(change_of(now, fact.what, copy(old), fact.value));
  }
  for (const design::Fact& fact : was.facts)
    if (find_fact(now, fact.what) == nullptr) changes.push_back(change_of(now, fact.what, fact.value, std::nullopt));
  if (changes.size() == before && now.statement != was.statement)
    changes.push_back(change_of(now, "statement", was.statement, now.statement));
}

/// A part may have the name of a knob, and a quantity that of both.
std::string_view sort_of(const design::Thing& thing) {
  return thing.kind == "knob" || thing.kind == "quantity" ? std::string_view(thing.kind) : "part";
}

const design::Thing* find_thing(const std::vector<design::Thing>& things, const design::Thing& like) {
  for (const design::Thing& thing : things)
    if (thing.name == like.name && sort_of(thing) == sort_of(like)) return &thing;
  return nullptr;
}

/// A quantity is nothing that stands in the network: one that is new or gone shows in the parts that it changed. (Baselines of before there were any
/// in them have none.)
bool stands_alone(const design::Thing& thing) {
  return sort_of(thing) != "quantity";
}

std::vector<Change> find_changes(const Variant& now, const Variant& was) {
  std::vector<Change> changes;
  for (const design::Thing& thing : now.things) {
    const design::Thing* old = find_thing(was.things, thing);
    if (old != nullptr) {
      compare_thing(thing, *old, changes);
    } else if (stands_alone(thing)) {
      changes.push_back(change_of(thing, "part", std::nullopt, thing.statement));
    }
  }
  for (const design::Thing& thing : was.things)
    if (stands_alone(thing) && find_thing(now.things, thing) == nullptr)
      changes.push_back(change_of(thing, "part", thing.statement, std::nullopt));
  return changes;
}

void add_once(std::vector<Change>& all, const std::vector<Change>& more) {
  for (const Change& change : more) {
    const bool known = std::any_of(all.begin(), all.end(), [&](const Change& one) {
      return one.part == change.part && one.what == change.what && one.before == change.before && one.after == change.after;
    });
    if (!known) all.push_back(change);
  }
}

const Variant* find_variant(const std::optional<Baseline>& was, const std::optional<std::string>& name) {
  if (!was) return nullptr;
  for (const Variant& variant : was->variants)
    if (variant.name == name) return &variant;
  return nullptr;
}

/// Why a variant is not among the results, as far as that is known: its form of tuner cannot do what is asked.
std::string why_missing(const Variant& was, const report::SetAsides& set_aside) {
  for (const report::SetAside& one : set_aside)
    if (was.name && one.variant == *was.name) return " It is set aside, for " + one.text + '.';
  return "";
}

/// A variant that the baseline has and the design no longer: all of its figures are gone.
VariantCheck missing_variant(const Variant& was, const report::SetAsides& set_aside) {
  VariantCheck check{was.name, true, hold_figures({was.name, {}, {}}, &was), {}, {}};
  for (const HeldFigure& held : check.figures) {
    check.breaks.push_back(broken_baseline(held));
    check.breaks.back().text += why_missing(was, set_aside);
  }
  return check;
}

}  // namespace

double HeldFigure::change() const {
  return before == 0.0 ? none : (now.value - before) / std::abs(before);
}

bool DesignCheck::passes() const {
  return std::all_of(variants.begin(), variants.end(), [](const VariantCheck& variant) { return variant.breaks.empty(); });
}

bool is_worse(const Figure& now, double before, double tolerance) {
  if (std::isnan(now.value)) return !std::isnan(before);
  if (std::isnan(before)) return false;
  const double slack = slack_of(now, before, tolerance);
  return now.less_is_better ? now.value > before + slack : now.value < before - slack;
}

DesignCheck check(const std::vector<report::VariantResult>& results, const std::optional<Baseline>& was,
                  bool one_variant, const report::SetAsides& set_aside) {
  DesignCheck design;
  const Baseline now = take(results, default_tolerance);
  design.baseline = was ? DesignCheck::State::held : DesignCheck::State::missing;
  for (std::size_t v = 0; v < results.size(); ++v) {
    const Variant* before = find_variant(was, now.variants[v].name);
    VariantCheck variant{now.variants[v].name, before != nullptr, hold_figures(now.variants[v], before), {}, {}};
    break_what_is_asked(results[v], now.variants[v], before, variant);
    for (const HeldFigure& held : variant.figures)
      if (held.state == State::worse || held.state == State::gone) variant.breaks.push_back(broken_baseline(held));
    if (before != nullptr) add_once(design.changes, find_changes(now.variants[v], *before));
    design.compared |= before != nullptr;
    design.variants.push_back(std::move(variant));
    const report::Summary summary = report::summarize(results[v]);
    design.met += summary.met;
    design.of += summary.of;
    design.ratings += summary.ratings;
    design.ratings_broken += summary.ratings_broken;
  }
  if (!was || one_variant) return design;
  for (const Variant& variant : was->variants) {
    const bool there = std::any_of(now.variants.begin(), now.variants.end(), [&](const Variant& one) { return one.name == variant.name; });
    if (!there) design.variants.push_back(missing_variant(variant, set_aside));
  }
  return design;
}

}  // namespace wattfall::baseline
