#include "engine/run.hpp"

#include <algorithm>
#include <cmath>
#include <future>
#include <optional>

#include "follow_ups.hpp"
#include "graph/build_graph.hpp"
#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "ledger/book.hpp"
#include "plan/make_plan.hpp"
#include "progress/counted_optimizer.hpp"
#include "report/document.hpp"
#include "report/moments.hpp"
#include "solve/solve.hpp"
#include "tune/tune.hpp"

namespace wattfall {
namespace {

/// One variant's stages, and what each made: later ones point into earlier ones.
struct VariantRun {
  const design::Design* design = nullptr;
  std::optional<graph::Network> network;
  plan::Plan plan;
  tune::Tuning tuning;
  ledger::Ledger ledger;
  report::VariantResult result;
  Diagnostics diagnostics;
};

solve::States states_of(const design::Design& design, const tune::Tuning& tuning) {
  solve::States states;
  states.knob_count = design.knobs.size();
  for (std::size_t s = 0; s < design.frequencies_hz.size(); ++s)
    states.add(design.frequencies_hz[s], tuning.settings[s]);
  return states;
}

std::vector<report::Setting> settings_of(const design::Design& design, const tune::Tuning& tuning) {
  std::vector<report::Setting> settings;
  for (std::size_t k = 0; k < design.knobs.size(); ++k) {
    const design::Knob& knob = design.knobs[k];
    report::Setting setting{.knob = design::KnobId{static_cast<int>(k)}, .values = {}, .at_end = {}};
    const double lower = knob.choices.empty() ? knob.lower : knob.choices.front();
    const double upper = knob.choices.empty() ? knob.upper : knob.choices.back();
    for (const std::vector<double>& values : tuning.settings) {
      setting.values.push_back(values[k]);
      setting.at_end.push_back(std::abs(values[k] - lower) <= 1e-6 * std::abs(lower) ||
                               std::abs(values[k] - upper) <= 1e-6 * std::abs(upper));
    }
    settings.push_back(std::move(setting));
  }
  return settings;
}

report::VariantResult::Story story_of(const VariantRun& run, const solve::Solution& solution) {
  report::VariantResult::Story story;
  story.unknowns = run.plan.unknowns;
  story.operations = run.plan.operations.size();
  story.states = solution.states.size();
  story.robust_states = solution.robust_count();
  story.robust_why = solution.robust_why();
  for (std::size_t s = 0; s < solution.states.size(); ++s)
    story.worst_residual =
        std::max(story.worst_residual, std::abs(run.ledger.totals.residual_w[s]) / run.ledger.totals.available_w[s]);
  story.tuner_evaluations = run.tuning.evaluations;
  return story;
}

/// Volts and amps along the lines where reports dwell: at a few points of a sweep; of a network of very many lines at the worst alone.
std::vector<ledger::LineCurve> line_curves_of(const VariantRun& run, const solve::Solution& solution) {
  constexpr std::size_t many_parts = 200;
  if (run.ledger.frequencies_hz.empty()) return {};
  const report::Moments moments = report::find_moments(run.ledger);
  const bool few = run.design->parts.size() <= many_parts;
  return ledger::sample_lines(*run.design, *run.network, solution, run.ledger, few ? moments.shown : std::vector{moments.worst});
}

/// The network leaves something undetermined at every point: there is nothing to report.
Diagnostic unsolved(const design::Design& design) {
  return {.code = "undetermined",
          .span = design.source.span,
          .text = "the network leaves something undetermined at every frequency, so it cannot be solved",
          .expected = "a loss, however small, in every loop and resonance that the source does not reach",
          .fault = Fault::numeric};
}

VariantRun run_variant(const design::Design& design, const host::Registry& registry, const RunOptions& options) {
  VariantRun run;
  run.design = &design;
  Result<graph::Network> network = graph::build_graph(design);
  run.diagnostics = std::move(network.diagnostics);
  if (!run.diagnostics.empty()) return run;
  run.network = std::move(network.value);

  run.plan = plan::make_plan(*run.network);

  design::Design asked = design;
  if (options.resolve.as_written) asked.tunes.clear();
  const CountedOptimizer optimizer(registry.find_optimizer(), options.progress);
  Result<tune::Tuning> tuning = tune::tune(asked, *run.network, run.plan, optimizer.get());
  run.diagnostics = std::move(tuning.diagnostics);
  if (!run.diagnostics.empty()) return run;
  run.tuning = std::move(*tuning.value);

  const std::vector<design::Look> looks = judge::looks_of(design);
  const solve::Solution solution =
      solve::solve(design, *run.network, run.plan, states_of(design, run.tuning), looks, solve::Method::guarded, options.threads, options.progress);
  if (std::count(solution.untrusted.begin(), solution.untrusted.end(), 1) ==
      static_cast<std::ptrdiff_t>(solution.untrusted.size())) {
    run.diagnostics.push_back(unsolved(design));
    return run;
  }

  run.ledger = ledger::book(design, *run.network, solution, looks);

  run.result.judgement = judge::judge(design, run.ledger, solution);
  auto& warnings = run.result.judgement.warnings;
  warnings.insert(warnings.begin(), run.tuning.warnings.begin(), run.tuning.warnings.end());

  run.result.line_curves = line_curves_of(run, solution);
  run.result.design = &design;
  run.result.tuned = !asked.tunes.empty();
  run.result.settings = settings_of(design, run.tuning);
  run.result.searches = run.tuning.searches;
  for (std::size_t p = 0; p < design.planes.size(); ++p) {
    const auto same = [&](const design::Look& look) {
      return look.node == design.planes[p].look.node && look.into == design.planes[p].look.into;
    };
    run.result.plane_looks.push_back(
        static_cast<std::size_t>(std::find_if(looks.begin(), looks.end(), same) - looks.begin()));
  }
  run.result.story = story_of(run, solution);
  return run;
}

std::size_t searches_of(const design::Design& design) {
  std::size_t searches = 0;
  for (const design::Tune& statement : design.tunes)
    searches += statement.when == design::Tune::When::at        ? statement.at_hz.size()
                : statement.when == design::Tune::When::at_each ? design.frequencies_hz.size()
                                                                : 1;
  return searches;
}

/// What is to come, as far as it is known before.
void expect(const design::DesignSet& designs, const RunOptions& options) {
  if (options.progress == nullptr) return;
  options.progress->expect(Progress::Work::variants, designs.variants.size());
  for (const design::Design& design : designs.variants) {
    options.progress->expect(Progress::Work::points, design.frequencies_hz.size());
    if (!options.resolve.as_written) options.progress->expect(Progress::Work::searches, searches_of(design));
  }
}

/// Variants side by side, in the order of the text whatever the number of threads.
std::vector<VariantRun> run_variants(const design::DesignSet& designs, const host::Registry& registry,
                                     const RunOptions& options) {
  expect(designs, options);
  std::vector<VariantRun> runs(designs.variants.size());
  // A thread for a single variant would only cost its making.
  const bool side_by_side = options.threads > 1 && runs.size() > 1;
  for (std::size_t first = 0; first < runs.size(); first += std::max(1u, options.threads)) {
    std::vector<std::future<VariantRun>> pending;
    for (std::size_t v = first; v < std::min<std::size_t>(runs.size(), first + std::max(1u, options.threads)); ++v)
      pending.push_back(std::async(side_by_side ? std::launch::async : std::launch::deferred, run_variant,
                                   std::cref(designs.variants[v]), std::cref(registry), std::cref(options)));
    for (std::size_t i = 0; i < pending.size(); ++i) {
      runs[first + i] = pending[i].get();
      if (options.progress != nullptr) options.progress->add(Progress::Work::variants);
    }
  }
  return runs;
}

void append(Diagnostics& all, const Diagnostics& more) {
  all.insert(all.end(), more.begin(), more.end());
}

/// Several variants are tuned by one statement, so what became of one says which it was.
void name_variant(Diagnostics& diagnostics, const design::Design& design) {
  if (!design.variant) return;
  for (Diagnostic& diagnostic : diagnostics)
    if (diagnostic.fault == Fault::numeric) diagnostic.text = "in \"" + *design.variant + "\" " + diagnostic.text;
}

/// All that is wrong with it is that its form of tuner cannot do what is asked.
bool form_falls_short(const VariantRun& run) {
  return !run.design->form.empty() && !run.diagnostics.empty() &&
         std::all_of(run.diagnostics.begin(), run.diagnostics.end(),
                     [](const Diagnostic& one) { return one.code == "keeping-not-reached"; });
}

/// `any` asks which forms of tuner do: those that do not are no mistake of the text while another one does.
report::SetAsides set_aside_forms(std::vector<VariantRun>& runs) {
  report::SetAsides set_aside;
  std::vector<VariantRun> stay;
  const auto has_another = [&](const VariantRun& short_of) {
    return std::any_of(runs.begin(), runs.end(), [&](const VariantRun& run) {
      return run.diagnostics.empty() && run.design->written == short_of.design->written;
    });
  };
  std::vector<bool> goes;
  for (const VariantRun& run : runs) goes.push_back(form_falls_short(run) && has_another(run));
  for (std::size_t v = 0; v < runs.size(); ++v) {
    if (!goes[v]) {
      stay.push_back(std::move(runs[v]));
      continue;
    }
    for (const Diagnostic& one : runs[v].diagnostics)
      set_aside.push_back({*runs[v].design->variant, one.code, one.text, one.advice});
  }
  runs = std::move(stay);
  return set_aside;
}

/// What the results of a study point into.
struct Kept {
  design::DesignSet designs;
  std::vector<VariantRun> runs;
};

}  // namespace

Study study(const SourcePtr& text, const host::Registry& registry, const RunOptions& options) {
  Study study;
  study.sources.push_back(text);
  const design::Catalog catalog(registry);

  const Result<syntax::File> tree = parse(text, catalog.vocabulary());
  study.diagnostics = tree.diagnostics;
  if (!tree.value || gave_up(tree.diagnostics)) return study;

  Result<design::DesignSet> designs = design::resolve(*tree.value, catalog, registry, options.resolve);
  append(study.diagnostics, without_follow_ups(*text, tree.diagnostics, designs.diagnostics));
  sort_by_place(study.diagnostics);
  if (!study.diagnostics.empty()) return study;
  for (const design::Design& design : designs.value->variants)
    study.sources.insert(study.sources.end(), design.sources.begin(), design.sources.end());

  const auto kept = std::make_shared<Kept>();
  kept->designs = std::move(*designs.value);
  kept->runs = run_variants(kept->designs, registry, options);
  study.set_aside = set_aside_forms(kept->runs);
  for (VariantRun& variant : kept->runs) {
    name_variant(variant.diagnostics, *variant.design);
    append(study.diagnostics, variant.diagnostics);
  }
  sort_by_place(study.diagnostics);
  if (!study.diagnostics.empty()) return study;

  for (VariantRun& variant : kept->runs) {
    variant.result.ledger = &variant.ledger;
    study.requirements_met &= variant.result.judgement.all_met();
    study.results.push_back(variant.result);
  }
  study.keeps = kept;
  return study;
}

Outcome run(const SourcePtr& text, const host::Registry& registry, const RunOptions& options) {
  Study found = study(text, registry, options);
  Outcome outcome;
  outcome.diagnostics = std::move(found.diagnostics);
  outcome.requirements_met = found.requirements_met;
  outcome.sources = std::move(found.sources);
  if (outcome.diagnostics.empty())
    outcome.document = report::make_document("run", registry, found.results, found.set_aside);
  return outcome;
}

}  // namespace wattfall
