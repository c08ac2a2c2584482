// contract.md, "Exit codes": each of them, and what stands on the two streams.
#include <catch2/catch.hpp>
#include <regex>

#include "cabin.hpp"

using namespace app_tests;

TEST_CASE("0: all is well, the report is on standard output and the other stream is empty") {
  const Ran ran = program({"run", "-"}, {.input = matched});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("matched") != std::string::npos);
  CHECK(ran.out.find("VERDICT") != std::string::npos);
  CHECK(ran.err.empty());
}

TEST_CASE("1: a requirement is not met, and the report is whole all the same") {
  const Ran ran = program({"run", "-"}, {.input = mismatched});
  CHECK(ran.code == 1);
  CHECK(ran.out.find("NOT MET") != std::string::npos);
  CHECK(ran.out.find("Before you switch on") != std::string::npos);
  CHECK(ran.err.empty());
}

TEST_CASE("2: wrong use of the command says what is wrong") {
  struct Case {
    std::vector<std::string> arguments;
    std::string said;
  };
  const std::vector<Case> cases{
      {{}, "subcommand"},
      {{"rum"}, "did you mean: run"},
      {{"cabin.feed"}, "`cabin.feed`"},
      {{"run"}, "FILE"},
      {{"run", "-", "--bogus"}, "--bogus"},
      {{"run", "-", "--threads", "0"}, "--threads"},
      {{"run", "-", "--threads", "many"}, "--threads"},
      {{"run", "-", "--color", "green"}, "--color"},
      {{"run", "-", "--set", "reach"}, "NAME=VALUE"},
      {{"run", "-", "--set", "=5 m"}, "NAME=VALUE"},
      {{"run", "-", "--set", "reach="}, "NAME=VALUE"},
      {{"run", "-", "--to", "=x"}, "WRITER"},
      {{"run", "-", "--to", "text="}, "WRITER"},
      {{"run", "-", "--to", "text", "--to", "csv"}, "one writer at most"},
      {{"run", "-", "--to", "text", "--to", "text"}, "one writer at most"},
      {{"run", "-", "--to", "txt"}, "did you mean: text"},
      {{"run", "-", "--variant", "shrt"}, "did you mean: short"},
      {{"run", "-", "--set", "reech=5 m"}, "did you mean: reach"},
      {{"run", "-", "--set", "coil.x=5 m"}, "coil.x"},
      {{"run", "-", "--set", "reach=5 parsec"}, "parsec"},
      {{"run", "-", "--at", "7"}, "7"},
      {{"run", "-", "--at", "soon"}, "soon"},
      {{"run", "-", "--sweep", "7 MHz to"}, "7 MHz to"},
      {{"run", "-", "--at", "7 MHz", "--sweep", "7 MHz to 8 MHz step 1 MHz"}, "--at"},
      {{"list", "gadgets"}, "gadgets"},
      {{"list", "kinds", "capacitr"}, "did you mean: capacitor"},
      {{"list", "cables", "RG-59x"}, "RG-59x"},
  };
  for (const Case& one : cases) {
    std::string line = "wattfall";
    for (const std::string& word : one.arguments) line += " '" + word + "'";
    CAPTURE(line);
    const Ran ran = program(one.arguments, {.input = tunable});
    CAPTURE(ran.code, ran.out, ran.err);
    CHECK(refused(ran, 2));
    CHECK(ran.err.find(one.said) != std::string::npos);
  }
}

TEST_CASE("3: a design with mistakes shows all of them, in order, and solves nothing") {
  const Ran ran = program({"run", "-"}, {.input = mistaken});
  CHECK(refused(ran, 3));
  const std::size_t second = ran.err.find("-:2:"), fourth = ran.err.find("-:4:"), fifth = ran.err.find("-:5:");
  CHECK(second < fourth);
  CHECK(fourth < fifth);
  CHECK(fifth != std::string::npos);
}

TEST_CASE("4: tuning that cannot keep what it must says how near it came") {
  const std::string text =
      "design \"out of reach\"\n"
      "source rig at desk : 100 W, 50 ohm\n"
      "inductor coil from desk to feed : 1 uH, adjustable 0.9 uH to 1.1 uH, Q 200\n"
      "load wires at feed : 5 - j900 ohm\n"
      "sweep at [7 MHz]\n"
      "tune coil at each frequency for most power into wires, keeping swr at desk below 1.5\n";
  const Ran ran = program({"run", "-"}, {.input = text});
  CAPTURE(ran.err);
  CHECK(refused(ran, 4));
  CHECK(ran.err.find("keeping-not-reached") != std::string::npos);
  CHECK(ran.err.find("-:6:") != std::string::npos);
}

