// Walks the tree once; an `include` is followed where it stands, each file once a level. Includes that lead back to a
// file being read are shown as the loop they are.
#include "gather.hpp"

#include <algorithm>
#include <filesystem>
#include <set>

namespace wattfall::design {
namespace {

namespace fs = std::filesystem;
using syntax::Statement;

constexpr std::size_t deepest_includes = 64;

/// One file that is being brought in, and where it was named.
struct Opened {
  fs::path path;
  std::string name;
  Span span;
};

/// A box's with its body.
std::size_t bytes_of(const Statement& statement) {
  Span span = statement.span;
  const auto* box = std::get_if<syntax::Box>(&statement.what);
  if (box != nullptr && !box->body.empty()) span = join(span, box->body.back().span);
  return span.end - span.begin;
}

class Gatherer {
 public:
  Gatherer(Gathered& gathered, Files& files, Complaints& complaints)
      : gathered_(gathered), files_(files), complaints_(complaints) {}

  void file(const syntax::File& tree) {
    for (const Statement& statement : tree.statements) of_file(statement);
  }
  void root_is(const fs::path& path, const std::string& name) { opened_.push_back({path, name, {}}); }

 private:
  void of_file(const Statement& statement) {
    if (const auto* title = std::get_if<syntax::DesignTitle>(&statement.what)) return take_title(*title);
    if (const auto* variant = std::get_if<syntax::Variant>(&statement.what)) return take_variant(*variant);
    if (std::holds_alternative<syntax::Change>(statement.what)) {
      complaints_.say("change-outside-variant", statement.span,
                      "`change` stands in a variant: outside, give the part itself its properties");
      return;
    }
    of_level(gathered_.common, statement);
  }

  void of_level(Level& level, const Statement& statement) {
    if (const auto* include = std::get_if<syntax::Include>(&statement.what)) return bring_in(level, *include);
    level.bytes += bytes_of(statement);
    const bool part = std::holds_alternative<syntax::Part>(statement.what);
    (part ? level.parts : level.statements).push_back(&statement);
  }

  void take_title(const syntax::DesignTitle& title) {
    if (gathered_.title == nullptr) {
      gathered_.title = &title.title;
      return;
    }
    auto& wrong = complaints_.say("repeated-title", title.title.span, "the design has a title already");
    wrong.notes.push_back({gathered_.title->span, "the first one"});
  }

  void take_variant(const syntax::Variant& variant) {
    for (const Level& other : gathered_.variants)
      if (other.name->text == variant.name.text) {
        auto& wrong = complaints_.say("repeated-name", variant.name.span, "there is a variant of this name already");
        wrong.notes.push_back({other.name->span, "the first one"});
        return;
      }
    Level& level = gathered_.variants.emplace_back(Level{&variant.name, {}, {}, 0});
    brought_in_.clear();
    for (const Statement& statement : variant.body) of_variant(level, statement);
    brought_in_.clear();
  }

  void of_variant(Level& level, const Statement& statement) {
    const bool misplaced = std::holds_alternative<syntax::Variant>(statement.what) ||
                           std::holds_alternative<syntax::DesignTitle>(statement.what);
    if (misplaced)
      complaints_.say("not-in-a-variant", statement.span, "this cannot stand in a variant");
    else
      of_level(level, statement);
  }

  void bring_in(Level& level, const syntax::Include& include) {
    const auto path = files_.find(std::string(include.path.text), include.path.span);
    if (!path || is_loop(*path, include)) return;
    if (!(level.name == nullptr ? common_ : brought_in_).insert(*path).second) return;
    const syntax::File* tree = files_.feed(*path, std::string(include.path.text), include.path.span);
    if (tree == nullptr) return;
    opened_.push_back({*path, std::string(include.path.text), include.path.span});
    for (const Statement& statement : tree->statements) of_included(level, statement);
    opened_.pop_back();
  }

  void of_included(Level& level, const Statement& statement) {
    const bool fine =
        std::holds_alternative<syntax::Set>(statement.what) || std::holds_alternative<syntax::Box>(statement.what) ||
        std::holds_alternative<syntax::Part>(statement.what) || std::holds_alternative<syntax::Include>(statement.what);
    if (fine) return of_level(level, statement);
    complaints_.say("not-in-an-include", statement.span, "this cannot stand in an included file").expected =
        "set, box, include or a part";
  }

  bool is_loop(const fs::path& path, const syntax::Include& include) {
    const auto begin =
        std::find_if(opened_.begin(), opened_.end(), [&](const Opened& one) { return one.path == path; });
    if (begin == opened_.end() && opened_.size() < deepest_includes) return false;
    std::string loop;
    for (auto one = begin; one != opened_.end(); ++one) loop += one->name + " -> ";
    auto& wrong =
        begin == opened_.end()
            ? complaints_.say("includes-too-deep", include.path.span, "files include each other more than 64 deep here")
            : complaints_.say("include-loop", include.path.span, "this file includes itself: " + loop + begin->name);
    for (auto one = begin; one != opened_.end(); ++one)
      if (one->span.source != nullptr) wrong.notes.push_back({one->span, "included here"});
    return true;
  }

  Gathered& gathered_;
  Files& files_;
  Complaints& complaints_;
  std::vector<Opened> opened_;
  std::set<fs::path> common_, brought_in_;
};

}  // namespace

Gathered gather(const syntax::File& file, Files& files, Complaints& complaints) {
  Gathered gathered;
  Gatherer gatherer(gathered, files, complaints);
  std::error_code error;
  const std::string name = file.source == nullptr ? "" : file.source->name();
  gatherer.root_is(name == "-" ? fs::path{} : fs::canonical(name, error), name);
  gatherer.file(file);
  return gathered;
}

}  // namespace wattfall::design
