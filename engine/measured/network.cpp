// What a measured network says at a frequency, and whether it is passive.
#include "measured/network.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

namespace wattfall::measured {
namespace {

constexpr double end_slack = 1e-9;  // relative: a frequency given in MHz and one in Hz are the same to a rounding

std::size_t size_of(const Network& network) {
  return static_cast<std::size_t>(network.ports) * static_cast<std::size_t>(network.ports);
}

/// Between two neighbours: `below` and its weight, the next point has the rest.
struct Place {
  std::size_t below = 0;
  double share = 0;  ///< of the next point
};

std::optional<Place> find_place(const std::vector<double>& frequencies, double frequency) {
  if (frequencies.empty()) return std::nullopt;
  const double first = frequencies.front();
  const double last = frequencies.back();
  if (!(frequency >= first - end_slack * first && frequency <= last + end_slack * last)) return std::nullopt;
  if (frequency <= first) return Place{0, 0};
  if (frequency >= last) return Place{frequencies.size() - 1, 0};
  const auto above = std::upper_bound(frequencies.begin(), frequencies.end(), frequency);
  const double below = above[-1];
  return Place{static_cast<std::size_t>(above - frequencies.begin()) - 1, (frequency - below) / (*above - below)};
}

Complex between(const Complex* below, const Complex* above, double share) {
  return share == 0 ? *below : *below + share * (*above - *below);
}

/// Of two ports: the larger root of S^H S in closed form, through its difference of diagonals, which loses nothing to
/// cancellation where S is nearly unitary.
double largest_of_two(const Complex* s) {
  const double first = std::norm(s[0]) + std::norm(s[2]);
  const double second = std::norm(s[1]) + std::norm(s[3]);
  const Complex cross = std::conj(s[0]) * s[1] + std::conj(s[2]) * s[3];
  return std::sqrt((first + second) / 2 + std::hypot((first - second) / 2, std::abs(cross)));
}

double largest_of_many(const Complex* s, int ports) {
  const Eigen::Map<const Eigen::Matrix<Complex, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>> matrix(s, ports,
                                                                                                         ports);
  const Eigen::MatrixXcd gram = matrix.adjoint() * matrix;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXcd> solver(gram, Eigen::EigenvaluesOnly);
  return std::sqrt(std::max(0.0, solver.eigenvalues().maxCoeff()));
}

}  // namespace

bool parameters_at(const Network& network, double frequency_hz, Complex* out) {
  const std::optional<Place> place = find_place(network.frequencies_hz, frequency_hz);
  if (!place) return false;
  const std::size_t size = size_of(network);
  const Complex* below = network.parameters.data() + place->below * size;
  const Complex* above = place->share == 0 ? below : below + size;
  for (std::size_t i = 0; i < size; ++i) out[i] = between(below + i, above + i, place->share);
  return true;
}

std::optional<Complex> reflection_at(const Network& network, double frequency_hz) {
  const std::optional<Place> place = find_place(network.frequencies_hz, frequency_hz);
  if (!place) return std::nullopt;
  const std::size_t size = size_of(network);
  const Complex* below = network.parameters.data() + place->below * size;
  return between(below, place->share == 0 ? below : below + size, place->share);
}

double largest_singular_value(const Network& network, std::size_t index) {
  const Complex* s = network.parameters.data() + index * size_of(network);
  if (network.ports == 1) return std::abs(*s);
  return network.ports == 2 ? largest_of_two(s) : largest_of_many(s, network.ports);
}

Gain worst_gain(const Network& network) {
  Gain worst;
  for (std::size_t index = 0; index < network.frequencies_hz.size(); ++index) {
    const double value = largest_singular_value(network, index);
    if (index == 0 || value > worst.singular_value) worst = {value, index};
  }
  return worst;
}

bool passive(const Network& network, double slack) {
  return worst_gain(network).singular_value <= 1 + slack;
}

}  // namespace wattfall::measured
