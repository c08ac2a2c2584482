// The text of `check`: a line a design, then what broke: the figure, before and after, and what was changed, at its place in the file.
#include <algorithm>

#include "code_points.hpp"
#include "text_sections.hpp"

namespace reports {
namespace {

constexpr std::size_t most_changes = 12;

std::string place_of(const Json& change) {
  if (!member(change, "file").is_string()) return "";
  return text(change, "file") + ':' + std::to_string(count(change, "line")) + ':' + std::to_string(count(change, "column")) + ": ";
}

void write_changes(Paper& paper, const Json& design) {
  const Json& changes = list(design, "changes");
  const std::string state = text(member(design, "baseline"), "state");
  if (state == "missing") return;
  if (changes.empty()) return paper.paragraph("    ", text(design, "no_changes"));
  paper.line("    Changed since the baseline:");
  for (std::size_t i = 0; i < std::min(changes.size(), most_changes); ++i) {
    paper.paragraph("      ", place_of(changes[i]) + change_words(changes[i]), Ink::strong);
    const std::string statement = text(changes[i], "statement");
    if (member(changes[i], "file").is_string() && !statement.empty()) paper.line("        | " + statement, Ink::faint);
  }
  if (changes.size() > most_changes) paper.line("      and " + std::to_string(changes.size() - most_changes) + " more; the JSON document has them all");
}

void write_broken(Paper& paper, const Json& design) {
  paper.blank();
  paper.line(text(design, "file") + (text(design, "title").empty() ? "" : ", \"" + text(design, "title") + '"'), Ink::strong);
  for (const Json& variant : list(design, "variants")) {
    const std::string name = text(variant, "name");
    for (const Json& broken : list(variant, "broken")) {
      const std::size_t line = count(broken, "line");
      paper.paragraph("  - ", (name.empty() ? "" : name + ": ") + text(broken, "text") + (line > 0 ? " (line " + std::to_string(line) + ")" : ""), Ink::bad);
    }
  }
  write_changes(paper, design);
}

void write_better(Paper& paper, const Json& designs) {
  bool any = false;
  for (const Json& design : designs)
    for (const Json& variant : list(design, "variants"))
      for (const Json& sentence : list(variant, "better")) {
        if (!any) paper.section("Better than the baseline: --accept holds the design to it from now on");
        any = true;
        const std::string name = text(variant, "name");
        paper.paragraph("  + ", text(design, "file") + ": " + (name.empty() ? "" : name + ": ") + text(sentence), Ink::good);
      }
}

void write_missing(Paper& paper, const Json& designs) {
  std::size_t missing = 0;
  for (const Json& design : designs) missing += text(member(design, "baseline"), "state") == "missing" ? 1 : 0;
  if (missing == 0) return;
  paper.blank();
  paper.paragraph("", std::to_string(missing) + (missing == 1 ? " design has" : " designs have") +
                          " no baseline: requirements and ratings alone were checked there. --accept writes one.");
}

}  // namespace

std::string change_words(const Json& change) {
  const std::string part = text(change, "part"), what = text(change, "what");
  const Json &before = member(change, "before"), &after = member(change, "after");
  if (what == "part") return part + (before.is_null() ? " is new" : " is gone: it was `" + text(before) + '`');
  std::string words = part + ", " + what + ": ";
  if (before.is_null()) return words + text(after) + ", where nothing was said";
  if (after.is_null()) return words + "nothing is said, where it was " + text(before);
  return words + text(before) + " -> " + text(after);
}

void write_check(Paper& paper, const Json& document) {
  const Json& check = member(document, "check");
  const Json& designs = list(check, "designs");
  const bool well = count(check, "passing") == count(check, "of");
  paper.paragraph("VERDICT  ", text(check, "sentence"), well ? Ink::good : Ink::bad);
  paper.blank();
  // Beside the name where that leaves half a line, else below it: names are not cut, since a path is no use without its ends.
  const std::size_t most = paper.columns() / 2 - 11;
  std::size_t widest = 0;
  for (const Json& design : designs)
    if (const std::size_t own = width(text(design, "file")); own <= most) widest = std::max(widest, own);
  for (const Json& design : designs) {
    const Ink ink = flag(design, "passes") ? Ink::plain : Ink::bad;
    const std::string mark = flag(design, "passes") ? "  ok     " : "  BROKE  ", file = text(design, "file");
    if (width(file) > most) paper.paragraph(mark, file, ink);
    paper.paragraph(width(file) > most ? "         " : mark + pad_right(file, widest) + "  ", text(design, "sentence"), ink);
  }
  if (!well) paper.chapter("What broke");
  for (const Json& design : designs)
    if (!flag(design, "passes")) write_broken(paper, design);
  write_better(paper, designs);
  write_missing(paper, designs);
}

}  // namespace reports
