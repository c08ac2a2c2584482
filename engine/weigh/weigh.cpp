// F(x, p) is a figure of the fields x and of the values p, M(p) x = s(p) the network. With transposed(M) y = dF/dx,
//   dF/dp = dF/dp at fixed x - Re y^T (dM/dp x - ds/dp).
// The figure is read off the books, and the laws of the elements are where they always are: both are formulas, whose slopes are taken by `stencil`.
// A mismatch has two fields, the source's and that of 1 A fed in from the plane, and so two y.
#include "weigh/weigh.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <set>

#include "judge/figures.hpp"
#include "ledger/book.hpp"
#include "slopes.hpp"
#include "solve/fields.hpp"
#include "values.hpp"

namespace wattfall::weigh {
namespace {

using design::Design;
using design::FigureKind;
using solve::Complex;
using solve::ElementValue;
using solve::FieldState;
using solve::FieldVector;

/// Of a value, relative: truncation is below 1e-10 even for a line of a hundred wavelengths. Of a field, of its size: between the digits of an SWR of a hundred, which
/// a small step loses, and the bend of one of a thousand, which a large one rounds off.
constexpr double value_step = 1e-4, field_step = 5e-5;

/// A field that the figure depends on, and what its adjoint found.
struct Side {
  FieldVector fields, adjoint;
};

/// What all figures at one point share.
struct Ground {
  const Design& design;
  const graph::Network& network;
  double frequency_hz;
  std::vector<double> knobs;
  std::vector<ElementValue> values;
  solve::Fields equations;
  FieldVector driven;
  bool trusted;
  std::vector<Adjustable> adjustables;
  /// Copies that a value is moved in, and that are as they were again afterwards.
  Design work;
  std::vector<ElementValue> moved;
};

Complex source_ohms(const Design& design, double hertz, const std::vector<double>& knobs) { return design.source.impedance_ohm.at(hertz, knobs); }
double source_volts(const Design& design, double hertz, const std::vector<double>& knobs) {
  return 2.0 * std::sqrt(design.source.available_w.real_at(hertz, knobs) * source_ohms(design, hertz, knobs).real());
}

class Weigher {
 public:
  Weigher(Ground& ground, const design::Figure& figure)
      : ground_(ground), design_(ground.design), network_(ground.network), figure_(figure), frequency_hz_(ground.frequency_hz), knobs_(ground.knobs),
        values_(ground.values), equations_(ground.equations), pages_(judge::pages_of({&figure, 1})) {
    for (const design::Look& look : judge::looks_of(design_))
      if (look.node == figure.look.node && look.into == figure.look.into && figure.look.node) looks_ = {look};
  }

  Weighing weigh() {
    Weighing weighing;
    weighing.trusted = ground_.trusted;
    weighing.figure = find_adjoints();
    if (!std::isfinite(weighing.figure)) return weighing;
    for (const Adjustable& value : ground_.adjustables) weighing.weights.push_back(weight(value));
    std::stable_sort(weighing.weights.begin(), weighing.weights.end(),
                     [](const Weight& a, const Weight& b) { return std::abs(a.per_percent) > std::abs(b.per_percent); });
    return weighing;
  }

  std::vector<double> slopes(std::span<const design::KnobId> ids) {
    std::vector<double> all(ids.size(), std::numeric_limits<double>::quiet_NaN());
    if (!std::isfinite(find_adjoints())) return all;
    for (std::size_t i = 0; i < ids.size(); ++i) {
      Adjustable value;
      value.scale = scale_knob(static_cast<std::size_t>(ids[i].index));
      all[i] = slope(value);
    }
    return all;
  }

 private:
  /// Solves for what the slopes are made of; the figure, and nothing solved where it does not exist.
  double find_adjoints() {
    sides_.push_back({ground_.driven, {}});
    if (figure_.kind == FigureKind::mismatch_at && !looks_.empty()) sides_.push_back({equations_.fed(figure_.look.node.index), {}});
    const double figure = figure_.kind == FigureKind::width_of_swr_at ? std::numeric_limits<double>::quiet_NaN() : figures(design_, knobs_, values_, {state()})[0];
    if (!std::isfinite(figure)) return figure;
    for (std::size_t side = 0; side < sides_.size(); ++side) sides_[side].adjoint = equations_.adjoint(gradient(side));
    return figure;
  }

  FieldState state() const {
    FieldState state{sides_[0].fields, {}};
    if (sides_.size() > 1) state.probes = {sides_[1].fields};
    return state;
  }

