// How fast the solver is beside plain methods. Every answer is first shown to agree with every baseline's; then all run interleaved, and
// medians are what counts. tests/bench/run makes the table.
#include <benchmark/benchmark.h>
#include <spawn.h>
#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <numbers>
#include <random>

#include "../../engine/solve/workspace.hpp"
#include "cases.hpp"
#include "designs.hpp"
#include "peak.hpp"
#include "report/document.hpp"
#include "solve/collapse.hpp"
#include "tune/tune.hpp"

extern char** environ;

namespace {

using namespace wattfall;
using bench::Case;

void count_points(benchmark::State& state, std::size_t each) {
  state.SetItemsProcessed(static_cast<int64_t>(state.iterations() * each));
}

// ---- whole work ---------------------------------------------------------------------------------------------------

void solve_points(benchmark::State& state, const Case* given) {
  solve::Solver solver(given->feed.design, given->feed.network, given->feed.plan);
  solve::Solution solution;
  for (auto step : state) {
    solver.run(given->states, solution, solve::Keep::figures);
    benchmark::DoNotOptimize(solution.flows[0].heat1_w.data());
    benchmark::ClobberMemory();
  }
  state.counters["robust"] = static_cast<double>(solution.robust_count());
  count_points(state, given->states.size());
}

/// As a caller has it who asks once: the program compiled and the answer's memory had anew.
void solve_once(benchmark::State& state, const Case* given) {
  for (auto step : state) {
    const solve::Solution solution =
        solve::solve(given->feed.design, given->feed.network, given->feed.plan, given->states);
    benchmark::DoNotOptimize(solution.flows[0].heat1_w.data());
  }
  count_points(state, given->states.size());
}

void run_baseline(benchmark::State& state, const Case* given, const char* name) {
  const auto baseline = bench::make_baseline(name, given->flat);
  bench::FlatAnswer answer;
  for (auto step : state) {
    baseline->run(given->flat_states(), answer);
    benchmark::DoNotOptimize(answer.heat_w.data());
    benchmark::ClobberMemory();
  }
  count_points(state, given->states.size());
}

/// The relays' states on the network collapsed to the three parts that change. The line behind them is fixed, so its figures follow from the volts at its
/// ends and from what is left of the power.
class RelaysCollapsed {
 public:
  explicit RelaysCollapsed(const Case& given) : given_(given) {
    const auto& feed = given.feed;
    for (std::size_t p = 0; p < feed.design.parts.size(); ++p) {
      const int e = feed.network.elements_of(design::PartId{static_cast<int>(p)}).front();
      if (design::is_load(feed.design.parts[p]))
        watched_.push_back(e);
      else if (std::holds_alternative<design::Line>(feed.design.parts[p].model))
        line_ = e;
      else
        active_.push_back(e);
    }
    learn_line();
  }

  solve::Collapsed reduce() const {
    const auto& feed = given_.feed;
    return {feed.design, feed.network, given_.states.frequencies_hz[0], given_.states.knobs_at(0), active_, watched_};
  }

  void evaluate(solve::Collapsed& collapsed, std::size_t first, std::size_t count) {
    collapsed.evaluate(given_.states.knobs_at(first).data(), count, answer);
    for (solve::Series* series : {&line_w, &line_volts_peak, &line_amps_rms}) series->resize(count);
    const double *v_re = answer.source_volts.real(), *v_im = answer.source_volts.imag(), *i_re = answer.source_amps.real(),
                 *i_im = answer.source_amps.imag();
    const double *in_volts = answer.active_volts[2].data(), *far_volts = answer.watched_volts[0].data();
    const double *a = answer.active_w[0].data(), *b = answer.active_w[1].data(), *c = answer.active_w[2].data(), *d = answer.watched_w[0].data();
    for (std::size_t s = 0; s < count; ++s) {
      line_w[s] = v_re[s] * i_re[s] + v_im[s] * i_im[s] - ((a[s] + b[s]) + (c[s] + d[s]));
      line_volts_peak[s] = std::numbers::sqrt2 * std::max(in_volts[s], far_volts[s]);
      line_amps_rms[s] = std::max(siemens_in_ * in_volts[s], siemens_far_ * far_volts[s]);
    }
  }

