// SPDX-License-Identifier: MIT
// The description files of folders.
#pragma once

#include <string>
#include <vector>

namespace plugward {

/// Every file whose name ends in ".xml", in these folders to their depth; a file may be named in place of a
/// folder. In the order of the bytes of their paths, each once. Links to folders are not followed. Throws
/// WorldError when a folder cannot be read.
std::vector<std::string> description_files(const std::vector<std::string>& folders);

}  // namespace plugward
