// What moves a figure, on a page: for each figure the values, the strongest first, with a bar to the side to which one
// per cent more of it moves the figure.
#include <algorithm>
#include <cmath>

#include "markup.hpp"
#include "page_sections.hpp"

namespace pictures {
namespace {

using Rows = std::vector<std::vector<Cell>>;

constexpr std::size_t rows_at_once = 12;
/// Beside the strongest, what moves the figure less than this is folded away.
constexpr double least_share = 1e-2;

/// Left of the middle for less, right for more; the longest reaches the edge.
std::string bar(double share) {
  const double wide = 49.0 * std::abs(share);
  return "<svg class=\"bar\" viewBox=\"0 0 100 12\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect "
         "class=\"room\" width=\"100\" height=\"12\"/><rect class=\"" +
         std::string(share < 0.0 ? "less" : "used") + "\" x=\"" + coordinate(share < 0.0 ? 50.0 - wide : 50.0) +
         "\" width=\"" + coordinate(wide) + "\" height=\"12\"/><path class=\"limit\" d=\"M50 0V12\"/></svg>";
}

/// Small changes need their digits, where a figure by itself has two decimals.
std::string change(const Ref& moves, const std::string& unit) {
  const std::string sign = moves.number() > 0.0 ? "+" : "";
  if (unit.empty()) return sign + shown(moves, "count", 2);
  return unit == "dB" ? sign + shown(moves, "count", 2) + " dB" : sign + shown(moves, unit);
}

std::vector<Cell> row_of(const Ref& value, const std::string& unit, double strongest) {
  const double moves = value["per_percent"].number();
  return {{escape(value["name"].text()), true},
          {shown(value["nominal"], value["unit"].text(), 4), false, true},
          {change(value["per_percent"], unit), false, true},
          {bar(strongest > 0.0 ? moves / strongest : 0.0)},
          {shown(value["line"], "count"), false, true}};
}

std::string figure_of(const Ref& figure, const std::string& variant) {
  const Ref values = figure["values"];
  const std::string unit = figure["unit"].text(), text = figure["text"].text(), required = figure["requirement"].text();
  const double strongest = values.size() == 0 ? 0.0 : std::abs(values[std::size_t{0}]["per_percent"].number());
  Rows first, rest;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const bool strong = i < rows_at_once && std::abs(values[i]["per_percent"].number()) > least_share * strongest;
    (strong && rest.empty() ? first : rest).push_back(row_of(values[i], unit, strongest));
  }
  const std::vector<Heading> headings{"Value", ">Is", ">1 % more does", "Less or more", ">Line"};
  const std::string level = variant.empty() ? "h3" : "h4";
  std::string out = "<" + level + ">" + escape(required.empty() ? text : required) + "</" + level + "><p>" +
                    escape(text) + " is <strong>" + shown(figure["value"], unit, 4) + "</strong> at " +
                    shown(figure["frequency_hz"], "Hz", 6) +
                    (required.empty() ? "." : ", where it is nearest to its bound or farthest beyond it.") + "</p>";
  if (const std::string note = figure["note"].text(); !note.empty())
    out += "<p><strong>" + escape(note) + "</strong></p>";
  if (!first.empty()) out += table("What moves " + text, variant, headings, first, Narrow::stacks);
  if (first.empty() && values.size() > 0) out += "<p>No value moves it, to first order.</p>";
  if (!rest.empty())
    out += details(std::to_string(rest.size()) + " more that move it less",
                   table("What moves " + text + " less", variant, headings, rest, Narrow::stacks));
  return out;
}

}  // namespace

std::string section_weigh(const Ref& document) {
  const Ref variants = document["weigh"]["variants"];
  std::string out;
  for (std::size_t v = 0; v < variants.size(); ++v) {
    const std::string name = variants[v]["name"].text();
    out += "<div>" + (name.empty() ? std::string() : "<h3>" + escape(name) + "</h3>");
    for (std::size_t f = 0; f < variants[v]["figures"].size(); ++f) out += figure_of(variants[v]["figures"][f], name);
    out += "</div>\n";
  }
  return section("weigh", "What moves a figure",
                 "Each value is weighed alone, all others held, knobs where they stand. The change is to first order: "
                 "2 % do twice as much only while the "
                 "figure stays near where it is, and at a perfect match nothing does anything.",
                 out);
}

}  // namespace pictures
