// Least squares of relative errors over a few basis functions, with and without negative coefficients.
//
//   sum over points i of (sum over j of k_j b_j(f_i)/L_i - 1)^2 -> least
//
// Columns hold b_j(f_i)/L_i: a basis function over the loss at each point. They are made orthogonal one after the
// other (Gram-Schmidt, standard texts), so that the condition number is not squared.
#pragma once

#include <span>
#include <vector>

namespace line_loss {

using Column = std::vector<double>;

/// Sum of squared relative errors.
double sum_of_squares(std::span<const Column> columns, std::span<const double> coefficients);

/// The free optimum, one coefficient a column. The columns are independent, equally long, at least as long as many.
std::vector<double> least_squares(std::span<const Column> columns);

/// The optimum with no coefficient negative. There the coefficients that are not zero are the free optimum of their own
/// columns (the sum is convex), so the best of the subsets' free optima without a negative is it: 2^columns fits.
std::vector<double> non_negative_least_squares(std::span<const Column> columns);

}  // namespace line_loss
