// Writes what the solver finds in a few points of A, B, C and D as JSON, for the script to hold its own answers
// against; asked for `feed`, the text of A instead.
#include <iostream>
#include <limits>
#include <string>

#include "cases.hpp"
#include "designs.hpp"

namespace {

using namespace wattfall;

void write(const char* name, const bench::Case& given) {
  solve::Solution solution;
  solve::Solver(given.feed.design, given.feed.network, given.feed.plan)
      .run(given.states, solution, solve::Keep::figures);
  const auto list = [](const char* key, const auto& values) {
    std::cout << '"' << key << "\":[";
    for (std::size_t i = 0; i < values.size(); ++i) std::cout << (i == 0 ? "" : ",") << values[i];
    std::cout << ']';
  };
  std::cout << '"' << name << "\":{";
  list("hertz", given.states.frequencies_hz);
  std::cout << ',';
  list("knobs", given.states.knobs);
  for (const bench::FlatPart& part : given.flat.parts)
    if (part.kind == bench::FlatPart::Kind::line) {
      std::cout << ",\"k1\":" << part.k1 << ",\"k2\":" << part.k2;
      break;
    }
  std::cout << ",\"parts\":{";
  for (std::size_t p = 0; p < given.flat.parts.size(); ++p) {
    const graph::Element& element = given.feed.network.elements[given.element_of_flat[p]];
    const solve::Flow& flow = solution.flows[given.element_of_flat[p]];
    const char* stage = element.role == graph::Element::Role::winding ? ".winding"
                        : element.role == graph::Element::Role::core  ? ".core"
                                                                      : "";
    std::cout << (p == 0 ? "" : ",") << '"' << given.feed.design.parts[element.part.index].name << stage << "\":{";
    list("heat_w", flow.heat1_w);
    std::cout << ',';
    list("volts_peak", flow.volts_peak);
    std::cout << ',';
    list("amps_rms", flow.amps_rms);
    std::cout << '}';
  }
  std::cout << "}}";
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 1 && std::string(argv[1]) == "feed") {
    std::cout << bench::t_network();
    return 0;
  }
  std::cout.precision(std::numeric_limits<double>::max_digits10);
  const std::vector<double> hertz{1.9e6, 7.1e6, 28.5e6};
  std::cout << '{';
  write("A", bench::Case(bench::t_network(), hertz));
  std::cout << ',';
  write("B", bench::Case(bench::ladder(41), hertz));
  std::cout << ',';
  write("C", bench::Case(bench::ladder(2001), hertz));
  std::cout << ',';
  write("D", bench::Case(bench::relay_network(), {7.1e6, 7.1e6}, {300e-12, 2.05e-6, 0.0, 0.0, 4.45e-6, 120e-12}));
  std::cout << "}\n";
}
