// One target as libFuzzer calls it. The build says which: WATTFALL_FUZZ_FEED is the target's function.
#include <cstddef>
#include <cstdint>

#include "targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  wattfall::fuzz::WATTFALL_FUZZ_FEED({reinterpret_cast<const char*>(data), size});
  return 0;
}
