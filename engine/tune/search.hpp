// One search: the knobs of a tune statement at a frequency, or over several, handed to an optimizer behind the SDK. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "design/design.hpp"
#include "graph/network.hpp"
#include "plan/plan.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall::tune {

struct Found {
  bool found = false;       ///< the optimizer ran, and the goal exists at the setting
  bool keeping = true;      ///< every requirement of `keeping` holds
  std::vector<double> setting;  ///< by the statement's knobs [SI]
  double goal = 0.0;        ///< the figure itself, not its sign-changed form
  std::vector<double> kept;     ///< value of each `keeping` figure at the setting
  double swr = 0.0;         ///< at the source, the worst of the frequencies; NaN where all comes back
  std::vector<std::vector<double>> others;  ///< other distinct local bests that keep all, best first
  bool exhaustive = false;      ///< every setting there is was tried
  std::size_t evaluations = 0;
  std::string failure;
};

struct Problem {
  const design::Design& design;
  const graph::Network& network;
  const plan::Plan& plan;
  const design::Tune& statement;
  std::vector<double> frequencies_hz;         ///< judged by the worst of them
  std::vector<double> others;                 ///< values of all the design's knobs; the statement's are overwritten
  std::vector<std::vector<double>> starts;    ///< settings worth trying first
  std::vector<double> also_hz =
      {};  ///< beside these, those that the setting serves and requirements over a range of their own ask about
  std::size_t scaling = 0;  ///< so many of `keeping`, the last ones, are no demands: they scale the goal by the share
                            ///< of the power with which they are kept
};

/// `frequencies_hz`, then `also_hz`.
std::vector<double> all_hz(const Problem& problem);

/// Where a requirement of the statement is asked, rising: none where its range lies elsewhere.
std::vector<double> asked_hz(const Problem& problem, const design::Requirement& requirement);

/// Values of all the design's knobs, the statement's at this setting.
std::vector<double> knobs_with(const Problem& problem, const std::vector<double>& setting);

/// The best setting; with `other_room`, up to as many other local bests beside it.
Found search(const Problem& problem, const sdk::Optimizer& optimizer, std::size_t other_room = 0);

/// Figures at given settings of the design's knobs, each the worst over the frequencies, NaN where it does not exist: [figure][setting], the goal's first, then
/// those of `keeping`.
std::vector<std::vector<double>> worst_figures(const Problem& problem, const std::vector<std::vector<double>>& knobs);

/// Within 1e-6 of an end of its range.
bool stands_at(double value, double end);

}  // namespace wattfall::tune
