// `weigh` as Markdown: a table a figure.
#include <cmath>

#include "markdown_sections.hpp"
#include "text_sections.hpp"
#include "trade.hpp"

namespace reports {

void write_weigh(Markdown& page, const Json& document) {
  page.heading(1, text(member(document, "design"), "title"));
  write_set_aside(page, document);
  const Json& variants = list(member(document, "weigh"), "variants");
  for (const Json& variant : variants) {
    if (variants.size() > 1) page.heading(2, text(variant, "name"));
    for (const Json& figure : list(variant, "figures")) {
      const std::string unit = text(figure, "unit");
      page.heading(3, text(figure, "text"));
      page.paragraph(plain_markdown(spell(number(figure, "value"), unit, 4) + " at " + spell_frequency(member(figure, "frequency_hz")) + ". " + text(figure, "note")));
      std::vector<std::vector<std::string>> rows;
      for (const Json& value : list(figure, "values"))
        rows.push_back({plain_markdown(text(value, "name")), plain_markdown(spell(number(value, "nominal"), text(value, "unit"), 4)),
                        plain_markdown(spell(number(value, "per_percent"), unit))});
      if (!rows.empty()) page.table({"value", "is", "1 % more does"}, {false, true, true}, rows);
    }
  }
}

}  // namespace reports
