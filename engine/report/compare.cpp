// The figures of `comparison.cpp`, the required ones beside them, where the watts differ, what is built differently; and from these which column is
// better: fewer failures count first, then the share that gets on the air at its worst, then the SWR.
#include "compare.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <set>

#include "comparison.hpp"
#include "design/facts.hpp"
#include "report/spelling.hpp"
#include "report/verdict.hpp"
#include "waterfall.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;
using Labels = std::vector<std::string>;
constexpr double none = std::numeric_limits<double>::quiet_NaN();

std::size_t failures_of(const Summary& summary) {
  return summary.of - summary.met + summary.ratings_broken;
}

// ---- required figures -------------------------------------------------------------------------------------------

/// A figure that any column requires. Columns that do not require it have no value.
struct RequiredRow {
  std::string figure, unit;
  bool below = true;
  Contest contest;
  std::vector<int> met;  ///< 1, 0; -1 where it is not required
};

std::vector<RequiredRow> find_required(const std::vector<VariantResult>& variants) {
  std::vector<RequiredRow> rows;
  for (std::size_t column = 0; column < variants.size(); ++column) {
    for (const judge::Verdict& verdict : variants[column].judgement.verdicts) {
      const design::Requirement& asked = *verdict.requirement;
      auto row = std::find_if(rows.begin(), rows.end(), [&](const RequiredRow& one) {
        return one.figure == asked.figure.text && one.below == asked.below && one.met[column] < 0;
      });
      if (row == rows.end()) {
        RequiredRow fresh{asked.figure.text, unit_of(asked.figure.kind), asked.below, {}, {}};
        fresh.contest.values.assign(variants.size(), none);
        fresh.contest.at_hz.assign(variants.size(), none);
        fresh.met.assign(variants.size(), -1);
        row = rows.insert(rows.end(), std::move(fresh));
      }
      row->contest.values[column] = verdict.worst;
      row->contest.at_hz[column] = verdict.worst_at_hz;
      row->met[column] = verdict.met ? 1 : 0;
    }
  }
  // What one column alone requires is no contest.
  for (RequiredRow& row : rows) {
    decide(row.contest, !row.below);
    if (std::count_if(row.met.begin(), row.met.end(), [](int met) { return met >= 0; }) > 1) continue;
    row.contest.better.reset();
    row.contest.lead = none;
  }
  return rows;
}

void write_required(JsonText& out, const std::vector<RequiredRow>& rows) {
  out.open('[');
  for (const RequiredRow& row : rows) {
    out.open('{');
    out.field("figure", row.figure);
    out.field("unit", row.unit);
    out.field("bound", row.below ? "below" : "above");
    out.field("values", row.contest.values);
    out.field("at_hz", row.contest.at_hz);
    out.key("met");
    out.open('[', Layout::one_line);
    for (const int met : row.met) met < 0 ? out.null() : out.value(met == 1);
    out.close();
    out.key("better");
    row.contest.better ? out.value(*row.contest.better) : out.null();
    out.field("lead", row.contest.lead);
    out.close();
  }
  out.close();
}

// ---- where the watts differ -------------------------------------------------------------------------------------

/// What one part (or load, or the rig) takes in each column, at the point where that column puts least on the air.
struct LossRow {
  std::string name, goes;
  std::vector<double> power_w;
  double spread() const {
    return *std::max_element(power_w.begin(), power_w.end()) - *std::min_element(power_w.begin(), power_w.end());
  }
};

std::vector<LossRow> find_losses(const std::vector<VariantResult>& variants) {
  std::vector<LossRow> rows;
  for (std::size_t column = 0; column < variants.size(); ++column) {
    const std::vector<Row> taken = find_waterfalls(variants[column]).front().rows;
    for (const Row& row : taken) {
      if (row.goes == "radiated") continue;
      auto found = std::find_if(rows.begin(), rows.end(), [&](const LossRow& one) { return one.name == row.name && one.goes == row.goes; });
      if (found == rows.end()) found = rows.insert(rows.end(), {row.name, row.goes, std::vector<double>(variants.size(), 0.0)});
      found->power_w[column] = row.power_w;
    }
  }
  std::stable_sort(rows.begin(), rows.end(), [](const LossRow& a, const LossRow& b) { return a.spread() > b.spread(); });
  return rows;
}

