// SPDX-License-Identifier: MIT
// A command line, a word a line: it is refused with a whole message, or it runs on the files of a small
// machine and gives a product or diagnostics. Names of files in it are replaced, and nothing is written.
// Pictures are left out: the libraries that draw them are not built for fuzzing.
#include <algorithm>
#include <array>

#include "base/file.h"
#include "cli/options.h"
#include "texts.h"

namespace plugward::fuzz {
namespace {

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::string in_machine(std::string_view name) {
  return format("{}/tests/fuzz/machine/{}", PLUGWARD_SOURCE_DIR, name);
}

/// Whatever the word is, the one of the machine's files whose name begins most like it.
std::string some_file(const std::string& word) {
  constexpr std::array<std::string_view, 7> files{"board.xml", "other.xml", "probe.xml", "limit.xml",
                                                  "loom.xml",  "own.xml",   "faulty.xml"};
  std::string_view best = "nowhere.xml";
  std::ptrdiff_t most = 0;
  for (const std::string_view file : files) {
    const auto end = std::mismatch(file.begin(), file.end(), word.begin(), word.end()).first;
    if (end - file.begin() <= most) continue;
    most = end - file.begin();
    best = file;
  }
  return in_machine(best);
}

/// False for what this target does not run.
bool make_harmless(Options& options) {
  const std::string_view name = options.command->name;
  const bool pages = options.sheet_as != "text" && options.sheet_as != "markdown";
  if (name == "draw" || name == "labels" || (name == "sheet" && pages)) return false;
  if (options.words.size() > 6 || options.families.size() > 2 || options.folders.size() > 2) return false;
  if (name != "list" && name != "explain") {
    for (std::string& word : options.words) word = some_file(word);
  }
  for (std::string& family : options.families) family = some_file(family);
  for (std::string& folder : options.folders) folder = in_machine(folder.starts_with("x") ? "nowhere" : "");
  if (!options.to_board.empty()) options.to_board = some_file(options.to_board);
  options.record.clear();
  options.output.clear();
  options.threads = 1;
  return true;
}

void run(const std::vector<std::string>& words) {
  auto parsed = parse_command_line(words, all_commands());
  if (const auto* information = std::get_if<Information>(&parsed)) {
    must(!information->text.empty());
    return;
  }
  Options& options = std::get<Options>(parsed);
  if (!make_harmless(options)) return;
  const Outcome outcome = options.command->run(options);
  must(!outcome.product.empty() || !outcome.diagnostics.empty());
}

}  // namespace
}  // namespace plugward::fuzz

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  if (size > 1000 || text.find('\0') != text.npos) return 0;  // no argument holds a zero
  try {
    plugward::fuzz::run(plugward::fuzz::lines_of(text));
  } catch (const plugward::UsageError& error) {
    plugward::fuzz::must(*error.what() != '\0');
  } catch (const plugward::WorldError& error) {
    plugward::fuzz::must(*error.what() != '\0');
  }
  return 0;
}
