#include "powers.hpp"

#include <algorithm>
#include <cmath>

#include "ledger/book.hpp"
#include "ledger/swr.hpp"

namespace wattfall::walk {
namespace {

using graph::Element;

/// V = k n, I = k d: Re(V conj I).
double power_into(const OnePort& port, Complex k) { return std::norm(k) * (port.n * std::conj(port.d)).real(); }

/// What goes in and does not come out. Ideal turns and lines without loss have none, which rounding would not say; a two-port may give power where it was
/// measured so.
double lost_through(const Element& element, const solve::ElementValue& value, double in, double out) {
  const bool lossless = element.form == Element::Form::ideal || (element.form == Element::Form::line && value.gamma_l.real() == 0.0 && value.impedance.imag() == 0.0);
  if (lossless) return 0.0;
  const double lost = in - out;
  const bool rounding = std::abs(lost) <= 1e-13 * std::abs(in);
  return lost < 0.0 && (element.form == Element::Form::line || rounding) ? 0.0 : lost;
}

}  // namespace

Powers share_powers(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Reduction& reduction,
                    double frequency_hz, std::span<const double> knobs) {
  Powers powers;
  powers.element_w.assign(network.elements.size(), 0.0);
  const design::Source& source = design.source;
  const Complex source_ohm = source.impedance_ohm.at(frequency_hz, knobs);
  const Complex reference = source.reference_at(frequency_hz, knobs);
  const OnePort& whole = reduction.branches[reduction.spine].port;
  const double swr = ledger::swr_of(std::abs((whole.n - std::conj(reference) * whole.d) / (whole.n + reference * whole.d)));
  powers.available_w = source.available_w.real_at(frequency_hz, knobs) * ledger::power_left(source, swr);

  // E = V + Zs I, and |E|^2 = 4 Re(Zs) times the power available.
  std::vector<Complex> k(reduction.branches.size());
  k[reduction.spine] = std::sqrt(4.0 * source_ohm.real() * powers.available_w) / (whole.n + source_ohm * whole.d);
  powers.accepted_w = power_into(whole, k[reduction.spine]);

  // What a branch is made of stands before it.
  for (int b = reduction.spine; b >= 0; --b) {
    const Branch& branch = reduction.branches[b];
    if (branch.first >= 0) k[branch.first] = k[b] * branch.first_share;
    if (branch.second >= 0) k[branch.second] = k[b] * branch.second_share;
    if (branch.element < 0 || branch.kind == Branch::Kind::end) continue;
    double& watts = powers.element_w[branch.element];
    if (branch.kind == Branch::Kind::leaf) watts = std::norm(k[b]) * branch.loss;
    else watts = lost_through(network.elements[branch.element], values[branch.element], power_into(branch.port, k[b]),
                              power_into(reduction.branches[branch.first].port, k[branch.first]));
  }
  return powers;
}

}  // namespace wattfall::walk
