#include "arguments.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>
#include <iostream>
#include <string_view>

#include "grammar/nearest_name.hpp"
#include "report/document.hpp"
#include "texts.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

constexpr const char* about =
    "wattfall books every watt between a transmitter and its antenna: it reads a feed file, solves the network at "
    "every\n"
    "frequency, tunes what is adjustable, and says what the rig sees, where each watt goes and what will arc or "
    "overheat.";

constexpr const char* closing =
    "Exit codes: 0 all is well; 1 a requirement is not met; 2 wrong use of the command; 3 the design has errors;\n"
    "4 it could not be solved or tuned; 5 a file or plugin could not be read or written; 130 interrupted.";

/// What the user typed, before it is taken apart.
struct Raw {
  std::vector<std::string> settings, to;
  std::string color = "auto";
  std::optional<std::string> tolerance;
  int threads = 0;
};

void add_common(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("--plugins", arguments.plugins, "look for plugins in this folder first")->type_name("DIR");
  verb.add_flag("--no-plugins", arguments.no_plugins, "load the built-in plugins alone");
  verb.add_flag("--quiet", arguments.quiet, "say nothing on standard error but errors");
  verb.add_option("--color", raw.color, "colours: auto (on a terminal, unless NO_COLOR is set), always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}))
      ->type_name("WHEN");
}

void add_reports(CLI::App& verb, Raw& raw) {
  verb.add_option("--to", raw.to,
                  "write a report: text, json, csv ...; to a file, or to standard output (default: text)")
      ->type_name("WRITER[=PATH]")
      ->allow_extra_args(false);
}

void add_threads(CLI::App& verb, Raw& raw) {
  verb.add_option("--threads", raw.threads, "threads to use; the answer is the same for any number")
      ->check(CLI::Range(1, 1024))
      ->type_name("N");
}

void add_allow(CLI::App& verb, Arguments& arguments) {
  verb.add_option("--allow", arguments.allow, "let the design read files of this folder too")
      ->type_name("DIR")
      ->allow_extra_args(false);
}

/// How a design is read and solved, and where its reports go: for every verb that solves one.
void add_solving(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("--variant", arguments.variant, "this variant only")->type_name("NAME");
  verb.add_option("--set", raw.settings, "give a quantity, or a part's main value, another value: --set run=30m")
      ->type_name("NAME=VALUE")
      ->allow_extra_args(false);
  auto* at = verb.add_option("--at", arguments.at, "solve at this frequency instead of the file's sweeps: --at 7.1MHz");
  at->type_name("F")->allow_extra_args(false);
  auto* sweep = verb.add_option("--sweep", arguments.sweep,
                                "solve over this sweep instead: --sweep \"7 MHz to 7.2 MHz step 10 kHz\"");
  sweep->type_name("RANGE")->excludes(at);
  verb.add_flag("--as-written", arguments.as_written, "leave the knobs where the file has them");
  add_reports(verb, raw);
  add_threads(verb, raw);
  add_allow(verb, arguments);
}

// ---- the verbs: a block each, and its line in `verbs` below -------------------------------------------------------

void add_run(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("FILE", arguments.file, "the feed file; - reads standard input")->required();
  add_solving(verb, arguments, raw);
  verb.footer("Example:\n  wattfall run cabin.feed --to text --to csv=cabin.csv");
}

void add_compare(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("FILE", arguments.files, "one feed file with variants, or several files; - reads standard input")
      ->required();
  add_solving(verb, arguments, raw);
  verb.footer("Examples:\n  wattfall compare tuner.feed\n  wattfall compare old.feed new.feed --to markdown=what_changed.md");
}

void add_check(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("PATH", arguments.files, "feed files, or folders: every *.feed in them and below is checked")->required();
  verb.add_flag("--accept", arguments.accept, "write NAME.baseline.json beside each NAME.feed that has no errors: what later checks hold to");
  verb.add_option("--tolerance", raw.tolerance, "with --accept: how much worse a figure may get, such as 0.5% (the default) or 2%")
      ->type_name("PERCENT");
  add_solving(verb, arguments, raw);
  verb.footer(
      "Examples:\n  wattfall check designs --accept\n  wattfall check designs --to text --to junit=report.xml");
}

void add_weigh(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("FILE", arguments.file, "the feed file; - reads standard input")->required();
  verb.add_option("--figure", arguments.figures, "weigh this figure too: --figure \"heat in coax\" (see: wattfall list figures)")
      ->type_name("FIGURE")
      ->allow_extra_args(false);
  add_solving(verb, arguments, raw);
  verb.footer("Example:\n  wattfall weigh cabin.feed --figure \"loss in coax\" --at 7.1MHz");
}

void add_walk(CLI::App& verb, Arguments& arguments, Raw& raw) {
  verb.add_option("FILE", arguments.file, "the feed file; - reads standard input")->required();
  add_solving(verb, arguments, raw);
  verb.footer("Of a sweep the middle frequency is walked, or those of --at.\nExample:\n  wattfall walk cabin.feed --at 7.1MHz");
}

void add_list(CLI::App& verb, Arguments& arguments, Raw&) {
  verb.add_option("WHAT", arguments.what, "kinds, cables, metals, dielectrics, cores, capacitors, plugins, units, figures or writers")
      ->check(CLI::IsMember({"kinds", "cables", "metals", "dielectrics", "cores", "capacitors", "plugins", "units", "figures", "writers"}));
  verb.add_option("NAME", arguments.name, "one of them, in full (kinds, cables)");
  verb.footer("Example:\n  wattfall list cables\n  wattfall list kinds capacitor");
}

void add_format(CLI::App& verb, Arguments& arguments, Raw&) {
  verb.add_option("FILE", arguments.files, "the feed files; - alone reads standard input and prints the result")
      ->required();
  verb.add_flag("--check", arguments.check_only,
                "change nothing; name the files that would change, and exit with 1 where there are any");
  verb.footer("Examples:\n  wattfall format cabin.feed\n  wattfall format --check *.feed");
  verb.callback([&arguments] {
    if (arguments.files.size() > 1 &&
        std::find(arguments.files.begin(), arguments.files.end(), "-") != arguments.files.end())
      throw CLI::ValidationError("FILE",
                                 "- stands alone: what it prints would run into what is said about the other files");
  });
}

struct Verb {
  const char* name;
  const char* meaning;
  void (*add)(CLI::App& verb, Arguments& arguments, Raw& raw);  ///< its own options, and an example
  VerbFunction work;
};

constexpr Verb verbs[] = {
    {"run", "tune, sweep, book every watt, judge each requirement, report", add_run, run_verb},
    {"compare", "variants of a file, or several files, side by side: figures, differences, the better one and why",
     add_compare, compare_verb},
    {"check", "for CI: requirements, ratings and baselines of every design under the paths", add_check, check_verb},
    {"weigh", "how much every value moves each required figure, the strongest first", add_weigh, weigh_verb},
    {"walk", "the hand calculation: series and parallel, step by step, from the load to the rig and back", add_walk, walk_verb},
    {"list", "what is known, and which plugin brought it", add_list, list_verb},
    {"format", "rewrite feed files in the standard layout, comments kept", add_format, format_verb},
};

const Verb* find_verb(std::string_view name) {
  const auto found = std::find_if(std::begin(verbs), std::end(verbs), [&](const Verb& verb) { return name == verb.name; });
  return found == std::end(verbs) ? nullptr : found;
}

void add_verb(CLI::App& app, const Verb& verb, Arguments& arguments, Raw& raw) {
  CLI::App* added = app.add_subcommand(verb.name, verb.meaning);
  verb.add(*added, arguments, raw);
  add_common(*added, arguments, raw);
  added->parse_complete_callback([&arguments, &verb] { arguments.work = verb.work; });
}

/// `--print WHAT` needs no verb.
void add_texts(CLI::App& app) {
  const auto print = [&app](const std::string& what) {
    std::string text = make_text(what, app);
    text.pop_back();  // a line end follows
    throw CLI::CallForVersion(text, static_cast<int>(CLI::ExitCodes::Success));
  };
  app.add_option_function<std::string>("--print", print, "print the manual page, or the completions for a shell")
      ->check(CLI::IsMember(texts()))
      ->type_name("WHAT");
}

/// `text` without blanks at either end.
std::string trimmed(const std::string& text) {
  const std::size_t begin = text.find_first_not_of(' ');
  return begin == std::string::npos ? "" : text.substr(begin, text.find_last_not_of(' ') + 1 - begin);
}

/// "0.5%", "0.5 %" or "0.5": per cent, as a share.
double read_tolerance(const std::string& text) {
  std::string digits = text;
  if (digits.ends_with('%')) digits.pop_back();
  digits = trimmed(digits);
  double percent = 0.0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), percent);
  if (digits.empty() || error != std::errc() || end != digits.data() + digits.size() || !(percent >= 0.0) || percent > 100.0)
    throw CLI::ValidationError("--tolerance", "takes per cent from 0 to 100, such as 0.5%, not \"" + text + "\"");
  return percent / 100.0;
}

