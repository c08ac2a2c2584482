// Part statements -> parts of the design: names, replaced properties, the builder of the kind, boxes written out.
#pragma once

#include "bench.hpp"

namespace wattfall::design {

/// Places what one part statement says, in the file or in the use of a box.
void place_part(Bench& bench, Frame& frame, const syntax::Statement& statement, const syntax::Part& text);
/// A use of a box: its body, with the names of the box before each.
void expand_box(Bench& bench, Frame& frame, const syntax::Box& box, const syntax::Part& text, const Span& statement);

/// The kind that a box is, for its properties.
const KindInfo& kind_of_box(Bench& bench, const syntax::Box& box);
/// Checks boxes by themselves: loops, ports, what stands in them.
void check_boxes(Bench& bench, const std::vector<const syntax::Box*>& boxes);
/// Would the statements hold more parts than the limit, once their boxes are written out? Says so.
bool too_many_parts(Bench& bench, const std::vector<const syntax::Statement*>& statements);

/// Couplings name coils, which may come later in the text.
void join_couplings(Bench& bench);

}  // namespace wattfall::design
