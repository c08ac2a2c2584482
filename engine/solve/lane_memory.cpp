#include "lane_memory.hpp"

#include <cstdint>
#include <cstring>
#include <new>

#if defined(__linux__)
#include <sys/mman.h>
#endif

namespace wattfall::solve {
namespace {

constexpr std::align_val_t line{64};

#if defined(__linux__)
constexpr std::size_t large_page = std::size_t{1} << 21, worth_it = 2 * large_page;

void* map(std::size_t bytes) {
  void* const found = ::mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  return found == MAP_FAILED ? nullptr : found;
}
#endif

}  // namespace

LaneMemory::LaneMemory(std::size_t bytes) {
#if defined(__linux__)
  if (bytes >= worth_it) whole_ = map(bytes + large_page);
  if (whole_ != nullptr) {
    mapped_ = bytes + large_page;
    const auto at = (reinterpret_cast<std::uintptr_t>(whole_) + large_page - 1) / large_page * large_page;
    data_ = reinterpret_cast<std::byte*>(at);
    // A wish: without it all works as well, only slower.
    ::madvise(data_, bytes, MADV_HUGEPAGE);
    return;
  }
#endif
  whole_ = ::operator new(bytes + 1, line);
  std::memset(whole_, 0, bytes);
  data_ = static_cast<std::byte*>(whole_);
}

LaneMemory::~LaneMemory() {
#if defined(__linux__)
  if (mapped_ != 0) {
    ::munmap(whole_, mapped_);
    return;
  }
#endif
  ::operator delete(whole_, line);
}

}  // namespace wattfall::solve
