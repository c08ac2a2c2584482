// Whether two texts say the same: their trees compared, all but where things stand and how a unit's letter is spelt.
#pragma once

#include <vector>

#include "grammar/syntax.hpp"

namespace wattfall::fuzz {

bool same_tree(const std::vector<syntax::Statement>& left, const std::vector<syntax::Statement>& right);

}  // namespace wattfall::fuzz
