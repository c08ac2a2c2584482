// The text of `weigh`: for each figure the values that move it, the strongest first.
#include <algorithm>
#include <cmath>

#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

constexpr std::size_t most_rows = 15;
/// Beside the strongest, what moves the figure less than this is left out.
constexpr double least_share = 1e-6;

std::string bar(double share) {
  constexpr std::size_t longest = 20;
  std::string blocks;
  for (std::size_t i = 0; i < static_cast<std::size_t>(std::lround(share * longest)); ++i) blocks += "█";
  return blocks;
}

/// Plain ratios with as many decimals as it takes: an efficiency moves by thousandths.
std::string with_sign(double value, const std::string& unit) { return (value > 0.0 ? "+" : "") + (unit.empty() ? significant(value, 3) : spell(value, unit)); }

void write_values(Paper& paper, const Json& figure) {
  const Json& values = list(figure, "values");
  const std::string unit = text(figure, "unit");
  const double strongest = values.empty() ? 0.0 : std::abs(number(values[0], "per_percent"));
  Table table({Side::left, Side::right, Side::right, Side::left});
  table.heads({"value", "is", "1 % more does", ""});
  std::size_t shown = 0;
  for (const Json& value : values) {
    const double moves = number(value, "per_percent");
    if (shown == most_rows || !(std::abs(moves) > least_share * strongest)) break;
    table.add({text(value, "name"), spell(number(value, "nominal"), text(value, "unit"), 4), with_sign(moves, unit), bar(std::abs(moves) / strongest)});
    ++shown;
  }
  if (shown == 0) {
    paper.paragraph("  ", "No value moves it, to first order.");
    return;
  }
  table.print(paper);
  if (shown < values.size()) paper.paragraph("  ", std::to_string(values.size() - shown) + " more values move it less; --to csv and --to json have them all.", Ink::faint);
}

void write_figure(Paper& paper, const Json& figure) {
  const Json& requirement = member(figure, "requirement");
  paper.section(requirement.is_string() ? text(requirement) : text(figure, "text"));
  paper.paragraph("  ", text(figure, "text") + " is " + spell(number(figure, "value"), text(figure, "unit"), 4) + " at " + spell_frequency(member(figure, "frequency_hz")) +
                            (requirement.is_string() ? ", where it is nearest to its bound or farthest beyond it." : "."));
  if (const std::string note = text(figure, "note"); !note.empty()) paper.paragraph("  ! ", note, Ink::bad);
  if (!list(figure, "values").empty()) write_values(paper, figure);
}

}  // namespace

void write_weigh(Paper& paper, const Json& document) {
  const Json& variants = list(member(document, "weigh"), "variants");
  paper.line(text(member(document, "design"), "title"), Ink::strong);
  write_set_aside(paper, document);
  bool tuned = false;
  for (const Json& variant : variants) {
    if (variants.size() > 1) paper.chapter(text(variant, "name"));
    for (const Json& figure : list(variant, "figures")) write_figure(paper, figure);
    tuned |= flag(variant, "tuned");
  }
  paper.section("How to read it");
  paper.paragraph("  ", std::string("Each value is weighed alone, all others held") + (tuned ? ", knobs where the tuner left them" : "") +
                            ". The change is to first order: 2 % do twice as much only while the figure stays near where it is, and at a perfect match nothing does anything.");
}

}  // namespace reports