  /// Against the solver's, in every state.
  void show_that_they_agree() {
    solve::Collapsed collapsed = reduce();
    evaluate(collapsed, 0, given_.states.size());
    solve::Solution solution;
    solve::Solver(given_.feed.design, given_.feed.network, given_.feed.plan).run(given_.states, solution, solve::Keep::figures);
    for (std::size_t s = 0; s < given_.states.size(); ++s) {
      bool bad = differ(answer.watched_w[0][s], solution.flows[watched_[0]].heat1_w[s], 100.0) ||
                 differs(solution.flows[line_], s, line_w[s], line_volts_peak[s], line_amps_rms[s]);
      for (std::size_t p = 0; p < active_.size(); ++p)
        bad |= differs(solution.flows[active_[p]], s, answer.active_w[p][s], std::numbers::sqrt2 * answer.active_volts[p][s], answer.active_amps[p][s]);
      if (bad) throw std::runtime_error("D: the collapsed network and the solver differ in state " + std::to_string(s));
    }
  }

  solve::CollapsedAnswer answer;
  solve::Series line_w, line_volts_peak, line_amps_rms;

 private:
  static bool differ(double a, double b, double scale) { return !(std::abs(a - b) <= 1e-9 * scale); }
  static bool differs(const solve::Flow& flow, std::size_t s, double heat_w, double volts_peak, double amps_rms) {
    return differ(heat_w, flow.heat1_w[s], 100.0) || differ(volts_peak, flow.volts_peak[s], flow.volts_peak[s] + 1.0) ||
           differ(amps_rms, flow.amps_rms[s], flow.amps_rms[s] + 0.01);
  }

  /// The line's amps per volt at each end, from one whole solution.
  void learn_line() {
    solve::States one;
    one.knob_count = given_.states.knob_count;
    one.add(given_.states.frequencies_hz[0], {given_.states.knobs.begin(), given_.states.knobs.begin() + static_cast<std::ptrdiff_t>(one.knob_count)});
    const auto& feed = given_.feed;
    const solve::Solution solution = solve::solve(feed.design, feed.network, feed.plan, one);
    const graph::Element& line = feed.network.elements[line_];
    siemens_in_ = std::abs(solution.flows[line_].amps1[0] / solution.volts[line.node[0]][0]);
    siemens_far_ = std::abs(solution.flows[line_].amps2[0] / solution.volts[line.node[2]][0]);
  }

