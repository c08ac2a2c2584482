// What a value must be besides having the right dimension: above zero, between 0 and 100 %, and so on.
#pragma once

#include <complex>

#include "grammar/quantity.hpp"

namespace wattfall::design {

struct Rule {
  bool (*holds)(std::complex<double>) = nullptr;  ///< none: anything
  const char* text = "";                          ///< "must be above zero"
};

namespace rule {
inline constexpr Rule any{};
inline constexpr Rule positive{[](std::complex<double> x) { return x.real() > 0.0; }, "must be above zero"};
inline constexpr Rule not_negative{[](std::complex<double> x) { return x.real() >= 0.0; }, "must not be below zero"};
inline constexpr Rule share{[](std::complex<double> x) { return x.real() >= 0.0 && x.real() <= 1.0; },
                            "must lie between 0 and 100 %"};
inline constexpr Rule share_above_zero{[](std::complex<double> x) { return x.real() > 0.0 && x.real() <= 1.0; },
                                       "must be above 0 and at most 100 %"};
inline constexpr Rule coupling{[](std::complex<double> x) { return x.real() > -1.0 && x.real() < 1.0; },
                               "must lie between -1 and 1"};
inline constexpr Rule swr{[](std::complex<double> x) { return x.real() >= 1.0; }, "must be at least 1"};
inline constexpr Rule above_one{[](std::complex<double> x) { return x.real() > 1.0; }, "must be above 1"};
inline constexpr Rule positive_resistance{[](std::complex<double> x) { return x.real() > 0.0; },
                                          "must have a resistance above zero"};
inline constexpr Rule passive{[](std::complex<double> x) { return x.real() >= 0.0; },
                              "must not have a resistance below zero"};
}  // namespace rule

/// What is due at a place of the text.
struct Due {
  Dimension dim = {};
  Rule rule = rule::any;
  bool complex = false;  ///< an impedance may stand here
  bool varies = true;    ///< may depend on frequency and knobs
  bool permeability = false;  ///< a plain number that may be complex: u' - j u''
};

}  // namespace wattfall::design
