// `wattfall list`: what is known, and which plugin brought it.
#include <catch2/catch.hpp>
#include <sstream>

#include "cabin.hpp"

using namespace app_tests;

TEST_CASE("list tells each sort of thing, one a line under a heading") {
  struct Case {
    std::vector<std::string> arguments;
    std::vector<std::string> told;
  };
  const std::vector<Case> cases{
      {{"list"}, {"plugin", "version", "line-loss", "tuner", "reports"}},
      {{"list", "plugins"}, {"plugin", "version", "line-loss", "tuner", "reports"}},
      {{"list", "kinds"}, {"kind", "brought by", "source", "load", "capacitor", "transformer", "from a to b"}},
      {{"list", "kinds", "capacitor"}, {"capacitance (main)", "Q", "tangent", "a capacitance", "measures", "brought by"}},
      {{"list", "kinds", "tuner"},
       {"form (main)", "coil Q", "200", "of every coil", "largest capacitor", "1 nF", "a capacitance", "low-pass pi", "l-network"}},
      {{"list", "cables"}, {"cable", "velocity", "RG-58", "RG-213", "line-loss"}},
      {{"list", "cables", "rg 58"}, {"RG-58", "velocity", "figures:", "dB/100m", "fitted by"}},
      {{"list", "metals"}, {"MS/m", "copper", "aluminium", "brass", "silver", "steel", "tinned copper", "stainless", "58", "IEC 60028"}},
      {{"list", "dielectrics"}, {"loss tangent", "air", "polyethylene", "foam polyethylene", "ptfe", "fr-4", "ceramic", "fibreglass", "von Hippel"}},
      {{"list", "cores"}, {"saturation, T", "nickel-zinc ferrite", "powdered iron"}},
      {{"list", "capacitors"}, {"typical Q", "vacuum", "air", "mica", "arcs at, V peak", "dust and moisture"}},
      {{"list", "units"}, {"MHz", "frequency", "dB/100ft", "prefixes"}},
      {{"list", "figures"}, {"swr at", "total loss", "peak volts across", "width of swr at"}},
      {{"list", "writers"}, {"text", "json", "csv", "reports"}},
  };
  for (const Case& one : cases) {
    CAPTURE(one.arguments);
    const Ran ran = program(one.arguments);
    CHECK(ran.code == 0);
    CHECK(ran.err.empty());
    for (const std::string& word : one.told) {
      CAPTURE(word, ran.out);
      CHECK(ran.out.find(word) != std::string::npos);
    }
  }
}

TEST_CASE("no line of a list ends in blanks, and every unit listed can be written") {
  for (const std::string what : {"plugins", "kinds", "cables", "metals", "dielectrics", "cores", "capacitors", "units", "figures", "writers"}) {
    std::istringstream lines(program({"list", what}).out);
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(what, line);
      CHECK((line.empty() || line.back() != ' '));
    }
  }
}

TEST_CASE("list into a closed pipe ends quietly") {
  const Ran ran = shell("\"$WATTFALL\" list units | head -1");
  CHECK(ran.code == 0);
  CHECK(ran.out.starts_with("unit"));
  CHECK(ran.err.empty());
}

TEST_CASE("list says where standard output is full") {
  const Ran ran = shell("\"$WATTFALL\" list units > /dev/full");
  CHECK(ran.code == 5);
  CHECK(ran.err.find("standard output") != std::string::npos);
}