void take_apart(const Raw& raw, Arguments& arguments) {
  for (const std::string& text : raw.settings) {
    const std::size_t equals = text.find('=');
    const std::string name = trimmed(text.substr(0, equals));
    const std::string value = equals == std::string::npos ? "" : trimmed(text.substr(equals + 1));
    if (name.empty() || value.empty())
      throw CLI::ValidationError("--set", "takes NAME=VALUE, such as run=30m, not \"" + text + "\"");
    arguments.settings.emplace_back(name, value);
  }
  int to_output = 0;
  for (const std::string& text : raw.to) {
    const std::size_t equals = text.find('=');
    Delivery delivery{text.substr(0, equals), std::nullopt};
    if (equals != std::string::npos) delivery.path = text.substr(equals + 1);
    if (delivery.writer.empty() || (delivery.path && delivery.path->empty()))
      throw CLI::ValidationError("--to", "takes WRITER or WRITER=PATH, not \"" + text + "\"");
    if (!delivery.path && ++to_output > 1)
      throw CLI::ValidationError("--to", "one writer at most can have standard output: give the others a path");
    arguments.deliveries.push_back(delivery);
  }
  if (arguments.deliveries.empty()) arguments.deliveries.push_back({"text", std::nullopt});
  if (raw.tolerance) arguments.tolerance = read_tolerance(*raw.tolerance);
  arguments.color = raw.color == "always" ? Color::always : raw.color == "never" ? Color::never : Color::automatic;
  arguments.threads = static_cast<unsigned>(raw.threads);
}

