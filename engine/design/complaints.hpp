// Collects what is wrong with a design. The same mistake met again (in another variant, in another use of a box) is
// kept once, and mistakes in the text of command-line options are marked as wrong usage.
#pragma once

#include <deque>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "grammar/diagnostic.hpp"

namespace wattfall::design {

/// `name`, as messages show it.
std::string in_quotes(std::string_view name);

/// Makes the names that a suggestion is looked for in.
using Names = std::function<std::vector<std::string>()>;

class Complaints {
 public:
  /// Notes a mistake; the caller may add to what is returned until it says the next.
  Diagnostic& say(std::string code, Span span, std::string text);
  /// Takes over diagnostics found by another room.
  void pass_on(Diagnostics others);
  /// Mistakes in this source are wrong usage: it is the text of a command-line option.
  void is_option(const SourcePtr& source) {
    options_.insert(source.get());
    keep(source);
  }
  /// A text that diagnostics may point into; those that do keep it alive.
  void keep(const SourcePtr& source) { kept_.emplace(source.get(), source); }

  bool any() const { return !said_.empty(); }
  std::size_t count() const { return said_.size(); }
  /// The nearest of the names that `known` makes; empty where none is near, or once such searches have taken long
  /// enough.
  std::string nearest(std::string_view name, const Names& known);
  /// The nearest few of them, joined.
  std::string nearest_few(std::string_view name, const Names& known, std::size_t most);
  Diagnostics take();

 private:
  std::vector<std::string> affordable(const Names& known);
  void keep_texts_of(Diagnostic& diagnostic) const;

  std::deque<Diagnostic> said_;
  std::unordered_set<std::string> seen_;
  std::unordered_set<const wattfall::Source*> options_;
  std::unordered_map<const wattfall::Source*, SourcePtr> kept_;
  std::size_t budget_ = 3'000'000;  ///< names that may still be compared for suggestions
  Diagnostic again_;                ///< stands in for a mistake that was said before
};

}  // namespace wattfall::design
