// Counts and words. A requirement whose figure does not exist counts as not met; the judge has said so already.
#include "report/verdict.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>

#include "report/spelling.hpp"

namespace wattfall::report {
namespace {

std::string at_frequency(double hz) {
  return std::isfinite(hz) ? " at " + spell_frequency(hz) : "";
}

std::string requirements_phrase(const Summary& summary) {
  if (summary.of == 0)
    return summary.elsewhere == 0 ? "Nothing was required" : "No requirement asks at these frequencies";
  if (summary.met < summary.of)
    return std::to_string(summary.met) + " of " + counted(summary.of, "requirement") + " met";
  if (summary.of == 1) return "The one requirement is met";
  return (summary.of == 2 ? "Both requirements" : "All " + counted(summary.of, "requirement")) + " met";
}

std::string ratings_phrase(const Summary& summary) {
  if (summary.ratings == 0) return "no part has a rating";
  return summary.ratings_broken == 0 ? "no rating broken" : counted(summary.ratings_broken, "rating") + " broken";
}

std::string count_sentence(const Summary& summary) {
  std::string sentence = requirements_phrase(summary);
  if (summary.of > 0 && summary.elsewhere > 0)
    sentence += " (" + std::to_string(summary.elsewhere) + " more " + (summary.elsewhere == 1 ? "asks" : "ask") +
                " at other frequencies)";
  return sentence + "; " + ratings_phrase(summary);
}

std::string failure(const judge::Verdict& verdict) {
  const design::Requirement& requirement = *verdict.requirement;
  const std::string worst = spell_figure(verdict.worst, unit_of(requirement.figure.kind));
  return "Not met: " + requirement.text + ". It is " + worst + at_frequency(verdict.worst_at_hz) + '.';
}

std::string failure(const judge::Rating& rating, const design::Design& design) {
  const std::string unit = rating.unit_name();
  const std::string kind = rating.unit == 'V' ? " peak" : rating.unit == 'A' ? " rms" : " of heat";
  return "Rating broken: " + design.parts[rating.part.index].name + " takes " + spell_figure(rating.worst, unit) +
         kind + at_frequency(rating.worst_at_hz) + ", and is rated for " + spell_figure(rating.limit, unit) + '.';
}

}  // namespace

Summary summarize(const VariantResult& variant) {
  Summary summary;
  for (const judge::Verdict& verdict : variant.judgement.verdicts) {
    ++summary.of;
    if (verdict.met) {
      ++summary.met;
    } else {
      summary.failures.push_back(failure(verdict));
    }
  }
  for (const judge::Rating& rating : variant.judgement.ratings) {
    if (rating.kept()) continue;
    ++summary.ratings_broken;
    summary.failures.push_back(failure(rating, *variant.design));
  }
  summary.elsewhere = variant.design->requirements.size() - std::min(summary.of, variant.design->requirements.size());
  summary.ratings = variant.judgement.ratings.size();
  summary.sentence = count_sentence(summary) + '.';
  return summary;
}

Summary summarize(const std::vector<VariantResult>& variants) {
  if (variants.size() == 1) return summarize(variants.front());
  Summary all;
  std::string short_of;
  for (const VariantResult& variant : variants) {
    const Summary one = summarize(variant);
    all.met += one.met;
    all.of += one.of;
    all.elsewhere += one.elsewhere;
    all.ratings += one.ratings;
    all.ratings_broken += one.ratings_broken;
    if (!one.failures.empty()) short_of += (short_of.empty() ? "" : ", ") + quoted(*variant.design);
  }
  std::string counts = count_sentence(all);
  counts[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(counts[0])));  // the sentence has begun
  all.sentence = "Over " + counted(variants.size(), "variant") + ": " + counts;
  all.sentence += short_of.empty() ? "." : "; see " + short_of + '.';
  return all;
}

double margin_share(const judge::Rating& rating) {
  const double share = (rating.limit - rating.worst) / rating.limit;
  // What a tuner that holds to a rating leaves of it, a billionth, is no margin.
  return rating.kept() && share < 1e-8 ? 0.0 : share;
}

double margin_db(const judge::Rating& rating) {
  return (rating.of_heat() ? 10.0 : 20.0) * std::log10(rating.limit / rating.worst);
}

std::string trust_sentence(const VariantResult& variant) {
  const VariantResult::Story& story = variant.story;
  // Below the promised 1e-12 the digits are those of this machine's rounding, and tell nothing.
  std::string text = "The books close to better than 1e-12 of the available power at every point; ";
  if (!(std::abs(story.worst_residual) <= 1e-12)) {
    char residual[32];
    std::snprintf(residual, sizeof residual, "%.0e", std::abs(story.worst_residual));
    text = std::string("The books leave up to ") + residual + " of the available power unexplained; ";
  }
  if (story.robust_states == 0) return text + "no point needed the robust solution.";
  text += std::to_string(story.robust_states) + " of " + counted(story.states, "point") + " took the robust solution";
  return text + (story.robust_why.empty() ? "." : " (" + story.robust_why + ").");
}

}  // namespace wattfall::report
