#include "clauses.hpp"

#include "trade.hpp"

namespace reports {

std::string sentence(std::string clause) {
  if (clause.empty()) return clause;
  if (clause.front() >= 'a' && clause.front() <= 'z') clause.front() = static_cast<char>(clause.front() - 'a' + 'A');
  return clause.ends_with('.') ? clause : clause + '.';
}

std::string margins_of(const Json& tuner) {
  const auto per_cent = [&](const char* margin) { return significant(100.0 * (number(tuner, margin) - 1.0)) + " %"; };
  return "With room to spare: " + per_cent("range_margin") + " of range, " + per_cent("volts_margin") + " of volts, " +
         per_cent("amps_margin") + " of amps, " + per_cent("heat_margin") + " of heat.";
}

}  // namespace reports
