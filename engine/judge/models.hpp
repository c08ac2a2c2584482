// Whether the parts given by their size stay within the range that their models hold for. Private to the room.
#pragma once

#include "design/design.hpp"
#include "judge/judgement.hpp"
#include "ledger/ledger.hpp"

namespace wattfall::judge {

/// One warning a part, at the first frequency where its model is outside its range, with the figure that is.
void warn_of_models(const design::Design& design, const ledger::Ledger& ledger, std::vector<Warning>& warnings);

}  // namespace wattfall::judge
