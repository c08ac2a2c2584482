// Outside figures against the line plugin: the cable table, the fit, and what follows from gamma and Z0. Each table
// ends with a line that says how many rows of each status hold; a row that is known not to hold stands in `known` with
// its reason.
#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>

#include "checks.hpp"
#include "least_squares.hpp"
#include "line_under_test.hpp"
#include "three_term_laws.hpp"

using namespace line_test;
using namespace checks;

namespace {

constexpr double feet_per_m = 1.0 / 0.3048;  // exact
constexpr double pi = 3.14159265358979323846;

const std::map<std::string, std::string> known = {
    {"CA-049", "two terms cannot meet 1.50 at 50 MHz and the other nine points: 5 % low there, the row allows 5.0 %"},
    {"CA-071", "one measured specimen; the nominal table, which is published too at 450 MHz, is 8 % above it"},
    {"CA-074",
     "the thin conductor of RG-174: a curve through 50 MHz to 1 GHz is 12 % low at 10 MHz, the row allows 4.5 %"},
    {"CA-163", "RG-174 at 1 MHz: the conductor is no longer deep against the skin, and the model halves the loss"},
};

/// Holds rows and counts them by status.
class Tally {
 public:
  explicit Tally(std::string what) : what_(std::move(what)) {}

  template <class Row>
  void hold(const Row& row, double got) {
    const bool holds = std::abs(got - row.expected) <= row.tolerance;
    INFO(row.id << ": expected " << row.expected << " +- " << row.tolerance << ", got " << got << "; " << row.source);
    if (known.contains(row.id)) {
      INFO("known not to hold, but it does: take it out of `known`");
      CHECK_FALSE(holds);
      ++missed_;
      known_ += std::string("\n  known not to hold: ") + row.id + ": " + known.at(row.id);
      return;
    }
    CHECK(holds);
    ++counts_[static_cast<int>(row.status)];
    const double share = std::abs(got - row.expected) / row.tolerance;
    if (holds && share > worst_) worst_ = share, where_ = row.id;
  }

  void print(const std::string& remark = "") const {
    const int agreeing = counts_[0] + counts_[1] + counts_[2];
    WARN(what_ << ": " << agreeing + missed_ << " rows, " << agreeing << " agree (" << counts_[0] << " published, "
               << counts_[1] << " from memory, " << counts_[2] << " computed), the worst (" << where_ << ") at "
               << worst_ << " of its tolerance" << known_ << remark);
  }

