// Options of the command line that stand in for what the file says: --set, --at, --sweep.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench.hpp"

namespace wattfall::design {

struct Setting {
  SourcePtr source;  ///< NAME=VALUE
  Span name_span;
  std::string name;
  std::vector<syntax::Phrase> properties;  ///< one phrase: the value
  bool used = false;                       ///< by some variant
};

struct OptionTexts {
  std::vector<Setting> settings;
  std::vector<syntax::Phrase> at;
  std::optional<syntax::Sweep> sweep;
  Span sweep_span;
  std::vector<syntax::File> figures;  ///< each a lone `require`
  std::vector<SourcePtr> sources;
  std::vector<std::shared_ptr<const syntax::Storage>> storages;  ///< of all phrases above
};

/// Parses the texts of the options; mistakes in them are wrong usage.
OptionTexts parse_options(const ResolveOptions& options, Complaints& complaints);
/// A name that no variant knows. `known` are names of quantities and parts of all variants.
void say_unknown_settings(const OptionTexts& options, const std::vector<std::string>& known, Complaints& complaints);

}  // namespace wattfall::design
