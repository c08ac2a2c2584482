// The words that begin statements. In: a text and the names of kinds. Out: two sets of words.
#include "words.hpp"

#include <array>
#include <string_view>

namespace wattfall {
namespace {

constexpr std::array<std::string_view, 11> statement_words{"design", "set",     "change", "include", "band",   "sweep",
                                                           "tune",   "require", "plane",  "box",     "variant"};

}  // namespace

const Vocabulary& standard_vocabulary() {
  static const Vocabulary vocabulary{{"source", "load", "resistor", "inductor", "capacitor", "line", "stub",
                                      "transformer", "balun", "choke", "coupling", "pad", "twoport", "selector"}};
  return vocabulary;
}

layout::Words words_of(const Source& source, const Vocabulary& vocabulary) {
  layout::Words words;
  words.keywords.insert(statement_words.begin(), statement_words.end());
  words.kinds.insert(vocabulary.kinds.begin(), vocabulary.kinds.end());
  layout::add_box_names(source.text(), words.kinds);
  return words;
}

}  // namespace wattfall
