// See search.hpp. The figures of the scan and the race were settled on 12,000 random networks (README).
#include "search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "climber.hpp"
#include "discrete.hpp"
#include "scan.hpp"
#include "shortfall.hpp"
#include "swarm.hpp"
#include "tops.hpp"

namespace wattfall::tuner {
namespace {

/// Ascents end by themselves; this only bounds them.
constexpr std::size_t most_rounds = 150;

/// Combinations of choices that are all tried.
constexpr std::size_t enumerable = 300'000;
/// Where they are too many: combinations looked at, and the best of them that a walk starts from.
constexpr std::size_t choice_scan = 20'000;
constexpr std::size_t choice_walks = 12;

/// Combinations that each get a scan and a race of their own: so few choices are switches, not steps of a value.
constexpr std::size_t switches = 6;

/// A look around a start: points a knob, and how far the start is from the top it leads to.
constexpr std::size_t small_scan = 24;
constexpr double near_start = 0.02;
/// Starts that are followed beside the best one, how far they stand apart, and the rounds each has to show that it leads higher.
constexpr std::size_t rival_starts = 4, rival_rounds = 3;
constexpr double rival_apart = 0.1;

/// Swarms on kinked goals, how far apart they start, and their evaluations a knob: settled on 720 networks of kinked
/// goal.
constexpr std::size_t swarms = 4;
constexpr double swarms_apart = 0.15;
constexpr std::size_t short_swarm = 250;
constexpr std::size_t long_swarm = 700;

/// Most continuous knobs for which all tops are looked for: beyond, climbers are too thin over the range to say so.
constexpr std::size_t tops_knobs = 3;

/// Climbers nearer than this have met.
constexpr double met = 1e-3;
/// Violations (in median slacks) that `restore` closes.
constexpr double all_but_met = 1e-4;

/// How far the range is looked over, by the number of continuous knobs.
struct Effort {
  std::size_t points;
  std::size_t climbers;
  double apart;  ///< least distance of two climbers' starts, in shares of the range
};

Effort full_effort(std::size_t knobs) {
  if (knobs <= 1) return {200, 10, 0.02};
  if (knobs == 2) return {1000, 14, 0.1};
  if (knobs == 3) return {2200, 30, 0.2};
  return {1500 * knobs, 40, 0.25};
}

/// The same where all tops are wanted: as many climbers as stand apart over the range, or nearly.
Effort tops_effort(std::size_t knobs) {
  if (knobs <= 1) return {200, 33, 0.03};
  if (knobs == 2) return full_effort(knobs);
  return {1000, 45, 0.17};
}

Climber climber_at(const Space& space, const Batch& batch, std::size_t index) {
  Climber climber;
  climber.place = batch.place(index, space.size());
  climber.worth = batch.worths[index];
  return climber;
}

bool ahead(const Climber& a, const Climber& b) {
  Worth x = a.worth, y = b.worth;
  if (x.violation < all_but_met) x.violation = 0;
  if (y.violation < all_but_met) y.violation = 0;
  return better(x, y);
}

/// Keeps the best `most` that have not met, or that stand `apart`.
void thin(const Space& space, std::vector<Climber>& climbers, std::size_t most, double apart = met) {
  std::stable_sort(climbers.begin(), climbers.end(), ahead);
  std::vector<Climber> kept;
  for (Climber& climber : climbers) {
    if (kept.size() == most) break;
    const bool known = std::any_of(kept.begin(), kept.end(), [&](const Climber& other) {
      return distance(space, climber.place.data(), other.place.data()) < apart;
    });
    if (!known) kept.push_back(std::move(climber));
  }
  climbers = std::move(kept);
}

/// How far goals lie apart over the range: the best less the median.
double height_of(const Batch& scan) {
  std::vector<double> goals;
  for (const double goal : scan.goals)
    if (std::isfinite(goal)) goals.push_back(goal);
  if (goals.empty()) return 0;
  const auto middle = goals.begin() + std::ptrdiff_t(goals.size() / 2);
  std::nth_element(goals.begin(), middle, goals.end());
  return *std::max_element(goals.begin(), goals.end()) - *middle;
}

class Search {
 public:
  /// `all_wanted`: `report_others` will be asked.
  explicit Search(const sdk::SearchProblem& problem, bool all_wanted = false)
      : problem_(problem), all_wanted_(all_wanted), space_(problem), judge_(problem, space_), ascent_(space_, judge_) {}

