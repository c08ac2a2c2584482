// Published and computed figures of matching networks: the search with ideal parts must find the closed forms' values,
// and the chain-matrix model that all tests lean on must give the efficiencies and impedances of lossy ones.
#include <catch2/catch.hpp>
#include <limits>

#include "cases.hpp"
#include "match_rows.hpp"

namespace {

using namespace tuner_test;

constexpr double ideal = std::numeric_limits<double>::infinity();
constexpr double two_pi = 6.283185307179586477;

/// Values of least SWR against the source; knobs without width are fixed parts.
std::vector<double> matched(const Ladder& ladder, const std::vector<sdk::KnobRange>& knobs) {
  const Found found = ask(knobs, [&](const double* x, double*) {
    const Ohms z = solve(ladder, x).input_ohm;
    const double r = std::abs((z - ladder.source_ohm) / (z + ladder.source_ohm));
    return r < 1 ? -(1 + r) / (1 - r) : -std::numeric_limits<double>::infinity();
  });
  REQUIRE(found.ok);
  return found.setting;
}

/// Reactances from 1/300 to 300 times the source's resistance, as values at this frequency.
std::vector<sdk::KnobRange> wide_knobs(const Ladder& ladder) {
  const double w = two_pi * ladder.frequency_hz;
  std::vector<sdk::KnobRange> knobs;
  for (const Part& part : ladder.parts) {
    const double middle = part.coil ? ladder.source_ohm / w : 1 / (w * ladder.source_ohm);
    knobs.push_back(log_knob(middle / 300, middle * 300));
  }
  return knobs;
}

double element_of(const MatchRow& row, const Ladder& ladder, const std::vector<double>& values) {
  const std::size_t series = ladder.parts[0].series ? 0 : 1;
  const double x = part_impedance(ladder.parts[series], values[series], row.frequency_hz).imag();
  const double b = -1 / part_impedance(ladder.parts[1 - series], values[1 - series], row.frequency_hz).imag();
  switch (row.element) {
    case Element::series_ohm:
      return x;
    case Element::series_part:
      return values[series];
    case Element::shunt_siemens:
      return b;
    case Element::shunt_ohm:
      return std::abs(1 / b);
    case Element::shunt_part:
      return values[1 - series];
  }
  return 0;
}

/// A T of series C1, shunt L, series C2 with C2 given: values found with ideal parts, figures with coil Q 200,
/// capacitors 1000.
struct TeeRow {
  const char* ids;
  Ohms load;
  double frequency_hz;
  double c2_pf;
  double c1_pf;  ///< 0: not in the rows
  double l_uh;   ///< 0: not in the rows
  double efficiency;
  double input_r;
  double input_x;  ///< 0: not in the rows
};

// mpmath at 40 digits, closed form with chain matrix verified; status: computed.
const TeeRow tee_rows[] = {
    {"PT-022 024 025 026",
     {200, 0},
     3.6e6,
     200,
     314.8563701088845,
     0,
     0.97702327594090975,
     50.865280314782679,
     -0.66336894583224679},
    {"PT-033 034 035", {25, -100}, 7.1e6, 200, 0, 0, 0.92363826800865646, 53.880262415286239, -1.3240969507093407},
    {"PT-043 048", {1000, 300}, 14.2e6, 100, 0, 0, 0.97482851137047064, 51.177533108331659, 0},
    {"PT-049 050 051 052 053",
     {10, -300},
     1.85e6,
     500,
     81.574962812112438,
     28.081983798790178,
     0.72473015313877478,
     68.865795526893465,
     -1.9490374596824314},
};

/// L-network, coil in series with the lower resistance, lossless capacitor; mpmath at 40 digits, status: computed.
struct RatioRow {
  const char* id;
  double ratio;
  double coil_q;
  double efficiency;
};

const RatioRow ratio_rows[] = {
    {"PT-058", 2, 50, 0.9803921568627451},     {"PT-060", 2, 100, 0.9900990099009901},
    {"PT-061", 2, 200, 0.99502487562189055},   {"PT-062", 4, 50, 0.96651880641632204},
    {"PT-064", 4, 100, 0.9829743842395831},    {"PT-065", 4, 200, 0.9914141020198071},
    {"PT-066", 10, 50, 0.94339622641509434},   {"PT-068", 10, 100, 0.97087378640776699},
    {"PT-069", 10, 200, 0.98522167487684729},  {"PT-070", 26, 50, 0.90909090909090909},
    {"PT-072", 26, 100, 0.95238095238095238},  {"PT-073", 26, 200, 0.97560975609756098},
    {"PT-074", 50, 50, 0.87719298245614035},   {"PT-076", 50, 100, 0.93457943925233645},
    {"PT-078", 100, 50, 0.83403010472581842},  {"PT-080", 100, 100, 0.90950535934687204},
    {"PT-081", 100, 200, 0.95260833377075161},
};

/// 50 ohm down to a low resistance by shunt C and series L, both lossy, retuned to 50 ohm exactly; mpmath at 40 digits
/// (root of the input impedance; chain matrix), status: computed. 0: not in the rows.
struct RetunedRow {
  const char* ids;
  double low_ohm;
  double coil_q;
  double capacitor_q;
  double coil_ohm;
  double capacitor_ohm;
  double efficiency;
};

const RetunedRow retuned_rows[] = {
    {"PT-086 087 088", 12.5, 100, 500, 21.82524228224553, 29.236449462833821, 0.9794777542747681},
    {"PT-093 095", 5, 100, 1000, 15.22591471051425, 0, 0.96758867034696199},
    {"PT-100 101 102", 2.5, 200, 1000, 11.035475119590892, 11.627094695504128, 0.9741982233862513},
    {"PT-107 108 109", 1, 200, 2000, 7.13366304775771, 7.2840200048459212, 0.96224613179713058},
};

}  // namespace