namespace {

/// Of 12 ohm a shunt part at the antenna makes less than 12 ohm, so an L of that way round matches nothing (closed form
/// of the L network; common practice, no source).
const std::string which_tuner =
    "design \"which\"\n"
    "source rig at desk : 100 W, 50 ohm\n"
    "load wires at feed : 12 ohm\n"
    "sweep at [7 MHz]\n"
    "tuner atu from desk to feed : any, coil Q 200\n"
    "tune atu at each frequency for most power into wires, keeping swr at desk below 1.5\n";

std::vector<std::string> names_under(const nlohmann::json& document, const char* key) {
  std::vector<std::string> names;
  for (const auto& one : document.at(key)) names.push_back(one.at("name").get<std::string>());
  return names;
}

}  // namespace

TEST_CASE("0: forms of tuner that cannot keep what is asked are set aside while others can") {
  const std::vector<std::string> short_of{"low-pass L, C at the antenna", "high-pass L, coil at the antenna"};
  const Ran ran = program({"run", "-", "--to", "json"}, {.input = which_tuner});
  CAPTURE(ran.err);
  REQUIRE(ran.code == 0);
  const auto document = nlohmann::json::parse(ran.out);
  CHECK(names_under(document, "variants") == std::vector<std::string>{"low-pass L, C at the rig",
                                                                      "high-pass L, coil at the rig", "low-pass pi",
                                                                      "high-pass tee"});
  CHECK(names_under(document, "set_aside") == short_of);
  CHECK(document["set_aside"][0]["code"] == "keeping-not-reached");
  for (const char* writer : {"text", "markdown", "page"})
    for (const char* verb : {"run", "compare"}) {
      const Ran told = program({verb, "-", "--to", writer}, {.input = which_tuner});
      CAPTURE(verb, writer, told.err);
      CHECK(told.code == 0);
      for (const std::string& name : short_of) CHECK(told.out.find(name) != std::string::npos);
    }
}

TEST_CASE("4: where no form can keep what is asked, or the one that was picked cannot, each says which it is") {
  const Ran picked = program({"run", "-", "--variant", "low-pass L, C at the antenna"}, {.input = which_tuner});
  CHECK(refused(picked, 4));
  CHECK(picked.err.find("in \"low-pass L, C at the antenna\" no setting keeps") != std::string::npos);

  const std::string narrow = std::regex_replace(which_tuner, std::regex("coil Q 200"),
                                                "coil Q 200, largest coil 1 nH, largest capacitor 1 pF");
  const Ran none = program({"run", "-"}, {.input = narrow});
  CHECK(refused(none, 4));
  for (const char* name :
       {"low-pass L, C at the rig", "high-pass L, coil at the antenna", "low-pass pi", "high-pass tee"})
    CHECK(none.err.find(std::string("in \"") + name + '"') != std::string::npos);

  // Each variant of the text needs a form of its own.
  const std::string two = std::regex_replace(which_tuner, std::regex("tuner atu.*\n"), "") +
                          "variant \"wide\" {\n  tuner atu from desk to feed : l-network\n}\n"
                          "variant \"narrow\" {\n  tuner atu from desk to feed : l-network, largest coil 1 nH\n}\n";
  const Ran half = program({"run", "-"}, {.input = two});
  CAPTURE(half.err);
  CHECK(refused(half, 4));
  CHECK(half.err.find("narrow, low-pass L, C at the rig") != std::string::npos);
  CHECK(half.err.find("wide,") == std::string::npos);
}

TEST_CASE("4: a network that leaves something undetermined is not guessed at") {
  // Two half waves without loss in a ring: a standing wave of any size fits, and nothing determines it.
  const std::string text =
      "source rig at desk : 100 W, 50 ohm\n"
      "load wires at desk : 50 ohm\n"
      "line there from desk to far : 180 deg at 7 MHz, 50 ohm\n"
      "line back from far to desk : 180 deg at 7 MHz, 50 ohm\n"
      "sweep at [7 MHz]\n";
  const Ran ran = program({"run", "-"}, {.input = text});
  CAPTURE(ran.code, ran.out, ran.err);
  CHECK(refused(ran, 4));
  CHECK(ran.err.find("undetermined") != std::string::npos);
}

