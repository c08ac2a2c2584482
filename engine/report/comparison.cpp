// Six figures, each at every variant's own worst point and mid-sweep. A lead below a millionth of the figure is
// rounding of the tuner's search, and is called a tie.
#include "comparison.hpp"

#include <cmath>
#include <functional>
#include <limits>

#include "report/moments.hpp"
#include "report/spelling.hpp"

namespace wattfall::report {
namespace {

constexpr double tie_share = 1e-6;

/// The heat of the hottest part at a point, and which it is.
std::pair<double, std::string> hottest(const VariantResult& variant, std::size_t point) {
  std::pair<double, std::string> found{0.0, ""};
  for (const ledger::PartBook& book : variant.ledger->parts) {
    if (!ledger::exceeds(book.heat_w[point], found.first)) continue;
    found = {book.heat_w[point], variant.design->parts[book.part.index].name};
  }
  return found;
}

ledger::Series hottest_series(const VariantResult& variant) {
  ledger::Series series(variant.ledger->frequencies_hz.size());
  for (std::size_t i = 0; i < series.size(); ++i) series[i] = hottest(variant, i).first;
  return series;
}

/// Values as if more were better; what does not exist is behind all that does.
double merit(double value, bool more_is_better) {
  if (std::isnan(value)) return -std::numeric_limits<double>::infinity();
  return more_is_better ? value : -value;
}

}  // namespace

void decide(Contest& contest, bool more_is_better) {
  const std::size_t none = contest.values.size();
  std::size_t first = none, second = none;
  for (std::size_t i = 0; i < contest.values.size(); ++i) {
    const double own = merit(contest.values[i], more_is_better);
    if (first == none || own > merit(contest.values[first], more_is_better)) {
      second = first;
      first = i;
    } else if (second == none || own > merit(contest.values[second], more_is_better)) {
      second = i;
    }
  }
  if (first == none || second == none || std::isnan(contest.values[first])) return;
  contest.lead = std::abs(contest.values[first] - contest.values[second]);
  if (contest.lead <= tie_share * std::abs(contest.values[first])) return;
  contest.better = first;
}

namespace {

using Pick = std::function<const ledger::Series&(const VariantResult&)>;

ComparedFigure compare(const std::vector<VariantResult>& variants, ComparedFigure figure, const Pick& pick) {
  for (const VariantResult& variant : variants) {
    const ledger::Series& series = pick(variant);
    const std::size_t worst = worst_index(series, !figure.more_is_better);
    const std::size_t middle = find_moments(*variant.ledger).middle;
    figure.worst.values.push_back(series[worst]);
    figure.worst.at_hz.push_back(variant.ledger->frequencies_hz[worst]);
    figure.middle.values.push_back(series[middle]);
    figure.middle.at_hz.push_back(variant.ledger->frequencies_hz[middle]);
    if (figure.figure != "hottest_part_w") continue;
    figure.worst.parts.push_back(hottest(variant, worst).second);
    figure.middle.parts.push_back(hottest(variant, middle).second);
  }
  decide(figure.worst, figure.more_is_better);
  decide(figure.middle, figure.more_is_better);
  return figure;
}

using Labels = std::vector<std::string>;

std::string in_quotes(const std::string& label) {
  return '"' + label + '"';
}

/// "the coupler at the mast" puts so much on the air, so much more than the other.
std::string radiated_sentence(const Labels& labels, const Contest& contest,
                              const std::string& when) {
  if (!contest.better) return "Between the best there is nothing in it " + when + ": the power on the air is the same.";
  const std::size_t best = *contest.better;
  const double watts = contest.values[best];
  std::string text = in_quotes(labels[best]) + " puts " + spell_power(watts) + " on the air " + when;
  if (!std::isfinite(contest.lead)) return text + ", where the others give no figure.";
  text += ", " + spell_power(contest.lead) + " more than ";
  text += labels.size() == 2 ? in_quotes(labels[1 - best]) : "the next best";
  const double other = watts - contest.lead;
  return text + (other > 0.0 ? " (" + spell_level(10.0 * std::log10(watts / other)) + ")." : ".");
}

std::string swr_sentence(const Labels& labels, const Contest& contest) {
  if (!contest.better) return "The worst SWR at the rig is the same.";
  std::string text = "The worst SWR at the rig: ";
  for (std::size_t i = 0; i < labels.size(); ++i) {
    text += (i == 0 ? "" : ", ") + spell_ratio(contest.values[i]) + " with " + in_quotes(labels[i]);
  }
  return text + '.';
}

std::string hottest_sentence(const Labels& labels, const Contest& contest) {
  std::string text = "The hottest part: ";
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const bool any = !contest.parts[i].empty();
    text += (i == 0 ? "" : ", ") + (any ? contest.parts[i] + " with " + spell_power(contest.values[i]) : "none");
    text += " in " + in_quotes(labels[i]);
  }
  return text + '.';
}

/// From the better one, or from the first where the best are even.
std::vector<double> differences(const Contest& contest) {
  std::vector<double> all;
  for (const double value : contest.values) all.push_back(value - contest.values[contest.better.value_or(0)]);
  return all;
}

void write_contest(JsonText& out, const Contest& contest) {
  out.open('{');
  out.field("values", contest.values);
  out.field("at_hz", contest.at_hz);
  if (!contest.parts.empty()) out.field("parts", contest.parts);
  out.key("better");
  contest.better ? out.value(*contest.better) : out.null();
  out.field("lead", contest.lead);
  out.field("differences", differences(contest));
  out.close();
}

void write_figure(JsonText& out, const ComparedFigure& figure) {
  out.open('{');
  out.field("figure", figure.figure);
  out.field("title", figure.title);
  out.field("unit", figure.unit);
  out.field("more_is_better", figure.more_is_better);
  out.key("worst");
  write_contest(out, figure.worst);
  out.key("middle");
  write_contest(out, figure.middle);
  out.close();
}

}  // namespace

