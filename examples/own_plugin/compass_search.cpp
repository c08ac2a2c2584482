// Compass search (Hooke and Jeeves's pattern search without the pattern move). Every knob is mapped to 0..1; from a
// place, one step up and one down along each knob are tried; the best of them is the next place, or the step is halved.
// Needs no derivative and finds one summit, so it starts from the best of a scatter. The built-in optimizer does
// better; this one fits on a page.
#include "compass_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace own {
namespace {

namespace sdk = wattfall::sdk;

using Place = std::vector<double>;  // a number in 0..1 for each knob

constexpr double first_step = 0.25, last_step = 1e-7;
constexpr std::size_t scattered = 256, most_evaluations = 20000;

/// What a place is worth: first how far the slacks are missed, then the goal.
struct Worth {
  double missed = std::numeric_limits<double>::infinity();
  double goal = -std::numeric_limits<double>::infinity();
  bool better_than(const Worth& other) const {
    return missed != other.missed ? missed < other.missed : goal > other.goal;
  }
};

double value_at(const sdk::KnobRange& knob, double place) {
  if (knob.choices != nullptr) return std::round(place * double(knob.choice_count - 1));
  const double value = knob.logarithmic != 0 ? knob.lower * std::pow(knob.upper / knob.lower, place)
                                             : knob.lower + (knob.upper - knob.lower) * place;
  return std::clamp(value, knob.lower, knob.upper);
}

double place_of(const sdk::KnobRange& knob, double value) {
  double place = 0.0;
  if (knob.choices != nullptr)
    place = knob.choice_count > 1 ? value / double(knob.choice_count - 1) : 0.0;
  else if (knob.upper > knob.lower)
    place = knob.logarithmic != 0 ? std::log(value / knob.lower) / std::log(knob.upper / knob.lower)
                                  : (value - knob.lower) / (knob.upper - knob.lower);
  return std::clamp(place, 0.0, 1.0);
}

class Search {
 public:
  explicit Search(const sdk::SearchProblem& problem) : problem_(problem) {}

  sdk::Status run(sdk::Failure* failure) {
    if (try_all(starts(), failure) != sdk::Status::ok) return sdk::Status::failed;
    for (double step = first_step; step > last_step && evaluations_ < most_evaluations;) {
      const Worth before = worth_;
      if (try_all(neighbours(step), failure) != sdk::Status::ok) return sdk::Status::failed;
      if (!worth_.better_than(before)) step /= 2;
    }
    return sdk::Status::ok;
  }

  void report(sdk::SearchResult& result) const {
    const std::vector<double> setting = settings({best_});
    std::copy(setting.begin(), setting.end(), result.setting);
    result.goal = worth_.goal;
    result.evaluations = evaluations_;
    result.feasible = worth_.missed == 0.0;
  }

 private:
  /// Where the design stands, what the host proposes, and a scatter (multiples of irrational numbers, taken without
  /// their wholes).
  std::vector<Place> starts() const {
    std::vector<Place> places(1 + problem_.start_count + scattered, Place(problem_.knob_count));
    for (std::size_t k = 0; k < problem_.knob_count; ++k) {
      const sdk::KnobRange& knob = problem_.knobs[k];
      places[0][k] = place_of(knob, knob.start);
      for (std::size_t s = 0; s < problem_.start_count; ++s)
        places[1 + s][k] = place_of(knob, problem_.starts[s * problem_.knob_count + k]);
      const double stride = std::sqrt(double(k * k + k) + 2.0);
      for (std::size_t s = 0; s < scattered; ++s)
        places[1 + problem_.start_count + s][k] = std::fmod(double(s + 1) * stride, 1.0);
    }
    return places;
  }

  std::vector<Place> neighbours(double step) const {
    std::vector<Place> places(2 * problem_.knob_count, best_);
    for (std::size_t k = 0; k < problem_.knob_count; ++k) {
      // A knob with choices moves by one of them at least.
      const sdk::KnobRange& knob = problem_.knobs[k];
      const double least = knob.choices != nullptr && knob.choice_count > 1 ? 1.0 / double(knob.choice_count - 1) : 0.0;
      places[2 * k][k] = std::clamp(best_[k] + std::max(step, least), 0.0, 1.0);
      places[2 * k + 1][k] = std::clamp(best_[k] - std::max(step, least), 0.0, 1.0);
    }
    return places;
  }

  std::vector<double> settings(const std::vector<Place>& places) const {
    std::vector<double> values;
    for (const Place& place : places)
      for (std::size_t k = 0; k < place.size(); ++k) values.push_back(value_at(problem_.knobs[k], place[k]));
    return values;
  }

  /// Asks for all places at once, which is cheaper than one by one, and keeps the best met so far.
  sdk::Status try_all(const std::vector<Place>& places, sdk::Failure* failure) {
    const std::size_t slacks = problem_.slack_count;
    std::vector<double> goals(places.size()), left(places.size() * slacks);
    const std::vector<double> asked = settings(places);
    if (problem_.evaluate(problem_.self, asked.data(), places.size(), goals.data(), left.data(), failure) !=
        sdk::Status::ok)
      return sdk::Status::failed;
    evaluations_ += places.size();
    for (std::size_t i = 0; i < places.size(); ++i) {
      Worth worth{0.0, goals[i]};
      for (std::size_t s = 0; s < slacks; ++s) worth.missed += std::max(0.0, -left[i * slacks + s]);
      // The first place of all is kept whatever it is worth.
      if (!best_.empty() && !worth.better_than(worth_)) continue;
      worth_ = worth;
      best_ = places[i];
    }
    return sdk::Status::ok;
  }

  const sdk::SearchProblem& problem_;
  Place best_;
  Worth worth_;
  std::size_t evaluations_ = 0;
};

sdk::Status search(void*, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    Search search(*problem);
    if (search.run(failure) != sdk::Status::ok) return sdk::Status::failed;
    search.report(*result);
    return sdk::Status::ok;
  });
}

}  // namespace

constexpr sdk::Optimizer compass_search{"compass-search", "steps along each knob, halved where none helps", nullptr,
                                        search};

}  // namespace own
