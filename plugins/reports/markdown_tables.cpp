// `compare` and `check` as Markdown.
#include "markdown_sections.hpp"
#include "text_sections.hpp"
#include "trade.hpp"

namespace reports {
namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string safe(const Json& object, const char* key) {
  return plain_markdown(text(object, key));
}

bool is_better(const Json& contest, std::size_t column) {
  const Json& better = member(contest, "better");
  return better.is_number_unsigned() && better.get<std::size_t>() == column;
}

std::string lead_of(const Json& contest, const std::string& unit) {
  if (member(contest, "lead").is_null()) return "-";
  return member(contest, "better").is_null() ? "even" : spell(number(contest, "lead"), unit);
}

std::vector<std::string> with_names(const char* first, const std::vector<std::string>& columns) {
  std::vector<std::string> heads{first};
  for (const std::string& column : columns) heads.push_back(plain_markdown(column));
  return heads;
}

std::vector<bool> numbers_after(std::size_t texts, std::size_t numbers) {
  std::vector<bool> right(texts, false);
  right.insert(right.end(), numbers, true);
  return right;
}

void write_required(Markdown& page, const Json& compare, const std::vector<std::string>& columns) {
  Rows rows;
  for (const Json& row : list(compare, "required")) {
    std::vector<std::string> cells{safe(row, "figure")};
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const Json& met = item(member(row, "met"), i);
      const std::string value = spell(number_at(row, "values", i), text(row, "unit"));
      cells.push_back(met.is_null() ? "-" : (is_better(row, i) ? bold(value) : value) + (met.get<bool>() ? "" : " (not met)"));
    }
    cells.push_back(lead_of(row, text(row, "unit")));
    rows.push_back(std::move(cells));
  }
  if (rows.empty()) return;
  page.heading(2, "What is required, each at its worst");
  std::vector<std::string> heads = with_names("", columns);
  heads.emplace_back("ahead by");
  page.table(heads, numbers_after(1, columns.size() + 1), rows);
}

void write_losses(Markdown& page, const Json& compare, const std::vector<std::string>& columns) {
  Rows rows;
  for (const Json& row : list(compare, "losses")) {
    std::vector<std::string> cells{safe(row, "name") + (text(row, "goes") == "returned" ? ", back to it" : "")};
    for (std::size_t i = 0; i < columns.size(); ++i) cells.push_back(spell(number_at(row, "power_w", i), "W"));
    rows.push_back(std::move(cells));
  }
  if (rows.empty()) return;
  page.heading(2, "Where the watts go, each at the point where it puts least on the air");
  page.table(with_names("", columns), numbers_after(1, columns.size()), rows);
}

void write_built(Markdown& page, const Json& compare, const std::vector<std::string>& columns) {
  Rows rows;
  for (const Json& row : list(compare, "built")) {
    std::vector<std::string> cells{safe(row, "name") + ", " + safe(row, "what")};
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const Json& value = item(member(row, "values"), i);
      cells.push_back(value.is_null() ? "-" : plain_markdown(text(value)));
    }
    rows.push_back(std::move(cells));
  }
  if (rows.empty()) return;
  page.heading(2, "What is built differently");
  page.table(with_names("", columns), numbers_after(1 + columns.size(), 0), rows);
}

std::string baseline_of(const Json& design) {
  return text(member(design, "baseline"), "state");
}

void write_broken(Markdown& page, const Json& design) {
  page.heading(3, safe(design, "file") + (text(design, "title").empty() ? "" : ", \"" + safe(design, "title") + '"'));
  Rows rows;
  for (const Json& variant : list(design, "variants"))
    for (const Json& broken : list(variant, "broken")) {
      const std::string unit = text(broken, "unit");
      rows.push_back({safe(variant, "name"), safe(broken, "kind"), safe(broken, "figure"),
                      member(broken, "before").is_number() ? spell(number(broken, "before"), unit) : "-", bold(spell(number(broken, "after"), unit)),
                      spell(number(broken, "limit"), unit), member(broken, "at_hz").is_number() ? spell_frequency(member(broken, "at_hz")) : "-"});
    }
  page.table({"variant", "breaks", "figure", "before", "after", "limit", "at"}, {false, false, false, true, true, true, true}, rows);
  if (baseline_of(design) == "missing") return;
  if (list(design, "changes").empty()) return page.paragraph(safe(design, "no_changes"));
  page.paragraph("Changed since the baseline:");
  for (const Json& change : list(design, "changes")) {
    const std::string place = member(change, "line").is_number() ? " (" + safe(change, "file") + ", line " + std::to_string(count(change, "line")) + ")" : "";
    page.bullet(plain_markdown(change_words(change)) + place);
  }
}

}  // namespace

void write_contest_tables(Markdown& page, const Json& figures, const std::vector<std::string>& columns, int level) {
  for (const char* when : {"worst", "middle"}) {
    Rows rows;
    for (const Json& figure : figures) {
      const Json& contest = member(figure, when);
      std::vector<std::string> cells{safe(figure, "title")};
      for (std::size_t i = 0; i < columns.size(); ++i) {
        const std::string value = spell(number_at(contest, "values", i), text(figure, "unit"));
        cells.push_back(is_better(contest, i) ? bold(value) : value);
      }
      cells.push_back(lead_of(contest, text(figure, "unit")));
      rows.push_back(std::move(cells));
    }
    page.heading(level, std::string(when) == "worst" ? "Each figure where it is worst" : "Mid-sweep");
    std::vector<std::string> heads = with_names("", columns);
    heads.emplace_back("ahead by");
    page.table(heads, numbers_after(1, columns.size() + 1), rows);
  }
}

void write_compare(Markdown& page, const Json& document) {
  const Json& compare = member(document, "compare");
  std::vector<std::string> columns;
  for (const Json& column : list(compare, "columns")) columns.push_back(text(column, "label"));
  page.heading(1, "Side by side");
  page.paragraph(bold(text(compare, "why")));
  write_set_aside(page, document);
  for (const Json& sentence : list(compare, "sentences")) page.bullet(plain_markdown(text(sentence)));
  write_contest_tables(page, list(compare, "figures"), columns, 2);
  write_required(page, compare, columns);
  write_losses(page, compare, columns);
  write_built(page, compare, columns);
  write_cautions(page, document);
}

void write_check(Markdown& page, const Json& document) {
  const Json& check = member(document, "check");
  page.heading(1, "Check of the designs");
  page.paragraph(bold(text(check, "sentence")));
  Rows rows;
  for (const Json& design : list(check, "designs"))
    rows.push_back({flag(design, "passes") ? "ok" : "**broke**", safe(design, "file"), safe(design, "sentence")});
  page.table({"", "design", ""}, {false, false, false}, rows);
  bool any = false;
  for (const Json& design : list(check, "designs")) {
    if (flag(design, "passes")) continue;
    if (!any) page.heading(2, "What broke");
    any = true;
    write_broken(page, design);
  }
  any = false;
  for (const Json& design : list(check, "designs"))
    for (const Json& variant : list(design, "variants"))
      for (const Json& sentence : list(variant, "better")) {
        if (!any) page.heading(2, "Better than the baseline");
        any = true;
        page.bullet(safe(design, "file") + ": " + (text(variant, "name").empty() ? "" : safe(variant, "name") + ": ") + plain_markdown(text(sentence)));
      }
}

}  // namespace reports
