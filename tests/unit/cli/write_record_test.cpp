// SPDX-License-Identifier: MIT
#include "cli/write_record.h"

#include <doctest/doctest.h>

#include <filesystem>

#include "base/file.h"
#include "base/format.h"
#include "support/full_disk.h"

using namespace plugward;

namespace {

/// A folder of this test's own, which is gone at the end.
struct Folder {
  std::string path = std::string(PLUGWARD_BINARY_DIR) + "/write_record_test";
  Folder() { std::filesystem::remove_all(path); }
  ~Folder() { std::filesystem::remove_all(path); }
  std::string operator/(const std::string& name) const { return path + "/" + name; }
};

std::string error_of(const std::vector<RecordFile>& files) {
  try {
    write_record(files);
  } catch (const WorldError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("a record is written, and written once more without harm") {
  const Folder folder;
  const std::vector<RecordFile> files = {{folder / "refit/kite.xml", "one"},
                                         {folder / "refit/loom.xml", "two"}};
  CHECK(error_of(files).empty());
  CHECK(read_file(folder / "refit/kite.xml") == "one");
  CHECK(read_file(folder / "refit/loom.xml") == "two");
  CHECK(error_of(files).empty());
}

TEST_CASE("what is there stays: nothing at all is written") {
  const Folder folder;
  CHECK(error_of({{folder / "loom.xml", "old"}}).empty());
  CHECK(error_of({{folder / "kite.xml", "one"}, {folder / "loom.xml", "new"}}) ==
        format("cannot write '{}': it is there already, with other contents; record into an empty folder",
               folder / "loom.xml"));
  CHECK(read_file(folder / "loom.xml") == "old");
  CHECK_FALSE(std::filesystem::exists(folder / "kite.xml"));
  std::filesystem::create_directory(folder / "bed.xml");
  CHECK(error_of({{folder / "bed.xml", "one"}}) ==
        format("cannot write '{}': it is there already, with other contents; record into an empty folder",
               folder / "bed.xml"));
}

TEST_CASE("a folder that cannot be made") {
  const Folder folder;
  CHECK(error_of({{folder / "a", "file"}}).empty());
  CHECK(error_of({{folder / "a/loom.xml", "x"}}) ==
        format("cannot make folder '{}': Not a directory", folder / "a"));
}

TEST_CASE("a record of which a part cannot be written leaves nothing") {
  const Folder folder;
  std::filesystem::create_directory(folder.path);
  const std::vector<RecordFile> files = {{folder / "a/b/kite.xml", "one"},
                                         {folder / "a/loom.xml", std::string(100000, 'x')}};
  std::string said;
  {
    const support::FullDisk full(4096);
    said = error_of(files);
  }
  CHECK(said == format("cannot write '{}': File too large", folder / "a/loom.xml"));
  CHECK(std::filesystem::is_empty(folder.path));

  // What was there before stays.
  CHECK(error_of({files.front()}).empty());
  {
    const support::FullDisk full(4096);
    CHECK(error_of(files) == said);
  }
  CHECK(read_file(folder / "a/b/kite.xml") == "one");
  CHECK_FALSE(std::filesystem::exists(folder / "a/loom.xml"));
}
