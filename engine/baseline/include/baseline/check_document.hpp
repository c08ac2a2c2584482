// The result document of `check`.
#pragma once

#include <string>
#include <vector>

#include "baseline/check.hpp"

namespace wattfall::baseline {

/// Schema 1, verb "check", all under the key "check"; `paths` are those of the command line. The same checks give the same bytes.
std::string make_check_document(const std::vector<DesignCheck>& designs, const std::vector<std::string>& paths);

}  // namespace wattfall::baseline
