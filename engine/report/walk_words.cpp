// One function a rule. A sentence says why the rule holds, then what it did to these numbers.
#include "walk_words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "grammar/quantity.hpp"
#include "ledger/swr.hpp"
#include "report/spelling.hpp"

namespace wattfall::report {
namespace {

using Complex = std::complex<double>;
using walk::Ohms;
using walk::Rule;
using walk::Step;

/// What rounding leaves beside a large part is nothing to read.
Complex clean(Complex z) {
  const double speck = 1e-6 * std::abs(z);
  return {std::abs(z.real()) < speck ? 0.0 : z.real(), std::abs(z.imag()) < speck ? 0.0 : z.imag()};
}

std::string in(Complex value, Dimension dim, int digits = 4) { return spell({clean(value), dim}, digits); }

/// "20 - j33.9" of a number in one unit, never in thousands of it: the two parts of a sum are read side by side.
std::string plain(Complex value, const std::string& unit) {
  const Complex z = clean(value);
  const std::string re = spell({z.real(), dimension::number}, 4), im = "j" + spell({std::abs(z.imag()), dimension::number}, 4);
  if (z.imag() == 0.0) return re + ' ' + unit;
  const bool negative = z.imag() < 0.0;
  return z.real() == 0.0 ? (negative ? "-" : "") + im + ' ' + unit : re + (negative ? " - " : " + ") + im + ' ' + unit;
}

std::string ohms(Complex z) { return plain(z, "ohm"); }
std::string ohms(const Ohms& z) { return z ? ohms(*z) : "an open end"; }

/// Millisiemens are what antennas and tuners come out at.
std::string millisiemens(Complex y) { return plain(1e3 * y, "mS"); }

std::string degrees_text(double degrees) {
  return spell({degrees, dimension::number}, 4) + " degrees (" + spell({degrees / 360.0, dimension::number}, 3) + " waves)";
}

const char* sort_of(double reactance) { return reactance > 0.0 ? "inductive" : "capacitive"; }

double swr_on(Complex z, Complex z0) { return ledger::swr_of(std::abs((z - z0) / (z + z0))); }

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

/// How two reactances (or susceptances) meet: the sentence's tail.
std::string meeting(double before, double added, double after, const char* letter) {
  const double small = 0.02 * std::max(std::abs(before), std::abs(added));
  if (std::abs(added) <= small || std::abs(before) <= small) return "";
  const std::string both = std::string("the two ") + letter;
  if ((before > 0.0) == (added > 0.0)) return " Both " + std::string(letter) + " have one sign, so they grow.";
  if (std::abs(after) <= small) return " Of opposite signs, " + both + " cancel: this is resonance.";
  if ((after > 0.0) == (before > 0.0)) return " Of opposite signs, " + both + " take from each other.";
  return " Of opposite signs, " + both + " meet and the added one is the larger, so the sign turns.";
}

}  // namespace

std::string name_of(Rule rule) {
  switch (rule) {
    case Rule::start: return "start";
    case Rule::series: return "series";
    case Rule::parallel: return "parallel";
    case Rule::line: return "line";
    case Rule::turns: return "turns";
    case Rule::two_port: return "two_port";
    case Rule::coupled: return "coupled";
    case Rule::choke: return "choke";
    case Rule::box: return "box";
  }
  return "";
}

std::string WalkWords::place(int node, int other) const {
  const auto name = [&](int n) { return n < static_cast<int>(design_.nodes.size()) ? design_.nodes[n].name : std::string("inside"); };
  return other == 0 ? name(node) : node == 0 ? name(other) : "(" + name(node) + " " + name(other) + ")";
}

std::string WalkWords::name(const Step& step) const {
  if (step.rule == Rule::box) return design_.boxes[step.box.index].name;
  if (step.parts.empty()) return design_.source.name;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < std::min<std::size_t>(step.parts.size(), 3); ++i) names.push_back(part(step.parts[i]).name);
  if (step.parts.size() > 3) names.back() = std::to_string(step.parts.size() - 2) + " more";
  return joined(names);
}

