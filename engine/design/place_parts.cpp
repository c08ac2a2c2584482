// One part statement at a time. A part that could not be built still keeps its name and nodes, so that nothing else is
// said to be missing because of it.
#include "place_parts.hpp"

#include <array>
#include <unordered_map>

#include "parts/job.hpp"
#include "places.hpp"

namespace wattfall::design {
namespace {

using Builder = std::optional<Model> (*)(PartJob&);

Builder builder_of(const std::string& kind) {
  static const std::unordered_map<std::string_view, Builder> builders{{"load", build_load},
                                                                      {"resistor", build_resistor},
                                                                      {"inductor", build_inductor},
                                                                      {"capacitor", build_capacitor},
                                                                      {"line", build_line},
                                                                      {"stub", build_stub},
                                                                      {"transformer", build_transformer},
                                                                      {"balun", build_choke},
                                                                      {"choke", build_choke},
                                                                      {"pad", build_pad},
                                                                      {"twoport", build_two_port},
                                                                      {"selector", build_selector}};
  const auto found = builders.find(kind);
  return found == builders.end() ? build_plugin_part : found->second;
}

/// What the workbench calls by other names.
std::string other_name_of_kind(std::string_view word) {
  using Pair = std::pair<std::string_view, std::string_view>;
  static constexpr std::array<Pair, 20> others{
      {{"coax", "line"},        {"cable", "line"},        {"feedline", "line"},         {"ladder", "line"},
       {"antenna", "load"},     {"dipole", "load"},       {"dummy", "load"},            {"transmitter", "source"},
       {"transceiver", "source"}, {"rig", "source"},      {"generator", "source"},      {"coil", "inductor"},
       {"cap", "capacitor"},    {"variable", "capacitor"}, {"unun", "transformer"},     {"xfmr", "transformer"},
       {"attenuator", "pad"},   {"switch", "selector"},   {"relay", "selector"},        {"mutual", "coupling"}}};
  for (const auto& [other, kind] : others)
    if (word == other) return std::string(kind);
  return {};
}

void say_unknown_kind(Bench& bench, const syntax::Part& text) {
  auto& wrong = bench.complaints.say("unknown-kind", text.kind.span,
                                     "there is no kind of part or box called " + in_quotes(text.kind.text));
  const Names names = [&] {
    std::vector<std::string> all = bench.catalog.names();
    for (const auto& [name, box] : bench.boxes) all.emplace_back(name);
    return all;
  };
  wrong.expected = bench.complaints.nearest_few(text.kind.text, names, 5);
  wrong.hint = other_name_of_kind(text.kind.text);
  if (wrong.hint.empty()) wrong.hint = bench.complaints.nearest(text.kind.text, names);
}

/// Null where the name is taken.
Named* take_name(Bench& bench, std::string_view name, const Named& named) {
  const auto [known, is_new] = bench.names.try_emplace(name, named);
  if (is_new) return &known->second;
  auto& wrong =
      bench.complaints.say("repeated-name", named.span, "there is a part called " + in_quotes(name) + " already");
  wrong.notes.push_back({known->second.span, "the first one"});
  return nullptr;
}

Properties properties_of(Bench& bench, Frame& frame, const KindInfo& kind, const syntax::Part& text,
                         std::string_view name) {
  Properties given = read_properties(bench, kind, text.properties, frame.scope);
  check_clashes(bench, kind, given);
  if (bench.replacements.empty()) return given;
  const auto replaced = bench.replacements.find(name);
  if (replaced == bench.replacements.end()) return given;
  for (Replacement& replacement : replaced->second) {
    if (replacement.of_quantity) continue;
    replacement.used = true;
    Properties others = read_properties(bench, kind, replacement.properties, bench.file_frame.scope);
    check_clashes(bench, kind, others);
    replace(bench, given, std::move(others), kind, replacement.main_only);
  }
  check_clashes(bench, kind, given);
  return given;
}

Named::What what_is(const std::string& kind) {
  if (kind == "source") return Named::What::source;
  return kind == "coupling" ? Named::What::coupling : Named::What::part;
}

void build_part(PartJob& job) {
  Bench& bench = job.bench;
  read_ratings(job);
  if (std::optional<Model> model = builder_of(job.kind.name)(job))
    job.part.model = std::move(*model);
  else
    job.good = false;
  job.named.index = static_cast<int>(bench.design.parts.size());
  job.named.broken = !job.good;
  bench.network_broken = bench.network_broken || job.part.terminals.empty();
  bench.design.parts.push_back(std::move(job.part));
}

void place_of_kind(Bench& bench, Frame& frame, const KindInfo& kind, const syntax::Statement& statement,
                   const syntax::Part& text, std::string_view name, Named& named) {
  PartJob job{bench, frame, kind, text, properties_of(bench, frame, kind, text, name), name, named, {}, true};
  job.part.name = name;
  job.part.kind = text.kind.text;
  job.part.box = frame.box;
  job.part.span = statement.span;
  read_terminals(job);
  if (kind.name == "source")
    build_source(job);
  else if (kind.name == "coupling")
    build_coupling(job);
  else
    build_part(job);
}

}  // namespace

void place_part(Bench& bench, Frame& frame, const syntax::Statement& statement, const syntax::Part& text) {
  const std::string_view name = full_name(bench, frame, text.name.text);
  const KindInfo* kind = bench.catalog.find(text.kind.text);
  const auto box = bench.boxes.find(text.kind.text);
  // A box of the user's own goes before a plugin's form of one.
  if (kind != nullptr && kind->places == KindInfo::Places::box && box != bench.boxes.end()) kind = nullptr;
  const bool known = kind != nullptr || box != bench.boxes.end();
  Named named{Named::What::part, -1, text.name.span, !known};
  if (kind != nullptr)
    named.what = what_is(kind->name);
  else if (known)
    named.what = Named::What::box;
  Named* taken = take_name(bench, name, named);
  if (kind != nullptr && kind->places == KindInfo::Places::box) {
    bench.complaints.say("tuner-in-a-box", statement.span, "a tuner stands in the file or in a variant, not in a box");
    if (taken != nullptr) taken->broken = true;
    bench.network_broken = true;
    return;
  }
  if (known && taken != nullptr && kind != nullptr)
    return place_of_kind(bench, frame, *kind, statement, text, name, *taken);
  if (known && taken != nullptr) return expand_box(bench, frame, *box->second, text, statement.span);
  if (!known) say_unknown_kind(bench, text);
  bench.network_broken = true;
  flat_nodes(bench, frame, text.places);
}

}  // namespace wattfall::design
