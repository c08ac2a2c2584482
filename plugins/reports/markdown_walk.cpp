// `walk` as Markdown: a table a way, and the sentences under it, numbered as the rows are.
#include "markdown_sections.hpp"
#include "text_sections.hpp"
#include "trade.hpp"
#include "walk_reading.hpp"

namespace reports {
namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string safe(const Json& object, const char* key) {
  return plain_markdown(text(object, key));
}

std::string ohms(const Json& impedance) {
  return impedance.is_array() ? spell_complex(number(item(impedance, 0)), number(item(impedance, 1)), 4) : "open";
}

void write_way(Markdown& page, const std::string& title, const Json& way, const std::string& who, int level) {
  page.heading(level, title);
  Rows rows;
  const std::vector<WalkRow> steps = rows_of(way);
  for (const WalkRow& row : steps) {
    const double lost = number(*row.step, "lost_w");
    rows.push_back({row.number, safe(*row.step, "name"), safe(*row.step, "what"), safe(*row.step, "rule_words"), ohms(member(*row.step, "before_ohm")),
                    ohms(member(*row.step, "added_ohm")), ohms(member(*row.step, "after_ohm")), lost == 0.0 ? "-" : spell(lost, "W")});
    // Not every rule adds an impedance, and a start has nothing before it.
    if (!row.step->contains("added_ohm")) rows.back()[5] = "";
    if (!row.step->contains("before_ohm")) rows.back()[4] = "";
  }
  page.table({"step", "part", "what", "rule", "Z before, ohm", "Z added, ohm", "Z after, ohm", "lost"}, {false, false, false, false, true, true, true, true}, rows);
  for (const WalkRow& row : steps) page.bullet(bold(row.number) + ' ' + safe(*row.step, "sentence"));
  const Json& stop = member(way, "stop");
  if (!stop.is_object()) return;
  page.paragraph("**It stops here.** " + safe(stop, "sentence"));
  if (member(stop, "solver_ohm").is_array()) page.paragraph("By the solver, " + plain_markdown(who) + " sees " + walk_ohms(member(stop, "solver_ohm")) + '.');
}

void write_both_ways(Markdown& page, const Json& variant, int level) {
  Rows rows;
  for (const Json& plane : list(variant, "planes"))
    rows.push_back({safe(plane, "name"), safe(plane, "node"), ohms(member(plane, "toward_load_ohm")), ohms(member(plane, "conjugate_ohm")),
                    fixed(number(plane, "mismatch_db"), 2)});
  if (rows.empty()) return;
  page.heading(level, "What the two sides are to each other");
  page.table({"plane", "at", "toward the load, ohm", "best would be, ohm", "mismatch, dB"}, {false, false, true, true, true}, rows);
  page.paragraph(conjugate_sentence);
}

void write_rest(Markdown& page, const Json& variant, int level) {
  if (!member(member(variant, "to_source"), "stop").is_object()) return;
  Rows rows;
  for (const Json& part : list(variant, "parts")) rows.push_back({safe(part, "name"), spell(number(part, "solver_w"), "W")});
  page.heading(level, "Where the watts go, as the solver has it");
  page.table({"part", "power"}, {false, true}, rows);
}

}  // namespace

void write_walk(Markdown& page, const Json& document) {
  const Json& design = member(document, "design");
  const std::string title = text(design, "title");
  page.heading(1, title.empty() ? "A design without a title" : plain_markdown(title));
  page.paragraph(safe(design, "file") + ", the hand calculation, by " + safe(document, "program"));
  write_set_aside(page, document);
  const Json& variants = list(member(document, "walk"), "variants");
  const int level = variants.size() > 1 ? 3 : 2;
  for (const Json& variant : variants) {
    if (variants.size() > 1)
      page.heading(2, (member(variant, "name").is_string() ? safe(variant, "name") + ", " : "") + spell_frequency(member(variant, "frequency_hz")));
    for (const std::string& sentence : walk_head(variant)) page.paragraph(plain_markdown(sentence));
    write_way(page, "From the load to the rig", member(variant, "to_source"), text(member(variant, "source"), "name"), level);
    write_way(page, "From the rig to the load", member(variant, "to_load"), text(member(variant, "load"), "name"), level);
    write_both_ways(page, variant, level);
    page.paragraph(plain_markdown(walk_power(variant)));
    write_rest(page, variant, level);
    page.heading(level, "How the solver agrees");
    page.paragraph(safe(member(variant, "agreement"), "sentence"));
  }
}

}  // namespace reports
