// The walk and the solver's books, held against each other.
#include <algorithm>
#include <cmath>

#include "walk/walk.hpp"

namespace wattfall::walk {
namespace {

using Complex = std::complex<double>;

/// Watts of every part as the books have them; of two coupled coils the first has both, as in a walk.
std::vector<double> booked(const design::Design& design, const ledger::Ledger& ledger, std::size_t state) {
  std::vector<double> watts(design.parts.size(), 0.0);
  for (const ledger::PartBook& book : ledger.parts) watts[book.part.index] = book.heat_w[state];
  for (const ledger::LoadBook& book : ledger.loads) watts[book.part.index] = book.absorbed_w[state];
  for (const design::Coupling& coupling : design.couplings) {
    watts[coupling.first.index] += watts[coupling.second.index];
    watts[coupling.second.index] = 0.0;
  }
  return watts;
}

Check impedances(Check::What what, const Ohms& walked, Complex solved) {
  Check check{.what = what, .walk = walked.value_or(Complex(NAN, NAN)), .solver = solved};
  const bool walk_open = !walked, solver_open = !std::isfinite(std::abs(solved));
  if (walk_open || solver_open) check.relative = walk_open && solver_open ? 0.0 : NAN;
  else check.relative = *walked == solved ? 0.0 : std::abs(*walked - solved) / std::abs(solved);
  return check;
}

const ledger::LookBook* find_look(const ledger::Ledger& ledger, design::NodeId node, design::PartId into) {
  for (const ledger::LookBook& book : ledger.looks)
    if (book.look.node == node && book.look.into == into) return &book;
  return nullptr;
}

Check powers(const Walk& walk, const std::vector<double>& booked_w) {
  Check check{.what = Check::What::power};
  for (std::size_t p = 0; p < booked_w.size(); ++p) {
    const double relative = std::abs(walk.part_w[p] - booked_w[p]) / walk.available_w;
    if (check.part && !(relative > check.relative)) continue;
    check.part = design::PartId{static_cast<int>(p)};
    check.walk = walk.part_w[p];
    check.solver = booked_w[p];
    check.relative = relative;
  }
  return check;
}

}  // namespace

design::PartId choose_load(const ledger::Ledger& ledger, std::size_t state) {
  const ledger::LoadBook* chosen = nullptr;
  for (const ledger::LoadBook& book : ledger.loads)
    if (chosen == nullptr || book.absorbed_w[state] > chosen->absorbed_w[state]) chosen = &book;
  return chosen == nullptr ? design::PartId{} : chosen->part;
}

void take_powers_from_books(Walk& walk, const design::Design& design, const ledger::Ledger& ledger, std::size_t state) {
  if (!walk.to_source.stop) return;
  const std::vector<double> watts = booked(design, ledger, state);
  const auto put = [&](auto& self, std::vector<Step>& steps) -> void {
    for (Step& step : steps) {
      step.lost_w = step.taken_w = 0.0;
      for (design::PartId part : step.parts) (design::is_load(design.parts[part.index]) ? step.taken_w : step.lost_w) += watts[part.index];
      // The books know whole parts; how its stages share a transformer's heat they do not say.
      if (step.role == graph::Element::Role::winding || step.role == graph::Element::Role::core || step.role == graph::Element::Role::turns) step.lost_w = NAN;
      self(self, step.inside);
    }
  };
  put(put, walk.to_source.steps);
  put(put, walk.to_load.steps);
}

std::vector<Check> compare(const Walk& walk, const design::Design& design, const ledger::Ledger& ledger, std::size_t state) {
  std::vector<Check> checks;
  for (std::size_t p = 0; p < walk.planes.size(); ++p) {
    const Plane& plane = walk.planes[p];
    if (plane.where == Plane::Where::source) {
      checks.push_back(impedances(Check::What::source, plane.toward_load, ledger.source.load_impedance_ohm[state]));
      continue;
    }
    if (plane.other != 0) continue;
    const bool load = plane.where == Plane::Where::load;
    const design::PartId into = load ? walk.load : design.planes[plane.named].look.into;
    const ledger::LookBook* book = find_look(ledger, design::NodeId{plane.node}, into);
    if (book == nullptr) continue;
    Check check = impedances(load ? Check::What::load : Check::What::plane, plane.toward_source, book->toward_source_ohm[state]);
    check.plane = static_cast<int>(p);
    checks.push_back(check);
    if (load) continue;
    check = impedances(Check::What::plane, plane.toward_load, book->toward_load_ohm[state]);
    check.plane = static_cast<int>(p);
    checks.push_back(check);
  }
  if (!walk.part_w.empty()) checks.push_back(powers(walk, booked(design, ledger, state)));
  return checks;
}

double worst(const std::vector<Check>& checks) {
  double largest = 0.0;
  for (const Check& check : checks) largest = std::isnan(check.relative) ? check.relative : std::max(largest, check.relative);
  return largest;
}

}  // namespace wattfall::walk
