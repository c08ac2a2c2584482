#include "quad_reference.hpp"

#include <algorithm>
#include <utility>
#if defined(WATTFALL_FLOAT128)
#include <boost/multiprecision/float128.hpp>
#else
#include <boost/multiprecision/cpp_bin_float.hpp>
#endif

namespace wattfall::test {
namespace {

using graph::Element;
using solve::ElementValue;
#if defined(WATTFALL_FLOAT128)
using Quad = boost::multiprecision::float128;
#else
using Quad = boost::multiprecision::number<boost::multiprecision::cpp_bin_float_quad::backend_type, boost::multiprecision::et_off>;
#endif

struct Wide {
  Quad re = 0, im = 0;
  Wide() = default;
  Wide(Quad re_part, Quad im_part) : re(std::move(re_part)), im(std::move(im_part)) {}
  Wide(double number) : re(number) {}
  Wide(solve::Complex number) : re(number.real()), im(number.imag()) {}
  bool zero() const { return re == 0 && im == 0; }
};
Wide operator+(const Wide& a, const Wide& b) { return {a.re + b.re, a.im + b.im}; }
Wide operator-(const Wide& a, const Wide& b) { return {a.re - b.re, a.im - b.im}; }
Wide operator-(const Wide& a) { return {-a.re, -a.im}; }
Wide operator*(const Wide& a, const Wide& b) { return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re}; }
Quad norm(const Wide& a) { return a.re * a.re + a.im * a.im; }
Wide operator/(const Wide& a, const Wide& b) {
  const Quad over = 1 / norm(b);
  return {(a.re * b.re + a.im * b.im) * over, (a.im * b.re - a.re * b.im) * over};
}
Quad size_of(const Wide& a) { return abs(a.re) + abs(a.im); }

/// e^-x.
Wide falling(solve::Complex x) {
  const Quad size = exp(-Quad(x.real())), angle = x.imag();
  return {size * cos(angle), -size * sin(angle)};
}

/// Rows of equations, the right side the last column.
class Equations {
 public:
  explicit Equations(std::size_t size) : size_(size), rows_(size, std::vector<Wide>(size + 1)) {}

  void add(std::size_t row, std::size_t column, const Wide& factor) { rows_[row][column] = rows_[row][column] + factor; }
  void set_right(std::size_t row, const Wide& number) { rows_[row][size_] = number; }

  /// Empty where a pivot is zero. Rows first get their largest entry to one, so that pivots compare.
  std::vector<Wide> solved() {
    for (std::vector<Wide>& row : rows_) scale(row);
    for (std::size_t k = 0; k < size_; ++k)
      if (!eliminate(k)) return {};
    std::vector<Wide> x(size_);
    for (std::size_t k = size_; k-- > 0;) {
      Wide sum = rows_[k][size_];
      for (std::size_t j = k + 1; j < size_; ++j)
        if (!rows_[k][j].zero()) sum = sum - rows_[k][j] * x[j];
      x[k] = sum / rows_[k][k];
    }
    return x;
  }

 private:
  void scale(std::vector<Wide>& row) const {
    Quad largest = 0;
    for (std::size_t j = 0; j < size_; ++j) largest = std::max(largest, size_of(row[j]));
    if (largest == 0) return;
    for (Wide& entry : row) entry = {entry.re / largest, entry.im / largest};
  }

  bool eliminate(std::size_t k) {
    std::size_t best = k;
    for (std::size_t i = k + 1; i < size_; ++i)
      if (size_of(rows_[i][k]) > size_of(rows_[best][k])) best = i;
    std::swap(rows_[k], rows_[best]);
    const std::vector<Wide>& pivot = rows_[k];
    if (pivot[k].zero()) return false;
    // Most entries are zero.
    std::vector<std::size_t> columns;
    for (std::size_t j = k + 1; j <= size_; ++j)
      if (!pivot[j].zero()) columns.push_back(j);
    for (std::size_t i = k + 1; i < size_; ++i) {
      if (rows_[i][k].zero()) continue;
      const Wide factor = rows_[i][k] / pivot[k];
      for (std::size_t j : columns) rows_[i][j] = rows_[i][j] - factor * pivot[j];
    }
    return true;
  }

  std::size_t size_;
  std::vector<std::vector<Wide>> rows_;
};

/// Unknowns: the nodes' potentials, the ports' currents from their first terminal inwards, the source's current into the network.
class Reference {
 public:
  Reference(const graph::Network& network, const std::vector<ElementValue>& values) : network_(network), values_(values) {
    std::size_t next = static_cast<std::size_t>(network.node_count) - 1;
    for (const Element& element : network.elements) {
      ports_.push_back(next);
      next += static_cast<std::size_t>(element.ports());
    }
    source_ = next;
  }

