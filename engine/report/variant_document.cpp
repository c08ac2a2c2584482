// The contract's keys in the contract's order, then those that were added: boxes, ratings, the points worth dwelling
// on, the books there, the verdict and the story. Each function writes one key's value.
#include "variant_document.hpp"

#include "books_document.hpp"
#include "report/moments.hpp"
#include "report/spelling.hpp"
#include "report/verdict.hpp"
#include "tuning_document.hpp"
#include "waterfall.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;

void write_warnings(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const judge::Warning& warning : variant.judgement.warnings) {
    out.open('{', Layout::one_line);
    out.field("code", warning.code);
    out.field("text", warning.text);
    out.field("part", warning.part);
    out.key("frequency_hz");
    warning.frequency_hz ? out.value(*warning.frequency_hz) : out.null();
    out.close();
  }
  out.close();
}

void write_requirements(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const judge::Verdict& verdict : variant.judgement.verdicts) {
    const design::Requirement& requirement = *verdict.requirement;
    out.open('{');
    out.field("text", requirement.text);
    out.field("figure", requirement.figure.text);
    out.field("bound", requirement.below ? "below" : "above");
    out.field("value", requirement.value);
    out.field("met", verdict.met);
    out.field("worst", verdict.worst);
    out.field("worst_at_hz", verdict.worst_at_hz);
    out.field("line", requirement.span.line());
    out.field("kind", name_of(requirement.figure.kind));
    out.field("unit", unit_of(requirement.figure.kind));
    out.close();
  }
  out.close();
}

void write_ratings(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const judge::Rating& rating : variant.judgement.ratings) {
    out.open('{', Layout::one_line);
    out.field("part", variant.design->parts[rating.part.index].name);
    out.field("unit", rating.unit_name());
    out.field("limit", rating.limit);
    out.field("worst", rating.worst);
    out.field("worst_at_hz", rating.worst_at_hz);
    out.field("kept", rating.kept());
    out.field("near", rating.worst >= near_share * rating.limit);
    out.field("margin_percent", 100.0 * margin_share(rating));
    out.field("margin_db", margin_db(rating));
    out.field("basis", rating.of_heat() ? "average" : "peak_envelope");
    out.close();
  }
  out.close();
}

void write_moments(JsonText& out, const VariantResult& variant) {
  const Moments moments = find_moments(*variant.ledger);
  out.open('{');
  out.field("worst", moments.worst);
  out.field("best", moments.best);
  out.field("middle", moments.middle);
  out.field("shown", moments.shown);
  out.close();
}

void write_row(JsonText& out, const Row& row) {
  out.open('{', Layout::one_line);
  out.field("name", row.name);
  out.field("kind", row.kind);
  out.field("goes", row.goes);
  out.field("power_w", row.power_w);
  out.field("share", row.share);
  out.field("alone_db", row.alone_db);
  out.close();
}

void write_waterfalls(JsonText& out, const VariantResult& variant) {
  const ledger::Totals& totals = variant.ledger->totals;
  out.open('[');
  for (const Waterfall& fall : find_waterfalls(variant)) {
    out.open('{');
    out.field("title", fall.title);
    out.field("point", fall.index);
    out.field("frequency_hz", variant.ledger->frequencies_hz[fall.index]);
    out.field("available_w", totals.available_w[fall.index]);
    out.field("sum_w", fall.sum_w);
    out.field("residual_w", totals.residual_w[fall.index]);
    out.field("total_loss_db", totals.total_loss_db[fall.index]);
    out.key("rows");
    out.open('[');
    for (const Row& row : fall.rows) write_row(out, row);
    out.close();
    out.close();
  }
  out.close();
}

void write_verdict(JsonText& out, const VariantResult& variant) {
  const Summary summary = summarize(variant);
  out.open('{');
  out.field("met", summary.met);
  out.field("of", summary.of);
  out.field("ratings_broken", summary.ratings_broken);
  out.field("sentence", summary.sentence);
  out.sentences("failures", summary.failures);
  out.close();
}

void write_story(JsonText& out, const VariantResult& variant) {
  const VariantResult::Story& story = variant.story;
  out.open('{');
  out.field("unknowns", story.unknowns);
  out.field("operations", story.operations);
  out.field("states", story.states);
  out.field("robust_states", story.robust_states);
  out.field("robust_why", story.robust_why);
  out.field("worst_residual", story.worst_residual);
  out.field("tuner_evaluations", story.tuner_evaluations);
  out.field("sentence", trust_sentence(variant));
  out.close();
}

void write_added(JsonText& out, const VariantResult& variant) {
  out.key("boxes");
  write_boxes(out, variant);
  out.key("couplings");
  write_couplings(out, variant);
  out.key("ratings");
  write_ratings(out, variant);
  if (!variant.ledger->frequencies_hz.empty()) {
    out.key("moments");
    write_moments(out, variant);
    out.key("waterfalls");
    write_waterfalls(out, variant);
  }
  if (variant.tuned) {
    out.key("tuning");
    write_tuning(out, variant);
    out.key("dial");
    write_dial(out, variant);
    if (has_tuner(variant)) {
      out.key("buy");
      write_buy(out, variant);
    }
  }
  out.key("verdict");
  write_verdict(out, variant);
  out.key("story");
  write_story(out, variant);
}

}  // namespace

void write_variant(JsonText& out, const VariantResult& variant) {
  out.open('{');
  out.key("name");
  variant.design->variant ? out.value(*variant.design->variant) : out.null();
  out.field("tuned", variant.tuned);
  out.field("frequencies_hz", variant.ledger->frequencies_hz);
  write_books(out, variant);
  out.key("warnings");
  write_warnings(out, variant);
  out.key("requirements");
  write_requirements(out, variant);
  write_added(out, variant);
  out.close();
}

std::size_t estimate_bytes(const VariantResult& variant) {
  const ledger::Ledger& books = *variant.ledger;
  const std::size_t series = 20 + 8 * books.parts.size() + 7 * books.loads.size() + 4 * books.boxes.size() +
                             6 * books.looks.size() + variant.settings.size();
  constexpr std::size_t bytes_a_number = 21, bytes_a_part = 2048;
  return series * books.frequencies_hz.size() * bytes_a_number + (books.parts.size() + 8) * bytes_a_part;
}

}  // namespace wattfall::report
