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
