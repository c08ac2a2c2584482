#include "host/load_plugins.hpp"

#include <algorithm>
#include <boost/dll/shared_library.hpp>
#include <set>
#include <string>
#include <system_error>
#include <utility>

#include "enrollment.hpp"
#include "validate.hpp"

namespace wattfall::host {
namespace fs = std::filesystem;

struct Plugins::Body {
  std::vector<boost::dll::shared_library> libraries;  // stands first, so that it is closed last
  std::set<fs::path> met;                             // canonical paths
  Registry registry;
  Diagnostics troubles;
};

Plugins::Plugins() : body_(std::make_unique<Body>()) {}
Plugins::~Plugins() = default;
Plugins::Plugins(Plugins&&) noexcept = default;
Plugins& Plugins::operator=(Plugins&&) noexcept = default;

const Registry& Plugins::registry() const {
  return body_->registry;
}
const Diagnostics& Plugins::troubles() const {
  return body_->troubles;
}

namespace {

// CMake gives modules this ending on every system but one.
#if defined(_WIN32)
constexpr const char* library_ending = ".dll";
#else
constexpr const char* library_ending = ".so";
#endif

/// A stable code and what comes after the library's name in the sentence; an empty code where there is no trouble.
struct Trouble {
  std::string code;
  std::string text;
};

Diagnostic diagnostic(std::string code, std::string text) {
  Diagnostic result;
  result.code = std::move(code);
  result.text = std::move(text);
  result.fault = Fault::file;
  return result;
}

std::string text_or(const char* text, const char* otherwise) {
  return text == nullptr ? otherwise : text;
}

/// The plugin's description against this host. Reads no further than the first three fields before they are known to
/// fit.
Trouble misfit(const sdk::Plugin* plugin) {
  if (plugin == nullptr) return {"plugin-broken", "its `wattfall_plugin` gives no description"};
  if (plugin->interface_number != sdk::interface_number) {
    return {"plugin-interface", "it is built for plugin interface " + std::to_string(plugin->interface_number) +
                                    ", and this wattfall has interface " + std::to_string(sdk::interface_number)};
  }
  const std::string compiler = text_or(plugin->compiler, "(none)");
  if (compiler != sdk::compiler_family) {
    return {"plugin-compiler", "it is built by the compiler family `" + compiler + "`, and this wattfall by `" +
                                   std::string(sdk::compiler_family) + "`"};
  }
  if (plugin->size != sizeof(sdk::Plugin)) {
    return {"plugin-broken", "its description takes " + std::to_string(plugin->size) +
                                 " bytes, and this interface's takes " + std::to_string(sizeof(sdk::Plugin))};
  }
  if (!is_word(text_or(plugin->name, ""))) {
    return {"plugin-broken", "it has no name of letters, digits, `_` and hyphens"};
  }
  if (text_or(plugin->version, "").empty()) return {"plugin-broken", "it does not say its version"};
  if (plugin->enroll == nullptr) return {"plugin-broken", "it has no function `enroll`"};
  return {};
}

Trouble namesake(const Registry& registry, const std::string& name) {
  for (const PluginInfo& other : registry.plugins) {
    if (other.name == name) return {"plugin-twice", "plugin `" + name + "` is loaded already, from " + other.path};
  }
  return {};
}

/// Lets the plugin register; `registry` changes only where all of it went well.
Trouble enroll(const sdk::Plugin& plugin, const fs::path& path, Registry& registry) {
  Enrollment enrollment(registry, {plugin.name, plugin.version, path.string()});
  sdk::Failure failure{};
  const sdk::Status status = sdk::guarded(&failure, [&] { return plugin.enroll(enrollment.registrar(), &failure); });
  failure.text[sizeof failure.text - 1] = '\0';  // the plugin wrote it
  if (!enrollment.refusal().empty()) return {"plugin-refused", enrollment.refusal()};
  if (status != sdk::Status::ok) {
    const std::string reason = failure.text;
    return {"plugin-failed", "its `enroll` failed" + (reason.empty() ? ", and does not say why" : ": " + reason)};
  }
  registry = enrollment.draft();
  return {};
}

/// The loader's own words out of Boost.DLL's "... (dlerror system message: PATH: WORDS): Bad file descriptor".
std::string loader_words(const std::string& what, const fs::path& path) {
  const std::string before = "dlerror system message: ";
  const std::size_t begin = what.find(before);
  const std::size_t end = what.rfind("): ");
  if (begin == std::string::npos || end == std::string::npos || end < begin + before.size()) return what;
  const std::string words = what.substr(begin + before.size(), end - begin - before.size());
  const std::string prefix = path.string() + ": ";
  return words.starts_with(prefix) ? words.substr(prefix.size()) : words;
}

/// Opens the library with every symbol bound at once, so that a missing one shows here and not in mid-calculation.
Trouble open(const fs::path& canonical, boost::dll::shared_library& library) {
  try {
    library.load(canonical, boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local);
  } catch (const std::exception& error) {
    return {"plugin-unreadable", "it could not be opened: " + loader_words(error.what(), canonical)};
  }
  if (library.has("wattfall_plugin")) return {};
  return {"plugin-no-entry", "it is no wattfall plugin: it does not export `wattfall_plugin`"};
}

/// Asks the opened library who it is and lets it register.
Trouble admit(const boost::dll::shared_library& library, const fs::path& path, Registry& registry) {
  const sdk::Plugin* plugin = library.get<const sdk::Plugin*()>("wattfall_plugin")();
  Trouble trouble = misfit(plugin);
  if (trouble.code.empty()) trouble = namesake(registry, plugin->name);
  if (trouble.code.empty()) trouble = enroll(*plugin, path, registry);
  return trouble;
}

/// The libraries of a folder in order of their file names; `error` is set where the folder cannot be read.
std::vector<fs::path> libraries_in(const fs::path& folder, std::error_code& error) {
  std::vector<fs::path> paths;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    std::error_code ignored;
    if (entry->path().extension() == library_ending && !entry->is_directory(ignored)) paths.push_back(entry->path());
  }
  std::sort(paths.begin(), paths.end(), [](const auto& a, const auto& b) { return a.filename() < b.filename(); });
  return paths;
}

/// The path that a file is known by; for a dangling link the path itself, which then fails to open.
fs::path identity(const fs::path& path) {
  std::error_code error;
  fs::path canonical = fs::canonical(path, error);
  return error ? fs::absolute(path) : canonical;
}

/// Loads one library, known by its canonical path. `Body` is private to Plugins, so its parts come one by one.
Trouble load(const fs::path& path, const fs::path& canonical, std::vector<boost::dll::shared_library>& libraries, Registry& registry) {
  boost::dll::shared_library library;
  try {
    Trouble trouble = open(canonical, library);
    if (trouble.code.empty()) trouble = admit(library, path, registry);
    if (trouble.code.empty()) libraries.push_back(std::move(library));
    return trouble;
  } catch (const std::exception& error) {
    return {"plugin-failed", std::string("it failed: ") + error.what()};
  } catch (...) {
    return {"plugin-failed", "it threw an exception that is no std::exception"};
  }
}

}  // namespace

Plugins load_plugins(const PluginSearch& search) {
  Plugins plugins;
  Plugins::Body& body = *plugins.body_;
  std::vector<fs::path> folders = search.folders;
  if (!search.built_in.empty()) folders.push_back(search.built_in);
  for (const fs::path& folder : folders) {
    std::error_code error;
    const std::vector<fs::path> paths = libraries_in(folder, error);
    if (error) {
      body.troubles.push_back(diagnostic(
          "plugin-folder", "the plugin folder `" + folder.string() + "` could not be read: " + error.message()));
    }
    for (const fs::path& path : paths) {
      const fs::path canonical = identity(path);
      if (!body.met.insert(canonical).second) continue;
      const Trouble trouble = load(path, canonical, body.libraries, body.registry);
      if (trouble.code.empty()) continue;
      body.troubles.push_back(diagnostic(trouble.code, "plugin `" + path.string() + "` is left out: " + trouble.text));
    }
  }
  return plugins;
}

}  // namespace wattfall::host
