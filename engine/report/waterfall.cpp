// Rows of the books. What is radiated comes first whatever it is; the rest by watts, equal watts in the order of the
// design.
#include "waterfall.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "report/moments.hpp"
#include "report/spelling.hpp"

namespace wattfall::report {
namespace {

std::string title_of(const Moments& moments, std::size_t index, const ledger::Ledger& books) {
  const std::string at = "at " + spell_frequency(books.frequencies_hz[index]);
  if (books.frequencies_hz.size() == 1) return at;
  if (moments.worst == moments.middle) return at + " (mid-sweep, and least on the air)";
  return at + (index == moments.worst ? " (least on the air)" : " (mid-sweep)");
}

void add_loads(Waterfall& fall, const VariantResult& variant, double available_w) {
  for (const ledger::LoadBook& load : variant.ledger->loads) {
    const design::Part& part = variant.design->parts[load.part.index];
    fall.rows.push_back(make_row(part.name, part.kind, "radiated", load.radiated_w[fall.index], available_w));
    if (load.heat_w[fall.index] == 0.0) continue;
    fall.rows.push_back(make_row(part.name, part.kind, "load_heat", load.heat_w[fall.index], available_w));
  }
}

/// NaN has no place in an order: it goes last.
double rank(const Row& row) {
  return std::isnan(row.power_w) ? -std::numeric_limits<double>::infinity() : row.power_w;
}

Waterfall make_waterfall(const VariantResult& variant, const Moments& moments, std::size_t index) {
  const ledger::Ledger& books = *variant.ledger;
  Waterfall fall{index, title_of(moments, index, books), {}, 0.0};
  const double available_w = books.totals.available_w[index];
  add_loads(fall, variant, available_w);
  for (const ledger::PartBook& book : books.parts) {
    const design::Part& part = variant.design->parts[book.part.index];
    fall.rows.push_back(make_row(part.name, part.kind, "part_heat", book.heat_w[index], available_w));
  }
  const design::Source& source = variant.design->source;
  fall.rows.push_back(make_row(source.name, "source", "returned", books.totals.returned_w[index], available_w));
  std::stable_sort(fall.rows.begin(), fall.rows.end(), [](const Row& a, const Row& b) {
    const bool a_first = a.goes == "radiated", b_first = b.goes == "radiated";
    return a_first != b_first ? a_first : rank(a) > rank(b);
  });
  for (const Row& row : fall.rows) fall.sum_w += row.power_w;
  return fall;
}

}  // namespace

Row make_row(std::string name, std::string kind, std::string goes, double power_w, double available_w) {
  // Below the rounding of a double beside the whole it is none: a part that a switch cuts off.
  if (std::abs(power_w) < 1e-16 * available_w) power_w = 0.0;
  const double share = power_w / available_w;
  const double alone_db =
      goes == "radiated" || share > 1.0 - 1e-13 ? std::numeric_limits<double>::quiet_NaN() : -10.0 * std::log10(1.0 - share);
  return {std::move(name), std::move(kind), std::move(goes), power_w, share, alone_db};
}

std::vector<Waterfall> find_waterfalls(const VariantResult& variant) {
  const Moments moments = find_moments(*variant.ledger);
  std::vector<Waterfall> falls{make_waterfall(variant, moments, moments.worst)};
  if (moments.middle != moments.worst) falls.push_back(make_waterfall(variant, moments, moments.middle));
  return falls;
}

}  // namespace wattfall::report
