// The manual page and the shells' completions know every verb and every option that the help knows, and bash completes with them.
#include <catch2/catch.hpp>
#include <cctype>
#include <set>
#include <sstream>

#include "cabin.hpp"

using namespace app_tests;

namespace {

/// Words of a help text that begin with "--".
std::set<std::string> options_in(const std::string& help) {
  std::set<std::string> options;
  std::istringstream words(help.substr(0, help.find("Example")));
  for (std::string word; words >> word;) {
    const std::size_t begin = word.find("--");
    if (begin == std::string::npos || begin + 2 >= word.size() || std::isalpha(static_cast<unsigned char>(word[begin + 2])) == 0) continue;
    if (begin > 0 && word[begin - 1] != ',') continue;
    std::size_t end = begin + 2;
    while (end < word.size() && (std::isalpha(static_cast<unsigned char>(word[end])) != 0 || word[end] == '-')) ++end;
    options.insert(word.substr(begin, end - begin));
  }
  return options;
}

/// The verbs that `--help` lists: the first words of the lines after its "Subcommands:".
std::vector<std::string> verbs() {
  const std::string help = program({"--help"}).out;
  std::vector<std::string> names;
  std::istringstream lines(help.substr(help.find("Subcommands:")));
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line) && line.starts_with("  ")) {
    if (line[2] != ' ') names.push_back(line.substr(2, line.find(' ', 2) - 2));
  }
  return names;
}

std::string printed(const std::string& what) {
  const Ran ran = program({"--print", what});
  REQUIRE(ran.code == 0);
  REQUIRE(ran.err.empty());
  return ran.out;
}

/// What bash offers for a command line; its last word is the one under the cursor.
std::set<std::string> offered(const std::string& words, const Scratch& folder) {
  const Ran ran = shell("\"$WATTFALL\" --print bash > completions && exec bash -c 'source ./completions; COMP_WORDS=(\"$WATTFALL\" " + words +
                            "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _wattfall; printf \"%s\\n\" \"${COMPREPLY[@]}\"'",
                        {.folder = folder.path()});
  INFO(ran.err);
  REQUIRE(ran.code == 0);
  std::set<std::string> all;
  std::istringstream lines(ran.out);
  for (std::string line; std::getline(lines, line);)
    if (!line.empty()) all.insert(line);
  return all;
}

std::string without_backslashes(std::string text) {
  std::erase(text, '\\');
  return text;
}

}  // namespace

TEST_CASE("each verb's help has an example of that verb") {
  REQUIRE(verbs().size() >= 6);
  for (const std::string& verb : verbs()) {
    INFO(verb);
    const Ran ran = program({verb, "--help"});
    CHECK(ran.code == 0);
    REQUIRE(ran.out.find("Example") != std::string::npos);
    CHECK(ran.out.find("wattfall " + verb, ran.out.find("Example")) != std::string::npos);
  }
}

TEST_CASE("the examples of every verb's help work as they stand") {
  const std::string coax = "source rig at desk : 100 W, 50 ohm\nline coax from desk to feed : 10 m of RG-58\nload wires at feed : 50 - j10 ohm\nsweep at [7.1 MHz]\n";
  int examples = 0;
  for (const std::string& verb : verbs()) {
    const std::string help = program({verb, "--help"}).out;
    std::istringstream lines(help.substr(help.find("Example")));
    for (std::string line; std::getline(lines, line);) {
      if (!line.starts_with("  wattfall ")) continue;
      CAPTURE(line);
      ++examples;
      const Scratch folder;
      for (const char* name : {"cabin.feed", "old.feed", "new.feed", "designs/one.feed"}) folder.write(name, coax);
      folder.write("tuner.feed", tunable);
      const Ran ran = shell("\"$WATTFALL\"" + line.substr(10), {.folder = folder.path()});
      CAPTURE(ran.err);
      // 1: `format --check` finds a file that it would lay out in another way.
      CHECK(ran.code <= (verb == "format" ? 1 : 0));
    }
  }
  CHECK(examples >= 8);
}

