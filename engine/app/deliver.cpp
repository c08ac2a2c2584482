#include "deliver.hpp"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

#include "grammar/nearest_name.hpp"

namespace wattfall::app {
namespace {

namespace fs = std::filesystem;

Diagnostic unwritable(const std::string& path, const std::string& why) {
  return {
      .code = "unwritable", .span = {}, .text = "`" + path + "` could not be written: " + why, .fault = Fault::file};
}

/// Writes all of it to an open descriptor; the error's text where that fails.
std::string write_all(int descriptor, const std::string& text) {
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t count = ::write(descriptor, text.data() + done, text.size() - done);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return std::strerror(errno);
    done += static_cast<std::size_t>(count);
  }
  return {};
}

/// A pipe or device cannot be replaced: what is there is written to as it is.
bool is_special(const fs::path& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  return !error && fs::exists(status) && !fs::is_regular_file(status);
}

std::string write_special(const fs::path& path, const std::string& text) {
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
  if (descriptor < 0) return std::strerror(errno);
  std::string why = write_all(descriptor, text);
  if (::close(descriptor) != 0 && why.empty()) why = std::strerror(errno);
  return why;
}

/// The new report beside the old one, then put in its place: a reader sees the one or the other. Until it is whole it has no name where the file system
/// lets a file have none (O_TMPFILE), so that a program that is killed while it writes leaves nothing behind. Then it gets a name that is always the same,
/// for the moment before it takes the old one's: killed in that moment the program leaves a draft that the next run takes away.
class Draft {
 public:
  explicit Draft(const std::string& path) : asked_(path), path_(path) {
    // Through symbolic links, to the file they stand for, be it there or not. A ring of links ends where it began to
    // repeat.
    std::error_code error;
    for (int links = 0; links < 40 && fs::is_symlink(path_, error); ++links)
      path_ = path_.parent_path() / fs::read_symlink(path_, error);
  }
  ~Draft() {
    if (!name_.empty()) ::unlink(name_.c_str());
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  Draft(Draft&& other) noexcept
      : asked_(std::move(other.asked_)),
        path_(std::move(other.path_)),
        name_(std::exchange(other.name_, {})),
        left_behind_(std::move(other.left_behind_)),
        text_(other.text_),
        descriptor_(std::exchange(other.descriptor_, -1)) {}
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  Draft& operator=(Draft&&) = delete;

  /// The path as the user gave it.
  const std::string& asked() const { return asked_; }

  /// `text` is to live until `put`.
  std::string write(const std::string& text) {
    if (::access(path_.c_str(), F_OK) == 0 && ::access(path_.c_str(), W_OK) != 0) return std::strerror(errno);
    text_ = &text;
    descriptor_ = open_nameless();
    return descriptor_ < 0 ? write_named() : fill();
  }

  std::string put() {
    if (name_.empty() && !give_name()) return std::strerror(errno);
    if (::rename(name_.c_str(), path_.c_str()) != 0) {
      if (errno != ENOENT) return std::strerror(errno);
      // Another run that writes the same report took the draft for one that was left behind.
      name_.clear();
      ::close(std::exchange(descriptor_, -1));
      if (std::string why = write_named(); !why.empty()) return why;
      if (::rename(name_.c_str(), path_.c_str()) != 0) return std::strerror(errno);
    }
    name_.clear();
    if (!left_behind_.empty()) ::unlink(left_behind_.c_str());
    return {};
  }

 private:
  std::string fill() const {
    std::string why = write_all(descriptor_, *text_);
    if (why.empty() && ::fchmod(descriptor_, mode()) != 0) why = std::strerror(errno);
    if (why.empty() && ::fsync(descriptor_) != 0) why = std::strerror(errno);
    return why;
  }

  std::string write_named() {
    std::string name = path_.string() + ".XXXXXX";
    descriptor_ = ::mkstemp(name.data());
    if (descriptor_ < 0) return std::strerror(errno);
    name_ = name;
    return fill();
  }

  /// -1 where there are no files without a name, or no way to give them one.
  int open_nameless() const {
    const fs::path folder = path_.has_parent_path() ? path_.parent_path() : fs::path(".");
    const int descriptor = ::open(folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0 || ::access(link_of(descriptor).c_str(), F_OK) == 0) return descriptor;
    ::close(descriptor);
    return -1;
  }

  static std::string link_of(int descriptor) { return "/proc/self/fd/" + std::to_string(descriptor); }

  bool link_as(const std::string& name) {
    if (::linkat(AT_FDCWD, link_of(descriptor_).c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) != 0) return false;
    name_ = name;
    return true;
  }

  /// Where the name is taken, by a run that was killed or by one that writes at this moment, it takes one with its process's number; what has the name
  /// is taken away once the report is in its place.
  bool give_name() {
    const std::string name = path_.string() + ".wattfall-draft";
    if (link_as(name)) return true;
    if (errno != EEXIST) return false;
    left_behind_ = name;
    const std::string own = name + '-' + std::to_string(::getpid());
    ::unlink(own.c_str());
    return link_as(own);
  }

  /// The old file's permissions, or those that a new file gets.
  mode_t mode() const {
    struct stat old {};
    if (::stat(path_.c_str(), &old) == 0) return old.st_mode & 07777;
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666 & ~mask;
  }

  std::string asked_;
  fs::path path_;
  std::string name_;         ///< empty where the draft has none
  std::string left_behind_;  ///< a draft that is in the way of this one's name
  const std::string* text_ = nullptr;
  int descriptor_ = -1;
};

/// While one of these lives, an interruption waits, so that no draft is left lying about.
class Undisturbed {
 public:
  Undisturbed() {
    sigset_t held;
    sigemptyset(&held);
    for (int signal : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&held, signal);
    ::sigprocmask(SIG_BLOCK, &held, &before_);
  }
  ~Undisturbed() { ::sigprocmask(SIG_SETMASK, &before_, nullptr); }
  Undisturbed(const Undisturbed&) = delete;
  Undisturbed& operator=(const Undisturbed&) = delete;

