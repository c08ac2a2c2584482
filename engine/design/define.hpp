// Definitions of one variant before its parts are placed: boxes, quantities, what replaces what.
#pragma once

#include "gather.hpp"
#include "place_parts.hpp"
#include "requests.hpp"
#include "settings.hpp"

namespace wattfall::design {

void define_boxes(Bench& bench, const Statements& statements);
/// `set` outside, then the variant's in their place, then --set in place of both. Each is settled when it is asked for.
void define_quantities(Bench& bench, const Level& common, const Level& variant, OptionTexts& options);
/// Says what is wrong with those that nothing has asked for; they make no knobs.
void settle_unused(Bench& bench);
/// --set replaces a quantity's value and leaves its `adjustable`. No value: nothing happens.
void override_quantity(NamedQuantity& quantity, syntax::List<syntax::Phrase> value);
void define_replacements(Bench& bench, const Level& variant, OptionTexts& options);
/// A `change` of what is not there.
void check_replacements(Bench& bench, OptionTexts& options);
/// A design has a source.
void check_source(Bench& bench);

}  // namespace wattfall::design
