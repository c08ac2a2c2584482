// Bands and sweeps -> the points in frequency. The number of points is known, and checked, before any is made.
#include <algorithm>
#include <cmath>

#include "requests.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Sweep;

constexpr double most_points = 1'000'000.0;  // language.md

struct Points {
  std::pair<double, double> range{0, 0};
  double count = 0.0;  ///< before B is added to what a step reaches
  double step = 0.0;   ///< 0: equal parts
};

void make_points(const Points& points, bool by_ratio, std::vector<double>& out) {
  const auto [from, to] = points.range;
  const auto count = static_cast<std::size_t>(points.count);
  for (std::size_t i = 0; i < count; ++i) {
    const double n = static_cast<double>(i);
    const double share = count < 2 ? 0.0 : n / (points.count - 1.0);
    if (points.step > 0.0)
      out.push_back(by_ratio ? from * std::pow(points.step, n) : from + n * points.step);
    else
      out.push_back(by_ratio ? from * std::pow(to / from, share) : from + share * (to - from));
  }
  if (points.step == 0.0) out.pop_back();  // B itself, exactly
  while (!out.empty() && out.back() >= to * (1.0 - 1e-12)) out.pop_back();
  out.push_back(to);
}

bool fits_limit(Bench& bench, double count, Span span) {
  if (static_cast<double>(bench.design.frequencies_hz.size()) + count <= most_points) return true;
  bench.complaints.say("too-many-points", span, "with this the sweeps would have more than 1,000,000 points");
  return false;
}

std::optional<Points> points_of_step(Bench& bench, const Sweep& sweep, std::pair<double, double> range) {
  Points points{range};
  const Dimension dim = sweep.by_ratio ? dimension::number : dimension::frequency;
  const auto step =
      number_of(bench, sweep.amount, bench.file_frame.scope, dim, sweep.by_ratio ? rule::above_one : rule::positive);
  if (!step) return std::nullopt;
  const double steps =
      sweep.by_ratio ? std::log(range.second / range.first) / std::log(*step) : (range.second - range.first) / *step;
  points.count = std::floor(steps * (1.0 + 1e-12)) + 1.0;
  points.step = *step;
  return points;
}

std::optional<Points> points_of_count(Bench& bench, const Sweep& sweep, std::pair<double, double> range) {
  const auto count = number_of(bench, sweep.amount, bench.file_frame.scope, dimension::number);
  if (!count) return std::nullopt;
  if (*count != std::round(*count) || *count < 2.0) {
    bench.complaints.say("value-out-of-range", syntax::span_of(sweep.amount),
                         "the number of points is a whole number from 2");
    return std::nullopt;
  }
  return Points{range, *count, 0.0};
}

/// A list of frequencies, or one.
void read_list(Bench& bench, const Phrase& list, Span span) {
  if (!is_list(list)) {
    if (list.empty()) return;
    if (const auto one = frequency_of(bench, list, bench.file_frame.scope)) bench.design.frequencies_hz.push_back(*one);
    return;
  }
  const auto& entries = list[0].phrases;
  if (entries.empty()) bench.complaints.say("no-sweep", span, "this sweep has no point");
  if (!fits_limit(bench, static_cast<double>(entries.size()), span)) return;
  for (const Phrase& entry : entries)
    if (const auto f = frequency_of(bench, entry, bench.file_frame.scope)) bench.design.frequencies_hz.push_back(*f);
}

void read_sweep(Bench& bench, const Sweep& sweep, Span span) {
  if (sweep.form == Sweep::Form::at) return read_list(bench, sweep.list, span);
  const auto range = range_or_band(bench, sweep.from, sweep.to, sweep.band);
  const std::pair<double, double> some{1.0, 2.0};
  const auto points = sweep.form == Sweep::Form::step ? points_of_step(bench, sweep, range.value_or(some))
                                                      : points_of_count(bench, sweep, range.value_or(some));
  if (!range || !points || !fits_limit(bench, points->count + 1.0, span)) return;
  std::vector<double> made;
  make_points(*points, sweep.by_ratio, made);
  bench.design.frequencies_hz.insert(bench.design.frequencies_hz.end(), made.begin(), made.end());
}

void sort_and_join(std::vector<double>& points) {
  std::sort(points.begin(), points.end());
  const auto same = [](double a, double b) { return b - a <= 1e-12 * b; };
  points.erase(std::unique(points.begin(), points.end(), same), points.end());
}

}  // namespace

void read_bands(Bench& bench, const Statements& statements) {
  std::unordered_map<std::string_view, Span> seen;
  for (const syntax::Statement* statement : statements) {
    const auto* band = std::get_if<syntax::Band>(&statement->what);
    if (band == nullptr) continue;
    const auto [known, is_new] = seen.try_emplace(band->name.text, band->name.span);
    if (!is_new) {
      auto& wrong = bench.complaints.say("repeated-name", band->name.span, "there is a band of this name already");
      wrong.notes.push_back({known->second, "the first one"});
      continue;
    }
    if (const auto range = frequency_range_of(bench, band->from, band->to, bench.file_frame.scope))
      bench.bands[band->name.text] = *range;
    else
      bench.broken_bands.insert(band->name.text);
  }
}

std::optional<std::pair<double, double>> range_or_band(Bench& bench, const Phrase& from, const Phrase& to,
                                                       const syntax::Word& band) {
  if (!band) {
    if (from.empty() || to.empty()) return std::nullopt;
    return frequency_range_of(bench, from, to, bench.file_frame.scope);
  }
  const auto known = bench.bands.find(band.text);
  if (known != bench.bands.end()) return known->second;
  if (bench.broken_bands.contains(band.text)) return std::nullopt;
  auto& wrong = bench.complaints.say("unknown-band", band.span, "there is no band \"" + std::string(band.text) + "\"");
  wrong.expected = "the name of a `band` statement";
  wrong.hint = bench.complaints.nearest(band.text, [&] { return keys_of(bench.bands); });
  return std::nullopt;
}

void read_sweeps(Bench& bench, const Statements& statements, const std::vector<Phrase>& at_options,
                 const std::optional<Sweep>& sweep_option, Span sweep_span) {
  bool any = !at_options.empty() || sweep_option.has_value();
  for (const Phrase& at : at_options) read_list(bench, at, syntax::span_of(at));
  if (sweep_option) read_sweep(bench, *sweep_option, sweep_span);
  if (!any)
    for (const syntax::Statement* statement : statements)
      if (const auto* sweep = std::get_if<Sweep>(&statement->what)) {
        any = true;
        read_sweep(bench, *sweep, statement->span);
      }
  if (!any) {
    auto& wrong = bench.complaints.say("no-sweep", bench.place, "the design does not say at which frequencies");
    wrong.expected = "sweep A to B step S, or sweep at [f, ...]";
  }
  sort_and_join(bench.design.frequencies_hz);
}

}  // namespace wattfall::design