  const Case& given_;
  std::vector<int> active_, watched_;
  int line_ = -1;
  double siemens_in_ = 0.0, siemens_far_ = 0.0;
};

void collapse_points(benchmark::State& state, const Case* given) {
  // As many states at once as the baselines get.
  constexpr std::size_t at_once = 8192;
  RelaysCollapsed relays(*given);
  for (auto step : state) {
    solve::Collapsed collapsed = relays.reduce();
    for (std::size_t first = 0; first < given->states.size(); first += at_once) {
      relays.evaluate(collapsed, first, std::min(at_once, given->states.size() - first));
      benchmark::DoNotOptimize(relays.line_w.data());
      benchmark::ClobberMemory();
    }
  }
  count_points(state, given->states.size());
}

// ---- parts of the work --------------------------------------------------------------------------------------------

/// The elimination on made-up admittances of the usual size: the matrix is gathered anew each time, which alone, not
/// `with` the elimination, is measured apart.
void eliminate(benchmark::State& state, const Case* given, const solve::Kernel* kernel, bool with) {
  const solve::Program program = solve::compile(given->feed.design, given->feed.network, given->feed.plan);
  solve::Workspace space(program);
  std::mt19937_64 random(3);
  const auto number = [&] { return 0.01 + 0.02 * static_cast<double>(random() >> 11) * 0x1p-53; };
  for (solve::LaneComplex& value : space.values)
    for (std::size_t lane = 0; lane < solve::lanes; ++lane) value.real()[lane] = value.imag()[lane] = number();
  for (auto step : state) {
    (with ? kernel->eliminate : kernel->gather)(space.batch);
    benchmark::ClobberMemory();
  }
  // An inversion: 6; a factor: 6; an update: 8.
  state.counters["flops"] =
      static_cast<double>(6 * program.steps.size() + 6 * program.scales.size() + 8 * program.updates.size());
  count_points(state, solve::lanes);
}

void peak(benchmark::State& state, const char* target) {
  constexpr std::size_t rounds = 100000;
  double sink = 0.0, done = 0.0;
  for (auto step : state) done += bench::multiply_adds(target, rounds, sink);
  benchmark::DoNotOptimize(sink);
  state.SetItemsProcessed(static_cast<int64_t>(done));
}

void book(benchmark::State& state, const Case* given) {
  const auto& feed = given->feed;
  const solve::Solution solution = solve::solve(feed.design, feed.network, feed.plan, given->states);
  for (auto step : state) {
    const ledger::Ledger made = ledger::book(feed.design, feed.network, solution, {});
    benchmark::DoNotOptimize(made.totals.heat_w.data());
  }
  count_points(state, given->states.size());
}

void document(benchmark::State& state, const Case* given) {
  const auto& feed = given->feed;
  design::Design design = feed.design;
  design.frequencies_hz = given->states.frequencies_hz;
  const solve::Solution solution = solve::solve(design, feed.network, feed.plan, given->states);
  const ledger::Ledger made = ledger::book(design, feed.network, solution, {});
  std::vector<report::VariantResult> results(1);
  results[0].design = &design;
  results[0].ledger = &made;
  for (auto step : state) benchmark::DoNotOptimize(report::make_document("run", test::registry(), results));
  count_points(state, given->states.size());
}

/// Many points on so many threads: wall time.
void solve_on_threads(benchmark::State& state, const Case* given, unsigned threads) {
  solve::Solver solver(given->feed.design, given->feed.network, given->feed.plan);
  solve::Solution solution;
  for (auto step : state) {
    solver.run(given->states, solution, solve::Keep::figures, solve::Method::guarded, threads);
    benchmark::ClobberMemory();
  }
  count_points(state, given->states.size());
}

/// All that the document of a long sweep is made of.
struct LongSweep {
  explicit LongSweep(const Case& given)
      : feed(given.feed), design(feed.design), states(given.states), looks(judge::looks_of(feed.design)) {
    design.frequencies_hz = states.frequencies_hz;
    ledger = book();
    results[0].design = &design;
    results[0].ledger = &ledger;
  }
  ledger::Ledger book() const {
    return ledger::book(design, feed.network, solve::solve(design, feed.network, feed.plan, states, looks), looks);
  }
  std::string write() const {
    const std::string document = report::make_document("run", test::registry(), results);
    std::string text;
    const wattfall::sdk::Sink sink{&text, [](void* self, const char* bytes, std::size_t size) {
                                     static_cast<std::string*>(self)->append(bytes, size);
                                     return wattfall::sdk::Status::ok;
                                   }};
    const wattfall::sdk::WriterOptions options{100, 0};
    const wattfall::sdk::Writer* writer = test::registry().find_writer("json");
    wattfall::sdk::Failure failure{};
    if (writer == nullptr || writer->write(writer->self, document.data(), document.size(), &options, &sink, &failure) != wattfall::sdk::Status::ok)
      throw std::runtime_error("the JSON could not be written");
    return text;
  }