TEST_CASE("ideal L networks: the search finds the textbooks' values") {
  for (const MatchRow& row : match_rows) {
    Ladder ladder{form(row.form).parts, {row.load_ohm[0], row.load_ohm[1]}, row.frequency_hz, row.source_ohm};
    for (Part& part : ladder.parts) part.q = ideal;
    const std::vector<double> values = matched(ladder, wide_knobs(ladder));
    INFO(row.id << " " << row.form << ": " << row.source << "; status: " << row.status);
    // The search stops where the SWR rounds to 1: a reflection of 1e-8 or so, and with it the values.
    const double tolerance = std::max(row.tolerance, 1e-6 * std::abs(row.expected));
    CHECK(element_of(row, ladder, values) == Approx(row.expected).margin(tolerance).epsilon(0));
  }
}

TEST_CASE("ideal T networks with one capacitor given: the closed form's values, and the losses of real parts there") {
  for (const TeeRow& row : tee_rows) {
    Ladder ladder{form("sC pL sC").parts, row.load, row.frequency_hz};
    for (Part& part : ladder.parts) part.q = ideal;
    std::vector<sdk::KnobRange> knobs = wide_knobs(ladder);
    knobs[2] = log_knob(row.c2_pf * 1e-12, row.c2_pf * 1e-12);
    const std::vector<double> values = matched(ladder, knobs);
    INFO(row.ids);
    if (row.c1_pf > 0) CHECK(values[0] * 1e12 == Approx(row.c1_pf).epsilon(1e-6));
    if (row.l_uh > 0) CHECK(values[1] * 1e6 == Approx(row.l_uh).epsilon(1e-6));
    for (Part& part : ladder.parts) part.q = part.coil ? 200 : 1000;
    const Answer answer = solve(ladder, values.data());
    CHECK(answer.efficiency == Approx(row.efficiency).epsilon(1e-6));
    CHECK(answer.input_ohm.real() == Approx(row.input_r).epsilon(1e-6));
    if (row.input_x != 0) CHECK(answer.input_ohm.imag() == Approx(row.input_x).margin(2e-4));
  }
}

TEST_CASE("ideal pi tanks with the high side's capacitor set by Q: the closed form's values") {
  struct PiRow {
    const char* ids;
    double high_ohm, q, frequency_hz, l_uh, c2_pf;
  };
  // mpmath at 40 digits, closed form; status: computed.
  for (const PiRow& row : {PiRow{"PT-014 015", 2000, 12, 3.75e6, 7.973222239502905, 1375.2558893979107},
                           PiRow{"PT-020 021", 1500, 10, 14.2e6, 1.9206452939646199, 344.85007908509661}}) {
    Ladder ladder{form("pC sL pC").parts, {50, 0}, row.frequency_hz, row.high_ohm};
    for (Part& part : ladder.parts) part.q = ideal;
    const double c1 = row.q / (two_pi * row.frequency_hz * row.high_ohm);
    std::vector<sdk::KnobRange> knobs{log_knob(c1, c1), log_knob(0.01e-6, 100e-6), log_knob(1e-12, 10e-9)};
    const std::vector<double> values = matched(ladder, knobs);
    INFO(row.ids);
    CHECK(values[1] * 1e6 == Approx(row.l_uh).epsilon(1e-6));
    CHECK(values[2] * 1e12 == Approx(row.c2_pf).epsilon(1e-6));
  }
}

TEST_CASE("the model's efficiency of an L network is 1/(1 + Q/QL)") {
  for (const RatioRow& row : ratio_rows) {
    const double w = two_pi * 7.1e6;
    const double q = std::sqrt(row.ratio - 1);
    Ladder ladder{form("pC sL").parts, {10, 0}, 7.1e6, 10 * row.ratio};
    ladder.parts[0].q = ideal;
    ladder.parts[1].q = row.coil_q;
    const double values[] = {q / (w * 10 * row.ratio), q * 10 / w};
    INFO(row.id);
    CHECK(solve(ladder, values).efficiency == Approx(row.efficiency).epsilon(1e-9));
  }
}

TEST_CASE("lossy L networks: the search tunes to 50 ohm exactly, at the computed values and efficiency") {
  for (const RetunedRow& row : retuned_rows) {
    Ladder ladder{form("pC sL").parts, {row.low_ohm, 0}, 7.1e6};
    ladder.parts[0].q = row.capacitor_q;
    ladder.parts[1].q = row.coil_q;
    const std::vector<double> values = matched(ladder, wide_knobs(ladder));
    INFO(row.ids);
    const double coil = part_impedance(ladder.parts[1], values[1], 7.1e6).imag();
    const double capacitor = -part_impedance(ladder.parts[0], values[0], 7.1e6).imag();
    CHECK(coil == Approx(row.coil_ohm).epsilon(1e-6));
    if (row.capacitor_ohm > 0) CHECK(capacitor == Approx(row.capacitor_ohm).epsilon(1e-6));
    CHECK(solve(ladder, values.data()).efficiency == Approx(row.efficiency).epsilon(1e-6));
  }
}