 private:
  std::string what_;
  int counts_[3] = {0, 0, 0}, missed_ = 0;
  double worst_ = 0.0;
  const char* where_ = "";
  std::string known_;
};

/// Matched loss [dB/100ft] that the plugin gives for a cable of its table.
double matched_db_per_100ft(const char* name, double mhz) {
  const sdk::Cable& it = cable(name);
  const Propagation line = propagate(it.impedance_ohm, it.velocity, fit_of(it), mhz * 1e6);
  return line.alpha() * 20.0 / std::log(10.0) * 30.48;
}

double figure_of(Figure figure, const Propagation& line, double length_m, complex load_ohm) {
  const complex input_ohm = line.input_ohm(length_m, load_ohm);
  switch (figure) {
    case Figure::resistance:
      return input_ohm.real();
    case Figure::reactance:
      return input_ohm.imag();
    case Figure::conductance:
      return (1.0 / input_ohm).real();
    case Figure::susceptance:
      return (1.0 / input_ohm).imag();
    case Figure::alpha:
      return line.alpha() * 20.0 / std::log(10.0);
    case Figure::beta:
      return line.beta();
    case Figure::z0_real:
      return line.impedance_ohm.real();
    case Figure::z0_imag:
      return line.impedance_ohm.imag();
    case Figure::total_loss:
      return line.loss_db(length_m, load_ohm);
    case Figure::matched_loss:
      return line.alpha() * 20.0 / std::log(10.0) * length_m;
  }
  return 0.0;
}

double figure_of(const MismatchRow& row) {
  constexpr double length_m =
      37.0;  // any: with a real Z0 and a resistive load these figures depend on the matched loss alone
  const Propagation line = propagate(50.0, 0.66, losing(row.matched_db / length_m, 14e6), 14e6);
  const complex load_ohm = 50.0 * row.load_swr;
  if (row.figure == MismatchFigure::total) return line.loss_db(length_m, load_ohm);
  if (row.figure == MismatchFigure::added) return line.loss_db(length_m, load_ohm) - row.matched_db;
  const complex input_ohm = line.input_ohm(length_m, load_ohm);
  const double gamma = std::abs((input_ohm - 50.0) / (input_ohm + 50.0));
  return (1.0 + gamma) / (1.0 - gamma);
}

double figure_of(const ThreeTermRow& row) {
  std::array<line_loss::Column, 3> columns;
  for (const LossAt& point : row.points) {
    const double terms[] = {1.0, std::sqrt(point.mhz), point.mhz};
    for (std::size_t j = 0; j < 3; ++j) columns[j].push_back(terms[j] / point.db_per_100ft);
  }
  const std::vector<double> k =
      row.sign == Sign::free ? line_loss::least_squares(columns) : line_loss::non_negative_least_squares(columns);
  if (row.figure != Fitted::residual_percent) return k[static_cast<std::size_t>(row.figure)];
  double worst = 0.0;
  for (std::size_t i = 0; i < row.points.size(); ++i)
    worst = std::max(worst, std::abs(k[0] * columns[0][i] + k[1] * columns[1][i] + k[2] * columns[2][i] - 1.0));
  return 100.0 * worst;
}

/// The line of constants R, L, G, C a metre, told to the model as loss at a frequency, velocity and complex Z0.
Propagation propagate_rlgc(const LossyRow& row) {
  const double w = 2.0 * pi * row.frequency_hz;
  const complex series{row.r, w * row.l}, shunt{row.g, w * row.c};
  const complex gamma = std::sqrt(series * shunt);
  const Fit k = losing(gamma.real() * 20.0 / std::log(10.0), row.frequency_hz);
  return propagate(std::sqrt(series / shunt), w / (gamma.imag() * c0), k, row.frequency_hz);
}

const Single& single(const std::string& id) {
  const auto found =
      std::find_if(std::begin(single_rows), std::end(single_rows), [&](const Single& row) { return row.id == id; });
  if (found == std::end(single_rows)) throw std::runtime_error("no row " + id);
  return *found;
}

}  // namespace

TEST_CASE("matched losses of the table agree with outside figures") {
  Tally tally("Matched loss of cables");
  for (const CableRow& row : loss_rows) tally.hold(row, matched_db_per_100ft(row.cable, row.mhz));
  for (const CableRow& row : loss_bound_rows) {
    const double got = matched_db_per_100ft(row.cable, row.mhz);
    INFO(row.id << ": a specification's upper limit");
    CHECK(got <= row.expected + row.tolerance);
  }
  tally.print("\n  and 4 published upper limits");
}

TEST_CASE("working voltages and velocities of the table agree with outside figures") {
  Tally tally("Voltage and velocity of cables");
  for (const CableRow& row : volts_rows) tally.hold(row, cable(row.cable).limit_volts_peak / std::sqrt(2.0));
  for (const CableRow& row : velocity_rows) tally.hold(row, cable(row.cable).velocity);
  const double rg58 = cable("RG-58").limit_volts_peak, rg213 = cable("RG-213").limit_volts_peak;
  tally.hold(single("CA-019"), rg58 * rg58 / 2.0 / 50.0);
  tally.hold(single("CA-021"), rg213 * rg213 / 2.0 / 50.0 / 4.0);
  tally.print();
}

TEST_CASE("impedance and velocity imply the capacitance of the handbooks") {
  Tally tally("Capacitance of cables");
  const double f = 14e6, w = 2.0 * pi * f;
  for (const CapacitanceRow& row : capacitance_rows) {
    const Propagation line = propagate(row.impedance_ohm, row.velocity, {}, f);
    tally.hold(row, line.beta() / (w * line.impedance_ohm.real()) * 1e12 * row.per_m);
  }
  const Propagation line = propagate(50.0, 0.66, {}, f);
  const double pf_per_ft = line.beta() / (w * 50.0) * 1e12 / feet_per_m;
  for (const char* id : {"CA-001", "CA-001x"}) tally.hold(single(id), 50.0 * 66.0 * pf_per_ft);
  tally.print();
}

