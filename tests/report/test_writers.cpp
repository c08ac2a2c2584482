// The writers of the reports plugin, loaded as the program loads it. The golden files come from a fixed document beside
// them; set WATTFALL_ACCEPT=1 to write them anew, and read the difference before keeping it.
#include <dlfcn.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <wattfall/sdk.hpp>

#include "cabin.hpp"

namespace sdk = wattfall::sdk;

namespace {

using Writers = std::map<std::string, const sdk::Writer*>;

sdk::Status keep_writer(const sdk::Registrar* host, const sdk::Writer* writer, sdk::Failure*) {
  (*static_cast<Writers*>(host->self))[writer->name] = writer;
  return sdk::Status::ok;
}

Writers load_writers() {
  void* const library = dlopen(WATTFALL_PLUGIN_DIR "/reports.so", RTLD_NOW | RTLD_LOCAL);
  if (library == nullptr) throw std::runtime_error(dlerror());
  const auto describe = reinterpret_cast<const sdk::Plugin* (*)()>(dlsym(library, "wattfall_plugin"));
  Writers writers;
  sdk::Registrar registrar{};
  registrar.self = &writers;
  registrar.add_writer = keep_writer;
  sdk::Failure failure{};
  if (describe()->enroll(&registrar, &failure) != sdk::Status::ok) throw std::runtime_error(failure.text);
  return writers;
}

const sdk::Writer& writer(const std::string& name) {
  static const Writers writers = load_writers();
  return *writers.at(name);
}

sdk::Status append(void* self, const char* bytes, std::size_t size) {
  static_cast<std::string*>(self)->append(bytes, size);
  return sdk::Status::ok;
}

std::string write(const std::string& name, const std::string& document, sdk::WriterOptions options = {100, 0}) {
  std::string out;
  const sdk::Sink sink{&out, append};
  sdk::Failure failure{};
  if (writer(name).write(nullptr, document.data(), document.size(), &options, &sink, &failure) != sdk::Status::ok) {
    return std::string("failed: ") + failure.text;
  }
  return out;
}

std::string read_file(const std::string& name) {
  std::ifstream file(std::string(WATTFALL_TEST_DATA) + "/golden/" + name, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

void check_golden(const std::string& name, const std::string& text) {
  if (std::getenv("WATTFALL_ACCEPT") != nullptr) {
    std::ofstream(std::string(WATTFALL_TEST_DATA) + "/golden/" + name, std::ios::binary) << text;
  }
  CHECK(text == read_file(name));
}

std::size_t columns_of(const std::string& line) {
  std::size_t columns = 0;
  for (const char byte : line) columns += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1 : 0;
  return columns;
}

/// No line wider than allowed, no control character, a final line end.
void check_sheet(const std::string& text, std::size_t columns = 100) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(columns_of(line) <= columns);
    for (const char byte : line) CHECK((static_cast<unsigned char>(byte) >= 0x20 && byte != 0x7F));
    CHECK((line.empty() || line.back() != ' '));
  }
  REQUIRE_FALSE(text.empty());
  CHECK(text.back() == '\n');
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream rest(line);
  for (std::string cell; std::getline(rest, cell, ',');) cells.push_back(cell);
  return cells;
}

}  // namespace

TEST_CASE("the text report is as approved") {
  const std::string text = write("text", read_file("cabin.json"));
  check_sheet(text);
  check_golden("cabin.txt", text);
}

TEST_CASE("the CSV report is as approved") {
  check_golden("cabin.csv", write("csv", read_file("cabin.json")));
}

TEST_CASE("the JSON writer hands the document through") {
  const std::string document = cabin::Cabin().document();
  CHECK(write("json", document) == document);
  CHECK(write("json", "anything") == "anything");
}

TEST_CASE("the text report says what matters") {
  const std::string text = write("text", cabin::Cabin().document());
  check_sheet(text);
  CHECK(text.starts_with("40 m doublet at the lake cabin\ncabin.feed, "));
  CHECK(has(text, "VERDICT  Over 2 variants: 4 of 6 requirements met; 1 rating broken"));
  CHECK(has(text, "NOT MET  total loss below 2 dB"));
  CHECK(has(text, "OVER 1 kV by 14.4 %"));
  CHECK(has(text, "12 of 21 points shown"));
  CHECK(has(text, "atu.L, uH"));
  CHECK(has(text, "240.0!"));
  CHECK(has(text, "\"coupler at the mast\" puts "));
  CHECK(has(text, "1.14 kV peak, on atu.Cout"));
  CHECK(has(text, "took the robust solution"));
}

