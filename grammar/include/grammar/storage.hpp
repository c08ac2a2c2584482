// Where a syntax tree lies. A tree of a large file has many small lists; they lie one behind the other in a few large
// pieces of memory, are never changed, and go all at once. So nodes of a tree are plain values, cheap to copy.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <memory>
#include <memory_resource>
#include <string_view>
#include <type_traits>
#include <vector>

namespace wattfall::syntax {

/// A list that somebody else holds: a Storage, or whoever holds its first element. Copying it copies no element.
template <class T>
class List {
 public:
  using value_type = T;

  constexpr List() = default;
  constexpr List(const T* first, std::size_t size) : first_(first), size_(static_cast<std::uint32_t>(size)) {}
  /// One element by itself.
  explicit constexpr List(const T& only) : first_(&only), size_(1) {}
  List(const std::vector<T>& held) : List(held.data(), held.size()) {}

  const T* begin() const { return first_; }
  const T* end() const { return first_ + size_; }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  const T& operator[](std::size_t i) const { return first_[i]; }
  const T& front() const { return first_[0]; }
  const T& back() const { return first_[size_ - 1]; }

  /// The elements before `count`, and from there on.
  List first(std::size_t count) const { return {first_, count}; }
  List from(std::size_t count) const { return {first_ + count, size_ - count}; }

 private:
  const T* first_ = nullptr;
  std::uint32_t size_ = 0;
};

/// Grows, and is freed as a whole. What it has given out stays where it is as long as it lives.
class Storage {
 public:
  template <class T>
  List<T> keep(const T* first, std::size_t size) {
    static_assert(std::is_trivially_destructible_v<T>, "what lies in a Storage is never destroyed");
    if (size == 0) return {};
    T* place = static_cast<T*>(memory_.allocate(size * sizeof(T), alignof(T)));
    std::uninitialized_copy_n(first, size, place);
    return {place, size};
  }
  template <class T>
  List<T> keep(const std::vector<T>& list) {
    return keep(list.data(), list.size());
  }
  template <class T>
  const T* keep_one(const T& thing) {
    return keep(&thing, 1).begin();
  }
  std::string_view keep_text(std::string_view text) { return {keep(text.data(), text.size()).begin(), text.size()}; }

 private:
  static constexpr std::size_t first_piece = 4096;
  std::pmr::monotonic_buffer_resource memory_{first_piece};
};

}  // namespace wattfall::syntax
