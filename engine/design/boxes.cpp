// Boxes written out: `tee atu from desk to wall` becomes the parts of its body, named `atu.Cin`, between nodes named
// `atu.mid` and those outside that its ports stand for.
#include <algorithm>

#include "define.hpp"
#include "parts/job.hpp"
#include "place_parts.hpp"
#include "places.hpp"
#include "tuners.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

std::string counted(std::size_t n, const char* thing) {
  return std::to_string(n) + ' ' + thing + (n == 1 ? "" : "s");
}

bool ports_agree(Bench& bench, const syntax::Box& box, const syntax::Part& text, std::size_t nodes) {
  if (nodes == box.ports.size()) return true;
  const Span span = text.places.form == syntax::Places::Form::none ? text.name.span : text.places.span;
  if (box.name.text.starts_with(tuner_box)) {
    bench.complaints.say("wrong-places", span, "a tuner does not stand like this").expected = "from a to b";
    return false;
  }
  auto& wrong =
      bench.complaints.say("port-count", span,
                           in_quotes(text.name.text) + " stands at " + counted(nodes, "node") + ", but the box " +
                               in_quotes(box.name.text) + " has " + counted(box.ports.size(), "port"));
  std::string ports;
  for (const syntax::Word& port : box.ports) ports.append(ports.empty() ? "" : ", ").append(port.text);
  wrong.expected = "a node for each of " + ports;
  wrong.notes.push_back({box.name.span, "the box"});
  return false;
}

/// A tuner's form comes from a plugin, and its properties read like those of a kind: `coil Q 200` is its quantity coil_Q.
std::string property_name(const syntax::Box& box, std::string_view quantity) {
  std::string name(quantity);
  if (box.name.text.starts_with(tuner_box)) std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

NamedQuantity& add_quantity(Frame& inner, const std::pair<syntax::Word, Phrase>& with, const Given* override) {
  NamedQuantity& quantity = inner.scope.quantities[with.first.text];
  quantity.name = with.first.text;
  quantity.span = with.first.span;
  quantity.properties = {override == nullptr ? with.second : override->value};
  quantity.home = override == nullptr ? &inner.scope : override->scope;
  quantity.fallback = override == nullptr ? nullptr : &with.second;
  quantity.fallback_home = &inner.scope;
  return quantity;
}

/// What `--set atu.c=...` gives a quantity of a use of a box; none where it does not name it.
syntax::List<Phrase> set_by_option(Bench& bench, const Frame& inner, std::string_view name) {
  if (bench.options.settings.empty()) return {};
  const std::string_view full = full_name(bench, inner, name);
  bench.box_quantities.push_back(full);
  const auto found = bench.replacements.find(full);
  if (found == bench.replacements.end()) return {};
  for (Replacement& replacement : found->second) {
    if (!replacement.main_only) continue;
    replacement.used = replacement.of_quantity = true;
    return replacement.properties;
  }
  return {};
}

/// `set` in a box: a quantity of each use, which may be a knob of its own.
void add_sets(Bench& bench, Frame& inner, const syntax::Box& box) {
  for (const syntax::Statement& member : box.body) {
    const auto* set = std::get_if<syntax::Set>(&member.what);
    if (set == nullptr || inner.scope.quantities.contains(set->name.text)) continue;
    NamedQuantity& quantity = inner.scope.quantities[set->name.text];
    quantity.name = full_name(bench, inner, set->name.text);
    quantity.span = set->name.span;
    quantity.properties.assign(set->properties.begin(), set->properties.end());
    quantity.home = &inner.scope;
    override_quantity(quantity, set_by_option(bench, inner, set->name.text));
    inner.scope.in_order.push_back(&quantity);
  }
  for (NamedQuantity* quantity : inner.scope.in_order) settle_quantity(bench, *quantity);
}

void fill_quantities(Bench& bench, Frame& inner, const syntax::Box& box, const Properties& given) {
  inner.scope.outer = &bench.file_frame.scope;
  for (const auto& with : box.with) {
    const Given* override = given.find(property_name(box, with.first.text));
    if (override != nullptr && override->value.empty()) {
      bench.complaints.say("missing-value", override->span, in_quotes(with.first.text) + " has no value").expected =
          override->info->name + " " + std::string(syntax::span_of(with.second).text());
      override = nullptr;
    }
    NamedQuantity& quantity = add_quantity(inner, with, override);
    if (const auto option = set_by_option(bench, inner, with.first.text); !option.empty()) {
      quantity.properties = {option[0]};
      quantity.home = &bench.file_frame.scope;
      quantity.fallback = &with.second;
    }
    inner.scope.in_order.push_back(&quantity);
  }
  add_sets(bench, inner, box);
}

Properties box_properties(Bench& bench, Frame& frame, const KindInfo& kind, const syntax::Part& text,
                          std::string_view name) {
  Properties given = read_properties(bench, kind, text.properties, frame.scope);
  check_clashes(bench, kind, given);
  const auto replaced = bench.replacements.find(name);
  if (replaced == bench.replacements.end()) return given;
  for (Replacement& replacement : replaced->second) {
    replacement.used = true;
    replace(bench, given, read_properties(bench, kind, replacement.properties, bench.file_frame.scope), kind, false);
  }
  return given;
}

BoxId add_use(Bench& bench, const Frame& frame, const syntax::Box& box, std::string_view name,
              std::vector<NodeId> nodes, Span span) {
  const BoxId id{static_cast<int>(bench.design.boxes.size())};
  bench.design.boxes.push_back(
      {std::string(name), std::string(box.name.text), std::move(nodes), frame.box, span});
  bench.names[name].index = id.index;
  return id;
}

}  // namespace

const KindInfo& kind_of_box(Bench& bench, const syntax::Box& box) {
  const auto [known, is_new] = bench.box_kinds.try_emplace(&box);
  if (!is_new) return known->second;
  KindInfo& kind = known->second;
  kind.name = box.name.text.starts_with(tuner_box) ? std::string_view(tuner_kind) : box.name.text;
  kind.places = KindInfo::Places::box;
  for (const auto& [name, value] : box.with) kind.properties.push_back({property_name(box, name.text), "", std::nullopt, "", "", false, false});
  return kind;
}

void expand_box(Bench& bench, Frame& frame, const syntax::Box& box, const syntax::Part& text, const Span& statement) {
  const std::string_view name = full_name(bench, frame, text.name.text);
  std::vector<NodeId> nodes = flat_nodes(bench, frame, text.places);
  const bool agree = ports_agree(bench, box, text, nodes.size());
  if (!agree || bench.looping_boxes.contains(&box)) {
    bench.names[name].broken = true;
    bench.network_broken = true;
    return;
  }
  Frame inner;
  inner.prefix = bench.storage.keep_text(std::string(name) + '.');
  inner.depth = frame.depth + 1;
  for (std::size_t i = 0; i < nodes.size(); ++i) inner.ports[box.ports[i].text] = nodes[i];
  inner.box = add_use(bench, frame, box, name, std::move(nodes), statement);
  fill_quantities(bench, inner, box, box_properties(bench, frame, kind_of_box(bench, box), text, name));
  for (const syntax::Statement& member : box.body)
    if (const auto* part = std::get_if<syntax::Part>(&member.what)) place_part(bench, inner, member, *part);
}

}  // namespace wattfall::design
