// Finds plugins, opens them, checks that they fit, and lets them register.
#pragma once

#include <filesystem>
#include <memory>
#include <vector>

#include "host/registry.hpp"

namespace wattfall::host {

struct PluginSearch {
  std::vector<std::filesystem::path> folders;  ///< in order: --plugins DIR, WATTFALL_PLUGINS (paths parted by ':'), beside the program, installed
  std::filesystem::path built_in;              ///< the folder of the built-in plugins; searched last, the only one with --no-plugins
};

/// Owns the opened libraries; a Registry points into them, so it must not outlive this.
class Plugins {
 public:
  Plugins();
  ~Plugins();
  Plugins(Plugins&&) noexcept;
  Plugins& operator=(Plugins&&) noexcept;

  const Registry& registry() const;
  /// Plugins that were refused or failed, each a sentence that names the library and says why (another interface number: both
  /// numbers; another compiler family; no `wattfall_plugin`; two of one name: both places). Fault::file. The program goes on without
  /// them where they are not needed.
  const Diagnostics& troubles() const;

 private:
  friend Plugins load_plugins(const PluginSearch& search);
  struct Body;
  std::unique_ptr<Body> body_;
};

/// Loads every *.so of the folders, each folder in order of file names. A folder that is named by the user and is not there is a trouble.
/// The same file met twice (by its canonical path) is loaded once.
Plugins load_plugins(const PluginSearch& search);

}  // namespace wattfall::host