TEST_CASE("5: what could not be read is named") {
  const Scratch scratch;
  CHECK(refused(program({"run", "nowhere.feed"}, {.folder = scratch.path()}), 5));
  CHECK(program({"run", "nowhere.feed"}, {.folder = scratch.path()}).err.find("`nowhere.feed`") != std::string::npos);
  CHECK(refused(program({"run", "."}, {.folder = scratch.path()}), 5));
  CHECK(program({"run", "."}, {.folder = scratch.path()}).err.find("folder") != std::string::npos);
}

TEST_CASE("the gravest counts: a missing file beside a mistake is 5, and both are shown") {
  const std::string text = mistaken + "load more at desk : measured \"nowhere.s1p\"\n";
  const Ran ran = program({"run", "-"}, {.input = text});
  CHECK(refused(ran, 5));
  CHECK(ran.err.find("-:2:") != std::string::npos);
  CHECK(ran.err.find("-:6:") != std::string::npos);
}

TEST_CASE("130: an interrupted run") {
  // A FIFO that nobody reads holds the program back.
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  const Ran ran = shell(
      "mkfifo pipe; \"$WATTFALL\" run matched.feed --to text=pipe & child=$!; sleep 1; kill -INT $child; wait $child; "
      "exit $?",
      {.folder = scratch.path()});
  // A shell without job control starts its children with SIGINT ignored; the program takes it back.
  CHECK(ran.code == 130);
  CHECK(scratch.listing() == "matched.feed\npipe\n");
}

TEST_CASE("with --to json the errors are on standard output, as JSON, and the codes are the same") {
  SECTION("mistakes in the design") {
    const Ran ran = program({"run", "-", "--to", "json"}, {.input = mistaken});
    CHECK(ran.code == 3);
    CHECK(ran.err.empty());
    CHECK(error_codes(ran.out).size() == 3);
    const json error = json::parse(ran.out)["errors"][1];
    CHECK(error["file"] == "-");
    CHECK(error["line"] == 4);
    CHECK(error["column"] == 9);
    CHECK(error["code"] == "unknown-unit");
    CHECK(error["hint"] == "MHz");
    CHECK(error["text"].is_string());
  }
  SECTION("a missing file") {
    const Ran ran = program({"run", "nowhere.feed", "--to", "json"});
    CHECK(ran.code == 5);
    CHECK(error_codes(ran.out) == std::vector<std::string>{"unreadable"});
    CHECK(json::parse(ran.out)["errors"][0]["line"].is_null());
  }
  SECTION("an unknown name in --set") {
    const Ran ran = program({"run", "-", "--to", "json", "--set", "nothing=1"}, {.input = matched});
    CHECK(ran.code == 2);
    CHECK(error_codes(ran.out).size() == 1);
  }
  SECTION("wrong use that the command line itself shows") {
    for (const std::string wrong : {"--bogus", "--threads=0"}) {
      const Ran ran = program({"run", "-", "--to", "json", wrong}, {.input = matched});
      CHECK(ran.code == 2);
      CHECK(error_codes(ran.out) == std::vector<std::string>{"usage"});
      CHECK(ran.err.empty());
    }
  }
  SECTION("an unknown writer beside it") {
    const Ran ran = program({"run", "-", "--to", "json", "--to", "txt=x"}, {.input = matched});
    CHECK(ran.code == 2);
    CHECK(error_codes(ran.out) == std::vector<std::string>{"unknown-writer"});
  }
  SECTION("a folder of plugins that is not there") {
    const Ran ran = program({"run", "-", "--to", "json", "--plugins", "/nowhere"}, {.input = matched});
    CHECK(ran.code == 5);
    CHECK(error_codes(ran.out) == std::vector<std::string>{"plugin-folder"});
    CHECK(ran.err.empty());
  }
  SECTION("another report that cannot be written") {
    const Ran ran = program({"run", "-", "--to", "json", "--to", "text=/dev/null/x"}, {.input = matched});
    CHECK(ran.code == 5);
    CHECK(error_codes(ran.out) == std::vector<std::string>{"unwritable"});
    CHECK(ran.err.empty());
  }
}

TEST_CASE("with --to json=PATH an error leaves PATH as it was and standard output empty") {
  const Scratch scratch;
  const std::string path = scratch.write("report.json", "the old one\n");
  CHECK(refused(program({"run", "-", "--to", "json=" + path}, {.input = mistaken}), 3));
  CHECK(read_file(path) == "the old one\n");
  CHECK(scratch.listing() == "report.json\n");
}
