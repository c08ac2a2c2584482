// The report of a run for a wiki, a merge request or a logbook: the same sections and points as the text, as Markdown.
#include <stdexcept>

#include "markdown.hpp"
#include "markdown_sections.hpp"
#include "text_sections.hpp"
#include "trade.hpp"
#include "tuning_reading.hpp"
#include "writers.hpp"

namespace reports {
namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string safe(const Json& object, const char* key) {
  return plain_markdown(text(object, key));
}

std::string at(const Json& hz) {
  return hz.is_number() ? " at " + spell_frequency(hz) : "";
}

std::string about(const Json& document) {
  const Json& variants = list(document, "variants");
  const std::string name = variants.size() == 1 ? text(variants.front(), "name") : "";
  return safe(member(document, "design"), "file") + (name.empty() ? "" : ", \"" + plain_markdown(name) + '"') +
         ", by " + safe(document, "program");
}

void write_head(Markdown& page, const Json& document) {
  const Json& design = member(document, "design");
  const std::string title = text(design, "title");
  page.heading(1, title.empty() ? "A design without a title" : plain_markdown(title));
  page.paragraph(about(document));
  page.paragraph(bold(text(member(document, "verdict"), "sentence")));
  write_set_aside(page, document);
}

void write_failures(Markdown& page, const Json& variant) {
  for (const Json& failure : list(member(variant, "verdict"), "failures")) page.bullet(plain_markdown(text(failure)));
}

void write_requirements_table(Markdown& page, const Json& variant, int level) {
  Rows rows;
  for (const Json& one : list(variant, "requirements")) {
    const bool met = flag(one, "met");
    rows.push_back({met ? "met" : "**not met**", safe(one, "text"), spell(number(one, "worst"), text(one, "unit")) + at(member(one, "worst_at_hz")),
                    std::to_string(count(one, "line"))});
  }
  if (rows.empty()) return;
  page.heading(level, "What was required");
  page.table({"", "requirement", "worst", "line"}, {false, false, true, true}, rows);
}

void write_rig_table(Markdown& page, const Json& variant, int level) {
  const Json& source = item(member(variant, "sources"), 0);
  const Json& totals = member(variant, "totals");
  const std::vector<std::size_t> points = shown_points(variant);
  if (points.empty()) return;
  const Scale scale = frequency_scale_of(variant);
  Rows rows;
  for (const std::size_t point : points) {
    const Json& z = item(member(source, "load_impedance_ohm"), point);
    const std::string mark = mark_of(variant, point);
    rows.push_back({scale.show(number(item(member(variant, "frequencies_hz"), point))), plain_markdown(spell_complex(number(item(z, 0)), number(item(z, 1)))),
                    spell(number_at(source, "swr", point), ""), spell(number_at(totals, "radiated_w", point), "W"),
                    spell(number_at(totals, "total_loss_db", point), "dB"), mark});
  }
  page.heading(level, "What the rig sees");
  page.table({scale.unit, "R + jX, ohm", "SWR", "on the air", "lost", ""}, {true, true, true, true, true, false}, rows);
}

void write_books(Markdown& page, const Json& variant, int level) {
  for (const Json& fall : list(variant, "waterfalls")) {
    Rows rows;
    for (const Json& row : list(fall, "rows")) {
      const std::string goes = text(row, "goes");
      const std::string where = goes == "radiated" ? "on the air" : goes == "returned" ? "back to the rig" : goes == "load_heat" ? "heat of the load" : text(row, "kind");
      rows.push_back({safe(row, "name"), plain_markdown(where), spell(number(row, "power_w"), "W"), spell(number(row, "share"), "share")});
    }
    page.heading(level, "Where the " + spell(number(fall, "available_w"), "W") + " go " + safe(fall, "title"));
    page.table({"part", "", "power", "share"}, {false, false, true, true}, rows);
  }
}

void write_strain_table(Markdown& page, const Json& variant, int level) {
  Rows rows;
  for (const Json& one : list(variant, "ratings")) {
    const std::string unit = text(one, "unit");
    const std::string state = !flag(one, "kept") ? "**over**" : flag(one, "near") ? "near" : "kept";
    rows.push_back({safe(one, "part"), unit == "V" ? "V peak" : unit == "A" ? "A rms" : "W of heat", spell(number(one, "worst"), unit),
                    spell(number(one, "limit"), unit), spell(number(one, "margin_percent") / 100.0, "share"), state});
  }
  if (rows.empty()) return;
  page.heading(level, "Ratings");
  page.table({"part", "of", "worst", "limit", "margin", ""}, {false, false, true, true, true, false}, rows);
}

void write_knobs(Markdown& page, const Json& variant, int level) {
  const Json& settings = list(variant, "settings");
  if (settings.empty()) return;
  const Scale scale = frequency_scale_of(variant);
  std::vector<std::string> heads{scale.unit};
  std::vector<bool> right{true};
  for (const Json& setting : settings) {
    heads.push_back(safe(setting, "knob"));
    right.push_back(true);
  }
  const Json& dial = member(variant, "dial");
  if (dial.is_object())
    for (const char* head : {"SWR", "on the air", "most volts, peak"}) {
      heads.emplace_back(head);
      right.push_back(true);
    }
  Rows rows;
  std::vector<std::string> before;
  for (const std::size_t point : shown_points(variant)) {
    std::vector<std::string> cells;
    for (const Json& setting : settings) {
      if (setting.contains("choice")) {
        cells.push_back(plain_markdown(text(item(member(setting, "choice_nodes"), static_cast<std::size_t>(number_at(setting, "choice", point))))));
        continue;
      }
      const std::string key = key_with_prefix(setting, "value");
      const double value = number_at(setting, key.c_str(), point);
      cells.push_back(unit_of_key(key).empty() ? significant(value, 4) : spell(value, unit_of_key(key), 4));
    }
    // Knobs that stay are told once, where their outcome does not stand beside them.
    if (cells == before && !dial.is_object()) continue;
    before = cells;
    if (dial.is_object()) {
      const std::string part = text(item(member(dial, "volts_part"), point));
      cells.push_back(spell(number_at(dial, "swr", point), ""));
      cells.push_back(spell(number_at(dial, "radiated_w", point), "W"));
      cells.push_back(spell(number_at(dial, "volts_peak", point), "V") +
                      (part.empty() ? "" : " on " + plain_markdown(part)));
    }
    cells.insert(cells.begin(), (rows.empty() && !dial.is_object() ? "from " : "") +
                                    scale.show(number(item(member(variant, "frequencies_hz"), point))));
    rows.push_back(std::move(cells));
  }
  page.heading(level, "How to set the knobs");
  page.table(heads, right, rows);
  Rows made;
  for (const Json& setting : settings)
    for (std::vector<std::string>& row :
         made_rows(safe(setting, "knob"), list(setting, "made"), unit_of_key(key_with_prefix(setting, "value"))))
      made.push_back(std::move(row));
  write_made_table(page, made);
}

void write_planes_table(Markdown& page, const Json& variant, int level) {
  Rows rows;
  const std::size_t point = count(member(variant, "moments"), "worst");
  for (const Json& plane : list(variant, "planes")) {
    const Json &load = item(member(plane, "toward_load_ohm"), point), &source = item(member(plane, "toward_source_ohm"), point);
    rows.push_back({safe(plane, "name"), plain_markdown(spell_complex(number(item(load, 0)), number(item(load, 1)))),
                    plain_markdown(spell_complex(number(item(source, 0)), number(item(source, 1)))), spell(number_at(plane, "mismatch_db", point), "dB"),
                    spell(number_at(plane, "swr", point), "")});
  }
  if (rows.empty()) return;
  page.heading(level, "Both ways from a plane" + at(item(member(variant, "frequencies_hz"), point)));
  page.table({"plane", "toward the load, ohm", "toward the rig, ohm", "mismatch", "SWR"}, {false, true, true, true, true}, rows);
}

void write_warnings_list(Markdown& page, const Json& variant, int level) {
  if (list(variant, "warnings").empty()) return;
  page.heading(level, "Warnings");
  for (const Json& warning : list(variant, "warnings")) page.bullet(plain_markdown(text(warning, "text")) + " (" + safe(warning, "code") + ")");
}

void write_variant(Markdown& page, const Json& variant, int level) {
  write_requirements_table(page, variant, level);
  write_rig_table(page, variant, level);
  write_books(page, variant, level);
  write_strain_table(page, variant, level);
  write_knobs(page, variant, level);
  write_tuning(page, variant, level);
  write_planes_table(page, variant, level);
  write_warnings_list(page, variant, level);
}

void write_side_by_side(Markdown& page, const Json& document) {
  const Json& comparison = member(document, "comparison");
  if (!comparison.is_object()) return;
  page.heading(2, "Side by side");
  for (const Json& sentence : list(comparison, "sentences")) page.bullet(plain_markdown(text(sentence)));
  std::vector<std::string> names;
  for (const Json& name : list(comparison, "variants")) names.push_back(text(name));
  write_contest_tables(page, list(comparison, "figures"), names, 3);
}

}  // namespace

