// SPDX-License-Identifier: MIT
#include "cli/find_files.h"

#include <doctest/doctest.h>

#include <stdlib.h>

#include <filesystem>

#include "base/file.h"

using namespace plugward;
namespace fs = std::filesystem;

TEST_CASE("find files: .xml to the depth, in the order of bytes, each once") {
  std::string name = (fs::temp_directory_path() / "find_files-XXXXXX").string();
  REQUIRE(::mkdtemp(name.data()) != nullptr);
  for (const char* path :
       {"b.xml", "a/z.xml", "a/b/c.xml", "a-1.xml", "notes.txt", "B.xml", "xml", "x.xml.bak"}) {
    fs::create_directories((fs::path(name) / path).parent_path());
    write_file((fs::path(name) / path).string(), "<x/>");
  }
  fs::create_directories(fs::path(name) / "folder.xml");
  fs::create_directory_symlink(name, fs::path(name) / "a" / "round");
  const std::vector<std::string> expected{name + "/B.xml", name + "/a-1.xml", name + "/a/b/c.xml",
                                          name + "/a/z.xml", name + "/b.xml"};
  CHECK(description_files({name}) == expected);
  CHECK(description_files({name, name}) == expected);
  CHECK(description_files({name + "/a/z.xml"}) == std::vector<std::string>{name + "/a/z.xml"});
  std::string what;
  try {
    description_files({name + "/none"});
  } catch (const WorldError& error) {
    what = error.what();
  }
  CHECK(what == "cannot read folder '" + name + "/none': No such file or directory");
  fs::remove_all(name);
}
