// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/data_folders_test.cpp and tests/cases/data-folders.
#include "cli/data_folders.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <system_error>

#include "base/edit_distance.h"
#include "base/file.h"
#include "base/format.h"

namespace plugward {
namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 6> inner_folders{
    "", "boards", "harnesses", "harnesses/standard", "harnesses/standard/boards", "families"};

bool is_there(const fs::path& path) {
  std::error_code ignored;
  return fs::exists(path, ignored);
}

bool is_folder(const fs::path& path) {
  std::error_code ignored;
  return fs::is_directory(path, ignored);
}

/// "a:b" as its folders; empty ones are left out, so that no stray ":" means the folder one stands in.
std::vector<std::string> split(std::string_view list) {
  std::vector<std::string> folders;
  while (!list.empty()) {
    const std::size_t end = std::min(list.find(':'), list.size());
    if (end > 0) folders.emplace_back(list.substr(0, end));
    list.remove_prefix(std::min(end + 1, list.size()));
  }
  return folders;
}

/// Nowhere else is to be looked.
bool explicit_path(std::string_view name) {
  return name.starts_with("/") || name.starts_with("./") || name.starts_with("../");
}

std::string found_in(const std::string& folder, const std::string& name) {
  const bool bare = name.find('/') == std::string::npos;
  for (const std::string_view inner : inner_folders) {
    const fs::path place = inner.empty() ? fs::path(folder) : fs::path(folder) / inner;
    if (is_there(place / name)) return (place / name).string();
    if (is_there(place / (name + ".xml"))) return (place / (name + ".xml")).string();
    if (!bare) break;
  }
  return "";
}

void add_ids(const fs::path& folder, std::set<std::string>& ids) {
  std::error_code error;
  fs::directory_iterator at(folder, error);
  for (; !error && at != fs::directory_iterator(); at.increment(error)) {
    if (at->path().extension() == ".xml") ids.insert(at->path().stem().string());
  }
}

/// The name that may have been meant: of the files beside it, or an id.
std::string near_name(const std::string& name, const std::vector<DataFolder>& folders) {
  const fs::path given(name);
  std::vector<std::string> candidates;
  std::error_code error;
  const fs::path beside = given.has_parent_path() ? given.parent_path() : fs::path(".");
  fs::directory_iterator at(beside, error);
  for (; !error && at != fs::directory_iterator(); at.increment(error)) {
    if (at->path().extension() == ".xml")
      candidates.push_back((given.parent_path() / at->path().filename()).string());
  }
  std::sort(candidates.begin(), candidates.end());
  if (!given.has_parent_path()) {
    for (std::string& id : known_ids(folders)) candidates.push_back(std::move(id));
  }
  return nearest(name, candidates);
}

std::string not_found(const std::string& name, const std::vector<DataFolder>& folders) {
  std::string text = format("cannot read '{}': No such file or directory", name);
  std::vector<std::string> looked;
  for (const DataFolder& folder : folders) {
    if (!explicit_path(name) && (folder.stated || is_folder(folder.path))) looked.push_back(folder.path);
  }
  if (!looked.empty()) text += format(", nor is it in '{}'", join(looked, "', '"));
  const std::string near = near_name(name, folders);
  return near.empty() ? text : text + format("; did you mean '{}'?", near);
}

}  // namespace

DataEnvironment read_data_environment() {
  const auto get = [](const char* name) {
    const char* const text = std::getenv(name);
    return std::string(text == nullptr ? "" : text);
  };
  std::error_code none;
  return {get("PLUGWARD_PATH"), get("XDG_DATA_HOME"), get("XDG_DATA_DIRS"), get("HOME"),
          fs::read_symlink("/proc/self/exe", none).string()};
}

std::vector<DataFolder> data_folders(const DataEnvironment& environment) {
  std::vector<DataFolder> folders;
  const auto add = [&folders](const fs::path& path, bool stated) {
    std::string text = path.lexically_normal().string();
    while (text.size() > 1 && text.back() == '/') text.pop_back();
    const auto same = [&](const DataFolder& other) { return other.path == text; };
    if (std::none_of(folders.begin(), folders.end(), same)) folders.push_back({text, stated});
  };
  for (const std::string& path : split(environment.path)) add(path, true);
  // The XDG Base Directory Specification 0.8: a path that is not absolute is to be ignored.
  if (environment.data_home.starts_with("/")) {
    add(fs::path(environment.data_home) / "plugward", false);
  } else if (!environment.home.empty()) {
    add(fs::path(environment.home) / ".local/share/plugward", false);
  }
  const std::string& dirs = environment.data_dirs;
  for (const std::string& path : split(dirs.empty() ? "/usr/local/share:/usr/share" : dirs)) {
    if (path.starts_with("/")) add(fs::path(path) / "plugward", false);
  }
  if (!environment.program.empty())
    add(fs::path(environment.program).parent_path() / ".." / "share/plugward", false);
  return folders;
}

std::string located(const std::string& name, const std::vector<DataFolder>& folders) {
  std::error_code error;
  const fs::file_status status = fs::status(name, error);
  // What is there, or cannot be looked at, is for the reader to take or to refuse.
  if (name.empty() || status.type() != fs::file_type::not_found) return name;
  if (!explicit_path(name)) {
    for (const DataFolder& folder : folders) {
      std::string path = found_in(folder.path, name);
      if (!path.empty()) return path;
    }
  }
  throw WorldError(not_found(name, folders));
}

std::vector<std::string> known_ids(const std::vector<DataFolder>& folders) {
  std::set<std::string> ids;
  for (const DataFolder& folder : folders) {
    for (const std::string_view inner : inner_folders) {
      add_ids(inner.empty() ? fs::path(folder.path) : fs::path(folder.path) / inner, ids);
    }
  }
  return {ids.begin(), ids.end()};
}

void locate_files(Options& options, const std::vector<DataFolder>& folders) {
  if (options.command->takes.files()) {
    for (std::string& word : options.words) word = located(word, folders);
  }
  for (std::string& path : options.families) path = located(path, folders);
  if (!options.to_board.empty()) options.to_board = located(options.to_board, folders);
  for (std::string& path : options.folders) {
    if (!is_there(path)) {
      for (const DataFolder& folder : folders) {
        const std::string inner = explicit_path(path) ? "" : found_in(folder.path, path);
        if (!inner.empty()) {
          path = inner;
          break;
        }
      }
    }
  }
}

}  // namespace plugward
