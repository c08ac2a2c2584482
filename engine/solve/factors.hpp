// The tableau's matrix, factored. Private to the room and to tests. No word of the linear algebra library stands here:
// it takes half a minute to compile, which factors.cpp does for all.
#pragma once

#include <complex>
#include <memory>
#include <vector>

namespace wattfall::solve {

/// A summand of one coefficient of a matrix: all that name the same place add up.
template <class Real>
struct Term {
  int row, column;
  std::complex<Real> value;
};

/// A square matrix M by its LU factors, with partial pivoting.
template <class Real>
class Factors {
 public:
  using Vector = std::vector<std::complex<Real>>;

  virtual ~Factors() = default;
  /// x with M x = right. Of a singular M not finite.
  virtual Vector solve(const Vector& right) const = 0;
  /// y with transposed(M) y = right.
  virtual Vector solve_transposed(const Vector& right) const = 0;
  /// Reciprocal of the condition number, estimated; about 1e-16 and below nothing can be trusted in double.
  virtual double trust() const = 0;
};

/// The factors of a matrix of size * size. In double numbers: dense at O(size^3), or sparse beyond 600 rows. In wider
/// ones: what a test defines, of dense_factors.hpp.
template <class Real>
std::unique_ptr<Factors<Real>> factorize(int size, const std::vector<Term<Real>>& terms);
template <>
std::unique_ptr<Factors<double>> factorize(int size, const std::vector<Term<double>>& terms);

}  // namespace wattfall::solve
