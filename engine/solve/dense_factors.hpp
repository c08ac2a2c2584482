// Factors of a dense matrix, in numbers of any width. Private to factors.cpp and to tests.
#pragma once

#include <Eigen/LU>

#include "factors.hpp"

namespace wattfall::solve {

template <class Real>
using Column = Eigen::Matrix<std::complex<Real>, Eigen::Dynamic, 1>;

template <class Real>
Eigen::Map<const Column<Real>> mapped(const std::vector<std::complex<Real>>& x) {
  return {x.data(), static_cast<Eigen::Index>(x.size())};
}
template <class Real>
std::vector<std::complex<Real>> plain(const Column<Real>& x) {
  return {x.data(), x.data() + x.size()};
}

template <class Real>
class DenseFactors : public Factors<Real> {
 public:
  using Vector = typename Factors<Real>::Vector;

  DenseFactors(int size, const std::vector<Term<Real>>& terms) {
    Matrix matrix = Matrix::Zero(size, size);
    for (const Term<Real>& term : terms) matrix(term.row, term.column) += term.value;
    factors_.compute(matrix);
  }

  Vector solve(const Vector& right) const override { return plain<Real>(factors_.solve(mapped(right))); }
  Vector solve_transposed(const Vector& right) const override {
    return plain<Real>(factors_.transpose().solve(mapped(right)));
  }
  double trust() const override { return static_cast<double>(factors_.rcond()); }

 private:
  using Matrix = Eigen::Matrix<std::complex<Real>, Eigen::Dynamic, Eigen::Dynamic>;

  Eigen::PartialPivLU<Matrix> factors_;
};

}  // namespace wattfall::solve
