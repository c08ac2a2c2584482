// Boxes by themselves, before any is written out: what stands in them, loops, and how many parts they come to. Walks
// keep their own stack, so that a long chain of boxes cannot exhaust the program's.
#include <algorithm>

#include "expression.hpp"
#include "place_parts.hpp"

namespace wattfall::design {
namespace {

constexpr std::uint64_t most_parts = 100'000;  // language.md
constexpr int deepest_boxes = 64;              // language.md

struct Size {
  std::uint64_t parts = 0, uses = 0;
  int depth = 0;
};

/// The boxes that a box uses, each with the statement that does.
std::vector<std::pair<const syntax::Box*, const syntax::Part*>> uses_of(const Bench& bench, const syntax::Box& box) {
  std::vector<std::pair<const syntax::Box*, const syntax::Part*>> uses;
  for (const syntax::Statement& member : box.body) {
    const auto* part = std::get_if<syntax::Part>(&member.what);
    if (part == nullptr || bench.catalog.find(part->kind.text) != nullptr) continue;
    const auto used = bench.boxes.find(part->kind.text);
    if (used != bench.boxes.end()) uses.emplace_back(used->second, part);
  }
  return uses;
}

void say_box_loop(Bench& bench, const std::vector<const syntax::Box*>& path, const syntax::Box* again,
                  const syntax::Part* use) {
  if (bench.looping_boxes.contains(again) && bench.looping_boxes.contains(path.back())) return;
  const auto begin = std::find(path.begin(), path.end(), again);
  std::string loop;
  for (auto member = begin; member != path.end(); ++member) loop.append((*member)->name.text).append(" -> ");
  auto& wrong =
      bench.complaints.say("box-loop", use->kind.span,
                           "the box " + in_quotes(again->name.text) + " stands in itself: " + loop.append(again->name.text));
  for (auto member = begin; member != path.end(); ++member)
    wrong.notes.push_back({(*member)->name.span, in_quotes((*member)->name.text) + " stands in the loop"});
  bench.looping_boxes.insert(begin, path.end());
}

/// Depth first over the boxes; calls `leave` on each after all that it uses.
class Walk {
 public:
  explicit Walk(Bench& bench) : bench_(bench) {}

  template <class Leave>
  void from(const syntax::Box* start, const Leave& leave) {
    if (!enter(start)) return;
    while (!path_.empty()) {
      auto& [uses, next] = open_.back();
      if (next == uses.size()) {
        done_.insert(path_.back());
        leave(path_.back());
        path_.pop_back();
        open_.pop_back();
        continue;
      }
      const auto [used, use] = uses[next++];
      if (on_path(used))
        say_box_loop(bench_, path_, used, use);
      else
        enter(used);
    }
  }

 private:
  bool enter(const syntax::Box* box) {
    if (done_.contains(box) || !entered_.insert(box).second) return false;
    path_.push_back(box);
    open_.emplace_back(uses_of(bench_, *box), 0);
    return true;
  }
  bool on_path(const syntax::Box* box) const { return entered_.contains(box) && !done_.contains(box); }

  Bench& bench_;
  std::unordered_set<const syntax::Box*> entered_, done_;
  std::vector<const syntax::Box*> path_;
  std::vector<std::pair<std::vector<std::pair<const syntax::Box*, const syntax::Part*>>, std::size_t>> open_;
};

std::uint64_t capped(std::uint64_t n) {
  return std::min<std::uint64_t>(n, 1'000'000'000);
}

Size size_of(const Bench& bench, const syntax::Box& box, const std::unordered_map<const syntax::Box*, Size>& known) {
  Size size{0, 1, 1};
  for (const syntax::Statement& member : box.body)
    size.parts += std::holds_alternative<syntax::Part>(member.what) ? 1 : 0;
  for (const auto& [used, use] : uses_of(bench, box)) {
    const auto inner = known.find(used);
    if (inner == known.end()) continue;
    size.parts = capped(size.parts + inner->second.parts - 1);
    size.uses = capped(size.uses + inner->second.uses);
    size.depth = std::max(size.depth, inner->second.depth + 1);
  }
  return size;
}

void check_quantities(Bench& bench, const syntax::Box& box) {
  std::unordered_map<std::string_view, Span> seen;
  std::vector<syntax::Word> names;
  for (const auto& with : box.with) names.push_back(with.first);
  for (const syntax::Statement& member : box.body)
    if (const auto* set = std::get_if<syntax::Set>(&member.what)) names.push_back(set->name);
  for (const syntax::Word& name : names) {
    const auto [known, is_new] = seen.try_emplace(name.text, name.span);
    if (name.text == "pi" || name.text == "frequency" || is_function(name.text))
      bench.complaints.say("reserved-name", name.span, in_quotes(name.text) + " has a meaning of its own");
    if (is_new) continue;
    auto& wrong = bench.complaints.say("repeated-name", name.span, in_quotes(name.text) + " is given twice");
    wrong.notes.push_back({known->second, "the first one"});
  }
}

void check_ports(Bench& bench, const syntax::Box& box) {
  std::unordered_map<std::string_view, Span> seen;
  for (const syntax::Word& port : box.ports) {
    const auto [known, is_new] = seen.try_emplace(port.text, port.span);
    if (port.text == "ground")
      bench.complaints.say("reserved-name", port.span, "`ground` passes into every box, and is no port");
    if (is_new) continue;
    auto& wrong =
        bench.complaints.say("repeated-name", port.span, "the box has a port " + in_quotes(port.text) + " already");
    wrong.notes.push_back({known->second, "the first one"});
  }
}

void check_body(Bench& bench, const syntax::Box& box) {
  for (const syntax::Statement& member : box.body)
    if (!std::holds_alternative<syntax::Part>(member.what) && !std::holds_alternative<syntax::Set>(member.what))
      bench.complaints.say("not-in-a-box", member.span, "this cannot stand in a box").expected = "a part, or `set`";
}

}  // namespace

void check_boxes(Bench& bench, const std::vector<const syntax::Box*>& boxes) {
  Walk walk(bench);
  for (const syntax::Box* box : boxes) {
    check_ports(bench, *box);
    check_quantities(bench, *box);
    check_body(bench, *box);
    walk.from(box, [](const syntax::Box*) {});
  }
}

bool too_many_parts(Bench& bench, const std::vector<const syntax::Statement*>& statements) {
  std::unordered_map<const syntax::Box*, Size> sizes;
  Walk walk(bench);
  Size total{bench.parts_before, 0, 0};
  for (const syntax::Statement* statement : statements) {
    const auto* part = std::get_if<syntax::Part>(&statement->what);
    if (part == nullptr) continue;
    const auto box = bench.boxes.find(part->kind.text);
    Size size{1, 0, 0};
    if (box != bench.boxes.end() && bench.catalog.find(part->kind.text) == nullptr) {
      walk.from(box->second, [&](const syntax::Box* left) { sizes[left] = size_of(bench, *left, sizes); });
      size = sizes[box->second];
    }
    if (size.depth > deepest_boxes) {
      bench.complaints.say("boxes-too-deep", statement->span,
                           "boxes stand more than 64 levels deep in each other here");
      return true;
    }
    total.parts = capped(total.parts + size.parts);
    total.uses = capped(total.uses + size.uses);
    if (total.parts <= most_parts && total.uses <= most_parts) continue;
    bench.complaints.say("too-many-parts", statement->span,
                         bench.parts_before == 0
                             ? "with this the design would have more than 100,000 parts"
                             : "with this the variants together would have more than 100,000 parts");
    return true;
  }
  return false;
}

}  // namespace wattfall::design
