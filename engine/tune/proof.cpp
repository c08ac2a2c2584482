#include "proof.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <limits>
#include <optional>
#include <utility>

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
constexpr std::size_t most_cells = 100'000, most_frequencies = 7;

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

/// The design's knobs, the statement's at this setting.
std::vector<double> knobs_with(const Problem& problem, const std::vector<double>& setting) {
  std::vector<double> knobs = problem.others;
  for (std::size_t k = 0; k < setting.size(); ++k) knobs[problem.statement.knobs[k].index] = setting[k];
  return knobs;
}

/// What the figures come to at one frequency, over the knobs' ranges.
class Bounds {
 public:
  Bounds(const Problem& problem, const Found& found, double hertz) : problem_(problem), found_(found), hertz_(hertz) {}

  /// Reduces the network to the knobs' ports; where that cannot be, says why.
  bool make(std::string& why_not) {
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

  /// Nowhere negative in a box: there the figure is no better than this share (see `share_of`). None where the figure has no such form.
  std::optional<Polynomial> no_better(const design::Figure& figure, double share) const {
    const std::vector<Term> asked = terms(figure, share);
    if (asked.empty()) return std::nullopt;
    Polynomial sum{};
    for (const Term& term : asked) add(term, sum);
    return sum;
  }

  /// A figure's value as a share of the available power; of a match, the share that does not come back. None for other figures.
  std::optional<double> share_of(const design::Figure& figure, double value) const {
    switch (figure.kind) {
      case FigureKind::power_into:
      case FigureKind::radiated_from: return value / problem_.design.source.available_w.real_at(hertz_, problem_.others);
      case FigureKind::efficiency: return value;
      case FigureKind::total_loss: return std::pow(10.0, -0.1 * value);
      case FigureKind::swr_at: {
        const double reflection = std::isnan(value) ? 1.0 : (value - 1.0) / (value + 1.0);
        return 1.0 - reflection * reflection;
      }
      // No reflection at all has no return loss.
      case FigureKind::return_loss_at: return std::isnan(value) ? 1.0 : 1.0 - std::pow(10.0, -0.1 * value);
      default: return std::nullopt;
    }
  }

  /// A rig that folds back gives at most its table's largest share; ratios of powers do not feel it.
  double most_share(const design::Figure& figure) const {
    const bool watts = figure.kind == FigureKind::power_into || figure.kind == FigureKind::radiated_from;
    const auto& table = problem_.design.source.foldback;
    if (!watts || table.empty()) return 1.0;
    double most = 0.0;
    for (const auto& [swr, share] : table) most = std::max(most, share);
    return most;
  }

 private:
  bool find_ports(std::string& why_not) {
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

  bool moves_one_branch(design::KnobId knob) {
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

  Complex admittance(std::size_t port, design::KnobId id, double t) const {
    std::vector<double> setting = problem_.others;
    const design::Knob& knob = problem_.design.knobs[id.index];
    setting[id.index] = knob.lower + t * (knob.upper - knob.lower);
    const solve::ElementValue value = solve::element_value(problem_.design, problem_.network.elements[active_[port]], hertz_, setting);
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
  void fill_corner(std::size_t c) {
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

  /// limit |D|^2 less what the loads get of the available power, times |D|^2. Empty where the figure is another.
  std::vector<Term> terms(const design::Figure& figure, double limit) const {
    switch (figure.kind) {
      case FigureKind::swr_at:
      case FigureKind::return_loss_at: return match_terms(figure, limit);
      case FigureKind::power_into:
      case FigureKind::radiated_from:
      case FigureKind::efficiency:
      case FigureKind::total_loss: break;
      default: return {};
    }
    if (figure.box) return {};
    const std::vector<double> shares = radiated_shares();
    if (shares.empty()) return {};
    const bool all = figure.kind == FigureKind::efficiency || figure.kind == FigureKind::total_loss;
    std::vector<Term> result{{d_, limit}};
    for (std::size_t w = 0; w < loads_.size(); ++w) {
      if (!all && !(loads_[w] == figure.part)) continue;
      const double share = figure.kind == FigureKind::power_into ? 1.0 : shares[w];
      result.push_back({volts_[1 + w], -most_share(figure) * share * ports_.watched_siemens[w] / collapsed_->available_w()});
    }
    return result;
  }

  /// The wave that comes back less (1 - limit) of the one that goes out.
  std::vector<Term> match_terms(const design::Figure& figure, double limit) const {
    const design::Source& source = problem_.design.source;
    std::size_t parts = 0;
    for (const design::Part& part : problem_.design.parts)
      parts += std::count(part.terminals.begin(), part.terminals.end(), source.node) > 0;
    if (figure.look.node != source.node || (figure.look.into && parts != 1)) return {};
    const design::Value* asked = figure.reference ? &*figure.reference : source.reference_ohm ? &*source.reference_ohm : nullptr;
    const Complex ohms = collapsed_->source_ohms();
    const Complex reference = asked != nullptr ? asked->at(hertz_, problem_.others) : Complex(ohms.real());
    Term back{{}, 1.0}, out{{}, limit - 1.0};
    for (std::size_t c = 0; c < corners(); ++c) {
      const Complex amps = (ports_.source_volts * d_[c] - volts_[0][c]) / ohms;
      back.function[c] = volts_[0][c] - std::conj(reference) * amps;
      out.function[c] = volts_[0][c] + reference * amps;
    }
    return {back, out};
  }

  std::vector<double> radiated_shares() const {
    solve::States states;
    states.knob_count = problem_.others.size();
    states.add(hertz_, knobs_with(problem_, found_.setting));
    const ledger::Ledger books =
        ledger::book(problem_.design, problem_.network, solve::solve(problem_.design, problem_.network, problem_.plan, states), {});
    std::vector<double> shares;
    for (design::PartId load : loads_)
      for (const ledger::LoadBook& book : books.loads)
        if (book.part == load) shares.push_back(book.absorbed_w[0] > 0.0 ? book.radiated_w[0] / book.absorbed_w[0] : 1.0);
    return shares.size() == loads_.size() ? shares : std::vector<double>{};
  }

  std::size_t corners() const { return std::size_t{1} << active_.size(); }

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

  const Problem& problem_;
  const Found& found_;
  double hertz_;
  std::vector<int> active_, watched_;
  std::vector<design::PartId> loads_;  ///< of watched_
  std::vector<Fraction> fractions_;
  std::optional<solve::Collapsed> collapsed_;
  solve::CollapsedPorts ports_;
  std::vector<Corners> volts_;  ///< times D: the source's, then the watched branches'
  Corners d_{};
};

/// A box of the ranges: all that may be asked of it, in its own coordinates.
using Cell = std::vector<Polynomial>;

class Prover {
 public:
  Prover(const Problem& problem, const Found& found) : problem_(problem), found_(found), knobs_(problem.statement.knobs.size()) {}

  Proof run() {
    Proof proof{.margin = proof_margin, .why_not = "no proof is known for such a goal"};
    const design::Figure& goal = problem_.statement.goal;
    if (problem_.statement.most == less_is_better(goal)) return proof;
    std::vector<Bounds> all;
    for (double hertz : telling_frequencies()) {
      all.emplace_back(problem_, found_, hertz);
      const auto share = all.back().share_of(goal, found_.goal);
      if (!share) return proof;
      // Nothing gets more than the source has to give.
      if (*share >= (1.0 - proof_margin) * all.back().most_share(goal)) return {.holds = true, .margin = proof_margin};
    }
    for (Bounds& bounds : all)
      if (!bounds.make(proof.why_not)) return proof;
    proof.why_not = "no proof is known for such a goal";
    for (double margin : {proof_margin, loose_margin}) {
      const Cell whole = asked_of(all, margin);
      if (whole.empty()) return proof;
      proof = {.margin = margin};
      if (proof.holds = decided(whole, proof.cells); proof.holds) return proof;
    }
    proof.why_not = fmt::format("{} boxes of the ranges did not decide it", most_cells);
    return proof;
  }

 private:
  static bool less_is_better(const design::Figure& figure) { return figure.kind == FigureKind::total_loss || figure.kind == FigureKind::swr_at; }

  /// All of a few; of many the ends, and those where the setting found does worst.
  std::vector<double> telling_frequencies() const {
    const std::vector<double>& all = problem_.frequencies_hz;
    if (all.size() <= most_frequencies) return all;
    const double sign = problem_.statement.most ? 1.0 : -1.0;
    std::vector<std::pair<double, double>> ranked;
    for (double hertz : all) {
      const Problem one{problem_.design, problem_.network, problem_.plan, problem_.statement, {hertz}, problem_.others, {}};
      const double figure = worst_figure(one, problem_.statement.goal, problem_.statement.most, knobs_with(problem_, found_.setting));
      ranked.push_back({std::isnan(figure) ? -std::numeric_limits<double>::infinity() : sign * figure, hertz});
    }
    std::sort(ranked.begin(), ranked.end());
    std::vector<double> chosen{all.front(), all.back()};
    for (const auto& [figure, hertz] : ranked)
      if (chosen.size() < most_frequencies && std::find(chosen.begin(), chosen.end(), hertz) == chosen.end()) chosen.push_back(hertz);
    return chosen;
  }

  /// Any one of these, nowhere negative in a box, means that nothing better by the margin is there. Empty where the goal has no such form.
  Cell asked_of(const std::vector<Bounds>& all, double margin) const {
    const design::Figure& goal = problem_.statement.goal;
    Cell asked;
    for (const Bounds& bounds : all) {
      const auto one = bounds.no_better(goal, *bounds.share_of(goal, found_.goal) + margin);
      if (!one) return {};
      asked.push_back(*one);
      for (const design::Requirement& requirement : problem_.statement.keeping) {
        const auto share = bounds.share_of(requirement.figure, requirement.value);
        if (!share || requirement.over_hz || requirement.below != less_is_better(requirement.figure)) continue;
        // A hair below what is asked: settings that just keep it stay in.
        if (const auto missed = bounds.no_better(requirement.figure, *share * (1.0 - 1e-9))) asked.push_back(*missed);
      }
    }
    return asked;
  }

  std::size_t coefficients() const { return knobs_ == 1 ? 3 : knobs_ == 2 ? 9 : 27; }

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
    for (std::size_t k = 0; k < knobs_; ++k, stride *= 3)
      for (std::size_t i = 0; i < coefficients(); ++i)
        if (i / stride % 3 != 2 && std::abs(polynomial[i + stride] - polynomial[i]) > most) {
          most = std::abs(polynomial[i + stride] - polynomial[i]);
          knob = k;
        }
    return knob;
  }

  double least(const Polynomial& polynomial) const {
    return *std::min_element(polynomial.begin(), polynomial.begin() + std::ptrdiff_t(coefficients()));
  }
  double most(const Polynomial& polynomial) const {
    return *std::max_element(polynomial.begin(), polynomial.begin() + std::ptrdiff_t(coefficients()));
  }

  /// Whether in every box, halved as often as it takes, something asked is nowhere negative. A box is halved along the knob that changes most what is
  /// nearest to that.
  bool decided(const Cell& whole, std::size_t& cells) const {
    const std::size_t each = whole.size();
    // Boxes that are open, one after the other.
    std::vector<Polynomial> open = whole;
    Cell cell(each);
    while (!open.empty()) {
      std::copy(open.end() - std::ptrdiff_t(each), open.end(), cell.begin());
      open.resize(open.size() - each);
      if (++cells > most_cells) return false;
      double fewest = std::numeric_limits<double>::infinity();
      std::size_t nearest = 0;
      for (std::size_t i = 0; i < each && fewest > 0.0; ++i) {
        const double low = least(cell[i]), high = most(cell[i]);
        const double lacks = low >= 0.0 ? 0.0 : high > 0.0 ? -low / high : std::numeric_limits<double>::max();
        if (lacks < fewest) fewest = lacks, nearest = i;
      }
      if (fewest == 0.0) continue;
      const std::size_t knob = steepest(cell[nearest]), first = open.size();
      open.resize(first + 2 * each);
      for (std::size_t i = 0; i < each; ++i) halve(cell[i], knob, open[first + i], open[first + each + i]);
    }
    return true;
  }

  const Problem& problem_;
  const Found& found_;
  std::size_t knobs_;
};

}  // namespace

Proof prove_best(const Problem& problem, const Found& found) { return Prover(problem, found).run(); }

}  // namespace wattfall::tune
