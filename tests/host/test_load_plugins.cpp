// Plugins that fit and plugins that do not: what is loaded, what is said, and that a bad one takes nothing else with
// it.
#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "host/load_plugins.hpp"

namespace fs = std::filesystem;
using namespace wattfall;
using namespace wattfall::host;

namespace {

fs::path folder(const std::string& plugin) {
  return fs::path(TEST_PLUGINS) / plugin;
}
std::string library(const std::string& plugin) {
  return (folder(plugin) / (plugin + ".so")).string();
}

Plugins load(const std::vector<std::string>& plugins) {
  PluginSearch search;
  for (const std::string& plugin : plugins) search.folders.push_back(folder(plugin));
  return load_plugins(search);
}

bool has_all_of_good(const Registry& registry) {
  return registry.find_kind("spark") != nullptr && registry.find_cable("test coax 1") != nullptr &&
         registry.find_optimizer("stand-still") != nullptr && registry.find_writer("echo") != nullptr;
}

/// One bad plugin, loaded after the good one, with the exact sentence that it earns.
struct Case {
  std::string plugin;
  std::string code;
  std::string why;
};

const std::string number = std::to_string(sdk::interface_number);

const std::vector<Case> cases = {
    {"wrong_interface", "plugin-interface",
     "it is built for plugin interface 7, and this wattfall has interface " + number},
    {"wrong_compiler", "plugin-compiler",
     std::string("it is built by the compiler family `another-family`, and this wattfall by `") + sdk::compiler_family +
         "`"},
    {"wrong_size", "plugin-broken",
     "its description takes 16 bytes, and this interface's takes " + std::to_string(sizeof(sdk::Plugin))},
    {"no_entry", "plugin-no-entry", "it is no wattfall plugin: it does not export `wattfall_plugin`"},
    {"no_description", "plugin-broken", "its `wattfall_plugin` gives no description"},
    {"no_name", "plugin-broken", "it has no name of letters, digits, `_` and hyphens"},
    {"throwing", "plugin-failed", "its `enroll` failed: the tube is cold"},
    {"throwing_bare", "plugin-failed", "its `enroll` failed: an exception that is no std::exception"},
    {"failing", "plugin-failed", "its `enroll` failed: the table of cables is empty"},
    {"failing_mute", "plugin-failed", "its `enroll` failed, and does not say why"},
    {"same_name", "plugin-twice", "plugin `good` is loaded already, from " + library("good")},
    {"same_kind", "plugin-refused", "kind `spark` is there already, from plugin `good` (" + library("good") + ")"},
    {"same_cable", "plugin-refused",
     "cable `TESTCOAX-1` is there already as `Test-Coax 1`, from plugin `good` (" + library("good") + ")"},
    {"twice_itself", "plugin-refused", "cable `honest` is registered twice by this plugin"},
    {"three_ports", "plugin-refused", "kind `circulator` has 3 ports, and a part has one or two"},
};

}  // namespace

TEST_CASE("a good plugin brings all it has, and says who it is") {
  const Plugins plugins = load({"good"});
  REQUIRE(plugins.troubles().empty());
  const Registry& registry = plugins.registry();
  REQUIRE(registry.plugins.size() == 1);
  CHECK(registry.plugins[0].name == "good");
  CHECK(registry.plugins[0].version == "1.2");
  CHECK(registry.plugins[0].path == library("good"));
  CHECK(has_all_of_good(registry));
  CHECK(registry.kinds.at(0).plugin == 0);
  CHECK(registry.find_kind("Spark") == nullptr);
  CHECK(registry.find_line_model() == nullptr);
  CHECK(registry.find_optimizer() == registry.find_optimizer("stand-still"));
  CHECK(registry.find_optimizer("another") == nullptr);
}

TEST_CASE("a cable is found without regard to case, hyphens and blanks") {
  const Plugins plugins = load({"good"});
  for (const char* name : {"Test-Coax 1", "testcoax1", "TEST COAX-1", "t-e-s-t coax 1"}) {
    INFO(name);
    CHECK(plugins.registry().find_cable(name) != nullptr);
  }
  CHECK(plugins.registry().find_cable("test coax 2") == nullptr);
  CHECK(plugins.registry().find_cable("") == nullptr);
}

TEST_CASE("what a plugin registers can be called through the host") {
  const Plugins plugins = load({"good"});
  const sdk::Kind& spark = *plugins.registry().find_kind("spark");
  const sdk::Complex values[] = {{50.0, 0.0}, {1.0, 0.0}};
  const double frequencies_hz[] = {7e6, 14e6};
  sdk::Complex a[2], b[2];
  sdk::Failure failure{};
  REQUIRE(spark.rows(spark.self, values, frequencies_hz, 2, a, b, &failure) == sdk::Status::ok);
  CHECK(a[1].re == 1.0);
  CHECK(b[1].re == -50.0);
}

