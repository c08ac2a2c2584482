// Typed numbers of things in a design, so that a node cannot stand where a part is wanted. Each is an index into the design's
// vector of that thing; -1 means none.
#pragma once

#include <compare>

namespace wattfall::design {

struct NodeId {
  int index = -1;
  explicit constexpr operator bool() const { return index >= 0; }
  friend constexpr bool operator==(NodeId, NodeId) = default;
  friend constexpr auto operator<=>(NodeId, NodeId) = default;
};
struct PartId {
  int index = -1;
  explicit constexpr operator bool() const { return index >= 0; }
  friend constexpr bool operator==(PartId, PartId) = default;
};
struct BoxId {
  int index = -1;
  explicit constexpr operator bool() const { return index >= 0; }
  friend constexpr bool operator==(BoxId, BoxId) = default;
};
struct KnobId {
  int index = -1;
  explicit constexpr operator bool() const { return index >= 0; }
  friend constexpr bool operator==(KnobId, KnobId) = default;
};

/// The one reserved node.
inline constexpr NodeId ground{0};

}  // namespace wattfall::design
