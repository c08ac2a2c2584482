// Reads EBNF by descent; derives by chance, and by the shallowest way once a sentence is deep; recognises by sets of
// possible ends, each found once.
#include "ebnf.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <stdexcept>
#include <string_view>
#include <utility>

namespace wattfall::test {
namespace {

constexpr std::array<const char*, 9> names{"a1", "Lx", "mid", "atu", "coax", "w_2", "node", "Cout", "Qq"};
constexpr std::array<const char*, 6> characters{"a", " ", "#", "(", "7", "\u00E9"};

bool is_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

void skip(const std::string& text, std::size_t& at) {
  while (at < text.size() && std::isspace(static_cast<unsigned char>(text[at])) != 0) ++at;
}

[[noreturn]] void fail(const std::string& text, std::size_t at) {
  throw std::runtime_error("the EBNF cannot be read at: " + text.substr(at, 60));
}

/// Takes comments out; `letters` is where the one that begins with `---` stood.
std::string without_comments(const std::string& text, std::size_t& letters) {
  std::string result;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.compare(at, 2, "(*") != 0) {
      result += text[at];
      continue;
    }
    if (text.compare(at, 6, "(* ---") == 0) letters = result.size();
    at = text.find("*)", at) + 1;
  }
  return result;
}

std::string trimmed(const std::string& text) {
  const std::size_t begin = text.find_first_not_of(" \n");
  return text.substr(begin, text.find_last_not_of(" \n") - begin + 1);
}

}  // namespace

// --- Reading ---

Ebnf::Ebnf(const std::string& commented) {
  std::size_t letters = commented.size();
  const std::string text = without_comments(commented, letters);
  std::size_t at = 0;
  for (skip(text, at); at < text.size(); skip(text, at)) {
    const std::size_t equals = text.find('=', at);
    if (equals == std::string::npos) fail(text, at);
    const std::string name = trimmed(text.substr(at, equals - at));
    const bool is_letters = at >= letters;
    at = equals + 1;
    productions_[name] = {read_choice(text, at), is_letters};
    if (at >= text.size() || text[at++] != ';') fail(text, at - 1);
  }
  for (int round = 0; round < 50; ++round)
    for (auto& [name, production] : productions_) production.depth = 1 + depth_of(production.node);
}

Ebnf::Node Ebnf::read_choice(const std::string& text, std::size_t& at) const {
  Node choice{Kind::choice};
  Node sequence;
  while (true) {
    sequence.parts.push_back(read_item(text, at));
    skip(text, at);
    const char c = at < text.size() ? text[at] : ';';
    if (c == ',') {
      ++at;
      continue;
    }
    choice.parts.push_back(std::exchange(sequence, {}));
    if (c != '|') return choice;
    ++at;
  }
}

Ebnf::Node Ebnf::read_item(const std::string& text, std::size_t& at) const {
  skip(text, at);
  const char c = text.at(at);
  const auto until = [&](char close, std::size_t from) {
    const std::size_t end = text.find(close, from);
    if (end == std::string::npos) fail(text, at);
    at = end + 1;
    return text.substr(from, end - from);
  };
  if (c == '"' || c == '\'') return {Kind::terminal, until(c, at + 1)};
  if (c == '?') return {Kind::special, trimmed(until('?', at + 1))};
  if (c == '(' || c == '[' || c == '{') {
    const char close = c == '(' ? ')' : c == '[' ? ']' : '}';
    Node inner = read_choice(text, ++at);
    if (at >= text.size() || text[at++] != close) fail(text, at - 1);
    return {c == '(' ? Kind::sequence : c == '[' ? Kind::optional : Kind::repeated, "", {std::move(inner)}};
  }
  const std::size_t begin = at;
  while (at < text.size() && (is_word(text[at]) || text[at] == ' ')) ++at;
  if (at == begin) fail(text, at);
  return {Kind::production, trimmed(text.substr(begin, at - begin))};
}

int Ebnf::depth_of(const Node& node) const {
  if (node.kind == Kind::terminal || node.kind == Kind::special || node.kind == Kind::optional ||
      node.kind == Kind::repeated)
    return 0;
  if (node.kind == Kind::production) return productions_.at(node.text).depth;
  int depth = node.kind == Kind::choice ? 1000 : 0;
  for (const Node& part : node.parts)
    depth = node.kind == Kind::choice ? std::min(depth, depth_of(part)) : std::max(depth, depth_of(part));
  return depth;
}

std::set<std::string> Ebnf::terminals() const {
  std::set<std::string> all;
  const auto walk = [&all](const auto& self, const Node& node) -> void {
    if (node.kind == Kind::terminal) all.insert(node.text);
    for (const Node& part : node.parts) self(self, part);
  };
  for (const auto& [name, production] : productions_)
    if (!production.letters) walk(walk, production.node);
  return all;
}

// --- Deriving ---

struct Ebnf::Derivation {
  const Ebnf& grammar;
  std::mt19937& random;
  std::set<std::string>& used;
  std::string text = {};
  int brackets = 0;
  bool comma = false;

  /// What stands before the next symbol.
  void blank() {
    if (text.empty() || text.back() == '\n') return;
    const bool goes_on = comma || brackets > 0;
    const auto chance = random() % 40;
    text += goes_on && chance == 0 ? "\n" : goes_on && chance == 1 ? " # why, [ \"\n  " : chance < 4 ? "\t " : " ";
  }

  void symbol(const std::string& what) {
    blank();
    text += what;
    if (what != "tee") used.insert(what);
    comma = what == ",";
    if (what == "(" || what == "[") ++brackets;
    if (what == ")" || what == "]") --brackets;
  }