  void run() {
    read_starts();
    judge_.weigh(starts_);
    if (space_.movable().empty()) {
      choose();
    } else if (!all_at_once() && !warm()) {
      search_widely();
      if (judge_.slack_count() > 0 && judge_.best().violation > 0) find_feasible();
    }
    if (judge_.best().goal == -infinity)
      throw std::runtime_error("no setting within the knobs' ranges gives the goal a value");
  }

  void report(sdk::SearchResult& result) const {
    space_.settings(judge_.best_place().data(), 1, result.setting);
    result.goal = judge_.best().goal;
    result.evaluations = judge_.evaluations();
    result.feasible = judge_.best().violation == 0;
    result.exhaustive = exhaustive_;
  }

  /// Other local bests: with all combinations tried, those of the grid; else where climbers from all over the range end.
  void report_others(sdk::SearchResult& result) {
    if (result.other_room == 0 || result.others == nullptr) return;
    std::vector<Place> places;
    if (exhaustive_) {
      places = grid_.local_bests(result.other_room + 1);
    } else if (!space_.movable().empty() && space_.movable().size() <= tops_knobs) {
      if (tops_.empty()) tops_ = find_tops();
      places = tops_;
    }
    // The first is the best itself, or stands on its ridge.
    for (std::size_t i = 1; i < std::min(places.size(), result.other_room + 1); ++i)
      space_.settings(places[i].data(), 1, result.others + result.other_count++ * space_.size());
  }

 private:
  static constexpr double infinity = std::numeric_limits<double>::infinity();

  bool perfect() const { return judge_.best().violation == 0 && judge_.best().goal == infinity; }

  /// The given starts, then the design's own setting.
  void read_starts() {
    Place own(space_.size());
    for (std::size_t s = 0; s < problem_.start_count; ++s) {
      const Place place = space_.place_of(problem_.starts + s * problem_.knob_count);
      starts_.places.insert(starts_.places.end(), place.begin(), place.end());
    }
    for (std::size_t k = 0; k < space_.size(); ++k) own[k] = space_.place(k, problem_.knobs[k].start);
    starts_.places.insert(starts_.places.end(), own.begin(), own.end());
  }

  void choose() {
    if (space_.discrete().empty()) return;
    if (space_.combinations(enumerable) <= enumerable) {
      grid_ = enumerate_all(space_, judge_, starts_.place(0, space_.size()), all_wanted_);
      exhaustive_ = true;
      return;
    }
    Batch scan;
    scan.places = starts_.places;
    spread(space_, 0, choice_scan, scan.places);
    judge_.weigh(scan);
    judge_.scale_slacks(scan);
    for (std::size_t i : distinct_best(space_, scan, choice_walks, 0.1))
      walk_choices(space_, judge_, nullptr, climber_at(space_, scan, i));
  }

  /// From starts that stand near the top already, with a small look around. False where that cannot be trusted.
  bool warm() {
    if (problem_.start_count == 0) return false;
    Batch scan;
    spread(space_, 0, small_scan * space_.movable().size(), scan.places);
    judge_.weigh(scan);
    judge_.scale_slacks(scan);
    const std::vector<std::size_t> best = distinct_best(space_, starts_, 1, 0);
    Climber climber = climber_at(space_, starts_, best[0]);
    if (!std::isfinite(climber.worth.goal)) return false;
    const Worth first = climber.worth;
    climber.radius = near_start;
    ascent_.finish(climber, most_rounds);
    ascent_.restore(climber);
    overtake(climber);
    if (space_.discrete().size() > 0) climber = walk_choices(space_, judge_, &ascent_, climber);
    warm_.push_back(climber);
    return perfect() || trusted(scan, first, climber);
  }

