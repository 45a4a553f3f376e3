// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/write_record_test.cpp.
#include "cli/write_record.h"

#include <filesystem>
#include <system_error>

#include "base/file.h"
#include "base/format.h"

namespace plugward {
namespace {

/// True when the file is there with these bytes.
bool is_written(const RecordFile& file) {
  std::error_code error;
  if (!std::filesystem::exists(std::filesystem::symlink_status(file.path, error))) return false;
  if (std::filesystem::is_regular_file(file.path, error) && read_file(file.path) == file.text) return true;
  throw WorldError(format(
      "cannot write '{}': it is there already, with other contents; record into an empty folder", file.path));
}

/// What was made so far; taken away again unless it is kept.
class Made {
 public:
  Made() = default;
  Made(const Made&) = delete;
  Made& operator=(const Made&) = delete;
  ~Made() {
    std::error_code ignored;  // a folder in which somebody else has put something stays
    for (auto path = paths_.rbegin(); path != paths_.rend(); ++path) std::filesystem::remove(*path, ignored);
  }
  void keep() { paths_.clear(); }

  void folder_of(const std::string& path) {
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    std::filesystem::path so_far;
    for (const std::filesystem::path& part : folder) {
      so_far /= part;
      std::error_code error;
      if (std::filesystem::create_directory(so_far, error)) paths_.push_back(so_far);
      std::error_code ignored;
      if (!error || std::filesystem::is_directory(so_far, ignored)) continue;
      if (std::filesystem::exists(so_far, ignored)) error = std::make_error_code(std::errc::not_a_directory);
      throw WorldError(format("cannot make folder '{}': {}", folder.string(), error.message()));
    }
  }

  void file(const RecordFile& file) {
    write_file(file.path, file.text);
    paths_.emplace_back(file.path);
  }

 private:
  std::vector<std::filesystem::path> paths_;
};

}  // namespace

void write_record(const std::vector<RecordFile>& files) {
  Made folders;
  for (const RecordFile& file : files) folders.folder_of(file.path);
  // Two runs into one folder would mix their files. What cannot stay is taken away before the next run
  // begins.
  const FolderLock lock(files.empty() ? "" : std::filesystem::path(files.back().path).parent_path().string());
  std::vector<const RecordFile*> missing;
  for (const RecordFile& file : files) {
    if (!is_written(file)) missing.push_back(&file);
  }
  Made made;
  for (const RecordFile* file : missing) made.file(*file);
  made.keep();
  folders.keep();
}

}  // namespace plugward
