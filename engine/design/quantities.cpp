// Names in expressions: `set` and `with` quantities, settled when they are first asked for, in whatever order they were
// written; `pi` and `frequency`. A quantity that needs itself is shown with the whole loop.
#include <algorithm>
#include <numbers>

#include "adjust.hpp"
#include "expression.hpp"

namespace wattfall::design {
namespace {

using syntax::Term;

void say_loop(Bench& bench, NamedQuantity& again) {
  auto& chain = bench.settling;
  const auto begin = std::find(chain.begin(), chain.end(), &again);
  std::string loop;
  for (auto member = begin; member != chain.end(); ++member) loop.append((*member)->name).append(" -> ");
  auto& wrong = bench.complaints.say("quantity-loop", again.span,
                                     in_quotes(again.name) + " is defined by itself: " + loop.append(again.name));
  for (auto member = begin + 1; member != chain.end(); ++member)
    wrong.notes.push_back({(*member)->span, in_quotes((*member)->name) + " stands in the loop"});
  for (auto member = begin; member != chain.end(); ++member) (*member)->state = NamedQuantity::State::failed;
}

void say_unknown(Bench& bench, const Term& name, const Scope& scope) {
  if (bench.unknown_quantities.contains(name.text)) return;
  bench.unknown_quantities.insert(bench.storage.keep_text(name.text));  // the text may be a plugin's default, soon gone
  auto& wrong = bench.complaints.say("unknown-quantity", name.span, in_quotes(name.text) + " is no quantity here");
  wrong.expected = "a value, or a name from `set` or `with`";
  wrong.hint = bench.complaints.nearest(name.text, [&] { return visible_quantities(scope); });
}

bool allowed(Bench& bench, const Settled& settled, Span span, Varies varies) {
  if (varies == Varies::yes || (!settled.uses_frequency && !settled.uses_knobs)) return true;
  auto& wrong = bench.complaints.say("varying-value", span,
                                     std::string("this depends on ") +
                                         (settled.uses_frequency ? "`frequency`" : "what is adjustable") +
                                         ", which has no single value here");
  wrong.expected = "a value that does not vary";
  return false;
}

/// A box's quantity must have the dimension of its default.
bool suits_fallback(Bench& bench, const NamedQuantity& quantity, const Settled& settled) {
  if (quantity.fallback == nullptr) return true;
  const auto fallback = settle(bench, *quantity.fallback, *quantity.fallback_home);
  return !fallback ||
         fits(bench, settled, {.dim = fallback->dim, .complex = true}, syntax::span_of(quantity.properties[0]));
}

std::optional<Settled> settled_value(Bench& bench, NamedQuantity& quantity) {
  if (is_adjustable(quantity)) return settle_adjustable(bench, quantity);
  for (std::size_t i = 1; i < quantity.properties.size(); ++i) {
    const Span span = syntax::span_of(quantity.properties[i]);
    auto& wrong = bench.complaints.say("unknown-property", span, "a quantity takes no " + in_quotes(span.text()));
    wrong.expected = "adjustable A to B";
  }
  auto settled = settle(bench, quantity.properties[0], *quantity.home);
  if (settled && !suits_fallback(bench, quantity, *settled)) settled.reset();
  return settled;
}

}  // namespace

NamedQuantity* find_quantity(Scope& scope, std::string_view name) {
  for (Scope* where = &scope; where != nullptr; where = where->outer) {
    const auto found = where->quantities.find(name);
    if (found != where->quantities.end()) return &found->second;
  }
  return nullptr;
}

std::vector<std::string> visible_quantities(const Scope& scope) {
  std::vector<std::string> names{"pi", "frequency"};
  for (const Scope* where = &scope; where != nullptr; where = where->outer)
    for (const NamedQuantity* quantity : where->in_order) names.emplace_back(quantity->name);
  return names;
}

void settle_quantity(Bench& bench, NamedQuantity& quantity) {
  if (quantity.state != NamedQuantity::State::fresh) return;
  quantity.state = NamedQuantity::State::busy;
  bench.settling.push_back(&quantity);
  auto settled = quantity.properties.empty() ? std::nullopt : settled_value(bench, quantity);
  bench.settling.pop_back();
  if (quantity.state == NamedQuantity::State::failed) return;
  quantity.state = settled ? NamedQuantity::State::settled : NamedQuantity::State::failed;
  if (settled) quantity.value = std::move(*settled);
}

std::optional<Settled> settle_name(Bench& bench, const Term& name, Scope& scope, Varies varies) {
  Settled result;
  if (name.text == "pi") {
    result.formula.constant = std::numbers::pi;
    return result;
  }
  if (name.text == "frequency") {
    result.formula.op = Formula::Op::frequency;
    result.dim = dimension::frequency;
    result.uses_frequency = true;
  } else {
    NamedQuantity* quantity = find_quantity(scope, name.text);
    if (quantity == nullptr) {
      say_unknown(bench, name, scope);
      return std::nullopt;
    }
    if (quantity->state == NamedQuantity::State::busy) say_loop(bench, *quantity);
    settle_quantity(bench, *quantity);
    if (quantity->state != NamedQuantity::State::settled) return std::nullopt;
    result = quantity->value;
  }
  if (!allowed(bench, result, name.span, varies)) return std::nullopt;
  return result;
}

}  // namespace wattfall::design
