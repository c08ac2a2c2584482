// A map by name for what a large design has tens of thousands of: entries lie side by side in the order in which they
// came, found by open addressing. Names are kept by whoever holds the text.
#pragma once

#include <bit>
#include <cstdint>
#include <functional>
#include <string_view>
#include <utility>
#include <vector>

namespace wattfall::design {

template <class T>
class NameMap {
 public:
  using Entry = std::pair<std::string_view, T>;
  using iterator = typename std::vector<Entry>::iterator;
  using const_iterator = typename std::vector<Entry>::const_iterator;

  const_iterator begin() const { return entries_.begin(); }
  const_iterator end() const { return entries_.end(); }
  iterator end() { return entries_.end(); }
  std::size_t size() const { return entries_.size(); }

  iterator find(std::string_view name) { return entries_.begin() + (std::as_const(*this).find(name) - begin()); }
  const_iterator find(std::string_view name) const {
    if (slots_.empty()) return end();
    const Slot& slot = slots_[slot_of(name, hash_of(name))];
    return slot.entry == 0 ? end() : begin() + (slot.entry - 1);
  }
  bool contains(std::string_view name) const { return find(name) != end(); }

  /// The entry of this name, and whether it is new. What was pointed to before may have moved where it is.
  template <class... Values>
  std::pair<iterator, bool> try_emplace(std::string_view name, Values&&... values) {
    if (2 * (entries_.size() + 1) > slots_.size()) reserve(2 * (entries_.size() + 1));
    const std::uint32_t hash = hash_of(name);
    Slot& slot = slots_[slot_of(name, hash)];
    if (slot.entry != 0) return {entries_.begin() + (slot.entry - 1), false};
    entries_.emplace_back(name, T{std::forward<Values>(values)...});
    slot = {static_cast<std::uint32_t>(entries_.size()), hash};
    return {entries_.end() - 1, true};
  }
  T& operator[](std::string_view name) { return try_emplace(name).first->second; }

  void reserve(std::size_t entries) {
    if (2 * entries <= slots_.size()) return;
    entries_.reserve(entries);
    slots_.assign(std::bit_ceil(2 * entries), {});
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      const std::uint32_t hash = hash_of(entries_[i].first);
      slots_[slot_of(entries_[i].first, hash)] = {static_cast<std::uint32_t>(i + 1), hash};
    }
  }

 private:
  struct Slot {
    std::uint32_t entry = 0;  ///< its place in the order, from 1; 0: free
    std::uint32_t hash = 0;   ///< so that other names are passed over unread
  };

  static std::uint32_t hash_of(std::string_view name) {
    return static_cast<std::uint32_t>(std::hash<std::string_view>{}(name));
  }

  /// Where a name is, or would be. Half of the slots are free, so there is an end to it.
  std::size_t slot_of(std::string_view name, std::uint32_t hash) const {
    const std::size_t mask = slots_.size() - 1;
    for (std::size_t at = hash & mask;; at = (at + 1) & mask) {
      const Slot& slot = slots_[at];
      if (slot.entry == 0 || (slot.hash == hash && entries_[slot.entry - 1].first == name)) return at;
    }
  }

  std::vector<Entry> entries_;
  std::vector<Slot> slots_;
};

}  // namespace wattfall::design
