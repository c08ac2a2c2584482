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
#include "solve/solve.hpp"
#include "source_side.hpp"
#include "straight.hpp"

namespace wattfall::tune {
namespace {

using Complex = std::complex<double>;
using design::FigureKind;

constexpr std::size_t most_cells = 100'000, most_frequencies = 7;

using Corners = Straight::Corners;

/// What is to be proved nowhere negative: the sum of weight |function|^2.
struct Term {
  Corners function{};
  double weight = 0.0;
};

/// A polynomial of second degree in each knob by its Bernstein coefficients over a box; the first knob's index runs fastest. It is nowhere below the
/// least of them.
using Polynomial = std::array<double, 27>;

/// What the figures come to at one frequency, over the knobs' ranges.
class Bounds {
 public:
  Bounds(const Problem& problem, const Found& found, double hertz) : problem_(problem), found_(found), hertz_(hertz), straight_(problem, hertz) {}

  bool make(std::string& why_not) { return straight_.make(why_not); }

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
    return watts ? most_left(problem_.design.source) : 1.0;
  }

 private:
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
    std::vector<Term> result{{straight_.d(), limit}};
    for (std::size_t w = 0; w < straight_.loads().size(); ++w) {
      if (!all && !(straight_.loads()[w] == figure.part)) continue;
      const double share = figure.kind == FigureKind::power_into ? 1.0 : shares[w];
      result.push_back({straight_.volts(1 + w), -most_share(figure) * share * straight_.ports().watched_siemens[w] / straight_.collapsed().available_w()});
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
    const Complex reference = reference_of(figure, source, hertz_, problem_.others);
    return {{straight_.back(reference), 1.0}, {straight_.out(reference), limit - 1.0}};
  }

  std::vector<double> radiated_shares() const {
    solve::States states;
    states.knob_count = problem_.others.size();
    states.add(hertz_, knobs_with(problem_, found_.setting));
    const ledger::Ledger books =
        ledger::book(problem_.design, problem_.network, solve::solve(problem_.design, problem_.network, problem_.plan, states), {});
    std::vector<double> shares;
    for (design::PartId load : straight_.loads())
      for (const ledger::LoadBook& book : books.loads)
        if (book.part == load) shares.push_back(book.absorbed_w[0] > 0.0 ? book.radiated_w[0] / book.absorbed_w[0] : 1.0);
    return shares.size() == straight_.loads().size() ? shares : std::vector<double>{};
  }

  /// |f|^2 of an f straight in each knob: index 0, 1, 2 of a knob counts how many of the two factors stand at its upper end.
  void add(const Term& term, Polynomial& sum) const {
    for (std::size_t a = 0; a < straight_.corners(); ++a)
      for (std::size_t b = 0; b < straight_.corners(); ++b) {
        std::size_t index = 0, stride = 1;
        double share = 1.0;
        for (std::size_t k = 0; k < straight_.knobs(); ++k, stride *= 3) {
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
  Straight straight_;
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
      const double figure = worst_figures(one, {knobs_with(problem_, found_.setting)}).front().front();
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
