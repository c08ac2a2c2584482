// How long the tuner's searches take, and what general-purpose optimizers of a library (NLopt) make of the same questions: the same objective through the same
// interface, in the same run, CPU time. tests/bench/run prints the table. Arguments: how many random loads a form (100); one part alone: L, T, gradient, each
// or relays.
#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <iterator>
#include <vector>

#include "../../engine/tune/search.hpp"
#include "../engine/ladder_feed.hpp"
#include "feed.hpp"
#include "tune/tune.hpp"
#include "weigh/weigh.hpp"

namespace {

using namespace wattfall;

double cpu_s() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return double(now.tv_sec) + 1e-9 * double(now.tv_nsec);
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// ---- the library as an optimizer ----------------------------------------------------------------------------------

/// A global method with a budget, then a local one from its best; or multi-level single linkage, which starts the local one itself.
struct Library {
  const char* name;
  nlopt_algorithm global, local;
};

/// Asks the problem in shares of the knobs' ranges, as wattfall's own optimizer does, one setting at a time, as the library asks.
struct Asked {
  const sdk::SearchProblem& problem;
  std::uint64_t evaluations = 0;
  double best = -std::numeric_limits<double>::infinity();
  std::vector<double> best_share;

  void settings(const double* share, double* setting) const {
    for (std::size_t k = 0; k < problem.knob_count; ++k) {
      const sdk::KnobRange& knob = problem.knobs[k];
      setting[k] = knob.logarithmic != 0 ? knob.lower * std::pow(knob.upper / knob.lower, share[k]) : knob.lower + share[k] * (knob.upper - knob.lower);
      setting[k] = std::clamp(setting[k], knob.lower, knob.upper);
    }
  }
  double goal(const double* share) {
    std::vector<double> setting(problem.knob_count), slacks(problem.slack_count);
    settings(share, setting.data());
    double value = 0.0;
    problem.evaluate(problem.self, setting.data(), 1, &value, slacks.data(), nullptr);
    ++evaluations;
    if (value > best) {
      best = value;
      best_share.assign(share, share + problem.knob_count);
    }
    return value;
  }
};

double ask(unsigned, const double* share, double*, void* self) { return static_cast<Asked*>(self)->goal(share); }

nlopt_opt make(nlopt_algorithm algorithm, std::size_t knobs, Asked& asked, int most) {
  nlopt_opt made = nlopt_create(algorithm, unsigned(knobs));
  nlopt_set_max_objective(made, ask, &asked);
  nlopt_set_lower_bounds1(made, 0.0);
  nlopt_set_upper_bounds1(made, 1.0);
  nlopt_set_maxeval(made, most);
  return made;
}

sdk::Status library_search(void* self, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  const Library& library = *static_cast<const Library*>(self);
  return sdk::guarded(failure, [&] {
    Asked asked{*problem};
    nlopt_srand(1);
    const std::size_t n = problem->knob_count;
    const int budget = n <= 2 ? 2000 : 6000, local_budget = 600;
    std::vector<double> share(n, 0.5);
    double value = 0.0;
    nlopt_opt global = make(library.global, n, asked, budget);
    nlopt_opt local = make(library.local, n, asked, local_budget);
    nlopt_set_ftol_rel(local, 1e-9);
    nlopt_set_xtol_abs1(local, 1e-9);
    if (library.global == NLOPT_G_MLSL_LDS) nlopt_set_local_optimizer(global, local);
    nlopt_optimize(global, share.data(), &value);
    share = asked.best_share;
    nlopt_optimize(local, share.data(), &value);
    nlopt_destroy(global);
    nlopt_destroy(local);
    asked.settings(asked.best_share.data(), result->setting);
    result->goal = asked.best;
    result->evaluations = asked.evaluations;
    result->feasible = 1;
  });
}

Library libraries[] = {{"MLSL with BOBYQA", NLOPT_G_MLSL_LDS, NLOPT_LN_BOBYQA},
                       {"MLSL with Nelder-Mead", NLOPT_G_MLSL_LDS, NLOPT_LN_NELDERMEAD},
                       {"DIRECT-L, then BOBYQA", NLOPT_GN_DIRECT_L, NLOPT_LN_BOBYQA},
                       {"CRS2, then Nelder-Mead", NLOPT_GN_CRS2_LM, NLOPT_LN_NELDERMEAD}};

// ---- one frequency ------------------------------------------------------------------------------------------------

struct Tally {
  std::vector<double> seconds, goals, evaluations;
  std::size_t others = 0;
};

/// `other_room`: all other matches are asked for, too.
Tally searches(const std::vector<test::Feed>& feeds, const sdk::Optimizer& optimizer, std::size_t other_room = 0) {
  Tally tally;
  for (const test::Feed& feed : feeds) {
    const tune::Problem problem{feed.design, feed.network, feed.plan, feed.design.tunes.front(), feed.design.tunes.front().at_hz, feed.design.starting_knobs(), {}};
    const double begin = cpu_s();
    const tune::Found found = tune::search(problem, optimizer, other_room);
    tally.seconds.push_back(cpu_s() - begin);
    tally.goals.push_back(found.found ? found.goal : 0.0);
    tally.evaluations.push_back(double(found.evaluations));
    tally.others += found.others.size();
  }
  return tally;
}

void compare(const char* title, const std::vector<std::string>& forms, unsigned loads) {
  std::vector<test::Feed> feeds;
  for (const std::string& name : forms)
    for (unsigned seed = 1; seed <= loads; ++seed) {
      const tuner_test::Ladder ladder = tuner_test::random_case(tuner_test::form(name), seed);
      feeds.emplace_back(test::feed_text(ladder, tuner_test::bounds_of(ladder), "most power into ant"));
    }
  const Tally own = searches(feeds, *test::registry().find_optimizer());
  std::printf("%s, %zu networks: a search takes %.3f ms (median; most %.3f), %.0f evaluations\n", title, feeds.size(), 1e3 * median(own.seconds),
              1e3 * *std::max_element(own.seconds.begin(), own.seconds.end()), median(own.evaluations));
  // As many others as a statement asks for.
  const Tally all = searches(feeds, *test::registry().find_optimizer(), 12);
  std::size_t worse = 0;
  for (std::size_t i = 0; i < feeds.size(); ++i) worse += all.goals[i] < 0.999 * own.goals[i];
  std::printf("  with all matches: %.3f ms (median; most %.3f), %.0f evaluations, %zu other local bests; more than 0.1 %% behind in %zu\n", 1e3 * median(all.seconds),
              1e3 * *std::max_element(all.seconds.begin(), all.seconds.end()), median(all.evaluations), all.others, worse);
  for (Library& library : libraries) {
    const sdk::Optimizer optimizer{library.name, "", &library, library_search};
    const Tally other = searches(feeds, optimizer);
    std::size_t behind = 0, ahead = 0;
    for (std::size_t i = 0; i < feeds.size(); ++i) {
      behind += other.goals[i] < 0.999 * own.goals[i];
      ahead += own.goals[i] < 0.999 * other.goals[i];
    }
    std::printf("  %-24s %5.1f times as long, %.0f evaluations; more than 0.1 %% behind in %zu, ahead in %zu\n", library.name,
                median(other.seconds) / median(own.seconds), median(other.evaluations), behind, ahead);
  }
}

// ---- whole statements ---------------------------------------------------------------------------------------------

/// Passes on to another optimizer and adds up the time spent there.
struct Watched {
  const sdk::Optimizer& own;
  double seconds = 0.0;
};

sdk::Status watched_search(void* self, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  Watched& watched = *static_cast<Watched*>(self);
  const double begin = cpu_s();
  const sdk::Status status = watched.own.search(watched.own.self, problem, result, failure);
  watched.seconds += cpu_s() - begin;
  return status;
}

void whole(const char* title, const std::string& text, double target_s) {
  const test::Feed feed(text);
  for (const Diagnostic& diagnostic : feed.diagnostics) std::fprintf(stderr, "%s\n", diagnostic.text.c_str());
  if (!feed.diagnostics.empty()) std::exit(1);
  std::vector<double> all, optimizer, engine;
  std::size_t evaluations = 0;
  const design::Tune& statement = feed.design.tunes.front();
  for (int round = 0; round < 5; ++round) {
    Watched watched{*test::registry().find_optimizer()};
    const sdk::Optimizer watching{"watched", "", &watched, watched_search};
    double begin = cpu_s();
    const auto tuning = tune::tune(feed.design, feed.network, feed.plan, &watching);
    all.push_back(cpu_s() - begin);
    evaluations = tuning.value->evaluations;
    // The searches alone, each from its neighbour's setting, as the statement has them.
    watched.seconds = 0.0;
    begin = cpu_s();
    std::vector<std::vector<double>> starts;
    for (std::size_t s = 0; s < feed.design.frequencies_hz.size() && statement.when == design::Tune::When::at_each; ++s) {
      const tune::Problem problem{feed.design, feed.network, feed.plan, statement, {feed.design.frequencies_hz[s]}, feed.design.starting_knobs(), starts};
      starts.assign(1, tune::search(problem, watching).setting);
    }
    if (statement.when == design::Tune::When::over)
      tune::search({feed.design, feed.network, feed.plan, statement, feed.design.frequencies_hz, feed.design.starting_knobs(), {}}, watching);
    engine.push_back(cpu_s() - begin);
    optimizer.push_back(watched.seconds);
  }
  std::printf("%s: searches %.4f s (target %.1f s, %s), of it the optimizer and its evaluations %.4f s; with all that the report says beside, %.4f s, %zu evaluations\n",
              title, median(engine), target_s, median(engine) <= target_s ? "met" : "not met", median(optimizer), median(all), evaluations);
}

// ---- gradients ----------------------------------------------------------------------------------------------------

/// Low-pass sections in turn, every part a knob.
std::string sections(std::size_t knobs) {
  std::string text = "design \"sections\"\nsource rig at n0 : 100 W, 50 ohm\n", names;
  for (std::size_t k = 0; k < knobs; ++k) {
    const std::string node = "n" + std::to_string(k / 2), next = "n" + std::to_string(k / 2 + 1);
    text += k % 2 == 0 ? "inductor P" + std::to_string(k) + " from " + node + " to " + next + " : adjustable 0.1 uH to 5 uH, Q 200\n"
                       : "capacitor P" + std::to_string(k) + " at " + next + " : adjustable 10 pF to 500 pF, Q 1000\n";
    names += (k == 0 ? "P" : ", P") + std::to_string(k);
  }
  return text + "load ant at n" + std::to_string((knobs + 1) / 2) + " : 120 - j60 ohm\nsweep at [7.1 MHz]\ntune " + names + " at 7.1 MHz for most power into ant\n";
}

/// Takes the CPU time [s] of one batch with a stencil's settings, from within a search; `self` is where it goes.
sdk::Status time_stencil(void* self, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    const std::size_t n = problem->knob_count, count = n * n + n + 1;
    std::vector<double> settings(count * n), goals(count), slacks(count * problem->slack_count);
    for (std::size_t i = 0; i < settings.size(); ++i) {
      const sdk::KnobRange& knob = problem->knobs[i % n];
      settings[i] = std::sqrt(knob.lower * knob.upper) * (1.0 + 1e-4 * double(i / n));
    }
    constexpr int rounds = 200;
    const double begin = cpu_s();
    for (int round = 0; round < rounds; ++round) problem->evaluate(problem->self, settings.data(), count, goals.data(), slacks.data(), nullptr);
    *static_cast<double*>(self) = (cpu_s() - begin) / rounds;
    std::copy_n(settings.begin(), n, result->setting);
    result->goal = goals[0];
    result->evaluations = count;
    result->feasible = 1;
  });
}

