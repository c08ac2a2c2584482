// Zeroed memory for a workspace's tables, in one piece. Private to the room.
#pragma once

#include <cstddef>

namespace wattfall::solve {

/// Of a few megabytes and more the system is asked for large pages: a network of a hundred thousand nodes is walked through from end to end for each batch, and
/// with small pages half of the time would go into finding them. Pages that nobody touches take no memory.
class LaneMemory {
 public:
  explicit LaneMemory(std::size_t bytes);
  ~LaneMemory();
  LaneMemory(const LaneMemory&) = delete;
  LaneMemory& operator=(const LaneMemory&) = delete;

  /// At a multiple of 64 bytes.
  std::byte* data() const { return data_; }

 private:
  void* whole_ = nullptr;
  std::size_t mapped_ = 0;  ///< 0: from the heap
  std::byte* data_ = nullptr;
};

}  // namespace wattfall::solve