  const test::Feed& feed;
  design::Design design;
  const solve::States& states;
  std::vector<design::Look> looks;
  ledger::Ledger ledger;
  std::vector<report::VariantResult> results = std::vector<report::VariantResult>(1);
};

/// Every number of a JSON text, in its order.
std::vector<double> numbers_of(const std::string& json) {
  std::vector<double> numbers;
  bool in_string = false;
  for (const char* at = json.c_str(); *at != '\0'; ++at) {
    if (in_string && *at == '\\')
      ++at;
    else if (*at == '"')
      in_string = !in_string;
    else if (!in_string && (*at == '-' || (*at >= '0' && *at <= '9'))) {
      char* end = nullptr;
      numbers.push_back(std::strtod(at, &end));
      at = end - 1;
    }
  }
  return numbers;
}

void write_json(benchmark::State& state, const LongSweep* sweep) {
  std::size_t bytes = 0;
  for (auto step : state) bytes = sweep->write().size();
  state.counters["bytes"] = static_cast<double>(bytes);
  count_points(state, sweep->states.size());
}

/// Solving, booking, and the same numbers by a plain loop.
void solve_and_print(benchmark::State& state, const LongSweep* sweep, const std::vector<double>* numbers) {
  std::FILE* nowhere = std::fopen("/dev/null", "w");
  for (auto step : state) {
    const ledger::Ledger made = sweep->book();
    benchmark::DoNotOptimize(made.totals.heat_w.data());
    for (double number : *numbers) std::fprintf(nowhere, "%.17g, ", number);
  }
  std::fclose(nowhere);
  state.counters["numbers"] = static_cast<double>(numbers->size());
  count_points(state, sweep->states.size());
}

void tune_network(benchmark::State& state, const char* text) {
  const test::Feed feed{std::string(text)};
  for (const Diagnostic& diagnostic : feed.diagnostics) throw std::runtime_error(diagnostic.text);
  std::size_t evaluations = 0;
  for (auto step : state) {
    const auto tuning = tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
    evaluations = tuning.value->evaluations;
  }
  state.counters["evaluations"] = static_cast<double>(evaluations);
  state.SetItemsProcessed(static_cast<int64_t>(state.iterations()));
}

void start(benchmark::State& state, std::vector<std::string> words) {
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", 1, 0);
  for (auto step : state) {
    pid_t child = 0;
    int status = 1;
    if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0 ||
        waitpid(child, &status, 0) != child || status != 0)
      state.SkipWithError("the program failed");
  }
  posix_spawn_file_actions_destroy(&actions);
  state.SetItemsProcessed(static_cast<int64_t>(state.iterations()));
}

constexpr const char* tune_l =
    "design \"L\"\nsource rig at desk : 100 W, 50 ohm\ninductor L from desk to feed : adjustable 0.1 uH to 30 uH, Q "
    "200\n"
    "capacitor C at desk : adjustable 5 pF to 2 nF, Q 1000\nload ant at feed : 23 - j180 ohm\nsweep at [7.1 MHz]\n"
    "tune L, C at 7.1 MHz for most power into ant\n";
constexpr const char* tune_t =
    "design \"T\"\nsource rig at desk : 100 W, 50 ohm\ncapacitor Cin from desk to mid : adjustable 15 pF to 330 pF, Q "
    "1200\n"
    "inductor L at mid : adjustable 0.2 uH to 20 uH, Q 180 at 7 MHz\ncapacitor Cout from mid to feed : adjustable 15 "
    "pF to 330 pF, Q 1200\n"
    "load ant at feed : 23 - j180 ohm\nsweep at [7.1 MHz]\ntune Cin, L, Cout at 7.1 MHz for most power into ant\n";