void gradients(std::size_t knobs) {
  const test::Feed feed(sections(knobs));
  const design::Tune& statement = feed.design.tunes.front();
  const tune::Problem problem{feed.design, feed.network, feed.plan, statement, statement.at_hz, feed.design.starting_knobs(), {}};
  double stencil = 0.0;
  const sdk::Optimizer timing{"timing", "", &stencil, time_stencil};
  const tune::Found found = tune::search(problem, timing);
  constexpr int rounds = 200;
  const double begin = cpu_s();
  for (int round = 0; round < rounds; ++round) {
    weigh::Point point(feed.design, feed.network, statement.at_hz.front(), tune::knobs_with(problem, found.setting));
    point.slopes(statement.goal, statement.knobs);
  }
  const double adjoint = (cpu_s() - begin) / rounds;
  std::printf(
      "%zu knobs: the stencil's %zu settings, gradient and curvatures, %.1f us; one gradient by the adjoint, from the "
      "design to the slopes, %.1f us\n",
      knobs, knobs * knobs + knobs + 1, 1e6 * stencil, 1e6 * adjoint);
}

const std::string tee =
    "design \"T\"\nsource rig at desk : 100 W, 50 ohm\ncapacitor Cin from desk to mid : adjustable 15 pF to 330 pF, Q 1200\n"
    "inductor L at mid : adjustable 0.2 uH to 20 uH, Q 180 at 7 MHz\ncapacitor Cout from mid to feed : adjustable 15 pF to 330 pF, Q 1200\n"
    "line coax from feed to far : 20 m of RG-213\nload ant at far : series(resistance 40 ohm, inductance 4 uH, capacitance 150 pF)\n";

