// The value of the document's key "compare": columns side by side, the better one, and why.
#pragma once

#include <string>
#include <vector>

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

void write_compare(JsonText& out, const std::vector<VariantResult>& variants, const std::vector<std::string>& labels);

}  // namespace wattfall::report
