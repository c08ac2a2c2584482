// The examples are run as the README says, and their reports are held: examples/X.txt, X.md and X.xml word by word, examples/X.csv cell
// by cell. Numbers may differ by what another machine's arithmetic does: 1e-6 where the values are written; 1e-4 where
// a tuner chose them, for the power is flat near the best setting (seen between builds: 2e-5). The layout is held to
// the letter in tests/report, on a fixed document. WATTFALL_ACCEPT=1 rewrites what is expected.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "../support/program.hpp"

using wattfall::test::program;
using wattfall::test::read_file;
using wattfall::test::Scratch;

namespace fs = std::filesystem;

namespace {

const fs::path examples = WATTFALL_EXAMPLES;
const fs::path golden = fs::path(WATTFALL_TEST_DATA) / "examples";

bool accepting() {
  return std::getenv("WATTFALL_ACCEPT") != nullptr;
}

std::vector<std::string> feeds() {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(examples))
    if (entry.path().extension() == ".feed") names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::string expected(const std::string& feed, const std::string& ending, const std::string& now) {
  const fs::path path = golden / fs::path(feed).replace_extension(ending);
  if (accepting()) {
    fs::create_directories(golden);
    std::ofstream(path, std::ios::binary) << now;
  }
  return read_file(path);
}

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> pieces;
  std::istringstream stream(text);
  for (std::string piece; std::getline(stream, piece, at);) pieces.push_back(piece);
  return pieces;
}

/// Words of a report up to how far its numbers can be trusted, which rounding decides; without bars and rules.
std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::istringstream stream(text.substr(0, text.find("How far to trust the numbers")));
  for (std::string word; stream >> word;)
    if (std::any_of(word.begin(), word.end(), [](unsigned char c) { return std::isalnum(c) != 0; }))
      words.push_back(word);
  return words;
}

/// Whether two words are one, or numbers (with the same signs and marks round them) that differ by no more than this.
bool same(const std::string& a, const std::string& b, double relative, double absolute) {
  if (a == b) return true;
  const char* const digits = "0123456789";
  const std::size_t i = a.find_first_of(digits), j = b.find_first_of(digits);
  if (i == std::string::npos || j == std::string::npos) return false;
  char *after_a = nullptr, *after_b = nullptr;
  double p = std::strtod(a.c_str() + i, &after_a), q = std::strtod(b.c_str() + j, &after_b);
  if (std::string(after_a) != after_b) return false;
  if (i > 0 && a[i - 1] == '-') p = -p;
  if (j > 0 && b[j - 1] == '-') q = -q;
  return std::abs(p - q) <= std::max(absolute, relative * std::max(std::abs(p), std::abs(q)));
}

/// The first piece where two lists differ; empty where none does.
std::string difference(const std::vector<std::string>& now, const std::vector<std::string>& before, double relative,
                       double absolute) {
  for (std::size_t i = 0; i < std::min(now.size(), before.size()); ++i)
    if (!same(now[i], before[i], relative, absolute))
      return "piece " + std::to_string(i + 1) + " is " + now[i] + " and was " + before[i];
  return now.size() == before.size()
             ? ""
             : std::to_string(now.size()) + " pieces, and were " + std::to_string(before.size());
}

/// Whether a tuner chooses values, in the design itself or in a variant.
bool is_tuned(const std::string& feed) {
  std::istringstream lines(read_file(examples / feed));
  for (std::string line; std::getline(lines, line);)
    if (const std::size_t word = line.find_first_not_of(' '); word != std::string::npos && line.compare(word, 5, "tune ") == 0)
      return true;
  return false;
}

}  // namespace

