// Numbers as radio amateurs write them: 67.5 pF, 2.31 uH, 1.14 kV, 7.1 MHz. Alone with their digits, or in a column of
// one unit.
#pragma once

#include <string>
#include <vector>

namespace reports {

/// `digits` significant ones, without an exponent where it can be helped, without useless zeros: "71.3", "0.02".
std::string significant(double value, int digits = 3);

/// With so many decimals: "50.0".
std::string fixed(double value, int decimals);

std::string strip(std::string shown);

/// With the prefix that suits: spell(1144, "V") is "1.14 kV". Units without prefixes ("dB", "", "%") stay. "share" is
/// given in per cent. "-" where it does not exist ("infinite" for an SWR, unit "").
std::string spell(double value, const std::string& unit, int digits = 3);

/// "31.2 - j48.8"; "-" where it does not exist.
std::string spell_complex(double re, double im, int digits = 3);

/// One unit and number of decimals for a whole column.
struct Scale {
  double factor = 1.0;  ///< of the unit: 1e-12
  std::string unit;     ///< "pF"
  int decimals = 1;

  /// "<0.1" for what is above nothing but too small to show; "-" for what does not exist.
  std::string show(double value) const;
};

/// So that the largest has four digits; watts stay watts up to 10 kW.
Scale scale_for(const std::vector<double>& values, const std::string& unit);

/// MHz (or kHz, GHz) with decimals enough to be exact, up to four; more, up to six, only to tell them apart.
Scale frequency_scale(const std::vector<double>& frequencies_hz);

}  // namespace reports
