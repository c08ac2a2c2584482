// `wattfall check`: every design under the paths, side by side on the threads, in the order of their names.
#include <algorithm>
#include <atomic>
#include <future>
#include <iostream>
#include <iterator>
#include <set>

#include "baseline/check_document.hpp"
#include "deliver.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

namespace fs = std::filesystem;

constexpr const char* feed_ending = ".feed";

/// A feed file to check. One that was only come upon in a folder may turn out to be a part of another design.
struct Found {
  std::string file;
  bool asked_for = false;
};

struct Checked {
  Found found;
  baseline::DesignCheck design;
  std::string accepted;             ///< the baseline to write; empty without --accept
  Diagnostics wrong;
  std::vector<SourcePtr> sources;   ///< what `wrong` points into
  std::set<fs::path> reads;         ///< other texts that the design is made of
};

Diagnostic unreadable(const std::string& path, const std::string& why) {
  return {.code = "unreadable", .span = {}, .text = "`" + path + "` could not be read: " + why, .fault = Fault::file};
}

void look_into(const std::string& folder, std::vector<Found>& found, Diagnostics& wrong) {
  std::error_code error;
  fs::recursive_directory_iterator walk(folder, error);
  for (; !error && walk != fs::recursive_directory_iterator(); walk.increment(error))
    if (walk->path().extension() == feed_ending && walk->is_regular_file()) found.push_back({walk->path().lexically_normal().string(), false});
  if (error) wrong.push_back(unreadable(folder, error.message()));
}

/// By name, each once: the order does not depend on the file system.
std::vector<Found> find_feeds(const std::vector<std::string>& paths, Diagnostics& wrong) {
  std::vector<Found> found;
  for (const std::string& path : paths) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (fs::is_directory(status)) {
      look_into(path, found, wrong);
    } else if (fs::exists(status)) {
      found.push_back({path, true});
    } else {
      wrong.push_back(unreadable(path, "there is no such file or folder"));
    }
  }
  std::sort(found.begin(), found.end(), [](const Found& a, const Found& b) { return a.file != b.file ? a.file < b.file : a.asked_for > b.asked_for; });
  found.erase(std::unique(found.begin(), found.end(), [](const Found& a, const Found& b) { return a.file == b.file; }), found.end());
  if (found.empty() && wrong.empty())
    wrong.push_back({.code = "no-designs",
                     .span = {},
                     .text = "there is no `*.feed` under the paths given",
                     .expected = "a feed file, or a folder that has one in it or below",
                     .hint = {},
                     .fault = Fault::file});
  return found;
}

std::string baseline_path(const std::string& file) {
  return fs::path(file).replace_extension(".baseline.json").string();
}

/// None where there is no such file; what cannot be read as a baseline is an error.
std::optional<baseline::Baseline> read_baseline(const std::string& path, Diagnostics& wrong) {
  std::error_code error;
  if (!fs::exists(fs::symlink_status(path, error))) return std::nullopt;
  const Result<SourcePtr> text = read_text(path, std::size_t{1} << 26);
  if (!text.value) {
    wrong = text.diagnostics;
    return std::nullopt;
  }
  Result<baseline::Baseline> read = baseline::read(*text.value);
  wrong = std::move(read.diagnostics);
  return std::move(read.value);
}

/// The same for every way of writing a path; as it stands where it cannot be followed.
fs::path whole_path(const std::string& path) {
  std::error_code error;
  const fs::path whole = fs::weakly_canonical(path, error);
  return error ? fs::path(path) : whole;
}

Checked check_one(const Found& found, const Arguments& arguments, const host::Registry& registry, unsigned threads, Progress& progress) {
  Checked checked{.found = found, .design = {}, .accepted = {}, .wrong = {}, .sources = {}, .reads = {}};
  const Result<SourcePtr> text = read_text(found.file);
  checked.wrong = text.diagnostics;
  if (!text.value) return checked;
  RunOptions options = options_for(arguments, found.file, &progress);
  options.threads = threads;
  const Study made = study(*text.value, registry, options);
  checked.wrong = made.diagnostics;
  checked.sources = made.sources;
  for (const SourcePtr& source : made.sources)
    if (source != *text.value) checked.reads.insert(whole_path(source->name()));
  if (!checked.wrong.empty()) return checked;

  const std::string path = baseline_path(found.file);
  std::optional<baseline::Baseline> was;
  if (arguments.accept) {
    was = baseline::take(made.results, arguments.tolerance.value_or(baseline::default_tolerance));
    checked.accepted = baseline::write(*was, made.results.front().design->title, fs::path(found.file).filename().string());
  } else {
    was = read_baseline(path, checked.wrong);
  }
  checked.design = baseline::check(made.results, was, arguments.variant.has_value(), made.set_aside);
  if (arguments.accept) checked.design.baseline = baseline::DesignCheck::State::accepted;
  checked.design.file = found.file;
  checked.design.title = made.results.front().design->title;
  checked.design.baseline_path = path;
  return checked;
}

