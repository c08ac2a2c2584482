// Second-order model of a quantity about a centre, from central differences on one batch of n^2+n+1 points, and the
// step that climbs it inside a box. Cost: one symmetric eigenproblem of size n <= 12 for each set of knobs held at
// their bounds.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace wattfall::tuner {

/// value + gradient.d + d.hessian.d/2; the hessian is n x n, symmetric.
struct Quadratic {
  double value = 0;
  std::vector<double> gradient;
  std::vector<double> hessian;

  double at(std::span<const double> step) const;
};

/// Offsets of the stencil's points in units of its spacing: centre; +-e_i; then for i<j e_i+e_j and -e_i-e_j.
std::vector<double> stencil_offsets(std::size_t n);

/// The model that the stencil's values (in the order of stencil_offsets) give.
Quadratic fit(std::span<const double> values, std::size_t n, double spacing);

/// Climbs a model inside a box. Directions of negative curvature are climbed by their curvature's size (saddle-free
/// Newton: Dauphin et al., 2014), and shorter steps come by adding to all curvatures (Levenberg, 1944; Marquardt,
/// 1963).
class Climb {
 public:
  Climb(const Quadratic& model, std::span<const double> lower, std::span<const double> upper);

  /// Best step no longer than `radius`; knobs that would leave the box are held at its side and the rest solved again.
  std::vector<double> step(double radius);

 private:
  struct Axes {
    std::vector<std::size_t> free;
    std::vector<double> curvatures;
    std::vector<double> directions;
  };
  const Axes& axes(const std::vector<bool>& held);
  std::vector<double> free_step(const Axes& axes, std::span<const double> held_step, double radius) const;

  const Quadratic& model_;
  std::span<const double> lower_;
  std::span<const double> upper_;
  std::vector<std::vector<bool>> known_;
  std::vector<Axes> known_axes_;
};

/// Eigenvalues and orthonormal eigenvectors (rows of `vectors`) of a symmetric n x n matrix by cyclic rotations
/// (Jacobi, 1846).
void symmetric_eigen(std::vector<double> matrix, std::size_t n, std::vector<double>& values,
                     std::vector<double>& vectors);

}  // namespace wattfall::tuner