/// The main value at this frequency and setting.
std::string WalkWords::value_of(const design::Part& part) const {
  const auto at = [&](const design::Value& value) { return value.at(result_.walk.frequency_hz, result_.knobs); };
  const auto line = [&](const design::LineMake& make) {
    const std::string length = in(at(make.length_m).real(), dimension::length);
    return make.cable.empty() ? length + ", " + ohms(make.impedance_ohm) : length + " of " + make.cable;
  };
  if (const auto* one = std::get_if<design::Resistor>(&part.model)) return in(at(one->ohms), dimension::resistance);
  if (const auto* one = std::get_if<design::Capacitor>(&part.model)) return in(at(one->farads), dimension::capacitance);
  if (const auto* one = std::get_if<design::Line>(&part.model)) return line(one->make);
  if (const auto* one = std::get_if<design::Stub>(&part.model)) return line(one->make) + (one->open ? ", open" : ", shorted");
  if (const auto* one = std::get_if<design::Transformer>(&part.model)) return "turns 1:" + in(at(one->ratio), dimension::number);
  if (const auto* one = std::get_if<design::Pad>(&part.model)) return in(at(one->attenuation_db), dimension::level);
  if (const auto* one = std::get_if<design::Inductor>(&part.model))
    return one->wound != nullptr || one->core != nullptr ? "by its winding" : in(at(one->henries), dimension::inductance);
  return "";
}

std::string WalkWords::what(const Step& step) const {
  using Role = graph::Element::Role;
  if (step.rule == Rule::box) return "box, " + design_.boxes[step.box.index].kind;
  if (step.parts.empty()) return "source";
  if (step.end == Step::End::open) return "its open far end";
  if (step.end == Step::End::shorted) return "its shorted far end";
  if (step.rule == Rule::coupled) return "coupled coils";
  if (step.parts.size() > 1) return "branch of " + std::to_string(step.parts.size()) + " parts";
  const design::Part& one = part(step.parts.front());
  if (step.role == Role::winding) return "its winding";
  if (step.role == Role::core) return "its core";
  if (std::holds_alternative<design::Selector>(one.model)) return "closed contact";
  const std::string value = value_of(one);
  return value.empty() ? one.kind : one.kind + ", " + value;
}

std::string WalkWords::rule(const Step& step) const {
  switch (step.rule) {
    case Rule::start: return "start";
    case Rule::series: return "in series";
    case Rule::parallel: return "in parallel";
    case Rule::line: return "along line";
    case Rule::turns: return "n squared";
    case Rule::two_port: return "two-port";
    case Rule::coupled: return "coupled";
    case Rule::choke: return "passes";
    case Rule::box: return "box";
  }
  return "";
}

std::string WalkWords::start(const Step& step, bool outermost) const {
  if (step.end == Step::End::open) return "At the open far end no current flows: an impedance without bound, from which the line is walked back.";
  if (step.end == Step::End::shorted) return "At the shorted far end no voltage stands: 0 ohm, from which the line is walked back.";
  if (!outermost) return name(step) + " alone is " + ohms(step.after) + "; what stands beside it on this branch follows.";
  const std::string at = " at " + spell_frequency(result_.walk.frequency_hz);
  if (step.parts.empty())
    return "Looked at from the load, the rig is no longer a source but its own impedance, " + ohms(step.after) + ": the way out begins with it.";
  return "The load " + name(step) + " is " + ohms(step.after) + at + ": the way in begins with it, and each part is put before it in turn.";
}

std::string WalkWords::series(const Step& step) const {
  if (!step.before || !step.after) return "One of the two is open, so no current flows and the branch stays open.";
  const Complex added = *step.added, before = *step.before;
  if (std::abs(added) == 0.0) return "A closed contact is a wire: it adds nothing.";
  if (std::abs(before) == 0.0) return "Behind a closed contact, which is a wire, " + name(step) + " is all there is.";
  std::string text = "One current flows through both, so R adds to R and X to X: " + ohms(before) + ", and " + ohms(added) + " of " + name(step) + ".";
  return text + meeting(before.imag(), added.imag(), step.after->imag(), "X");
}

