// The text of `compare`: which is better and why, the figures with a column each, where the watts differ, and what is built differently.
#include <cmath>

#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

constexpr std::size_t most_rows = 12;

bool is_better(const Json& contest, std::size_t column) {
  const Json& better = member(contest, "better");
  return better.is_number_unsigned() && better.get<std::size_t>() == column;
}

/// "A", "B" ...: the columns' names may be long. Beyond the alphabet their numbers.
std::string letter(std::size_t column) {
  return column < 26 ? std::string(1, static_cast<char>('A' + column)) : std::to_string(column + 1);
}

std::string lead_of(const Json& contest, const std::string& unit) {
  if (member(contest, "lead").is_null()) return "-";
  return member(contest, "better").is_null() ? "even" : spell(number(contest, "lead"), unit);
}

std::vector<Side> sides(std::size_t left, std::size_t columns) {
  std::vector<Side> all(left + columns, Side::right);
  for (std::size_t i = 0; i < left; ++i) all[i] = Side::left;
  return all;
}

std::vector<std::string> heads(std::vector<std::string> first, std::size_t columns) {
  for (std::size_t i = 0; i < columns; ++i) first.push_back(letter(i) + ' ');
  return first;
}

void write_columns(Paper& paper, const Json& compare) {
  const Json& columns = list(compare, "columns");
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const bool better = is_better(compare, i);
    paper.paragraph("  " + letter(i) + "  ", text(columns[i], "label") + ": " + std::to_string(count(columns[i], "met")) + " of " +
                                                 std::to_string(count(columns[i], "of")) + " requirements met, " +
                                                 std::to_string(count(columns[i], "ratings_broken")) + " ratings broken" + (better ? "  * the better" : ""),
                    better ? Ink::good : Ink::plain);
    for (const Json& failure : list(columns[i], "failures")) paper.paragraph("     - ", text(failure), Ink::bad);
  }
}

void write_contest_table(Paper& paper, const Json& compare, const char* when, const std::string& title) {
  const std::size_t columns = list(compare, "columns").size();
  paper.section(title);
  Table table(sides(1, columns + 1));
  std::vector<std::string> first = heads({""}, columns);
  first.push_back("ahead by");
  table.heads(first);
  for (const Json& figure : list(compare, "figures")) {
    const Json& contest = member(figure, when);
    std::vector<std::string> cells{text(figure, "title")};
    for (std::size_t i = 0; i < columns; ++i) cells.push_back(spell(number_at(contest, "values", i), text(figure, "unit")) + (is_better(contest, i) ? "*" : " "));
    cells.push_back(lead_of(contest, text(figure, "unit")));
    table.add(cells);
  }
  table.print(paper);
}

void write_required(Paper& paper, const Json& compare) {
  const Json& rows = list(compare, "required");
  if (rows.empty()) return;
  const std::size_t columns = list(compare, "columns").size();
  paper.section("What is required, each at its worst (! not met, - not required)");
  Table table(sides(1, columns + 1));
  std::vector<std::string> first = heads({""}, columns);
  first.push_back("ahead by");
  table.heads(first);
  table.limit(40);
  for (const Json& row : rows) {
    std::vector<std::string> cells{text(row, "figure")};
    for (std::size_t i = 0; i < columns; ++i) {
      const Json& met = item(member(row, "met"), i);
      const std::string mark = met.is_boolean() && !met.get<bool>() ? "!" : is_better(row, i) ? "*" : " ";
      cells.push_back((met.is_null() ? "-" : spell(number_at(row, "values", i), text(row, "unit"))) + mark);
    }
    cells.push_back(lead_of(row, text(row, "unit")));
    table.add(cells);
  }
  table.print(paper);
}

void write_losses(Paper& paper, const Json& compare) {
  const Json& rows = list(compare, "losses");
  const std::size_t columns = list(compare, "columns").size();
  if (rows.empty()) return;
  paper.section("Where the watts differ most, each at the point where it puts least on the air");
  Table table(sides(2, columns));
  table.heads(heads({"", ""}, columns));
  for (std::size_t r = 0; r < std::min(rows.size(), most_rows); ++r) {
    std::vector<std::string> cells{cut_name(text(rows[r], "name")), text(rows[r], "goes") == "returned" ? "back to the rig" : "heat"};
    for (std::size_t i = 0; i < columns; ++i) cells.push_back(spell(number_at(rows[r], "power_w", i), "W") + ' ');
    table.add(cells);
  }
  table.print(paper);
}

void write_built(Paper& paper, const Json& compare) {
  const Json& rows = list(compare, "built");
  if (rows.empty()) return;
  const std::size_t columns = list(compare, "columns").size();
  paper.section("What is built differently");
  for (std::size_t r = 0; r < std::min(rows.size(), 2 * most_rows); ++r) {
    std::string values;
    for (std::size_t i = 0; i < columns; ++i) {
      const Json& value = item(member(rows[r], "values"), i);
      values += (i == 0 ? "" : "; ") + letter(i) + ' ' + (value.is_null() ? "-" : text(value));
    }
    paper.paragraph("  ", text(rows[r], "name") + ", " + text(rows[r], "what") + ": " + values);
  }
  if (rows.size() > 2 * most_rows) paper.line("  and " + std::to_string(rows.size() - 2 * most_rows) + " more; the JSON document has them all");
}

}  // namespace

void write_compare(Paper& paper, const Json& document) {
  const Json& compare = member(document, "compare");
  paper.paragraph("VERDICT  ", text(compare, "why"), member(compare, "better").is_null() ? Ink::plain : Ink::good);
  paper.blank();
  write_columns(paper, compare);
  write_set_aside(paper, document);
  paper.blank();
  for (const Json& sentence : list(compare, "sentences")) paper.paragraph("  ", text(sentence));
  write_contest_table(paper, compare, "worst", "Each figure where it is worst (* the better)");
  write_contest_table(paper, compare, "middle", "Mid-sweep");
  write_required(paper, compare);
  write_losses(paper, compare);
  write_built(paper, compare);
  write_cautions(paper, document);
}

}  // namespace reports