TEST_CASE("the fit is the non-negative least squares of the relative errors") {
  Tally tally("Coefficients of the fit");
  for (const FitRow& row : fit_rows) {
    std::vector<sdk::LossPoint> losses(row.points, row.points + row.count);
    for (sdk::LossPoint& point : losses) point.db_per_100m *= 100.0 / 30.48;
    const Fit k = fit(losses);
    tally.hold(row, row.coefficient == 1 ? k.k1 * 30.48 * 1e3 : k.k2 * 30.48 * 1e6);
  }
  tally.print();
}

TEST_CASE("the least squares behind the fit hold with a constant term too") {
  Tally tally("Loss laws of three terms");
  for (const ThreeTermRow& row : three_term_rows) tally.hold(row, figure_of(row));
  tally.print();
}

TEST_CASE("a mismatched line loses what the closed form says") {
  Tally tally("Mismatched lines");
  for (const MismatchRow& row : mismatch_rows) tally.hold(row, figure_of(row));
  tally.print();
}

TEST_CASE("lossless lines transform loads as the textbooks say") {
  Tally tally("Lossless lines");
  for (const LosslessRow& row : lossless_rows) {
    const Propagation line = propagate(row.impedance_ohm, row.velocity, {}, row.frequency_hz);
    const double length_m = row.wavelengths > 0.0 ? row.wavelengths * 2.0 * pi / line.beta() : row.length_m;
    tally.hold(row, figure_of(row.figure, line, length_m, row.load_ohm));
  }
  tally.print();
}

TEST_CASE("lossy lines with a complex impedance transform loads and lose power as computed elsewhere") {
  Tally tally("Lossy lines");
  for (const LossyRow& row : lossy_rows)
    tally.hold(row, figure_of(row.figure, propagate_rlgc(row), row.length_m, row.load_ohm));
  tally.print();
}

TEST_CASE("nepers, phase velocity and lengths convert") {
  Tally tally("Conversions");
  const Propagation line = propagate(50.0, 0.5, losing(1.0, 10e6), 10e6);
  tally.hold(single("CA-261"), 1.0 / line.alpha());
  const Propagation fast = propagate(50.0, 2e8 / c0, {}, 100e6);
  for (const char* id : {"TL-045", "TL-045x"}) tally.hold(single(id), 2.0 * pi * 100e6 / fast.beta());
  const Propagation eighth = propagate(50.0, 0.66 * 3e8 / c0, {}, 200e6);
  for (const char* id : {"TL-122", "TL-122x"}) tally.hold(single(id), pi / 4.0 / eighth.beta());
  tally.print();
}

TEST_CASE("power along lossy lines is as worked out elsewhere") {
  Tally tally("Power along lines");
  const Propagation mild = propagate(50.0, 0.66, losing(0.01, 10e6), 10e6);
  for (const char* id : {"TL-126", "TL-126x"})
    tally.hold(single(id), 800.0 * std::pow(10.0, -mild.loss_db(50.0, 50.0) / 10.0));

  // 8 dB/m (the exact rows take it exactly, not as the 8 / 8.686 Np/m that the text prints), one radian a metre at a
  // velocity of light's half.
  const double f = 0.5 * c0 / (2.0 * pi);
  const Propagation heavy = propagate({60.0, 40.0}, 0.5, losing(8.0, f), f);
  for (const char* id : {"TL-009", "TL-009x"}) tally.hold(single(id), heavy.input_ohm(2.0, {20.0, 50.0}).imag());
  tally.hold(single("TL-014"), std::pow(10.0, -heavy.loss_db(2.0, {20.0, 50.0}) / 10.0));

  // 10 V peak behind 50 ohm, 2.3 wavelengths of one metre, 0.5 dB a wavelength, 100 ohm.
  const Propagation waves = propagate(50.0, 1.0, losing(0.5, c0), c0);
  const complex input_ohm = waves.input_ohm(2.3, 100.0);
  const double into_w = 0.5 * std::norm(10.0 / (50.0 + input_ohm)) * input_ohm.real();
  tally.hold(single("TL-094"), into_w);
  tally.hold(single("TL-095"), into_w * (1.0 - std::pow(10.0, -waves.loss_db(2.3, 100.0) / 10.0)));
  tally.print();
}
