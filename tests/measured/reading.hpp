// Shorthand for the tests of this folder: a text in, a network or the codes of its mistakes out.
#pragma once

#include <cmath>
#include <memory>
#include <string>
#include <utility>

#include "measured/touchstone.hpp"

namespace wattfall::measured {

/// A result together with the text that its spans point into.
struct Reading : Result<Network> {
  SourcePtr text;
};

inline Reading read(std::string text, int ports = 0) {
  const auto source = std::make_shared<Source>("bench.snp", std::move(text));
  return {read_touchstone(source, ports), source};
}

/// The codes of all mistakes in order, joined by blanks; empty where the text is well.
inline std::string codes(const Reading& result) {
  std::string all;
  for (const Diagnostic& one : result.diagnostics) all += (all.empty() ? "" : " ") + one.code;
  return all;
}

inline std::string codes(std::string text, int ports = 0) {
  return codes(read(std::move(text), ports));
}

inline bool reads(std::string text, int ports = 0) {
  return read(std::move(text), ports).ok();
}

inline bool near(Complex value, Complex expected, double tolerance = 1e-12) {
  return std::abs(value - expected) <= tolerance;
}

/// S of the first frequency, row-major number `place`; a NaN where the text does not read.
inline Complex first_s(std::string text, int ports = 0, std::size_t place = 0) {
  const Reading result = read(std::move(text), ports);
  if (!result.ok() || place >= result.value->parameters.size()) return {std::nan(""), 0};
  return result.value->parameters[place];
}

}  // namespace wattfall::measured
