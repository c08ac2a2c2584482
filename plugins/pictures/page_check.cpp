// A check as a page: a line a design, then for each that broke what broke and what was changed, and every figure beside
// what it was.
#include <algorithm>
#include <cmath>

#include "markup.hpp"
#include "page_sections.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

using Rows = std::vector<std::vector<Cell>>;

std::string count_of(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + ' ' + (count == 1 ? one : many);
}

std::string name_of(const Ref& design) {
  const std::string title = design["title"].text();
  return escape(design["file"].text()) + (title.empty() ? "" : " <small>" + escape(title) + "</small>");
}

std::string lines_of(const Ref& designs) {
  Rows rows;
  for (std::size_t d = 0; d < designs.size(); ++d) {
    const bool passes = designs[d]["passes"].flag();
    rows.push_back({{badge(passes, passes ? "passes" : "broke")},
                    {"<a href=\"#design-" + std::to_string(d) + "\">" + name_of(designs[d]) + "</a>", true},
                    {escape(designs[d]["sentence"].text())}});
  }
  return table("Every design", "", {"Verdict", "Design", "What was found"}, rows, Narrow::stacks);
}

/// "before" and "after" of a change: a dash where there is none.
std::string fact(const Ref& value) {
  return value.json().is_string() ? escape(value.text()) : "<span class=\"none\">\u2013</span>";
}

std::string changes_of(const Ref& design) {
  const Ref changes = design["changes"];
  if (design["baseline"]["state"].text() == "missing") return "";
  if (changes.size() == 0) return "<p>" + escape(design["no_changes"].text()) + "</p>";
  Rows rows;
  for (std::size_t c = 0; c < changes.size(); ++c) {
    const Ref one = changes[c];
    const bool there = one["file"].json().is_string(), whole = one["what"].text() == "part";
    const std::string what = !whole ? one["what"].text() : one["before"].json().is_null() ? "is new" : "is gone";
    rows.push_back(
        {{escape(one["part"].text()), true},
         {escape(what)},
         {fact(one["before"])},
         {fact(one["after"])},
         {there ? "line " + shown(one["line"], "count") + "<br><code>" + escape(one["statement"].text()) + "</code>"
                : ""}});
  }
  return table("Changed since the baseline", design["file"].text(), {"Part", "What", "Was", "Is", "Where"}, rows,
               Narrow::stacks);
}

std::string breaks_of(const Ref& design) {
  std::string out;
  for (std::size_t v = 0; v < design["variants"].size(); ++v) {
    const Ref variant = design["variants"][v], broken = variant["broken"];
    const std::string name = variant["name"].text();
    for (std::size_t b = 0; b < broken.size(); ++b) {
      out +=
          "<li>" + (name.empty() ? "" : "<strong>" + escape(name) + ":</strong> ") + pretty(broken[b]["text"].text());
      if (broken[b]["line"].json().is_number()) out += " <small>line " + shown(broken[b]["line"], "count") + "</small>";
      out += "</li>";
    }
  }
  return out.empty() ? "" : "<ul class=\"sentences\">" + out + "</ul>";
}

std::string better_of(const Ref& design) {
  std::string out;
  for (std::size_t v = 0; v < design["variants"].size(); ++v) {
    const Ref better = design["variants"][v]["better"];
    for (std::size_t b = 0; b < better.size(); ++b) out += "<li>" + pretty(better[b].text()) + "</li>";
  }
  return out.empty() ? ""
                     : "<p>Better than the baseline; <code>--accept</code> holds the design to it from now on:</p><ul "
                       "class=\"sentences\">" +
                           out + "</ul>";
}

std::string state_of(const Ref& figure) {
  const std::string state = figure["state"].text();
  if (state == "worse" || state == "gone") return badge(false, state);
  return state == "better" ? badge(true, state) : escape(state);
}

std::string figures_of(const Ref& variant, const std::string& file) {
  const Ref figures = variant["figures"];
  Rows rows;
  for (std::size_t f = 0; f < figures.size(); ++f) {
    const Ref one = figures[f];
    const std::string unit = one["unit"].text();
    rows.push_back({{escape(one["figure"].text()), true},
                    {shown(one["before"], unit, 4), false, true},
                    {shown(one["after"], unit, 4), false, true},
                    {std::abs(one["change"].number()) < 5e-6 ? "" : shown(one["change"], "share"), false, true},
                    {shown(one["tolerance"], "share"), false, true},
                    {shown(one["at_hz"], "Hz", 6), false, true},
                    {state_of(one)}});
  }
  const std::string name = variant["name"].text();
  return rows.empty() ? ""
                      : table(name.empty() ? "Figures beside what they were" : name, file,
                              {"Figure", ">Was", ">Is", ">Change", ">Held to", ">At", "State"}, rows, Narrow::stacks);
}

std::string design_of(const Ref& design, std::size_t d) {
  const bool passes = design["passes"].flag();
  std::string figures;
  for (std::size_t v = 0; v < design["variants"].size(); ++v)
    figures += figures_of(design["variants"][v], design["file"].text());
  return "<div id=\"design-" + std::to_string(d) + "\"><h3>" + badge(passes, passes ? "passes" : "broke") + "<span>" +
         name_of(design) + "</span></h3>" + breaks_of(design) +
         (passes && design["changes"].size() == 0 ? "" : changes_of(design)) + better_of(design) +
         (passes ? details("Figures", figures) : figures) + "</div>\n";
}

}  // namespace

std::string section_check(const Ref& document) {
  const Ref check = document["check"], designs = check["designs"];
  if (!designs.is_list()) return "";
  const bool good = check["passing"].count() == check["of"].count();
  std::size_t missing = 0;
  for (std::size_t d = 0; d < designs.size(); ++d)
    missing += designs[d]["baseline"]["state"].text() == "missing" ? 1 : 0;
  std::string out = "<p class=\"overall " + std::string(good ? "good" : "bad") + "\">" +
                    badge(good, good ? "All is well" : "Look here") + " <span>" + escape(check["sentence"].text()) +
                    "</span></p>" + lines_of(designs);
  if (missing > 0)
    out += "<p class=\"note\">" + count_of(missing, "design has", "designs have") +
           " no baseline: requirements and ratings alone were checked there. <code>--accept</code> writes one.</p>";
  return section("check", "Verdict", "", out);
}

std::string section_checked_designs(const Ref& document) {
  const Ref designs = document["check"]["designs"];
  std::string broken, kept;
  for (std::size_t d = 0; d < designs.size(); ++d)
    (designs[d]["passes"].flag() ? kept : broken) += design_of(designs[d], d);
  return section("designs", "Design by design", broken.empty() ? "" : "What broke stands first.", broken + kept);
}

}  // namespace pictures