std::string WalkWords::parallel(const Step& step) const {
  if (step.added && *step.added == 0.0) return name(step) + " is a short across it: nothing of what lies behind is seen any more.";
  if (step.before && *step.before == 0.0) return "It stands across a short, which stays a short.";
  if (!step.before || !step.added || !step.after || *step.after == 0.0) return "One of the two is open, so the other alone is seen.";
  const Complex before = 1.0 / *step.before, added = 1.0 / *step.added, after = 1.0 / *step.after;
  std::string text = "One voltage stands across both, so G adds to G and B to B: " + ohms(step.before) + " is " + millisiemens(before) + ", " + name(step) +
                     (step.parts.size() > 1 ? " bring " : " brings ") + millisiemens(added) + ", and 1 over their sum, " + millisiemens(after) + ", is " + ohms(step.after) + ".";
  return text + meeting(before.imag(), added.imag(), after.imag(), "B");
}

/// A line that ends in nothing or in a short.
std::string WalkWords::stub(const Step& step, double degrees, std::complex<double> z0) const {
  const bool open = !step.before;
  const std::string acts = !step.after || step.after->imag() == 0.0 ? "" : std::string(", here ") + sort_of(step.after->imag());
  return std::string(open ? "An open" : "A shorted") + " line of " + degrees_text(degrees) + " is a reactance of its own, " + (open ? "-j Z0/tan" : "j Z0 tan") +
         " of its length with Z0 " + ohms(z0) + acts + ": " + ohms(step.after) + ".";
}

std::string WalkWords::line(const Step& step) const {
  const double degrees = step.gamma_l.imag() * 180.0 / std::numbers::pi;
  const Complex z0 = step.line_impedance_ohm;
  const double loss_db = 20.0 / std::numbers::ln10 * step.gamma_l.real();
  if (!step.before || *step.before == 0.0) return stub(step, degrees, z0);
  const double far = swr_on(*step.before, z0), near = step.after ? swr_on(*step.after, z0) : NAN;
  const std::string before = ohms(step.before);
  std::string text;
  const double half = std::remainder(degrees, 180.0), quarter = std::remainder(degrees - 90.0, 180.0);
  if (far < 1.005) text = before + " is the line's own " + ohms(z0) + ", so no wave comes back: whatever its length, the impedance stays" + (loss_db > 0.005 ? "; only watts are lost on it, " + spell_level(loss_db) + "." : ".");
  else if (std::abs(half) < 1.0) text = "After " + degrees_text(degrees) + ", whole half waves, the far end's " + before + " repeats, whatever Z0 is.";
  else if (std::abs(quarter) < 1.0)
    text = "After " + degrees_text(degrees) + ", an odd number of quarter waves, " + before + " is turned round Z0: Z0 squared over Z, with " + ohms(z0) + ".";
  else
    text = "Telegrapher's equation: on " + ohms(z0) + " line, " + before + " sends a wave back (SWR " + spell_ratio(far) + "), and " + degrees_text(degrees) +
           " further it meets the outgoing one in another phase, so that volts over amps are " + ohms(step.after) + ".";
  if (loss_db > 0.005 && far >= 1.005) text += " Its " + spell_level(loss_db) + " of matched loss leave an SWR of " + spell_ratio(near) + " here.";
  return text;
}

std::string WalkWords::turns(const Step& step) const {
  if (std::abs(step.factor - 1.0) < 1e-12) return "As many turns on either side: the impedance passes as it is, only the conductors part.";
  const bool up = step.factor > 1.0;
  const double square = up ? step.factor : 1.0 / step.factor;
  return "Turns of 1 to n = " + in(std::sqrt(square), dimension::number) + (up ? " raise the volts and lower" : " lower the volts and raise") +
         " the amps by n, so the impedance is " + (up ? "multiplied" : "divided") + " by n squared, " + in(square, dimension::number) + ".";
}

