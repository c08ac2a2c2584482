// One variant of the result document.
#pragma once

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// Writes the object that stands in the document's "variants".
void write_variant(JsonText& out, const VariantResult& variant);

/// Bytes that a variant takes, roughly: more than enough for its numbers.
std::size_t estimate_bytes(const VariantResult& variant);

}  // namespace wattfall::report
