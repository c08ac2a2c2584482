// What `snp` writes, read back by engine/measured, and by a design that measures it.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"
#include "measured/touchstone.hpp"

using nlohmann::json;
using wattfall::test::program;
using wattfall::test::Scratch;
namespace measured = wattfall::measured;

namespace {

measured::Network read_back(const std::string& text) {
  const auto source = std::make_shared<const wattfall::Source>("back.s1p", text);
  const auto read = measured::read_touchstone(source, 1);
  for (const auto& one : read.diagnostics) UNSCOPED_INFO(one.text);
  REQUIRE(read.value);
  return *read.value;
}

}  // namespace

TEST_CASE("what snp writes reads back as the same numbers") {
  for (const char* feed : {"01_l_network_by_hand", "08_receiving_chain", "10_choke_on_the_feedline"}) {
    const std::string path = std::string(WATTFALL_EXAMPLES) + "/" + feed + ".feed";
    const json document = json::parse(program({"run", path, "--to", "json"}).out);
    std::vector<std::string> arguments{"run", path, "--to", "snp"};
    const json& variant = document["variants"][0];
    if (variant["name"].is_string()) arguments.insert(arguments.end(), {"--variant", variant["name"].get<std::string>()});
    const auto ran = program(arguments);
    CAPTURE(feed, ran.err);
    REQUIRE(ran.code <= 1);
    const measured::Network network = read_back(ran.out);
    const json& source = variant["sources"][0];
    CHECK(network.ports == 1);
    CHECK(network.frequencies_hz == variant["frequencies_hz"].get<std::vector<double>>());
    CHECK(network.reference_ohm == std::vector<double>{source["reference_ohm"].get<double>()});
    REQUIRE(network.parameters.size() == source["reflection"].size());
    for (std::size_t i = 0; i < network.parameters.size(); ++i) {
      CHECK(network.parameters[i].real() == source["reflection"][i][0].get<double>());
      CHECK(network.parameters[i].imag() == source["reflection"][i][1].get<double>());
    }
  }
}

TEST_CASE("a design that measures what snp wrote sees the same SWR") {
  // 75 ohm on 50 ohm: reflection 0.2, SWR 1.5 (by hand).
  const Scratch scratch;
  const std::string head = "source rig at desk : 100 W, 50 ohm\nsweep 7 MHz to 7.2 MHz step 100 kHz\n";
  CHECK(program({"run", "-", "--to", "snp=seen.s1p"}, {.folder = scratch.path(), .input = head + "load wires at desk : 75 ohm\n"}).code == 0);
  const auto again = program({"run", "-", "--to", "json"}, {.folder = scratch.path(), .input = head + "load wires at desk : measured \"seen.s1p\"\n"});
  CAPTURE(again.err);
  REQUIRE(again.code == 0);
  const json ratios = json::parse(again.out)["variants"][0]["sources"][0]["swr"];
  for (const json& swr : ratios) CHECK(swr.get<double>() == Approx(1.5).epsilon(1e-12));
}

TEST_CASE("a complex reference is written as its resistance") {
  // 50 - j10 against 50: -j10/(100 - j10), worked out here.
  const auto ran = program({"run", "-", "--to", "snp"},
                           {.input = "source rig at desk : 100 W, 50 + j10 ohm, reference 50 + j10 ohm\nload wires at desk : 50 - j10 ohm\nsweep at [7 MHz]\n"});
  CAPTURE(ran.err);
  REQUIRE(ran.code == 0);
  const measured::Network network = read_back(ran.out);
  const std::complex<double> expected = std::complex<double>(0, -10) / std::complex<double>(100, -10);
  CHECK(network.reference_ohm == std::vector<double>{50.0});
  CHECK(std::abs(network.parameters[0] - expected) < 1e-12);
}

TEST_CASE("of several variants one must be chosen") {
  const Scratch scratch;
  scratch.write("r.s1p", "the old one\n");
  const auto ran = program({"run", std::string(WATTFALL_EXAMPLES) + "/03_quarter_wave_section.feed", "--to", "snp=r.s1p"}, {.folder = scratch.path()});
  CHECK(ran.code == 5);
  CHECK(ran.err.find("--variant") != std::string::npos);
  CHECK(wattfall::test::read_file(scratch / "r.s1p") == "the old one\n");
}
