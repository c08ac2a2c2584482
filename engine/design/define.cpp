// Boxes, quantities and changes by name.
#include "define.hpp"

#include "expression.hpp"

namespace wattfall::design {
namespace {

bool name_is_free(Bench& bench, const syntax::Word& name) {
  if (name.text != "pi" && name.text != "frequency" && !is_function(name.text)) return true;
  bench.complaints.say("reserved-name", name.span, in_quotes(name.text) + " has a meaning of its own");
  return false;
}

void add_quantity(Bench& bench, const syntax::Set& set) {
  Scope& scope = bench.file_frame.scope;
  const auto [known, is_new] = scope.quantities.try_emplace(set.name.text);
  NamedQuantity& quantity = known->second;
  quantity.name = set.name.text;
  quantity.span = set.name.span;
  quantity.properties.assign(set.properties.begin(), set.properties.end());
  quantity.home = &scope;
  if (is_new) scope.in_order.push_back(&quantity);
}

void add_level(Bench& bench, const Level& level) {
  std::unordered_map<std::string_view, Span> seen;
  for (const syntax::Statement* statement : level.statements) {
    const auto* set = std::get_if<syntax::Set>(&statement->what);
    if (set == nullptr || !name_is_free(bench, set->name)) continue;
    const auto [known, is_new] = seen.try_emplace(set->name.text, set->name.span);
    if (is_new) {
      add_quantity(bench, *set);
      continue;
    }
    auto& wrong = bench.complaints.say("repeated-name", set->name.span, in_quotes(set->name.text) + " is set already");
    wrong.notes.push_back({known->second, "the first time"});
  }
}

}  // namespace

void override_quantity(NamedQuantity& quantity, syntax::List<syntax::Phrase> value) {
  if (value.empty()) return;
  if (quantity.properties.empty() || leading_word(quantity.properties[0]) == "adjustable")
    quantity.properties.insert(quantity.properties.begin(), value[0]);
  else
    quantity.properties[0] = value[0];
}

void define_boxes(Bench& bench, const Statements& statements) {
  std::vector<const syntax::Box*> boxes;
  for (const syntax::Statement* statement : statements) {
    const auto* box = std::get_if<syntax::Box>(&statement->what);
    if (box == nullptr) continue;
    const KindInfo* kind = bench.catalog.find(box->name.text);
    if (kind != nullptr && kind->places != KindInfo::Places::box) {
      bench.complaints.say("reserved-name", box->name.span, in_quotes(box->name.text) + " is a kind of part already");
      continue;
    }
    const auto [known, is_new] = bench.boxes.try_emplace(box->name.text, box);
    if (is_new) {
      boxes.push_back(box);
      continue;
    }
    auto& wrong = bench.complaints.say("repeated-name", box->name.span,
                                       "there is a box " + in_quotes(box->name.text) + " already");
    wrong.notes.push_back({known->second->name.span, "the first one"});
  }
  check_boxes(bench, boxes);
}

void define_quantities(Bench& bench, const Level& common, const Level& variant, OptionTexts& options) {
  add_level(bench, common);
  if (&common != &variant) add_level(bench, variant);
  Scope& scope = bench.file_frame.scope;
  for (Setting& setting : options.settings) {
    const auto known = scope.quantities.find(setting.name);
    if (known == scope.quantities.end()) continue;
    setting.used = true;
    override_quantity(known->second, setting.properties);
  }
}

void settle_unused(Bench& bench) {
  const std::size_t used_knobs = bench.design.knobs.size();
  bench.settling_unused = true;
  for (NamedQuantity* quantity : bench.file_frame.scope.in_order) settle_quantity(bench, *quantity);
  bench.settling_unused = false;
  bench.design.knobs.resize(used_knobs);
}

void define_replacements(Bench& bench, const Level& variant, OptionTexts& options) {
  for (const syntax::Statement* statement : variant.statements) {
    const auto* change = std::get_if<syntax::Change>(&statement->what);
    if (change == nullptr) continue;
    auto& replacements = bench.replacements[change->name.text];
    if (!replacements.empty()) {
      auto& wrong = bench.complaints.say("repeated-name", change->name.span,
                                         in_quotes(change->name.text) + " is changed already");
      wrong.notes.push_back({replacements[0].name, "the first time"});
      continue;
    }
    replacements.push_back({change->name.span, change->properties, false, false});
  }
  for (Setting& setting : options.settings)
    if (!bench.file_frame.scope.quantities.contains(setting.name))
      bench.replacements[setting.name].push_back({setting.name_span, setting.properties, true, false});
}

void check_replacements(Bench& bench, OptionTexts& options) {
  for (const auto& [name, replacements] : bench.replacements)
    for (const Replacement& replacement : replacements) {
      if (replacement.main_only) {
        for (Setting& setting : options.settings)
          setting.used = setting.used || (setting.name == name && replacement.used);
        continue;
      }
      if (replacement.used || bench.names.contains(name)) continue;
      const auto head = bench.names.find(name.substr(0, name.find('.')));
      if (head != bench.names.end() && head->second.broken) continue;
      auto& wrong =
          bench.complaints.say("unknown-part", replacement.name, "there is no part " + in_quotes(name) + " to change");
      wrong.hint = bench.complaints.nearest(name, [&] { return keys_of(bench.names); });
    }
}

void check_source(Bench& bench) {
  if (bench.source_seen || bench.network_broken) return;
  auto& wrong = bench.complaints.say("no-source", bench.place, "the design has no source");
  wrong.expected = "source NAME at NODE : 100 W";
}

}  // namespace wattfall::design
