// Outside figures for this room: each row of the table is read or built as a Touchstone text, turned into S, and held
// against a value that was computed elsewhere with 40 digits (independent arbitrary-precision computation, exact
// inputs; tolerances are those of the table the rows come from, 1e-9 relative or 1e-12 absolute). The files named
// example_1 to example_8 are those of the Touchstone File Format Specification Rev 1.1.
#include <array>
#include <catch2/catch.hpp>
#include <charconv>
#include <iostream>
#include <numbers>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

constexpr double pi = std::numbers::pi;
constexpr Complex j(0, 1);

constexpr const char* exact = "independent 40-digit computation";
constexpr const char* chain = "independent 40-digit computation, from the chain matrix";
constexpr const char* times_r = "independent 40-digit computation: value times R 75";
constexpr const char* computed = "computed";

/// A two-port as a version 2 file of one frequency, 7.1 MHz, in ohm and siemens.
std::string two_port(const char* kind, std::array<Complex, 4> matrix) {
  std::string text = std::string("[Version] 2.0\n# MHz ") + kind + " RI R 50\n[Number of Ports] 2\n";
  text += "[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n[Network Data]\n7.1";
  for (const Complex value : matrix) {
    for (const double part : {value.real(), value.imag()}) {
      std::array<char, 32> room = {};
      text += ' ';
      text.append(room.data(), std::to_chars(room.data(), room.data() + room.size(), part).ptr);
    }
  }
  return text + "\n[End]\n";
}

std::string example_1() {
  return "# MHz S MA R 50\n2.000 0.894 -12.136\n";
}

std::string example_2() {
  return "# MHz Z MA R 75\n100 0.99 -4\n200 0.80 -22\n300 0.707 -45\n400 0.40 -62\n500 0.01 -89\n";
}

std::string example_4() {
  return "# GHZ S RI R 50.0\n1.0000 0.3926 -0.1211 -0.0003 -0.0021 -0.0003 -0.0021 0.3926 -0.1211\n";
}

std::string example_8() {
  return "# GHZ S MA R 50\n2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n"
         "4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n";
}

std::string series_arm() {
  const Complex y = 1.0 / Complex(25, 10);
  return two_port("Y", {y, -y, -y, y});
}

std::string shunt_arm() {
  const Complex z(100, -50);
  return two_port("Z", {z, z, z, z});
}

/// A uniform line: Z11 = Z0 coth(g), Z12 = Z0 / sinh(g), g = attenuation [Np] + j angle.
std::string line(double impedance_ohm, Complex g) {
  const Complex own = impedance_ohm * std::cosh(g) / std::sinh(g);
  const Complex across = impedance_ohm / std::sinh(g);
  return two_port("Z", {own, across, across, own});
}

std::string lossless_line() {
  return line(100, j * (pi / 4));
}
std::string lossy_line() {
  return line(50, std::log(10.0) / 20 + j * (pi / 3));
}

/// V1 = 2 V2 and I2 = -2 I1: neither Z nor Y exists, H does.
std::string transformer() {
  return two_port("H", {0, 2, -2, 0});
}

std::string l_network() {
  const double w = 2 * pi * 7.1e6;
  const Complex shunt = 1.0 / (j * w * 200e-12);
  return two_port("Z", {shunt, shunt, shunt, shunt + j * w * 1e-6});
}

using Quantity = double (*)(const Network&, std::size_t);

template <std::size_t place>
Complex s(const Network& n, std::size_t index) {
  return n.parameters[index * static_cast<std::size_t>(n.ports * n.ports) + place];
}
template <std::size_t place>
double s_real(const Network& n, std::size_t index) {
  return s<place>(n, index).real();
}
template <std::size_t place>
double s_imag(const Network& n, std::size_t index) {
  return s<place>(n, index).imag();
}
Complex z(const Network& n, std::size_t index) {
  return impedance_from_reflection(s<0>(n, index), n.reference_ohm[0]);
}
double z_real(const Network& n, std::size_t index) {
  return z(n, index).real();
}
double z_imag(const Network& n, std::size_t index) {
  return z(n, index).imag();
}
double s11_size(const Network& n, std::size_t index) {
  return std::abs(s<0>(n, index));
}
double swr(const Network& n, std::size_t index) {
  return (1 + s11_size(n, index)) / (1 - s11_size(n, index));
}
double s11_angle_deg(const Network& n, std::size_t index) {
  return std::arg(s<0>(n, index)) * 180 / pi;
}
double s11_size_in_50_ohm(const Network& n, std::size_t index) {
  return std::abs(reflection_from_impedance(z(n, index), 50));
}
double noise_resistance(const Network& n, std::size_t index) {
  return n.noise.at(index).resistance_ohm;
}

struct Check {
  const char* id;
  std::string (*file)();
  std::size_t index;  ///< which frequency
  Quantity quantity;
  double expected;
  double tolerance;  ///< absolute
  const char* source;
  const char* status;
};