  void special(const std::string& what) {
    if (what == "one line end") {
      text += random() % 8 == 0 ? " # done\n\n" : "\n";
      comma = false;
    } else if (what == "[A-Za-z]") {
      text += static_cast<char>((random() % 2 == 0 ? 'a' : 'A') + static_cast<int>(random() % 26));
    } else if (what == "[0-9]") {
      text += static_cast<char>('0' + random() % 10);
    } else {
      text += characters[random() % characters.size()];
    }
  }

  void production(const std::string& name, bool letters, int depth) {
    const Production& production = grammar.productions_.at(name);
    if (production.letters && !letters && name != "line end") {
      blank();
      comma = false;
    }
    if (name == "box name") {
      symbol("tee");
    } else if (name == "name") {
      text += names[random() % names.size()];
    } else {
      node(production.node, production.letters, depth + 1);
    }
  }

  void node(const Node& node, bool letters, int depth) {
    const bool deep = depth > 18;
    switch (node.kind) {
      case Kind::terminal:
        letters ? void(text += node.text) : symbol(node.text);
        return;
      case Kind::special:
        return special(node.text);
      case Kind::production:
        return production(node.text, letters, depth);
      case Kind::sequence:
        for (const Node& part : node.parts) this->node(part, letters, depth);
        return;
      case Kind::choice:
        return this->node(chosen(node, deep), letters, depth);
      case Kind::optional:
        if (!deep && random() % 2 == 0) this->node(node.parts[0], letters, depth);
        return;
      case Kind::repeated:
        for (auto count = deep ? 0 : random() % (letters ? 2 : 3); count > 0; --count)
          this->node(node.parts[0], letters, depth);
        return;
    }
  }

  const Node& chosen(const Node& choice, bool deep) {
    if (!deep) return choice.parts[random() % choice.parts.size()];
    const auto shallower = [this](const Node& l, const Node& r) { return grammar.depth_of(l) < grammar.depth_of(r); };
    return *std::min_element(choice.parts.begin(), choice.parts.end(), shallower);
  }
};

std::string Ebnf::derive(const std::string& production, std::mt19937& random, std::set<std::string>& used) const {
  Derivation derivation{*this, random, used};
  derivation.production(production, false, 0);
  return std::move(derivation.text);
}

// --- Recognising ---

struct Ebnf::Recognition {
  using Ends = std::set<std::size_t>;

  const Ebnf& grammar;
  const std::string& text;
  std::map<std::pair<const Node*, std::size_t>, Ends> known = {};

  std::size_t past_blanks(std::size_t at) const {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
    return at;
  }

  /// Two words do not touch.
  Ends apart(Ends ends) const {
    std::erase_if(ends, [this](std::size_t end) {
      return end > 0 && end < text.size() && is_word(text[end - 1]) && is_word(text[end]);
    });
    return ends;
  }

  Ends special(const std::string& what, std::size_t at) const {
    if (at >= text.size()) return {};
    const char c = text[at];
    const bool fits = what == "one line end" ? c == '\n'
                      : what == "[A-Za-z]"   ? std::isalpha(static_cast<unsigned char>(c)) != 0
                      : what == "[0-9]"      ? std::isdigit(static_cast<unsigned char>(c)) != 0
                                             : c != '"' && c != '\\' && c != '\n';
    return fits ? Ends{at + 1} : Ends{};
  }

  Ends production(const std::string& name, std::size_t at, bool letters) {
    const Production& production = grammar.productions_.at(name);
    if (!production.letters || letters) return node(production.node, at, production.letters);
    const Ends& ends = node(production.node, past_blanks(at), true);
    return name == "real" || name == "imaginary" ? ends : apart(ends);  // a unit may follow at once
  }

  Ends each(const Node& part, const Ends& begins, bool letters) {
    Ends ends;
    for (const std::size_t begin : begins) ends.merge(Ends(node(part, begin, letters)));
    return ends;
  }

  Ends repeated(const Node& part, std::size_t at, bool letters) {
    Ends all{at};
    for (Ends last{at}; !last.empty();) {
      Ends next;
      for (const std::size_t end : each(part, last, letters))
        if (all.insert(end).second) next.insert(end);
      last = std::move(next);
    }
    return all;
  }

  Ends find(const Node& node, std::size_t at, bool letters) {
    Ends ends;
    switch (node.kind) {
      case Kind::terminal: {
        const std::size_t begin = letters ? at : past_blanks(at);
        if (text.compare(begin, node.text.size(), node.text) != 0) return {};
        return letters ? Ends{begin + node.text.size()} : apart({begin + node.text.size()});
      }
      case Kind::special:
        return special(node.text, at);
      case Kind::production:
        return production(node.text, at, letters);
      case Kind::sequence:
        ends = {at};
        for (const Node& part : node.parts) ends = each(part, ends, letters);
        return ends;
      case Kind::choice:
        for (const Node& part : node.parts) ends.merge(Ends(this->node(part, at, letters)));
        return ends;
      case Kind::optional:
        ends = this->node(node.parts[0], at, letters);
        ends.insert(at);
        return ends;
      case Kind::repeated:
        return repeated(node.parts[0], at, letters);
    }
    return ends;
  }

  const Ends& node(const Node& node, std::size_t at, bool letters) {
    const auto key = std::pair(&node, at);
    const auto found = known.find(key);
    if (found != known.end()) return found->second;
    Ends ends = find(node, at, letters);
    return known[key] = std::move(ends);
  }
};

bool Ebnf::recognises(const std::string& production, const std::string& text) const {
  Recognition recognition{*this, text};
  for (const std::size_t end : recognition.production(production, 0, false))
    if (recognition.past_blanks(end) == text.size()) return true;
  return false;
}

}  // namespace wattfall::test
