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

void make_folder_of(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) return;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) throw WorldError(format("cannot make folder '{}': {}", folder.string(), error.message()));
}

}  // namespace

void write_record(const std::vector<RecordFile>& files) {
  std::vector<const RecordFile*> missing;
  for (const RecordFile& file : files) {
    if (!is_written(file)) missing.push_back(&file);
  }
  for (const RecordFile* file : missing) {
    make_folder_of(file->path);
    write_file(file->path, file->text);
  }
}

}  // namespace plugward
