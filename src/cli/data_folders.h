// SPDX-License-Identifier: MIT
// Where a file is looked for that is not there under the name that was given: description files that plugward
// brings along, and a person's own, from any folder.
//
//   located("heron-m7", data_folders(read_data_environment()))   // "/usr/share/plugward/boards/heron-m7.xml"
//
// First what the person wrote, as it is; a name that begins with "/", "./" or "../" means nothing else. Then,
// in this order:
//   1. the folders of PLUGWARD_PATH, with ":" between them
//   2. $XDG_DATA_HOME/plugward, or ~/.local/share/plugward
//   3. plugward/ in each folder of $XDG_DATA_DIRS, or in /usr/local/share and /usr/share
//   4. share/plugward beside the folder of the program: what was installed with it
// In each, the name with or without ".xml"; an id without "/" also in the folders boards/, harnesses/,
// harnesses/standard/, harnesses/standard/boards/ and families/ of it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cli/options.h"

namespace plugward {

/// What the world says; "" where it says nothing.
struct DataEnvironment {
  std::string path;       ///< PLUGWARD_PATH
  std::string data_home;  ///< XDG_DATA_HOME
  std::string data_dirs;  ///< XDG_DATA_DIRS
  std::string home;       ///< HOME
  std::string program;    ///< the program's own file
};

DataEnvironment read_data_environment();

/// A folder to look in.
struct DataFolder {
  std::string path;
  bool stated = false;  ///< by PLUGWARD_PATH: named in messages even when it is not there
};

/// In the order of precedence, each once.
std::vector<DataFolder> data_folders(const DataEnvironment&);

/// The path of a file or folder under this name. Throws WorldError when there is none: "cannot read 'x': No
/// such file or directory, nor is it in '/usr/share/plugward'; did you mean 'y'?".
std::string located(const std::string& name, const std::vector<DataFolder>&);

/// Ids of the description files in the data folders, for a person to choose from; sorted.
std::vector<std::string> known_ids(const std::vector<DataFolder>&);

/// Files and folders that are read, replaced by where they are. Throws WorldError.
void locate_files(Options&, const std::vector<DataFolder>&);

}  // namespace plugward
