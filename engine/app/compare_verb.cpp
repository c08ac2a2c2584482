// `wattfall compare`: the variants of one file, or of several files, as columns of one document.
#include <algorithm>
#include <iterator>
#include <map>

#include "deliver.hpp"
#include "report/document.hpp"
#include "report/spelling.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

/// All files' variants in order; the studies keep alive what results and diagnostics point at.
struct Gathered {
  std::vector<Study> studies;
  std::vector<report::VariantResult> results;
  report::SetAsides set_aside;
  Diagnostics wrong;
  bool met = true;
};

void gather(const std::string& file, const Arguments& arguments, const host::Registry& registry, Progress& progress, Gathered& all) {
  const Result<SourcePtr> text = read_text(file);
  all.wrong.insert(all.wrong.end(), text.diagnostics.begin(), text.diagnostics.end());
  if (!text.value) return;
  const Study& found = all.studies.emplace_back(study(*text.value, registry, options_for(arguments, file, &progress)));
  all.wrong.insert(all.wrong.end(), found.diagnostics.begin(), found.diagnostics.end());
  all.results.insert(all.results.end(), found.results.begin(), found.results.end());
  for (report::SetAside one : found.set_aside) {
    if (arguments.files.size() > 1) one.variant = file + ": " + one.variant;
    all.set_aside.push_back(std::move(one));
  }
  all.met &= found.requirements_met;
}

/// What tells the columns apart: of one file the variants' names; of several the files' too.
std::vector<std::string> label_columns(const std::vector<report::VariantResult>& results, bool one_file) {
  std::vector<std::string> labels;
  std::map<std::string, int> used;
  for (const report::VariantResult& result : results) {
    const design::Design& design = *result.design;
    std::string label = one_file ? report::label(design) : design.file;
    if (!one_file && design.variant) label += ": " + *design.variant;
    if (const int before = used[label]++; before > 0) label += " (" + std::to_string(before + 1) + ")";
    labels.push_back(label);
  }
  return labels;
}

Diagnostic nothing_to_compare(const Arguments& arguments) {
  return {.code = "nothing-to-compare",
          .span = {},
          .text = "`" + arguments.files.front() + "` has one variant" + (arguments.variant ? " of that name" : "") + ", and there is nothing beside it",
          .expected = "a file with two variants or more, or a second file",
          .hint = {},
          .fault = Fault::usage};
}

}  // namespace

int compare_verb(const Arguments& arguments, const host::Plugins& plugins) {
  const host::Registry& registry = plugins.registry();
  if (Diagnostics wrong = check_writers(arguments.deliveries, registry); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  Progress progress;
  ProgressBar bar(progress, arguments.quiet);
  Gathered all;
  for (const std::string& file : arguments.files) gather(file, arguments, registry, progress, all);
  if (all.wrong.empty() && all.results.size() < 2) all.wrong.push_back(nothing_to_compare(arguments));
  if (!all.wrong.empty()) {
    bar.take_away();
    return refuse(arguments.deliveries, all.wrong, arguments.color);
  }

  const std::string document = report::make_compare_document(
      registry, all.results, label_columns(all.results, arguments.files.size() == 1), all.set_aside);
  if (Diagnostics wrong = deliver(document, arguments.deliveries, registry, arguments.color, bar); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  return all.met ? 0 : 1;
}

}  // namespace wattfall::app