TEST_CASE("one variant at one frequency has neither a comparison nor marks") {
  const std::string text = write("text", cabin::Cabin({.points = 1, .variants = 1}).document());
  check_sheet(text);
  CHECK_FALSE(has(text, "Side by side"));
  CHECK_FALSE(has(text, "least on the air"));
  CHECK(has(text, "67.5 pF"));
  CHECK(has(text, "2.31 uH"));
}

TEST_CASE("many variants still fit") {
  check_sheet(write("text", cabin::Cabin({.points = 13, .variants = 30}).document()));
}

TEST_CASE("colours go round lines, and only where they are wanted") {
  const std::string document = cabin::Cabin().document();
  const std::string plain = write("text", document), colored = write("text", document, {100, 1});
  CHECK_FALSE(has(plain, "\x1b"));
  CHECK(has(colored, "\x1b[31m"));
  std::string stripped;
  for (std::size_t i = 0; i < colored.size(); ++i) {
    if (colored[i] == '\x1b')
      i = colored.find('m', i);
    else
      stripped += colored[i];
  }
  CHECK(stripped == plain);
}

TEST_CASE("a narrow sheet is kept to") {
  check_sheet(write("text", cabin::Cabin().document(), {80, 0}), 80);
  check_sheet(write("text", cabin::Cabin().document(), {0, 0}), 100);
}

TEST_CASE("hostile names cannot command a terminal or widen the sheet") {
  const std::string wild = "<script>\x1b[2J\x07\n\r\x9b\xE2\x80\xAE" + std::string(10000, 'x');
  cabin::Cabin made({.title = wild, .first_name = wild});
  for (wattfall::design::Part& part : made.designs[0]->parts) part.name = wild;
  for (wattfall::design::Node& node : made.designs[0]->nodes) node.name = wild;
  for (wattfall::design::Knob& knob : made.designs[0]->knobs) knob.name = wild;
  made.designs[0]->source.name = wild;
  made.designs[0]->planes[0].name = wild;
  made.designs[0]->requirements[0].text = wild;
  made.designs[0]->boxes[0].name = wild;
  made.results[0].story.robust_why = wild;
  const std::string text = write("text", made.document());
  check_sheet(text);
  CHECK(has(text, "<script>?[2J"));
}

TEST_CASE("CSV quotes names and has a cell for every column") {
  cabin::Cabin made({.points = 3, .first_name = "=1+1, \"or\" so\r\n"});
  made.designs[1]->parts[4].name = "ladder";
  made.ledgers[0]->source.swr[1] = std::numeric_limits<double>::infinity();
  const std::string text = write("csv", made.document());
  CHECK(has(text, "\r\n\"=1+1, \"\"or\"\" so\r\n\",7000000,"));
  std::istringstream lines(text);
  std::string head, line, mast;
  std::getline(lines, head);
  CHECK(
      head.starts_with("variant,frequency_hz,source_r_ohm,source_x_ohm,swr,available_w,returned_w,heat_w,absorbed_w,"
                       "radiated_w,total_loss_db,efficiency,"));
  for (const char* column : {",heat_w:atu.L,", ",loss_db:coax,", ",heat_w:ladder", ",knob:atu.L,"})
    CHECK(has(head, column));
  while (std::getline(lines, line)) {
    if (line.starts_with("coupler at the mast")) mast = line;
  }
  const std::vector<std::string> names = split(head), cells = split(mast);
  REQUIRE(names.size() == cells.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    INFO(names[i]);
    CHECK(cells[i].empty() == has(names[i], ":coax"));
  }
  CHECK(has(text, ",,100,"));  // the SWR that does not exist
}

TEST_CASE("a document that is none fails with a sentence") {
  CHECK(write("text", "{").starts_with("failed: "));
  CHECK(write("csv", "").starts_with("failed: "));
  CHECK(has(write("text", R"({"schema": 1, "verb": "spread", "spread": {}})"), "no \"variants\""));
}

TEST_CASE("a document with missing or odd keys still prints") {
  using nlohmann::json;
  const json whole = json::parse(cabin::Cabin({.points = 3}).document());
  for (const auto& [key, value] : whole["variants"][0].items()) {
    for (const json& other : {json(nullptr), json(7), json("x"), json::array({1, "a", nullptr}), json::object()}) {
      INFO(key << " = " << other.dump());
      json damaged = whole;
      damaged["variants"][0][key] = other;
      check_sheet(write("text", damaged.dump()));
      CHECK_FALSE(write("csv", damaged.dump()).starts_with("failed"));
    }
  }
}
