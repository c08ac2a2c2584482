// contract.md: `compare FILE [FILE...]`. 75 ohm on 50: SWR 1.5, 96 W taken of 100; 100 ohm on 50: SWR 2, 88.9 W.
#include <catch2/catch.hpp>

#include "cabin.hpp"

using namespace app_tests;

namespace {

std::string design_of(const std::string& load, const std::string& more = "require swr at desk below 3\n") {
  return "source rig at desk : 100 W, 50 ohm\nload wires at desk : " + load + "\nsweep at [7 MHz]\n" + more;
}

json compare_of(const Ran& ran) {
  return json::parse(ran.out).at("compare");
}

json figure_of(const json& compare, const std::string& name) {
  for (const json& figure : compare.at("figures"))
    if (figure.at("figure") == name) return figure;
  return {};
}

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("two files side by side: figures, differences, the better one and why") {
  const Scratch scratch;
  scratch.write("old.feed", design_of("100 ohm"));
  scratch.write("new.feed", design_of("75 ohm"));
  const Ran ran = program({"compare", "old.feed", "new.feed", "--to", "json"}, {.folder = scratch.path()});
  CHECK(ran.code == 0);
  const json compare = compare_of(ran);
  CHECK(compare["columns"][0]["label"] == "old.feed");
  CHECK(compare["columns"][1]["label"] == "new.feed");
  CHECK(compare["better"] == 1);
  CHECK(says(compare["why"], "96 %"));
  CHECK(says(compare["why"], "88.9 %"));
  const json swr = figure_of(compare, "swr")["worst"];
  CHECK(swr["values"][0].get<double>() == Approx(2.0));
  CHECK(swr["values"][1].get<double>() == Approx(1.5));
  CHECK(swr["better"] == 1);
  CHECK(swr["lead"].get<double>() == Approx(0.5));
  CHECK(swr["differences"][0].get<double>() == Approx(0.5));
  const json watts = figure_of(compare, "radiated_w")["worst"];
  CHECK(watts["values"][0].get<double>() == Approx(800.0 / 9.0));
  CHECK(watts["values"][1].get<double>() == Approx(96.0));
  CHECK(watts["differences"][0].get<double>() == Approx(800.0 / 9.0 - 96.0));
  REQUIRE(compare["built"].size() == 1);
  CHECK(compare["built"][0] == json{{"name", "wires"}, {"what", "impedance in ohm"}, {"values", {"100", "75"}}});

  const Ran text = program({"compare", "old.feed", "new.feed"}, {.folder = scratch.path()});
  CHECK(says(text.out, "VERDICT  \"new.feed\" is better"));
  CHECK(says(text.out, "wires, impedance in ohm: A 100; B 75"));
  const Ran csv = program({"compare", "old.feed", "new.feed", "--to", "csv"}, {.folder = scratch.path()});
  CHECK(says(csv.out, "figure,unit,where,better,lead,value:old.feed,at_hz:old.feed,value:new.feed,at_hz:new.feed\r\n"));
}

TEST_CASE("what keeps its requirements goes before what has more on the air") {
  const Scratch scratch;
  scratch.write("a.feed", design_of("75 ohm", "require swr at desk below 1.2\n"));
  scratch.write("b.feed", design_of("100 ohm", "require swr at desk below 3\n"));
  const Ran ran = program({"compare", "a.feed", "b.feed", "--to", "json"}, {.folder = scratch.path()});
  CHECK(ran.code == 1);
  CHECK(compare_of(ran)["better"] == 1);
  CHECK(says(compare_of(ran)["why"], "Not met: swr at desk below 1.2"));
}

TEST_CASE("even designs have no better one") {
  const Scratch scratch;
  scratch.write("a.feed", design_of("75 ohm"));
  const Ran ran = program({"compare", "a.feed", "a.feed", "--to", "json"}, {.folder = scratch.path()});
  CHECK(ran.code == 0);
  CHECK(compare_of(ran)["better"].is_null());
  CHECK(compare_of(ran)["columns"][1]["label"] == "a.feed (2)");
  CHECK(compare_of(ran)["built"].empty());
}

TEST_CASE("the variants of one file are compared by their names, the same for any number of threads") {
  const Ran one = program({"compare", "-", "--threads", "1", "--to", "json"}, {.input = tunable});
  CHECK(one.code == 0);
  CHECK(compare_of(one)["columns"][0]["label"] == "short");
  CHECK(compare_of(one)["better"] == 0);
  CHECK(says(compare_of(one)["why"], "coax"));
  CHECK(program({"compare", "-", "--threads", "5", "--to", "json"}, {.input = tunable}).out == one.out);
}

TEST_CASE("one variant alone is wrong use, and of several files the gravest error counts") {
  const Scratch scratch;
  scratch.write("a.feed", design_of("75 ohm"));
  scratch.write("wrong.feed", mistaken);
  CHECK(refused(program({"compare", scratch / "a.feed"}), 2));
  CHECK(refused(program({"compare", scratch / "a.feed", scratch / "wrong.feed"}), 3));
  CHECK(refused(program({"compare", scratch / "a.feed", scratch / "wrong.feed", scratch / "nowhere"}), 5));
  CHECK(refused(program({"compare", "-", "--variant", "short"}, {.input = tunable}), 2));
}
