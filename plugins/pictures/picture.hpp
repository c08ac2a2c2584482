// Sheet -> SVG. The same picture stands alone as a file and inside a page.
#pragma once

#include <string>

#include "circuit.hpp"

namespace pictures {

/// Beyond so many parts a drawing is a carpet: then the hottest are drawn, and how many are left out is said.
inline constexpr std::size_t most_parts = 240;

struct Picture {
  std::string svg;  ///< groups and paths, to stand in an <svg> with the view box below
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
  std::string description;  ///< one paragraph, for who cannot see it; not escaped
  std::size_t left_out = 0;
};

Picture draw(const Circuit& circuit);

}  // namespace pictures
