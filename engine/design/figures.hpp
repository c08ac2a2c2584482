// Figures as they are asked for in a text, settled to ids; and planes and knobs' goals, which are made of the same.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "expression.hpp"

namespace wattfall::design {

/// What a figure is measured in.
Dimension dimension_of(FigureKind kind);

/// Nodes with the parts that have a terminal there, for everything that looks from a node.
class Adjacency {
 public:
  explicit Adjacency(const Design& design);

  /// Each part once.
  std::span<const PartId> parts_at(NodeId node) const;
  /// Parts that can be reached from the source without passing through `node` or ground, by part.
  std::vector<bool> reached_before(const Design& design, NodeId node) const;

 private:
  std::vector<PartId> parts_;          ///< of the first node, of the second, ...
  std::vector<std::size_t> first_of_;  ///< by node: where its parts begin; one more at the end
};

std::optional<Figure> settle_figure(Bench& bench, const Adjacency& adjacency, const syntax::Figure& figure);
std::optional<Look> settle_look(Bench& bench, const Adjacency& adjacency, const syntax::Word& node,
                                const syntax::Word& into);
std::optional<Requirement> settle_requirement(Bench& bench, const Adjacency& adjacency,
                                              const syntax::Requirement& asked);

/// The text of a span, without comments, blanks made single.
std::string text_of(Span span);

}  // namespace wattfall::design
