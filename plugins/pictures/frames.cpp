#include "frames.hpp"

#include <algorithm>
#include <limits>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "lettering.hpp"
#include "measures.hpp"

namespace pictures {
namespace {

/// Some parts of a box, and the room that they and their labels take.
struct Group {
  std::set<int> items;
  Extent inside;
};

struct Framed {
  Extent frame;
  Lettering heading;
};

/// The heading stands above or, where a wire comes from there, below. Names of nodes that the edge would cut are taken
/// in.
Framed around(const Sheet& sheet, const Group& group, const std::string& title, bool above) {
  Extent inside = group.inside;
  for (const Lettering& text : sheet.letterings)
    if (text.item < 0 && std::string_view(text.style) == "node" && text.extent().meets(group.inside.grown(9.0)))
      inside.add(text.extent().grown(1.0));
  Extent frame = inside.grown(8.0);
  (above ? frame.y0 : frame.y1) += above ? -16.0 : 16.0;
  const double room = std::max(90.0, inside.x1 - inside.x0), y = above ? frame.y0 + 14.0 : frame.y1 - 6.0;
  return {frame, {{frame.x0 + 6.0, y}, false, fit(title, room, node_px, true), "box", node_px, true}};
}

bool is_within(const Extent& inner, const Extent& outer) {
  return inner.x0 > outer.x0 && inner.x1 < outer.x1 && inner.y0 > outer.y0 && inner.y1 < outer.y1;
}

/// Whether nothing but `members` stands in the frame, nothing lies across its edge, and its heading lies over nothing.
bool is_clear(const Sheet& sheet, const Framed& framed, const std::set<int>& members) {
  const Extent &frame = framed.frame, heading = framed.heading.extent();
  for (const Figure& figure : sheet.figures)
    if (!members.contains(figure.item) && frame.meets(figure.extent.grown(2.0))) return false;
  for (const Lettering& text : sheet.letterings) {
    const Extent extent = text.extent().grown(1.0);
    if (extent.meets(heading) || (!is_within(extent, frame) && extent.meets(frame))) return false;
    if (text.item >= 0 && !members.contains(text.item) && extent.meets(frame)) return false;
  }
  for (const Wire& wire : sheet.wires)
    if (Extent{wire.from.x, wire.from.y, wire.to.x, wire.to.y}.grown(1.5).meets(heading)) return false;
  return std::none_of(sheet.frames.begin(), sheet.frames.end(), [&](const Frame& other) {
    return other.extent.meets(frame) && !is_within(other.extent, frame) && !is_within(frame, other.extent);
  });
}

/// What belongs to the box or to a box in it, each part a group of its own; what a box in it already frames is one.
std::vector<Group> members_of(const Sheet& sheet, const Circuit& circuit, const std::string& box,
                              const std::vector<Group>& inner) {
  std::vector<Group> groups;
  const auto is_inside = [&](int i) {
    const std::string& own = circuit.items[static_cast<std::size_t>(i)].box;
    return own == box || own.starts_with(box + '.');
  };
  std::set<int> taken;
  for (const Group& group : inner)
    if (is_inside(*group.items.begin())) groups.push_back(group), taken.insert(group.items.begin(), group.items.end());
  for (std::size_t i = 0; i < circuit.items.size(); ++i) {
    const int number = static_cast<int>(i);
    if (!is_inside(number) || taken.contains(number)) continue;
    Group group{{number}, {}};
    for (const Figure& figure : sheet.figures)
      if (figure.item == number) group.inside.add(figure.extent);
    for (const Lettering& text : sheet.letterings)
      if (text.item == number) group.inside.add(text.extent());
    if (!group.inside.empty()) groups.push_back(std::move(group));
  }
  return groups;
}

Group together(const Group& a, const Group& b) {
  Group both = a;
  both.items.insert(b.items.begin(), b.items.end());
  both.inside.add(b.inside);
  return both;
}

double area(const Extent& extent) {
  return (extent.x1 - extent.x0) * (extent.y1 - extent.y0);
}

/// A frame in which nothing else stands; none where there is none.
std::optional<Framed> clear_frame(const Sheet& sheet, const Group& group, const std::set<int>& members,
                                  const std::string& title) {
  for (const bool above : {true, false})
    if (Framed framed = around(sheet, group, title, above); is_clear(sheet, framed, members)) return framed;
  return std::nullopt;
}

/// The two groups that fit into one frame and waste the least room by it.
std::optional<std::pair<std::size_t, std::size_t>> nearest_pair(const Sheet& sheet, const std::vector<Group>& groups,
                                                                const std::set<int>& members,
                                                                const std::string& title) {
  std::optional<std::pair<std::size_t, std::size_t>> best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t a = 0; a < groups.size(); ++a)
    for (std::size_t b = a + 1; b < groups.size(); ++b) {
      const Group both = together(groups[a], groups[b]);
      const double waste = area(both.inside) - area(groups[a].inside) - area(groups[b].inside);
      if (waste >= least) continue;
      const std::optional<Framed> framed = clear_frame(sheet, both, members, title);
      if (!framed) continue;
      // Nor may it cut through a third group, which would then find no frame.
      const bool cuts = std::any_of(groups.begin(), groups.end(), [&](const Group& third) {
        return &third != &groups[a] && &third != &groups[b] && third.inside.meets(framed->frame) &&
               !is_within(third.inside, framed->frame);
      });
      if (cuts) continue;
      least = waste;
      best = {a, b};
    }
  return best;
}

/// One group of all where that stands clear; else as few as can be.
std::vector<Group> gather(const Sheet& sheet, std::vector<Group> groups, const std::set<int>& members,
                          const std::string& title) {
  Group all;
  for (const Group& group : groups) all = together(all, group);
  if (clear_frame(sheet, all, members, title)) return {all};
  constexpr std::size_t most = 60;  // gathering costs the cube of them
  if (groups.size() > most) return {};
  while (const auto pair = nearest_pair(sheet, groups, members, title)) {
    groups[pair->first] = together(groups[pair->first], groups[pair->second]);
    groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(pair->second));
  }
  return groups;
}

}  // namespace

void frame_boxes(Sheet& sheet, const Circuit& circuit) {
  // Boxes in boxes first: the outer frame goes around the inner one.
  std::vector<BoxName> boxes = circuit.boxes;
  const auto depth = [](const BoxName& box) { return std::count(box.name.begin(), box.name.end(), '.'); };
  std::stable_sort(boxes.begin(), boxes.end(), [&](const BoxName& a, const BoxName& b) { return depth(a) > depth(b); });
  std::vector<Group> framed;
  for (const BoxName& box : boxes) {
    const std::string title = box.name + (box.kind.empty() ? "" : ": " + box.kind);
    const std::vector<Group> groups = members_of(sheet, circuit, box.name, framed);
    if (groups.empty()) continue;
    std::set<int> members;
    for (const Group& group : groups) members.insert(group.items.begin(), group.items.end());
    for (Group group : gather(sheet, groups, members, title)) {
      const std::optional<Framed> found = clear_frame(sheet, group, members, title);
      if (!found) continue;
      sheet.letterings.push_back(found->heading);
      sheet.frames.push_back({found->frame});
      std::erase_if(framed, [&](const Group& inner) { return group.items.contains(*inner.items.begin()); });
      group.inside = found->frame;
      framed.push_back(std::move(group));
    }
  }
}

}  // namespace pictures
