// Syntax tree -> designs, one a variant. Reads like a contents page: each step stands in a file of its own and leaves
// what it found wrong in the list of complaints.
#include "design/resolve.hpp"

#include <algorithm>
#include <set>

#include "define.hpp"
#include "files.hpp"
#include "gather.hpp"
#include "grammar/nearest_name.hpp"
#include "place_parts.hpp"
#include "requests.hpp"
#include "settings.hpp"
#include "tuners.hpp"

namespace wattfall::design {
namespace {

// Variants share what stands outside them, yet each is a design of its own: a small file may be a large set of designs.
// So the language's limits hold for all variants together, and their text may come to eight times a file's.
constexpr std::size_t most_points_in_all = 1'000'000;
constexpr std::size_t most_bytes_in_all = 8u << 20;

/// What the variants come to together, so far.
struct InAll {
  std::size_t bytes = 0, parts = 0, points = 0;
};

struct Work {
  const Gathered* gathered;  ///< of the trial at hand
  OptionTexts& options_texts;
  std::set<std::string> known_names;  ///< of quantities and parts, for hints
};

Statements joined(Statements common, const Statements& of_variant) {
  common.insert(common.end(), of_variant.begin(), of_variant.end());
  return common;
}

bool fits_limit(const InAll& all, const Level& level, Complaints& complaints) {
  std::string too_much;
  if (all.bytes > most_bytes_in_all) too_much = "8 MiB of text, what they share counted in each";
  if (all.points > most_points_in_all) too_much = "1,000,000 sweep points";
  if (too_much.empty()) return true;
  complaints.say("too-many-variants", level.name == nullptr ? Span{} : level.name->span,
                 "with this the variants have more than " + too_much);
  return false;
}

void place_parts(Bench& bench, const Statements& parts) {
  bench.design.nodes.push_back({"ground", {}});
  if (too_many_parts(bench, parts)) {
    bench.network_broken = true;
    return;
  }
  bench.names.reserve(parts.size());
  bench.nodes.reserve(parts.size());
  bench.design.parts.reserve(parts.size());
  for (const syntax::Statement* statement : parts)
    place_part(bench, bench.file_frame, *statement, std::get<syntax::Part>(statement->what));
  join_couplings(bench);
}

void read_requests(Bench& bench, const Statements& statements, const OptionTexts& options) {
  read_sweeps(bench, statements, options.at, options.sweep, options.sweep_span);
  const Adjacency adjacency(bench.design);
  read_tunes(bench, adjacency, statements);
  read_requirements_and_planes(bench, adjacency, statements);
  for (const syntax::File& file : options.figures)
    for (const syntax::Statement& statement : file.statements)
      if (const auto* asked = std::get_if<syntax::Require>(&statement.what))
        if (auto figure = settle_figure(bench, adjacency, asked->requirement->figure)) bench.design.figures.push_back(std::move(*figure));
  check_late(bench);
}

/// Only where `--set` may have named one that is not there: a large design has many.
void remember_names(const Bench& bench, Work& work) {
  if (work.options_texts.settings.empty()) return;
  for (const NamedQuantity* quantity : bench.file_frame.scope.in_order) work.known_names.emplace(quantity->name);
  for (const auto& [name, named] : bench.names) work.known_names.emplace(name);
  for (const std::string_view name : bench.box_quantities) work.known_names.emplace(name);
}

Design resolve_level(Bench& bench, const Level& level, Work& work) {
  static const Level none;
  const Level& common = work.gathered->common;
  const Level& variant = level.name == nullptr ? none : level;
  const Statements parts = joined(common.parts, variant.parts);
  const Statements statements = joined(common.statements, variant.statements);
  define_boxes(bench, statements);
  define_quantities(bench, work.gathered->common, level, work.options_texts);
  define_replacements(bench, level, work.options_texts);
  read_bands(bench, statements);
  place_parts(bench, parts);
  check_replacements(bench, work.options_texts);
  check_source(bench);
  read_requests(bench, statements, work.options_texts);
  settle_unused(bench);
  remember_names(bench, work);
  return std::move(bench.design);
}

Span start_of(const syntax::File& file, const Gathered& gathered) {
  if (gathered.title != nullptr) return gathered.title->span;
  if (!file.statements.empty()) return file.statements.front().span;
  return {file.source.get(), 0, 0};
}

/// The variants to resolve: all, or the one that was asked for.
std::vector<const Level*> levels_of(const Gathered& gathered, const ResolveOptions& options, Complaints& complaints) {
  std::vector<const Level*> levels;
  std::vector<std::string> names;
  for (const Level& variant : gathered.variants) {
    names.emplace_back(variant.name->text);
    if (!options.variant || *options.variant == variant.name->text) levels.push_back(&variant);
  }
  const auto has_tuner = [](const syntax::Statement* statement) {
    return std::get<syntax::Part>(statement->what).kind.text == tuner_kind;
  };
  // Forms of a tuner make variants too, whose names are not known yet.
  const auto& common = gathered.common.parts;
  if (gathered.variants.empty() && (!options.variant || std::any_of(common.begin(), common.end(), has_tuner)))
    levels.push_back(&gathered.common);
  if (!levels.empty()) return levels;
  auto& wrong = complaints.say("unknown-variant", {}, "there is no variant \"" + options.variant.value_or("") + "\"");
  wrong.fault = Fault::usage;
  wrong.expected = names.empty() ? "no --variant: the design has none" : nearest_first(*options.variant, names);
  wrong.hint = nearest_name(*options.variant, names);
  return levels;
}

}  // namespace

Result<DesignSet> resolve(const syntax::File& file, const Catalog& catalog, const host::Registry& registry,
                          const ResolveOptions& options) {
  Complaints complaints;
  if (file.source != nullptr) complaints.keep(file.source);
  Files files(options, file.source.get(), catalog.vocabulary(), complaints);
  OptionTexts texts = parse_options(options, complaints);
  const Gathered gathered = gather(file, files, complaints);
  Tuners tuners(registry, catalog.vocabulary(), complaints);
  Work work{&gathered, texts, {}};
  DesignSet set;
  InAll all;
  for (const Level* level : levels_of(gathered, options, complaints)) {
    bool full = false;
    for (const Trial& trial : tuners.trials(gathered, *level)) {
      const bool own_name = level->name == nullptr && !trial.label.empty();
      if (own_name && options.variant && *options.variant != trial.label) continue;
      all.bytes += gathered.common.bytes + (level->name == nullptr ? 0 : level->bytes);
      if ((full = !fits_limit(all, *level, complaints))) break;
      work.gathered = &trial.gathered;
      Bench bench{catalog, registry, options, files, complaints};
      bench.parts_before = all.parts;
      bench.place = level->name == nullptr ? start_of(file, gathered) : level->name->span;
      Design& design = set.variants.emplace_back(resolve_level(bench, *trial.level, work));
      if (gathered.title != nullptr) design.title = gathered.title->text;
      if (file.source != nullptr) design.file = file.source->name();
      if (level->name != nullptr) {
        design.written = level->name->text;
        design.variant = *design.written + (trial.label.empty() ? "" : ", " + trial.label);
      }
      if (own_name) design.variant = trial.label;
      design.form = trial.label;
      all.parts += design.parts.size();
      all.points += design.frequencies_hz.size();
      if ((full = !fits_limit(all, *level, complaints))) break;
    }
    if (full) break;
  }
  if (set.variants.empty() && options.variant && !complaints.any())
    complaints.say("unknown-variant", {}, "there is no variant or form of tuner \"" + *options.variant + "\"").fault = Fault::usage;
  if (!set.variants.empty())
    say_unknown_settings(texts, {work.known_names.begin(), work.known_names.end()}, complaints);
  for (Design& design : set.variants) {
    design.sources = {file.source};
    design.sources.insert(design.sources.end(), files.sources().begin(), files.sources().end());
    design.sources.insert(design.sources.end(), texts.sources.begin(), texts.sources.end());
    design.sources.insert(design.sources.end(), tuners.sources().begin(), tuners.sources().end());
  }
  if (complaints.any()) return {std::nullopt, complaints.take()};
  return {std::move(set), {}};
}

}  // namespace wattfall::design
