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
/// resistors), or are switches (knobs of few choices, which may move anything but the source: the rest is collapsed once for each of their
/// combinations), and each figure is one of power, efficiency, total loss or match at the source, or of the volts, amps or heat of a part that is moved.
class Quick {
 public:
  static std::unique_ptr<Quick> make(const Problem& problem);

  /// `settings`: count x the design's knobs. Every figure (the goal, then those of `keeping`) at every frequency: values[figure][state * frequencies +
  /// frequency], NaN where it does not exist.
  void run(const std::vector<double>& settings, std::size_t count, std::vector<std::vector<double>>& values);

  /// Whether the knob may stand at its choices alone.
  bool is_switch(design::KnobId knob) const;

 private:
  explicit Quick(const Problem& problem) : problem_(problem) {}

  /// The rest of the network at one combination of the switches.
  struct Case {
    std::vector<double> knobs;                   ///< of the whole design
    std::vector<solve::Collapsed> collapsed;     ///< by frequency
    std::vector<std::vector<double>> radiated;   ///< [frequency][load]: share of what it absorbs, if a figure asks for it
  };

  bool is_port(design::PartId part) const;
  bool find_switches();
  bool find_active();
  bool find_watched();
  bool at_source(const design::Look& look) const;
  bool suits(const design::Figure& figure) const;
  bool asks_what_is_radiated() const;
  bool collapse();
  bool collapse_case(Case& one) const;
  std::size_t case_of(const double* knobs) const;
  bool all_one_case(const std::vector<double>& settings, std::size_t count) const;
  void run_case(Case& one, const double* settings, std::size_t count);
  void source_reflections(const design::Value* asked, solve::CollapsedAnswer& answer, std::size_t frequency, double* values, std::size_t count) const;
  void powers_left(solve::CollapsedAnswer& answer, std::size_t frequency, std::size_t count);
  void figure_values(const Case& one, const design::Figure& figure, solve::CollapsedAnswer& answer, std::size_t frequency, double* values,
                     std::size_t count) const;

  const Problem& problem_;
  std::vector<design::KnobId> switches_;
  std::vector<int> active_, watched_;
  std::vector<design::PartId> moved_;            ///< of active_
  std::vector<design::PartId> loads_;            ///< of watched_
  std::vector<Case> cases_;                      ///< the last switch runs fastest
  std::vector<double> grouped_;                  ///< the settings of one case
  std::vector<std::vector<std::size_t>> members_;  ///< of a batch, by case
  std::vector<double> columns_;                  ///< [figure][frequency][state] of one case
  std::vector<double> left_;                     ///< by state, where the rig folds back: the share of its power that it gives
  solve::CollapsedAnswer answer_;
};

}  // namespace wattfall::tune
