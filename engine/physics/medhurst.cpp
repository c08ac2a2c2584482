// Medhurst's two tables and their interpolation. R. G. Medhurst, "H. F. resistance and self-capacitance of single-layer
// solenoids", Wireless Engineer 24, February and March 1947, tables VIII and of H; from memory.
#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "physics/solenoid.hpp"

namespace wattfall::physics {
namespace {

constexpr std::array<double, 11> wire_over_pitch_columns{0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0};

struct ResistanceRow {
  double length_over_diameter;
  std::array<double, 11> ratio;  // the first column is the lone wire's limit, 1
};
constexpr std::array<ResistanceRow, 11> resistance_rows{{
    {0.0, {1, 1.02, 1.07, 1.16, 1.26, 1.44, 1.74, 2.12, 2.74, 3.73, 5.31}},
    {0.2, {1, 1.02, 1.08, 1.19, 1.29, 1.48, 1.77, 2.20, 2.83, 3.84, 5.45}},
    {0.4, {1, 1.03, 1.08, 1.21, 1.33, 1.54, 1.83, 2.28, 2.97, 3.99, 5.65}},
    {0.6, {1, 1.03, 1.10, 1.22, 1.38, 1.60, 1.89, 2.38, 3.10, 4.11, 5.80}},
    {0.8, {1, 1.03, 1.10, 1.23, 1.42, 1.64, 1.92, 2.44, 3.20, 4.17, 5.80}},
    {1.0, {1, 1.03, 1.10, 1.24, 1.45, 1.67, 1.94, 2.47, 3.17, 4.10, 5.55}},
    {2.0, {1, 1.04, 1.13, 1.28, 1.50, 1.74, 1.98, 2.32, 2.74, 3.36, 4.10}},
    {4.0, {1, 1.04, 1.15, 1.32, 1.54, 1.78, 2.01, 2.27, 2.60, 3.05, 3.54}},
    {6.0, {1, 1.04, 1.16, 1.34, 1.56, 1.80, 2.03, 2.29, 2.60, 2.92, 3.31}},
    {8.0, {1, 1.04, 1.165, 1.34, 1.57, 1.81, 2.08, 2.34, 2.62, 2.90, 3.20}},
    {10.0, {1, 1.04, 1.17, 1.35, 1.58, 1.83, 2.10, 2.37, 2.65, 2.93, 3.23}},
}};
constexpr std::array<double, 11> endless_row{1, 1.05, 1.19, 1.395, 1.65, 1.93, 2.22, 2.51, 2.815, 3.11, 3.41};

struct CapacitanceRow {
  double length_over_diameter, picofarad_per_cm;
};
constexpr std::array<CapacitanceRow, 32> capacitance_rows{
    {{0.10, 0.96}, {0.15, 0.79}, {0.20, 0.70}, {0.25, 0.64}, {0.30, 0.60}, {0.35, 0.57}, {0.40, 0.54}, {0.45, 0.52},
     {0.50, 0.50}, {0.60, 0.48}, {0.70, 0.47}, {0.80, 0.46}, {0.90, 0.46}, {1.0, 0.46},  {1.5, 0.47},  {2.0, 0.50},
     {2.5, 0.56},  {3.0, 0.61},  {3.5, 0.67},  {4.0, 0.72},  {4.5, 0.77},  {5.0, 0.81},  {6.0, 0.92},  {7.0, 1.01},
     {8.0, 1.12},  {9.0, 1.22},  {10.0, 1.32}, {15.0, 1.86}, {20.0, 2.36}, {25.0, 2.9},  {30.0, 3.4},  {50.0, 5.8}}};

double between(double x, double x0, double x1, double y0, double y1) {
  return std::lerp(y0, y1, (x - x0) / (x1 - x0));
}

double along_row(const std::array<double, 11>& row, double wire_over_pitch) {
  const double place = std::clamp(wire_over_pitch, 0.0, 1.0) * 10.0;
  const auto column = std::min<std::size_t>(static_cast<std::size_t>(place + 1e-9), 9);
  return std::lerp(row[column], row[column + 1], place - wire_over_pitch_columns[column] * 10.0);
}

}  // namespace

double medhurst_resistance_ratio(double length_over_diameter, double wire_over_pitch) {
  const ResistanceRow& last = resistance_rows.back();
  if (length_over_diameter >= last.length_over_diameter)
    return between(1.0 / length_over_diameter, 0.0, 1.0 / last.length_over_diameter,
                   along_row(endless_row, wire_over_pitch), along_row(last.ratio, wire_over_pitch));
  const double place = std::max(length_over_diameter, 0.0);
  const auto above = std::ranges::upper_bound(resistance_rows, place, {}, &ResistanceRow::length_over_diameter);
  const auto below = std::prev(above);
  return between(place, below->length_over_diameter, above->length_over_diameter,
                 along_row(below->ratio, wire_over_pitch), along_row(above->ratio, wire_over_pitch));
}

double medhurst_capacitance_f_per_m(double length_over_diameter) {
  const double place = std::clamp(length_over_diameter, capacitance_rows.front().length_over_diameter,
                                  capacitance_rows.back().length_over_diameter);
  auto above = std::ranges::upper_bound(capacitance_rows, place, {}, &CapacitanceRow::length_over_diameter);
  if (above == capacitance_rows.end()) --above;
  const auto below = std::prev(above);
  return 1e-10 * between(place, below->length_over_diameter, above->length_over_diameter, below->picofarad_per_cm,
                         above->picofarad_per_cm);
}

}  // namespace wattfall::physics
