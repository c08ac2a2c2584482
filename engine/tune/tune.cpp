#include "tune/tune.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "best_possible.hpp"
#include "diagnose.hpp"
#include "grammar/quantity.hpp"
#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "more_room.hpp"
#include "proof.hpp"
#include "ratings.hpp"
#include "ridge.hpp"
#include "search.hpp"
#include "spare.hpp"
#include "study.hpp"

namespace wattfall::tune {
namespace {

using design::Design;

std::string at(double hertz) { return spell({hertz, dimension::frequency}, 7); }

/// "at 7 MHz", or "from 7 MHz to 7.2 MHz" where one setting serves a stretch of frequency.
std::string where(const design::Tune& statement, double hertz) {
  if (statement.when != design::Tune::When::over) return "at " + at(hertz);
  return fmt::format("from {} to {}", at(statement.over_hz.first), at(statement.over_hz.second));
}

class Tuner {
 public:
  Tuner(const Design& design, const graph::Network& network, const plan::Plan& plan, const sdk::Optimizer& optimizer)
      : design_(design), network_(network), plan_(plan), optimizer_(optimizer), rated_(has_ratings(design)) {
    tuning_.settings.assign(design.frequencies_hz.size(), design.starting_knobs());
  }

  Result<Tuning> run() {
    for (const design::Tune& statement : design_.tunes) {
      switch (statement.when) {
        case design::Tune::When::at: tune_at(statement); break;
        case design::Tune::When::at_each: tune_at_each(statement); break;
        case design::Tune::When::over: tune_over(statement); break;
      }
    }
    say_not_kept();
    Result<Tuning> result;
    result.diagnostics = std::move(diagnostics_);
    if (result.diagnostics.empty()) result.value = std::move(tuning_);
    return result;
  }

 private:
  /// One setting for each frequency named; each point of the sweep takes the nearest's.
  void tune_at(const design::Tune& statement) {
    std::vector<Found> found;
    for (double hertz : statement.at_hz)
      found.push_back(search_at(statement, {hertz}, tuning_.settings[nearest(design_.frequencies_hz, hertz)], {}, true,
                                served_at(statement, hertz)));
    for (std::size_t s = 0; s < design_.frequencies_hz.size(); ++s)
      set(statement, found[nearest(statement.at_hz, design_.frequencies_hz[s])], s);
    warn_of(statement, found, statement.at_hz);
  }

  void tune_at_each(const design::Tune& statement) {
    std::vector<Found> found;
    for (std::size_t s = 0; s < design_.frequencies_hz.size(); ++s) {
      std::vector<std::vector<double>> starts;
      // The neighbour's setting is near this one's, but another match may have become the better one: the optimizer looks around as well.
      if (!found.empty() && found.back().found) starts.push_back(found.back().setting);
      const std::size_t last = design_.frequencies_hz.size() - 1;
      found.push_back(search_at(statement, {design_.frequencies_hz[s]}, tuning_.settings[s], starts, s == 0 || s == last / 2 || s == last));
      set(statement, found.back(), s);
    }
    warn_of(statement, found, design_.frequencies_hz);
  }

  void tune_over(const design::Tune& statement) {
    std::vector<double> points{statement.over_hz.first};
    for (double hertz : design_.frequencies_hz)
      if (hertz > statement.over_hz.first && hertz < statement.over_hz.second) points.push_back(hertz);
    points.push_back(statement.over_hz.second);
    const Found found = search_at(statement, points, tuning_.settings.front(), {}, true, design_.frequencies_hz);
    for (std::size_t s = 0; s < design_.frequencies_hz.size(); ++s) set(statement, found, s);
    warn_of(statement, {found}, {statement.over_hz.first});
  }

  /// The points of the sweep that take the setting for one of the frequencies named.
  std::vector<double> served_at(const design::Tune& statement, double hertz) const {
    std::vector<double> served;
    for (double point : design_.frequencies_hz)
      if (statement.at_hz[nearest(statement.at_hz, point)] == hertz) served.push_back(point);
    return served;
  }

  /// Of the points that a setting serves those that requirements over a range of their own ask about, beside those
  /// where the goal is judged.
  static std::vector<double> also_asked(const design::Tune& statement, const std::vector<double>& judged,
                                        const std::vector<double>& served) {
    std::vector<double> also;
    for (double hertz : served) {
      const bool asked = std::any_of(statement.keeping.begin(), statement.keeping.end(),
                                     [&](const design::Requirement& one) { return one.over_hz && one.asks_at(hertz); });
      if (asked && std::find(judged.begin(), judged.end(), hertz) == judged.end()) also.push_back(hertz);
    }
    return also;
  }

