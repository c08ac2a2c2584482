#include "proof.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <optional>

#include "ledger/book.hpp"
#include "ledger/swr.hpp"
#include "solve/collapse.hpp"
#include "solve/element_values.hpp"
#include "solve/solve.hpp"
#include "varies.hpp"

namespace wattfall::tune {
namespace {

using Complex = std::complex<double>;
using design::FigureKind;

constexpr std::size_t most_knobs = 3, most_corners = 8;
constexpr std::size_t most_cells = 100'000;

/// How well a knob's admittance must follow the fraction: far below the margin, far above rounding.
constexpr double fit_error = 1e-7;

/// (n0 (1 - t) + n1 t)/(d0 (1 - t) + d1 t), t the share of the knob's range.
struct Fraction {
  Complex n0, n1, d0, d1;
  Complex at(double t) const { return (n0 * (1.0 - t) + n1 * t) / (d0 * (1.0 - t) + d1 * t); }
};

/// Corner values of a function that is straight in each knob: corner c has knob k at its upper end where bit k is set.
using Corners = std::array<Complex, most_corners>;

/// What is to be proved nowhere negative: the sum of weight |function|^2.
struct Term {
  Corners function{};
  double weight = 0.0;
};

/// A polynomial of second degree in each knob by its Bernstein coefficients over a box; the first knob's index runs fastest. It is nowhere below the
/// least of them.
using Polynomial = std::array<double, 27>;

class Prover {
 public:
  Prover(const Problem& problem, const Found& found) : problem_(problem), found_(found) {}

  Proof run() {
    Proof proof;
    const std::optional<double> reached = reach();
    if (problem_.frequencies_hz.size() != 1 || !reached) return proof;
    // Nothing gets more than the source has to give.
    if (*reached >= (1.0 - proof_margin) * foldback_factor(false)) return {.holds = true};
    if (!find_ports()) return proof;
    const auto asked = terms(*reached + proof_margin);
    if (!asked.empty()) proof.holds = nowhere_negative(asked, proof.cells);
    return proof;
  }

 private:
  double hertz() const { return problem_.frequencies_hz.front(); }

  bool find_ports() {
    const auto& knobs = problem_.statement.knobs;
    if (knobs.size() > most_knobs || knobs.empty()) return false;
    const design::Source& source = problem_.design.source;
    for (design::KnobId knob : knobs) {
      if (!problem_.design.knobs[knob.index].choices.empty()) return false;
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
      if (moved != 1) return false;
      const auto fraction = fit(active_.size() - 1, knob);
      if (!fraction) return false;
      fractions_.push_back(*fraction);
    }
    return true;
  }

  Complex admittance(std::size_t port, design::KnobId id, double t) const {
    std::vector<double> setting = problem_.others;
    const design::Knob& knob = problem_.design.knobs[id.index];
    setting[id.index] = knob.lower + t * (knob.upper - knob.lower);
    const solve::ElementValue value = solve::element_value(problem_.design, problem_.network.elements[active_[port]], hertz(), setting);
    return value.d / value.n;
  }

