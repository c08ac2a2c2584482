#include "feed.hpp"

#include <stdexcept>

namespace wattfall::test {

const host::Registry& registry() {
  static const host::Plugins plugins = [] {
    host::PluginSearch search;
    search.built_in = WATTFALL_PLUGIN_DIR;
    host::Plugins loaded = host::load_plugins(search);
    if (!loaded.troubles().empty()) throw std::runtime_error(loaded.troubles().front().text);
    return loaded;
  }();
  return plugins.registry();
}

Feed::Feed(const std::string& text, solve::Method method) : source(std::make_shared<const Source>("test.feed", text)) {
  const design::Catalog catalog(registry());
  const Result<syntax::File> tree = parse(source, catalog.vocabulary());
  diagnostics = tree.diagnostics;
  if (!diagnostics.empty()) return;
  design::ResolveOptions options;
  options.folder = WATTFALL_TEST_DATA;
  Result<design::DesignSet> set = design::resolve(*tree.value, catalog, registry(), options);
  diagnostics = set.diagnostics;
  if (!diagnostics.empty()) return;
  design = std::move(set.value->variants.front());
  solve_design(method);
}

Feed::Feed(design::Design given, solve::Method method) : design(std::move(given)) { solve_design(method); }

void Feed::solve_design(solve::Method method) {
  Result<graph::Network> built = graph::build_graph(design);
  diagnostics = built.diagnostics;
  if (!diagnostics.empty()) return;
  network = std::move(*built.value);
  plan = plan::make_plan(network);
  looks = judge::looks_of(design);
  solve::States states;
  states.knob_count = design.knobs.size();
  for (double hertz : design.frequencies_hz) states.add(hertz, design.starting_knobs());
  solution = solve::solve(design, network, plan, states, looks, method);
  ledger = ledger::book(design, network, solution, looks);
}

const ledger::PartBook& Feed::part(const std::string& name) const {
  for (const ledger::PartBook& book : ledger.parts)
    if (design.parts[book.part.index].name == name) return book;
  throw std::runtime_error("no part " + name);
}

const ledger::LoadBook& Feed::load(const std::string& name) const {
  for (const ledger::LoadBook& book : ledger.loads)
    if (design.parts[book.part.index].name == name) return book;
  throw std::runtime_error("no load " + name);
}

std::vector<std::string> codes(const Diagnostics& diagnostics) {
  std::vector<std::string> found;
  for (const Diagnostic& diagnostic : diagnostics) found.push_back(diagnostic.code);
  return found;
}

}  // namespace wattfall::test
