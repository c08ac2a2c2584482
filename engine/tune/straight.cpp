#include "straight.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "solve/element_values.hpp"
#include "varies.hpp"

namespace wattfall::tune {
namespace {

/// How well a knob's admittance must follow the fraction: far below any margin, far above rounding.
constexpr double fit_error = 1e-7;

}  // namespace

bool Straight::make(std::string& why_not) {
  if (!find_ports(why_not)) return false;
  for (std::size_t p = 0; p < problem_.design.parts.size(); ++p) {
    if (!design::is_load(problem_.design.parts[p])) continue;
    loads_.push_back(design::PartId{static_cast<int>(p)});
    watched_.push_back(problem_.network.elements_of(loads_.back()).front());
  }
  collapsed_.emplace(problem_.design, problem_.network, hertz_, problem_.others, active_, watched_);
  why_not = "the rest of the network could not be reduced to the knobs' places";
  if (!collapsed_->sound()) return false;
  ports_ = collapsed_->ports();
  volts_.resize(1 + watched_.size());
  for (std::size_t c = 0; c < corners(); ++c) fill_corner(c);
  return true;
}

Straight::Corners Straight::back(Complex reference_ohm) const {
  Corners wave{};
  for (std::size_t c = 0; c < corners(); ++c)
    wave[c] = volts_[0][c] - std::conj(reference_ohm) * (ports_.source_volts * d_[c] - volts_[0][c]) / collapsed_->source_ohms();
  return wave;
}

Straight::Corners Straight::out(Complex reference_ohm) const {
  Corners wave{};
  for (std::size_t c = 0; c < corners(); ++c) wave[c] = volts_[0][c] + reference_ohm * (ports_.source_volts * d_[c] - volts_[0][c]) / collapsed_->source_ohms();
  return wave;
}

bool Straight::find_ports(std::string& why_not) {
  const auto& knobs = problem_.statement.knobs;
  why_not = fmt::format("a proof takes {} knobs at the most", most_knobs);
  if (knobs.size() > most_knobs || knobs.empty()) return false;
  for (design::KnobId knob : knobs) {
    const std::string& name = problem_.design.knobs[knob.index].name;
    why_not = fmt::format("a proof takes knobs without steps, and {} has some", name);
    if (!problem_.design.knobs[knob.index].choices.empty()) return false;
    why_not = fmt::format("a proof takes knobs that turn one coil, capacitor or resistor each, and {} turns something else", name);
    if (!moves_one_branch(knob)) return false;
    const auto fraction = fit(active_.size() - 1, knob);
    why_not = fmt::format("the values of {} follow no law that a proof could take", name);
    if (!fraction) return false;
    fractions_.push_back(*fraction);
  }
  return true;
}

bool Straight::moves_one_branch(design::KnobId knob) {
  const design::Source& source = problem_.design.source;
  if (source.available_w.depends_on(knob) || source.impedance_ohm.depends_on(knob)) return false;
  for (const design::Coupling& coupling : problem_.design.couplings)
    if (coupling.factor.depends_on(knob)) return false;
  std::size_t moved = 0;
  for (std::size_t p = 0; p < problem_.design.parts.size(); ++p) {
    if (!varies_with(problem_.design.parts[p], knob)) continue;
    const auto elements = problem_.network.elements_of(design::PartId{static_cast<int>(p)});
    if (++moved > 1 || elements.size() != 1 || design::is_load(problem_.design.parts[p])) return false;
    if (problem_.network.elements[elements.front()].form != graph::Element::Form::branch) return false;
    if (std::count(active_.begin(), active_.end(), elements.front()) > 0) return false;
    active_.push_back(elements.front());
  }
  return moved == 1;
}

Straight::Complex Straight::admittance(std::size_t port, design::KnobId id, double t) const {
  std::vector<double> setting = problem_.others;
  const design::Knob& knob = problem_.design.knobs[id.index];
  setting[id.index] = knob.lower + t * (knob.upper - knob.lower);
  const solve::ElementValue value = solve::element_value(problem_.design, problem_.network.elements[active_[port]], hertz_, setting);
  return value.d / value.n;
}

/// The fraction through three places; tried at four more.
std::optional<Straight::Fraction> Straight::fit(std::size_t port, design::KnobId knob) const {
  const Complex y0 = admittance(port, knob, 0.0), y1 = admittance(port, knob, 1.0), middle = admittance(port, knob, 0.5);
  const Complex weight = (middle - y0) / (y1 - middle);
  if (!std::isfinite(std::abs(y0)) || !std::isfinite(std::abs(y1)) || !std::isfinite(std::abs(weight))) return std::nullopt;
  const Fraction fraction{y0, y1 * weight, 1.0, weight};
  for (double t : {0.11, 0.31, 0.77, 0.93}) {
    const Complex y = admittance(port, knob, t);
    if (!(std::abs(fraction.at(t) - y) <= fit_error * std::abs(y))) return std::nullopt;
  }
  return fraction;
}

Straight::Complex Straight::determinant(const Matrix& a) const {
  if (active_.size() == 1) return a[0];
  if (active_.size() == 2) return a[0] * a[4] - a[1] * a[3];
  return a[0] * (a[4] * a[8] - a[5] * a[7]) - a[1] * (a[3] * a[8] - a[5] * a[6]) + a[2] * (a[3] * a[7] - a[4] * a[6]);
}

/// At a corner: D, and D times the volts of the source (0) or of a watched branch (1 ...). With V' the port volts over their knob's denominator d and m =
/// numerator less reference times d, (d V')_q + sum_r z_qr m_r V'_r = v_q; so the matrix, its columns straight in one knob each, has D as determinant.
void Straight::fill_corner(std::size_t c) {
  const std::size_t n = active_.size();
  Matrix a{};
  std::array<Complex, most_knobs> m{};
  for (std::size_t r = 0; r < n; ++r) {
    const bool upper = (c >> r & 1) != 0;
    const Complex den = upper ? fractions_[r].d1 : fractions_[r].d0;
    m[r] = (upper ? fractions_[r].n1 : fractions_[r].n0) - ports_.reference * den;
    for (std::size_t q = 0; q < n; ++q) a[most_knobs * q + r] = ports_.z[q * n + r] * m[r] + (q == r ? den : 0.0);
  }
  d_[c] = determinant(a);
  for (std::size_t w = 0; w < volts_.size(); ++w) {
    Complex sum = ports_.u[w * (n + 1)] * d_[c];
    for (std::size_t q = 0; q < n; ++q) {
      Matrix replaced = a;
      for (std::size_t row = 0; row < n; ++row) replaced[most_knobs * row + q] = ports_.v[row];
      sum -= ports_.u[w * (n + 1) + 1 + q] * m[q] * determinant(replaced);
    }
    volts_[w][c] = sum;
  }
}

}  // namespace wattfall::tune
