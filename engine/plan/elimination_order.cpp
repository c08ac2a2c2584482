#include "elimination_order.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/minimum_degree_ordering.hpp>
#include <numeric>

namespace wattfall::plan {

std::vector<unsigned> elimination_order(unsigned count, const std::vector<std::pair<unsigned, unsigned>>& edges,
                                        const std::vector<unsigned>& last) {
  using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;
  std::vector<bool> held(count, false);
  for (unsigned unknown : last) held[unknown] = true;

  // The held unknowns keep no edge: they must not shape the order of the others.
  Graph graph(count);
  for (const auto& [a, b] : edges) {
    if (held[a] || held[b]) continue;
    boost::add_edge(a, b, graph);
    boost::add_edge(b, a, graph);
  }
  std::vector<int> inverse(count), permutation(count), supernodes(count, 1), degree(count, 0);
  if (count > 0) {
    const auto index = boost::get(boost::vertex_index, graph);
    boost::minimum_degree_ordering(graph, boost::make_iterator_property_map(degree.begin(), index, 0), inverse.data(), permutation.data(),
                                   boost::make_iterator_property_map(supernodes.begin(), index, 0), 0, index);
  }
  // `permutation` lists the vertices as they leave; `inverse` says when each does.
  std::vector<unsigned> order;
  order.reserve(count);
  for (int unknown : permutation)
    if (!held[unknown]) order.push_back(static_cast<unsigned>(unknown));
  order.insert(order.end(), last.begin(), last.end());
  return order;
}

}  // namespace wattfall::plan
