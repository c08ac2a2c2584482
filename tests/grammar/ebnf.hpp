// A small reader of EBNF: derives random sentences from a grammar, and recognises texts by it. For the test that holds
// grammar/feed.ebnf to the parser. In: productions as ISO/IEC 14977 writes them, without exceptions and counts. Those
// behind a comment that begins with `---` are letters: nothing stands between their parts.
#pragma once

#include <cstddef>
#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace wattfall::test {

class Ebnf {
 public:
  explicit Ebnf(const std::string& text);

  /// The terminals of the syntax, all of them.
  std::set<std::string> terminals() const;

  /// A sentence of `production`; its terminals are added to `used`.
  std::string derive(const std::string& production, std::mt19937& random, std::set<std::string>& used) const;

  /// Whether all of `text` is a sentence. A line end stands for itself, other blanks anywhere between symbols.
  bool recognises(const std::string& production, const std::string& text) const;

 private:
  enum class Kind { sequence, choice, optional, repeated, terminal, production, special };
  struct Node {
    Kind kind = Kind::sequence;
    std::string text = {};
    std::vector<Node> parts = {};
  };
  struct Production {
    Node node;
    bool letters = false;
    int depth = 1000;  ///< of its shallowest sentence
  };
  struct Derivation;
  struct Recognition;

  Node read_choice(const std::string& text, std::size_t& at) const;
  Node read_item(const std::string& text, std::size_t& at) const;
  int depth_of(const Node& node) const;

  std::map<std::string, Production> productions_;
};

}  // namespace wattfall::test
