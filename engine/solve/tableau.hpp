// The plain dense form of a network: every potential, every port current and the source's current an unknown, every law a row, nothing
// divided by anything that can vanish. Lines are wave rows, V1 - Z0 I1 = e^(-gamma l)(V2 + Z0 I2) and its mirror; branches are
// d V = n I; the source is V + Zs I = E. Solved by LU with partial pivoting. This is the robust form of the solver
// (Real = double) and, in a wider type, the reference that tests hold every answer against. Private to the room and to tests.
//
// Currents are carried as base_ohms times amps, so that all unknowns are volts.
//
// Size: nodes - 1 + ports + 1 rows. Cost O(size^3); in double numbers, beyond 600 rows, that of a sparse LU with partial pivoting of the same rows.
// Fails only where the network itself leaves something undetermined.
#pragma once

#include <algorithm>
#include <cmath>
#include <complex>
#include <memory>
#include <utility>
#include <vector>

#include "factors.hpp"
#include "flows.hpp"

namespace wattfall::solve {

template <class Real>
class Tableau {
 public:
  using Wide = std::complex<Real>;
  using Vector = typename Factors<Real>::Vector;

  Tableau(const graph::Network& network, const std::vector<ElementValue>& values, Complex source_ohms)
      : network_(network), values_(values), places_(network), source_column_(places_.source()), size_(source_column_ + 1) {
    laws_of_nodes();
    laws_of_elements();
    law_of_source(source_ohms);
    factors_ = factorize<Real>(size_, terms_);
  }

  /// The source working with the given Thevenin volts.
  StateFlows solve(Complex source_volts) const { return unpack(driven(source_volts)); }

  /// The source silent, 1 A fed into `from` and taken out of `to` (0: ground).
  StateFlows respond(int from, int to = 0) const { return unpack(fed(from, to)); }

  // The equations M x = s themselves: x as a FieldVector has it.
  Vector driven(Complex source_volts) const {
    Vector right = zeros();
    right[place(source_column_)] = Wide(source_volts);
    return factors_->solve(right);
  }
  Vector fed(int from, int to = 0) const {
    Vector right = zeros();
    if (from != 0 && !is_reference(from)) right[place(from - 1)] += base_ohms;
    if (to != 0 && !is_reference(to)) right[place(to - 1)] -= base_ohms;
    return factors_->solve(right);
  }
  /// y with transposed(M) y = gradient.
  Vector transposed(const Vector& gradient) const { return factors_->solve_transposed(gradient); }
  /// y^T (M - M') x over the rows of one element that has one value in M and another in M'; and of the source.
  Wide element_change(const Vector& y, const Vector& x, int element, const ElementValue& value, const ElementValue& other) {
    return change_of(y, x, [&] { law_of_element(element, value); }, [&] { law_of_element(element, other); });
  }
  Wide source_change(const Vector& y, const Vector& x, Complex ohms, Complex other) {
    return change_of(y, x, [&] { law_of_source(ohms); }, [&] { law_of_source(other); });
  }

  static constexpr Real base_ohms = Fields::base_ohms;

  /// Reciprocal of the condition number, estimated; about 1e-16 and below nothing can be trusted in double. Of the sparse form: the least that one
  /// trial of inverse iteration shows.
  double trust() const { return factors_->trust(); }

 private:
  static std::size_t place(int unknown) { return static_cast<std::size_t>(unknown); }
  Vector zeros() const { return Vector(place(size_)); }

  void add(int row, int column, Wide factor) { terms_.push_back({row, column, factor}); }

  /// Both laws add the same places in the same order. Taken place by place, the difference keeps its digits however large y is.
  template <class Law, class Other>
  Wide change_of(const Vector& y, const Vector& x, Law law, Other other) {
    terms_.clear();
    other();
    const std::vector<Term<Real>> before = std::exchange(terms_, {});
    law();
    Wide sum = 0;
    for (std::size_t i = 0; i < terms_.size(); ++i)
      sum += y[place(terms_[i].row)] * (terms_[i].value - before[i].value) * x[place(terms_[i].column)];
    return sum;
  }

  bool is_reference(int node) const {
    for (int reference : network_.floating_reference)
      if (reference == node) return true;
    return false;
  }

