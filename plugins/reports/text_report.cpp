// The readable report: the verdict first, then each variant from the rig to the antenna, then the variants side by
// side, what to be careful of, and how far to trust it.
#include <algorithm>
#include <stdexcept>

#include "text_sections.hpp"
#include "writers.hpp"

namespace reports {
namespace {

void write_variant(Paper& paper, const Json& variant) {
  write_requirements(paper, variant);
  write_rig(paper, variant);
  write_waterfalls(paper, variant);
  write_lines(paper, variant);
  write_cores(paper, variant);
  write_common_mode(paper, variant);
  write_strain(paper, variant);
  write_ratings(paper, variant);
  write_settings(paper, variant);
  write_tuning(paper, variant);
  write_planes(paper, variant);
  write_warnings(paper, variant);
}

void write_variant_heading(Paper& paper, const Json& variant) {
  paper.chapter(text(variant, "name"));
  const Json& verdict = member(variant, "verdict");
  paper.paragraph("", text(verdict, "sentence") +
                          (flag(variant, "tuned") ? " Knobs as the tuner set them." : " Knobs as written."));
}

using Section = void (*)(Paper& paper, const Json& document);

/// The verbs whose document is no run, each by its own key.
constexpr std::pair<const char*, Section> sections[] = {
    {"check", write_check},
    {"compare", write_compare},
    {"walk", write_walk},
    {"weigh", write_weigh},
};

Section find_section(const Json& document) {
  for (const auto& [key, section] : sections)
    if (member(document, key).is_object()) return section;
  return nullptr;
}

}  // namespace

std::string write_text(const Json& document, std::size_t columns, bool color) {
  const std::size_t wide = columns == 0 ? 100 : std::clamp<std::size_t>(columns, 72, 400);
  if (const auto other = find_section(document)) {
    Paper paper(wide, color);
    other(paper, document);
    return paper.text();
  }
  const Json& variants = member(document, "variants");
  if (!variants.is_array()) throw std::runtime_error("the text report shows runs; this document has no \"variants\"");
  Paper paper(wide, color);
  write_opening(paper, document);
  for (const Json& variant : variants) {
    if (variants.size() > 1) write_variant_heading(paper, variant);
    write_variant(paper, variant);
  }
  write_comparison(paper, document);
  write_cautions(paper, document);
  write_trust(paper, document);
  return paper.text();
}

}  // namespace reports