/// Designs are handed to the threads one by one; each result has its own place, so their order is that of `found`.
std::vector<Checked> check_all(const std::vector<Found>& found, const Arguments& arguments, const host::Registry& registry, Progress& progress) {
  std::vector<Checked> checked(found.size());
  const unsigned threads = threads_of(arguments);
  const std::size_t workers = std::min<std::size_t>(threads, found.size());
  progress.expect(Progress::Work::designs, found.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < found.size(); i = next++) {
      checked[i] = check_one(found[i], arguments, registry, found.size() == 1 ? threads : 1, progress);
      progress.add(Progress::Work::designs);
    }
  };
  std::vector<std::future<void>> pending;
  for (std::size_t w = 1; w < workers; ++w) pending.push_back(std::async(std::launch::async, work));
  work();
  for (std::future<void>& one : pending) one.get();
  return checked;
}

/// Texts that another design includes, and that are none by themselves, are left aside unless they were named.
void leave_out_parts(std::vector<Checked>& checked) {
  std::set<fs::path> read;
  for (const Checked& one : checked) read.insert(one.reads.begin(), one.reads.end());
  std::erase_if(checked, [&](const Checked& one) {
    const bool no_design = std::any_of(one.wrong.begin(), one.wrong.end(), [](const Diagnostic& wrong) { return wrong.code == "no-source"; });
    return !one.found.asked_for && no_design && read.contains(whole_path(one.found.file));
  });
}

Diagnostics accept_changes(const Arguments& arguments) {
  const bool changed = arguments.variant || !arguments.settings.empty() || !arguments.at.empty() || arguments.sweep || arguments.as_written;
  if (arguments.accept && changed)
    return {{.code = "usage",
             .span = {},
             .text = "a baseline is of the design as its file has it: --accept goes without --variant, --set, --at, --sweep and --as-written",
             .fault = Fault::usage}};
  if (arguments.tolerance && !arguments.accept)
    return {{.code = "usage", .span = {}, .text = "--tolerance is written into baselines, so it goes with --accept", .fault = Fault::usage}};
  return {};
}

Diagnostics write_baselines(const std::vector<Checked>& checked) {
  Diagnostics wrong;
  for (const Checked& one : checked) {
    if (!one.wrong.empty() || one.accepted.empty()) continue;
    const std::string path = baseline_path(one.found.file);
    if (const Result<SourcePtr> old = read_text(path, std::size_t{1} << 26); old.value && (*old.value)->text() == one.accepted) continue;
    Diagnostics failed = replace_file(path, one.accepted);
    wrong.insert(wrong.end(), std::make_move_iterator(failed.begin()), std::make_move_iterator(failed.end()));
  }
  return wrong;
}

}  // namespace

int check_verb(const Arguments& arguments, const host::Plugins& plugins) {
  const host::Registry& registry = plugins.registry();
  Diagnostics wrong = check_writers(arguments.deliveries, registry);
  if (wrong.empty()) wrong = accept_changes(arguments);
  if (!wrong.empty()) return refuse(arguments.deliveries, wrong, arguments.color);

  const std::vector<Found> found = find_feeds(arguments.files, wrong);
  Progress progress;
  ProgressBar bar(progress, arguments.quiet);
  std::vector<Checked> checked = check_all(found, arguments, registry, progress);
  leave_out_parts(checked);
  if (Diagnostics failed = write_baselines(checked); !failed.empty()) wrong.insert(wrong.end(), failed.begin(), failed.end());
  std::vector<baseline::DesignCheck> designs;
  for (const Checked& one : checked) {
    wrong.insert(wrong.end(), one.wrong.begin(), one.wrong.end());
    if (one.wrong.empty()) designs.push_back(one.design);
  }
  const std::string document = baseline::make_check_document(designs, arguments.files);
  if (!wrong.empty()) {
    bar.take_away();
    const int code = refuse(arguments.deliveries, wrong, arguments.color);
    // No report is made, but what could be checked should not be lost to whoever reads the log.
    if (!designs.empty() && !arguments.quiet)
      std::cerr << "\nThe designs without errors:\n\n" << read_aloud(document, registry, wants_color(arguments.color, STDERR_FILENO));
    return code;
  }

  if (wrong = deliver(document, arguments.deliveries, registry, arguments.color, bar); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  return std::all_of(designs.begin(), designs.end(), [](const baseline::DesignCheck& one) { return one.passes(); }) ? 0 : 1;
}

}  // namespace wattfall::app
