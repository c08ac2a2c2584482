// Every input that a fuzzer has kept, and every feed file of the tree, once more through the functions that the fuzzers
// feed: what was once found stays found, in every build. Also holds the fuzzers' dictionary to the language.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "../grammar/ebnf.hpp"
#include "design/catalog.hpp"
#include "shelf.hpp"
#include "targets.hpp"

using namespace wattfall;
namespace fs = std::filesystem;

namespace {

const fs::path here = WATTFALL_TEST_DATA;

std::string read_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<fs::path> files_in(const fs::path& folder, const std::string& extension) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file() && (extension.empty() || entry.path().extension() == extension))
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// An input that breaks a promise aborts: Catch then shows its path.
void feed(const fuzz::Target& target, const std::vector<fs::path>& files) {
  for (const fs::path& path : files) {
    CAPTURE(target.name, path.string());
    target.feed(read_file(path));
  }
}

/// Whole, each word alone, and with the bracket that opens a group.
void add_words(std::set<std::string>& words, const std::string& phrase) {
  if (phrase.empty()) return;
  words.insert(phrase);
  std::istringstream stream(phrase);
  for (std::string word; stream >> word;) words.insert(word);
}

/// Every word that the grammar, the catalogue and the figures know.
std::set<std::string> words_of_the_language() {
  std::set<std::string> words = test::Ebnf(read_file(here / "../../grammar/feed.ebnf")).terminals();
  const design::Catalog catalog(fuzz::shelf());
  for (const design::KindInfo& kind : catalog.kinds()) {
    add_words(words, kind.name);
    for (const design::PropertyInfo& property : kind.properties) add_words(words, property.name);
  }
  for (const design::FigureInfo& figure : design::figures()) add_words(words, figure.words);
  for (const char* function : {"sqrt(", "min(", "max(", "abs(", "ln(", "log10(", "exp(", "sin(", "cos(", "tan(",
                               "atan(", "pi", "frequency", "series(", "relays(", "ground", "E24"})
    words.insert(function);
  return words;
}

/// As a libFuzzer dictionary has it: quoted, a line each, all but plain letters as bytes.
std::string entry(const std::string& word) {
  std::string line = "\"";
  for (const char letter : word) {
    char code[8];
    const auto byte = static_cast<unsigned char>(letter);
    const bool plain = byte >= 0x20 && byte < 0x7F && letter != '"' && letter != '\\';
    std::snprintf(code, sizeof code, plain ? "%c" : "\\x%02X", byte);
    line += code;
  }
  return line + "\"\n";
}

}  // namespace

TEST_CASE("every kept input keeps the promises") {
  for (const fuzz::Target& target : fuzz::targets()) {
    const std::vector<fs::path> files = files_in(here / "corpus" / target.name, "");
    CHECK_FALSE(files.empty());
    feed(target, files);
  }
}

TEST_CASE("every feed file of the tree keeps the promises") {
  std::vector<fs::path> files = files_in(WATTFALL_EXAMPLES, ".feed");
  const std::vector<fs::path> golden = files_in(here / "../golden", ".feed");
  files.insert(files.end(), golden.begin(), golden.end());
  CHECK(files.size() > 30);
  for (const fuzz::Target& target : fuzz::targets()) feed(target, files);
}

TEST_CASE("the fuzzers' dictionary holds every word of the language, and no other") {
  std::string wanted = "# The words of the language, for libFuzzer. test_replay.cpp makes it: WATTFALL_ACCEPT=1.\n";
  for (const std::string& word : words_of_the_language()) wanted += entry(word);
  const fs::path path = here / "feed.dict";
  if (std::getenv("WATTFALL_ACCEPT") != nullptr) std::ofstream(path, std::ios::binary) << wanted;
  CHECK(read_file(path) == wanted);
}
