#include "cabin.hpp"

namespace app_tests {

const std::string matched =
    "design \"matched\"\n"
    "source rig at desk : 100 W, 50 ohm\n"
    "load   wires at desk : 50 ohm\n"
    "sweep at [7 MHz]\n"
    "require swr at desk below 1.5\n";

const std::string mismatched =
    "design \"mismatched\"\n"
    "source rig at desk : 100 W, 50 ohm\n"
    "load   wires at desk : 150 ohm\n"
    "sweep at [7 MHz]\n"
    "require swr at desk below 1.5\n";

const std::string mistaken =
    "design \"mistaken\"\n"
    "source rig at desk : 100 W, 50 ohms\n"
    "load   wires at desk : 50 ohm\n"
    "sweep 7 mhz to 7.2 MHz step 10 kHz\n"
    "require swr at dsk below 1.5\n";

const std::string tunable =
    "design \"tunable\"\n"
    "set reach = 10 m\n"
    "source rig at desk : 100 W, 50 ohm\n"
    "inductor coil from desk to out : 1 uH, adjustable 0.1 uH to 10 uH, Q 200\n"
    "load wires at feed : 50 - j80 ohm\n"
    "variant \"short\" {\n"
    "  line coax from out to feed : reach of RG-58\n"
    "}\n"
    "variant \"long\" {\n"
    "  line coax from out to feed : 2 * reach of RG-58\n"
    "}\n"
    "sweep at [7 MHz, 7.1 MHz]\n"
    "tune coil at each frequency for least swr at desk\n";

json report_of(const std::string& text, std::vector<std::string> more) {
  std::vector<std::string> arguments{"run", "-", "--to", "json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return json::parse(program(arguments, {.input = text}).out);
}

bool refused(const Ran& ran, int code) {
  return ran.code == code && ran.out.empty() && !ran.err.empty();
}

std::vector<std::string> error_codes(const std::string& document) {
  const json parsed = json::parse(document);
  std::vector<std::string> codes;
  if (parsed.at("schema") != 1) return codes;
  for (const json& error : parsed.at("errors")) codes.push_back(error.at("code"));
  return codes;
}

}  // namespace app_tests
