// What was found, in words: the requirements and ratings of one variant and of all, how far to trust the numbers, and
// what to be careful of. Sentences are made here once, so that every writer says the same.
#pragma once

#include <string>
#include <vector>

#include "report/document.hpp"

namespace wattfall::report {

struct Summary {
  std::size_t met = 0, of = 0, ratings = 0, ratings_broken = 0;
  std::size_t elsewhere = 0;          ///< requirements that ask at none of the frequencies, where options chose these
  std::string sentence;               ///< "2 of 3 requirements met; 1 rating broken."
  std::vector<std::string> failures;  ///< one each: what is not met or broken, by how much and where
};

Summary summarize(const VariantResult& variant);

/// All variants together; names those that fall short where there are several.
Summary summarize(const std::vector<VariantResult>& variants);

/// A rating's margin: what is left of the limit, as a share of it and in dB. Negative where it is broken.
double margin_share(const judge::Rating& rating);
double margin_db(const judge::Rating& rating);

/// At 70 % of a limit a part is worth a look: parts differ, and so do loads.
inline constexpr double near_share = 0.7;

/// "Books close to 3e-15 of the available power; no point needed the robust solution."
std::string trust_sentence(const VariantResult& variant);

/// Short words on licence, volts, heat and exposure, with the largest figures found.
std::vector<std::string> cautions(const std::vector<VariantResult>& variants);

}  // namespace wattfall::report
