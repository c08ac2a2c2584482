// The users' reference, grammar/README.md, held to the program: its snippets are run, its tables compared with the
// catalogue, its codes with those in the sources. WATTFALL_ACCEPT=1 writes what the program says into it.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>

#include "../support/program.hpp"
#include "design/catalog.hpp"
#include "grammar/print.hpp"

using namespace wattfall;
namespace fs = std::filesystem;

namespace {

const fs::path project = fs::path(WATTFALL_TEST_DATA) / ".." / "..";
const fs::path manual_path = project / "grammar" / "README.md";

struct Snippet {
  std::string fence;  ///< "feed", "feed mistake", "text"
  std::string text;
  std::size_t begin = 0;  ///< of the text
};

std::vector<Snippet> snippets_of(const std::string& manual) {
  std::vector<Snippet> snippets;
  for (std::size_t at = manual.find("```"); at != std::string::npos; at = manual.find("```", at)) {
    const std::size_t begin = manual.find('\n', at) + 1;
    const std::size_t end = manual.find("```", begin);
    snippets.push_back({manual.substr(at + 3, begin - at - 4), manual.substr(begin, end - begin), begin});
    at = end + 3;
  }
  return snippets;
}

test::Ran run(const std::string& text) {
  const test::Scratch scratch;
  scratch.write("cabin.feed", text);
  return test::program({"run", "cabin.feed", "--quiet"}, {scratch.path()});
}

bool is_design(const std::string& text) {
  return text.find("source") != std::string::npos && text.find("sweep") != std::string::npos;
}

/// The table's line about something: it begins with its name in backticks.
std::string row_of(const std::string& manual, const std::string& name) {
  const std::size_t begin = manual.find("\n| `" + name + "` |");
  return begin == std::string::npos ? "" : manual.substr(begin, manual.find('\n', begin + 1) - begin);
}

std::set<std::string> codes_in(const fs::path& folder, const std::string& call) {
  std::set<std::string> codes;
  const std::regex pattern(call + "\\s*\"([a-z0-9-]+)\"");
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") continue;
    const std::string code = test::read_file(entry.path());
    for (auto match = std::sregex_iterator(code.begin(), code.end(), pattern); match != std::sregex_iterator(); ++match)
      codes.insert(match->str(1));
  }
  return codes;
}

}  // namespace

TEST_CASE("every snippet of the reference that should be right is, in the standard layout; whole designs are solved") {
  int designs = 0;
  for (const Snippet& snippet : snippets_of(test::read_file(manual_path))) {
    if (snippet.fence != "feed") continue;
    CAPTURE(snippet.text);
    const auto formatted = format(std::make_shared<const Source>("cabin.feed", snippet.text));
    INFO(render(formatted.diagnostics, false));
    CHECK(formatted.value == snippet.text);
    if (!is_design(snippet.text)) continue;
    ++designs;
    const test::Ran ran = run(snippet.text);
    INFO(ran.err);
    CHECK((ran.code == 0 || ran.code == 1));
  }
  CHECK(designs >= 5);
}

TEST_CASE("every snippet of the reference that is wrong shows what is said about it, to the letter") {
  std::string manual = test::read_file(manual_path);
  const bool accept = std::getenv("WATTFALL_ACCEPT") != nullptr;
  std::vector<Snippet> snippets = snippets_of(manual);
  int mistakes = 0;
  for (std::size_t i = snippets.size(); i-- > 1;) {  // backwards, so that places stay
    if (snippets[i - 1].fence != "feed mistake") continue;
    REQUIRE(snippets[i].fence == "text");
    const test::Ran ran = run(snippets[i - 1].text);
    CHECK(ran.code == 3);
    CHECK(ran.out.empty());
    if (accept) manual.replace(snippets[i].begin, snippets[i].text.size(), ran.err);
    if (!accept) CHECK(ran.err == snippets[i].text);
    ++mistakes;
  }
  CHECK(mistakes >= 3);
  if (accept) std::ofstream(manual_path, std::ios::binary) << manual;
}

TEST_CASE("the reference names every kind with all its properties, and every figure") {
  const std::string manual = test::read_file(manual_path);
  const design::Catalog catalog(host::Registry{});
  for (const design::KindInfo& kind : catalog.kinds()) {
    CAPTURE(kind.name);
    const std::string row = row_of(manual, kind.name);
    CHECK_FALSE(row.empty());
    for (const design::PropertyInfo& property : kind.properties) {
      CAPTURE(property.name);
      CHECK(row.find("`" + property.name + "`") != std::string::npos);
    }
  }
  for (const design::FigureInfo& figure : design::figures()) {
    CAPTURE(figure.words);
    CHECK(manual.find("`" + figure.words) != std::string::npos);
  }
}

TEST_CASE("the reference lists every code of a mistake in a text or a design, and no other") {
  const std::string manual = test::read_file(manual_path);
  std::set<std::string> codes = codes_in(project / "engine" / "design", "say\\(");
  for (const char* call : {"mistake\\(", "complain\\(", "WATTFALL_WANTED\\(\\w+,", "push_back\\(\\{", "diagnostic\\{"})
    codes.merge(codes_in(project / "grammar", call));
  codes.merge(codes_in(project / "engine", "\\.code ="));
  codes.merge(codes_in(project / "engine" / "tune", "warnings\\.push_back\\(\\{"));
  codes.merge(codes_in(project / "engine" / "judge", "warnings\\.push_back\\(\\{"));
  codes.merge(codes_in(project / "engine" / "tune", "return \\{"));
  codes.merge(codes_in(project / "engine" / "host", "return \\{"));
  codes.merge(codes_in(project / "engine" / "measured", "\\.add\\("));
  CHECK(codes.size() > 100);
  for (const std::string& code : codes) {
    CAPTURE(code);
    CHECK(manual.find("`" + code + "`") != std::string::npos);
  }
  std::string sources;
  for (const char* folder : {"grammar", "engine"}) {
    for (const auto& entry : fs::recursive_directory_iterator(project / folder))
      if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp")
        sources += test::read_file(entry.path());
  }
  const std::size_t tables = manual.find("| code | what is wrong |");
  const std::string listed = manual.substr(tables, manual.find("## In this folder") - tables);
  const std::regex quoted("`([a-z0-9]+(?:-[a-z0-9]+)+)`");
  for (auto match = std::sregex_iterator(listed.begin(), listed.end(), quoted); match != std::sregex_iterator();
       ++match) {
    CAPTURE(match->str(1));
    // The code of a broken rating is put together from what it is of.
    const std::string code = match->str(1);
    const bool rating = code.starts_with("rating-");
    CHECK(sources.find("\"" + (rating ? code.substr(7) : code) + "\"") != std::string::npos);
  }
}
