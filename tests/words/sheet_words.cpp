// SPDX-License-Identifier: MIT
// Asks a sheet for its words.
//
//   sheet_words missing FILE.po ARGUMENTS...   // of plugward, from "sheet" on; prints what the catalogue
//   lacks sheet_words marked ARGUMENTS...            // the sheet, every text of the catalogue between U+27E6
//   and U+27E7
//
// What stands outside the marks is not the catalogue's: names from the files, numbers, codes - or forgotten.
#include <cstdio>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "cli/options.h"
#include "sheet/languages.h"

namespace {

using namespace plugward;

struct Text {
  std::string context, english;
  auto operator<=>(const Text&) const = default;
};

Outcome run(std::vector<std::string> arguments, const Language& language) {
  arguments.insert(std::next(arguments.begin()), {"--language", std::string(language.code())});
  auto parsed = parse_command_line(arguments, all_commands());
  const Options& options = std::get<Options>(parsed);
  Outcome outcome = options.command->run(options);
  speak(nullptr);
  return outcome;
}

std::set<Text> asked_in_vain(Language language, const std::vector<std::string>& arguments) {
  std::set<Text> missing;
  Language& kept = add_language(std::move(language));
  kept.on_missing([&](std::string_view context, std::string_view english) {
    missing.insert({std::string(context), std::string(english)});
  });
  run(arguments, kept);
  kept.on_missing({});
  return missing;
}

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c == '\n' ? "\\n" : std::string(1, c);
  }
  return out + "\"";
}

std::string header(std::string_view code) {
  return verbatim("msgid \"\"\nmsgstr \"Language: {}\\nPlural-Forms: nplurals=1; plural=0;\\n\"\n\n", code);
}

/// Every text that this sheet asks for, said as itself between two marks.
std::string marking(const std::set<Text>& texts) {
  std::string po = header("x-marked");
  for (const Text& text : texts) {
    if (!text.context.empty()) po += "msgctxt " + quoted(text.context) + "\n";
    po += "msgid " + quoted(text.english) + "\nmsgstr " + quoted("\u27E6" + text.english + "\u27E7") + "\n\n";
  }
  return po;
}

int missing(const std::string& file, const std::vector<std::string>& arguments) {
  PoReading read = parse_po(read_file(file));
  for (const PoFault& fault : read.faults) std::printf("%d: %s\n", fault.line, fault.message.c_str());
  if (!read.faults.empty()) return 1;
  const std::set<Text> texts = asked_in_vain(std::move(read.language), arguments);
  for (const Text& text : texts) std::printf("[%s] %s\n", text.context.c_str(), text.english.c_str());
  return texts.empty() ? 0 : 1;
}

int marked(const std::vector<std::string>& arguments) {
  const std::set<Text> texts = asked_in_vain(parse_po(header("x-none")).language, arguments);
  PoReading read = parse_po(marking(texts));
  for (const PoFault& fault : read.faults) std::printf("%d: %s\n", fault.line, fault.message.c_str());
  if (!read.faults.empty()) return 1;
  const Outcome outcome = run(arguments, add_language(std::move(read.language)));
  std::fwrite(outcome.product.data(), 1, outcome.product.size(), stdout);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + 1, argv + argc);
  if (words.size() > 2 && words[0] == "missing") return missing(words[1], {words.begin() + 2, words.end()});
  if (words.size() > 1 && words[0] == "marked") return marked({words.begin() + 1, words.end()});
  return 2;
}
