// The network as text: header, then one record a frequency, a matrix row on a line of its own from three ports on.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

#include "measured/touchstone.hpp"

namespace wattfall::measured {
namespace {

constexpr std::size_t most_pairs_a_line = 4;  // Touchstone 1.1
constexpr double nothing_db = -6500;          // 10^(-6500/20) underflows to 0

struct UnitWords {
  const char* name;
  double hz;
};

UnitWords words_of(FrequencyUnit unit) {
  switch (unit) {
    case FrequencyUnit::hz:
      return {"Hz", 1};
    case FrequencyUnit::khz:
      return {"kHz", 1e3};
    case FrequencyUnit::mhz:
      return {"MHz", 1e6};
    case FrequencyUnit::ghz:
      break;
  }
  return {"GHz", 1e9};
}

const char* word_of(NumberFormat format) {
  if (format == NumberFormat::real_imaginary) return "RI";
  return format == NumberFormat::magnitude_angle ? "MA" : "DB";
}

void add_number(std::string& text, double value) {
  std::array<char, 32> room = {};
  const auto [end, error] = std::to_chars(room.data(), room.data() + room.size(), value);
  text.append(room.data(), error == std::errc{} ? end : room.data());
}

void add_pair(std::string& text, NumberFormat format, Complex value) {
  double first = value.real();
  double second = value.imag();
  if (format != NumberFormat::real_imaginary) {
    first = std::abs(value);
    second = std::arg(value) * (180 / std::numbers::pi);
  }
  if (format == NumberFormat::decibel_angle) first = first > 0 ? 20 * std::log10(first) : nothing_db;
  text += ' ';
  add_number(text, first);
  text += ' ';
  add_number(text, second);
}

bool one_reference(const Network& network) {
  const auto& all = network.reference_ohm;
  return std::adjacent_find(all.begin(), all.end(), std::not_equal_to<>()) == all.end();
}

/// What version 2 has around the option line.
void add_keywords(std::string& text, const Network& network) {
  text += "[Number of Ports] " + std::to_string(network.ports) + '\n';
  if (network.ports == 2) text += "[Two-Port Data Order] 21_12\n";
  text += "[Number of Frequencies] " + std::to_string(network.frequencies_hz.size()) + "\n[Reference]";
  for (const double reference : network.reference_ohm) {
    text += ' ';
    add_number(text, reference);
  }
  text += "\n[Network Data]\n";
}

void add_row(std::string& text, NumberFormat format, const Complex* row, std::size_t ports) {
  for (std::size_t column = 0; column < ports; ++column) {
    if (column > 0 && column % most_pairs_a_line == 0) text += '\n';
    add_pair(text, format, row[column]);
  }
}

void add_matrix(std::string& text, NumberFormat format, const Complex* matrix, std::size_t ports) {
  if (ports == 2) {
    for (const std::size_t place : {0, 2, 1, 3}) add_pair(text, format, matrix[place]);
    return;
  }
  for (std::size_t row = 0; row < ports; ++row) {
    if (row > 0) text += '\n';
    add_row(text, format, matrix + row * ports, ports);
  }
}

}  // namespace

std::string write_touchstone(const Network& network, NumberFormat format, FrequencyUnit unit) {
  const bool version_1 = one_reference(network);
  const UnitWords words = words_of(unit);
  const auto ports = static_cast<std::size_t>(network.ports);
  std::string text = version_1 ? "" : "[Version] 2.0\n";
  text += std::string("# ") + words.name + " S " + word_of(format) + " R ";
  add_number(text, network.reference_ohm.empty() ? 50 : network.reference_ohm.front());
  text += '\n';
  if (!version_1) add_keywords(text, network);
  for (std::size_t index = 0; index < network.frequencies_hz.size(); ++index) {
    add_number(text, network.frequencies_hz[index] / words.hz);
    add_matrix(text, format, network.parameters.data() + index * ports * ports, ports);
    text += '\n';
  }
  if (!version_1) text += "[End]\n";
  return text;
}

}  // namespace wattfall::measured
