// The rules of the standard, one row each: what a document says, and a text that shows that the reader keeps to it.
// rev_1_1 was read in a full copy; of version 2.0 the list of contents was read, and the rows marked so are from memory
// (their status in the table they come from is "published" because public example files agree with them).
#include <algorithm>
#include <catch2/catch.hpp>
#include <iostream>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

constexpr const char* rev_1_1 = "Touchstone File Format Specification Rev 1.1 (EIA/IBIS Open Forum), full text copy";
constexpr const char* v2_contents =
    "Touchstone File Format Specification Version 2.0 (IBIS Open Forum, April 24, 2009), contents list";
constexpr const char* v2_memory = "Touchstone 2.0 specification from memory; several public example files agree";
constexpr const char* published = "published";

const std::string head_2 =
    "[Version] 2.0\n# Hz S RI\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n";

std::string version_2(const std::string& keyword_line, const std::string& data = "1 .1 0 .2 0 .3 0 .4 0") {
  return head_2 + keyword_line + "[Network Data]\n" + data + "\n[End]\n";
}

double first_hz(const std::string& text) {
  const Reading result = read(text);
  return result.ok() ? result.value->frequencies_hz[0] : -1;
}

/// The file without the line that begins with `keyword` is refused, and with it read.
bool needed(const std::string& keyword) {
  std::string text = version_2("");
  if (!reads(text)) return false;
  const std::size_t begin = text.find(keyword);
  text.erase(begin, text.find('\n', begin) - begin);
  return !reads(text);
}

bool frequency_units() {
  return first_hz("# Hz\n2 0 0\n") == 2 && first_hz("# kHz\n2 0 0\n") == 2e3 && first_hz("# MHz\n2 0 0\n") == 2e6 &&
         first_hz("# GHz\n2 0 0\n") == 2e9 && codes("# THz\n2 0 0\n") == "touchstone-unknown-option";
}

bool formats() {
  return near(first_s("# RI\n1 .3 .4\n"), {.3, .4}) && near(first_s("# MA\n1 .5 90\n"), {0, .5}) &&
         near(first_s("# DB\n1 -20 180\n"), -.1) && !reads("# AM\n1 0 0\n");
}

bool any_order() {
  const Complex s(.1, .2);
  return near(first_s("# R 75 RI S MHz\n1 .1 .2\n"), s) && near(first_s("# RI R 75 MHz S\n1 .1 .2\n"), s) &&
         codes("# R MHz\n1 .1 .2\n") == "touchstone-not-a-number" &&
         codes("# MHz R\n1 0 0\n") == "touchstone-reference";
}

bool second_option_line() {
  const Reading result = read("# Hz S RI R 50\n# GHz Z MA R 75\n1 .1 .2\n");
  return result.ok() && result.value->frequencies_hz[0] == 1 && result.value->remarks.size() == 1 &&
         result.value->remarks[0].code == "touchstone-option-ignored" && result.value->remarks[0].span.line() == 2;
}

bool comments() {
  return near(first_s("! one\n  ! two\n# RI ! three\n1 .1 .2 ! four 5 6\n! five\n"), {.1, .2});
}

bool extension() {
  return ports_from_extension("a.s1p") == 1 && ports_from_extension("x/b.v2.S2P") == 2 &&
         ports_from_extension("c.s12p") == 12 && ports_from_extension("d.ts") == 0 &&
         ports_from_extension("s2p") == 0 && ports_from_extension("e.sxp") == 0 && ports_from_extension("f.s1p/g") == 0;
}

/// Places of .1 .2 .3 .4 in the order of the file.
bool order_is(const std::string& text, std::size_t first, std::size_t second, std::size_t third, std::size_t fourth) {
  return near(first_s(text, 2, first), .1) && near(first_s(text, 2, second), .2) && near(first_s(text, 2, third), .3) &&
         near(first_s(text, 2, fourth), .4);
}

bool rows_of_three_and_four() {
  const std::string three = "# RI\n1 .1 0 .2 0 .3 0\n.4 0 .5 0 .6 0\n.7 0 .8 0 .9 0\n";
  const std::string row = " .1 0 .2 0 .3 0 .4 0\n";
  return near(first_s(three, 3, 1), .2) && near(first_s(three, 0, 5), .6) && near(first_s(three, 3, 6), .7) &&
         near(first_s("# RI\n1" + row + row + row + row, 4, 14), .3) &&
         near(first_s("# RI\n1" + row + row + row + row, 0, 4), .1);
}

