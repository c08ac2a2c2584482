// The printer: golden pairs, and what must hold for every text that parses (the same tree, all comments, nothing left
// to change), tried on the examples, on every text in these tests and on many with blanks, line ends and comments
// thrown in.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "../../grammar/layout.hpp"
#include "grammar/print.hpp"
#include "support.hpp"

using namespace wattfall;
using wattfall::test::format_fault;
using wattfall::test::source;
namespace fs = std::filesystem;

namespace {

std::string read_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<fs::path> files_in(const fs::path& folder, const std::string& extension) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.path().extension() == extension) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string replace_all(std::string text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
  return text;
}

/// All statements as text, units in their plain spelling.
std::string tree_of(const syntax::File& file) {
  std::string text;
  for (const syntax::Statement& statement : file.statements) text += test::show(statement) + "\n";
  for (const auto& [sign, plain] : {std::pair("\u00B5", "u"), std::pair("\u03BC", "u"), std::pair("\u03A9", "ohm"),
                                    std::pair("\u2126", "ohm"), std::pair("\u00B0", "deg")})
    text = replace_all(std::move(text), sign, plain);
  return text;
}

/// All comments, in order, a line each.
std::string comments_of(const std::string& text) {
  std::string comments;
  for (std::size_t at = 0; at < text.size(); at = layout::past_token(text, at)) {
    if (text[at] != '#') continue;
    std::string comment = text.substr(at, layout::past_token(text, at) - at);
    comment.erase(comment.find_last_not_of(" \t\r") + 1);
    comments += comment + "\n";
  }
  return comments;
}

}  // namespace

std::string wattfall::test::format_fault(const std::string& text) {
  const auto before = parse(source(text));
  if (!before.ok()) return "none";
  const auto once = format(source(text));
  if (!once.value) return "is not formatted: " + render(once.diagnostics, false);
  const auto after = parse(source(*once.value));
  if (!after.ok()) return "no longer parses:\n" + *once.value + render(after.diagnostics, false);
  if (tree_of(*before.value) != tree_of(*after.value)) return "has another tree:\n" + *once.value;
  if (comments_of(text) != comments_of(*once.value)) return "lost a comment:\n" + *once.value;
  const auto twice = format(source(*once.value));
  if (twice.value != once.value) return "is not settled:\n" + *once.value + "then:\n" + twice.value.value_or("");
  if (once.value->find(" \n") != std::string::npos) return "has blanks at a line's end:\n" + *once.value;
  if (once.value->find("\n\n\n") != std::string::npos || once.value->starts_with("\n"))
    return "has empty lines:\n" + *once.value;
  return "";
}

namespace {

/// The string literals of a C++ source, escapes resolved as far as the tests use them.
std::vector<std::string> literals_of(const std::string& code) {
  std::vector<std::string> literals;
  for (std::size_t at = 0; at < code.size(); ++at) {
    if (code.compare(at, 7, "R\"feed(") == 0) {
      const std::size_t end = code.find(")feed\"", at);
      literals.push_back(code.substr(at + 7, end - at - 7));
      at = end + 5;
    } else if (code.compare(at, 2, "//") == 0) {
      at = std::min(code.find('\n', at), code.size());
    } else if (code[at] == '\'') {
      at = code.find('\'', at + (code[at + 1] == '\\' ? 3 : 2));
    } else if (code[at] == '"') {
      std::string literal;
      for (++at; at < code.size() && code[at] != '"'; ++at) {
        if (code[at] != '\\') {
          literal += code[at];
          continue;
        }
        const char escape = code[++at];
        if (escape == 'u') {
          const auto value = static_cast<unsigned>(std::stoul(code.substr(at + 1, 4), nullptr, 16));
          if (value >= 0x800) literal += static_cast<char>(0xE0 | (value >> 12));
          literal += static_cast<char>(value >= 0x800 ? 0x80 | ((value >> 6) & 0x3F) : 0xC0 | (value >> 6));
          literal += static_cast<char>(0x80 | (value & 0x3F));
          at += 4;
        } else {
          literal += escape == 'n' ? '\n' : escape == 't' ? '\t' : escape == 'r' ? '\r' : escape;
        }
      }
      literals.push_back(literal);
    }
  }
  return literals;
}

/// Every text of these tests that parses, alone or as a value or a property.
const std::vector<std::string>& all_texts() {
  static const std::vector<std::string> all = [] {
    std::vector<std::string> texts;
    const auto take = [&texts](const std::string& text) {
      if (!text.empty() && parse(source(text)).ok()) texts.push_back(text);
    };
    for (const fs::path& path : files_in(WATTFALL_EXAMPLES, ".feed")) take(read_file(path));
    for (const fs::path& path : files_in(WATTFALL_TEST_DATA "/../golden/format", ".feed")) take(read_file(path));
    for (const fs::path& path : files_in(WATTFALL_TEST_DATA, ".cpp")) {
      for (const std::string& literal : literals_of(read_file(path))) {
        take(literal);
        take("set x = " + literal);
        take("capacitor K from a to b : " + literal + "\nline K2 at n : " + literal + ", x");
      }
    }
    return texts;
  }();
  return all;
}

}  // namespace

