#include "kernel.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::solve {
namespace {

using plan::Plan;

/// coth and csch of gamma l = a + j b over the common denominator sinh^2 a + sin^2 b: exact zeros stay exact for a lossless line.
bool line_admittances(const ElementValue& value, std::array<Complex, 4>& y) {
  const double a = value.gamma_l.real(), b = value.gamma_l.imag();
  const double sinh_a = std::sinh(std::min(a, 300.0)), cosh_a = std::cosh(std::min(a, 300.0));
  const double sin_b = std::sin(b), cos_b = std::cos(b);
  const double denominator = sinh_a * sinh_a + sin_b * sin_b;
  if (denominator < pivot_floor * pivot_floor) return false;
  const Complex y0 = 1.0 / value.impedance;
  y[0] = y[3] = y0 * Complex{sinh_a * cosh_a / denominator, -sin_b * cos_b / denominator};
  y[1] = y[2] = -y0 * Complex{sinh_a * cos_b / denominator, -cosh_a * sin_b / denominator};
  return true;
}

bool matrix_admittances(const ElementValue& value, std::array<Complex, 4>& y) {
  const auto& a = value.a;
  const auto& b = value.b;
  const Complex determinant = b[0] * b[3] - b[1] * b[2];
  const double size = std::norm(b[0]) + std::norm(b[1]) + std::norm(b[2]) + std::norm(b[3]);
  if (std::abs(determinant) < pivot_floor * size) return false;
  y[0] = -(b[3] * a[0] - b[1] * a[2]) / determinant;
  y[1] = -(b[3] * a[1] - b[1] * a[3]) / determinant;
  y[2] = -(b[0] * a[2] - b[2] * a[0]) / determinant;
  y[3] = -(b[0] * a[3] - b[2] * a[1]) / determinant;
  return true;
}

}  // namespace

bool port_admittances(const graph::Element& element, const ElementValue& value, std::array<Complex, 4>& y, Guard& why) {
  switch (element.form) {
    case graph::Element::Form::branch:
      why = Guard::shorted;
      // Below a microohm (against 50 ohm) nothing is left of the other admittances at its nodes.
      if (std::norm(value.n) < 1e-12 * std::norm(value.d)) return false;
      y[0] = value.d / value.n;
      return true;
    case graph::Element::Form::line: why = Guard::line; return line_admittances(value, y);
    case graph::Element::Form::matrix: why = Guard::two_port; return matrix_admittances(value, y);
    case graph::Element::Form::ideal: break;
  }
  return true;
}

Kernel::Kernel(const graph::Network& network, const Plan& plan)
    : network_(network),
      plan_(plan),
      entries_(plan.entry_slots),
      factors_(plan.factor_slots),
      inverses_(plan.unknowns),
      solution_(plan.unknowns),
      row_largest_(plan.unknowns) {}

void Kernel::clear() {
  std::fill(entries_.begin(), entries_.end(), LaneVector{});
  guards_.fill(Guard::none);
}

void Kernel::stamp(std::size_t index, const ElementValue& value, std::size_t lane, const std::vector<double>& weights) {
  const graph::Element& element = network_.elements[index];
  const Plan::Stamp& stamp = plan_.stamps[index];
  constexpr double sign[4] = {1.0, -1.0, 1.0, -1.0};
  if (element.form == graph::Element::Form::ideal) {
    // V2 - ratio V1 = 0, and the same coefficients in the nodes' laws.
    for (int s = 0; s < stamp.terminals; ++s)
      for (int half = 0; half < 2; ++half)
        if (stamp.border[2 * s + half] != Plan::no_slot)
          entries_[stamp.border[2 * s + half]].add(lane, sign[s] * (s < 2 ? -value.ratio : 1.0) * weights[element.node[s]]);
    return;
  }
  std::array<Complex, 4> y{};
  Guard why = Guard::none;
  if (!port_admittances(element, value, y, why)) return flag(lane, why);
  for (int s = 0; s < stamp.terminals; ++s)
    for (int t = 0; t < stamp.terminals; ++t)
      if (stamp.slot[4 * s + t] != Plan::no_slot)
        entries_[stamp.slot[4 * s + t]].add(
            lane, sign[s] * sign[t] * weights[element.node[s]] * weights[element.node[t]] * y[2 * (s / 2) + t / 2]);
}