  static std::size_t nearest(const std::vector<double>& points, double hertz) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
      if (std::abs(points[i] - hertz) < std::abs(points[best] - hertz)) best = i;
    return best;
  }

  /// `studied`: more is wanted than the setting. `served`: the points of the sweep that take it, where there are more
  /// than are named.
  Found search_at(const design::Tune& statement, std::vector<double> frequencies_hz, std::vector<double> others,
                  std::vector<std::vector<double>> starts, bool studied, const std::vector<double>& served = {}) {
    constexpr std::size_t other_matches = 12;
    std::vector<double> also = also_asked(statement, frequencies_hz, served);
    const Problem problem{design_,           network_,          plan_,          statement, std::move(frequencies_hz),
                          std::move(others), std::move(starts), std::move(also)};
    Found found = search(problem, optimizer_, studied ? other_matches : 0);
    tuning_.evaluations += found.evaluations;
    if (!found.found) return say_nothing_found(problem, found), found;
    if (!found.keeping) return note_not_kept(problem, found), found;
    const Spared spared =
        rated_ ? spare_ratings(problem, found, optimizer_, matched_swr(), studied ? other_matches : 0) : Spared{};
    tuning_.evaluations += spared.evaluations;
    if (!spared.broken.empty()) note_unkept_ratings(problem, spared.broken);
    const bool instead = spared.found.found;
    const Problem again{design_,        network_, plan_,          spared.held, problem.frequencies_hz,
                        problem.others, {},       problem.also_hz};
    const Problem& asked = instead ? again : problem;
    const Found& taken = instead ? spared.found : found;
    note_mismatch(asked, taken);
    if (studied) study_further(asked, taken, statement);
    if (studied && instead) {
      std::vector<Limit>& limits = tuning_.searches.back().limits;
      limits.insert(limits.begin(), without_ratings(problem, found, spared.avoided));
    }
    return taken;
  }

  /// `statement`: as the design has it; the problem's may hold to ratings as well.
  void study_further(const Problem& problem, const Found& found, const design::Tune& statement) {
    Search search{.statement = static_cast<std::size_t>(&statement - design_.tunes.data()),
                  .frequencies_hz = problem.frequencies_hz};
    study(problem, found, search);
    say_how_certain(problem, found, search);
    if (about_match(problem.statement.goal.kind))
      search.limits = limits_of(problem, search.matches.front(), optimizer_);
    for (const Limit& limit : search.limits)
      if (limit.kind == "bode-fano" && search.matches.front().load_w > limit.load_w)
        tuning_.warnings.push_back({"band-too-coarse",
                                    fmt::format("at these {} points more arrives than any network could bring over the whole band: between them it must be "
                                                "worse; give the sweep more points there",
                                                problem.frequencies_hz.size()),
                                    "", problem.frequencies_hz.front()});
    const Uphill uphill = look_uphill(problem, found);
    search.more_room = uphill.more_room;
    // What is held to beside the statement's own demands has no number among them.
    for (MoreRoom& room : search.more_room)
      if (room.demand && *room.demand >= statement.keeping.size()) room.demand.reset();
    warn_of_slope(problem, uphill);
    search.ridge = find_ridge(problem, found, optimizer_);
    tuning_.searches.push_back(std::move(search));
    for (judge::Warning& warning : odd_knobs(problem, found)) {
      const auto said = [&](const judge::Warning& other) { return other.code == warning.code && other.part == warning.part; };
      if (std::none_of(tuning_.warnings.begin(), tuning_.warnings.end(), said)) tuning_.warnings.push_back(std::move(warning));
    }
  }

  static Limit without_ratings(const Problem& problem, const Found& best, const std::vector<BrokenRating>& avoided) {
    return {"without ratings", load_w_at(problem, best.setting), std::numeric_limits<double>::quiet_NaN(),
            fmt::format("without the ratings {}, but {}", figure_text(problem.statement.goal, best.goal, "would be"),
                        in_words(avoided))};
  }

  /// Remembers ratings that no setting keeps; they are told once a statement.
  void note_unkept_ratings(const Problem& problem, const std::vector<BrokenRating>& broken) {
    unkept_.push_back({problem.frequencies_hz.front(), power_share_of(broken), in_words(broken)});
  }

  static std::string in_words(const std::vector<BrokenRating>& broken) {
    std::string text;
    for (const BrokenRating& one : broken) text += (text.empty() ? "" : "; ") + one.text;
    return text;
  }

