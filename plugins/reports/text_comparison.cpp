// Variants side by side: a row each, so that any number of them fits; the better figure of a column is starred.
#include "code_points.hpp"
#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

std::string show(const Json& figure, const Json& contest, std::size_t variant) {
  return spell(number_at(contest, "values", variant), text(figure, "unit"));
}

bool names_parts(const Json& contest) {
  const Json& parts = member(contest, "parts");
  return parts.is_array() && !parts.empty();
}

std::string star(const Json& contest, std::size_t variant) {
  const Json& better = member(contest, "better");
  return better.is_number_unsigned() && better.get<std::size_t>() == variant ? "*" : " ";
}

void write_contests(Paper& paper, const Json& comparison, const char* when, const std::string& title) {
  const Json& figures = list(comparison, "figures");
  const Json& names = list(comparison, "variants");
  std::vector<std::string> heads{title}, leads{"* ahead of the next by"};
  for (const Json& figure : figures) {
    const Json& contest = member(figure, when);
    if (names_parts(contest)) continue;  // the sentence above names the hottest part; a column has no room for it
    heads.push_back(text(figure, "title") + ' ');
    leads.push_back(member(contest, "better").is_null() ? "even "
                                                        : spell(number(contest, "lead"), text(figure, "unit")) + ' ');
  }
  std::vector<Side> sides(heads.size(), Side::right);
  sides[0] = Side::left;
  Table table(sides);
  table.limit(24);
  table.heads(heads);
  for (std::size_t i = 0; i < names.size(); ++i) {
    std::vector<std::string> cells{text(names[i])};
    for (const Json& figure : figures) {
      const Json& contest = member(figure, when);
      if (names_parts(contest)) continue;
      cells.push_back(show(figure, contest, i) + star(contest, i));
    }
    table.add(cells);
  }
  table.add(leads, Ink::faint);
  table.print(paper);
}

}  // namespace

void write_comparison(Paper& paper, const Json& document) {
  const Json& comparison = member(document, "comparison");
  if (!comparison.is_object()) return;
  paper.chapter("Side by side");
  for (const Json& sentence : list(comparison, "sentences")) paper.paragraph("  ", text(sentence));
  paper.blank();
  write_contests(paper, comparison, "worst", "each at its worst");
  paper.blank();
  write_contests(paper, comparison, "middle", "mid-sweep");
}

}  // namespace reports