  std::vector<double> figures(const Design& design, const std::vector<double>& knobs, const std::vector<ElementValue>& values,
                              const std::vector<FieldState>& states) const {
    const solve::Solution solution = solve::solution_of(design, network_, frequency_hz_, knobs, values, looks_, states);
    const ledger::Ledger books = ledger::book(design, network_, solution, looks_, pages_);
    std::vector<double> all;
    for (std::size_t s = 0; s < states.size(); ++s) all.push_back(judge::figure_in_state(figure_, design, books, s));
    return all;
  }

  // ---- dF/dx ------------------------------------------------------------------------------------------------------

  void depend_on_node(std::set<std::size_t>& places, int node) const {
    if (node > 0) places.insert(equations_.place_of_node(node));
  }
  void depend_on_part(std::set<std::size_t>& places, design::PartId part) const {
    for (int e : network_.elements_of(part)) {
      const graph::Element& element = network_.elements[static_cast<std::size_t>(e)];
      for (int port = 0; port < element.ports(); ++port) {
        places.insert(equations_.place_of_port(e, port));
        depend_on_node(places, element.node[2 * port]);
        depend_on_node(places, element.node[2 * port + 1]);
      }
    }
  }

  /// The unknowns that the figure may depend on: those of the source, which may fold back, of all loads, and of what the figure is of.
  std::set<std::size_t> places() const {
    std::set<std::size_t> all{equations_.place_of_source()};
    depend_on_node(all, network_.source_node);
    depend_on_node(all, network_.source_other);
    if (figure_.look.node) depend_on_node(all, figure_.look.node.index);
    for (std::size_t p = 0; p < design_.parts.size(); ++p) {
      const design::PartId id{static_cast<int>(p)};
      const bool looked = figure_.look.node && (figure_.look.into ? id == figure_.look.into : touches(design_.parts[p], figure_.look.node));
      if (looked || id == figure_.part || design::is_load(design_.parts[p]) || in_box(design_.parts[p])) depend_on_part(all, id);
    }
    return all;
  }
  static bool touches(const design::Part& part, design::NodeId node) {
    return std::find(part.terminals.begin(), part.terminals.end(), node) != part.terminals.end();
  }
  bool in_box(const design::Part& part) const {
    if (!figure_.box) return false;
    for (design::BoxId box = part.box; box; box = design_.boxes[static_cast<std::size_t>(box.index)].parent)
      if (box == figure_.box) return true;
    return false;
  }

  /// dF/dRe x - j dF/dIm x, so that dF = Re sum g dx.
  FieldVector gradient(std::size_t side) const {
    const FieldVector& fields = sides_[side].fields;
    double largest = 0.0;
    for (const Complex& x : fields) largest = std::max(largest, std::abs(x));
    std::vector<FieldState> states;
    const std::set<std::size_t> all = places();
    const auto step_of = [&](std::size_t k) { return field_step * std::max(std::abs(fields[k]), 1e-3 * largest); };
    for (std::size_t k : all)
      for (const Complex direction : {Complex(1.0, 0.0), Complex(0.0, 1.0)})
        for (const Stencil& point : stencil)
          for (const double sign : {1.0, -1.0}) {
            FieldState moved = state();
            (side == 0 ? moved.driven : moved.probes[0])[k] += direction * (sign * point.place * step_of(k));
            states.push_back(std::move(moved));
          }
    const std::vector<double> found = figures(design_, knobs_, values_, states);
    FieldVector gradient(fields.size(), 0.0);
    std::size_t at = 0;
    for (std::size_t k : all) {
      double slopes[2] = {0.0, 0.0};
      for (double& slope : slopes)
        for (const Stencil& point : stencil) {
          slope += point.weight * (found[at] - found[at + 1]) / step_of(k);
          at += 2;
        }
      gradient[k] = {slopes[0], -slopes[1]};
    }
    return gradient;
  }

  // ---- dM/dp and dF/dp --------------------------------------------------------------------------------------------

  /// The elements whose law a value is in.
  std::vector<int> elements_of(const Adjustable& value) const {
    std::vector<int> all;
    const auto add = [&](design::PartId part) {
      const auto own = network_.elements_of(part);
      all.insert(all.end(), own.begin(), own.end());
    };
    if (value.part >= 0) {
      add(design::PartId{value.part});
    } else if (value.coupling >= 0) {
      add(design_.couplings[static_cast<std::size_t>(value.coupling)].first);
    } else {
      for (std::size_t e = 0; e < network_.elements.size(); ++e) all.push_back(static_cast<int>(e));
    }
    return all;
  }

  /// The network with a value a few steps away.
  struct Moved {
    double figure;  ///< at the fields as they are
    std::vector<ElementValue> values;  ///< of the elements whose law the value is in, in their order
    Complex source_ohms;
    double source_volts;
  };

