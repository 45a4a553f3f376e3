// SPDX-License-Identifier: MIT
// Files are read whole and written whole or not at all.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace plugward {

/// The world failed: a file cannot be read or written. Caught once, in main; exit status 2.
/// The message is complete: "cannot read 'x.xml': No such file or directory".
class WorldError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// The whole file as bytes. Throws WorldError when it cannot be read or is larger than `limit` bytes.
std::string read_file(const std::string& path, std::size_t limit = std::size_t{64} << 20);

/// Writes `bytes` to a new file beside `path` and renames it over `path`, so that a reader sees the old
/// file or the whole new one. On failure nothing is left behind. Throws WorldError.
void write_file(const std::string& path, std::string_view bytes);

/// While it lives, other runs that lock the same folder wait. Where that cannot be had (a file system without
/// locks, a folder that cannot be read) nobody waits.
class FolderLock {
 public:
  explicit FolderLock(const std::string& folder);  ///< "": the working folder
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  ~FolderLock();

 private:
  int folder_;
};

}  // namespace plugward
