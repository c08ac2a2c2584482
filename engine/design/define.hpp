// Definitions of one variant before its parts are placed: boxes, quantities, what replaces what.
#pragma once

#include "gather.hpp"
#include "place_parts.hpp"
#include "requests.hpp"
#include "settings.hpp"

namespace wattfall::design {

void define_boxes(Bench& bench, const Statements& statements);
/// `set` outside, then the variant's in their place, then --set in place of both; each is settled.
void define_quantities(Bench& bench, const Level& common, const Level& variant, OptionTexts& options);
void define_replacements(Bench& bench, const Level& variant, OptionTexts& options);
/// A `change` of what is not there.
void check_replacements(Bench& bench, OptionTexts& options);
/// A design has a source.
void check_source(Bench& bench);

}  // namespace wattfall::design
