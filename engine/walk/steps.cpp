#include "steps.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::walk {
namespace {

using graph::Element;

Ohms ohms_of(const OnePort& port) {
  if (port.open()) return std::nullopt;
  return port.ohms();
}

class Teller {
 public:
  Teller(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Reduction& reduction)
      : design_(design), network_(network), values_(values), branches_(reduction.branches) {}

  std::vector<Step> tell(int outermost) const {
    std::vector<int> chain;
    for (int at = outermost; at >= 0; at = branches_[at].first) chain.push_back(at);
    std::vector<Step> steps;
    for (auto at = chain.rbegin(); at != chain.rend(); ++at) steps.push_back(step_of(branches_[*at]));
    return steps;
  }

 private:
  Step step_of(const Branch& branch) const {
    Step step;
    step.node = branch.node;
    step.other = branch.other;
    step.after = ohms_of(branch.port);
    switch (branch.kind) {
      case Branch::Kind::leaf: start(step, branch); break;
      case Branch::Kind::end:
        start(step, branch);
        step.end = branch.port.open() ? Step::End::open : Step::End::shorted;
        break;
      case Branch::Kind::through: pass(step, branch); break;
      case Branch::Kind::series: beside(step, branch, Rule::series); break;
      case Branch::Kind::parallel: beside(step, branch, Rule::parallel); break;
    }
    return step;
  }

  void start(Step& step, const Branch& branch) const {
    step.before_node = step.node;
    step.before_other = step.other;
    // The end of a line adds nothing of its own: the line itself comes with the next step.
    if (branch.kind == Branch::Kind::leaf) add_element(step, branch.element);
    else if (branch.element >= 0) add_part(step, network_.elements[branch.element].part);
  }

  void from(Step& step, const Branch& inner) const {
    step.before = ohms_of(inner.port);
    step.before_node = inner.node;
    step.before_other = inner.other;
  }

  void pass(Step& step, const Branch& branch) const {
    from(step, branches_[branch.first]);
    add_element(step, branch.element);
    step.toward_in = branch.from_second;
    const Element& element = network_.elements[branch.element];
    const solve::ElementValue& value = values_[branch.element];
    step.rule = Rule::two_port;
    if (element.form == Element::Form::line) {
      step.rule = Rule::line;
      step.gamma_l = value.gamma_l;
      step.line_impedance_ohm = value.impedance;
    } else if (element.form == Element::Form::ideal) {
      step.rule = element.role == Element::Role::difference ? Rule::choke : Rule::turns;
      if (step.rule == Rule::turns) step.factor = branch.from_second ? 1.0 / (value.ratio * value.ratio) : value.ratio * value.ratio;
    } else if (element.role == Element::Role::coupled) {
      step.rule = Rule::coupled;
    }
  }

  void beside(Step& step, const Branch& branch, Rule rule) const {
    step.rule = rule;
    from(step, branches_[branch.first]);
    const Branch& added = branches_[branch.second];
    step.added = ohms_of(added.port);
    if (added.kind == Branch::Kind::leaf) return add_element(step, added.element);
    step.inside = tell(branch.second);
    for (const Step& inner : step.inside) {
      for (design::PartId part : inner.parts) add_part(step, part);
      step.elements.insert(step.elements.end(), inner.elements.begin(), inner.elements.end());
    }
  }

  void add_element(Step& step, int element) const {
    if (element < 0) return;  // the source's impedance
    step.elements.push_back(element);
    step.role = network_.elements[element].role;
    add_part(step, network_.elements[element].part);
    if (step.role == Element::Role::coupled) add_part(step, design_.couplings[network_.elements[element].coupling].second);
  }
  static void add_part(Step& step, design::PartId part) {
    if (std::find(step.parts.begin(), step.parts.end(), part) == step.parts.end()) step.parts.push_back(part);
  }

  const design::Design& design_;
  const graph::Network& network_;
  std::span<const solve::ElementValue> values_;
  const std::vector<Branch>& branches_;
};

/// The boxes that a part stands in, outermost first.
std::vector<design::BoxId> boxes_of(const design::Design& design, design::PartId part) {
  std::vector<design::BoxId> boxes;
  for (design::BoxId box = design.parts[part.index].box; box; box = design.boxes[box.index].parent) boxes.push_back(box);
  std::reverse(boxes.begin(), boxes.end());
  return boxes;
}

/// Those that all of a step's parts stand in.
std::vector<design::BoxId> boxes_of(const design::Design& design, const Step& step) {
  if (step.parts.empty()) return {};
  std::vector<design::BoxId> common = boxes_of(design, step.parts.front());
  for (design::PartId part : step.parts) {
    const std::vector<design::BoxId> its = boxes_of(design, part);
    const auto end = std::mismatch(common.begin(), common.end(), its.begin(), its.end()).first;
    common.erase(end, common.end());
  }
  return common;
}

Step box_of(design::BoxId box, std::vector<Step> inside) {
  Step step{.rule = Rule::box, .parts = {}, .elements = {}, .box = box};
  step.before_node = inside.front().before_node;
  step.before_other = inside.front().before_other;
  step.node = inside.back().node;
  step.other = inside.back().other;
  step.before = inside.front().before;
  step.after = inside.back().after;
  for (const Step& inner : inside) {
    for (design::PartId part : inner.parts)
      if (std::find(step.parts.begin(), step.parts.end(), part) == step.parts.end()) step.parts.push_back(part);
    step.elements.insert(step.elements.end(), inner.elements.begin(), inner.elements.end());
  }
  step.inside = std::move(inside);
  return step;
}

std::vector<Step> gather(const design::Design& design, std::vector<Step> steps, std::size_t depth) {
  std::vector<Step> gathered;
  for (std::size_t i = 0; i < steps.size();) {
    const auto box_at = [&](std::size_t k) {
      // What a way starts with stands outside: it is where one looks from.
      const std::vector<design::BoxId> boxes = steps[k].rule == Rule::start ? std::vector<design::BoxId>{} : boxes_of(design, steps[k]);
      return depth < boxes.size() ? boxes[depth] : design::BoxId{};
    };
    const design::BoxId box = box_at(i);
    if (!box) {
      gathered.push_back(std::move(steps[i++]));
      continue;
    }
    std::vector<Step> run;
    while (i < steps.size() && box_at(i) == box) run.push_back(std::move(steps[i++]));
    gathered.push_back(box_of(box, gather(design, std::move(run), depth + 1)));
  }
  return gathered;
}

}  // namespace

std::vector<Step> flat_steps(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values,
                             const Reduction& reduction) {
  if (reduction.spine < 0) return {};
  return Teller(design, network, values, reduction).tell(reduction.spine);
}

std::vector<Step> gather_boxes(const design::Design& design, std::vector<Step> steps) { return gather(design, std::move(steps), 0); }

void set_powers(std::vector<Step>& steps, const design::Design& design, const graph::Network& network, std::span<const double> element_w) {
  for (Step& step : steps) {
    step.lost_w = step.taken_w = 0.0;
    for (int element : step.elements)
      (design::is_load(design.parts[network.elements[element].part.index]) ? step.taken_w : step.lost_w) += element_w[element];
    set_powers(step.inside, design, network, element_w);
  }
}

}  // namespace wattfall::walk