  void add_node(int row, int node, Wide factor) {
    if (node != 0) add(row, node - 1, factor);
  }
  void add_across(int row, const graph::Element& element, int port, Wide factor) {
    add_node(row, element.node[2 * port], factor);
    add_node(row, element.node[2 * port + 1], -factor);
  }

  /// Kirchhoff's current law; in a floating section one node's law follows from the others', and its potential is set instead.
  void laws_of_nodes() {
    const auto leave = [&](int node, int column, Real sign) {
      if (node != 0 && !is_reference(node)) add(node - 1, column, sign);
    };
    for (std::size_t e = 0; e < network_.elements.size(); ++e)
      for (int port = 0; port < network_.elements[e].ports(); ++port) {
        leave(network_.elements[e].node[2 * port], places_.port(e, port), Real(1));
        leave(network_.elements[e].node[2 * port + 1], places_.port(e, port), Real(-1));
      }
    leave(network_.source_node, source_column_, Real(-1));
    leave(network_.source_other, source_column_, Real(1));
    for (int node : network_.floating_reference) add(node - 1, node - 1, Real(1));
  }

  void laws_of_elements() {
    for (std::size_t e = 0; e < network_.elements.size(); ++e) law_of_element(static_cast<int>(e), values_[e]);
  }

  void law_of_element(int e, const ElementValue& value) {
    const graph::Element& element = network_.elements[e];
    const int row = places_.port(static_cast<std::size_t>(e), 0);
    switch (element.form) {
      case graph::Element::Form::branch: law_of_branch(row, element, value); break;
      case graph::Element::Form::line: law_of_line(row, element, value); break;
      case graph::Element::Form::ideal: law_of_ideal(row, element, value); break;
      case graph::Element::Form::matrix: law_of_matrix(row, element, value); break;
    }
  }

  void law_of_branch(int row, const graph::Element& element, const ElementValue& value) {
    const Wide n = Wide(value.n) / base_ohms, d(value.d);
    const Real scale = Real(1) / (std::abs(n) + std::abs(d));
    add_across(row, element, 0, d * scale);
    add(row, row, -n * scale);
  }

  void law_of_line(int row, const graph::Element& element, const ElementValue& value) {
    const Wide z0 = Wide(value.impedance) / base_ohms, e = std::exp(-Wide(value.gamma_l));
    const Real scale = Real(1) / (Real(1) + std::abs(z0));
    for (int end = 0; end < 2; ++end) {
      add_across(row + end, element, end, scale);
      add(row + end, row + end, -z0 * scale);
      add_across(row + end, element, 1 - end, -e * scale);
      add(row + end, row + 1 - end, -e * z0 * scale);
    }
  }

  void law_of_ideal(int row, const graph::Element& element, const ElementValue& value) {
    const Real ratio = value.ratio, scale = Real(1) / (Real(1) + std::abs(ratio));
    add_across(row, element, 1, scale);
    add_across(row, element, 0, -ratio * scale);
    add(row + 1, row, scale);
    add(row + 1, row + 1, ratio * scale);
  }

  void law_of_matrix(int row, const graph::Element& element, const ElementValue& value) {
    for (int i = 0; i < 2; ++i) {
      Real largest = 0;
      for (int k = 0; k < 2; ++k)
        largest = std::max({largest, std::abs(Wide(value.a[2 * i + k])), std::abs(Wide(value.b[2 * i + k])) / base_ohms});
      for (int k = 0; k < 2; ++k) {
        add_across(row + i, element, k, Wide(value.a[2 * i + k]) / largest);
        add(row + i, row + k, Wide(value.b[2 * i + k]) / (largest * base_ohms));
      }
    }
  }

  /// V + Zs I = E.
  void law_of_source(Complex source_ohms) {
    add_node(source_column_, network_.source_node, Real(1));
    add_node(source_column_, network_.source_other, Real(-1));
    add(source_column_, source_column_, Wide(source_ohms) / base_ohms);
  }

  StateFlows unpack(const Vector& x) const {
    FieldVector fields;
    for (const Wide& value : x) fields.emplace_back(static_cast<double>(value.real()), static_cast<double>(value.imag()));
    return flows_of(network_, places_, values_, fields);
  }

  const graph::Network& network_;
  const std::vector<ElementValue>& values_;
  Places places_;
  int source_column_, size_;
  std::vector<Term<Real>> terms_;
  std::unique_ptr<Factors<Real>> factors_;
};

}  // namespace wattfall::solve
