// ledger -> judgement.
#pragma once

#include "judge/judgement.hpp"
#include "solve/solution.hpp"

namespace wattfall::judge {

/// Judges the design's requirements and ratings, and warns of what is odd: broken ratings, books that do not close, states that
/// cannot be trusted, parts that give power. A requirement counts as met when every point it speaks of meets it.
Judgement judge(const design::Design& design, const ledger::Ledger& ledger, const solve::Solution& solution);

/// Every `limit` of the design against its part's worst in the books, the least margin first.
std::vector<Rating> ratings_of(const design::Design& design, const ledger::Ledger& ledger);

/// Whether `value` meets the bound; NaN never does. Equal counts as met, to 1e-12 relative.
bool meets(const design::Requirement& requirement, double value);

}  // namespace wattfall::judge
