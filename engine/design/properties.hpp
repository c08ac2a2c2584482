// Which property each phrase of a part gives: the longest name wins over a quantity's; the first phrase may be the main
// value; a later one without a name is told by its dimension where the kind allows it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bench.hpp"

namespace wattfall::design {

/// One property as given.
struct Given {
  const PropertyInfo* info = nullptr;
  syntax::Phrase value;  ///< what follows the name; the whole phrase where it stands without
  Span span;             ///< of the whole phrase
  Scope* scope = nullptr;
  bool named = false;
};

class Properties {
 public:
  /// None of that name: null.
  const Given* find(std::string_view name) const;
  const std::vector<Given>& all() const { return given_; }
  /// False where a phrase was not understood: what is missing may be in it.
  bool complete() const { return complete_; }

 private:
  friend Properties read_properties(Bench&, const KindInfo&, syntax::List<syntax::Phrase>, Scope&);
  friend void replace(Bench&, Properties&, Properties, const KindInfo&, bool);
  std::vector<Given> given_;
  bool complete_ = true;
};

/// Names of phrases, with what is unknown said, and bare values given to the properties of their dimension.
Properties read_properties(Bench& bench, const KindInfo& kind, syntax::List<syntax::Phrase> phrases, Scope& scope);
/// Says repeated and contradictory ones, each with both places.
void check_clashes(Bench& bench, const KindInfo& kind, const Properties& properties);
/// Puts others in the place of those they name (or contradict): `change`, `--set`.
void replace(Bench& bench, Properties& properties, Properties others, const KindInfo& kind, bool main_only);

}  // namespace wattfall::design