TEST_CASE("golden pairs: a file, and the same in the standard layout") {
  const std::vector<fs::path> feeds = files_in(WATTFALL_TEST_DATA "/../golden/format", ".feed");
  CHECK(feeds.size() >= 8);
  for (const fs::path& path : feeds) {
    CAPTURE(path.filename().string());
    const std::string text = read_file(path);
    const auto formatted = format(source(text));
    INFO(render(formatted.diagnostics, false));
    REQUIRE(formatted.value);
    const fs::path expected = fs::path(path).replace_extension(".expected");
    if (std::getenv("WATTFALL_ACCEPT") != nullptr) std::ofstream(expected, std::ios::binary) << *formatted.value;
    CHECK(*formatted.value == read_file(expected));
    CHECK(format_fault(text) == "");
  }
}

TEST_CASE("every text of these tests keeps its tree and its comments, and is settled after one go") {
  CHECK(all_texts().size() > 400);
  for (const std::string& text : all_texts()) {
    CAPTURE(text);
    CHECK(format_fault(text) == "");
  }
}

TEST_CASE("so does a text with blanks, line ends and comments thrown in anywhere") {
  std::mt19937 random(29);  // fixed: a failure must come again
  const std::vector<std::string> thrown = {" ",      "\n",  "\n\n\n", "\t", "\r\n",     " # c\n",  "#, [ \"\n",
                                           "\n#o\n", ", ",  " 1",     "-",  "(",        ")",       "\u00B5",
                                           "\u2126", "\"",  "set ",   "x",  "  line l", "\n}\n",   " {\n",
                                           "^",      " : ", "[1, 2]", "=",  "# \u00B0", "#-\n#\n", "j5"};
  const char* wanted = std::getenv("WATTFALL_ROUNDS");  // more, for a long run
  const int rounds = wanted == nullptr ? 60 : std::atoi(wanted);
  std::size_t tried = 0;
  for (int round = 0; round < rounds; ++round) {
    for (const std::string& original : all_texts()) {
      if (original.size() > 4000) continue;
      std::string text = original;
      const std::size_t edits = 1 + random() % 5;
      for (std::size_t i = 0; i < edits; ++i)
        text.insert(random() % (text.size() + 1), thrown[random() % (round % 2 == 0 ? 8 : thrown.size())]);
      const std::string fault = format_fault(text);
      if (fault == "none") continue;
      ++tried;
      if (fault.empty()) continue;
      CAPTURE(text);
      CHECK(fault == "");
    }
  }
  CHECK(tried > 8000);
}

TEST_CASE("a text with mistakes is not formatted") {
  const auto formatted = format(source("set a=1\nset b = 7 mhz\n"));
  CHECK_FALSE(formatted.value);
  REQUIRE(formatted.diagnostics.size() == 1);
  CHECK(formatted.diagnostics[0].code == "unknown-unit");
}

TEST_CASE("a text that the layout would carry past a limit is not formatted") {
  const std::string long_name(65500, 'a');
  const auto wide = format(source("kind " + long_name + " at b"));
  CHECK(wide.value);
  const auto wider = format(source("variant \"x\" {\nset " + std::string(65531, 'a') + "=1\n}"));
  CHECK_FALSE(wider.value);
  CHECK(wider.diagnostics.front().code == "line-too-long");
  std::string text;
  while (text.size() < (1U << 20U) - 200) text += "set a=1\n";
  const auto longer = format(source(text));
  CHECK_FALSE(longer.value);
  CHECK(longer.diagnostics.front().code == "file-too-long");
}

TEST_CASE("one long name does not widen a column") {
  std::string text = "kind " + std::string(60000, 'a') + " at b : 1\n";
  while (text.size() < 900000) text += "kind a at b : 1\n";
  const auto formatted = format(source(text));
  REQUIRE(formatted.value);
  CHECK(formatted.value->size() < text.size() + 100);
}
