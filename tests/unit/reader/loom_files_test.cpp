// SPDX-License-Identifier: MIT
// A loom with the files that it names, all in memory.
#include <doctest/doctest.h>

#include <map>

#include "reader_support.h"

namespace plugward::test {
namespace {

/// A folder in memory that knows what was asked of it.
struct Folder {
  std::map<std::string, std::string> files;
  std::vector<std::string> asked;
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  Description description;

  Folder() {
    files["boards/b.xml"] = header_around("<pin n=\"2\" function=\"ground\"/>");
    files["h.xml"] = harness_around(
        "<device id=\"d\" use=\"probe\"><terminal id=\"T\"/></device>"
        "<plug id=\"p\" family=\"pin-2.54\" positions=\"4\"><lead cavity=\"2\" colour=\"RD\" "
        "to=\"T\"/></plug>");
  }

  void read(const std::string& inside, const ReaderLimits& limits = {}) {
    const std::string text = format(
        "<loom id=\"l\" title=\"L\" board=\"../boards/b.xml\" evidence=\"e\"><evidence id=\"e\" "
        "kind=\"photograph\"/>\n{}</loom>",
        inside);
    add_builtin_families(catalogue);
    const FileId file = sources.add("looms/l.xml", text);
    const OpenFile open = [&](const std::string& path, std::size_t limit) -> OpenedFile {
      asked.push_back(path);
      const auto found = files.find(path.starts_with("looms/") ? path.substr(6) : path);
      if (found == files.end()) return {0, format("cannot read '{}': no such file", path)};
      if (found->second.size() > limit) return {0, format("cannot read '{}': too large", path)};
      return {sources.add(path, found->second), ""};
    };
    description = read_description(sources, file, catalogue, diagnostics, limits, open);
  }

  /// "path:1:5 message [rule] (helps); " of each diagnostic.
  std::string faults() const {
    std::string text;
    for (const Diagnostic& d : diagnostics.all()) {
      text += format("{} {} [{}]", place_name(sources, d.span), d.message, rule_info(d.rule).id);
      for (const std::string& help : d.helps) text += format(" ({})", help);
      text += "; ";
    }
    return text;
  }
};

struct Row {
  const char* name;
  const char* inside;
  const char* faults;
};

const Row rows[] = {
    {"a jumper that the board does not have",
     "<harness id=\"a\" file=\"h.xml\"/><fitted jumper=\"JP3\" rail=\"5V\"/>",
     "looms/l.xml:2:47 board 'b' has no jumper 'JP3' [undeclared-reference] (did you mean 'JP2'?); "},
    {"a position that the jumper does not have",
     "<harness id=\"a\" file=\"h.xml\"/><fitted jumper=\"JP2\" rail=\"3V3\"/>",
     "looms/l.xml:2:58 jumper 'JP2' has no position '3V3' [undeclared-reference] (it has: 5V, 24V); "},
    {"headers that the board does not have",
     "<harness id=\"a\" file=\"h.xml\"/><seat plug=\"a/p\" header=\"J2\"/><free header=\"J3\"/>",
     "looms/l.xml:2:56 board 'b' has no header 'J2' [undeclared-reference] (did you mean 'J1'?); "
     "looms/l.xml:2:75 board 'b' has no header 'J3' [undeclared-reference] (did you mean 'J1'?); "},
    {"a plug that the harness does not have", "<harness id=\"a\" file=\"h.xml\"/><loose plug=\"a/plug\"/>",
     "looms/l.xml:2:44 harness 'a' has no plug 'plug' [undeclared-reference] (it has: p); "},
    {"leads that the plug does not have",
     "<harness id=\"a\" file=\"h.xml\"/><loose plug=\"a/p\" leads=\"1 2 - -\"/>",
     "looms/l.xml:2:56 leads: plug 'p' has no lead in cavity 1 [undeclared-reference]; "},
    {"too few cavities", "<harness id=\"a\" file=\"h.xml\"/><loose plug=\"a/p\" leads=\"2 -\"/>",
     "looms/l.xml:2:56 leads: 2 cavities are named, and plug 'p' has 4 [position-range]; "},
    {"files that are not there, or are something else",
     "<harness id=\"a\" file=\"g.xml\"/><harness id=\"b\" file=\"../boards/b.xml\"/><harness id=\"c\" "
     "file=\"l.xml\"/><harness id=\"d\" file=\"x.xml\"/>",
     "looms/l.xml:2:23 cannot read 'looms/g.xml': no such file [unreadable-file] (files are looked for from "
     "the "
     "folder of the loom); "
     "looms/l.xml:2:53 'boards/b.xml' is a board, not a harness [wrong-root]; "
     "looms/l.xml:2:93 'looms/l.xml' is a loom, not a harness [wrong-root]; "
     "looms/l.xml:2:123 the root of 'looms/x.xml' is 'x', not 'harness' [wrong-root]; "},
    {"faults of the files themselves, with those of the loom",
     "<harness id=\"a\" file=\"bad.xml\"/><seat plug=\"a/q\" header=\"J9\"/>",
     "looms/l.xml:2:58 board 'b' has no header 'J9' [undeclared-reference] (did you mean 'J1'?); "
     "looms/bad.xml:1:2 harness 'x' needs 'title' [missing-attribute] (add title=\"...\"); "
     "looms/bad.xml:1:2 the harness has no 'plug' [missing-element] (describe each housing of the harness as "
     "a "
     "'plug' with its leads); "},
};

}  // namespace

TEST_CASE("a loom and its files: every fault in one run, each at its place") {
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Folder folder;
    folder.files["l.xml"] = "<loom id=\"l\" title=\"L\" board=\"b.xml\"/>";
    folder.files["x.xml"] = "<x/>";
    folder.files["bad.xml"] = "<harness id=\"x\"/>";
    folder.read(row.inside);
    CHECK(folder.faults() == row.faults);
    CHECK(folder.description.loom == nullptr);
    CHECK(folder.description.loom_files == nullptr);
  }
}

TEST_CASE("one file may be several harnesses; it is opened once and no other file is") {
  Folder folder;
  folder.read(
      "<harness id=\"a\" file=\"h.xml\"/><harness id=\"b\" file=\"./h.xml\"/>"
      "<seat plug=\"a/p\" header=\"J1\" leads=\"- - 2 -\" note=\"secret.xml\"/><loose plug=\"b/p\"/>");
  CHECK(folder.faults().empty());
  CHECK(folder.asked == std::vector<std::string>{"boards/b.xml", "looms/h.xml"});
  REQUIRE(folder.description.loom_files);
  const LoomFiles& files = *folder.description.loom_files;
  CHECK(files.board.id == "b");
  REQUIRE(files.harnesses.size() == 2);
  CHECK(files.harnesses[0].id == "a");
  CHECK(files.harnesses[1].id == "b");
  CHECK(files.harnesses[0].plugs[0].leads[0].cavity == 2);  // as the file says
}

TEST_CASE("all files of a loom together have a limit") {
  Folder folder;
  ReaderLimits limits;
  limits.loom_bytes = folder.files["boards/b.xml"].size() + 10;
  folder.read("<harness id=\"a\" file=\"h.xml\"/>", limits);
  CHECK(folder.faults() ==
        "looms/l.xml:2:23 cannot read 'looms/h.xml': too large [unreadable-file] (files are looked for from "
        "the folder of the loom) (the files that a loom names may have " +
            std::to_string(limits.loom_bytes) + " bytes together; 10 were left for this one); ");
}

}  // namespace plugward::test
