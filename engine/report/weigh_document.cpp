#include "report/weigh_document.hpp"

#include <cmath>

#include "document_envelope.hpp"
#include "json_text.hpp"
#include "judge/figures.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;

/// Why a figure has no weights, or why they should not be trusted; empty where all is well.
std::string note_on(const WeighedFigure& weighed) {
  if (weighed.figure->kind == design::FigureKind::width_of_swr_at) return "A width is a figure of a whole sweep, not of one frequency, and is not weighed.";
  if (!std::isfinite(weighed.weighing.figure)) return "The figure does not exist at this frequency, so nothing moves it.";
  if (!weighed.weighing.trusted) return "The network is so close to undetermined here that these numbers cannot be trusted.";
  return "";
}

void write_weight(JsonText& out, const weigh::Weight& weight) {
  out.open('{', Layout::one_line);
  out.field("name", weight.name);
  out.field("unit", weight.unit);
  out.field("nominal", weight.nominal);
  out.field("per_unit", weight.per_unit);
  out.field("per_percent", weight.per_percent);
  out.key("line");
  weight.span.source != nullptr ? out.value(weight.span.source->position(weight.span.begin).line) : out.null();
  out.close();
}

void write_figure(JsonText& out, const WeighedFigure& weighed) {
  out.open('{');
  out.field("text", weighed.figure->text);
  out.field("unit", judge::unit_of(weighed.figure->kind));
  out.key("requirement");
  weighed.requirement != nullptr ? out.value(weighed.requirement->text) : out.null();
  out.field("frequency_hz", weighed.frequency_hz);
  out.field("value", weighed.weighing.figure);
  out.field("note", note_on(weighed));
  out.key("values");
  out.open('[');
  for (const weigh::Weight& weight : weighed.weighing.weights) write_weight(out, weight);
  out.close();
  out.close();
}

void write_weighed(JsonText& out, const WeighResult& result) {
  out.open('{');
  out.key("name");
  result.variant->design->variant ? out.value(*result.variant->design->variant) : out.null();
  out.field("tuned", result.variant->tuned);
  out.key("figures");
  out.open('[');
  for (const WeighedFigure& figure : result.figures) write_figure(out, figure);
  out.close();
  out.close();
}

}  // namespace

std::string make_weigh_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                                const std::vector<WeighResult>& weighed, const SetAsides& set_aside) {
  JsonText out;
  out.open('{');
  write_envelope(out, "weigh", registry, variants, set_aside);
  out.key("weigh");
  out.open('{');
  out.key("variants");
  out.open('[');
  for (const WeighResult& result : weighed) write_weighed(out, result);
  out.close();
  out.close();
  out.close();
  return out.take();
}

}  // namespace wattfall::report
