// The envelope of the result document: what ran, on what, then each variant, then what they come to together. Written
// straight into one string of about the right size.
#include "report/document.hpp"

#include "compare.hpp"
#include "comparison.hpp"
#include "document_envelope.hpp"
#include "json_text.hpp"
#include "variant_document.hpp"
#include "report/spelling.hpp"
#include "report/verdict.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;

constexpr int schema = 1;

void write_plugins(JsonText& out, const host::Registry& registry) {
  out.open('[');
  for (const host::PluginInfo& plugin : registry.plugins) {
    out.open('{', Layout::one_line);
    out.field("name", plugin.name);
    out.field("version", plugin.version);
    out.close();
  }
  out.close();
}

void write_design(JsonText& out, const std::vector<VariantResult>& variants) {
  out.open('{');
  out.field("title", variants.empty() ? std::string() : variants.front().design->title);
  out.field("file", variants.empty() ? std::string() : variants.front().design->file);
  out.close();
}

void write_set_aside(JsonText& out, const SetAsides& set_aside) {
  if (set_aside.empty()) return;
  out.key("set_aside");
  out.open('[');
  for (const SetAside& one : set_aside) {
    out.open('{');
    out.field("name", one.variant);
    out.field("code", one.code);
    out.field("text", one.text);
    out.field("hint", one.advice);
    out.close();
  }
  out.close();
}

void write_summary(JsonText& out, const std::vector<VariantResult>& variants) {
  const Summary summary = summarize(variants);
  out.open('{');
  out.field("met", summary.met);
  out.field("of", summary.of);
  out.field("ratings_broken", summary.ratings_broken);
  out.field("sentence", summary.sentence);
  out.close();
}

void write_variants(JsonText& out, const std::vector<VariantResult>& variants) {
  out.key("variants");
  out.open('[');
  for (const VariantResult& variant : variants) write_variant(out, variant);
  out.close();
  out.key("verdict");
  write_summary(out, variants);
}

std::vector<std::string> labels_of(const std::vector<VariantResult>& variants) {
  std::vector<std::string> labels;
  for (const VariantResult& variant : variants) labels.push_back(label(*variant.design));
  return labels;
}

bool comparable(const std::vector<VariantResult>& variants) {
  if (variants.size() < 2) return false;
  for (const VariantResult& variant : variants) {
    if (variant.ledger->frequencies_hz.empty()) return false;
  }
  return true;
}

std::size_t estimate_bytes(const std::vector<VariantResult>& variants) {
  std::size_t bytes = 16384;
  for (const VariantResult& variant : variants) bytes += estimate_bytes(variant);
  return bytes;
}

void write_place(JsonText& out, const Span& span) {
  out.key("file");
  span.source != nullptr ? out.value(span.source->name()) : out.null();
  const Position place = span.source != nullptr ? span.source->position(span.begin) : Position{};
  out.key("line");
  span.source != nullptr ? out.value(place.line) : out.null();
  out.key("column");
  span.source != nullptr ? out.value(place.column) : out.null();
}

void write_diagnostic(JsonText& out, const Diagnostic& diagnostic) {
  out.open('{');
  out.field("code", diagnostic.code);
  out.field("text", diagnostic.text);
  write_place(out, diagnostic.span);
  out.field("hint", diagnostic.hint.empty() ? diagnostic.advice : diagnostic.hint);
  out.field("expected", diagnostic.expected);
  out.key("notes");
  out.open('[');
  for (const Diagnostic::Note& note : diagnostic.notes) {
    out.open('{', Layout::one_line);
    out.field("text", note.text);
    write_place(out, note.span);
    out.close();
  }
  out.close();
  out.close();
}

}  // namespace

void write_envelope(JsonText& out, const std::string& verb, const host::Registry& registry,
                    const std::vector<VariantResult>& variants, const SetAsides& set_aside) {
  out.field("schema", schema);
  out.field("verb", verb);
  out.field("program", "wattfall " WATTFALL_VERSION);
  out.key("plugins");
  write_plugins(out, registry);
  out.key("design");
  write_design(out, variants);
  write_set_aside(out, set_aside);
}

std::string make_document(const std::string& verb, const host::Registry& registry,
                          const std::vector<VariantResult>& variants, const SetAsides& set_aside) {
  JsonText out(estimate_bytes(variants));
  out.open('{');
  write_envelope(out, verb, registry, variants, set_aside);
  write_variants(out, variants);
  if (comparable(variants)) {
    out.key("comparison");
    write_comparison(out, variants, labels_of(variants));
  }
  out.sentences("cautions", cautions(variants));
  out.close();
  return out.take();
}

std::string make_compare_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                                  const std::vector<std::string>& labels, const SetAsides& set_aside) {
  JsonText out(estimate_bytes(variants));
  out.open('{');
  write_envelope(out, "compare", registry, variants, set_aside);
  out.key("compare");
  write_compare(out, variants, labels);
  write_variants(out, variants);
  out.key("comparison");  // as in a run, for whoever knows no other
  write_comparison(out, variants, labels);
  out.sentences("cautions", cautions(variants));
  out.close();
  return out.take();
}

std::string make_error_document(const Diagnostics& diagnostics) {
  JsonText out;
  out.open('{');
  out.field("schema", schema);
  out.key("errors");
  out.open('[');
  for (const Diagnostic& diagnostic : diagnostics) write_diagnostic(out, diagnostic);
  out.close();
  out.close();
  return out.take();
}

}  // namespace wattfall::report
