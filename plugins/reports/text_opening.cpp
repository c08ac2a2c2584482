// Head and tail of the text report: what was run and what came of it; cautions; trust.
#include "code_points.hpp"
#include "text_sections.hpp"

namespace reports {
namespace {

std::string counted(std::size_t number, const std::string& thing) {
  return std::to_string(number) + ' ' + thing + (number == 1 ? "" : "s");
}

/// "7 MHz to 7.2 MHz in 21 points".
std::string sweep_of(const Json& variant) {
  const Json& frequencies = list(variant, "frequencies_hz");
  if (frequencies.empty()) return "no frequency";
  if (frequencies.size() == 1) return "at " + spell_frequency(frequencies.front());
  return spell_frequency(frequencies.front()) + " to " + spell_frequency(frequencies.back()) + " in " +
         counted(frequencies.size(), "point");
}

void write_variant_verdict(Paper& paper, const Json& variant, bool named) {
  const Json& verdict = member(variant, "verdict");
  const bool well = list(verdict, "failures").empty();
  if (named)
    paper.paragraph("  " + text(variant, "name") + ": ", text(verdict, "sentence"), well ? Ink::good : Ink::bad);
  for (const Json& failure : list(verdict, "failures")) {
    paper.paragraph(named ? "    - " : "  - ", text(failure), Ink::bad);
  }
}

/// A variant that stands alone is named once, here; among others each has a chapter.
std::string variants_of(const Json& variants) {
  if (variants.size() > 1) return ", " + counted(variants.size(), "variant");
  const std::string name = variants.empty() ? "" : text(variants.front(), "name");
  return name.empty() ? "" : ", \"" + name + '"';
}

}  // namespace

void write_set_aside(Paper& paper, const Json& document) {
  for (const Json& one : list(document, "set_aside"))
    paper.paragraph("  set aside: ", text(one, "name") + ": " + text(one, "text"), Ink::faint);
}

std::string spell_frequency(const Json& hz) {
  return spell(number(hz), "Hz", 6);
}

std::string cut_name(const std::string& name, std::size_t columns) {
  return cut(name, columns);
}

void write_opening(Paper& paper, const Json& document) {
  const Json& design = member(document, "design");
  const Json& variants = list(document, "variants");
  const std::string title = text(design, "title");
  paper.line(title.empty() ? "A design without a title" : title, Ink::strong);
  std::string about = text(design, "file");
  about += variants_of(variants);
  if (!variants.empty()) about += ", " + sweep_of(variants.front());
  paper.paragraph("", about + ", by " + text(document, "program"), Ink::faint);
  paper.blank();
  const Json& verdict = member(document, "verdict");
  const bool well = count(verdict, "met") == count(verdict, "of") && count(verdict, "ratings_broken") == 0;
  paper.paragraph("VERDICT  ", text(verdict, "sentence"), well ? Ink::good : Ink::bad);
  for (const Json& variant : variants) write_variant_verdict(paper, variant, variants.size() > 1);
  write_set_aside(paper, document);
}

void write_cautions(Paper& paper, const Json& document) {
  const Json& cautions = list(document, "cautions");
  if (cautions.empty()) return;
  paper.chapter("Before you switch on");
  for (const Json& caution : cautions) paper.paragraph("  - ", text(caution));
}

void write_trust(Paper& paper, const Json& document) {
  const Json& variants = list(document, "variants");
  if (variants.empty()) return;
  paper.section("How far to trust the numbers");
  for (const Json& variant : variants) {
    const std::string name = variants.size() > 1 ? text(variant, "name") + ": " : "";
    paper.paragraph("  ", name + text(member(variant, "story"), "sentence"));
  }
}

}  // namespace reports
