// What the source sees as a one-port Touchstone file, version 1.1: real and imaginary part of S11 against the reference, in hertz, digits enough to
// read back as the same numbers. Of a complex reference only the real part can stand in a file: S11 is then reckoned from the impedance.
#include <charconv>
#include <cmath>
#include <complex>
#include <stdexcept>

#include "trade.hpp"
#include "writers.hpp"

namespace reports {
namespace {

using Complex = std::complex<double>;

std::string shortest(double value) {
  char digits[40];
  const auto done = std::to_chars(digits, digits + sizeof digits, value);
  return {digits, done.ptr};
}

Complex complex_of(const Json& pair) {
  return {number(item(pair, 0)), number(item(pair, 1))};
}

struct Seen {
  double reference_ohm = 50.0;
  bool reckon = false;  ///< from the impedance, since the document's reflection is against another reference
};

Seen reference_of(const Json& source) {
  const Json& reference = member(source, "reference_ohm");
  if (!reference.is_array()) return {number(reference), false};
  return {number(item(reference, 0)), true};
}

Complex reflection(const Json& source, const Seen& seen, std::size_t point) {
  if (!seen.reckon) return complex_of(item(member(source, "reflection"), point));
  const Complex impedance = complex_of(item(member(source, "load_impedance_ohm"), point));
  return (impedance - seen.reference_ohm) / (impedance + seen.reference_ohm);
}

/// Comments hold one line each.
std::string comment(const std::string& words) {
  return "! " + words + '\n';
}

}  // namespace

std::string write_touchstone(const Json& document) {
  const Json& variants = list(document, "variants");
  if (variants.empty()) throw std::runtime_error("a Touchstone file is made of a run; this document has no network in it");
  if (variants.size() > 1)
    throw std::runtime_error("a Touchstone file holds one network, and there are " + std::to_string(variants.size()) + ": choose one with --variant");
  const Json& source = item(member(variants[0], "sources"), 0);
  const Seen seen = reference_of(source);
  if (!(seen.reference_ohm > 0.0)) throw std::runtime_error("the source's reference has no resistance, which a Touchstone file needs");

  std::string out = comment(text(member(document, "design"), "title")) + comment("What the source " + text(source, "name") + " sees at " + text(source, "node") +
                    ", from " + text(member(document, "design"), "file") + ", by " + text(document, "program"));
  out += "# HZ S RI R " + shortest(seen.reference_ohm) + '\n';
  const Json& frequencies = list(variants[0], "frequencies_hz");
  for (std::size_t point = 0; point < frequencies.size(); ++point) {
    const Complex s11 = reflection(source, seen, point);
    if (!std::isfinite(s11.real()) || !std::isfinite(s11.imag()))
      throw std::runtime_error("at " + spell(number(frequencies[point]), "Hz", 6) + " what the source sees has no reflection that could be written");
    out += shortest(number(frequencies[point])) + ' ' + shortest(s11.real()) + ' ' + shortest(s11.imag()) + '\n';
  }
  return out;
}

}  // namespace reports
