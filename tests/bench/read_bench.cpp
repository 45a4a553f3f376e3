// SPDX-License-Identifier: MIT
// How long reading takes, meaning included, compared with pugixml's own load of the same files. Bar: at most
// 2.5 times, both with reading the files, in one process. Built with PLUGWARD_BENCH, run by hand:
//
//   cmake --preset bench && cmake --build --preset bench && build/bench/tests/bench/read_bench [files]
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "reader/descriptions.h"
#include "support/bench_row.h"

namespace {

/// Processor time of this process, system calls included: what else the machine does does not count.
double milliseconds() {
  return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

/// A board of about 8 kB, as people write them: comments, evidence, logic pins with many figures.
std::string board_text(int number) {
  std::string text = plugward::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<board xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" "
      "xsi:noNamespaceSchemaLocation=\"board.xsd\"\n"
      "       id=\"bench-{}\" title=\"Bench board\" revision=\"B\" width=\"110 mm\" height=\"85 mm\" "
      "evidence=\"print\">\n"
      "  <evidence id=\"print\" kind=\"board-print\" revision=\"B\" date=\"2026-03-02\" note=\"read off the "
      "board\"/>\n"
      "  <rail id=\"24V\" volts=\"21.6..26.4 V\" limit=\"10 A\"/>\n  <rail id=\"5V\" volts=\"4.75..5.25 V\" "
      "limit=\"1.5 A\"/>\n"
      "  <rail id=\"3V3\" volts=\"3.2..3.4 V\" limit=\"0.3 A\"/>\n  <jumper id=\"JP2\" label=\"PROBE V\" "
      "rails=\"5V 24V\"/>\n",
      number);
  for (int header = 1; text.size() < 8000; ++header) {
    text += plugward::format(
        "  <!-- Motor and limit switch of one axis. -->\n"
        "  <header id=\"M{0}\" label=\"MOTOR {0}\" use=\"motor\" family=\"xh-2.50\" positions=\"4\" x=\"61 "
        "mm\" y=\"8 mm\" rotation=\"90\">\n"
        "    <pin n=\"1\" function=\"coil\" coil=\"1\" end=\"A\" rail=\"24V\" limit=\"1.8 A\"/>\n"
        "    <pin n=\"2\" function=\"coil\" coil=\"1\" end=\"B\" rail=\"24V\" limit=\"1.8 A\"/>\n"
        "    <pin n=\"3\" function=\"coil\" coil=\"2\" end=\"A\" rail=\"24V\" limit=\"1.8 A\"/>\n"
        "    <pin n=\"4\" function=\"coil\" coil=\"2\" end=\"B\" rail=\"24V\" limit=\"1.8 A\"/>\n  "
        "</header>\n"
        "  <header id=\"L{0}\" label=\"LIMIT {0}\" use=\"limit\" family=\"xh-2.50\" positions=\"3\" x=\"12.5 "
        "mm\" y=\"8 mm\">\n"
        "    <pin n=\"1\" function=\"supply\" jumper=\"JP2\" label=\"V\"/>\n    <pin n=\"2\" "
        "function=\"ground\" label=\"G\"/>\n"
        "    <pin n=\"3\" function=\"input\" signal=\"limit\" rail=\"3V3\" withstands=\"-0.3..5.5 V\" "
        "withstands-unpowered=\"3.6 V\" "
        "low-below=\"0.8 V\" high-above=\"2 V\" pull=\"up\" pull-ohms=\"10 kohm\" label=\"S\" "
        "net=\"PB{0}\"/>\n  </header>\n",
        header);
  }
  return text + "</board>\n";
}

std::vector<std::string> write_boards(const std::filesystem::path& folder, int count) {
  std::vector<std::string> paths;
  for (int i = 0; i < count; ++i) {
    paths.push_back((folder / plugward::format("board-{}.xml", i)).string());
    plugward::write_file(paths.back(), board_text(i));
  }
  return paths;
}

double load_all(const std::vector<std::string>& paths) {
  const double begin = milliseconds();
  for (const std::string& path : paths) {
    pugi::xml_document document;
    if (!document.load_file(path.c_str())) std::abort();
  }
  return milliseconds() - begin;
}

/// Like for like: pugixml's document is dropped after each file, and so are the text and the board here.
double read_all(const std::vector<std::string>& paths, const plugward::Catalogue& builtin) {
  plugward::Catalogue catalogue = builtin;
  const double begin = milliseconds();
  for (const std::string& path : paths) {
    plugward::Sources sources;
    plugward::Diagnostics diagnostics;
    const plugward::FileId file = sources.add(path, plugward::read_file(path));
    if (!plugward::read_description(sources, file, catalogue, diagnostics).board) std::abort();
  }
  return milliseconds() - begin;
}

}  // namespace

int main(int argc, char** argv) {
  const int count = argc > 1 ? std::atoi(argv[1]) : 2000;
  std::string name = (std::filesystem::temp_directory_path() / "read_bench-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) return 1;
  const std::filesystem::path folder = name;
  const std::vector<std::string> paths = write_boards(folder, count);
  plugward::Catalogue catalogue;
  plugward::add_builtin_families(catalogue);
  // Best of several runs, taken turn by turn.
  double load = 1e9;
  double read = 1e9;
  for (int run = 0; run < 15; ++run) {
    load = std::min(load, load_all(paths));
    read = std::min(read, read_all(paths, catalogue));
  }
  plugward::test::bench_row(
      plugward::format("reading {} boards of {} bytes, with meaning", count, board_text(0).size()),
      "pugixml's own load of them", read / load, "at most 2.5");
  plugward::test::bench_detail(
      plugward::format("{:.1f} us a board; pugixml {:.1f} us", 1e3 * read / count, 1e3 * load / count));
  std::filesystem::remove_all(folder);
}
