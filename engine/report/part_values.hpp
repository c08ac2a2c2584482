// What a part is: its main value and whatever a drawing of it needs, at the points of the sweep and the settings found.
#pragma once

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// The keys `value_f`, `value_h`, `value_ohm`, `z0_ohm`, ... of an open object. A value that is the same at every point stands as a number (or
/// [re, im]), else as an array over the frequencies. Parts made by their size (a coil by its turns) have no plain value and get none.
void write_values(JsonText& out, const design::Part& part, const VariantResult& variant);

/// The name of the box that a part stands in; null outside of all boxes.
void write_box_name(JsonText& out, const design::Part& part, const design::Design& design);

}  // namespace wattfall::report