TEST_CASE("every verb and option stands in the manual page and in each shell's completions") {
  const std::string man = without_backslashes(printed("man")), bash = printed("bash"), zsh = printed("zsh"), fish = printed("fish");
  for (const std::string& verb : verbs()) {
    INFO(verb);
    CHECK(man.find(".SS " + verb + "\n") != std::string::npos);
    const std::size_t in_bash = bash.find("\n    " + verb + ") options='"), in_zsh = zsh.find("\n    " + verb + ")\n");
    REQUIRE(in_bash != std::string::npos);
    REQUIRE(in_zsh != std::string::npos);
    const std::string bash_line = bash.substr(in_bash + 1, bash.find('\n', in_bash + 1) - in_bash) + ' ';
    const std::string zsh_block = zsh.substr(in_zsh, zsh.find(";;", in_zsh) - in_zsh);
    const std::size_t in_man = man.find(".SS " + verb + "\n");
    const std::string man_section = man.substr(in_man, man.find("\n.S", in_man + 1) - in_man);
    const auto options = options_in(program({verb, "--help"}).out);
    CHECK(options.size() >= 4);
    for (const std::string& option : options) {
      INFO(option);
      CHECK(man_section.find("fB" + option + "fR") != std::string::npos);
      CHECK((bash_line.find(option + ' ') != std::string::npos || bash_line.find(option + '\'') != std::string::npos));
      CHECK(zsh_block.find("*" + option + "[") != std::string::npos);
      CHECK(fish.find("'__fish_seen_subcommand_from " + verb + "' -l " + option.substr(2) + ' ') != std::string::npos);
    }
  }
}

TEST_CASE("bash completes verbs, options, values, writers and files") {
  const Scratch folder;
  folder.write("cabin.feed", matched);
  folder.write("designs/one.feed", matched);
  folder.write("lake doublet.feed", matched);
  folder.write("lake.s1p", "");
  CHECK(offered("w", folder) == std::set<std::string>{"walk", "weigh"});
  const auto all = offered("\"\"", folder);
  for (const std::string& verb : verbs()) CHECK(all.contains(verb));
  CHECK(offered("run --as", folder) == std::set<std::string>{"--as-written"});
  CHECK(offered("run --color a", folder) == std::set<std::string>{"always", "auto"});
  CHECK(offered("walk cab", folder) == std::set<std::string>{"cabin.feed"});
  CHECK(offered("walk la", folder) == std::set<std::string>{"lake doublet.feed"});
  CHECK(offered("check d", folder) == std::set<std::string>{"designs"});
  CHECK(offered("run --plugins d", folder) == std::set<std::string>{"designs"});
  CHECK(offered("list cab", folder) == std::set<std::string>{"cables"});
  const auto writers = offered("run --to \"\"", folder);
  for (const char* writer : {"text", "json", "csv", "markdown", "drawing", "page"}) CHECK(writers.contains(writer));
  CHECK(!writers.contains("writer"));
}

TEST_CASE("what follows a flag is a file in every shell") {
  const Scratch folder;
  folder.write("cabin.feed", matched);
  CHECK(offered("run --as-written cab", folder) == std::set<std::string>{"cabin.feed"});
  CHECK(printed("zsh").find("'*--as-written[leave the knobs where the file has them]'") != std::string::npos);
  CHECK(printed("fish").find(" -l as-written -d ") != std::string::npos);
  // The shells themselves, where they are.
  if (shell("command -v fish", {}).code == 0) {
    const Ran fish = shell("\"$WATTFALL\" --print fish > completions; fish -c 'source completions; complete -C \"wattfall run --as-written cab\"; complete -C \"wattfall wei\"'",
                           {.folder = folder.path()});
    CHECK(fish.out.find("cabin.feed") == 0);
    CHECK(fish.out.find("\nweigh\t") != std::string::npos);
  } else {
    WARN("skipped: no fish here");
  }
  if (shell("command -v zsh", {}).code == 0) CHECK(shell("\"$WATTFALL\" --print zsh | zsh -f -n", {}).code == 0);
}

TEST_CASE("the manual page is sound where it can be set") {
  const Scratch folder;
  const Ran ran = shell("command -v groff > /dev/null || exit 77; \"$WATTFALL\" --print man > page.1 && groff -man -Tascii -ww -z page.1", {.folder = folder.path()});
  if (ran.code == 77) {
    WARN("skipped: there is no groff here");
    return;
  }
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
}
