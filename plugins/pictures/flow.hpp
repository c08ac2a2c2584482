// The ledger as a fall of watts: the stream comes from the rig at the top, what a part takes leaves it to the right,
// what is left at the foot is on the air.
#pragma once

#include <string>

#include "html.hpp"

namespace pictures {

/// Of one variant at one point. The script lays it out anew for other points, by the same measures.
std::string draw_flow(const Ref& document, std::size_t variant, std::size_t point, bool live, const std::string& id,
                      const std::string& title);

}  // namespace pictures
