// SPDX-License-Identifier: MIT
// Tested in tests/unit/base/file_test.cpp.
#include "base/file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "base/format.h"

namespace plugward {
namespace {

/// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }
  int get() const { return fd_; }
  bool close() {
    const bool fine = fd_ < 0 || ::close(fd_) == 0;
    fd_ = -1;
    return fine;
  }

 private:
  int fd_;
};

[[noreturn]] void fail(std::string_view verb, const std::string& path, int error) {
  throw WorldError(format("cannot {} '{}': {}", verb, path, std::strerror(error)));
}

bool write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(fd, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

}  // namespace

std::string read_file(const std::string& path, std::size_t limit) {
  Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.get() < 0) fail("read", path, errno);
  struct stat info {};
  if (::fstat(file.get(), &info) != 0) fail("read", path, errno);
  if (S_ISDIR(info.st_mode)) fail("read", path, EISDIR);
  if (info.st_size > 0 && static_cast<std::size_t>(info.st_size) > limit) {
    throw WorldError(format("cannot read '{}': larger than {} MiB", path, limit >> 20));
  }
  // A file that tells its size is read in one go; others (pipes, /proc) until they end.
  const std::size_t size =
      S_ISREG(info.st_mode) && info.st_size > 0 ? static_cast<std::size_t>(info.st_size) : 0;
  std::string bytes(size > 0 ? size : 65536, '\0');
  std::size_t used = 0;
  while (size == 0 || used < size) {
    if (used > limit) {
      throw WorldError(format("cannot read '{}': larger than {} MiB", path, limit >> 20));
    }
    if (used == bytes.size()) bytes.resize(2 * used);
    const ssize_t n = ::read(file.get(), bytes.data() + used, bytes.size() - used);
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) fail("read", path, errno);
    if (n == 0) break;
    used += static_cast<std::size_t>(n);
  }
  bytes.resize(used);
  return bytes;
}

void write_file(const std::string& path, std::string_view bytes) {
  // A name that is not a plain file (a terminal, a pipe, /dev/stdout) cannot be replaced: write through it.
  struct stat info {};
  const bool exists = ::stat(path.c_str(), &info) == 0;
  if (exists && S_ISDIR(info.st_mode)) fail("write", path, EISDIR);
  if (exists && !S_ISREG(info.st_mode)) {
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (file.get() < 0 || !write_all(file.get(), bytes)) fail("write", path, errno);
    return;
  }
  if (exists && ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0) fail("write", path, errno);

  const std::size_t slash = path.rfind('/');
  const std::string folder = slash == std::string::npos ? "" : path.substr(0, slash + 1);
  std::string name = folder + ".plugward-XXXXXX";
  Descriptor file(::mkostemp(name.data(), O_CLOEXEC));
  if (file.get() < 0) fail("write", path, errno);
  const auto give_up = [&](int error) {
    ::unlink(name.c_str());
    fail("write", path, error);
  };
  const mode_t mask = ::umask(0);
  ::umask(mask);
  const mode_t mode = exists ? info.st_mode & 07777 : 0666 & ~mask;
  if (!write_all(file.get(), bytes) || ::fchmod(file.get(), mode) != 0) give_up(errno);
  if (::fsync(file.get()) != 0 && errno != EINVAL) give_up(errno);
  if (!file.close()) give_up(errno);
  if (::rename(name.c_str(), path.c_str()) != 0) give_up(errno);
}

FolderLock::FolderLock(const std::string& folder)
    : folder_(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  while (folder_ >= 0 && ::flock(folder_, LOCK_EX) != 0 && errno == EINTR) {
  }
}

FolderLock::~FolderLock() {
  if (folder_ >= 0) ::close(folder_);
}

}  // namespace plugward
