// Random two-terminal networks made by series and parallel joints alone, to any depth, with lines, stubs, pads and transformers among them: all of
// them reduce. The load is any of the leaves. Seeded.
#pragma once

#include <string>

namespace wattfall::test {

/// A feed text of about 5 to 40 parts, at three frequencies.
std::string random_tree(unsigned seed, bool lossless);

}  // namespace wattfall::test