template <class Function, class... Arguments>
void add(const std::string& name, Function function, Arguments... arguments) {
  benchmark::RegisterBenchmark(name.c_str(), function, arguments...);
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  const std::vector<double> relay = bench::relay_states();
  std::vector<double> every_16th;
  for (std::size_t s = 7; s < 131072; s += 16)
    every_16th.insert(every_16th.end(), relay.begin() + 3 * static_cast<std::ptrdiff_t>(s),
                      relay.begin() + 3 * static_cast<std::ptrdiff_t>(s) + 3);
  const Case a(bench::t_network(), bench::frequencies(4096));
  const Case b(bench::ladder(41), bench::frequencies(1024));
  const Case c(bench::ladder(2001), bench::frequencies(64));
  const Case d(bench::relay_network(), std::vector<double>(131072, 7.1e6), relay);
  const Case d_part(bench::relay_network(), std::vector<double>(8192, 7.1e6), every_16th);

  const std::vector<std::pair<const Case*, std::vector<const char*>>> all = {
      {&a, {"dense", "fixed", "sparse", "klu"}},
      {&b, {"dense", "sparse", "klu"}},
      {&c, {"sparse", "klu"}},
      {&d_part, {"dense", "fixed", "sparse", "klu"}}};
  const char* names[] = {"A", "B", "C", "D"};
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const char* baseline : all[i].second) all[i].first->show_that_they_agree(baseline);
    const Case* given = all[i].first;
    add(std::string(names[i]) + "/wattfall", solve_points, given);
    add(std::string(names[i]) + "/once", solve_once, given);
    for (const char* baseline : all[i].second)
      add(std::string(names[i]) + "/" + baseline, run_baseline, all[i].first, baseline);
  }
  RelaysCollapsed(d).show_that_they_agree();
  add("D/collapsed", collapse_points, &d);

  const std::string chosen = solve::kernel().name;
  for (const char* target : {"baseline", "v3", "v4"}) {
    const solve::Kernel* kernel = solve::kernel_named(target);
    if (kernel == nullptr) continue;
    add(std::string("peak/") + target, peak, target);
    const Case* cases[] = {&a, &b, &c};
    for (int i = 0; i < 3; ++i) {
      add(std::string("gather/") + names[i] + "/" + target, eliminate, cases[i], kernel, false);
      add(std::string("eliminate/") + names[i] + "/" + target, eliminate, cases[i], kernel, true);
    }
  }
  for (int i = 0; i < 2; ++i) {
    add(std::string("ledger/") + names[i], book, i == 0 ? &a : &b);
    add(std::string("document/") + names[i], document, i == 0 ? &a : &b);
  }
  const Case b_long(bench::ladder(41), bench::frequencies(8192));
  const Case c_long(bench::ladder(2001), bench::frequencies(256));
  for (unsigned threads : {1u, 2u}) {
    const std::string end = "/" + std::to_string(threads);
    benchmark::RegisterBenchmark(("threads/B" + end).c_str(), solve_on_threads, &b_long, threads)->UseRealTime();
    benchmark::RegisterBenchmark(("threads/C" + end).c_str(), solve_on_threads, &c_long, threads)->UseRealTime();
  }
  const Case a_long(bench::t_network(), bench::frequencies(100000));
  const LongSweep long_sweep(a_long);
  const std::vector<double> numbers = numbers_of(long_sweep.write());
  benchmark::RegisterBenchmark("json/writer", write_json, &long_sweep)->Iterations(1);
  benchmark::RegisterBenchmark("json/printf", solve_and_print, &long_sweep, &numbers)->Iterations(1);
  add("tune/L", tune_network, tune_l);
  add("tune/T", tune_network, tune_t);

  const std::filesystem::path file =
      std::filesystem::temp_directory_path() / ("wattfall_bench_" + std::to_string(getpid()) + ".feed");
  std::ofstream(file) << bench::t_network();
  benchmark::RegisterBenchmark("start/wattfall", start, std::vector<std::string>{WATTFALL_PROGRAM, "run", file})
      ->UseRealTime();
  benchmark::RegisterBenchmark("start/empty", start, std::vector<std::string>{WATTFALL_EMPTY})->UseRealTime();

  benchmark::AddCustomContext("kernel", chosen);
  benchmark::AddCustomContext("compiler", WATTFALL_COMPILER);
  benchmark::AddCustomContext("flags", WATTFALL_BENCH_FLAGS);
  benchmark::RunSpecifiedBenchmarks();
  std::filesystem::remove(file);
}
