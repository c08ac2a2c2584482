// The sections of the text report, in the order in which they stand. Each takes what it needs of the document and
// writes nothing where there is nothing to say.
#pragma once

#include "paper.hpp"
#include "reading.hpp"
#include "trade.hpp"

namespace reports {

void write_opening(Paper& paper, const Json& document);
/// Forms of tuner that the report goes on without, and why.
void write_set_aside(Paper& paper, const Json& document);

void write_requirements(Paper& paper, const Json& variant);
void write_rig(Paper& paper, const Json& variant);
void write_waterfalls(Paper& paper, const Json& variant);
void write_lines(Paper& paper, const Json& variant);
void write_cores(Paper& paper, const Json& variant);
void write_common_mode(Paper& paper, const Json& variant);
void write_strain(Paper& paper, const Json& variant);
void write_ratings(Paper& paper, const Json& variant);
void write_settings(Paper& paper, const Json& variant);
void write_tuning(Paper& paper, const Json& variant);
void write_planes(Paper& paper, const Json& variant);
void write_warnings(Paper& paper, const Json& variant);

void write_check(Paper& paper, const Json& document);
void write_compare(Paper& paper, const Json& document);
void write_walk(Paper& paper, const Json& document);
void write_weigh(Paper& paper, const Json& document);

/// What was changed, in words: "coax, length: 26 m -> 40 m".
std::string change_words(const Json& change);

void write_comparison(Paper& paper, const Json& document);
void write_cautions(Paper& paper, const Json& document);
void write_trust(Paper& paper, const Json& document);

/// The scale on which a variant's frequencies are told apart; and those that tables show, as indices.
Scale frequency_scale_of(const Json& variant);
std::vector<std::size_t> shown_points(const Json& variant);

/// What a key's end says: "value_f" is in farads.
std::string unit_of_key(const std::string& key);

/// "worst", "best", "middle", or several; for the margin of a table.
std::string mark_of(const Json& variant, std::size_t point);

/// A name short enough for a column.
std::string cut_name(const std::string& name, std::size_t columns = 22);

/// "7.2 MHz".
std::string spell_frequency(const Json& hz);

}  // namespace reports
