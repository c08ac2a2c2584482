// The ledger's part of the document: from "sources" to "settings", and "boxes".
#pragma once

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// Writes the keys "sources", "parts", "loads", "totals", "planes" and "settings".
void write_books(JsonText& out, const VariantResult& variant);

/// Writes the value of the key "boxes".
void write_boxes(JsonText& out, const VariantResult& variant);

/// The value of `couplings`: pairs of coils that share flux.
void write_couplings(JsonText& out, const VariantResult& variant);

}  // namespace wattfall::report