  void warn_of_unkept_ratings(const design::Tune& statement, std::size_t searches) {
    if (unkept_.empty()) return;
    const UnkeptRating& worst =
        *std::min_element(unkept_.begin(), unkept_.end(),
                          [](const UnkeptRating& a, const UnkeptRating& b) { return a.power_share < b.power_share; });
    const double available_w = design_.source.available_w.real_at(worst.hertz, tuning_.settings.front());
    const std::string told =
        searches == 1 ? where(statement, worst.hertz)
                      : fmt::format("at {} of {} points, worst at {}", unkept_.size(), searches, at(worst.hertz));
    tuning_.warnings.push_back(
        {"ratings-not-kept",
         fmt::format("ratings are not kept {}: {}; up to {} from the rig this setting keeps them, and none was found "
                     "that brings more within them",
                     told, worst.text, spell({available_w * worst.power_share, dimension::power}, 3)),
         "", worst.hertz});
    unkept_.clear();
  }

  /// Its answer stands, but a better one is next to it.
  void warn_of_slope(const Problem& problem, const Uphill& uphill) {
    if (!(uphill.gain > 0.0)) return;
    tuning_.warnings.push_back({"not-a-top",
                                fmt::format("the optimizer {} stopped on a slope {}: one step along it brings {}",
                                            optimizer_.name, where(problem.statement, problem.frequencies_hz.front()),
                                            gain_text(problem.statement, uphill.gain)),
                                "", problem.frequencies_hz.front()});
  }

  static bool about_match(design::FigureKind kind) {
    return kind == design::FigureKind::power_into || kind == design::FigureKind::radiated_from || kind == design::FigureKind::efficiency ||
           kind == design::FigureKind::total_loss || kind == design::FigureKind::swr_at;
  }

  void say_how_certain(const Problem& problem, const Found& found, Search& search) const {
    search.certainty = "best of all settings";
    search.all_tried = found.exhaustive;
    if (found.exhaustive) {
      std::size_t all = 1;
      for (design::KnobId knob : problem.statement.knobs) all *= design_.knobs[knob.index].choices.size();
      search.certain_why = fmt::format("all {} were tried", all);
      return;
    }
    const Proof proof = prove_best(problem, found);
    const std::string margin = fmt::format("{} % of the rig's power", 100.0 * proof.margin);
    if (proof.holds && proof.margin <= proof_margin) {
      search.certain_why = proof.cells == 0 ? "no more can be had: less than " + margin + " is missing"
                                            : "bounds over the whole ranges show that no setting brings " + margin + " more";
      return;
    }
    search.certainty = "best found";
    search.certain_why = proof.holds ? "bounds over the whole ranges show that no setting brings " + margin + " more, but not that none brings a little more"
                                     : "the ranges were searched all over, but nothing proves that no other setting is better: " + proof.why_not;
  }

  void set(const design::Tune& statement, const Found& found, std::size_t state) {
    for (std::size_t k = 0; k < found.setting.size(); ++k) tuning_.settings[state][statement.knobs[k].index] = found.setting[k];
  }

  void say_nothing_found(const Problem& problem, const Found& found) {
    diagnostics_.push_back(
        {.code = "tune-failed",
         .span = problem.statement.span,
         .text = fmt::format("nothing could be tuned {}: {}", where(problem.statement, problem.frequencies_hz.front()),
                             found.failure.empty() ? "the goal does not exist at any setting" : found.failure),
         .fault = Fault::numeric});
  }

  /// The first frequency of a statement where it happens is told in full, of the others how many there are.
  void note_not_kept(const Problem& problem, const Found& found) {
    if (!not_kept_.empty() && not_kept_.back().statement == &problem.statement) {
      ++not_kept_.back().more;
      return;
    }
    std::string reached;
    for (std::size_t i = 0; i < found.kept.size(); ++i) {
      if (asked_hz(problem, problem.statement.keeping[i]).empty()) continue;
      reached += (reached.empty() ? "" : ", ") + figure_text(problem.statement.keeping[i].figure, found.kept[i]);
    }
    not_kept_.push_back({&problem.statement, problem.frequencies_hz.front(), 0, reached + why_not_kept(problem),
                         settings_text(problem.statement, found)});
  }

