// The sections of a page, in the order in which they stand. Each takes the whole document, goes through its variants,
// and is empty where there is nothing to say, so that pages of other documents can use those that fit.
#pragma once

#include <string>
#include <vector>

#include "html.hpp"

namespace pictures {

/// The points of a variant that tables and marks dwell on: `moments.shown`.
std::vector<std::size_t> shown_points(const Ref& variant);

std::string section_verdict(const Ref& document);
std::string section_comparison(const Ref& document);
std::string section_network(const Ref& document);
std::string section_flow(const Ref& document);
std::string section_sweep(const Ref& document);
std::string section_reflection(const Ref& document);
std::string section_planes(const Ref& document);
std::string section_lines(const Ref& document);
std::string section_ratings(const Ref& document);
std::string section_settings(const Ref& document);
std::string section_tuning(const Ref& document);
std::string section_warnings(const Ref& document);
/// Of a walk; a document of its own.
std::string section_walk(const Ref& document);
/// Of a check; each design's own part is linked from the verdict.
std::string section_check(const Ref& document);
std::string section_checked_designs(const Ref& document);
/// Of a weighing.
std::string section_weigh(const Ref& document);
std::string section_cautions(const Ref& document);
std::string section_trust(const Ref& document);

/// The document for a script: numbers to ten digits, and of a long sweep as many points as fit into so many bytes. The
/// indices of those that are there stand in "thinned" of each variant.
std::string embedded(const Json& document, std::size_t most_bytes);

}  // namespace pictures
