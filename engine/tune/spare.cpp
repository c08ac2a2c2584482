#include "spare.hpp"

#include <algorithm>
#include <cmath>

#include "study.hpp"

namespace wattfall::tune {
namespace {

/// Ratings come to bind one after the other; each is asked for once it is broken.
constexpr int most_rounds = 5;

/// A setting is worth taking for this much more, or where it costs no more than that.
constexpr double worth_sparing = 1.01, no_loss = 0.98;

/// Of a share of the power that is all but one, a setting at full power is near.
constexpr double full_power = 0.999;

/// Held to at less than full power, where the search for that power left it.
constexpr double just_beyond = 1.0 + 1e-6;

bool about_power(const design::Tune& statement) {
  const design::FigureKind kind = statement.goal.kind;
  return statement.most &&
         (kind == design::FigureKind::power_into || kind == design::FigureKind::radiated_from || kind == design::FigureKind::efficiency);
}

bool same_figure(const design::Requirement& a, const design::Requirement& b) {
  return a.figure.kind == b.figure.kind && a.figure.part == b.figure.part;
}

/// A rating as it is held to with a share of the power: what it then allows at full power.
design::Requirement at_power(design::Requirement rating, double power) {
  if (power < 1.0) rating.value *= 1.0 / strain_ratio(rating.figure, power) * just_beyond;
  return rating;
}

/// What a setting keeps that reflects no more than this.
design::Requirement source_swr_below(const design::Design& design, double swr) {
  design::Requirement below;
  below.figure.kind = design::FigureKind::swr_at;
  below.figure.look.node = design.source.node;
  below.figure.text = "swr at " + design.nodes[design.source.node.index].name;
  below.value = swr;
  return below;
}

class Sparing {
 public:
  Sparing(const Problem& problem, const Found& found, const sdk::Optimizer& optimizer, std::size_t other_room)
      : problem_(problem), found_(found), optimizer_(optimizer), other_room_(other_room), start_(found.setting) {
    spared_.held = problem.statement;
  }

  Spared run(double matched_swr) {
    spared_.broken = spared_.avoided = broken_ratings(problem_, found_.setting);
    const std::vector<BrokenRating>& first = spared_.avoided;
    if (first.empty()) return std::move(spared_);
    const auto hardest = std::min_element(first.begin(), first.end(), [](const BrokenRating& a, const BrokenRating& b) {
      return a.power_share < b.power_share;
    });
    if (follows_power(problem_, found_.setting, *hardest)) return std::move(spared_);
    if (!std::isnan(found_.swr)) spared_.held.keeping.push_back(source_swr_below(problem_.design, std::max(matched_swr, found_.swr * just_beyond)));
    own_ = spared_.held.keeping.size();
    for (const BrokenRating& one : first) ratings_.push_back(one.kept);
    const double power = about_power(problem_.statement) ? find_power() : 1.0;
    // Where all but all of the power is allowed, all of it may be a hair's breadth away, or out of reach.
    if (!(power > full_power && hold(1.0)) && power < 1.0) hold(power);
    return std::move(spared_);
  }

 private:
  /// Adds those that are broken at a share of the power, and that nothing holds to yet. False where there are none.
  bool add_fresh(const std::vector<BrokenRating>& broken, double power) {
    const std::size_t before = ratings_.size();
    for (const BrokenRating& one : broken) {
      const bool known = std::any_of(ratings_.begin(), ratings_.end(), [&](const design::Requirement& other) { return same_figure(one.kept, other); });
      if (!known && one.power_share < power * (1.0 - 1e-9)) ratings_.push_back(one.kept);
    }
    return ratings_.size() > before;
  }

  Problem problem_of(const design::Tune& statement, std::size_t scaling) const {
    return {problem_.design, problem_.network, problem_.plan, statement, problem_.frequencies_hz, problem_.others, {start_}, problem_.also_hz, scaling};
  }

  /// The share of the rig's power with which most arrives within the ratings, and the setting for it.
  double find_power() {
    double power = 1.0;
    for (int round = 0; round < most_rounds; ++round) {
      design::Tune scaled = spared_.held;
      scaled.keeping.insert(scaled.keeping.end(), ratings_.begin(), ratings_.end());
      const Problem problem = problem_of(scaled, ratings_.size());
      const Found best = search(problem, optimizer_);
      spared_.evaluations += best.evaluations;
      if (!best.found || !best.keeping) break;
      const std::vector<BrokenRating> broken = broken_ratings(problem, best.setting);
      start_ = best.setting;
      power = power_share_of(broken);
      if (!add_fresh(broken, 1.0)) break;
    }
    return power;
  }

  /// At a share of the power every rating is held to. False where no setting does that is worth it.
  bool hold(double power) {
    for (int round = 0; round < most_rounds; ++round) {
      spared_.held.keeping.resize(own_);
      for (const design::Requirement& rating : ratings_) spared_.held.keeping.push_back(at_power(rating, power));
      const Problem problem = problem_of(spared_.held, 0);
      Found kept = search(problem, optimizer_, other_room_);
      spared_.evaluations += kept.evaluations;
      if (!kept.found || !kept.keeping) return false;
      std::vector<BrokenRating> broken = broken_ratings(problem, kept.setting);
      if (add_fresh(broken, power)) continue;
      const double load_w = load_w_at(problem, kept.setting), unrated_w = load_w_at(problem_, found_.setting);
      const bool worth = load_w * power > worth_sparing * power_share_of(spared_.avoided) * unrated_w ||
                         load_w * power > no_loss * unrated_w;
      if (!worth) return false;
      spared_.power_share = power_share_of(broken);
      spared_.broken = std::move(broken);
      spared_.found = std::move(kept);
      return true;
    }
    return false;
  }

  const Problem& problem_;
  const Found& found_;
  const sdk::Optimizer& optimizer_;
  const std::size_t other_room_;
  std::vector<double> start_;
  std::size_t own_ = 0;                        ///< demands of `held` that are no ratings
  std::vector<design::Requirement> ratings_;   ///< those asked for
  Spared spared_;
};

}  // namespace

double power_share_of(const std::vector<BrokenRating>& broken) {
  double share = 1.0;
  for (const BrokenRating& one : broken) share = std::min(share, one.power_share);
  return share;
}

Spared spare_ratings(const Problem& problem, const Found& found, const sdk::Optimizer& optimizer, double matched_swr, std::size_t other_room) {
  return Sparing(problem, found, optimizer, other_room).run(matched_swr);
}

}  // namespace wattfall::tune