TEST_CASE("each example's report is the one that was read and accepted") {
  for (const std::string& feed : feeds()) {
    CAPTURE(feed);
    // Named as in the README: from the folder that the examples stand in.
    const Scratch scratch;
    const auto text = program({"run", "examples/" + feed, "--to", "text", "--to", "markdown=" + (scratch / "md"), "--to", "junit=" + (scratch / "xml")},
                              {.folder = examples.parent_path()});
    CHECK(text.err.empty());
    CHECK((text.code == 0 || text.code == 1));
    // Three or four digits are shown, so a last one may turn.
    CHECK(difference(words_of(text.out), words_of(expected(feed, ".txt", text.out)), 2e-3, 0.051) == "");
    for (const char* writer : {"md", "xml"}) {
      const std::string now = read_file(scratch / writer);
      CHECK(difference(words_of(now), words_of(expected(feed, std::string(".") + writer, now)), 2e-3, 0.051) == "");
    }
  }
}

TEST_CASE("the reports of compare and check are those that were read and accepted") {
  // Of designs that no tuner settles, so that this is quick; their names sort what they are held in.
  const std::vector<std::pair<std::string, std::vector<std::string>>> calls{
      {"compare", {"compare", "examples/03_quarter_wave_section.feed"}},
      {"check", {"check", "examples/01_l_network_by_hand.feed", "examples/03_quarter_wave_section.feed", "examples/ci/designs"}}};
  for (const auto& [name, call] : calls)
    for (const auto& [writer, ending] : {std::pair{"text", ".txt"}, {"markdown", ".md"}, {"csv", ".csv"}, {"junit", ".xml"}}) {
      CAPTURE(name, writer);
      std::vector<std::string> arguments = call;
      arguments.insert(arguments.end(), {"--to", writer});
      const auto ran = program(arguments, {.folder = examples.parent_path()});
      CHECK(ran.err.empty());
      CHECK(ran.code <= 1);
      std::string before = expected(name, ending, ran.out), now = ran.out;
      const bool table = std::string(writer) == "csv";
      if (table)
        for (std::string* text : {&before, &now}) std::replace(text->begin(), text->end(), '\n', ',');
      // A change of a figure against a baseline, where there is none, is rounding.
      if (table)
        CHECK(difference(split(now, ','), split(before, ','), 1e-6, 1e-9) == "");
      else
        CHECK(difference(words_of(now), words_of(before), 2e-3, 0.051) == "");
    }
}

TEST_CASE("each example's numbers are the accepted ones") {
  for (const std::string& feed : feeds()) {
    CAPTURE(feed);
    const auto csv = program({"run", "examples/" + feed, "--to", "csv"}, {.folder = examples.parent_path()});
    CHECK(csv.err.empty());
    std::string before = expected(feed, ".csv", csv.out), now = csv.out;
    for (std::string* text : {&before, &now}) std::replace(text->begin(), text->end(), '\n', ',');
    const double within = is_tuned(feed) ? 1e-4 : 1e-6;
    CHECK(difference(split(now, ','), split(before, ','), within, is_tuned(feed) ? 1e-4 : 1e-9) == "");
  }
}

TEST_CASE("the walks of the examples that are not tuned are the ones that were read and accepted") {
  // A tuner's last digits turn what cancels, so the walks of tuned designs are held to the solver alone (tests/walk).
  std::size_t walks = 0;
  for (const std::string& feed : feeds()) {
    if (is_tuned(feed)) continue;
    CAPTURE(feed);
    ++walks;
    const auto text = program({"walk", "examples/" + feed}, {.folder = examples.parent_path()});
    CHECK(text.err.empty());
    CHECK(text.code == 0);
    // How far the two agree is a matter of rounding.
    const auto steady = [](std::string report) {
      for (std::size_t at = 0; (at = report.find("How the solver agrees", at)) != std::string::npos;) report.erase(at, report.find("\n\n\n", at) - at);
      return report;
    };
    CHECK(difference(words_of(steady(text.out)), words_of(steady(expected(feed, ".walk", text.out))), 2e-3, 0.0011) == "");
  }
  CHECK(walks >= 3);
}
