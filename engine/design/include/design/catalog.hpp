// The one source of truth about kinds of parts: their places, properties, dimensions, defaults and meanings. The resolver,
// the error messages and `list kinds` all read it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grammar/parse.hpp"
#include "grammar/quantity.hpp"
#include "host/registry.hpp"

namespace wattfall::design {

struct PropertyInfo {
  std::string name;      ///< "Q", "common impedance"
  std::string form;      ///< how its value is written: "50 ohm", "n [at f]", "[f: z, ...]", "" for a bare word
  std::optional<Dimension> dim;  ///< none where it is a word, a file or a form of its own
  std::string fallback;  ///< in the language; "" for none
  std::string meaning;   ///< one line
  bool main = false;     ///< may stand first without its name
  bool bare = false;     ///< a later value may stand without its name (the table's italics), told by its dimension
};

struct KindInfo {
  enum class Places { at, one_port, two_port, node_pair, selector, between, box };
  std::string name;
  Places places = Places::one_port;
  std::string places_text;  ///< "at n | from a to b"
  std::string meaning;
  std::vector<PropertyInfo> properties;
  std::string brought_by;   ///< "wattfall" or the plugin's name
  const sdk::Kind* plugin_kind = nullptr;
};

class Catalog {
 public:
  /// The language's own kinds and those of plugins.
  explicit Catalog(const host::Registry& registry);

  const KindInfo* find(std::string_view kind) const;
  const std::vector<KindInfo>& kinds() const { return kinds_; }
  std::vector<std::string> names() const;
  Vocabulary vocabulary() const;

 private:
  std::vector<KindInfo> kinds_;
};

struct FigureInfo {
  FigureInfo() = default;
  std::string words;     ///< "peak volts across"
  std::string operand;   ///< "part", "node", "line", "load", ""
  std::string unit;      ///< "V", "dB", ""
  std::string meaning;
};
/// Every figure the language knows, in the order of language.md.
const std::vector<FigureInfo>& figures();

}  // namespace wattfall::design
