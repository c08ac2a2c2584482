// The designs that these tests run, and what they look for in what comes back.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "../support/program.hpp"

namespace app_tests {

using nlohmann::json;
using wattfall::test::Ran;
using wattfall::test::read_file;
using wattfall::test::Scratch;
using wattfall::test::shell;
using wattfall::test::Surroundings;
using wattfall::test::program;

/// A source and a load: 100 W into 50 ohm, SWR 1; the requirement is met.
extern const std::string matched;
/// The same with a load of 150 ohm and a requirement of SWR below 1.5: not met.
extern const std::string mismatched;
/// A mistake in each of lines 2, 4 and 5.
extern const std::string mistaken;
/// A coil with a knob, tuned at two frequencies; a quantity `reach`; variants "short" and "long".
extern const std::string tunable;

/// The JSON report of `wattfall run` on this text with these further arguments, from standard input.
json report_of(const std::string& text, std::vector<std::string> more = {});

/// Whether all of the output is as a run with diagnostics leaves it: nothing on standard output, an error on the other.
bool refused(const Ran& ran, int code);

/// The codes of {"schema": 1, "errors": [...]}.
std::vector<std::string> error_codes(const std::string& document);

}  // namespace app_tests