  QuadState solve(solve::Complex source_ohms, double source_volts) {
    Equations equations(source_ + 1);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) add_laws(equations, e);
    // A section that nothing joins to ground has one node whose law follows from the others'.
    leave(equations, network_.source_node, source_, -1.0);
    leave(equations, network_.source_other, source_, 1.0);
    for (int node : network_.floating_reference) equations.add(row_of(node), row_of(node), 1.0);
    across(equations, source_, network_.source_node, network_.source_other, 1.0);
    equations.add(source_, source_, source_ohms);
    equations.set_right(source_, source_volts);
    x_ = equations.solved();
    QuadState state;
    state.regular = !x_.empty();
    if (!state.regular) return state;
    for (std::size_t e = 0; e < network_.elements.size(); ++e) state.heat_w.push_back(static_cast<double>(heat(e)));
    const Wide back = volts(network_.source_node) - volts(network_.source_other) - conj(source_ohms) * x_[source_];
    state.returned_w = static_cast<double>(norm(back) / (4 * Quad(source_ohms.real())));
    return state;
  }

 private:
  static std::size_t row_of(int node) { return static_cast<std::size_t>(node) - 1; }
  Wide volts(int node) const { return node == 0 ? Wide() : x_[row_of(node)]; }
  Wide volts(const Element& element, int port) const { return volts(element.node[2 * port]) - volts(element.node[2 * port + 1]); }

  /// Kirchhoff's current law at a node.
  void leave(Equations& equations, int node, std::size_t current, double sign) const {
    const auto& fixed = network_.floating_reference;
    if (node != 0 && std::find(fixed.begin(), fixed.end(), node) == fixed.end()) equations.add(row_of(node), current, sign);
  }

  static void across(Equations& equations, std::size_t row, int node, int other, const Wide& factor) {
    if (node != 0) equations.add(row, row_of(node), factor);
    if (other != 0) equations.add(row, row_of(other), -factor);
  }

  void add_laws(Equations& equations, std::size_t e) const {
    const Element& element = network_.elements[e];
    const ElementValue& value = values_[e];
    const std::size_t row = ports_[e];
    const auto volts_of = [&](std::size_t in, int port, const Wide& factor) { across(equations, row + in, element.node[2 * port], element.node[2 * port + 1], factor); };
    for (int port = 0; port < element.ports(); ++port) {
      leave(equations, element.node[2 * port], row + static_cast<std::size_t>(port), 1.0);
      leave(equations, element.node[2 * port + 1], row + static_cast<std::size_t>(port), -1.0);
    }
    switch (element.form) {
      case Element::Form::branch:
        volts_of(0, 0, value.d);
        equations.add(row, row, -value.n);
        break;
      case Element::Form::line: {
        // The wave that comes out at one end is the one that went in at the other: V1 - Z0 I1 = e^-gl (V2 + Z0 I2).
        const Wide z0 = value.impedance, e_gl = falling(value.gamma_l);
        for (std::size_t end = 0; end < 2; ++end) {
          volts_of(end, static_cast<int>(end), 1.0);
          equations.add(row + end, row + end, -z0);
          volts_of(end, 1 - static_cast<int>(end), -e_gl);
          equations.add(row + end, row + 1 - end, -(e_gl * z0));
        }
        break;
      }
      case Element::Form::ideal:
        volts_of(0, 1, 1.0);
        volts_of(0, 0, -value.ratio);
        equations.add(row + 1, row, 1.0);
        equations.add(row + 1, row + 1, value.ratio);
        break;
      case Element::Form::matrix:
        for (std::size_t i = 0; i < 2; ++i)
          for (std::size_t k = 0; k < 2; ++k) {
            volts_of(i, static_cast<int>(k), value.a[2 * i + k]);
            equations.add(row + i, row + k, value.b[2 * i + k]);
          }
        break;
    }
  }

  /// Re(V conj I) at the ports of lines and two-ports. Not of branches and coils: n and d are rounded to double numbers, and with great volts and amps what
  /// they take in differs by that from the loss that belongs to them.
  Quad heat(std::size_t e) const {
    const Element& element = network_.elements[e];
    const ElementValue& value = values_[e];
    const Wide *amps = &x_[ports_[e]], v1 = volts(element, 0);
    if (element.form == Element::Form::branch) {
      const bool by_volts = size_of(value.n) >= size_of(value.d);
      return (by_volts ? norm(v1) / norm(value.n) : norm(amps[0]) / norm(value.d)) * Quad(value.loss);
    }
    if (element.form == Element::Form::ideal) return 0;
    const Wide v2 = volts(element, 1);
    if (element.role == Element::Role::coupled) return coil_heat(value, 0, v1, amps[0]) + coil_heat(value, 1, v2, amps[1]);
    return v1.re * amps[0].re + v1.im * amps[0].im + v2.re * amps[1].re + v2.im * amps[1].im;
  }

  /// The coil's own current is the terminal's less j B V of the capacitance across it.
  static Quad coil_heat(const ElementValue& value, std::size_t coil, const Wide& v, const Wide& amps) {
    return norm(amps - Wide(0, value.coil_susceptance[coil]) * v) * Quad(value.coil_ohms[coil]);
  }

  const graph::Network& network_;
  const std::vector<ElementValue>& values_;
  std::vector<std::size_t> ports_;
  std::size_t source_;
  std::vector<Wide> x_;
};

}  // namespace

QuadState solve_in_quad(const graph::Network& network, const std::vector<ElementValue>& values, solve::Complex source_ohms, double source_volts) {
  return Reference(network, values).solve(source_ohms, source_volts);
}

}  // namespace wattfall::test
