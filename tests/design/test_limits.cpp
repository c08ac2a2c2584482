#include <catch2/catch.hpp>
#include <chrono>
#include <iostream>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

std::vector<std::string> codes_of(const std::string& text) {
  std::vector<std::string> codes;
  for (const Diagnostic& one : resolve_text(text).diagnostics) codes.push_back(one.code);
  return codes;
}

using Codes = std::vector<std::string>;

/// Boxes b0 ... bn, each with two of the one before.
std::string doubling(int levels, const std::string& innermost) {
  std::string text = "box b0 (a) {\n" + innermost + "}\n";
  for (int i = 1; i <= levels; ++i) {
    const std::string before = "b" + std::to_string(i - 1);
    text += "box b" + std::to_string(i) + " (a) {\n  " + before + " x at a\n  " + before + " y at a\n}\n";
  }
  return text + "b" + std::to_string(levels) + " all at desk\n";
}

std::string chain_of_boxes(int levels) {
  std::string text = "box b0 (a) {\n  resistor r at a : 1 ohm\n}\n";
  for (int i = 1; i < levels; ++i)
    text += "box b" + std::to_string(i) + " (a) {\n  b" + std::to_string(i - 1) + " x at a\n}\n";
  return text + "b" + std::to_string(levels - 1) + " all at desk\n";
}

}  // namespace

TEST_CASE("boxes that double are stopped before memory grows") {
  CHECK(codes_of(with_frame(doubling(60, "  resistor r at a : 1 ohm\n"))) == Codes{"too-many-parts"});
  CHECK(codes_of(with_frame(doubling(60, ""))) == Codes{"too-many-parts"});
  CHECK(codes_of(with_frame(doubling(10, "  resistor r at a : 1 ohm\n"))) == Codes{});
}

TEST_CASE("boxes stand 64 deep in each other and no deeper") {
  CHECK(codes_of(with_frame(chain_of_boxes(64))) == Codes{});
  CHECK(codes_of(with_frame(chain_of_boxes(65))) == Codes{"boxes-too-deep"});
  CHECK(codes_of(with_frame(chain_of_boxes(10'000))) == Codes{"boxes-too-deep"});
}

TEST_CASE("a quantity squared again and again is refused before it fills memory") {
  std::string text = "set q0 = frequency / 1 MHz\n";
  for (int i = 1; i < 60; ++i) {
    const std::string before = "q" + std::to_string(i - 1);
    text += "set q" + std::to_string(i) + " = " + before + " * " + before + " + 1\n";
  }
  CHECK(codes_of(with_frame(text)) == Codes{"expression-too-large"});
}

TEST_CASE("long chains of quantities are followed, forwards at any length and backwards as deep as is sensible") {
  std::string forwards = "set q0 = 1\n", backwards;
  for (int i = 1; i < 20'000; ++i) forwards += "set q" + std::to_string(i) + " = q" + std::to_string(i - 1) + " + 1\n";
  CHECK(codes_of(with_frame(forwards)) == Codes{});
  for (int i = 0; i < 20'000; ++i) backwards += "set q" + std::to_string(i) + " = q" + std::to_string(i + 1) + "\n";
  backwards += "set q20000 = 1\n";
  CHECK(codes_of(with_frame(backwards)) == Codes{"expression-too-deep"});
}

TEST_CASE("a long sum is worked out without depth") {
  std::string sum = "1";
  for (int i = 1; i < 900; ++i) sum += " + 1";
  const Resolved resolved = resolve_text(with_frame("capacitor C at desk : 1 pF, tangent (" + sum + ")"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(std::get<Capacitor>(resolved.part("C").model).tangent->constant_value() == 900.0);
}

TEST_CASE("a million points is the limit, checked before any is made") {
  CHECK(codes_of(with_frame("sweep 1 MHz to 2 MHz step 1.1 Hz")) == Codes{});
  CHECK(codes_of(with_frame("sweep 1 MHz to 2 MHz, 999997 points")) == Codes{"too-many-points"});
  CHECK(codes_of(with_frame("sweep 1 MHz to 2 GHz step 1 pHz")).size() == 1);
}

TEST_CASE("twenty thousand parts resolve in a fraction of a second") {
  std::string text = "source rig at n0 : 100 W\nload ant at n10000 : 50 ohm\nsweep at [7 MHz]\n";
  for (int i = 0; i < 10'000; ++i) {
    const std::string here = std::to_string(i), next = std::to_string(i + 1);
    text += "inductor L" + here + " from n" + here + " to n" + next + " : 1 uH, Q 200 at 7 MHz\n";
    text += "capacitor C" + here + " at n" + here + " : 10 pF\n";
  }
  const auto source = std::make_shared<const wattfall::Source>("big.feed", text);
  const auto parsed = parse(source, catalog().vocabulary());
  REQUIRE(parsed.ok());
  const auto begin = std::chrono::steady_clock::now();
  const auto resolved = resolve(*parsed.value, catalog(), registry(), {});
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
  REQUIRE(resolved.ok());
  CHECK(resolved.value->variants[0].parts.size() == 20'001);
  std::cout << "resolving 20,001 parts took " << took.count() << " ms\n";
  CHECK(took.count() < 5'000.0);  // generous: sanitizers and busy machines
}

TEST_CASE("twenty thousand mistakes are all found, and in time") {
  std::string text = with_frame("");
  for (int i = 0; i < 20'000; ++i)
    text += "resistor r" + std::to_string(i) + " at desk : undefined" + std::to_string(i) + "\n";
  CHECK(codes_of(text).size() == 20'000);
}
