// See swarm.hpp.
#include "swarm.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

namespace wattfall::tuner {
namespace {

/// First spread in shares of the ranges: the climber stands on the ridge already, some way from its top.
constexpr double first_spread = 0.03;

/// Spreads below this no knob can be set to; the climb that follows ends the rest.
constexpr double last_spread = 1e-6;

constexpr double pi = 3.14159265358979323846;

/// Normal numbers from a 64-bit mixing counter (SplitMix64: Steele, Lea, Flood, 2014) by Box and Muller (1958).
class Normal {
 public:
  double next() {
    const double a = uniform(), b = uniform();
    return std::sqrt(-2 * std::log(a)) * std::cos(2 * pi * b);
  }

 private:
  double uniform() {
    state_ += 0x9E3779B97F4A7C15u;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    z ^= z >> 31;
    return (double(z >> 11) + 0.5) * 0x1p-53;
  }
  std::uint64_t state_ = 0;
};

/// The distribution and its evolution paths, in the notation of the tutorial.
class Evolution {
 public:
  Evolution(std::size_t n, std::size_t size) : n_(n), covariance_(n * n, 0.0), pc_(n, 0.0), ps_(n, 0.0) {
    for (std::size_t i = 0; i < n; ++i) covariance_[i * n + i] = 1;
    const std::size_t parents = size / 2;
    for (std::size_t i = 0; i < parents; ++i)
      weights_.push_back(std::log(double(parents) + 0.5) - std::log(double(i + 1)));
    const double sum = std::accumulate(weights_.begin(), weights_.end(), 0.0);
    double squares = 0;
    for (double& w : weights_) {
      w /= sum;
      squares += w * w;
    }
    mass_ = 1 / squares;
    const double d = double(n);
    cs_ = (mass_ + 2) / (d + mass_ + 5);
    ds_ = 1 + 2 * std::max(0.0, std::sqrt((mass_ - 1) / (d + 1)) - 1) + cs_;
    cc_ = (4 + mass_ / d) / (d + 4 + 2 * mass_ / d);
    c1_ = 2 / ((d + 1.3) * (d + 1.3) + mass_);
    cmu_ = std::min(1 - c1_, 2 * (mass_ - 2 + 1 / mass_) / ((d + 2) * (d + 2) + mass_));
    mean_length_ = std::sqrt(d) * (1 - 1 / (4 * d) + 1 / (21 * d * d));
    decompose();
  }

  double spread() const { return sigma_; }

  /// A sample's offset from the mean.
  std::vector<double> sample(Normal& normal) const {
    std::vector<double> offset(n_, 0.0);
    for (std::size_t k = 0; k < n_; ++k) {
      const double along = sigma_ * axes_[k] * normal.next();
      for (std::size_t i = 0; i < n_; ++i) offset[i] += along * vectors_[k * n_ + i];
    }
    return offset;
  }

  /// Takes the offsets of the best half, best first, and returns the mean's move.
  std::vector<double> learn(const std::vector<std::vector<double>>& best) {
    std::vector<double> move(n_, 0.0);
    for (std::size_t p = 0; p < weights_.size(); ++p)
      for (std::size_t i = 0; i < n_; ++i) move[i] += weights_[p] * best[p][i];
    learn_spread(move);
    learn_shape(move, best);
    decompose();
    return move;
  }

 private:
  void learn_spread(const std::vector<double>& move) {
    const double keep = std::sqrt(cs_ * (2 - cs_) * mass_) / sigma_;
    for (double& p : ps_) p *= 1 - cs_;
    for (std::size_t k = 0; k < n_; ++k) {
      double along = 0;
      for (std::size_t i = 0; i < n_; ++i) along += vectors_[k * n_ + i] * move[i];
      for (std::size_t i = 0; i < n_; ++i) ps_[i] += keep * along / axes_[k] * vectors_[k * n_ + i];
    }
    double squares = 0;
    for (double p : ps_) squares += p * p;
    path_length_ = std::sqrt(squares);
  }

  void learn_shape(const std::vector<double>& move, const std::vector<std::vector<double>>& best) {
    const bool steady = path_length_ < (1.4 + 2 / (double(n_) + 1)) * mean_length_;
    const double keep = steady ? std::sqrt(cc_ * (2 - cc_) * mass_) / sigma_ : 0;
    for (std::size_t i = 0; i < n_; ++i) pc_[i] = (1 - cc_) * pc_[i] + keep * move[i];
    for (std::size_t i = 0; i < n_; ++i)
      for (std::size_t j = 0; j < n_; ++j) {
        double rank = 0;
        for (std::size_t p = 0; p < weights_.size(); ++p) rank += weights_[p] * best[p][i] * best[p][j];
        covariance_[i * n_ + j] =
            (1 - c1_ - cmu_) * covariance_[i * n_ + j] + c1_ * pc_[i] * pc_[j] + cmu_ * rank / (sigma_ * sigma_);
      }
    sigma_ *= std::exp(std::min(1.0, cs_ / ds_ * (path_length_ / mean_length_ - 1)));
  }

  void decompose() {
    symmetric_eigen(covariance_, n_, axes_, vectors_);
    // The floor keeps a direction that has died out from dividing by nothing.
    for (double& a : axes_) a = std::sqrt(std::max(a, 1e-20));
  }

  std::size_t n_;
  double sigma_ = first_spread;
  double mass_ = 0, cs_ = 0, ds_ = 0, cc_ = 0, c1_ = 0, cmu_ = 0, mean_length_ = 0, path_length_ = 0;
  std::vector<double> weights_, covariance_, pc_, ps_, axes_, vectors_;
};

}  // namespace

void swarm(const Space& space, Judge& judge, Climber& climber, std::size_t most) {
  const std::vector<std::size_t>& knobs = space.movable();
  const std::size_t n = knobs.size();
  const std::size_t size = std::max<std::size_t>(16, 4 * n);
  Evolution evolution(n, size);
  Normal normal;
  Place mean = climber.place;
  Batch batch;
  std::vector<std::size_t> order(size);
  for (std::size_t used = 0; used + size <= most && evolution.spread() > last_spread; used += size) {
    batch.places.clear();
    for (std::size_t s = 0; s < size; ++s) {
      const std::vector<double> offset = evolution.sample(normal);
      Place place = mean;
      for (std::size_t i = 0; i < n; ++i) place[knobs[i]] = std::clamp(mean[knobs[i]] + offset[i], 0.0, 1.0);
      batch.places.insert(batch.places.end(), place.begin(), place.end());
    }
    judge.weigh(batch);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return better(batch.worths[a], batch.worths[b]); });
    std::vector<std::vector<double>> best(size / 2, std::vector<double>(n));
    for (std::size_t p = 0; p < best.size(); ++p)
      for (std::size_t i = 0; i < n; ++i)
        best[p][i] = batch.places[order[p] * space.size() + knobs[i]] - mean[knobs[i]];
    const std::vector<double> move = evolution.learn(best);
    for (std::size_t i = 0; i < n; ++i) mean[knobs[i]] = std::clamp(mean[knobs[i]] + move[i], 0.0, 1.0);
    if (better(batch.worths[order[0]], climber.worth)) {
      climber.worth = batch.worths[order[0]];
      climber.place = batch.place(order[0], space.size());
    }
  }
}

}  // namespace wattfall::tuner
