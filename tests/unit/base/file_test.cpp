// SPDX-License-Identifier: MIT
#include "base/file.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "support/full_disk.h"

using plugward::read_file;
using plugward::WorldError;
using plugward::write_file;
using plugward::support::FullDisk;

namespace {

namespace fs = std::filesystem;

/// A folder of its own that goes away with everything in it.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "file_test.XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    fs::permissions(path_, fs::perms::owner_all);
    fs::remove_all(path_);
  }
  std::string operator/(const std::string& name) const { return path_ + "/" + name; }
  std::size_t entries() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
  }
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

/// Root may write everywhere: while this lives, a root process acts as a plain user who owns `paths`.
class PlainUser {
 public:
  explicit PlainUser(const std::vector<std::string>& paths) : was_root_(::geteuid() == 0) {
    constexpr uid_t nobody = 65534;
    if (!was_root_) return;
    for (const std::string& path : paths) REQUIRE(::chown(path.c_str(), nobody, static_cast<gid_t>(-1)) == 0);
    REQUIRE(::seteuid(nobody) == 0);
  }
  PlainUser(const PlainUser&) = delete;
  PlainUser& operator=(const PlainUser&) = delete;
  ~PlainUser() {
    if (was_root_) CHECK(::seteuid(0) == 0);
  }

 private:
  bool was_root_;
};

template <class Action>
std::string failure_of(Action action) {
  try {
    action();
  } catch (const WorldError& error) {
    return error.what();
  }
  return "no failure";
}

}  // namespace

TEST_CASE("what is written is read back byte for byte") {
  const Folder folder;
  std::string every_byte;
  for (int i = 0; i < 100000; ++i) every_byte += static_cast<char>(i % 256);
  for (const std::string& bytes :
       {std::string(), std::string("x"), std::string("a\r\nb\0c", 6), every_byte}) {
    CAPTURE(bytes.size());
    write_file(folder / "f", bytes);
    CHECK((read_file(folder / "f") == bytes));
  }
  CHECK(folder.entries() == 1);
}

TEST_CASE("a file is replaced whole and keeps its permissions") {
  const Folder folder;
  write_file(folder / "f", "a long first text");
  REQUIRE(::chmod((folder / "f").c_str(), 0640) == 0);
  write_file(folder / "f", "short");
  CHECK(read_file(folder / "f") == "short");
  struct stat info {};
  REQUIRE(::stat((folder / "f").c_str(), &info) == 0);
  CHECK((info.st_mode & 07777) == 0640);
  CHECK(folder.entries() == 1);
}

TEST_CASE("a new file obeys the umask") {
  const Folder folder;
  const mode_t before = ::umask(027);
  write_file(folder / "f", "x");
  ::umask(before);
  struct stat info {};
  REQUIRE(::stat((folder / "f").c_str(), &info) == 0);
  CHECK((info.st_mode & 07777) == 0640);
}

TEST_CASE("a reader that has the old file open keeps the old text") {
  const Folder folder;
  write_file(folder / "f", "old");
  struct stat before {};
  struct stat after {};
  REQUIRE(::stat((folder / "f").c_str(), &before) == 0);
  // A second name holds the old file, as an open descriptor would.
  REQUIRE(::link((folder / "f").c_str(), (folder / "held").c_str()) == 0);
  write_file(folder / "f", "new");
  REQUIRE(::stat((folder / "f").c_str(), &after) == 0);
  CHECK(before.st_ino != after.st_ino);
  CHECK(read_file(folder / "held") == "old");
}

TEST_CASE("what cannot be read says which file and why") {
  const Folder folder;
  const std::string missing = folder / "missing";
  CHECK(failure_of([&] { read_file(missing); }) ==
        "cannot read '" + missing + "': No such file or directory");
  CHECK(failure_of([&] { read_file(folder.path()); }) ==
        "cannot read '" + folder.path() + "': Is a directory");
  write_file(folder / "f", "x");
  const std::string beneath = folder / "f/g";
  CHECK(failure_of([&] { read_file(beneath); }) == "cannot read '" + beneath + "': Not a directory");
}

TEST_CASE("a file beyond the limit is refused, one at the limit is read") {
  const Folder folder;
  const std::string name = folder / "f";
  const std::string two_mib(std::size_t{2} << 20, 'x');
  write_file(name, two_mib);
  CHECK(read_file(name, std::size_t{2} << 20).size() == two_mib.size());
  write_file(name, two_mib + "x");
  CHECK(failure_of([&] { read_file(name, std::size_t{2} << 20); }) ==
        "cannot read '" + name + "': larger than 2 MiB");
}

TEST_CASE("what cannot be written says which file and why") {
  const Folder folder;
  const std::string nowhere = folder / "missing/f";
  CHECK(failure_of([&] { write_file(nowhere, "x"); }) ==
        "cannot write '" + nowhere + "': No such file or directory");
  CHECK(failure_of([&] { write_file(folder.path(), "x"); }) ==
        "cannot write '" + folder.path() + "': Is a directory");
  CHECK(folder.entries() == 0);
}

TEST_CASE("a disk that fills up leaves the old file and nothing else") {
  const Folder folder;
  const std::string name = folder / "f";
  write_file(name, "old");
  std::string message;
  {
    const FullDisk full(4096);
    message = failure_of([&] { write_file(name, std::string(100000, 'x')); });
  }
  CHECK(message == "cannot write '" + name + "': File too large");
  CHECK(read_file(name) == "old");
  CHECK(folder.entries() == 1);
}

TEST_CASE("a folder or file that is read-only is left as it was") {
  const Folder folder;
  const std::string name = folder / "f";
  write_file(name, "old");
  const PlainUser user({folder.path(), name});
  fs::permissions(name, fs::perms::owner_read);
  CHECK(failure_of([&] { write_file(name, "new"); }) == "cannot write '" + name + "': Permission denied");
  fs::permissions(name, fs::perms::owner_all);
  fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
  CHECK(failure_of([&] { write_file(name, "new"); }) == "cannot write '" + name + "': Permission denied");
  CHECK(read_file(name) == "old");
  CHECK(folder.entries() == 1);
}

TEST_CASE("what is no plain file is written through, not replaced") {
  write_file("/dev/null", "x");
  struct stat info {};
  REQUIRE(::stat("/dev/null", &info) == 0);
  CHECK(S_ISCHR(info.st_mode));
  if (::access("/dev/full", F_OK) == 0) {
    CHECK(failure_of([] { write_file("/dev/full", "x"); }) ==
          "cannot write '/dev/full': No space left on device");
  }
}

TEST_CASE("a folder is locked by one at a time") {
  const Folder folder;
  const auto is_free = [&] {
    const int other = ::open(folder.path().c_str(), O_RDONLY | O_DIRECTORY);
    const bool got = ::flock(other, LOCK_EX | LOCK_NB) == 0;
    ::close(other);
    return got;
  };
  {
    const plugward::FolderLock lock(folder.path());
    CHECK_FALSE(is_free());
  }
  CHECK(is_free());
  const plugward::FolderLock none(folder / "missing");
}
