#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

struct Case {
  const char* expression;
  double expected;  ///< SI
};

/// The value of a resistor, coil, capacitor or plain number written with this expression.
std::complex<double> impedance_of(const std::string& expression) {
  const Resolved resolved = resolve_text(with_frame("load two at desk : " + expression));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return std::get<Value>(std::get<Load>(resolved.part("two").model).impedance).constant_value();
}

double number_of(const std::string& expression) {
  const Resolved resolved = resolve_text(with_frame("capacitor C at desk : 1 pF, tangent " + expression));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return std::get<Capacitor>(resolved.part("C").model).tangent->constant_value().real();
}

double farads_of(const std::string& expression) {
  const Resolved resolved = resolve_text(with_frame("capacitor C at desk : " + expression));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return std::get<Capacitor>(resolved.part("C").model).farads.constant_value().real();
}

}  // namespace

TEST_CASE("plain numbers are worked out in the usual order") {
  const Case cases[] = {{"1 + 2 * 3", 7},
                        {"(1 + 2) * 3", 9},
                        {"10 - 2 - 3", 5},
                        {"100 / 10 / 2", 5},
                        {"2 ^ 10", 1024},
                        {"2 ^ 3 ^ 2", 512},
                        {"-2 + 3", 1},
                        {"(-2) ^ 2", 4},
                        {"4 ^ 0.5", 2},
                        {"sqrt(16)", 4},
                        {"min(3, 2, 5)", 2},
                        {"max(3, 2, 5)", 5},
                        {"abs(-3)", 3},
                        {"ln(exp(2))", 2},
                        {"log10(1000)", 3},
                        {"sin(90 deg)", 1},
                        {"cos(0)", 1},
                        {"tan(45 deg)", 1},
                        {"4 * atan(1)", std::numbers::pi},
                        {"pi", std::numbers::pi},
                        {"5 %", 0.05},
                        {"7 MHz / 1 MHz", 7},
                        {"3 dB / 1 dB", 3},
                        {"sqrt((3 m) ^ 2 + (4 m) ^ 2) / 1 m", 5},
                        {"abs(3 + j4 ohm) / 1 ohm", 5}};
  for (const Case& one : cases) {
    INFO(one.expression);
    CHECK(number_of(one.expression) == Approx(one.expected).epsilon(1e-14));
  }
}

TEST_CASE("values of every unit arrive in SI units, by way of dimensions that agree") {
  const Case cases[] = {{"67.4 pF", 67.4e-12},
                        {"67.4pF", 67.4e-12},
                        {"0.1 uF", 1e-7},
                        {"1 / (2 * pi * 7 MHz * 50 ohm)", 1 / (2 * std::numbers::pi * 7e6 * 50)},
                        {"1 / ((2 * pi * 7 MHz) ^ 2 * 2 uH)", 1 / (std::pow(2 * std::numbers::pi * 7e6, 2) * 2e-6)},
                        {"2 uH / (50 ohm) ^ 2", 8e-10},
                        {"10 cm * 30 pF/m", 3e-12},
                        {"1 in * 1 nF / 1 ft", 1e-9 / 12},
                        {"1 mS / (1 MHz)", 1e-9},
                        {"1 A * 1 us / 1 kV", 1e-9},
                        {"1 W / (1 V) ^ 2 * 1 s", 1},
                        {"1 W / 1 V ^ 2 * 1 s", 1},
                        {"30 dBm / 1 W * 1 pF", 1e-12}};
  for (const Case& one : cases) {
    INFO(one.expression);
    CHECK(farads_of(one.expression) == Approx(one.expected).epsilon(1e-13));
  }
}

TEST_CASE("impedances may be written in any of their forms") {
  CHECK(impedance_of("28+j208 ohm") == std::complex<double>(28, 208));
  CHECK(impedance_of("50 - j12.5 ohm") == std::complex<double>(50, -12.5));
  CHECK(impedance_of("j50 ohm") == std::complex<double>(0, 50));
  CHECK(impedance_of("28 ohm + j208 ohm") == std::complex<double>(28, 208));
  CHECK(impedance_of("2 * (10 + j5 ohm)") == std::complex<double>(20, 10));
  CHECK(impedance_of("sqrt(75 ohm * 50 ohm)").real() == Approx(std::sqrt(3750.0)));
  CHECK(std::abs(impedance_of("1 / (1 / 50 ohm + 1 / j50 ohm)") - std::complex<double>(25, 25)) < 1e-12);
}

