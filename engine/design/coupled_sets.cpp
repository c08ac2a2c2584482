#include "design/coupled_sets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace wattfall::design {
namespace {

/// The set that each part belongs to, by its first coil.
std::vector<int> heads(const Design& design) {
  std::vector<int> head(design.parts.size());
  std::iota(head.begin(), head.end(), 0);
  const auto find = [&](int part) {
    while (head[part] != part) part = head[part];
    return part;
  };
  for (const Coupling& coupling : design.couplings) {
    const auto [low, high] = std::minmax({find(coupling.first.index), find(coupling.second.index)});
    head[high] = low;
  }
  for (int& one : head) one = find(one);
  return head;
}

void fill_factors(const Design& design, CoupledSet& set) {
  const std::size_t n = set.coils.size();
  set.factors.assign(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) set.factors[i * n + i] = 1.0;
  const auto place = [&](PartId coil) {
    return static_cast<std::size_t>(std::find(set.coils.begin(), set.coils.end(), coil) - set.coils.begin());
  };
  for (const int c : set.couplings) {
    const Coupling& coupling = design.couplings[c];
    const std::size_t a = place(coupling.first), b = place(coupling.second);
    const double factor = coupling.factor.constant() ? coupling.factor.constant_value().real() : std::numeric_limits<double>::quiet_NaN();
    set.factors[a * n + b] = set.factors[b * n + a] = factor;
  }
}

bool alike(const CoreWinding& one, const CoreWinding& other) {
  const auto same_ring = [](const physics::Ring& a, const physics::Ring& b) {
    return a.outer_diameter_m == b.outer_diameter_m && a.inner_diameter_m == b.inner_diameter_m && a.height_m == b.height_m;
  };
  const auto same_point = [](const auto& a, const auto& b) {
    return a.frequency_hz == b.frequency_hz && a.real == b.real && a.imaginary == b.imaginary;
  };
  if (one.index_h != other.index_h || one.ring.has_value() != other.ring.has_value()) return false;
  if (one.ring && !same_ring(*one.ring, *other.ring)) return false;
  return std::equal(one.permeability.points.begin(), one.permeability.points.end(), other.permeability.points.begin(),
                    other.permeability.points.end(), same_point);
}

}  // namespace

std::vector<CoupledSet> coupled_sets(const Design& design) {
  const std::vector<int> head = heads(design);
  std::vector<CoupledSet> sets;
  std::vector<int> set_of(design.parts.size(), -1);
  for (std::size_t c = 0; c < design.couplings.size(); ++c) {
    int& set = set_of[head[design.couplings[c].first.index]];
    if (set < 0) {
      set = static_cast<int>(sets.size());
      sets.emplace_back();
    }
    sets[set].couplings.push_back(static_cast<int>(c));
  }
  for (std::size_t p = 0; p < design.parts.size(); ++p)
    if (const int set = set_of[head[p]]; set >= 0) sets[set].coils.push_back({static_cast<int>(p)});
  for (CoupledSet& set : sets) fill_factors(design, set);
  return sets;
}

bool on_one_core(const Design& design, const CoupledSet& set) {
  const auto core_of_coil = [&](PartId coil) { return std::get<Inductor>(design.parts[coil.index].model).core.get(); };
  const CoreWinding* first = core_of_coil(set.coils.front());
  if (first == nullptr) return false;
  return std::all_of(set.coils.begin(), set.coils.end(), [&](PartId coil) {
    const CoreWinding* other = core_of_coil(coil);
    return other != nullptr && alike(*first, *other);
  });
}

bool by_shares(const Design& design, const CoupledSet& set) {
  if (set.coils.size() > 2) return true;
  return design.couplings[set.couplings.front()].factor.constant() && on_one_core(design, set);
}

std::vector<double> triangle_of(const CoupledSet& set) {
  const std::size_t n = set.coils.size();
  std::vector<double> g(n * n, 0.0);
  for (std::size_t row = 0; row < n; ++row)
    for (std::size_t column = 0; column <= row; ++column) {
      double left = set.factors[row * n + column];
      for (std::size_t k = 0; k < column; ++k) left -= g[row * n + k] * g[column * n + k];
      g[row * n + column] = row == column ? std::sqrt(left) : left / g[column * n + column];
    }
  return g;
}

}  // namespace wattfall::design
