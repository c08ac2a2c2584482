// What was asked and what breaks: requirements, the strain on each part beside its ratings, warnings.
#include <algorithm>
#include <cmath>

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
  const std::string unit = text(rating, "unit");
  const std::string margin = spell(std::abs(number(rating, "margin_percent")) / 100.0, "share");
  const std::string decibels = spell(std::abs(number(rating, "margin_db")), "dB");
  const std::string limit = spell(number(rating, "limit"), unit);
  if (!flag(rating, "kept"))
    return "OVER " + limit + " by " + margin + " (" + decibels + ")" + at(member(rating, "worst_at_hz"));
  return (flag(rating, "near") ? "NEAR " : "ok, ") + limit + ": " + margin + " (" + decibels + ") to spare";
}

/// A part's ratings in words, those over first; and how urgent they are.
struct Rated {
  std::string words;
  int urgency = 0;  ///< 3 over, 2 near, 1 rated, 0 not rated
};

Rated rated(const Json& variant, const std::string& part) {
  Rated result;
  for (const Json& rating : member(variant, "ratings")) {
    if (text(rating, "part") != part) continue;
    const int urgency = !flag(rating, "kept") ? 3 : flag(rating, "near") ? 2 : 1;
    const std::string phrase = limit_phrase(rating);
    const bool first = urgency > result.urgency;
    result.words = result.words.empty() ? phrase : first ? phrase + "; " + result.words : result.words + "; " + phrase;
    result.urgency = std::max(result.urgency, urgency);
  }
  return result;
}

struct Strained {
  const Json* part;
  std::string kind;
  Rated rating;
};

std::vector<Strained> strained_parts(const Json& variant) {
  std::vector<Strained> all;
  for (const Json& part : member(variant, "parts"))
    all.push_back({&part, text(part, "kind"), rated(variant, text(part, "name"))});
  for (const Json& load : member(variant, "loads")) all.push_back({&load, "load", rated(variant, text(load, "name"))});
  const auto volts = [](const Strained& one) {
    const double value = number(member(*one.part, "highest"), "volts_peak");
    return std::isnan(value) ? -1.0 : value;
  };
  std::stable_sort(all.begin(), all.end(), [&](const Strained& a, const Strained& b) {
    return a.rating.urgency != b.rating.urgency ? a.rating.urgency > b.rating.urgency : volts(a) > volts(b);
  });
  return all;
}

}  // namespace

void write_requirements(Paper& paper, const Json& variant) {
  const Json& requirements = member(variant, "requirements");
  if (requirements.empty()) return;
  paper.section("What was required");
  Table table({Side::left, Side::left, Side::left, Side::left});
  table.limit(46);
  for (const Json& requirement : requirements) {
    const bool met = flag(requirement, "met");
    const std::string worst = spell(number(requirement, "worst"), text(requirement, "unit"));
    table.add(
        {met ? "met" : "NOT MET", text(requirement, "text"), "worst " + worst + at(member(requirement, "worst_at_hz")),
         "line " + std::to_string(count(requirement, "line"))},
        met ? Ink::good : Ink::bad);
  }
  table.print(paper);
}

void write_strain(Paper& paper, const Json& variant) {
  const std::vector<Strained> all = strained_parts(variant);
  if (all.empty()) return;
  paper.section("What each part must stand, the largest of the sweep");
  Table table({Side::left, Side::left, Side::right, Side::right, Side::right, Side::left});
  table.limit(52);
  table.heads({"part", "kind", "volts peak", "amps rms", "heat", "rating"});
  for (std::size_t i = 0; i < std::min(all.size(), most_parts); ++i) {
    const Json& highest = member(*all[i].part, "highest");
    table.add({cut_name(text(*all[i].part, "name")), cut_name(all[i].kind), spell(number(highest, "volts_peak"), "V"),
               spell(number(highest, "amps_rms"), "A"), spell(number(highest, "heat_w"), "W"),
               all[i].rating.urgency == 0 ? "none given" : all[i].rating.words},
              all[i].rating.urgency == 3 ? Ink::bad : Ink::plain);
  }
  table.print(paper);
  if (all.size() > most_parts) paper.line("  and " + std::to_string(all.size() - most_parts) + " parts with less");
}

void write_warnings(Paper& paper, const Json& variant) {
  const Json& warnings = member(variant, "warnings");
  if (!warnings.is_array() || warnings.empty()) return;
  paper.section("Warnings");
  for (std::size_t i = 0; i < std::min(warnings.size(), most_warnings); ++i) {
    paper.paragraph("  ! ", text(warnings[i], "text") + " [" + text(warnings[i], "code") + "]", Ink::bad);
  }
  if (warnings.size() > most_warnings) {
    paper.line("    and " + std::to_string(warnings.size() - most_warnings) + " more; the JSON document has them all");
  }
}

}  // namespace reports
