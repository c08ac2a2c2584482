// The twelve forms of tuner and seeded random loads, frequencies and part qualities to try them on.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "asking.hpp"
#include "brute_force.hpp"
#include "ladder.hpp"

namespace tuner_test {

struct Form {
  std::string name;
  std::vector<Part> parts;  ///< from the rig to the load; q is filled by random_case
};

inline Form form(const std::string& name) {
  Form result{name, {}};
  for (std::size_t i = 0; i + 1 < name.size(); i += 3) result.parts.push_back({name[i + 1] == 'L', name[i] == 's', 0});
  return result;
}

/// Series (s) and shunt (p) coils and capacitors from the rig to the load.
inline std::vector<Form> two_knob_forms() {
  std::vector<Form> forms;
  for (const char* name : {"sL pC", "sC pL", "sL pL", "sC pC", "pC sL", "pL sC", "pL sL", "pC sC"})
    forms.push_back(form(name));
  return forms;
}
inline std::vector<Form> three_knob_forms() {
  std::vector<Form> forms;
  for (const char* name : {"sC pL sC", "sL pC sL", "pC sL pC", "pL sC pL"}) forms.push_back(form(name));
  return forms;
}

/// Uniform in 0..1 from the generator's own bits: the library's distributions differ between libraries.
inline double uniform(std::mt19937_64& random) {
  return double(random() >> 11) * 0x1p-53;
}

inline Ladder random_case(const Form& form, unsigned seed) {
  std::mt19937_64 random(seed);
  auto between = [&](double a, double b) { return a + (b - a) * uniform(random); };
  Ladder ladder{form.parts, {}, 7.1e6};
  const double r = 5 * std::pow(3000.0 / 5, uniform(random));
  ladder.load = {r, between(-1500, 1500)};
  const double anywhere = 1.8e6 * std::pow(30.0 / 1.8, uniform(random));
  if (seed % 2 == 1) ladder.frequency_hz = anywhere;
  for (Part& part : ladder.parts) part.q = part.coil ? between(100, 300) : between(500, 2000);
  return ladder;
}

inline Bounds bounds_of(const Ladder& ladder) {
  Bounds bounds;
  for (const Part& part : ladder.parts) {
    bounds.lower.push_back(part.coil ? 0.05e-6 : 10e-12);
    bounds.upper.push_back(part.coil ? 30e-6 : 1000e-12);
  }
  return bounds;
}

/// The least that the load gets at frequencies around the ladder's own: a goal with creases.
inline double worst_power_w(Ladder ladder, std::initializer_list<double> factors, const double* values) {
  const double middle = ladder.frequency_hz;
  double least = std::numeric_limits<double>::infinity();
  for (const double factor : factors) {
    ladder.frequency_hz = middle * factor;
    least = std::min(least, load_power_w(ladder, values));
  }
  return least;
}

inline std::vector<sdk::KnobRange> knobs_of(const Bounds& bounds) {
  std::vector<sdk::KnobRange> knobs;
  for (std::size_t i = 0; i < bounds.lower.size(); ++i) knobs.push_back(log_knob(bounds.lower[i], bounds.upper[i]));
  return knobs;
}

}  // namespace tuner_test
