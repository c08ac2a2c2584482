// A design made ready for solver and baselines.
#pragma once

#include <complex>
#include <string>

#include "baselines.hpp"
#include "feed.hpp"

namespace wattfall::bench {

struct Case {
  Case(const std::string& text, std::vector<double> hertz, std::vector<double> knobs = {});

  FlatStates flat_states() const;
  /// Runs the baseline and the solver and compares heat, volts and amps of every part in every point, relative to the
  /// largest of each in the point (1e-9), the returned power to the available. Throws where they differ.
  void show_that_they_agree(const char* baseline) const;

  test::Feed feed;
  solve::States states;
  FlatNetwork flat;
  std::vector<int> element_of_flat;  ///< by flat part: the network's element
};

}  // namespace wattfall::bench