bool at_most_four_pairs() {
  Network network;
  network.ports = 5;
  network.frequencies_hz = {1e6};
  network.parameters.assign(25, Complex(.1, .2));
  network.reference_ohm.assign(5, 50);
  const std::string text = write_touchstone(network, NumberFormat::real_imaginary, FrequencyUnit::mhz);
  std::size_t most = 0;
  for (std::size_t at = text.find('\n') + 1; at < text.size(); at = text.find('\n', at) + 1) {
    const std::string line = text.substr(at, text.find('\n', at) - at);
    most = std::max(most, static_cast<std::size_t>(std::count(line.begin(), line.end(), '.')));
  }
  return most == 8 && reads(text, 5);
}

bool normalised_to_r() {
  return near(first_s("# Z RI R 75\n1 2 0\n"), 1.0 / 3) && near(first_s("# Y RI R 75\n1 .5 0\n"), 1.0 / 3) &&
         near(first_s("# H RI R 75\n1 2 0 0 0 0 0 1 0\n"), 1.0 / 3) &&
         near(first_s("# G RI R 75\n1 .5 0 0 0 0 0 1 0\n"), 1.0 / 3);
}

const std::string points = "# MHz S RI\n1 0 0 .5 0 .5 0 0 0\n2 0 0 .5 0 .5 0 0 0\n";

bool noise_recognised() {
  const Reading at = read(points + "2 1 .5 90 .4\n", 2);
  const Reading below = read(points + "1 1 .5 90 .4\n5 1 .5 90 .4\n", 2);
  return at.ok() && at.value->noise.size() == 1 && below.ok() && below.value->noise.size() == 2 &&
         below.value->frequencies_hz.size() == 2 &&
         codes(points + "2.5 1 .5 90 .4\n", 2) == "touchstone-missing-values";
}

bool noise_is_magnitude_and_angle() {
  const Reading result = read(points + "1 1 .5 90 .4\n", 2);
  return result.ok() && near(result.value->noise.at(0).optimum_reflection, {0, .5});
}

bool free_text() {
  return reads(version_2("[Begin Information]\n[Anything] 1, 2\nand # this\n[End Information]\n"));
}

bool noise_keyword() {
  const Reading result = read(head_2 + "[Number of Noise Frequencies] 1\n[Network Data]\n" +
                              "1 .1 0 .2 0 .3 0 .4 0\n[Noise Data]\n9 1 .5 0 20\n[End]\n");
  return result.ok() && result.value->noise.size() == 1;
}

bool order_arguments() {
  std::string other = version_2("");
  other.replace(other.find("12_21"), 5, "11_22");
  return needed("[Two-Port Data Order]") && codes(other) == "touchstone-keyword-value";
}

bool columns_first() {
  std::string text = version_2("");
  text.replace(text.find("12_21"), 5, "21_12");
  return order_is(text, 0, 2, 1, 3);
}

bool matrix_formats() {
  const std::string three = "1 .1 0 .2 0 .3 0";
  const auto half = [&](const char* shape) { return version_2(std::string("[Matrix Format] ") + shape + "\n", three); };
  return order_is(version_2("[Matrix Format] Full\n"), 0, 1, 2, 3) && near(first_s(half("Lower"), 2, 1), .2) &&
         near(first_s(half("Lower"), 2, 2), .2) && near(first_s(half("upper"), 2, 3), .3) && !reads(half("Half"));
}

bool references() {
  const Reading result = read(version_2("[Reference] 50 ! first\n 75\n"));
  return result.ok() && result.value->reference_ohm == std::vector<double>{50, 75} &&
         codes(version_2("[Reference] 50\n")) == "touchstone-reference" &&
         codes(version_2("[Reference] 50 -75\n")) == "touchstone-reference";
}

bool not_normalised() {
  const std::string head = "[Version] 2.0\n# Hz ";
  const std::string rest = " RI R 75\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 ";
  return near(first_s(head + "Z" + rest + "150 0\n[End]\n"), 1.0 / 3) &&
         near(first_s(head + "Y" + rest + "2e-2 0\n[End]\n"), -.2);
}

struct Rule {
  const char* id;
  const char* says;
  bool (*kept)();
  const char* source;
  const char* status;
};

