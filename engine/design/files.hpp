// Files that a design names: included feed files and measurements. They are found beside the file that names them, and
// nowhere outside the design's folder and the folders allowed on the command line; each is read once.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "complaints.hpp"
#include "design/catalog.hpp"
#include "design/resolve.hpp"
#include "measured/touchstone.hpp"

namespace wattfall::design {

class Files {
 public:
  Files(const ResolveOptions& options, const wattfall::Source* root, Vocabulary vocabulary, Complaints& complaints);

  /// The canonical path of a file named at `span`; none where it is missing or outside, which has been said.
  std::optional<std::filesystem::path> find(const std::string& name, Span span);
  /// The tree of a found file; null where it could not be read.
  const syntax::File* feed(const std::filesystem::path& path, const std::string& name, Span span);
  std::shared_ptr<const measured::Network> network(const std::filesystem::path& path, const std::string& name,
                                                   int ports, Span span);

  /// Every text read, and those of the options.
  const std::vector<SourcePtr>& sources() const { return sources_; }
  void keep(const SourcePtr& source);

 private:
  SourcePtr read(const std::filesystem::path& path, const std::string& name, Span span, std::uintmax_t largest);
  std::filesystem::path folder_of(const wattfall::Source* source) const;
  std::string shown_name(const std::string& name, Span span) const;
  bool allowed(const std::filesystem::path& path) const;
  std::optional<std::filesystem::path> say_outside(const std::string& name, Span span);
  void say(const char* code, Span span, std::string text);

  std::filesystem::path root_folder_;
  std::vector<std::filesystem::path> allowed_;
  const wattfall::Source* root_;
  Vocabulary vocabulary_;
  Complaints& complaints_;
  std::vector<SourcePtr> sources_;
  std::map<const wattfall::Source*, std::filesystem::path> folders_;
  std::map<std::filesystem::path, std::unique_ptr<syntax::File>> feeds_;
  std::map<std::filesystem::path, std::shared_ptr<const measured::Network>> networks_;
};

}  // namespace wattfall::design