void Kernel::stamp_source(Complex siemens, std::size_t lane, const std::vector<double>& weights) {
  const int node[2] = {network_.source_node, network_.source_other};
  for (int s = 0; s < 2; ++s)
    for (int t = 0; t < 2; ++t)
      if (plan_.source_slot[2 * s + t] != Plan::no_slot)
        entries_[plan_.source_slot[2 * s + t]].add(lane, (s == t ? 1.0 : -1.0) * weights[node[s]] * weights[node[t]] * siemens);
}

void Kernel::stamp_ties() {
  // Any admittance will do: no current can flow through it. That of 50 ohm keeps the pivots of a size.
  for (std::uint32_t slot : plan_.tie_slots)
    for (std::size_t lane = 0; lane < lanes; ++lane) entries_[slot].add(lane, 0.02);
}

void Kernel::invert(const plan::Operation& operation) {
  const LaneVector& pivot = entries_[operation.left];
  LaneVector& inverse = inverses_[operation.target];
  for (std::size_t lane = 0; lane < lanes; ++lane) {
    const double size = pivot.re[lane] * pivot.re[lane] + pivot.im[lane] * pivot.im[lane];
    inverse.re[lane] = pivot.re[lane] / size;
    inverse.im[lane] = -pivot.im[lane] / size;
    if (!(size >= pivot_floor * pivot_floor * row_largest_[operation.target][lane])) flag(lane, Guard::pivot);
  }
}

void Kernel::eliminate() {
  for (std::size_t k = 0; k < plan_.unknowns; ++k) {
    auto& largest = row_largest_[k];
    const auto widen = [&largest](const LaneVector& entry) {
      for (std::size_t lane = 0; lane < lanes; ++lane)
        largest[lane] = std::max(largest[lane], entry.re[lane] * entry.re[lane] + entry.im[lane] * entry.im[lane]);
    };
    largest.fill(0.0);
    widen(entries_[plan_.diagonal[k]]);
    for (std::uint32_t slot : plan_.row_slots[k]) widen(entries_[slot]);
  }
  for (const plan::Operation& operation : plan_.operations) {
    if (operation.code == plan::Operation::Code::invert) {
      invert(operation);
      continue;
    }
    const bool scale = operation.code == plan::Operation::Code::scale;
    const LaneVector& a = scale ? entries_[operation.left] : factors_[operation.left];
    const LaneVector& b = scale ? inverses_[operation.right] : entries_[operation.right];
    LaneVector& c = scale ? factors_[operation.target] : entries_[operation.target];
    if (scale) {
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        c.re[lane] = a.re[lane] * b.re[lane] - a.im[lane] * b.im[lane];
        c.im[lane] = a.re[lane] * b.im[lane] + a.im[lane] * b.re[lane];
      }
    } else {
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        c.re[lane] -= a.re[lane] * b.re[lane] - a.im[lane] * b.im[lane];
        c.im[lane] -= a.re[lane] * b.im[lane] + a.im[lane] * b.re[lane];
      }
    }
  }
}

void Kernel::substitute(int node, int other, const std::array<Complex, lanes>& amps,
                        const std::vector<std::array<double, lanes>>& weights) {
  std::fill(solution_.begin(), solution_.end(), LaneVector{});
  for (const auto& [at, sign] : {std::pair{node, 1.0}, std::pair{other, -1.0}}) {
    const int unknown = plan_.bindings[at].unknown;
    if (unknown < 0) continue;
    for (std::size_t lane = 0; lane < lanes; ++lane) solution_[unknown].add(lane, sign * weights[at][lane] * amps[lane]);
  }
  const auto subtract = [](LaneVector& c, const LaneVector& a, const LaneVector& b) {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      c.re[lane] -= a.re[lane] * b.re[lane] - a.im[lane] * b.im[lane];
      c.im[lane] -= a.re[lane] * b.im[lane] + a.im[lane] * b.re[lane];
    }
  };
  for (const plan::Substitution& step : plan_.substitutions)
    for (const auto& entry : step.entries) subtract(solution_[entry.unknown], factors_[entry.lower], solution_[step.row]);
  for (std::size_t i = plan_.substitutions.size(); i-- > 0;) {
    const plan::Substitution& step = plan_.substitutions[i];
    LaneVector& x = solution_[step.row];
    const LaneVector& inverse = inverses_[step.row];
    for (std::size_t lane = 0; lane < lanes; ++lane) x.set(lane, x.get(lane) * inverse.get(lane));
    for (const auto& entry : step.entries) subtract(x, factors_[entry.upper], solution_[entry.unknown]);
  }
}

}  // namespace wattfall::solve
