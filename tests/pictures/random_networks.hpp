// Feed files of networks that nobody would build: for drawing, what matters is that they are tangled.
#pragma once

#include <cstdint>
#include <string>

namespace pictures_tests {

/// A ladder from the rig to a load with parts thrown in between any two nodes: one-ports, lines, transformers, chokes to pairs, a stub, a selector.
std::string random_feed(std::uint32_t seed, int nodes, int extra_parts);

}  // namespace pictures_tests
