// SPDX-License-Identifier: MIT
#include "cli/data_folders.h"

#include <doctest/doctest.h>
#include <stdlib.h>

#include <filesystem>
#include <string>
#include <vector>

#include "base/file.h"

namespace plugward {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> paths_of(const DataEnvironment& environment) {
  std::vector<std::string> paths;
  for (const DataFolder& folder : data_folders(environment))
    paths.push_back(folder.path + (folder.stated ? " (stated)" : ""));
  return paths;
}

/// A folder of the test's own; the test stands in it.
class Scratch {
 public:
  Scratch() : before_(fs::current_path()) {
    std::string name = (fs::temp_directory_path() / "data_folders-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw WorldError("no scratch folder");
    path_ = fs::canonical(name).string();
    fs::current_path(path_);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  ~Scratch() {
    fs::current_path(before_);
    fs::remove_all(path_);
  }
  void put(const std::string& file) const {
    fs::create_directories((fs::path(path_) / file).parent_path());
    write_file(path_ + "/" + file, "<x/>");
  }
  std::string operator/(const std::string& name) const { return path_ + "/" + name; }

 private:
  fs::path before_;
  std::string path_;
};

std::string fault_of(const std::string& name, const std::vector<DataFolder>& folders) {
  try {
    return "found " + located(name, folders);
  } catch (const WorldError& error) {
    return error.what();
  }
}

}  // namespace

TEST_CASE("data folders: their order") {
  CHECK(paths_of({"/a:/b/", "/h/data", "/x:/y", "/h", "/opt/p/bin/plugward"}) ==
        std::vector<std::string>{"/a (stated)", "/b (stated)", "/h/data/plugward", "/x/plugward",
                                 "/y/plugward", "/opt/p/share/plugward"});
  // XDG Base Directory Specification 0.8: the defaults.
  CHECK(paths_of({"", "", "", "/h", ""}) == std::vector<std::string>{"/h/.local/share/plugward",
                                                                     "/usr/local/share/plugward",
                                                                     "/usr/share/plugward"});
  // The same specification: paths that are not absolute are ignored.
  CHECK(paths_of({"", "data", "x:/y", "/h", ""}) ==
        std::vector<std::string>{"/h/.local/share/plugward", "/y/plugward"});
  CHECK(paths_of({"mine::/b:", "/d", "/usr/share", "", "/usr/bin/plugward"}) ==
        std::vector<std::string>{"mine (stated)", "/b (stated)", "/d/plugward", "/usr/share/plugward"});
}

TEST_CASE("data folders: each place is found when those before it do not have the file") {
  const Scratch scratch;
  const std::vector<DataFolder> folders =
      data_folders({scratch / "one" + ":" + (scratch / "two"), scratch / "home", scratch / "sys", "",
                    scratch / "opt/bin/plugward"});
  const std::vector<std::string> places{"opt/share/plugward/boards/b.xml",
                                        "sys/plugward/b.xml",
                                        "home/plugward/harnesses/standard/b.xml",
                                        "two/harnesses/b.xml",
                                        "one/families/b.xml",
                                        "one/b.xml"};
  for (const std::string& place : places) {  // from the last to the first
    scratch.put(place);
    CHECK(fault_of("b", folders) == "found " + (scratch / place));
    CHECK(fault_of("b.xml", folders) == "found " + (scratch / place));
  }
  scratch.put("b.xml");
  CHECK(fault_of("b.xml", folders) == "found b.xml");
  CHECK(fault_of("b", folders) == "found " + (scratch / "one/b.xml"));
}

TEST_CASE("data folders: a path with a slash is looked for as a whole, an explicit one nowhere else") {
  const Scratch scratch;
  scratch.put("data/boards/b.xml");
  const std::vector<DataFolder> folders = data_folders({scratch / "data", "/none", "/none", "", ""});
  CHECK(fault_of("boards/b.xml", folders) == "found " + (scratch / "data/boards/b.xml"));
  CHECK(fault_of("boards/b", folders) == "found " + (scratch / "data/boards/b.xml"));
  CHECK(fault_of("boards", folders) == "found " + (scratch / "data/boards"));
  CHECK(fault_of("harnesses/b.xml", folders) ==
        "cannot read 'harnesses/b.xml': No such file or directory, nor is it in '" + (scratch / "data") +
            "'");
  CHECK(fault_of("./boards/b.xml", folders) == "cannot read './boards/b.xml': No such file or directory");
  CHECK(fault_of("./../none/b.xml", folders) == "cannot read './../none/b.xml': No such file or directory");
  CHECK(fault_of("/b.xml", folders) == "cannot read '/b.xml': No such file or directory");
}

TEST_CASE("data folders: what is not found says where was looked and what may be meant") {
  const Scratch scratch;
  scratch.put("data/boards/heron-m7.xml");
  scratch.put("own/kite.xml");
  const std::string data = scratch / "data", none = scratch / "none";
  const std::vector<DataFolder> folders = data_folders({none + ":" + data, "/none", "/none", "", ""});
  CHECK(fault_of("heron-m8", folders) == "cannot read 'heron-m8': No such file or directory, nor is it in '" +
                                             none + "', '" + data + "'; did you mean 'heron-m7'?");
  CHECK(fault_of("own/kites.xml", {}) ==
        "cannot read 'own/kites.xml': No such file or directory; did you mean 'own/kite.xml'?");
  CHECK(known_ids(folders) == std::vector<std::string>{"heron-m7"});
}

TEST_CASE("data folders: options that name files and folders, and no others") {
  const Scratch scratch;
  scratch.put("data/boards/b.xml");
  scratch.put("data/harnesses/h.xml");
  const std::vector<DataFolder> folders = data_folders({scratch / "data", "/none", "/none", "", ""});
  const auto options_of = [&](const std::vector<std::string>& arguments) {
    Options options = std::get<Options>(parse_command_line(arguments, all_commands()));
    locate_files(options, folders);
    return options;
  };
  const Options swap = options_of({"swap", "h", "--to", "b", "--record", "b"});
  CHECK(swap.words == std::vector<std::string>{scratch / "data/harnesses/h.xml"});
  CHECK(swap.to_board == scratch / "data/boards/b.xml");
  CHECK(swap.record == "b");
  const Options find = options_of({"find", "h", "--in", "boards", "--in", "none", "--families", "b"});
  CHECK(find.folders == std::vector<std::string>{scratch / "data/boards", "none"});
  CHECK(find.families == std::vector<std::string>{scratch / "data/boards/b.xml"});
  CHECK(options_of({"explain", "b"}).words == std::vector<std::string>{"b"});
  CHECK(options_of({"list", "b"}).words == std::vector<std::string>{"b"});
}

}  // namespace plugward