void write_losses(JsonText& out, const std::vector<LossRow>& rows) {
  out.open('[');
  for (const LossRow& row : rows) {
    out.open('{', Layout::one_line);
    out.field("name", row.name);
    out.field("goes", row.goes);
    out.field("power_w", row.power_w);
    out.close();
  }
  out.close();
}

// ---- what is built differently ----------------------------------------------------------------------------------

/// One fact of one part, in each column; empty where it has no such part or fact.
struct BuiltRow {
  std::string name, what;
  std::vector<std::optional<std::string>> values;
};

std::vector<BuiltRow> find_built(const std::vector<VariantResult>& variants) {
  std::vector<BuiltRow> rows;
  std::map<std::pair<std::string, std::string>, std::size_t> places;
  const auto put = [&](std::size_t column, const std::string& name, const std::string& what, const std::string& value) {
    const auto [place, fresh] = places.try_emplace({name, what}, rows.size());
    if (fresh) rows.push_back({name, what, std::vector<std::optional<std::string>>(variants.size())});
    rows[place->second].values[column] = value;
  };
  std::vector<std::vector<design::Thing>> all;
  std::map<std::string, std::size_t> columns_with;
  for (const VariantResult& variant : variants) {
    all.push_back(design::things_of(*variant.design));
    std::set<std::string> names;
    for (const design::Thing& thing : all.back()) names.insert(thing.name);
    for (const std::string& name : names) ++columns_with[name];
  }
  for (std::size_t column = 0; column < variants.size(); ++column)
    for (const design::Thing& thing : all[column]) {
      // A part that not all have is shown as it is written, and not fact by fact.
      if (columns_with[thing.name] < variants.size()) {
        if (thing.kind != "knob") put(column, thing.name, "part", thing.statement);
        continue;
      }
      if (thing.kind != "knob") put(column, thing.name, "kind", thing.kind);
      for (const design::Fact& fact : thing.facts) put(column, thing.name, fact.what, fact.value);
    }
  std::erase_if(rows, [](const BuiltRow& row) {
    return std::all_of(row.values.begin(), row.values.end(), [&](const auto& value) { return value == row.values.front(); });
  });
  return rows;
}

void write_built(JsonText& out, const std::vector<BuiltRow>& rows) {
  out.open('[');
  for (const BuiltRow& row : rows) {
    out.open('{', Layout::one_line);
    out.field("name", row.name);
    out.field("what", row.what);
    out.key("values");
    out.open('[', Layout::one_line);
    for (const std::optional<std::string>& value : row.values) value ? out.value(*value) : out.null();
    out.close();
    out.close();
  }
  out.close();
}

// ---- the better one, and why ------------------------------------------------------------------------------------

struct Choice {
  std::optional<std::size_t> better;
  std::string why;
};

/// The row in which the better column saves most against the other, in words; empty where it is not much of the whole.
std::string where_it_lies(const std::vector<LossRow>& losses, std::size_t better, std::size_t other) {
  const auto saved = [&](const LossRow& row) { return row.power_w[other] - row.power_w[better]; };
  const auto most = std::max_element(losses.begin(), losses.end(), [&](const LossRow& a, const LossRow& b) { return saved(a) < saved(b); });
  if (most == losses.end() || !(saved(*most) > 0.0)) return "";
  const std::string taken = most->goes == "returned" ? "what goes back to " + most->name : "the heat in " + most->name;
  return " The largest part of it: " + taken + " is " + spell_power(most->power_w[better]) + " instead of " + spell_power(most->power_w[other]) + '.';
}

std::size_t next_best(const std::vector<double>& values, std::size_t better, bool more_is_better) {
  std::size_t found = better == 0 ? 1 : 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (i == better || std::isnan(values[i])) continue;
    if (std::isnan(values[found]) || (more_is_better ? values[i] > values[found] : values[i] < values[found])) found = i;
  }
  return found;
}

