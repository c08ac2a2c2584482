// Paths are made canonical, symbolic links and dots resolved, before they are compared with the folders allowed.
#include "files.hpp"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <system_error>

namespace wattfall::design {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_feed = 1u << 20;          // language.md: 1 MiB a file; the parser says so
constexpr std::uintmax_t largest_measurement = 64u << 20;  // far above any analyser's sweep

fs::path canonical_or_empty(const fs::path& path) {
  std::error_code error;
  fs::path canonical = fs::canonical(path.empty() ? fs::path(".") : path, error);
  return error ? fs::path{} : canonical;
}

bool inside(const fs::path& path, const fs::path& folder) {
  if (folder.empty()) return false;
  const auto [rest, unused] = std::mismatch(folder.begin(), folder.end(), path.begin(), path.end());
  return rest == folder.end();
}

}  // namespace

Files::Files(const ResolveOptions& options, const wattfall::Source* root, Vocabulary vocabulary, Complaints& complaints)
    : root_folder_(options.folder), root_(root), vocabulary_(std::move(vocabulary)), complaints_(complaints) {
  if (root_folder_.empty() && root != nullptr && root->name() != "-")
    root_folder_ = fs::path(root->name()).parent_path();
  allowed_.push_back(canonical_or_empty(root_folder_));
  for (const fs::path& folder : options.allow) allowed_.push_back(canonical_or_empty(folder));
}

void Files::say(const char* code, Span span, std::string text) {
  complaints_.say(code, span, std::move(text)).fault = Fault::file;
}

void Files::keep(const SourcePtr& source) {
  sources_.push_back(source);
  complaints_.keep(source);
}

fs::path Files::folder_of(const wattfall::Source* source) const {
  const auto found = folders_.find(source);
  return found == folders_.end() ? root_folder_ : found->second;
}

/// The path as a user would write it: beside the file that names it.
std::string Files::shown_name(const std::string& name, Span span) const {
  if (span.source == nullptr || span.source->name() == "-") return name;
  return (fs::path(span.source->name()).parent_path() / name).lexically_normal().string();
}

bool Files::allowed(const fs::path& path) const {
  return std::any_of(allowed_.begin(), allowed_.end(), [&](const fs::path& folder) { return inside(path, folder); });
}

std::optional<fs::path> Files::say_outside(const std::string& name, Span span) {
  auto& wrong = complaints_.say("file-outside", span, in_quotes(name) + " lies outside the design's folder");
  wrong.fault = Fault::file;
  wrong.advice = "let it be read with --allow DIR";
  return std::nullopt;
}

std::optional<fs::path> Files::find(const std::string& name, Span span) {
  std::error_code error;
  if (name.empty() || name.find('\0') != std::string::npos) {
    say("file-not-found", span, "this names no file");
    return std::nullopt;
  }
  const fs::path path = fs::canonical(folder_of(span.source) / name, error);
  if (error) {
    // Nothing is said of what lies outside, not even whether it is there.
    const fs::path weak = fs::weakly_canonical(folder_of(span.source) / name, error);
    if (error || allowed(weak)) {
      say("file-not-found", span, "there is no file " + in_quotes(name) + " beside the one that names it");
      return std::nullopt;
    }
    return say_outside(name, span);
  }
  if (!allowed(path)) return say_outside(name, span);
  if (!fs::is_regular_file(path, error)) {
    say("file-not-read", span, in_quotes(name) + " is no ordinary file");
    return std::nullopt;
  }
  return path;
}

SourcePtr Files::read(const fs::path& path, const std::string& name, Span span, std::uintmax_t largest) {
  std::error_code error;
  if (fs::file_size(path, error) > largest && !error) {
    say("file-too-large", span, in_quotes(name) + " is larger than " + std::to_string(largest >> 20) + " MiB");
    return nullptr;
  }
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  if (stream.peek() != std::ifstream::traits_type::eof()) text << stream.rdbuf();
  if (stream.bad() || !stream.is_open()) {
    say("file-not-read", span, in_quotes(name) + " cannot be read");
    return nullptr;
  }
  auto source = std::make_shared<const wattfall::Source>(shown_name(name, span), std::move(text).str());
  folders_[source.get()] = path.parent_path();
  keep(source);
  return source;
}

const syntax::File* Files::feed(const fs::path& path, const std::string& name, Span span) {
  const auto known = feeds_.find(path);
  if (known != feeds_.end()) return known->second.get();
  auto& kept = feeds_[path];
  const SourcePtr source = read(path, name, span, largest_feed);
  if (source == nullptr) return nullptr;
  Result<syntax::File> parsed = parse(source, vocabulary_);
  complaints_.pass_on(std::move(parsed.diagnostics));
  if (parsed.value) kept = std::make_unique<syntax::File>(std::move(*parsed.value));
  return kept.get();
}

std::shared_ptr<const measured::Network> Files::network(const fs::path& path, const std::string& name, int ports,
                                                        Span span) {
  const auto known = networks_.find(path);
  if (known == networks_.end()) {
    auto& kept = networks_[path];
    const SourcePtr source = read(path, name, span, largest_measurement);
    if (source == nullptr) return nullptr;
    Result<measured::Network> parsed = measured::read_touchstone(source, measured::ports_from_extension(name));
    complaints_.pass_on(std::move(parsed.diagnostics));
    if (parsed.value) kept = std::make_shared<const measured::Network>(std::move(*parsed.value));
  }
  const auto& network = networks_[path];
  if (network == nullptr) {
    say("broken-measurement", span, in_quotes(name) + " cannot be used: there are mistakes in it");
    return nullptr;
  }
  if (network->ports != ports) {
    say("wrong-port-count", span,
        in_quotes(name) + " has " + std::to_string(network->ports) + " port" + (network->ports == 1 ? "" : "s") +
            ", where " + std::to_string(ports) + (ports == 1 ? " is due" : " are due"));
    return nullptr;
  }
  if (network->frequencies_hz.empty()) {
    say("broken-measurement", span, in_quotes(name) + " has no points");
    return nullptr;
  }
  return network;
}

}  // namespace wattfall::design
