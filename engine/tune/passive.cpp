// The most power that passive parts at given places can bring into a branch.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "tune/limit.hpp"

namespace wattfall::tune {
namespace {

using Complex = std::complex<double>;

/// Pivots below this share of the largest are rounding: what is subtracted there is near one, and good to 1e-16 each.
constexpr double least_pivot = 1e-12;
/// What may be left of a right side that the matrix should reach: amps that lose nothing bring nothing, to so much of all.
constexpr double most_left = 1e-6;

/// L L^H = A for an A that is nowhere negative, with pivoting; columns that lose nothing are left out.
class Triangle {
 public:
  Triangle(std::vector<Complex> a, std::size_t n) : n_(n), order_(n), l_(n * n) {
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    double largest = 0.0;
    for (std::size_t i = 0; i < n; ++i) largest = std::max(largest, a[i * n + i].real());
    for (std::size_t k = 0; k < n; ++k) {
      std::size_t pivot = k;
      for (std::size_t i = k + 1; i < n; ++i)
        if (a[order_[i] * n + order_[i]].real() > a[order_[pivot] * n + order_[pivot]].real()) pivot = i;
      std::swap(order_[k], order_[pivot]);
      const std::size_t p = order_[k];
      const double diagonal = a[p * n + p].real();
      if (!(diagonal > least_pivot * largest)) break;
      ++rank_;
      for (std::size_t i = 0; i < n; ++i) l_[i * n + k] = a[i * n + p] / std::sqrt(diagonal);
      for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) a[i * n + j] -= l_[i * n + k] * std::conj(l_[j * n + k]);
    }
  }

  /// y with L y = b; false where b has a part that L does not reach.
  bool reach(std::vector<Complex> b, std::vector<Complex>& y) const {
    const double whole = size(b);
    y.clear();
    for (std::size_t k = 0; k < rank_; ++k) {
      const std::size_t p = order_[k];
      y.push_back(b[p] / l_[p * n_ + k]);
      for (std::size_t i = 0; i < n_; ++i) b[i] -= l_[i * n_ + k] * y.back();
    }
    return size(b) <= most_left * whole;
  }

  static double size(const std::vector<Complex>& v) {
    double sum = 0.0;
    for (const Complex& x : v) sum += std::norm(x);
    return std::sqrt(sum);
  }

 private:
  std::size_t n_, rank_ = 0;
  std::vector<std::size_t> order_;
  std::vector<Complex> l_;
};

}  // namespace

// With I the amps into the ports, each of which has the conductance g beside its part: V = V0 + Z I, and the parts take g |V|^2 - Re V^H I, which is not below
// 0. With H = (Z + Z^H)/2, A = H - g Z^H Z (nowhere negative, for the rest is passive too) and b = g Z^H V0 - V0/2 that says
// (I - A^-1 b)^H A (I - A^-1 b) <= g |V0|^2 + b^H A^-1 b: an ellipsoid, over which the volts u + t I are largest where they are parallel to t.
std::optional<double> most_with_passive_parts(const solve::CollapsedPorts& ports, std::size_t watched) {
  const std::size_t n = ports.active;
  const double g = ports.reference;
  std::vector<Complex> a(n * n), b(n), t(n);
  double squares = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      a[i * n + j] = 0.5 * (ports.z[i * n + j] + std::conj(ports.z[j * n + i]));
      for (std::size_t k = 0; k < n; ++k) a[i * n + j] -= g * std::conj(ports.z[k * n + i]) * ports.z[k * n + j];
    }
    b[i] = -0.5 * ports.v[i];
    for (std::size_t k = 0; k < n; ++k) b[i] += g * std::conj(ports.z[k * n + i]) * ports.v[k];
    t[i] = std::conj(ports.u[(1 + watched) * (n + 1) + 1 + i]);
    squares += g * std::norm(ports.v[i]);
  }
  const Triangle triangle(std::move(a), n);
  std::vector<Complex> y, s;
  if (!triangle.reach(std::move(b), y) || !triangle.reach(std::move(t), s)) return std::nullopt;
  Complex middle = ports.u[(1 + watched) * (n + 1)];
  for (std::size_t k = 0; k < s.size(); ++k) middle += std::conj(s[k]) * y[k];
  const double y_size = Triangle::size(y);
  const double volts = std::abs(middle) + std::sqrt(squares + y_size * y_size) * Triangle::size(s);
  return ports.watched_siemens[watched] * volts * volts;
}

}  // namespace wattfall::tune