Choice choose_by_failures(const std::vector<Summary>& summaries, const Labels& labels) {
  std::vector<double> failures;
  for (const Summary& summary : summaries) failures.push_back(static_cast<double>(failures_of(summary)));
  const double fewest = *std::min_element(failures.begin(), failures.end());
  if (std::count(failures.begin(), failures.end(), fewest) > 1) return {};
  const std::size_t better = static_cast<std::size_t>(std::min_element(failures.begin(), failures.end()) - failures.begin());
  const std::size_t other = next_best(failures, better, false);
  const Summary& short_of = summaries[other];
  std::string why = '"' + labels[better] + "\" is better, for it keeps more of what is asked. With \"" + labels[other] + "\": " + short_of.failures.front();
  if (short_of.failures.size() > 1) why += " And " + std::to_string(short_of.failures.size() - 1) + " more.";
  return {better, why};
}

/// The contest among those columns alone that fall short least.
Contest among_the_best(Contest contest, const std::vector<Summary>& summaries, bool more_is_better) {
  std::size_t fewest = failures_of(summaries.front());
  for (const Summary& summary : summaries) fewest = std::min(fewest, failures_of(summary));
  for (std::size_t column = 0; column < summaries.size(); ++column)
    if (failures_of(summaries[column]) > fewest) contest.values[column] = none;
  contest.better.reset();
  decide(contest, more_is_better);
  return contest;
}

Choice choose_by_figures(const std::vector<ComparedFigure>& figures, const std::vector<Summary>& summaries, const std::vector<LossRow>& losses,
                         const Labels& labels) {
  const Contest share = among_the_best(figures[1].worst, summaries, true);
  if (share.better) {
    const std::size_t better = *share.better, other = next_best(share.values, better, true);
    return {better, '"' + labels[better] + "\" is better, for more gets on the air: at its worst " + spell_share(share.values[better]) +
                        " of the power, with \"" + labels[other] + "\" " + spell_share(share.values[other]) + '.' +
                        where_it_lies(losses, better, other)};
  }
  const Contest swr = among_the_best(figures[3].worst, summaries, false);
  if (!swr.better) return {std::nullopt, "There is nothing in it: the same gets on the air, at the same SWR."};
  const std::size_t better = *swr.better, other = next_best(swr.values, better, false);
  return {better, '"' + labels[better] + "\" is better: the same gets on the air, and its worst SWR is " + spell_ratio(swr.values[better]) +
                      ", with \"" + labels[other] + "\" " + spell_ratio(swr.values[other]) + '.'};
}

void write_columns(JsonText& out, const std::vector<VariantResult>& variants, const std::vector<Summary>& summaries, const Labels& labels) {
  out.open('[');
  for (std::size_t column = 0; column < variants.size(); ++column) {
    const design::Design& design = *variants[column].design;
    out.open('{');
    out.field("label", labels[column]);
    out.field("file", design.file);
    out.field("title", design.title);
    out.key("variant");
    design.variant ? out.value(*design.variant) : out.null();
    out.field("met", summaries[column].met);
    out.field("of", summaries[column].of);
    out.field("ratings_broken", summaries[column].ratings_broken);
    out.sentences("failures", summaries[column].failures);
    out.close();
  }
  out.close();
}

}  // namespace

void write_compare(JsonText& out, const std::vector<VariantResult>& variants, const Labels& labels) {
  const std::vector<ComparedFigure> figures = compare_figures(variants);
  const std::vector<LossRow> losses = find_losses(variants);
  std::vector<Summary> summaries;
  for (const VariantResult& variant : variants) summaries.push_back(summarize(variant));
  Choice choice = choose_by_failures(summaries, labels);
  if (!choice.better) choice = choose_by_figures(figures, summaries, losses, labels);

  out.open('{');
  out.key("columns");
  write_columns(out, variants, summaries, labels);
  out.key("better");
  choice.better ? out.value(*choice.better) : out.null();
  out.field("why", choice.why);
  out.sentences("sentences", compare_in_words(labels, figures));
  out.key("figures");
  write_figures(out, figures);
  out.key("required");
  write_required(out, find_required(variants));
  out.key("losses");
  write_losses(out, losses);
  out.key("built");
  write_built(out, find_built(variants));
  out.close();
}

}  // namespace wattfall::report