const std::string relays =
    "design \"relays\"\nsource rig at desk : 100 W, 50 ohm\ninductor L from desk to feed : adjustable relays(8, smallest 0.1 uH), Q 200\n"
    "capacitor C at hot : adjustable relays(8, smallest 10 pF), Q 1000\nselector side from hot to (desk feed) : adjustable\n"
    "line coax from feed to far : 30 m of RG-58\nload ant at far : 23 - j180 ohm\nsweep 1.8 MHz to 30 MHz, 30 points\n";

}  // namespace

int main(int argc, char** argv) {
  const unsigned loads = argc > 1 ? unsigned(std::max(1, std::atoi(argv[1]))) : 100;
  const std::string only = argc > 2 ? argv[2] : "";
  const auto wanted = [&](const char* part) { return only.empty() || only == part; };
  if (wanted("L")) compare("L at one frequency (target 1 ms)", {"pC sL", "sL pC", "sC pL", "pL sC"}, loads);
  if (wanted("T")) compare("T or pi at one frequency (target 1 ms)", {"sC pL sC", "pC sL pC"}, loads);
  if (wanted("gradient"))
    for (const std::size_t knobs : {2, 3, 6, 12}) gradients(knobs);
  if (wanted("each"))
    whole("T at 200 frequencies, each", tee + "sweep 3.5 MHz to 14.5 MHz, 200 points\ntune Cin, L, Cout at each frequency for most power into ant\n", 0.1);
  if (wanted("relays")) {
    whole("131,072 relay states at 30 frequencies, each", relays + "tune L, C, side at each frequency for most power into ant\n", 0.3);
    whole("131,072 relay states, the worst of 30 frequencies", relays + "tune L, C, side over 1.8 MHz to 30 MHz for most power into ant\n", 0.3);
  }
}