const Rule rules[] = {
    {"TS-001", "first line: # <frequency unit> <parameter> <format> R <n>",
     [] {
       return near(first_s("! c\n# MHz S RI R 75\n1 .1 .2\n"), {.1, .2});
     },
     rev_1_1, published},
    {"TS-002", "a file is case-insensitive",
     [] {
       return near(first_s("# mHZ s rI r 50\n1 1e-1 2E-1\n"), {.1, .2});
     },
     rev_1_1, published},
    {"TS-003", "frequency units are GHz, MHz, KHz, Hz", frequency_units, rev_1_1, published},
    {"TS-004", "the default unit is GHz", [] { return first_hz("# S\n2 0 0\n") == 2e9 && first_hz("2 0 0\n") == 2e9; },
     rev_1_1, published},
    {"TS-006", "the default parameter is S",
     [] {
       return near(first_s("# Hz RI\n2 .1 .2\n"), {.1, .2});
     },
     rev_1_1, published},
    {"TS-007", "formats are DB, MA, RI", formats, rev_1_1, published},
    {"TS-011", "entries after # in any order, but n must follow R", any_order, rev_1_1, published},
    {"TS-012", "a second option line is ignored", second_option_line, rev_1_1, published},
    {"TS-014", "comments on lines of their own or after the last value", comments, rev_1_1, published},
    {"TS-015", "angles are in degrees",
     [] {
       return near(first_s("1 .5 -90\n"), {0, -.5});
     },
     rev_1_1, published},
    {"TS-016", "DB is 20*log10(magnitude), then the angle",
     [] {
       return near(first_s("# DB\n1 -6 90\n"), {0, std::pow(10, -.3)});
     },
     rev_1_1, published},
    {"TS-017", "the extension is .snp, n the number of ports", extension, rev_1_1, published},
    {"TS-018", "two-port lines are f N11 N21 N12 N22",
     [] { return order_is("# RI\n1 .1 0 .2 0 .3 0 .4 0\n", 0, 2, 1, 3); }, rev_1_1, published},
    {"TS-020", "three and four ports: a row a line, frequency only on the first", rows_of_three_and_four, rev_1_1,
     published},
    {"TS-022", "at most 4 pairs a line (kept in writing; read without limit)", at_most_four_pairs, rev_1_1, published},
    {"TS-023", "frequencies increase",
     [] { return codes("1 0 0\n1 0 0\n") == "touchstone-frequency-order" && reads("1 0 0\n1.1 0 0\n"); }, rev_1_1,
     published},
    {"TS-024", "Y, Z, H and G data are normalised to R n", normalised_to_r, rev_1_1, published},
    {"TS-028", "noise data begins at or below the highest network frequency", noise_recognised, rev_1_1, published},
    {"TS-029", "noise data is magnitude and angle, whatever the option line", noise_is_magnitude_and_angle, rev_1_1,
     published},
    {"TS-030", "[Version]", [] { return needed("[Version]"); }, v2_contents, published},
    {"TS-031", "[Number of Ports]", [] { return needed("[Number of Ports]"); }, v2_contents, published},
    {"TS-032", "[Two-Port Data Order]", [] { return needed("[Two-Port Data Order]"); }, v2_contents, published},
    {"TS-033", "[Number of Frequencies]", [] { return needed("[Number of Frequencies]"); }, v2_contents, published},
    {"TS-036", "[Matrix Format]", [] { return reads(version_2("[Matrix Format] Full\n")); }, v2_contents, published},
    {"TS-038", "[Network Data]", [] { return needed("[Network Data]"); }, v2_contents, published},
    {"TS-039", "[Noise Data]", noise_keyword, v2_contents, published},
    {"TS-040", "[End]", [] { return reads(version_2("") + "what follows is not read\n"); }, v2_contents, published},
    {"TS-041", "[Begin Information]", free_text, v2_contents, published},
    {"TS-043", "[Two-Port Data Order] is 12_21 or 21_12, needed for two-ports", order_arguments, v2_contents,
     published},
    {"TS-044", "12_21: f N11 N12 N21 N22", [] { return order_is(version_2(""), 0, 1, 2, 3); }, v2_memory, published},
    {"TS-045", "21_12: f N11 N21 N12 N22", columns_first, v2_memory, published},
    {"TS-046", "[Matrix Format] is Full, Lower or Upper", matrix_formats, v2_memory, published},
    {"TS-047", "[Reference]: a positive value a port, also on following lines, before R of the option line", references,
     v2_memory, published},
    {"TS-048", "version 2 Y and Z data are not normalised", not_normalised, v2_memory, published},
};

}  // namespace

TEST_CASE("the reader keeps the rules of the standard") {
  std::size_t kept = 0;
  for (const Rule& rule : rules) {
    INFO(rule.id << ": " << rule.says << " (" << rule.source << "; " << rule.status << ")");
    const bool holds = rule.kept();
    CHECK(holds);
    kept += holds ? 1 : 0;
  }
  std::cout << "touchstone rules: " << std::size(rules) << " rows, " << kept << " kept\n";
}

}  // namespace wattfall::measured
