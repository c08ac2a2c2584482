// Files damaged at random: whatever the bytes, reading ends with a network or with mistakes that lie inside the text.
// The seeds are fixed; run under the sanitizers this is the room's fuzz test.
#include <catch2/catch.hpp>
#include <random>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

const std::string seeds[] = {
    "! a\n# MHz S MA R 50\n2.000 0.894 -12.136\n3 .5 10\n",
    "# GHz S RI R 50\n1 .39 -.12 -3e-4 -2e-3 -3e-4 -2e-3 .39 -.12\n2 0 0 .5 0 .5 0 0 0\n1 .7 .64 69 .38\n",
    "# Hz Z DB\n1 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0\n2 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 1 0 2\n",
    "[Version] 2.0\n# Hz Y RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n"
    "[Number of Noise Frequencies] 1\n[Reference] 50\n75\n[Matrix Format] Lower\n[Begin Information]\nfree\n"
    "[End Information]\n[Network Data]\n1 .1 0 .2 0 .3 0\n[Noise Data]\n1 1 .5 0 20\n[End]\n",
};

const char* const pieces[] = {"[",
                              "]",
                              "!",
                              "#",
                              "\n",
                              "\r",
                              " ",
                              "\t",
                              "-",
                              "e",
                              ".",
                              "1e99",
                              "nan",
                              "inf",
                              "\xFF",
                              "\xC3",
                              "0,5",
                              "[End]",
                              "R",
                              "1 1 1 1 1",
                              "H",
                              "Z",
                              "999",
                              "-1",
                              "[Version] 2.0\n",
                              "1e-999",
                              "\n[Reference]",
                              "[Matrix Format] Upper\n"};

std::string damaged(std::string text, std::mt19937& random) {
  const auto pick = [&](std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(random); };
  for (std::size_t changes = 1 + pick(6); changes > 0 && !text.empty(); --changes) {
    const std::size_t at = pick(text.size());
    const std::size_t length = std::min(text.size() - at, pick(12));
    const std::size_t how = pick(5);
    if (how == 0) text[at] = static_cast<char>(pick(256));
    if (how == 1) text.erase(at, length);
    if (how == 2) text.insert(at, pieces[pick(std::size(pieces))]);
    if (how == 3) text.insert(pick(text.size()), text.substr(at, length));
    if (how == 4 && pick(8) == 0) text.resize(at);
  }
  return text;
}

/// Empty where all is as promised, otherwise what is not.
std::string broken_promise(const Reading& result) {
  if (result.value.has_value() == !result.diagnostics.empty()) return "neither a value nor mistakes, or both";
  if (result.diagnostics.size() > 11) return "too many mistakes";
  for (const Diagnostic& one : result.diagnostics) {
    if (one.code.rfind("touchstone-", 0) != 0 || one.text.empty()) return "a mistake without code or text";
    if (one.span.begin > one.span.end || one.span.end > one.span.source->text().size())
      return "a span outside the text";
  }
  if (!result.value) return "";
  const Network& network = *result.value;
  const std::size_t points = network.frequencies_hz.size();
  const auto ports = static_cast<std::size_t>(network.ports);
  if (points == 0 || network.parameters.size() != points * ports * ports) return "sizes";
  if (network.reference_ohm.size() != ports || network.lines.size() != points) return "sizes";
  for (std::size_t i = 1; i < points; ++i) {
    if (!(network.frequencies_hz[i] > network.frequencies_hz[i - 1])) return "frequencies do not rise";
  }
  for (const Complex one : network.parameters) {
    if (!std::isfinite(one.real()) || !std::isfinite(one.imag())) return "a value that is not finite";
  }
  return "";
}

}  // namespace

TEST_CASE("damaged files end in a network or in mistakes, and nothing else") {
  std::mt19937 random(20);
  std::size_t read_well = 0;
  for (int i = 0; i < 20000; ++i) {
    const std::string text = damaged(seeds[static_cast<std::size_t>(i) % std::size(seeds)], random);
    const Reading result = read(text, i % 5);
    read_well += result.ok() ? 1 : 0;
    const std::string broken = broken_promise(result);
    if (broken.empty()) continue;
    CAPTURE(text, broken);
    FAIL();
  }
  CHECK(read_well > 500);  // the damage is not so heavy that nothing is tested beyond the header
}

}  // namespace wattfall::measured