  void say_not_kept() {
    for (const NotKept& one : not_kept_)
      diagnostics_.push_back({.code = "keeping-not-reached",
                              .span = one.statement->span,
                              .text = fmt::format("no setting keeps what `keeping` asks {}{}; at the nearest{}, {}",
                                                  where(*one.statement, one.hertz),
                                                  one.more == 0 ? "" : fmt::format(", nor at {} more", one.more),
                                                  one.more == 0 ? "" : " there", one.reached),
                              .fault = Fault::numeric,
                              .advice = one.advice});
  }

  static std::string figure_text(const design::Figure& figure, double value, const char* verb = "is") {
    const std::string unit = judge::unit_of(figure.kind);
    if (unit == "Hz") return fmt::format("{} {} {}", figure.text, verb, spell({value, dimension::frequency}, 4));
    return fmt::format("{} {} {:.4g}{}{}", figure.text, verb, value, unit.empty() ? "" : " ", unit);
  }

  /// Of several requirements each by itself: which cannot be kept at all, or that only all together cannot.
  std::string why_not_kept(const Problem& problem) {
    if (problem.statement.keeping.size() < 2) return "";
    std::string alone;
    bool each_can = true;
    for (const design::Requirement& requirement : problem.statement.keeping) {
      design::Tune statement = problem.statement;
      statement.keeping.clear();
      statement.goal = requirement.figure;
      statement.most = !requirement.below;
      const std::vector<double> asked = asked_hz(problem, requirement);
      if (asked.empty()) continue;
      const Problem single{design_, network_, plan_, statement, asked, problem.others, {}};
      const Found best = search(single, optimizer_);
      tuning_.evaluations += best.evaluations;
      if (!best.found) continue;
      each_can &= judge::meets(requirement, best.goal);
      const std::string unit = judge::unit_of(requirement.figure.kind);
      alone += fmt::format("{}{} comes {} to {:.4g}{}{}", alone.empty() ? "" : ", ", requirement.figure.text, requirement.below ? "down" : "up", best.goal,
                           unit.empty() ? "" : " ", unit);
    }
    if (alone.empty()) return "";
    return (each_can ? "; they contradict each other, for each can be kept alone (" : "; alone, without any other demand (") +
           alone + ")";
  }

  std::string settings_text(const design::Tune& statement, const Found& found) const {
    std::string text;
    for (std::size_t k = 0; k < statement.knobs.size(); ++k) {
      const design::Knob& knob = design_.knobs[statement.knobs[k].index];
      text += fmt::format("{}{} = {}", k == 0 ? "wider ranges, or a lower demand; that was with " : ", ", knob.name, spell({found.setting[k], knob.dim}));
    }
    return text;
  }

  /// The SWR that counts as a match: what the design itself asks of the source, else 1.5 (common practice, no source: above it
  /// rigs begin to hold back).
  double matched_swr() const {
    double bound = 1.5;
    for (const design::Requirement& requirement : design_.requirements)
      if (requirement.figure.kind == design::FigureKind::swr_at && requirement.figure.look.node == design_.source.node && requirement.below)
        bound = requirement.value;
    return bound;
  }

  /// Remembers a setting that does not match; what is said of them is said once a statement, by `warn_of_mismatches`.
  void note_mismatch(const Problem& problem, const Found& found) {
    if (!about_match(problem.statement.goal.kind)) return;
    if (!(found.swr <= matched_swr())) mismatches_.push_back({problem.frequencies_hz.front(), found.swr});
  }

  void warn_of_mismatches(const design::Tune& statement, std::size_t searches) {
    if (mismatches_.empty()) return;
    const auto worse = [](const Mismatch& a, const Mismatch& b) { return !std::isnan(a.swr) && (std::isnan(b.swr) || a.swr < b.swr); };
    const Mismatch worst = *std::max_element(mismatches_.begin(), mismatches_.end(), worse);
    const std::string reached = std::isnan(worst.swr)
                                    ? "all power comes back"
                                    : fmt::format("the best has an SWR of {:.{}f} at the source", worst.swr, worst.swr < 10.0 ? 2 : worst.swr < 100.0 ? 1 : 0);
    const std::string told = searches == 1 || mismatches_.size() == 1
                                 ? where(statement, worst.hertz) + ": " + reached
                                 : fmt::format("at {} of {} points, worst at {}: {} there", mismatches_.size(),
                                               searches, at(worst.hertz), reached);
    tuning_.warnings.push_back({"no-match", "no setting matches " + told, "", worst.hertz});
    mismatches_.clear();
  }

  /// The first and the last node of a selector are no ends of a range.
  bool turns_a_selector(const design::Knob& knob) const {
    return std::any_of(design_.parts.begin(), design_.parts.end(), [&](const design::Part& part) {
      return part.name == knob.name && std::holds_alternative<design::Selector>(part.model);
    });
  }

