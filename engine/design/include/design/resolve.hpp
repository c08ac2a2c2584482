// Syntax tree -> design: names, units, defaults, boxes, variants, files. Nothing is computed about the network itself.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "design/catalog.hpp"
#include "design/design.hpp"
#include "grammar/parse.hpp"

namespace wattfall::design {

struct ResolveOptions {
  std::optional<std::string> variant;                          ///< --variant: only this one; unknown: Fault::usage
  std::vector<std::pair<std::string, std::string>> settings;  ///< --set NAME=VALUE; NAME is a quantity or a part (its main value); unknown: Fault::usage
  std::vector<std::string> at;                                 ///< --at F: replaces the file's sweeps
  std::optional<std::string> sweep;                            ///< --sweep "A to B step S"
  std::vector<std::string> figures;                            ///< --figure "heat in L": into the design's `figures`
  bool as_written = false;                                     ///< --as-written: knobs without a written value are an error
  std::vector<std::filesystem::path> allow;                    ///< --allow DIR: folders that files may lie in besides the design's own
  std::filesystem::path folder;                                ///< the folder of the design given on the command line
};

/// Resolves every variant. All mistakes of all variants are reported (the same mistake once). `set` has a value only where
/// there is no diagnostic.
Result<DesignSet> resolve(const syntax::File& file, const Catalog& catalog, const host::Registry& registry,
                          const ResolveOptions& options);

}  // namespace wattfall::design
