// The waves' definition as code: one formula for Z, Y, H and G, solved by elimination with partial pivoting.
#include "measured/convert.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace wattfall::measured {
namespace {

using Complex = std::complex<double>;

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Whether x, the given quantity of a port, is its current.
bool current_given(Immittance kind, int port) {
  switch (kind) {
    case Immittance::impedance:
      return true;
    case Immittance::admittance:
      return false;
    case Immittance::hybrid:
      return port == 0;
    case Immittance::inverse_hybrid:
      return port == 1;
  }
  return true;
}

/// Room for N x N numbers: inside for one and two ports, on the heap for more.
class Square {
 public:
  explicit Square(int ports) : size_(static_cast<std::size_t>(ports) * static_cast<std::size_t>(ports)) {
    if (size_ > inside_.size()) outside_.resize(size_);
  }
  Complex* data() { return size_ > inside_.size() ? outside_.data() : inside_.data(); }

 private:
  std::size_t size_;
  std::array<Complex, 4> inside_ = {};
  std::vector<Complex> outside_;
};

double largest(const Complex* row, int count) {
  double result = 0;
  for (int k = 0; k < count; ++k) result = std::max(result, std::abs(row[k]));
  return result;
}

/// The row from `column` down whose pivot is largest beside its row as it stands; -1 where all are rounding.
int pivot_row(int n, int column, const Complex* a, const double* scale) {
  int best = -1;
  double most = 16 * n * std::numeric_limits<double>::epsilon();
  for (int row = column; row < n; ++row) {
    const double size = std::abs(a[row * n + column]) / scale[row];
    if (size > most) {
      most = size;
      best = row;
    }
  }
  return best;
}

void swap_rows(int n, int one, int other, Complex* matrix) {
  if (one != other) std::swap_ranges(matrix + one * n, matrix + one * n + n, matrix + other * n);
}

/// b = a^-1 b, both n x n and overwritten. False where a is singular to rounding, or not finite.
bool solve(int n, Complex* a, Complex* b, double* scale) {
  for (int row = 0; row < n; ++row) scale[row] = largest(a + row * n, n);
  for (int column = 0; column < n; ++column) {
    const int pivot = pivot_row(n, column, a, scale);
    if (pivot < 0) return false;
    swap_rows(n, column, pivot, a);
    swap_rows(n, column, pivot, b);
    std::swap(scale[column], scale[pivot]);
    const Complex inverse = 1.0 / a[column * n + column];
    for (int k = 0; k < n; ++k) b[column * n + k] *= inverse;
    for (int k = column; k < n; ++k) a[column * n + k] *= inverse;
    for (int row = 0; row < n; ++row) {
      const Complex factor = a[row * n + column];
      if (row == column || factor == Complex()) continue;
      for (int k = column; k < n; ++k) a[row * n + k] -= factor * a[column * n + k];
      for (int k = 0; k < n; ++k) b[row * n + k] -= factor * b[column * n + k];
    }
  }
  return true;
}

/// matrix = (1 + sign matrix)^-1 (matrix + offset), the shape of both directions.
bool divide(int n, double sign, double offset, Complex* matrix) {
  Square left(n);
  std::array<double, 2> inside = {};
  std::vector<double> outside(n > 2 ? n : 0);
  Complex* a = left.data();
  for (int i = 0; i < n * n; ++i) a[i] = sign * matrix[i];
  for (int i = 0; i < n; ++i) {
    a[i * n + i] += 1.0;
    matrix[i * n + i] += offset;
  }
  return solve(n, a, matrix, n > 2 ? outside.data() : inside.data());
}

void flip_voltage_rows(Immittance kind, int n, Complex* matrix) {
  for (int row = 0; row < n; ++row) {
    if (current_given(kind, row)) continue;
    for (int k = 0; k < n; ++k) matrix[row * n + k] = -matrix[row * n + k];
  }
}

/// s of a port: m_jk = M_jk s_j s_k.
double scale_of(Immittance kind, int port, double reference_ohm) {
  return current_given(kind, port) ? 1 / std::sqrt(reference_ohm) : std::sqrt(reference_ohm);
}

bool known(Immittance kind, int ports) {
  return ports == 2 || (ports > 0 && (kind == Immittance::impedance || kind == Immittance::admittance));
}

}  // namespace

Complex impedance_from_reflection(Complex reflection, double reference_ohm) {
  if (reflection == Complex(1)) return {infinity, 0};
  return reference_ohm * (1.0 + reflection) / (1.0 - reflection);
}

Complex reflection_from_impedance(Complex impedance_ohm, double reference_ohm) {
  if (std::isinf(impedance_ohm.real()) || std::isinf(impedance_ohm.imag())) return 1;
  if (impedance_ohm == Complex(-reference_ohm)) return {infinity, 0};
  return (impedance_ohm - reference_ohm) / (impedance_ohm + reference_ohm);
}

Complex admittance_from_reflection(Complex reflection, double reference_ohm) {
  return impedance_from_reflection(-reflection, 1 / reference_ohm);
}

Complex reflection_from_admittance(Complex admittance_s, double reference_ohm) {
  const Complex mirrored = reflection_from_impedance(admittance_s, 1 / reference_ohm);
  return std::isinf(mirrored.real()) ? mirrored : -mirrored;
}

bool to_scattering_normalised(Immittance from, int ports, Complex* matrix) {
  // D (m + 1)^-1 (m - 1): the two factors commute.
  if (!known(from, ports) || !divide(ports, 1, -1, matrix)) return false;
  flip_voltage_rows(from, ports, matrix);
  return true;
}

bool to_scattering(Immittance from, int ports, const double* reference_ohm, Complex* matrix) {
  for (int row = 0; row < ports; ++row) {
    const double outer = scale_of(from, row, reference_ohm[row]);
    for (int k = 0; k < ports; ++k) matrix[row * ports + k] *= outer * scale_of(from, k, reference_ohm[k]);
  }
  return to_scattering_normalised(from, ports, matrix);
}

bool from_scattering(Immittance to, int ports, const double* reference_ohm, Complex* matrix) {
  if (!known(to, ports)) return false;
  flip_voltage_rows(to, ports, matrix);
  if (!divide(ports, -1, 1, matrix)) return false;
  for (int row = 0; row < ports; ++row) {
    const double outer = scale_of(to, row, reference_ohm[row]);
    for (int k = 0; k < ports; ++k) matrix[row * ports + k] /= outer * scale_of(to, k, reference_ohm[k]);
  }
  return true;
}

}  // namespace wattfall::measured
