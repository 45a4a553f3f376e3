// SPDX-License-Identifier: MIT
// Tested in tests/shell/watch_test.py.
#include "cli/watch.h"

#include <poll.h>
#include <sys/inotify.h>
#include <sys/signalfd.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <map>

#include "base/file.h"
#include "base/format.h"
#include "cli/load.h"

namespace plugward {
namespace {

namespace fs = std::filesystem;

/// A save is several events: it is taken as over when this long nothing more came.
constexpr int settled_ms = 60;
constexpr std::uint32_t saves =
    IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_DELETE_SELF | IN_MOVE_SELF;

[[noreturn]] void fail(std::string_view what) {
  throw WorldError(format("cannot watch: {}: {}", what, std::strerror(errno)));
}

/// SIGINT and SIGTERM as something to wait for; between waits they stay pending, so that no work is cut in
/// two.
class EndSignal {
 public:
  EndSignal() {
    sigset_t ends;
    sigemptyset(&ends);
    sigaddset(&ends, SIGINT);
    sigaddset(&ends, SIGTERM);
    sigprocmask(SIG_BLOCK, &ends, nullptr);
    fd_ = ::signalfd(-1, &ends, SFD_CLOEXEC);
    if (fd_ < 0) fail("signals");
  }
  EndSignal(const EndSignal&) = delete;
  EndSignal& operator=(const EndSignal&) = delete;
  ~EndSignal() { ::close(fd_); }
  int fd() const { return fd_; }

 private:
  int fd_ = -1;
};

/// The folders of files, watched.
class SavedFiles {
 public:
  SavedFiles() : fd_(::inotify_init1(IN_CLOEXEC | IN_NONBLOCK)) {
    if (fd_ < 0) fail("inotify");
  }
  SavedFiles(const SavedFiles&) = delete;
  SavedFiles& operator=(const SavedFiles&) = delete;
  ~SavedFiles() { ::close(fd_); }
  int fd() const { return fd_; }

  /// Also the file that a link leads to.
  void add(const std::string& path) {
    add_name(path, path);
    std::error_code error;
    const fs::path real = fs::canonical(path, error);
    if (!error) add_name(real, path);
  }

  bool none() const { return folders_.empty(); }

  /// The files that were saved since the last call, as they were added.
  std::set<std::string> take() {
    std::set<std::string> saved;
    alignas(inotify_event) std::array<char, 16384> buffer{};
    for (;;) {
      const ssize_t size = ::read(fd_, buffer.data(), buffer.size());
      if (size < 0 && errno == EINTR) continue;
      if (size <= 0) return saved;
      for (std::size_t at = 0; at < static_cast<std::size_t>(size);) {
        inotify_event event{};
        std::memcpy(&event, buffer.data() + at, sizeof event);
        const char* const name = buffer.data() + at + sizeof event;
        if (event.mask & (IN_DELETE_SELF | IN_MOVE_SELF | IN_IGNORED)) {
          folders_.erase(event.wd);
        } else if (event.mask & IN_Q_OVERFLOW) {
          for (const auto& [wd, names] : folders_) {
            for (const auto& [file, given] : names) saved.insert(given);
          }
        } else if (event.len > 0) {
          const auto folder = folders_.find(event.wd);
          if (folder != folders_.end()) {
            const auto file = folder->second.find(name);
            if (file != folder->second.end()) saved.insert(file->second);
          }
        }
        at += sizeof event + event.len;
      }
    }
  }

 private:
  void add_name(const fs::path& file, const std::string& given) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
    const int wd = ::inotify_add_watch(fd_, folder.c_str(), saves);
    // A loom may name a folder that is not there; the command says so.
    if (wd < 0 && (errno == ENOENT || errno == ENOTDIR)) return;
    if (wd < 0) fail(format("'{}'", folder.string()));
    folders_[wd].emplace(file.filename().string(), given);
  }

  int fd_;
  std::map<int, std::map<std::string, std::string>>
      folders_;  ///< by watch: name in the folder, name as given
};

enum class Woken { Saved, Ended };

/// Until a file was saved and it has settled, or the end is asked for.
Woken wait(SavedFiles& files, const EndSignal& end, std::set<std::string>& saved) {
  std::array<pollfd, 2> waits{{{files.fd(), POLLIN, 0}, {end.fd(), POLLIN, 0}}};
  for (;;) {
    const int ready = ::poll(waits.data(), waits.size(), saved.empty() ? -1 : settled_ms);
    if (ready < 0 && errno == EINTR) continue;
    if (ready < 0) fail("poll");
    if (ready == 0) return Woken::Saved;
    if (waits[1].revents != 0) return Woken::Ended;
    saved.merge(files.take());
    if (files.none()) return Woken::Saved;
  }
}

void tell(const Options& options, const std::string& text) {
  if (options.stream_err) options.stream_err(text);
}

}  // namespace

std::vector<std::string> input_files(const Options& options) {
  std::vector<std::string> files = options.words;
  files.insert(files.end(), options.families.begin(), options.families.end());
  if (!options.to_board.empty()) files.push_back(options.to_board);
  std::set<std::string> all(files.begin(), files.end());
  for (const std::string& path : options.words) {
    try {
      Workbench bench;
      load_families(bench, options);
      const FileId file = bench.sources.add(path, read_file(path));
      read_description(bench.sources, file, bench.catalogue, bench.diagnostics, {},
                       file_opener(bench.sources));
      for (FileId id = 1; id <= bench.sources.size(); ++id) {
        if (!bench.sources.file(id).in_words) all.insert(bench.sources.file(id).path);
      }
    } catch (const std::runtime_error&) {
      continue;  // the command itself says what is wrong with it
    }
  }
  return {all.begin(), all.end()};
}

ExitStatus watch(const Options& options, const std::function<void()>& once) {
  const EndSignal end;
  SavedFiles files;
  for (bool first = true;; first = false) {
    // Watched before they are read: a save in between is then seen by the next wait.
    const std::vector<std::string> inputs = input_files(options);
    for (const std::string& path : inputs) files.add(path);
    if (files.none()) throw WorldError("cannot watch any longer: the folder of the files is gone");
    try {
      once();
    } catch (const UsageError& error) {
      if (first) throw;
      tell(options, format("plugward: error: {}\n", error.what()));
    } catch (const WorldError& error) {
      tell(options, format("plugward: error: {}\n", error.what()));
    }
    if (first)
      tell(options, format("plugward: watching {} {}; Ctrl-C ends it\n", inputs.size(),
                           inputs.size() == 1 ? "file" : "files"));
    std::set<std::string> saved;
    if (wait(files, end, saved) == Woken::Ended) return ExitStatus::Fine;
    tell(options, format("plugward: '{}' was saved\n",
                         join(std::vector<std::string>(saved.begin(), saved.end()), "', '")));
  }
}

}  // namespace plugward