std::string WalkWords::two_port(const Step& step) const {
  const design::Part& one = part(step.parts.front());
  if (std::holds_alternative<design::Pad>(one.model))
    return "What comes back from behind an attenuator has passed it twice, so of " + ohms(step.before) + " little is seen but the pad's own resistance.";
  return "Its two ends are tied by four numbers, V1 = A V2 + B I2 and I1 = C V2 + D I2, so " + ohms(step.before) + " at one end is (A Z + B)/(C Z + D) at the other.";
}

std::string WalkWords::sentence(const Step& step, bool outermost) const {
  std::string text;
  switch (step.rule) {
    case Rule::start: text = start(step, outermost); break;
    case Rule::series: text = series(step); break;
    case Rule::parallel: text = parallel(step); break;
    case Rule::line: text = line(step); break;
    case Rule::turns: text = turns(step); break;
    case Rule::two_port: text = two_port(step); break;
    case Rule::coupled:
      text = "The flux that both coils share puts (w M) squared over what the second one's loop adds up to in series with the first.";
      break;
    case Rule::choke:
      text = "Equal and opposite currents in the two conductors make no flux in its core, so the choke lets them pass and changes nothing.";
      break;
    case Rule::box:
      text = "Taken as one, the box makes " + ohms(step.after) + " of " + ohms(step.before) + "; the steps inside it follow.";
      break;
  }
  if (step.rule != Rule::start && step.rule != Rule::box && step.taken_w > 0.0) text += " It takes " + spell_power(step.taken_w) + " for itself.";
  return text;
}

std::string WalkWords::stop(const walk::Stop& stop) const {
  std::vector<std::string> names;
  for (design::PartId id : stop.parts) names.push_back(part(id).name + " (line " + std::to_string(part(id).span.line()) + ")");
  const std::string parts = joined(names), at = stop.node < static_cast<int>(design_.nodes.size()) ? "At node " + design_.nodes[stop.node].name + ", " : "Inside a part, ";
  switch (stop.why) {
    case walk::Stop::Why::crossing:
      return at + "where " + parts + " go on, nothing is in series and nothing in parallel: current may take more than one way, and the ways meet again "
             "further on. A hand would have to solve all nodes together, as the solver does; its values stand from here on.";
    case walk::Stop::Why::not_port:
      return at + "the two conductors of " + parts + " do not carry equal and opposite currents, because there is another way round; so it cannot be taken as a "
             "two-port. The solver's values stand from here on.";
    case walk::Stop::Why::cut_off:
      return at + "nothing leads on: at this setting the two ends are cut off from each other. The solver's values stand from here on.";
    case walk::Stop::Why::numbers: break;
  }
  return at + "the numbers leave what stands there undetermined (a short across a short, or a value that does not exist). The solver's values stand from here on.";
}

std::string WalkWords::chosen() const {
  switch (result_.chosen) {
    case WalkResult::Chosen::only: return "";
    case WalkResult::Chosen::asked: return "as asked";
    case WalkResult::Chosen::middle: break;
  }
  return "the middle one of " + counted(result_.variant->design->frequencies_hz.size(), "point");
}

std::string WalkWords::agreement() const {
  constexpr double enough = 1e-9;
  const double worst = walk::worst(result_.checks);
  std::size_t impedances = 0;
  bool powers = false;
  for (const walk::Check& check : result_.checks) check.what == walk::Check::What::power ? (powers = true) : (++impedances, true);
  if (result_.checks.empty()) return "There is nothing that the walk and the solver both know.";
  char text[32];
  std::snprintf(text, sizeof text, "%.1e", worst);
  const std::string both = counted(impedances, "impedance") + (powers ? " and the power of every part" : "");
  if (std::isnan(worst)) return "The walk and the solver cannot be compared here: one of them has no value.";
  if (worst == 0.0) return "The solver, which solves all nodes at once and shares none of these steps, finds the same " + both + " to the last digit.";
  return "The solver, which solves all nodes at once and shares none of these steps, differs by at most " + std::string(text) + " of " + both + ": " +
         (worst <= enough ? "the two agree." : "more than rounding should leave. Trust neither before you know why: a resonance so sharp that it eats the digits is the usual reason.");
}

}  // namespace wattfall::report