  /// The fraction through three places; tried at four more.
  std::optional<Fraction> fit(std::size_t port, design::KnobId knob) const {
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

  /// n x n, n up to 3, row-major with stride 3.
  using Matrix = std::array<Complex, most_knobs * most_knobs>;
  Complex determinant(const Matrix& a) const {
    if (active_.size() == 1) return a[0];
    if (active_.size() == 2) return a[0] * a[4] - a[1] * a[3];
    return a[0] * (a[4] * a[8] - a[5] * a[7]) - a[1] * (a[3] * a[8] - a[5] * a[6]) + a[2] * (a[3] * a[7] - a[4] * a[6]);
  }

  /// At a corner: D, and D times the volts of the source (0) or of a watched branch (1 ...). With V' the port volts over their knob's denominator d and m =
  /// numerator less reference times d, (d V')_q + sum_r z_qr m_r V'_r = v_q; so the matrix, its columns straight in one knob each, has D as determinant.
  void corner(const solve::CollapsedPorts& ports, std::size_t c, std::vector<Corners>& volts, Corners& d) const {
    const std::size_t n = active_.size();
    Matrix a{};
    std::array<Complex, most_knobs> m{};
    for (std::size_t r = 0; r < n; ++r) {
      const bool upper = (c >> r & 1) != 0;
      const Complex den = upper ? fractions_[r].d1 : fractions_[r].d0;
      m[r] = (upper ? fractions_[r].n1 : fractions_[r].n0) - ports.reference * den;
      for (std::size_t q = 0; q < n; ++q) a[most_knobs * q + r] = ports.z[q * n + r] * m[r] + (q == r ? den : 0.0);
    }
    d[c] = determinant(a);
    for (std::size_t w = 0; w < volts.size(); ++w) {
      Complex sum = ports.u[w * (n + 1)] * d[c];
      for (std::size_t q = 0; q < n; ++q) {
        Matrix replaced = a;
        for (std::size_t row = 0; row < n; ++row) replaced[most_knobs * row + q] = ports.v[row];
        sum -= ports.u[w * (n + 1) + 1 + q] * m[q] * determinant(replaced);
      }
      volts[w][c] = sum;
    }
  }

  /// limit |D|^2 less what the loads get of the available power, times |D|^2. Empty where the goal is another.
  std::vector<Term> terms(double limit) {
    std::vector<int> watched;
    std::vector<design::PartId> loads;
    for (std::size_t p = 0; p < problem_.design.parts.size(); ++p)
      if (design::is_load(problem_.design.parts[p])) {
        loads.push_back(design::PartId{static_cast<int>(p)});
        watched.push_back(problem_.network.elements_of(loads.back()).front());
      }
    const solve::Collapsed collapsed(problem_.design, problem_.network, hertz(), problem_.others, active_, watched);
    if (!collapsed.sound()) return {};
    const solve::CollapsedPorts ports = collapsed.ports();
    std::vector<Corners> volts(1 + watched.size());
    Corners d{};
    for (std::size_t c = 0; c < corners(); ++c) corner(ports, c, volts, d);
    const design::Figure& goal = problem_.statement.goal;
    switch (goal.kind) {
      case FigureKind::swr_at:
      case FigureKind::return_loss_at: return match_terms(collapsed, ports, volts[0], d, limit);
      case FigureKind::power_into:
      case FigureKind::radiated_from:
      case FigureKind::efficiency:
      case FigureKind::total_loss: break;
      default: return {};
    }
    if (goal.box) return {};
    const std::vector<double> shares = radiated_shares(loads);
    if (shares.empty()) return {};
    const bool all = goal.kind == FigureKind::efficiency || goal.kind == FigureKind::total_loss;
    std::vector<Term> result{{d, limit}};
    for (std::size_t w = 0; w < loads.size(); ++w) {
      if (!all && !(loads[w] == goal.part)) continue;
      const double share = goal.kind == FigureKind::power_into ? 1.0 : shares[w];
      result.push_back({volts[1 + w], -foldback_factor(all) * share * ports.watched_siemens[w] / collapsed.available_w()});
    }
    return result;
  }

  /// The wave that comes back less (1 - limit) of the one that goes out.
  std::vector<Term> match_terms(const solve::Collapsed& collapsed, const solve::CollapsedPorts& ports, const Corners& volts, const Corners& d,
                                double limit) const {
    const design::Figure& goal = problem_.statement.goal;
    const design::Source& source = problem_.design.source;
    std::size_t parts = 0;
    for (const design::Part& part : problem_.design.parts)
      parts += std::count(part.terminals.begin(), part.terminals.end(), source.node) > 0;
    if (goal.look.node != source.node || (goal.look.into && parts != 1)) return {};
    const design::Value* asked = goal.reference ? &*goal.reference : source.reference_ohm ? &*source.reference_ohm : nullptr;
    const Complex ohms = collapsed.source_ohms();
    const Complex reference = asked != nullptr ? asked->at(hertz(), problem_.others) : Complex(ohms.real());
    Term back{{}, 1.0}, out{{}, limit - 1.0};
    for (std::size_t c = 0; c < corners(); ++c) {
      const Complex amps = (ports.source_volts * d[c] - volts[c]) / ohms;
      back.function[c] = volts[c] - std::conj(reference) * amps;
      out.function[c] = volts[c] + reference * amps;
    }
    return {back, out};
  }

  std::vector<double> radiated_shares(const std::vector<design::PartId>& loads) const {
    solve::States states;
    states.knob_count = problem_.others.size();
    states.add(hertz(), knobs_found());
    const ledger::Ledger books =
        ledger::book(problem_.design, problem_.network, solve::solve(problem_.design, problem_.network, problem_.plan, states), {});
    std::vector<double> shares;
    for (design::PartId load : loads)
      for (const ledger::LoadBook& book : books.loads)
        if (book.part == load) shares.push_back(book.absorbed_w[0] > 0.0 ? book.radiated_w[0] / book.absorbed_w[0] : 1.0);
    return shares.size() == loads.size() ? shares : std::vector<double>{};
  }

  /// A rig that folds back gives at most its table's largest share; ratios of powers do not feel it.
  double foldback_factor(bool ratio) const {
    double most = 1.0;
    const auto& table = problem_.design.source.foldback;
    if (ratio || table.empty()) return most;
    most = 0.0;
    for (const auto& [swr, share] : table) most = std::max(most, share);
    return most;
  }

  std::vector<double> knobs_found() const {
    std::vector<double> knobs = problem_.others;
    for (std::size_t k = 0; k < found_.setting.size(); ++k) knobs[problem_.statement.knobs[k].index] = found_.setting[k];
    return knobs;
  }

  /// What the setting found reaches, as a share of the available power.
  std::optional<double> reach() const {
    const double available = problem_.design.source.available_w.real_at(hertz(), problem_.others);
    const bool most = problem_.statement.most;
    switch (problem_.statement.goal.kind) {
      case FigureKind::power_into:
      case FigureKind::radiated_from: return most ? std::optional(found_.goal / available) : std::nullopt;
      case FigureKind::efficiency: return most ? std::optional(found_.goal) : std::nullopt;
      case FigureKind::total_loss: return most ? std::nullopt : std::optional(std::pow(10.0, -0.1 * found_.goal));
      case FigureKind::swr_at: {
        const double reflection = std::isnan(found_.goal) ? 1.0 : (found_.goal - 1.0) / (found_.goal + 1.0);
        return most ? std::nullopt : std::optional(1.0 - reflection * reflection);
      }
      // No reflection at all has no return loss.
      case FigureKind::return_loss_at: return most ? std::optional(std::isnan(found_.goal) ? 1.0 : 1.0 - std::pow(10.0, -0.1 * found_.goal)) : std::nullopt;
      default: return std::nullopt;
    }
  }

  std::size_t corners() const { return std::size_t{1} << active_.size(); }

  std::size_t coefficients() const { return active_.size() == 1 ? 3 : active_.size() == 2 ? 9 : 27; }

  /// |f|^2 of an f straight in each knob: index 0, 1, 2 of a knob counts how many of the two factors stand at its upper end.
  void add(const Term& term, Polynomial& sum) const {
    for (std::size_t a = 0; a < corners(); ++a)
      for (std::size_t b = 0; b < corners(); ++b) {
        std::size_t index = 0, stride = 1;
        double share = 1.0;
        for (std::size_t k = 0; k < active_.size(); ++k, stride *= 3) {
          const std::size_t upper = (a >> k & 1) + (b >> k & 1);
          index += stride * upper;
          if (upper == 1) share *= 0.5;
        }
        sum[index] += share * term.weight * (term.function[a] * std::conj(term.function[b])).real();
      }
  }

  /// Both halves of a box (de Casteljau's rule).
  void halve(const Polynomial& whole, std::size_t knob, Polynomial& low, Polynomial& high) const {
    const std::size_t stride = knob == 0 ? 1 : knob == 1 ? 3 : 9;
    for (std::size_t i = 0; i < coefficients(); ++i) {
      if (i / stride % 3 != 0) continue;
      const double c0 = whole[i], c1 = whole[i + stride], c2 = whole[i + 2 * stride], middle = 0.25 * (c0 + 2.0 * c1 + c2);
      low[i] = c0;
      low[i + stride] = 0.5 * (c0 + c1);
      low[i + 2 * stride] = high[i] = middle;
      high[i + stride] = 0.5 * (c1 + c2);
      high[i + 2 * stride] = c2;
    }
  }

  /// The knob along which the coefficients change most.
  std::size_t steepest(const Polynomial& polynomial) const {
    std::size_t knob = 0, stride = 1;
    double most = -1.0;
    for (std::size_t k = 0; k < active_.size(); ++k, stride *= 3)
      for (std::size_t i = 0; i < coefficients(); ++i)
        if (i / stride % 3 != 2 && std::abs(polynomial[i + stride] - polynomial[i]) > most) {
          most = std::abs(polynomial[i + stride] - polynomial[i]);
          knob = k;
        }
    return knob;
  }

  bool nowhere_negative(const std::vector<Term>& terms, std::size_t& cells) const {
    std::vector<Polynomial> open(1);
    for (const Term& term : terms) add(term, open.front());
    while (!open.empty()) {
      const Polynomial polynomial = open.back();
      open.pop_back();
      if (++cells > most_cells) return false;
      const auto least = [&] { return *std::min_element(polynomial.begin(), polynomial.begin() + std::ptrdiff_t(coefficients())); };
      if (least() >= 0.0) continue;
      Polynomial low, high;
      halve(polynomial, steepest(polynomial), low, high);
      open.push_back(low);
      open.push_back(high);
    }
    return true;
  }

  const Problem& problem_;
  const Found& found_;
  std::vector<int> active_;
  std::vector<Fraction> fractions_;
};

}  // namespace

Proof prove_best(const Problem& problem, const Found& found) { return Prover(problem, found).run(); }

}  // namespace wattfall::tune
