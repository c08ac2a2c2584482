// The usual goals evaluated on the collapsed network: tens of nanoseconds a setting, where the whole solution and its books take a
// microsecond. Private to the room.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "search.hpp"
#include "solve/collapse.hpp"

namespace wattfall::tune {

/// Answers the figures of one statement for batches of settings. Made only where that is possible: the knobs move nothing but branches (coils, capacitors,
/// resistors), the source and the loads stay as they are, and each figure is one of power, efficiency, total loss or match at the source.
class Quick {
 public:
  static std::unique_ptr<Quick> make(const Problem& problem);

  /// `settings`: count x the design's knobs. Every figure (the goal, then those of `keeping`) at every frequency: values[figure][state * frequencies +
  /// frequency], NaN where it does not exist.
  void run(const std::vector<double>& settings, std::size_t count, std::vector<std::vector<double>>& values);

 private:
  explicit Quick(const Problem& problem) : problem_(problem) {}

  bool find_active();
  bool find_watched();
  bool at_source(const design::Look& look) const;
  bool suits(const design::Figure& figure) const;
  bool collapse();
  double source_reflection(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const;
  double source_swr(const design::Value* asked, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const;
  double figure_value(const design::Figure& figure, const solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t state) const;

  const Problem& problem_;
  std::vector<int> active_, watched_;
  std::vector<design::PartId> loads_;            ///< of watched_
  std::vector<std::vector<double>> radiated_;    ///< [frequency][load]: share of what it absorbs
  std::vector<solve::Collapsed> collapsed_;      ///< by frequency
};

}  // namespace wattfall::tune
