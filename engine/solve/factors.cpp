#include "factors.hpp"

#include <Eigen/SparseCore>
#include <Eigen/SparseLU>
#include <algorithm>
#include <limits>

#include "dense_factors.hpp"

namespace wattfall::solve {
namespace {

constexpr int most_dense = 600;

class SparseFactors : public Factors<double> {
 public:
  SparseFactors(int size, const std::vector<Term<double>>& terms) : size_(size) {
    std::vector<Eigen::Triplet<Wide>> entries;
    for (const Term<double>& term : terms) {
      entries.emplace_back(term.row, term.column, term.value);
      largest_ = std::max(largest_, std::abs(term.value));
    }
    Eigen::SparseMatrix<Wide> matrix(size_, size_);
    matrix.setFromTriplets(entries.begin(), entries.end());
    factors_.compute(matrix);
  }

  Vector solve(const Vector& right) const override {
    return factors_.info() == Eigen::Success ? plain<double>(factors_.solve(mapped(right))) : unknown();
  }
  Vector solve_transposed(const Vector& right) const override {
    return plain<double>(factors_.transpose().solve(mapped(right)));
  }

  /// The least that one trial of inverse iteration shows.
  double trust() const override {
    if (factors_.info() != Eigen::Success) return 0.0;
    Column<double> x = Column<double>::Ones(size_);
    for (int i = 0; i < 2; ++i) x = factors_.solve((x / x.norm()).eval()).eval();
    return 1.0 / (x.norm() * largest_);
  }

 private:
  using Wide = std::complex<double>;
  Vector unknown() const {
    return Vector(static_cast<std::size_t>(size_), Wide(std::numeric_limits<double>::quiet_NaN(), 0.0));
  }

  int size_;
  double largest_ = 0.0;
  mutable Eigen::SparseLU<Eigen::SparseMatrix<Wide>, Eigen::COLAMDOrdering<int>>
      factors_;  // its transpose() is not const, though it changes nothing
};

}  // namespace

template <>
std::unique_ptr<Factors<double>> factorize(int size, const std::vector<Term<double>>& terms) {
  if (size > most_dense) return std::make_unique<SparseFactors>(size, terms);
  return std::make_unique<DenseFactors<double>>(size, terms);
}

}  // namespace wattfall::solve
