// What the Markdown writers share.
#pragma once

#include "markdown.hpp"

namespace reports {

void write_check(Markdown& page, const Json& document);
void write_compare(Markdown& page, const Json& document);
void write_walk(Markdown& page, const Json& document);
void write_weigh(Markdown& page, const Json& document);
/// What the tuner found beside the settings it took, and what to buy for a tuner.
void write_tuning(Markdown& page, const Json& variant, int level);
/// Preferred values and their parts, where there are any.
void write_made_table(Markdown& page, const std::vector<std::vector<std::string>>& rows);
/// Forms of tuner that the report goes on without, and why.
void write_set_aside(Markdown& page, const Json& document);
void write_cautions(Markdown& page, const Json& document);

/// Two tables, each at its worst and mid-sweep; the better value of a row in bold.
void write_contest_tables(Markdown& page, const Json& figures, const std::vector<std::string>& columns, int level);

}  // namespace reports