TEST_CASE("a bad plugin is left out with a sentence, and takes nothing with it") {
  for (const Case& c : cases) {
    INFO(c.plugin);
    const Plugins plugins = load({"good", c.plugin});
    REQUIRE(plugins.troubles().size() == 1);
    const Diagnostic& trouble = plugins.troubles()[0];
    CHECK(trouble.code == c.code);
    CHECK(trouble.text == "plugin `" + library(c.plugin) + "` is left out: " + c.why);
    CHECK(trouble.fault == Fault::file);
    CHECK(has_all_of_good(plugins.registry()));
    CHECK(plugins.registry().plugins.size() == 1);
    CHECK(plugins.registry().find_cable("honest") == nullptr);
  }
}

TEST_CASE("good plugins still load after bad ones, whatever the order") {
  std::vector<std::string> all;
  for (const Case& c : cases) {
    if (!c.plugin.starts_with("same")) all.push_back(c.plugin);
  }
  all.push_back("no_library");
  all.push_back("good");
  const Plugins plugins = load(all);
  CHECK(plugins.troubles().size() == all.size() - 1);
  CHECK(has_all_of_good(plugins.registry()));
}

TEST_CASE("a file that is no library says so in the loader's words") {
  const Plugins plugins = load({"no_library", "good"});
  REQUIRE(plugins.troubles().size() == 1);
  CHECK(plugins.troubles()[0].code == "plugin-unreadable");
  const std::string start = "plugin `" + library("no_library") + "` is left out: it could not be opened: ";
  CHECK(plugins.troubles()[0].text.starts_with(start));
  // Boost.DLL's own wrapping is not for users.
  CHECK(plugins.troubles()[0].text.find("boost") == std::string::npos);
  CHECK(plugins.troubles()[0].text.find("Bad file descriptor") == std::string::npos);
  CHECK(has_all_of_good(plugins.registry()));
}

TEST_CASE("a symbol that nobody has is found when the library is opened") {
  const Plugins plugins = load({"unresolved"});
  REQUIRE(plugins.troubles().size() == 1);
  CHECK(plugins.troubles()[0].code == "plugin-unreadable");
  CHECK(plugins.troubles()[0].text.find("nobody_has_this") != std::string::npos);
}

TEST_CASE("the first of two plugins with one name stays") {
  const Plugins plugins = load({"same_name", "good"});
  REQUIRE(plugins.troubles().size() == 1);
  CHECK(plugins.troubles()[0].text ==
        "plugin `" + library("good") + "` is left out: plugin `good` is loaded already, from " + library("same_name"));
  CHECK(plugins.registry().plugins.at(0).version == "9.9");
}

TEST_CASE("the same file met again, under any path, is loaded once and without a word") {
  PluginSearch search;
  search.folders = {folder("good"), folder("good") / "." / ".." / "good"};
  search.built_in = folder("good");
  const Plugins plugins = load_plugins(search);
  CHECK(plugins.troubles().empty());
  CHECK(plugins.registry().plugins.size() == 1);
}

TEST_CASE("the built-in folder is searched last, and alone where no other is named") {
  PluginSearch search;
  search.folders = {folder("same_name")};
  search.built_in = folder("good");
  CHECK(load_plugins(search).registry().plugins.at(0).version == "9.9");
  search.folders.clear();
  CHECK(load_plugins(search).registry().plugins.at(0).version == "1.2");
}

TEST_CASE("a folder that is not there is a trouble") {
  const Plugins plugins = load({"no_such_folder", "good"});
  REQUIRE(plugins.troubles().size() == 1);
  CHECK(plugins.troubles()[0].code == "plugin-folder");
  CHECK(plugins.troubles()[0].text ==
        "the plugin folder `" + folder("no_such_folder").string() + "` could not be read: No such file or directory");
  CHECK(has_all_of_good(plugins.registry()));
}

TEST_CASE("no folders, no plugins, no trouble") {
  const Plugins plugins = load_plugins({});
  CHECK(plugins.troubles().empty());
  CHECK(plugins.registry().plugins.empty());
}

TEST_CASE("what was loaded survives a move") {
  Plugins first = load({"good"});
  const Plugins second = std::move(first);
  CHECK(std::string(second.registry().find_cable("test coax 1")->meaning) == "a cable");
}
