// Holds the formal summary and the editors' keyword lists to the parser: what the summary derives is accepted, what the
// examples say is in it, and no keyword of the rules is missing anywhere.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <random>
#include <regex>
#include <sstream>

#include "../../grammar/layout.hpp"
#include "ebnf.hpp"
#include "support.hpp"

using namespace wattfall;
using wattfall::test::Ebnf;
using wattfall::test::source;
namespace fs = std::filesystem;

namespace {

const std::string grammar_folder = WATTFALL_TEST_DATA "/../../grammar/";

std::string read_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

const Ebnf& summary() {
  static const Ebnf ebnf(read_file(grammar_folder + "feed.ebnf"));
  return ebnf;
}

/// The words that rules.hpp spells out.
std::set<std::string> rule_words() {
  std::set<std::string> words;
  const std::string rules = read_file(grammar_folder + "rules.hpp");
  const std::regex spelled("keyword<('[a-z]'(?:,\\s*'[a-z]')*)>");
  for (auto match = std::sregex_iterator(rules.begin(), rules.end(), spelled); match != std::sregex_iterator();
       ++match) {
    std::string word;
    for (const char c : match->str(1))
      if (std::isalpha(static_cast<unsigned char>(c)) != 0) word += c;
    words.insert(word);
  }
  return words;
}

/// The text of statements on a line each, without comments, as the summary knows it.
std::string on_lines(syntax::List<syntax::Statement> statements) {
  std::string text;
  for (const syntax::Statement& statement : statements) {
    const std::string_view written = statement.span.text();
    for (std::size_t at = 0; at < written.size();) {
      const std::size_t past = layout::past_token(written, at);
      if (written[at] != '#') text += written[at] == '\n' ? " " : std::string(written.substr(at, past - at));
      at = past;
    }
    if (const auto* box = std::get_if<syntax::Box>(&statement.what)) text += " {\n" + on_lines(box->body) + "}";
    if (const auto* variant = std::get_if<syntax::Variant>(&statement.what))
      text += " {\n" + on_lines(variant->body) + "}";
    text += "\n";
  }
  return text;
}

bool holds_word(const std::string& text, const std::string& word) {
  return std::regex_search(text, std::regex("(^|[^A-Za-z0-9_])" + word + "([^A-Za-z0-9_]|$)"));
}

}  // namespace

TEST_CASE("the parser accepts every sentence of feed.ebnf") {
  std::mt19937 random(3);
  std::set<std::string> used;
  for (int i = 0; i < 6000; ++i) {
    const std::string text = summary().derive(i % 4 == 0 ? "file" : "statement", random, used);
    const auto result = parse(source(text));
    if (result.ok()) continue;
    CAPTURE(text, render(result.diagnostics, false));
    CHECK(result.ok());
  }
  CHECK(used == summary().terminals());
}

TEST_CASE("every sentence of feed.ebnf can be formatted") {
  std::mt19937 random(5);
  std::set<std::string> used;
  for (int i = 0; i < 3000; ++i) {
    const std::string text = summary().derive(i % 4 == 0 ? "file" : "statement", random, used);
    const std::string fault = test::format_fault(text);
    if (fault.empty()) continue;
    CAPTURE(text);
    CHECK(fault == "");
  }
}

TEST_CASE("feed.ebnf recognises the examples and the printer's golden pairs") {
  int count = 0;
  for (const char* folder : {WATTFALL_EXAMPLES, WATTFALL_TEST_DATA "/../golden/format"}) {
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
      if (entry.path().extension() != ".feed") continue;
      CAPTURE(entry.path().string());
      const auto file = parse(source(read_file(entry.path())));
      REQUIRE(file.ok());
      CHECK(summary().recognises("file", on_lines(file.value->statements)));
      ++count;
    }
  }
  CHECK(count >= 10);
}

TEST_CASE("feed.ebnf does not recognise what is no statement") {
  CHECK(summary().recognises("statement", "sweep 7 MHz to 8 MHz step 1 kHz"));
  for (const char* text :
       {"sweep 7 MHz to 8 MHz", "set a = ", "set a 3", "tune L at 7 MHz most efficiency", "plane p n",
        "require swr at n below", "capacitor C : 1 pF", "line l from a : 1 m", "set x = 208j", "set x = 1 pF,",
        "box t (a, b)", "capacitor C at n : 100 p", "design x", "set x = (1"}) {
    CAPTURE(text);
    CHECK_FALSE(summary().recognises("statement", text));
    CHECK_FALSE(parse(source(text)).ok());
  }
}

TEST_CASE("every keyword of the rules stands in feed.ebnf and in the editors' files") {
  const std::set<std::string> words = rule_words();
  CHECK(words.size() > 35);
  const std::set<std::string> terminals = summary().terminals();
  const std::string vim = read_file(grammar_folder + "editors/feed.vim");
  const std::string textmate = read_file(grammar_folder + "editors/feed.tmLanguage.json");
  for (const std::string& word : words) {
    CAPTURE(word);
    CHECK(terminals.contains(word));
    CHECK(holds_word(vim, word));
    CHECK(holds_word(textmate, word));
  }
  for (const std::string& kind : standard_vocabulary().kinds) {
    CAPTURE(kind);
    CHECK(holds_word(vim, kind));
    CHECK(holds_word(textmate, kind));
  }
  for (const std::string& word : terminals) {
    if (std::isalpha(static_cast<unsigned char>(word[0])) == 0) continue;
    CAPTURE(word);
    CHECK(holds_word(vim, word));
    CHECK(holds_word(textmate, word));
  }
}