  /// Other starts that stand apart may lead higher than the best of them did.
  void overtake(Climber& climber) {
    const Climber first = climber;
    for (std::size_t i : distinct_best(space_, starts_, rival_starts, rival_apart)) {
      Climber rival = climber_at(space_, starts_, i);
      if (!std::isfinite(rival.worth.goal) || distance(space_, rival.place.data(), first.place.data()) < near_start) continue;
      rival.radius = near_start;
      ascent_.finish(rival, rival_rounds);
      if (!ahead(rival, climber)) continue;
      ascent_.finish(rival, most_rounds);
      ascent_.restore(rival);
      if (better(rival.worth, climber.worth)) climber = rival;
    }
  }

  /// The start was ahead of the whole small scan, most of what it has over it now was there before the ascent, and the
  /// scan's best two, given a round or two, stay behind.
  bool trusted(const Batch& scan, const Worth& first, const Climber& climber) {
    const std::vector<std::size_t> others = distinct_best(space_, scan, 2, 0.2);
    const Worth& other = scan.worths[others[0]];
    if (climber.worth.violation > 0 || !better(first, other)) return false;
    if (other.violation == 0 && first.violation == 0 && climber.worth.goal - first.goal > first.goal - other.goal)
      return false;
    for (std::size_t i : others) {
      Climber rival = climber_at(space_, scan, i);
      ascent_.finish(rival, i == others[0] ? 2 : 1);
      if (ahead(rival, climber)) return false;
    }
    return !ascent_.kinked(climber);
  }

  void search_widely() {
    const std::size_t combinations = space_.combinations(switches);
    if (combinations == 1 || combinations > switches) return look_and_race(starts_.place(0, space_.size()), false);
    for_each_switch([&](const Place& place) { look_and_race(place, true); });
  }

  /// Every combination of the discrete knobs; without one, the first start.
  template <class Visit>
  void for_each_switch(const Visit& visit) {
    if (space_.discrete().empty()) return visit(starts_.place(0, space_.size()));
    Place place(space_.size(), 0.0);
    for (bool more = true; more;) {
      visit(place);
      more = false;
      for (std::size_t knob : space_.discrete()) {
        place[knob] += 1;
        more = place[knob] < double(space_.choice_count(knob));
        if (more) break;
        place[knob] = 0;
      }
    }
  }

  /// The climbers that a scan of the whole range gives. `held`: the discrete knobs stay as in `base`.
  std::vector<Climber> look(const Place& base, bool held, const Effort& effort) {
    Batch scan;
    scan.places = starts_.places;
    spread(space_, 0, effort.points, scan.places);
    if (held)
      for (std::size_t row = 0; row < scan.places.size(); row += space_.size())
        for (std::size_t knob : space_.discrete()) scan.places[row + knob] = base[knob];
    judge_.weigh(scan);
    judge_.scale_slacks(scan);
    height_ = height_of(scan);
    std::vector<Climber> climbers = warm_;
    for (std::size_t i : distinct_best(space_, scan, effort.climbers, effort.apart))
      if (std::isfinite(scan.worths[i].goal)) climbers.push_back(climber_at(space_, scan, i));
    return climbers;
  }

  /// All tops, best first, from a scan of the range and what is known already.
  std::vector<Place> find_tops() {
    std::vector<Climber> climbers;
    const auto add = [&](const Place& base, bool held) {
      for (Climber& climber : look(base, held, tops_effort(space_.movable().size())))
        climbers.push_back(std::move(climber));
    };
    const std::size_t combinations = space_.combinations(switches);
    if (combinations > switches) add(judge_.best_place(), true);
    else for_each_switch([&](const Place& place) { add(place, combinations > 1); });
    const bool among = std::any_of(climbers.begin(), climbers.end(),
                                   [&](const Climber& climber) { return climber.place == judge_.best_place(); });
    if (!among) climbers.push_back(climber_from(judge_.best_place()));
    return separate_tops(space_, judge_, ascent_, std::move(climbers), height_);
  }

