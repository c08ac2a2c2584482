// Reading well-formed files: every format with every kind of parameter gives the same network, in both versions, and
// the corners of the layout (line ends, byte order mark, continued lines, files without an option line).
#include <array>
#include <catch2/catch.hpp>
#include <charconv>
#include <numbers>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

/// A lossy, unsymmetrical two-port that has all five kinds of matrix.
const std::array<Complex, 4> two_port = {Complex(.1, .2), Complex(.5, -.1), Complex(.4, .3), Complex(-.2, .05)};

struct Kind {
  const char* letter;
  std::optional<Immittance> immittance;
};

const Kind kinds[] = {{"S", std::nullopt},
                      {"Z", Immittance::impedance},
                      {"Y", Immittance::admittance},
                      {"H", Immittance::hybrid},
                      {"G", Immittance::inverse_hybrid}};

void append(std::string& text, double value) {
  std::array<char, 32> room = {};
  text += ' ';
  text.append(room.data(), std::to_chars(room.data(), room.data() + room.size(), value).ptr);
}

void append(std::string& text, const std::string& format, Complex value) {
  const double size = std::abs(value);
  const double angle = std::arg(value) * 180 / std::numbers::pi;
  append(text, format == "RI" ? value.real() : format == "MA" ? size : 20 * std::log10(size));
  append(text, format == "RI" ? value.imag() : angle);
}

/// `matrix` in the order of a version 1 file, 11 21 12 22, or for one port its first element.
std::string data_line(const std::string& format, const std::array<Complex, 4>& matrix, int ports) {
  std::string text = "7";
  for (const std::size_t place : {0, 2, 1, 3}) {
    if (ports == 2 || place == 0) append(text, format, matrix[place]);
  }
  return text + '\n';
}

std::string version_2_head(const std::string& options, int ports) {
  return "[Version] 2.1\n" + options + "[Number of Ports] " + std::to_string(ports) + "\n" +
         (ports == 2 ? "[Two-Port Data Order] 21_12\n" : "") + "[Number of Frequencies] 1\n[Network Data]\n";
}

/// The matrix of a kind in ohm and siemens.
std::array<Complex, 4> matrix_of(const Kind& kind, int ports, double reference_ohm) {
  std::array<Complex, 4> matrix = two_port;
  const std::array<double, 2> references = {reference_ohm, reference_ohm};
  if (kind.immittance) REQUIRE(from_scattering(*kind.immittance, ports, references.data(), matrix.data()));
  return matrix;
}

void check_network(const std::string& text, int ports) {
  INFO(text);
  const Reading result = read(text, ports);
  REQUIRE(codes(result) == "");
  CHECK(result.value->frequencies_hz == std::vector<double>{7e6});
  CHECK(result.value->reference_ohm == std::vector<double>(static_cast<std::size_t>(ports), 75.0));
  for (std::size_t i = 0; i < static_cast<std::size_t>(ports * ports); ++i) {
    CHECK(near(result.value->parameters[i], two_port[i]));
  }
}

}  // namespace

TEST_CASE("every kind of parameter in every format reads as the same network") {
  for (const Kind& kind : kinds) {
    for (const std::string format : {"RI", "MA", "DB"}) {
      for (const int ports : {1, 2}) {
        const bool hybrid = kind.immittance && *kind.immittance >= Immittance::hybrid;
        if (ports == 1 && hybrid) continue;
        // Version 1 is normalised to R: the matrix is that of a network in 1 ohm.
        const std::string options = "# MHz " + std::string(kind.letter) + " " + format + " R 75\n";
        check_network(options + data_line(format, matrix_of(kind, ports, 1), ports), ports);
        check_network(version_2_head(options, ports) + data_line(format, matrix_of(kind, ports, 75), ports) + "[End]\n",
                      ports);
      }
    }
  }
}

TEST_CASE("line ends, blanks and a byte order mark change nothing") {
  const Complex s(.1, -.2);
  CHECK(near(first_s("# RI\r\n1 .1 -.2\r\n2 0 0\r\n"), s));
  CHECK(near(first_s("\xEF\xBB\xBF# RI\n1 .1 -.2"), s));
  CHECK(near(first_s("\t#RI\n\n\n  1\t+.1 -2.e-1  \n\n"), s));
  CHECK(read("\r\n! c\r\n# RI\r\n1 0 0\r\n2 0 0\r\n").value->lines == std::vector<int>{4, 5});
}

TEST_CASE("a record may go on over several lines") {
  CHECK(near(first_s("# RI\n1 .1 0 .2 0\n.3 0 .4 0\n2 0 0 0 0\n0 0 0 0\n", 2, 3), .4));
  CHECK(near(first_s("# RI\n1\n.1 0 .2 0 .3 0 .4 0 .5 0 .6 0 .7 0 .8 0 .9 0\n", 3, 8), .9));
  const std::string row = " .1 0 .2 0 .3 0 .4 0\n.5 0\n";
  CHECK(near(first_s("# RI\n1" + row + row + row + row + row, 5, 24), .5));
  CHECK(read("# RI\n1" + row + row + row + row + row + "2" + row + row + row + row + row).value->ports == 5);
}

TEST_CASE("the number of ports of a version 1 file is counted where its name does not say it") {
  CHECK(read("1 0 0\n2 0 0\n").value->ports == 1);
  CHECK(read("1 0 0 0 0 0 0 0 0\n").value->ports == 2);
  CHECK(read("1 0 0 0 0 0 0 0 0\n1 2 .1 0 .3\n").value->ports == 2);
  CHECK(read("1 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0\n").value->ports == 3);
  CHECK(codes("1 0 0 0 0\n") == "touchstone-ports-unknown");
}

TEST_CASE("two-ports of version 2 have a reference for each port") {
  const std::string head = "[Version] 2.0\n# Hz Y RI\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n";
  const std::string tail =
      "[Number of Frequencies] 1\n[Reference] 50\n200\n[Network Data]\n1 .01 0 -.01 0 -.01 0 .01 0\n[End]\n";
  // A series arm Z between R1 and R2: S11 = (Z + R2 - R1)/(Z + R1 + R2), S21 = 2 sqrt(R1 R2)/(Z + R1 + R2), Z = 100
  // ohm.
  CHECK(near(first_s(head + tail, 2, 0), 250.0 / 350));
  CHECK(near(first_s(head + tail, 2, 3), -50.0 / 350));
  CHECK(near(first_s(head + tail, 2, 2), 200.0 / 350));
}

TEST_CASE("zero magnitude in decibels, zero frequency and tiny numbers are read") {
  CHECK(near(first_s("# DB\n0 -6500 0\n"), 0, 0));
  CHECK(near(first_s("# RI\n0 1e-999 0\n"), 0, 0));
  CHECK(read("# RI\n0 1 0\n").value->frequencies_hz[0] == 0);
}

TEST_CASE("what is passed over is remarked") {
  const auto remarks = [](const std::string& text, int ports) {
    std::string all;
    const Reading result = read(text, ports);
    for (const Remark& one : result.value->remarks) all += one.code + ":" + std::to_string(one.span.line()) + " ";
    return all;
  };
  CHECK(remarks("1 0 0\n", 1) == "");
  CHECK(remarks("# RI\n1 0 0\n# MA\n2 0 0\n", 1) == "touchstone-option-ignored:3 ");
  CHECK(remarks("2 0 0 0 0 0 0 0 0\n1 2 .1 0 .3\n", 2) == "touchstone-noise:2 ");
  CHECK(remarks("[Version] 2.0\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n", 1) ==
        "touchstone-no-end:1 ");
}

}  // namespace wattfall::measured
