// What was asked and what breaks: requirements, the strain on each part beside its ratings, warnings.
#include <algorithm>
#include <cmath>
#include <map>

#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

constexpr std::size_t most_parts = 20;
constexpr std::size_t most_warnings = 12;

std::string at(const Json& hz) {
  return hz.is_number() ? " at " + spell_frequency(hz) : "";
}

std::string limit_phrase(const Json& rating) {
  const double margin_percent = number(rating, "margin_percent");
  const std::string limit = spell(number(rating, "limit"), text(rating, "unit"));
  const std::string margin = spell(std::abs(margin_percent) / 100.0, "share") + " (" +
                             spell(std::abs(number(rating, "margin_db")), "dB") + ")";
  if (!flag(rating, "kept")) return "OVER " + limit + " by " + margin + at(member(rating, "worst_at_hz"));
  // A tuner that holds to a rating ends a hair inside it.
  if (flag(rating, "near")) return "NEAR " + limit + ": " + (margin_percent < 0.005 ? "nothing" : margin) + " to spare";
  return spell((100.0 - margin_percent) / 100.0, "share") + " of " + limit;
}

/// A part's ratings in words, the one most used first; and how much of that one is used.
struct Rated {
  std::string words;
  double used = -1.0;  ///< per cent; below nothing where the part has no rating
};

using Ratings = std::map<std::string, Rated>;  ///< by the part's name

Ratings gather_ratings(const Json& variant) {
  Ratings ratings;
  for (const Json& rating : list(variant, "ratings")) {
    Rated& part = ratings[raw_text(member(rating, "part"))];
    const double used = 100.0 - number(rating, "margin_percent");
    const std::string phrase = limit_phrase(rating);
    part.words = part.words.empty() ? phrase
                 : used > part.used ? phrase + ", " + part.words
                                    : part.words + ", " + phrase;
    part.used = std::fmax(part.used, used);
  }
  return ratings;
}

struct Strained {
  const Json* part;
  std::string kind;
  Rated rating;
};

std::vector<Strained> strained_parts(const Json& variant) {
  std::vector<Strained> all;
  Ratings ratings = gather_ratings(variant);
  const auto add = [&](const Json& part, std::string kind) {
    all.push_back({&part, std::move(kind), ratings[raw_text(member(part, "name"))]});
  };
  for (const Json& part : list(variant, "parts")) add(part, text(part, "kind"));
  for (const Json& load : list(variant, "loads")) add(load, "load");
  const auto volts = [](const Strained& one) {
    const double value = number(member(*one.part, "highest"), "volts_peak");
    return std::isnan(value) ? -1.0 : value;
  };
  std::stable_sort(all.begin(), all.end(), [&](const Strained& a, const Strained& b) {
    return a.rating.used != b.rating.used ? a.rating.used > b.rating.used : volts(a) > volts(b);
  });
  return all;
}

/// Whole volts, but tenths of small ones.
std::string volts(const Json& highest) {
  const double value = number(highest, "volts_peak");
  return fixed(value, value < 10.0 ? 1 : 0);
}

}  // namespace

void write_requirements(Paper& paper, const Json& variant) {
  const Json& requirements = list(variant, "requirements");
  if (requirements.empty()) return;
  paper.section("What was required");
  Table table({Side::left, Side::left, Side::left, Side::left});
  table.limit(paper.columns() - 54);
  for (const Json& requirement : requirements) {
    const bool met = flag(requirement, "met");
    const double value = number(requirement, "worst");
    const std::string unit = text(requirement, "unit");
    const std::string worst = std::isnan(value) && !unit.empty() ? "has no value" : "worst " + spell(value, unit);
    table.add({met ? "met" : "NOT MET", text(requirement, "text"), worst + at(member(requirement, "worst_at_hz")),
               "line " + std::to_string(count(requirement, "line"))},
              met ? Ink::good : Ink::bad);
  }
  table.print(paper);
}

void write_strain(Paper& paper, const Json& variant) {
  const std::vector<Strained> all = strained_parts(variant);
  if (all.empty()) return;
  paper.section("What each part must stand: the largest over the sweep, nearest to its rating first");
  Table table({Side::left, Side::left, Side::right, Side::right, Side::right, Side::left});
  table.limit(paper.columns());
  const Scale watts = scale_for({number_at(member(variant, "totals"), "available_w", 0)}, "W");
  table.heads({"part", "kind", "V peak", "A rms", "heat, " + watts.unit, "rating"});
  for (std::size_t i = 0; i < std::min(all.size(), most_parts); ++i) {
    const Json& highest = member(*all[i].part, "highest");
    table.add({cut_name(text(*all[i].part, "name")), cut_name(all[i].kind), volts(highest),
               fixed(number(highest, "amps_rms"), 2), watts.show(number(highest, "heat_w")),
               all[i].rating.words.empty() ? "none given" : all[i].rating.words},
              all[i].rating.used > 100.0 ? Ink::bad : Ink::plain);
  }
  table.print(paper);
  if (all.size() > most_parts) paper.line("  and " + std::to_string(all.size() - most_parts) + " parts with less");
}

void write_ratings(Paper& paper, const Json& variant) {
  const Json& ratings = list(variant, "ratings");
  if (ratings.empty()) return;
  paper.section("Ratings, the least margin first");
  Table table({Side::left, Side::right, Side::right, Side::left, Side::right, Side::right});
  table.limit(paper.columns());
  table.heads({"part", "stands", "rated", "at", "margin, %", "dB"});
  bool averages = false;
  for (std::size_t i = 0; i < std::min(ratings.size(), most_parts); ++i) {
    const Json& rating = ratings[i];
    const std::string unit = text(rating, "unit");
    averages |= text(rating, "basis") == "average";
    const std::string kind = unit == "V" ? " peak" : unit == "A" ? " rms" : "";
    table.add({cut_name(text(rating, "part")), spell(number(rating, "worst"), unit) + kind, spell(number(rating, "limit"), unit) + kind,
               spell_frequency(member(rating, "worst_at_hz")), fixed(number(rating, "margin_percent"), 1), fixed(number(rating, "margin_db"), 2)},
              flag(rating, "kept") ? Ink::plain : Ink::bad);
  }
  table.print(paper);
  if (ratings.size() > most_parts) paper.line("  and " + std::to_string(ratings.size() - most_parts) + " with more");
  if (averages) paper.line("  Volts and amps are those of the peak of the envelope, watts averages with the rig's duty.", Ink::faint);
}

void write_warnings(Paper& paper, const Json& variant) {
  const Json& warnings = list(variant, "warnings");
  if (warnings.empty()) return;
  paper.section("Warnings");
  for (std::size_t i = 0; i < std::min(warnings.size(), most_warnings); ++i) {
    paper.paragraph("  ! ", text(warnings[i], "text") + " [" + text(warnings[i], "code") + "]", Ink::bad);
  }
  if (warnings.size() > most_warnings) {
    paper.line("    and " + std::to_string(warnings.size() - most_warnings) + " more; the JSON document has them all");
  }
}

}  // namespace reports
