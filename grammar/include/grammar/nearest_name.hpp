// Spelling suggestions: the known names that a user most likely meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wattfall {

/// The nearest of `known` to `name`, by Damerau-Levenshtein distance without regard to case, if it is within a third of
/// the name's length (at least 1); empty otherwise. Cost O(|known| * |name|^2).
std::string nearest_name(std::string_view name, const std::vector<std::string>& known);

/// All of `known`, nearest first (stable for equal distance), joined by ", ", at most `most` of them then "...".
std::string nearest_first(std::string_view name, std::vector<std::string> known, std::size_t most = 12);

}  // namespace wattfall
