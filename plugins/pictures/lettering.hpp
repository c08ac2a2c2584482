// How wide letters are, guessed from above: the reader's fonts are not known here, so the widest of the usual
// sans-serif faces is taken. Labels that do not overlap by this measure do not overlap on the screen.
#pragma once

#include <string>
#include <string_view>

namespace pictures {

/// At so many pixels a letter's height.
double width_of(std::string_view text, double pixels, bool bold = false);

/// Cut with an ellipsis so that it fits.
std::string fit(const std::string& text, double most, double pixels, bool bold = false);

}  // namespace pictures
