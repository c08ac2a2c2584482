// The words that begin statements, for the layout pass and for whoever breaks lines. Private to the grammar room.
#pragma once

#include "grammar/parse.hpp"
#include "layout.hpp"

namespace wattfall {

/// Keywords, the vocabulary's kinds, and the boxes that the text itself defines. Both must outlive the result.
layout::Words words_of(const Source& source, const Vocabulary& vocabulary);

}  // namespace wattfall
