// What was asked and whether it is met, first of all; and the variants side by side.
#include <cmath>

#include "markup.hpp"
#include "page_sections.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

/// Big figures of a variant at its worst point: what gets on the air, what the rig sees, what is lost.
std::string headline(const Ref& document, std::size_t v) {
  const Ref variant = document["variants"][v];
  const std::size_t worst = variant["moments"]["worst"].count();
  const Ref totals = variant["totals"];
  const auto item = [](const std::string& name, const std::string& value, const std::string& note) {
    return "<div><dt>" + name + "</dt><dd><b>" + value + "</b> <span>" + note + "</span></dd></div>";
  };
  const std::string at = "at " + shown(variant["frequencies_hz"][worst], "Hz", 6);
  return "<article class=\"card\"" + variant_mark(v) + ">" + variant_heading(document, v) + "<p class=\"verdict\">" +
         escape(variant["verdict"]["sentence"].text()) + "</p><dl class=\"headline\">" +
         item("On the air, at least", shown(totals["radiated_w"][worst], "W"),
              "of " + shown(totals["available_w"][worst], "W") + " " + at) +
         item("Lost on the way", shown(totals["total_loss_db"][worst], "dB"),
              "efficiency " + shown(totals["efficiency"][worst], "share")) +
         item("The rig sees there", "SWR " + shown(variant["sources"][std::size_t{0}]["swr"][worst], ""),
              shown_complex(variant["sources"][std::size_t{0}]["load_impedance_ohm"][worst])) +
         "</dl></article>\n";
}

std::string requirements(const Ref& document, std::size_t v) {
  const Ref list = document["variants"][v]["requirements"];
  if (list.size() == 0) return "";
  std::vector<std::vector<Cell>> rows;
  for (std::size_t r = 0; r < list.size(); ++r) {
    const Ref one = list[r];
    const std::string unit = one["unit"].text();
    const bool somewhere = std::isfinite(one["worst_at_hz"].number());
    rows.push_back({{badge(one["met"].flag(), one["met"].flag() ? "met" : "not met")},
                    {escape(one["text"].text()), true},
                    {shown(one["worst"], unit, 4), false, true},
                    {somewhere ? shown(one["worst_at_hz"], "Hz", 6) : "", false, true},
                    {shown(one["line"], "count"), false, true}});
  }
  const std::string name = variant_name(document["variants"][v]);
  return "<div" + variant_mark(v) + ">" + variant_heading(document, v) +
         table("What was required", name, {"Met", "Requirement", ">Worst", ">at", ">Line"}, rows) + "</div>";
}

std::string figure_name(const Ref& figure) {
  return escape(figure["title"].text().empty() ? figure["figure"].text() : figure["title"].text());
}

std::string built_differently(const Ref& built, std::vector<std::string> headings) {
  if (built.size() == 0) return "";
  headings[0] = "Part";
  for (std::size_t h = 1; h < headings.size(); ++h) headings[h].erase(0, 1);
  std::vector<std::vector<Cell>> rows;
  for (std::size_t b = 0; b < built.size(); ++b) {
    rows.push_back({{escape(built[b]["name"].text() + ", " + built[b]["what"].text()), true}});
    for (std::size_t v = 0; v < built[b]["values"].size(); ++v)
      rows.back().push_back({escape(built[b]["values"][v].text())});
  }
  return table("What is built differently", "", headings, rows);
}

}  // namespace

std::string section_verdict(const Ref& document) {
  if (!document["verdict"].json().is_object()) return "";  // a walk judges nothing
  const std::size_t variants = document["variants"].size();
  const Ref verdict = document["verdict"];
  const double met = verdict["met"].number(), of = verdict["of"].number();
  const bool good = met == of && verdict["ratings_broken"].number() == 0.0;
  std::string out = "<p class=\"overall " + std::string(good ? "good" : "bad") + "\">" +
                    badge(good, good ? "All is well" : "Look here") + " <span>" + escape(verdict["sentence"].text()) +
                    "</span></p><div class=\"cards\">";
  for (std::size_t v = 0; v < variants; ++v) out += headline(document, v);
  out += "</div>";
  for (std::size_t v = 0; v < variants; ++v) out += requirements(document, v);
  return section("verdict", "Verdict", "", out);
}

std::string section_comparison(const Ref& document) {
  const Ref compared = document["compare"];
  const Ref comparison = compared["figures"].is_list() ? compared : document["comparison"];
  const Ref figures = comparison["figures"], variants = document["variants"];
  if (figures.size() == 0) return "";
  std::vector<std::string> headings{"Figure"};
  for (std::size_t v = 0; v < variants.size(); ++v) headings.push_back(">" + escape(variant_name(variants[v])));
  const std::string why = compared["why"].text();
  std::string out = why.empty() ? "" : "<p><strong>" + escape(why) + "</strong></p>";
  for (const char* moment : {"worst", "middle"}) {
    std::vector<std::vector<Cell>> rows;
    for (std::size_t f = 0; f < figures.size(); ++f) {
      const Ref of = figures[f][moment];
      std::vector<Cell> row{{figure_name(figures[f]), true}};
      for (std::size_t v = 0; v < of["values"].size(); ++v) {
        const bool better = of["better"].json().is_number() && of["better"].count() == v;
        const std::string part = of["parts"][v].text();
        row.push_back({(better ? "<strong class=\"better\"><span aria-hidden=\"true\">\u25b2</span> " : "<span>") +
                           shown(of["values"][v], figures[f]["unit"].text(), 4) +
                           (better ? "<span class=\"sr\"> (better)</span></strong>" : "</span>") +
                           (part.empty() ? "" : " <small>" + escape(part) + "</small>"),
                       false, true});
      }
      rows.push_back(std::move(row));
    }
    out += table(std::string(moment) == "worst" ? "Each variant where that figure is worst" : "Mid-sweep", "", headings,
                 rows);
  }
  const Ref sentences = comparison["sentences"];
  out += "<ul class=\"sentences\">";
  for (std::size_t s = 0; s < sentences.size(); ++s) out += "<li>" + escape(sentences[s].text()) + "</li>";
  out += "</ul>" + built_differently(compared["built"], headings);
  return section("side-by-side", "Side by side", "\u25b2 marks the better figure of a row.", out);
}

}  // namespace pictures