  Moved move(const Adjustable& value, const std::vector<int>& elements, double factor) {
    std::vector<double> knobs = knobs_;
    Design& work = ground_.work;
    value.scale(work, knobs, factor);
    Moved moved{.figure = 0.0, .values = {}, .source_ohms = source_ohms(work, frequency_hz_, knobs), .source_volts = source_volts(work, frequency_hz_, knobs)};
    for (int e : elements) {
      ElementValue& here = ground_.moved[static_cast<std::size_t>(e)];
      here = solve::element_value(work, network_.elements[static_cast<std::size_t>(e)], frequency_hz_, knobs);
      moved.values.push_back(here);
    }
    moved.figure = figures(work, knobs, ground_.moved, {state()})[0];
    for (int e : elements) ground_.moved[static_cast<std::size_t>(e)] = values_[static_cast<std::size_t>(e)];
    restore(value, work);
    return moved;
  }

  /// y^T (dM x - ds) of both fields, between two places of a value.
  double change(const std::vector<int>& elements, const Moved& up, const Moved& down) {
    Complex sum = 0.0;
    for (std::size_t side = 0; side < sides_.size(); ++side) {
      const auto& [fields, adjoint] = sides_[side];
      for (std::size_t i = 0; i < elements.size(); ++i) sum += equations_.element_change(adjoint, fields, elements[i], up.values[i], down.values[i]);
      const bool driven = side == 0;
      sum += equations_.source_change(adjoint, fields, {up.source_ohms, down.source_ohms}, {driven ? up.source_volts : 0.0, driven ? down.source_volts : 0.0});
    }
    return sum.real();
  }

  Weight weight(const Adjustable& value) {
    const double slope = this->slope(value);
    return {.name = value.name, .unit = value.unit, .span = value.span, .nominal = value.nominal, .per_unit = slope / value.nominal, .per_percent = 0.01 * slope};
  }

  /// d figure/d ln value.
  double slope(const Adjustable& value) {
    const std::vector<int> elements = elements_of(value);
    double slope = 0.0;
    for (const Stencil& point : stencil) {
      const double step = point.place * value_step;
      const Moved up = move(value, elements, 1.0 + step), down = move(value, elements, 1.0 - step);
      slope += point.weight / value_step * (up.figure - down.figure - change(elements, up, down));
    }
    return slope;
  }

  void restore(const Adjustable& value, Design& work) const {
    if (value.part >= 0) work.parts[static_cast<std::size_t>(value.part)].model = design_.parts[static_cast<std::size_t>(value.part)].model;
    else if (value.coupling >= 0) work.couplings = design_.couplings;
    else work.source = design_.source;
  }

  Ground& ground_;
  const Design& design_;
  const graph::Network& network_;
  const design::Figure& figure_;
  double frequency_hz_;
  const std::vector<double>& knobs_;
  const std::vector<ElementValue>& values_;
  solve::Fields& equations_;
  std::vector<design::Look> looks_;
  ledger::Pages pages_;
  std::vector<Side> sides_;
};

std::vector<ElementValue> element_values(const Design& design, const graph::Network& network, double hertz, const std::vector<double>& knobs) {
  std::vector<ElementValue> all;
  for (const graph::Element& element : network.elements) all.push_back(solve::element_value(design, element, hertz, knobs));
  return all;
}

Ground survey(const Design& design, const graph::Network& network, double hertz, std::vector<double> knobs) {
  std::vector<ElementValue> values = element_values(design, network, hertz, knobs);
  solve::Fields equations(network, values, source_ohms(design, hertz, knobs));
  FieldVector driven = equations.driven(source_volts(design, hertz, knobs));
  const bool trusted = equations.trust() > 1e-15;
  std::vector<Adjustable> adjustables = values_of(design, hertz, knobs);
  std::vector<ElementValue> moved = values;
  return {design, network, hertz, std::move(knobs), std::move(values), std::move(equations), std::move(driven), trusted, std::move(adjustables), design, std::move(moved)};
}

}  // namespace

struct Point::Body : Ground {};

Point::Point(const Design& design, const graph::Network& network, double frequency_hz, std::vector<double> knobs)
    : body_(new Body{survey(design, network, frequency_hz, std::move(knobs))}) {}
Point::~Point() = default;
Point::Point(Point&&) noexcept = default;
Point& Point::operator=(Point&&) noexcept = default;

Weighing Point::weigh(const design::Figure& figure) { return Weigher(*body_, figure).weigh(); }

std::vector<double> Point::slopes(const design::Figure& figure, std::span<const design::KnobId> knobs) { return Weigher(*body_, figure).slopes(knobs); }

Weighing weigh(const Design& design, const graph::Network& network, const design::Figure& figure, double frequency_hz, const std::vector<double>& knobs) {
  return Point(design, network, frequency_hz, knobs).weigh(figure);
}

}  // namespace wattfall::weigh