TEST_CASE("quantities may be used before they are set, and by each other") {
  const Resolved resolved =
      resolve_text(with_frame("capacitor C at desk : 2 * c\nset c = base / 2\nset base = 100 pF"));
  REQUIRE(resolved.good());
  CHECK(std::get<Capacitor>(resolved.part("C").model).farads.constant_value().real() == Approx(100e-12));
}

TEST_CASE("a value may follow the frequency, and is then worked out at each") {
  const Resolved resolved = resolve_text(with_frame("resistor R at desk : 3 ohm * sqrt(frequency / 7 MHz)"));
  REQUIRE(resolved.good());
  const Value& ohms = std::get<Resistor>(resolved.part("R").model).ohms;
  CHECK(ohms.depends_on_frequency());
  CHECK_FALSE(ohms.constant());
  CHECK(ohms.real_at(28e6, {}) == Approx(6.0));
}

TEST_CASE("a formula without knobs and frequency folds into a constant") {
  Formula sum;
  sum.op = Formula::Op::add;
  sum.operands.resize(2);
  sum.operands[0].constant = 2.0;
  sum.operands[1].constant = {3.0, 1.0};
  const Value value(sum);
  CHECK(value.constant());
  CHECK(value.constant_value() == std::complex<double>(5.0, 1.0));
}

TEST_CASE("every operation of a formula is worked out at the frequency and the setting") {
  using Op = Formula::Op;
  const auto of = [](Op op, std::vector<double> constants) {
    Formula formula;
    formula.op = op;
    Formula knob;
    knob.op = Op::knob;
    knob.knob = KnobId{0};
    formula.operands.push_back(knob);
    for (const double constant : constants) formula.operands.emplace_back().constant = constant;
    return Value(formula).at(7e6, std::vector<double>{4.0});
  };
  CHECK(of(Op::add, {2}) == 6.0);
  CHECK(of(Op::subtract, {1}) == 3.0);
  CHECK(of(Op::multiply, {3}) == 12.0);
  CHECK(of(Op::divide, {8}) == 0.5);
  CHECK(of(Op::power, {3}) == 64.0);
  CHECK(of(Op::min, {3, 5}) == 3.0);
  CHECK(of(Op::max, {3, 5}) == 5.0);
  CHECK(of(Op::negate, {}) == -4.0);
  CHECK(of(Op::sqrt, {}) == 2.0);
  CHECK(of(Op::abs, {}) == 4.0);
  CHECK(of(Op::ln, {}) == std::log(4.0));
  CHECK(of(Op::log10, {}) == std::log10(4.0));
  CHECK(of(Op::exp, {}) == std::exp(4.0));
  CHECK(of(Op::sin, {}) == std::sin(4.0));
  CHECK(of(Op::cos, {}) == std::cos(4.0));
  CHECK(of(Op::tan, {}) == std::tan(4.0));
  CHECK(of(Op::atan, {}) == std::atan(4.0));
}

TEST_CASE("a ganged quantity is one knob that moves every part written with it") {
  const Resolved resolved = resolve_text(
      with_frame("set c = 100 pF, adjustable 10 pF to 300 pF\ncapacitor A at desk : c\ncapacitor B at feed : c / 2\n"
                 "tune c at 7 MHz for most power into ant"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  REQUIRE(resolved.design().knobs.size() == 1);
  CHECK(resolved.knob("c").dim == dimension::capacitance);
  const std::vector<double> setting{200e-12};
  CHECK(std::get<Capacitor>(resolved.part("A").model).farads.real_at(7e6, setting) == Approx(200e-12));
  CHECK(std::get<Capacitor>(resolved.part("B").model).farads.real_at(7e6, setting) == Approx(100e-12));
}

TEST_CASE("brackets force the quantity where a property has the same name") {
  const Resolved resolved = resolve_text(with_frame("set Q = 2 uH\ninductor L at desk : (Q), Q 200\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(std::get<Inductor>(resolved.part("L").model).henries.constant_value() == 2e-6);
}
