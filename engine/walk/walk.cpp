#include "walk/walk.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "powers.hpp"
#include "steps.hpp"

namespace wattfall::walk {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// A reduction told in steps, boxes not yet gathered.
struct Told {
  Reduction reduction;
  std::vector<Step> flat;
};

class Walker {
 public:
  Walker(const design::Design& design, const graph::Network& network, double frequency_hz, std::span<const double> knobs, design::PartId load)
      : design_(design), network_(network), frequency_hz_(frequency_hz), knobs_(knobs) {
    for (const graph::Element& element : network.elements) values_.push_back(solve::element_value(design, element, frequency_hz, knobs));
    walk_.frequency_hz = frequency_hz;
    walk_.load = load;
    load_element_ = network.elements_of(load).front();
    source_ohm_ = design.source.impedance_ohm.at(frequency_hz, knobs);
  }

  Walk walk() {
    const graph::Element& load = network_.elements[load_element_];
    const Told forth = tell({.start_element = load_element_, .port_node = network_.source_node, .port_other = network_.source_other});
    const Told back = tell({.left_out_element = load_element_, .source = {source_ohm_, 1.0}, .source_node = network_.source_node,
                            .source_other = network_.source_other, .port_node = load.node[0], .port_other = load.node[1]});
    walk_.to_source = way_of(forth);
    walk_.to_load = way_of(back);
    take_powers(forth.reduction);
    take_idle(forth.reduction);
    take_planes(forth.flat, back.flat);
    return std::move(walk_);
  }

 private:
  Told tell(const Task& task) const {
    Told told;
    told.reduction = reduce(design_, network_, values_, task);
    told.flat = flat_steps(design_, network_, values_, told.reduction);
    return told;
  }

  Way way_of(const Told& told) const {
    Way way;
    way.stop = told.reduction.stop;
    if (told.flat.empty()) return way;
    way.start = told.flat.front().after;
    way.end = told.flat.back().after;
    way.steps = gather_boxes(design_, told.flat);
    return way;
  }

  void take_powers(const Reduction& forth) {
    walk_.available_w = walk_.accepted_w = none;
    if (forth.stop) return;
    const Powers powers = share_powers(design_, network_, values_, forth, frequency_hz_, knobs_);
    walk_.available_w = powers.available_w;
    walk_.accepted_w = powers.accepted_w;
    walk_.part_w.assign(design_.parts.size(), 0.0);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) walk_.part_w[network_.elements[e].part.index] += powers.element_w[e];
    for (Way* way : {&walk_.to_source, &walk_.to_load}) set_powers(way->steps, design_, network_, powers.element_w);
  }

  /// Parts of which every element was cut off.
  void take_idle(const Reduction& forth) {
    if (forth.stop) return;
    for (std::size_t p = 0; p < design_.parts.size(); ++p) {
      const design::PartId part{static_cast<int>(p)};
      const auto own = network_.elements_of(part);
      const auto cut = [&](int element) { return std::find(forth.idle.begin(), forth.idle.end(), element) != forth.idle.end(); };
      if (!own.empty() && std::all_of(own.begin(), own.end(), cut)) walk_.idle.push_back(part);
    }
  }

  // ---- both ways ---------------------------------------------------------------------------------------------------

  void add_plane(Plane plane) {
    if (plane.toward_load && plane.toward_source) {
      // 1 - |(Za - conj Zb)/(Za + Zb)|^2 = 4 Ra Rb/|Za + Zb|^2.
      const Complex a = *plane.toward_load, b = *plane.toward_source;
      const double passed = 4.0 * a.real() * b.real() / std::norm(a + b);
      plane.mismatch_db = passed > 0.0 ? std::max(0.0, -10.0 * std::log10(passed)) : none;
    } else {
      plane.mismatch_db = none;
    }
    walk_.planes.push_back(plane);
  }

  void take_planes(const std::vector<Step>& forth, const std::vector<Step>& back) {
    if (!walk_.to_source.stop)
      add_plane({.where = Plane::Where::source, .node = network_.source_node, .other = network_.source_other, .toward_load = walk_.to_source.end,
                 .toward_source = Ohms(source_ohm_)});
    for (std::size_t p = 0; p < design_.planes.size(); ++p) take_named(static_cast<int>(p), forth, back);
    const graph::Element& load = network_.elements[load_element_];
    if (!walk_.to_load.stop)
      add_plane({.where = Plane::Where::load, .node = load.node[0], .other = load.node[1], .toward_load = walk_.to_source.start,
                 .toward_source = walk_.to_load.end});
  }

  /// A plane that lies on both ways: the terminal at `node` of the part that it looks into, which stands in series there or passes power on. What lies across
  /// at its node belongs to the side it looks from.
  void take_named(int p, const std::vector<Step>& forth, const std::vector<Step>& back) {
    const design::Look& look = design_.planes[p].look;
    if (!look.into || look.into == walk_.load) return;  // shown as the load's own
    const auto adds = [&](const Step& step) {
      return std::find(step.parts.begin(), step.parts.end(), look.into) != step.parts.end() && step.rule != Rule::start;
    };
    const auto last = std::find_if(forth.rbegin(), forth.rend(), adds);
    const auto first = std::find_if(back.begin(), back.end(), adds);
    if (last == forth.rend() || first == back.end() || last->rule == Rule::parallel || first->rule == Rule::parallel) return;
    const bool against_ground = last->other == 0 && first->before_other == 0 && last->node == look.node.index && first->before_node == look.node.index;
    if (!against_ground) return;
    add_plane({.where = Plane::Where::named, .named = p, .node = look.node.index, .toward_load = last->after, .toward_source = first->before});
  }

  const design::Design& design_;
  const graph::Network& network_;
  double frequency_hz_;
  std::span<const double> knobs_;
  std::vector<solve::ElementValue> values_;
  int load_element_ = -1;
  Complex source_ohm_;
  Walk walk_;
};

}  // namespace

Walk take_walk(const design::Design& design, const graph::Network& network, double frequency_hz, std::span<const double> knobs, design::PartId load) {
  return Walker(design, network, frequency_hz, knobs, load).walk();
}

}  // namespace wattfall::walk