/// Whether standard output was to have JSON: asked of a command line that could not be read as a whole.
bool asks_for_json(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    const std::string_view word = argv[i];
    if (word == "--to=json" || (word == "--to" && i + 1 < argc && std::string_view(argv[i + 1]) == "json")) return true;
  }
  return false;
}

/// A word in the verb's place that is no verb; the parser of the command line would only say that one is missing.
void check_verb(int argc, char** argv) {
  if (argc < 2 || argv[1][0] == '-') return;
  if (find_verb(argv[1]) != nullptr) return;
  std::vector<std::string> names;
  for (const Verb& verb : verbs) names.emplace_back(verb.name);
  const std::string near = nearest_name(argv[1], names);
  throw CLI::ParseError(std::string("there is no verb `") + argv[1] + "`; " +
                            (near.empty() ? "expected: " + nearest_first(argv[1], names) : "did you mean: " + near),
                        CLI::ExitCodes::InvalidError);
}

/// Help and version where they were asked for; what is wrong with the command line otherwise.
int stop(const CLI::App& app, const CLI::ParseError& error, bool as_json) {
  const bool wrong = error.get_exit_code() != static_cast<int>(CLI::ExitCodes::Success);
  if (wrong && as_json)
    std::cout << report::make_error_document(
        {{.code = "usage", .span = {}, .text = error.what(), .fault = Fault::usage}});
  else
    app.exit(error, std::cout, std::cerr);
  return wrong ? 2 : 0;
}

}  // namespace

std::optional<Arguments> read_arguments(int argc, char** argv, int& exit_code) {
  Arguments arguments;
  Raw raw;
  CLI::App app(about, "wattfall");
  app.set_version_flag("--version", "wattfall " WATTFALL_VERSION);
  app.require_subcommand(1);
  app.footer(closing);
  // One verb's options are enough where the command line begins with it: making all of them takes as long as solving a design.
  const Verb* const only = argc < 2 ? nullptr : find_verb(argv[1]);
  for (const Verb& verb : verbs)
    if (only == nullptr || only == &verb) add_verb(app, verb, arguments, raw);
  add_texts(app);
  try {
    check_verb(argc, argv);
    app.parse(argc, argv);
    take_apart(raw, arguments);
  } catch (const CLI::ParseError& error) {
    exit_code = stop(app, error, asks_for_json(argc, argv));
    return std::nullopt;
  }
  return arguments;
}

}  // namespace wattfall::app