std::vector<ComparedFigure> compare_figures(const std::vector<VariantResult>& variants) {
  std::vector<ledger::Series> hot;
  for (const VariantResult& variant : variants) hot.push_back(hottest_series(variant));
  const auto totals = [](ledger::Series ledger::Totals::*series) {
    return [series](const VariantResult& v) -> const ledger::Series& { return v.ledger->totals.*series; };
  };
  const auto swr = [](const VariantResult& v) -> const ledger::Series& { return v.ledger->source.swr; };
  const auto hottest_of = [&](const VariantResult& v) -> const ledger::Series& { return hot[&v - variants.data()]; };
  using Totals = ledger::Totals;
  return {compare(variants, {"radiated_w", "on the air", "W", true, {}, {}}, totals(&Totals::radiated_w)),
          compare(variants, {"efficiency", "efficiency", "share", true, {}, {}}, totals(&Totals::efficiency)),
          compare(variants, {"total_loss_db", "lost", "dB", false, {}, {}}, totals(&Totals::total_loss_db)),
          compare(variants, {"swr", "SWR", "", false, {}, {}}, swr),
          compare(variants, {"heat_w", "heat in parts", "W", false, {}, {}}, totals(&Totals::heat_w)),
          compare(variants, {"hottest_part_w", "hottest part", "W", false, {}, {}}, hottest_of)};
}

void write_figures(JsonText& out, const std::vector<ComparedFigure>& figures) {
  out.open('[');
  for (const ComparedFigure& figure : figures) write_figure(out, figure);
  out.close();
}

std::vector<std::string> compare_in_words(const std::vector<std::string>& labels, const std::vector<ComparedFigure>& figures) {
  return {radiated_sentence(labels, figures[0].worst, "at its worst"), radiated_sentence(labels, figures[0].middle, "mid-sweep"),
          swr_sentence(labels, figures[3].worst), hottest_sentence(labels, figures[5].worst)};
}

void write_comparison(JsonText& out, const std::vector<VariantResult>& variants, const std::vector<std::string>& names) {
  const std::vector<ComparedFigure> figures = compare_figures(variants);
  out.open('{');
  out.field("variants", names);
  out.key("figures");
  write_figures(out, figures);
  out.sentences("sentences", compare_in_words(names, figures));
  out.close();
}

}  // namespace wattfall::report