 private:
  sigset_t before_{};
};

/// All drafts are written before the first takes an old report's place.
Diagnostics replace_files(const std::vector<Delivery>& deliveries, const std::vector<std::string>& reports) {
  const Undisturbed while_drafts_lie_there;
  std::vector<Draft> drafts;
  for (std::size_t i = 0; i < deliveries.size(); ++i) {
    if (!deliveries[i].path || is_special(*deliveries[i].path)) continue;
    drafts.emplace_back(*deliveries[i].path);
    if (const std::string why = drafts.back().write(reports[i]); !why.empty())
      return {unwritable(*deliveries[i].path, why)};
  }
  for (Draft& draft : drafts)
    if (const std::string why = draft.put(); !why.empty()) return {unwritable(draft.asked(), why)};
  return {};
}

/// As wide as the terminal that it goes to, within what the writers set well; 100 for files and pipes.
std::uint32_t columns_of(int descriptor) {
  constexpr unsigned least = 72, most = 100;
  struct winsize size {};
  if (::isatty(descriptor) != 1 || ::ioctl(descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return most;
  return std::clamp<unsigned>(size.ws_col, least, most);
}

/// A writer's report as a text.
std::string make_report(const sdk::Writer& writer, const std::string& document, bool color, std::uint32_t columns, sdk::Status& status,
                        sdk::Failure& failure) {
  std::string report;
  const sdk::Sink sink{&report, [](void* self, const char* bytes, std::size_t size) {
                         return sdk::guarded(nullptr, [&] { static_cast<std::string*>(self)->append(bytes, size); });
                       }};
  const sdk::WriterOptions options{columns, color ? 1u : 0u};
  status = writer.write(writer.self, document.data(), document.size(), &options, &sink, &failure);
  return report;
}

}  // namespace

bool wants_color(Color color, int descriptor) {
  if (color != Color::automatic) return color == Color::always;
  const char* refused = std::getenv("NO_COLOR");
  return (refused == nullptr || *refused == '\0') && ::isatty(descriptor) == 1;
}

Diagnostics check_writers(const std::vector<Delivery>& deliveries, const host::Registry& registry) {
  std::vector<std::string> names;
  for (const auto& entry : registry.writers) names.emplace_back(entry.thing->name);
  Diagnostics diagnostics;
  for (const Delivery& delivery : deliveries) {
    if (registry.find_writer(delivery.writer) != nullptr) continue;
    const std::string near = nearest_name(delivery.writer, names);
    diagnostics.push_back({.code = "unknown-writer",
                           .span = {},
                           .text = "no plugin brings a report writer `" + delivery.writer + "`",
                           .expected = names.empty() ? "a plugin with report writers; none is there"
                                                     : nearest_first(delivery.writer, names),
                           .hint = near,
                           .fault = names.empty() ? Fault::file : Fault::usage});
  }
  return diagnostics;
}

std::string read_aloud(const std::string& document, const host::Registry& registry, bool color) {
  const sdk::Writer* writer = registry.find_writer("text");
  if (writer == nullptr) return {};
  sdk::Status status = sdk::Status::ok;
  sdk::Failure failure{};
  const std::string text = make_report(*writer, document, color, columns_of(STDERR_FILENO), status, failure);
  return status == sdk::Status::ok ? text : std::string();
}

Diagnostics print(const std::string& text) {
  const std::string why = write_all(STDOUT_FILENO, text);
  if (!why.empty()) return {unwritable("standard output", why)};
  return {};
}

Diagnostics replace_file(const std::string& path, const std::string& text) {
  if (is_special(path)) return {unwritable(path, "it is no plain file")};
  Draft draft(path);
  std::string why = draft.write(text);
  if (why.empty()) why = draft.put();
  if (!why.empty()) return {unwritable(path, why)};
  return {};
}

Diagnostics deliver(const std::string& document, const std::vector<Delivery>& deliveries,
                    const host::Registry& registry, Color color, ProgressBar& bar) {
  std::vector<std::string> reports;
  for (const Delivery& delivery : deliveries) {
    const sdk::Writer& writer = *registry.find_writer(delivery.writer);
    sdk::Status status = sdk::Status::ok;
    sdk::Failure failure{};
    reports.push_back(
        make_report(writer, document, !delivery.path && wants_color(color, STDOUT_FILENO), delivery.path ? 100u : columns_of(STDOUT_FILENO), status, failure));
    if (status != sdk::Status::ok) {
      bar.take_away();
      return {{.code = "writer-failed",
               .span = {},
               .text = "the report writer `" + delivery.writer + "` failed: " + failure.text,
               .fault = Fault::file}};
    }
  }
  bar.take_away();
  // Pipes and devices first: they may wait for a reader, and while there are drafts nothing should wait.
  for (std::size_t i = 0; i < deliveries.size(); ++i) {
    if (!deliveries[i].path || !is_special(*deliveries[i].path)) continue;
    if (const std::string why = write_special(*deliveries[i].path, reports[i]); !why.empty())
      return {unwritable(*deliveries[i].path, why)};
  }
  if (Diagnostics wrong = replace_files(deliveries, reports); !wrong.empty()) return wrong;
  for (std::size_t i = 0; i < deliveries.size(); ++i)
    if (!deliveries[i].path) return print(reports[i]);
  return {};
}

}  // namespace wattfall::app
