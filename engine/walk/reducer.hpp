// Series-parallel reduction of a network between one branch and one port. It leaves a tree, in which every one-port knows what it was made of.
// Private to the room.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "graph/network.hpp"
#include "one_port.hpp"
#include "walk/walk.hpp"

namespace wattfall::walk {

/// A one-port that the reduction met or made. Those that it is made of stand before it.
struct Branch {
  enum class Kind { leaf, end, series, parallel, through };
  Kind kind = Kind::leaf;
  int element = -1;             ///< leaf: its element, -1 for the source; through: the two-port
  int first = -1, second = -1;  ///< what it is made of
  bool from_second = true;      ///< through: `first` stands at the two-port's second port
  int node = 0, other = 0;      ///< between which it stands
  OnePort port;
  Complex first_share = 1.0, second_share = 1.0;  ///< k of each over k of this
  double loss = 0.0;            ///< leaf: heat over |k|^2
};

struct Reduction {
  std::vector<Branch> branches;
  int spine = -1;             ///< what holds the branch it began with, as far as it came
  std::optional<Stop> stop;
  std::vector<int> idle;      ///< elements that were cut off: no current reaches them
};

/// What the reduction begins with and where it ends.
struct Task {
  int start_element = -1;          ///< the load's element, or -1: the source's impedance, as `source`
  int left_out_element = -1;       ///< an element that is taken away: the load at the port
  OnePort source;
  int source_node = 0, source_other = 0;
  int port_node = 0, port_other = 0;
};

Reduction reduce(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Task& task);

}  // namespace wattfall::walk
