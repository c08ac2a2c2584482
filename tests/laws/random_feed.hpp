// Random feed systems, of every kind of part, as texts: seeded, so that a failure can be had again.
#pragma once

#include <random>
#include <string>
#include <vector>

namespace wattfall::test {

struct RandomFeed {
  std::vector<std::string> statements;  ///< a part each; source, load and sweep among them
  std::string text() const;
  /// The same statements in another order, and every node under another name.
  std::string shuffled_and_renamed(unsigned seed) const;
};

struct Choices {
  bool lossless = false;  ///< ideal parts and lossless lines: the hard case for the numbers
  bool awkward = false;   ///< lines of exactly n quarter waves, resonant pairs, ideal transformers in chains
};

/// A chain from the rig to the antenna with parts across it and around it. About 4 to 20 parts, at three frequencies.
RandomFeed random_feed(unsigned seed, Choices choices);

}  // namespace wattfall::test
