// What each rule wants, in the user's words: shown where the text has something else. Private to the grammar room;
// every rule that stands in a `must` has an entry, and one without does not compile.
#pragma once

#include "rules.hpp"

namespace wattfall {

template <class Rule>
inline constexpr Wanted wanted{};

#define WATTFALL_WANTED(rule, ...)              \
  template <>                                   \
  inline constexpr Wanted wanted<rules::rule> { \
    __VA_ARGS__                                 \
  }

// Words.
WATTFALL_WANTED(kw_and, "word-expected", "`and`", "and");
WATTFALL_WANTED(kw_at, "word-expected", "`at` and a node", "at");
WATTFALL_WANTED(kw_below, "word-expected", "`below` and a value of SWR", "below");
WATTFALL_WANTED(kw_by, "word-expected", "`by ratio`", "by");
WATTFALL_WANTED(kw_for, "word-expected", "`for most` or `for least`, and a figure", "for");
WATTFALL_WANTED(kw_frequency, "word-expected", "`frequency`, for `at each frequency`", "frequency");
WATTFALL_WANTED(kw_keeping, "word-expected", "`keeping` and a requirement", "keeping");
WATTFALL_WANTED(kw_points, "word-expected", "`points`, after their number", "points");
WATTFALL_WANTED(kw_ratio, "word-expected", "`ratio`, for `by ratio`", "ratio");
WATTFALL_WANTED(kw_to, "word-expected", "`to`", "to");
WATTFALL_WANTED(most_or_least, "word-expected", "`most` or `least`", "most least");
WATTFALL_WANTED(bound, "word-expected", "`below` or `above`, and a value", "below above");
WATTFALL_WANTED(tune_when, "word-expected", "`at each frequency`, `at` frequencies, or `over` a range", "at over");
WATTFALL_WANTED(sweep_amount, "word-expected", "`step` and a frequency, or a comma and a number of points", "step");

// Signs.
WATTFALL_WANTED(equals, "sign-expected", "`=` and a value");
WATTFALL_WANTED(change_colon, "sign-expected", "`:` and the properties to change");
WATTFALL_WANTED(bracket_close, "sign-expected", "`)` or an operator");
WATTFALL_WANTED(call_close, "sign-expected", "`)` or a comma");
WATTFALL_WANTED(list_close, "sign-expected", "`]` or a comma");
WATTFALL_WANTED(group_close, "sign-expected", "`)` or another name");
WATTFALL_WANTED(ports, "sign-expected", "the box's ports in brackets, such as (in, out)");
WATTFALL_WANTED(sweep_list, "sign-expected", "a list of frequencies, such as [7.0 MHz, 7.1 MHz]");

// Names.
WATTFALL_WANTED(set_name, "name-expected", "the name of a quantity");
WATTFALL_WANTED(part_name, "name-expected", "a name for the part");
WATTFALL_WANTED(change_name, "name-expected", "the name of a part");
WATTFALL_WANTED(knob, "name-expected", "the name of an adjustable part or quantity");
WATTFALL_WANTED(plane_name, "name-expected", "a name for the plane");
WATTFALL_WANTED(plane_node, "name-expected", "a node's name");
WATTFALL_WANTED(plane_into, "name-expected", "a part's name");
WATTFALL_WANTED(box_name, "name-expected", "a name for the box");
WATTFALL_WANTED(port_names, "name-expected", "the names of the box's ports");
WATTFALL_WANTED(with_item, "name-expected", "the name of a quantity, `=` and a value");
WATTFALL_WANTED(figure_target, "name-expected", "the name of a node, a part or a line");
WATTFALL_WANTED(figure_into, "name-expected", "a part's name");
WATTFALL_WANTED(between_member, "name-expected", "an inductor's name");
WATTFALL_WANTED(place, "name-expected", "a node's name, or two in brackets");
WATTFALL_WANTED(group_words, "name-expected", "a node's name");
WATTFALL_WANTED(cable_name, "name-expected", "a cable's name, such as RG-213");

// Strings.
WATTFALL_WANTED(title, "string-expected", "the design's title in quotes", "rest");
WATTFALL_WANTED(include_path, "string-expected", "the name of a feed file in quotes", "rest");
WATTFALL_WANTED(band_name, "string-expected", "the band's name in quotes, such as \"40 m\"", "band");
WATTFALL_WANTED(variant_name, "string-expected", "the variant's name in quotes", "rest");

// Values.
WATTFALL_WANTED(operand, "value-expected", "a value");
WATTFALL_WANTED(product_operand, "value-expected", "a value after the operator");
WATTFALL_WANTED(signed_power, "value-expected", "a value after the operator");
WATTFALL_WANTED(bracket_value, "value-expected", "a value in the brackets");
WATTFALL_WANTED(pair_value, "value-expected", "a value after `:`");
WATTFALL_WANTED(list_items, "value-expected", "a value in the list");
WATTFALL_WANTED(phrase, "value-expected", "a value or a property after the comma");
WATTFALL_WANTED(properties, "value-expected", "a value or a property");
WATTFALL_WANTED(set_properties, "value-expected", "a value after `=`");
WATTFALL_WANTED(part_properties, "value-expected", "the part's properties after `:`");
WATTFALL_WANTED(change_properties, "value-expected", "the part's properties after `:`");
WATTFALL_WANTED(band_from, "value-expected", "the band's lower end, such as 7.0 MHz");
WATTFALL_WANTED(band_to, "value-expected", "the band's upper end, such as 7.2 MHz");
WATTFALL_WANTED(sweep_from, "value-expected", "a frequency, such as 7.1 MHz");
WATTFALL_WANTED(sweep_to, "value-expected", "a frequency, such as 7.2 MHz");
WATTFALL_WANTED(sweep_step, "value-expected", "a step, such as 10 kHz");
WATTFALL_WANTED(sweep_count, "value-expected", "a number of points, such as 21 points");
WATTFALL_WANTED(tune_at, "value-expected", "`each frequency`, a frequency, or a list of them", "each");
WATTFALL_WANTED(over_range, "value-expected", "a range of frequencies, or `band` and its name");
WATTFALL_WANTED(over_from, "value-expected", "a frequency, such as 7.0 MHz, or `band` and its name");
WATTFALL_WANTED(over_to, "value-expected", "a frequency, such as 7.2 MHz");
WATTFALL_WANTED(required_value, "value-expected", "a value, such as 1.5 or 2 dB");
WATTFALL_WANTED(figure_reference, "value-expected", "an impedance, such as 50 ohm");
WATTFALL_WANTED(figure_limit, "value-expected", "a value of SWR, such as 2");
WATTFALL_WANTED(with_value, "value-expected", "a value after `=`");
WATTFALL_WANTED(lone_value, "value-expected", "a value");

// Figures and places.
WATTFALL_WANTED(places, "place-expected", "a place: `at` a node, `from` one `to` another, or `between` two parts",
                "at from between");
WATTFALL_WANTED(figure_place, "figure-expected", "`at` and a node", "at");
WATTFALL_WANTED(requirement, "figure-expected", "a figure, such as swr at NODE or total loss");
WATTFALL_WANTED(tune_requirement, "figure-expected", "a figure to keep, such as swr at NODE below 1.5");
WATTFALL_WANTED(tune_goal, "figure-expected", "a figure, such as power into PART");

// Ends.
WATTFALL_WANTED(part_statement, "unknown-statement", "a statement's word, or a kind of part and its name");
WATTFALL_WANTED(end_of_statement, "unexpected-text", "the end of the statement");
WATTFALL_WANTED(part_end, "sign-expected", "`:` and the part's properties", "to");
WATTFALL_WANTED(properties_end, "unexpected-text", "a comma, an operator, or the end of the statement");
WATTFALL_WANTED(set_end, "unexpected-text", "a comma, an operator, or the end of the statement");
WATTFALL_WANTED(box_end, "unexpected-text", "`with` and the box's quantities, or `{`", "with");
WATTFALL_WANTED(tune_end, "unexpected-text",
                "`, keeping` and a requirement, `and` and another, or the end of the statement", "keeping and");

#undef WATTFALL_WANTED

}  // namespace wattfall