  void warn_of(const design::Tune& statement, const std::vector<Found>& found, const std::vector<double>& frequencies_hz) {
    warn_of_mismatches(statement, found.size());
    warn_of_unkept_ratings(statement, found.size());
    for (std::size_t k = 0; k < statement.knobs.size(); ++k) {
      const design::Knob& knob = design_.knobs[statement.knobs[k].index];
      if (turns_a_selector(knob)) continue;
      const double lower = knob.choices.empty() ? knob.lower : knob.choices.front();
      const double upper = knob.choices.empty() ? knob.upper : knob.choices.back();
      warn_of_end(statement, k, lower, "lower", found, frequencies_hz);
      warn_of_end(statement, k, upper, "upper", found, frequencies_hz);
    }
  }

  void warn_of_end(const design::Tune& statement, std::size_t k, double end, const char* which,
                   const std::vector<Found>& found, const std::vector<double>& frequencies_hz) {
    const design::Knob& knob = design_.knobs[statement.knobs[k].index];
    std::size_t count = 0, first = 0;
    for (std::size_t i = 0; i < found.size(); ++i)
      if (found[i].found && stands_at(found[i].setting[k], end) && count++ == 0) first = i;
    if (count == 0) return;
    tuning_.warnings.push_back(
        {"knob-at-end",
         fmt::format("{} stands at the {} end of its range, {}, {}{}: a wider range may do better", knob.name, which,
                     spell({end, knob.dim}), where(statement, frequencies_hz[first]),
                     count > 1 ? fmt::format(" and {} more", count - 1) : ""),
         knob.name, frequencies_hz[first]});
  }

  const Design& design_;
  const graph::Network& network_;
  const plan::Plan& plan_;
  const sdk::Optimizer& optimizer_;
  struct Mismatch {
    double hertz, swr;
  };
  struct UnkeptRating {
    double hertz, power_share;
    std::string text;
  };
  struct NotKept {
    const design::Tune* statement;
    double hertz;
    std::size_t more;  ///< frequencies of the statement beside the first
    std::string reached, advice;
  };

  Tuning tuning_;
  std::vector<Mismatch> mismatches_;
  std::vector<UnkeptRating> unkept_;
  std::vector<NotKept> not_kept_;
  const bool rated_;  ///< some part has a rating
  Diagnostics diagnostics_;
};

/// A knob that was forgotten stands where nobody put it.
void warn_of_untuned(const Design& design, Tuning& tuning) {
  std::string names, first;
  std::size_t count = 0;
  const std::vector<double> starts = design.starting_knobs();
  for (std::size_t k = 0; k < design.knobs.size(); ++k) {
    const auto turns = [&](const design::Tune& statement) {
      return std::any_of(statement.knobs.begin(), statement.knobs.end(), [&](design::KnobId id) { return id.index == static_cast<int>(k); });
    };
    if (design.knobs[k].start || std::any_of(design.tunes.begin(), design.tunes.end(), turns)) continue;
    names += fmt::format("{}{} at {}", count++ == 0 ? "" : ", ", design.knobs[k].name, spell({starts[k], design.knobs[k].dim}, 4));
    if (count == 1) first = design.knobs[k].name;
  }
  if (count == 0) return;
  tuning.warnings.push_back({"not-tuned",
                             fmt::format("no value is written and no `tune` turns {}: {}, in the middle of {}", count == 1 ? "this knob" : "these knobs",
                                         names, count == 1 ? "its range" : "their ranges"),
                             first, std::nullopt});
}

}  // namespace

Result<Tuning> tune(const Design& design, const graph::Network& network, const plan::Plan& plan, const sdk::Optimizer* optimizer) {
  if (design.tunes.empty()) {
    Tuning tuning;
    tuning.settings.assign(design.frequencies_hz.size(), design.starting_knobs());
    warn_of_untuned(design, tuning);
    return {.value = std::move(tuning)};
  }
  if (optimizer == nullptr)
    return {.diagnostics = {{.code = "no-optimizer", .span = design.tunes.front().span,
                             .text = "no plugin that can tune is there",
                             .expected = "a plugin that brings an optimizer (`wattfall list plugins` shows those found)",
                             .fault = Fault::file}}};
  Result<Tuning> tuned = Tuner(design, network, plan, *optimizer).run();
  if (tuned.value) warn_of_untuned(design, *tuned.value);
  return tuned;
}

}  // namespace wattfall::tune