  /// Where all tops are wanted of a smooth goal without slacks and choices, looking for them is the search itself.
  /// False where more is to be done.
  bool all_at_once() {
    if (!all_wanted_ || space_.movable().size() > tops_knobs) return false;
    if (judge_.slack_count() > 0 || !space_.discrete().empty()) return false;
    tops_ = find_tops();
    const bool creased = !perfect() && std::any_of(tops_.begin(), tops_.end(), [&](const Place& place) {
      return ascent_.kinked(climber_from(place));
    });
    if (creased) tops_.clear();
    return !tops_.empty();
  }

  Climber climber_from(const Place& place) {
    Batch one;
    one.places = place;
    judge_.weigh(one);
    return climber_at(space_, one, 0);
  }

  /// Scan, race, a walk over stepped knobs, and a last look at the best for kinks.
  void look_and_race(const Place& base, bool held) {
    Effort effort = full_effort(space_.movable().size());
    const bool stepped = !held && !space_.discrete().empty();
    if (stepped) effort = {3 * effort.points, 2 * effort.climbers, effort.apart};
    std::vector<Climber> climbers = look(base, held, effort);
    if (climbers.empty() || perfect()) return;
    race(climbers);
    if (stepped) {
      for (Climber& climber : climbers) climber = walk_choices(space_, judge_, &ascent_, climber);
      thin(space_, climbers, 1);
    }
    climbers.insert(climbers.end(), field_.begin(), field_.end());
    thin(space_, climbers, swarms, swarms_apart);
    if (any_kinked(climbers)) untangle(climbers);
  }

  /// Ever fewer climbers get ever more rounds.
  void race(std::vector<Climber>& climbers) {
    const std::size_t all = climbers.size();
    const std::size_t rounds[] = {2, 3, 8, most_rounds};
    const std::size_t kept[] = {(all + 1) / 2, (all + 3) / 4, 3, 2};
    for (std::size_t lap = 0; lap < std::size(rounds); ++lap) {
      for (Climber& climber : climbers) ascent_.finish(climber, rounds[lap]);
      if (lap == 1) field_ = climbers;
      if (lap == std::size(rounds) - 1)
        for (Climber& climber : climbers) ascent_.restore(climber);
      thin(space_, climbers, kept[lap]);
    }
  }

  bool any_kinked(const std::vector<Climber>& climbers) {
    return std::any_of(climbers.begin(), climbers.end(),
                       [&](const Climber& climber) { return ascent_.kinked(climber); });
  }

  /// Where models lie, climbers jam at creases all along a ridge, and the race has said little: the best of its field
  /// that stand apart go on as short swarms, and the best of these as a long one.
  void untangle(std::vector<Climber>& climbers) {
    for (std::size_t evaluations : {short_swarm, long_swarm}) {
      for (Climber& climber : climbers) swarm(space_, judge_, climber, evaluations * space_.movable().size());
      thin(space_, climbers, 1);
    }
    Climber& best = climbers[0];
    best.done = false;
    best.stalls = 0;
    best.radius = 1e-3;
    ascent_.finish(best, 10);
  }

  /// Where the race met no place that keeps every slack: first a search for one, then the ascent from there.
  void find_feasible();

  const sdk::SearchProblem& problem_;
  bool all_wanted_;
  Space space_;
  Judge judge_;
  Ascent ascent_;
  Batch starts_;
  std::vector<Climber> warm_;
  std::vector<Climber> field_;  ///< of the last race after its second lap
  double height_ = 0;           ///< of the last scan
  std::vector<Place> tops_;     ///< once they were looked for
  Grid grid_;
  bool exhaustive_ = false;
};

void Search::find_feasible() {
  Shortfall shortfall{problem_, judge_.measures()};
  const sdk::SearchProblem easier = shortfall.problem();
  Search other(easier);
  other.run();
  judge_.count(other.judge_.evaluations());
  Climber climber = climber_from(other.judge_.best_place());
  if (climber.worth.violation > all_but_met) return;
  climber.radius = near_start;
  ascent_.finish(climber, most_rounds);
  ascent_.restore(climber);
}

}  // namespace

void search(const sdk::SearchProblem& problem, sdk::SearchResult& result) {
  Search search(problem, result.other_room > 0);
  search.run();
  search.report_others(result);
  search.report(result);
}

}  // namespace wattfall::tuner
