// What was asked and whether it is met, first of all; and the variants side by side.
#include <algorithm>
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

/// "met 1.11", and below it "at 7 MHz, line 38".
std::string judged(const Ref& one) {
  const bool met = one["met"].flag(), somewhere = std::isfinite(one["worst_at_hz"].number());
  return badge(met, met ? "met" : "not met") + " <b class=\"judged\">" + shown(one["worst"], one["unit"].text(), 4) +
         "</b> <small>" + (somewhere ? "at " + shown(one["worst_at_hz"], "Hz", 6) + ", " : "") + "line " +
         shown(one["line"], "count") + "</small>";
}

/// A row a requirement, each once; a column a variant. Variants that do not ask for it have none of its figures.
std::string requirements(const Ref& document) {
  const Ref variants = document["variants"];
  std::vector<Heading> headings{"Requirement"};
  std::vector<std::vector<Cell>> rows;
  std::vector<std::string> texts;
  for (std::size_t v = 0; v < variants.size(); ++v) {
    headings.push_back({variants.size() > 1 ? escape(variant_name(variants[v])) : "At its worst", static_cast<int>(v)});
    const Ref list = variants[v]["requirements"];
    for (std::size_t r = 0; r < list.size(); ++r) {
      const std::string text = list[r]["text"].text();
      std::size_t row = static_cast<std::size_t>(std::find(texts.begin(), texts.end(), text) - texts.begin());
      if (row < rows.size() && !rows[row][v + 1].html.empty()) row = rows.size();  // asked twice, in two lines
      if (row >= rows.size()) {
        row = rows.size();
        texts.push_back(text);
        rows.push_back({{escape(text), true}});
        for (std::size_t other = 0; other < variants.size(); ++other)
          rows.back().push_back({"", false, false, static_cast<int>(other)});
      }
      rows[row][v + 1].html = judged(list[r]);
    }
  }
  if (rows.empty())
    return "<p>Nothing was required: <code>require swr at desk below 1.5</code>, say, would be judged here.</p>";
  for (std::vector<Cell>& row : rows)
    for (Cell& cell : row)
      if (cell.html.empty()) cell.html = "<span class=\"none\">not asked</span>";
  return table("What was required, and where it is worst", "", headings, rows, Narrow::stacks);
}

/// Forms of tuner that the report goes on without, and why.
std::string set_aside(const Ref& document) {
  const Ref forms = document["set_aside"];
  if (forms.size() == 0) return "";
  std::string out = "<ul class=\"sentences\">";
  for (std::size_t f = 0; f < forms.size(); ++f)
    out += "<li>Set aside: <strong>" + escape(forms[f]["name"].text()) +
           "</strong>: " + escape(forms[f]["text"].text()) + "</li>";
  return out + "</ul>";
}

std::string figure_name(const Ref& figure) {
  return escape(figure["title"].text().empty() ? figure["figure"].text() : figure["title"].text());
}

std::string built_differently(const Ref& built, std::vector<Heading> headings) {
  if (built.size() == 0) return "";
  headings[0] = "Part";
  for (std::size_t h = 1; h < headings.size(); ++h) headings[h].html.erase(0, 1);
  std::vector<std::vector<Cell>> rows;
  for (std::size_t b = 0; b < built.size(); ++b) {
    rows.push_back({{escape(built[b]["name"].text() + ", " + built[b]["what"].text()), true}});
    for (std::size_t v = 0; v < built[b]["values"].size(); ++v) {
      const std::string value = built[b]["values"][v].text();
      rows.back().push_back(
          {value.empty() ? "<span class=\"none\">\u2013</span>" : escape(value), false, false, static_cast<int>(v)});
    }
  }
  return table("What is built differently", "", headings, rows, Narrow::stacks);
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
  out += "</div>" + set_aside(document);
  out += requirements(document);
  return section("verdict", "Verdict", "", out);
}

std::string section_comparison(const Ref& document) {
  const Ref compared = document["compare"];
  const Ref comparison = compared["figures"].is_list() ? compared : document["comparison"];
  const Ref figures = comparison["figures"], variants = document["variants"];
  if (figures.size() == 0) return "";
  std::vector<Heading> headings{"Figure"};
  for (std::size_t v = 0; v < variants.size(); ++v)
    headings.push_back({">" + escape(variant_name(variants[v])), static_cast<int>(v)});
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
                       false, true, static_cast<int>(v)});
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