void write_set_aside(Markdown& page, const Json& document) {
  for (const Json& one : list(document, "set_aside"))
    page.bullet("set aside: " + safe(one, "name") + ": " + safe(one, "text"));
}

void write_cautions(Markdown& page, const Json& document) {
  if (list(document, "cautions").empty()) return;
  page.heading(2, "Before you switch on");
  for (const Json& caution : list(document, "cautions")) page.bullet(plain_markdown(text(caution)));
}

std::string write_markdown(const Json& document) {
  Markdown page;
  if (member(document, "check").is_object()) {
    write_check(page, document);
    return page.text();
  }
  if (member(document, "compare").is_object()) {
    write_compare(page, document);
    return page.text();
  }
  if (member(document, "walk").is_object()) {
    write_walk(page, document);
    return page.text();
  }
  if (member(document, "weigh").is_object()) {
    write_weigh(page, document);
    return page.text();
  }
  const Json& variants = member(document, "variants");
  if (!variants.is_array()) throw std::runtime_error("markdown shows runs, comparisons, checks, walks and what was weighed; this document is none");
  write_head(page, document);
  const bool several = variants.size() > 1;
  for (const Json& variant : variants) {
    if (several) {
      page.heading(2, safe(variant, "name"));
      page.paragraph(safe(member(variant, "verdict"), "sentence"));
    }
    write_failures(page, variant);
    write_variant(page, variant, several ? 3 : 2);
  }
  write_side_by_side(page, document);
  write_cautions(page, document);
  return page.text();
}

}  // namespace reports