const Check checks[] = {
    {"TS-050", example_1, 0, s_real<0>, 0.87402029486063506, 8.74e-10, exact, computed},
    {"TS-051", example_1, 0, s_imag<0>, -0.18794819544685324, 1.879e-10, exact, computed},
    {"TS-052", example_1, 0, z_real, 196.07617060489824, 1.961e-7, exact, computed},
    {"TS-053", example_1, 0, z_imag, -367.11922889880609, 3.671e-7, exact, computed},
    {"TS-054", example_1, 0, swr, 17.867924528301887, 1.787e-8, exact, computed},
    {"TS-057", example_2, 0, z_imag, -5.1794181755013036, 5.179e-9, exact, computed},
    {"TS-058", example_2, 0, s11_size_in_50_ohm, 0.19826589121734131, 1.983e-10, exact, computed},
    {"TS-060", example_2, 1, z_imag, -22.476395604954722, 2.248e-8, exact, computed},
    {"TS-061", example_2, 1, s11_size_in_50_ohm, 0.21455487126888529, 2.146e-10, exact, computed},
    {"TS-062", example_2, 2, z_real, 37.494337072416682, 3.749e-8, times_r, computed},
    {"TS-064", example_2, 2, s11_size_in_50_ohm, 0.41522221617699716, 4.152e-10, exact, computed},
    {"TS-065", example_2, 3, z_real, 14.084146883576723, 1.408e-8, times_r, computed},
    {"TS-066", example_2, 3, z_imag, -26.488427785767808, 2.649e-8, exact, computed},
    {"TS-067", example_2, 3, s11_size_in_50_ohm, 0.64357401361712006, 6.436e-10, exact, computed},
    {"TS-069", example_2, 4, z_imag, -0.74988577136729343, 7.499e-10, exact, computed},
    {"TS-071", example_4, 0, s11_size, 0.41085273517405236, 4.109e-10, exact, computed},
    {"TS-072", example_4, 0, s11_angle_deg, -17.142715638073231, 1.714e-8, exact, computed},
    {"TS-077", example_8, 0, s_real<2>, -3.286202326825212, 3.286e-9, exact, computed},
    {"TS-078", example_8, 0, s_imag<2>, 1.3949101287067073, 1.395e-9, exact, computed},
    {"TS-079", example_8, 0, noise_resistance, 19.0, 1.9e-8, exact, computed},
    {"TS-083", series_arm, 0, s_imag<0>, 0.063593004769475358, 1.0e-12, exact, computed},
    {"TS-084", series_arm, 0, s_real<2>, 0.79491255961844197, 1.0e-12, chain, computed},
    {"TS-085", series_arm, 0, s_imag<2>, -0.063593004769475358, 1.0e-12, exact, computed},
    {"TS-086", series_arm, 0, s_real<3>, 0.20508744038155803, 1.0e-12, chain, computed},
    {"TS-087", series_arm, 0, s_imag<3>, 0.063593004769475358, 1.0e-12, exact, computed},
    {"TS-088", shunt_arm, 0, s_real<0>, -0.17241379310344828, 1.0e-12, chain, computed},
    {"TS-089", shunt_arm, 0, s_imag<0>, -0.06896551724137931, 1.0e-12, exact, computed},
    {"TS-090", shunt_arm, 0, s_real<2>, 0.82758620689655172, 1.0e-12, chain, computed},
    {"TS-091", shunt_arm, 0, s_imag<2>, -0.06896551724137931, 1.0e-12, exact, computed},
    {"TS-092", shunt_arm, 0, s_real<3>, -0.17241379310344828, 1.0e-12, chain, computed},
    {"TS-093", shunt_arm, 0, s_imag<3>, -0.06896551724137931, 1.0e-12, exact, computed},
    {"TS-095", lossless_line, 0, s_imag<0>, 0.29268292682926829, 1.0e-12, exact, computed},
    {"TS-098", lossless_line, 0, s_real<3>, 0.36585365853658537, 1.0e-12, chain, computed},
    {"TS-100", lossy_line, 0, s_real<0>, -5.5377231331006319e-42, 1.0e-12, chain, computed},
    {"TS-101", lossy_line, 0, s_imag<0>, -3.1972059415932676e-42, 1.0e-12, exact, computed},
    {"TS-103", lossy_line, 0, s_imag<2>, -0.77184595357053672, 1.0e-12, exact, computed},
    {"TS-104", lossy_line, 0, s_real<3>, -3.3226338798603791e-42, 1.0e-12, chain, computed},
    {"TS-105", lossy_line, 0, s_imag<3>, -1.9183235649559606e-42, 1.0e-12, exact, computed},
    {"TS-106", transformer, 0, s_real<0>, 0.6, 1.0e-12, chain, computed},
    {"TS-107", transformer, 0, s_imag<0>, 0.0, 1.0e-12, exact, computed},
    {"TS-108", transformer, 0, s_real<2>, 0.8, 1.0e-12, chain, computed},
    {"TS-109", transformer, 0, s_imag<2>, 0.0, 1.0e-12, exact, computed},
    {"TS-110", transformer, 0, s_real<3>, -0.6, 1.0e-12, chain, computed},
    {"TS-113", l_network, 0, s_imag<0>, 0.041761552401711948, 1.0e-12, exact, computed},
    {"TS-114", l_network, 0, s_real<2>, 0.73528568578683215, 1.0e-12, chain, computed},
    {"TS-116", l_network, 0, s_real<3>, -0.0093150428221683643, 1.0e-12, chain, computed},
    {"TS-117", l_network, 0, s_imag<3>, 0.28625391904187363, 1.0e-12, exact, computed},
};

}  // namespace

TEST_CASE("figures computed outside agree with what is read and converted") {
  std::size_t agreeing = 0;
  double worst = 0;
  const char* worst_id = "";
  for (const Check& check : checks) {
    INFO(check.id << ", " << check.source << ", " << check.status);
    const Reading result = read(check.file());
    REQUIRE(result.ok());
    const double off = std::abs(check.quantity(*result.value, check.index) - check.expected);
    CHECK(off <= check.tolerance);
    agreeing += off <= check.tolerance ? 1 : 0;
    if (off / check.tolerance > worst) {
      worst = off / check.tolerance;
      worst_id = check.id;
    }
  }
  std::cout << "touchstone figures: " << std::size(checks) << " rows, " << agreeing << " agree, the worst (" << worst_id
            << ") at " << worst << " of its tolerance\n";
}

}  // namespace wattfall::measured
