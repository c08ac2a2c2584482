// Spelling suggestions by edit distance. In: what was written and what is known. Out: the known names that are near.
#include "grammar/nearest_name.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

namespace wattfall {
namespace {

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& letter : result) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return result;
}

/// Damerau-Levenshtein distance, restricted (no part is edited twice): the least count of letters put in, left out,
/// changed or swapped with their neighbour.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> two_ago(b.size() + 1), one_ago(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) one_ago[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = one_ago[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({one_ago[j] + 1, row[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], two_ago[j - 2] + 1);
    }
    std::swap(two_ago, one_ago);
    std::swap(one_ago, row);
  }
  return one_ago[b.size()];
}

/// A name that was left off early, `C` for `Cin`, is nearer than one of another letter: half a slip.
constexpr std::size_t most_left_off = 3;

/// In halves of a slip.
std::size_t slips(const std::string& wanted, const std::string& candidate) {
  const bool left_off = candidate.size() > wanted.size() && candidate.size() - wanted.size() <= most_left_off &&
                        candidate.starts_with(wanted);
  return left_off ? 1 : 2 * distance(wanted, candidate);
}

// Beyond this nobody mistyped a name, and the square cost would be felt.
constexpr std::size_t longest_name = 64;

}  // namespace

std::string nearest_name(std::string_view name, const std::vector<std::string>& known) {
  if (name.empty() || name.size() > longest_name) return {};
  const std::string wanted = lower(name);
  std::size_t best = 2 * (std::max<std::size_t>(1, name.size() / 3) + 1);
  const std::string* found = nullptr;
  for (const std::string& candidate : known) {
    const std::size_t gap = std::max(candidate.size(), name.size()) - std::min(candidate.size(), name.size());
    if (gap > most_left_off && 2 * gap >= best) continue;
    const std::size_t here = slips(wanted, lower(candidate));
    // A one-letter name that shares no letter is a different name, not a slip.
    if (here >= best || here >= 2 * std::max(candidate.size(), name.size())) continue;
    best = here;
    found = &candidate;
  }
  return found == nullptr ? std::string{} : *found;
}

std::string nearest_first(std::string_view name, std::vector<std::string> known, std::size_t most) {
  const std::string wanted = lower(name.substr(0, longest_name));
  std::vector<std::pair<std::size_t, std::string>> ranked;
  ranked.reserve(known.size());
  for (std::string& candidate : known) {
    const std::size_t gap = slips(wanted, lower(std::string_view(candidate).substr(0, longest_name)));
    ranked.emplace_back(gap, std::move(candidate));
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::string result;
  for (std::size_t i = 0; i < ranked.size(); ++i) {
    if (i > 0) result += ", ";
    if (i == most) return result + "...";
    result += ranked[i].second;
  }
  return result;
}

}  // namespace wattfall
