// SPDX-License-Identifier: MIT
// Tested in tests/cases/complete and tests/shell/completion_test.py.
#include "cli/complete.h"

#include <algorithm>
#include <array>
#include <filesystem>

#include "base/file.h"
#include "base/format.h"
#include "cli/choices.h"
#include "cli/load.h"
#include "cli/kinds.h"
#include "diag/rule.h"
#include "plan/symptom.h"

namespace plugward {
namespace {

/// The words up to the cursor, understood as far as they go.
struct Typed {
  const Command* command = nullptr;
  std::vector<OptionRow> rows;
  std::vector<std::string> words;  ///< that stand without an option
  std::string to_board;
  std::vector<std::string> families;
  std::vector<std::string> given;  ///< options
};

const OptionRow* row_of(const std::vector<OptionRow>& rows, std::string_view name) {
  for (const OptionRow& row : rows) {
    if (std::find(row.names.begin(), row.names.end(), name) != row.names.end()) return &row;
  }
  return nullptr;
}

void take_value(Typed& typed, const std::string& option, const std::string& value) {
  if (option == "--to") typed.to_board = value;
  if (option == "--families") typed.families.push_back(value);
}

/// What the files on the command line name.
class Names {
 public:
  Names(const Typed& typed, const std::vector<DataFolder>& folders) : folders_(folders) {
    add_builtin_families(bench_.catalogue);
    for (const std::string& path : typed.families) read(path);
    for (const std::string& path : typed.words) take(read(path));
    if (!typed.to_board.empty()) to_ = read(typed.to_board);
    if (bench_.loom) bench_.loom_bench = loom_bench(*bench_.loom, *bench_.loom_files);
    std::vector<const Harness*> all;
    for (const auto& harness : bench_.harnesses) all.push_back(harness.get());
    if (!all.empty()) bench_.harness = std::make_unique<Harness>(merged(all));
  }

  /// The board of --to, which --at and --jumper then speak of; else that of the files. nullptr: none.
  const Board* board() const {
    if (to_.board) return to_.board.get();
    if (bench_.board) return bench_.board.get();
    return bench_.loom ? &bench_.loom_files->board : nullptr;
  }
  const Harness* harness() const {
    if (bench_.harness) return bench_.harness.get();
    return bench_.loom ? &bench_.loom_bench.harness : nullptr;
  }

 private:
  Description read(const std::string& name) {
    try {
      const std::string path = located(name, folders_);
      if (!std::filesystem::is_regular_file(path)) return {};
      const FileId file = bench_.sources.add(path, read_file(path));
      return read_description(bench_.sources, file, bench_.catalogue, bench_.diagnostics, {},
                              file_opener(bench_.sources));
    } catch (const std::exception&) {
      return {};  // not yet typed to its end, perhaps
    }
  }

  void take(Description description) {
    if (description.board) bench_.board = std::move(description.board);
    if (description.harness) bench_.harnesses.push_back(std::move(description.harness));
    if (description.loom && description.loom_files) {
      bench_.loom = std::move(description.loom);
      bench_.loom_files = std::move(description.loom_files);
    }
  }

  const std::vector<DataFolder>& folders_;
  Workbench bench_;
  Description to_;
};

/// Gathers the lines; only words that go on from what was typed.
class Answer {
 public:
  /// `lead`: what stands before the value in the same word, "--at=".
  Answer(std::string typed, std::string lead) : typed_(std::move(typed)), lead_(std::move(lead)) {}

  void add(std::string_view word, std::string_view says = "") {
    if (!word.starts_with(typed_)) return;
    text_ += format("{}{}\t{}\n", lead_, word, says);
  }
  void ask(std::string_view shell) { text_ += format(":{}\n", shell); }
  const std::string& typed() const { return typed_; }
  std::string text() const { return text_; }

 private:
  std::string typed_, lead_, text_;
};

void add_ids_of_data(const std::vector<DataFolder>& folders, Answer& answer) {
  if (answer.typed().find('/') != std::string::npos) return;
  for (const std::string& id : known_ids(folders)) answer.add(id, "installed");
}

std::string plug_says(const Plug& plug) {
  return format("{} positions, {}", plug.positions, plug.family);
}

void plugs_with_equals(const Names& names, Answer& answer) {
  if (names.harness() == nullptr) return;
  for (const Plug& plug : names.harness()->plugs) answer.add(plug.id + "=", plug_says(plug));
  answer.ask("nospace");
}

void headers_of_plug(const Names& names, const std::string& plug, Answer& answer) {
  if (names.board() == nullptr) return;
  for (const Header& header : names.board()->headers)
    answer.add(format("{}={}", plug, header.id),
               format("{}, {} positions, {}", header.label.empty() ? header.use : header.label,
                      header.positions, header.family));
}

void jumpers(const Names& names, Answer& answer) {
  if (names.board() == nullptr) return;
  for (const Jumper& jumper : names.board()->jumpers) {
    for (const std::string& rail : jumper.rails) answer.add(format("{}={}", jumper.id, rail), jumper.label);
  }
}

void value_of(const OptionRow& row, const Typed& typed, const std::vector<DataFolder>& folders,
              Answer& answer) {
  for (const std::string& word : row.words) answer.add(word);
  if (!row.words.empty()) return;
  const std::string& name = row.names.back();
  const std::size_t equals = answer.typed().find('=');
  if (row.value == "DIR") {
    answer.ask("folders");
  } else if (row.value == "BOARD" || name == "--families") {
    answer.ask("xml");
    if (row.value == "BOARD") add_ids_of_data(folders, answer);
  } else if (row.value == "FILE") {
    answer.ask("files");
  } else if (name == "--at" && equals != std::string::npos) {
    headers_of_plug(Names(typed, folders), answer.typed().substr(0, equals), answer);
  } else if (name == "--at" || (name == "--seen" && equals == std::string::npos)) {
    plugs_with_equals(Names(typed, folders), answer);
  } else if (name == "--jumper") {
    jumpers(Names(typed, folders), answer);
  } else if (name == "--plug") {
    const Names names(typed, folders);
    if (names.harness() == nullptr) return;
    for (const Plug& plug : names.harness()->plugs) answer.add(plug.id, plug_says(plug));
  } else if (name == "--symptom") {
    for (const SymptomWords& one : all_symptoms()) answer.add(one.word, one.sees);
  }
}

void list_words(const Typed& typed, Answer& answer) {
  if (typed.words.empty()) {
    for (const std::string_view topic : list_topics) answer.add(topic);
  } else if (typed.words.size() == 1 && typed.words[0] == "families") {
    Catalogue catalogue;
    add_builtin_families(catalogue);
    for (const std::string& id : catalogue.ids()) answer.add(id, catalogue.find(id)->title);
  }
}

void plain_word(const Typed& typed, const std::vector<DataFolder>& folders, Answer& answer) {
  const Takes& takes = typed.command->takes;
  if (static_cast<int>(typed.words.size()) >= takes.most) return;
  if (takes.files()) {
    answer.ask("xml");
    add_ids_of_data(folders, answer);
  } else if (takes.words == "WHAT") {
    list_words(typed, answer);
  } else if (takes.words == "KIND" && typed.words.empty()) {
    for (const DeviceKind& kind : all_kinds()) answer.add(kind.word, kind.title);
    answer.add("board", "a board, by its headers");
  } else if (takes.words == "RULE") {
    for (const RuleInfo& rule : all_rules()) answer.add(rule.id, rule.summary);
  }
}

std::string commands_of(std::span<const Command> commands, const std::string& typed) {
  Answer answer(typed, "");
  for (const Command& command : commands) answer.add(command.name, command.description);
  if (typed.starts_with("-")) {
    answer.add("--help", "all commands");
    answer.add("--version", "its version");
  }
  return answer.text();
}

}  // namespace

std::string completions(const std::vector<std::string>& words, std::span<const Command> commands,
                        const std::vector<DataFolder>& folders) {
  if (words.size() <= 1) return commands_of(commands, words.empty() ? "" : words.front());
  Typed typed;
  for (const Command& command : commands) {
    if (command.name == words.front()) typed.command = &command;
  }
  if (typed.command == nullptr) {
    return words.front() == "help" && words.size() == 2 ? commands_of(commands, words.back()) : "";
  }
  typed.rows = option_rows(*typed.command);

  const OptionRow* waiting = nullptr;  // an option whose value comes next
  for (std::size_t i = 1; i + 1 < words.size(); ++i) {
    const std::string& word = words[i];
    if (waiting != nullptr) {
      take_value(typed, waiting->names.back(), word);
      waiting = nullptr;
      continue;
    }
    const std::size_t equals = word.starts_with("--") ? word.find('=') : std::string::npos;
    const OptionRow* row = row_of(typed.rows, word.substr(0, equals));
    if (row == nullptr) {
      if (!word.starts_with("-")) typed.words.push_back(word);
      continue;
    }
    typed.given.push_back(row->names.back());
    if (equals != std::string::npos) take_value(typed, row->names.back(), word.substr(equals + 1));
    if (equals == std::string::npos && !row->value.empty()) waiting = row;
  }

  const std::string& current = words.back();
  const std::size_t equals = current.starts_with("--") ? current.find('=') : std::string::npos;
  if (waiting == nullptr && equals != std::string::npos) {
    waiting = row_of(typed.rows, current.substr(0, equals));
    if (waiting == nullptr) return "";
    Answer answer(current.substr(equals + 1), current.substr(0, equals + 1));
    value_of(*waiting, typed, folders, answer);
    return answer.text();
  }
  Answer answer(current, "");
  if (waiting != nullptr) {
    value_of(*waiting, typed, folders, answer);
  } else if (current.starts_with("-")) {
    for (const OptionRow& row : typed.rows) {
      const bool again = row.repeats || std::find(typed.given.begin(), typed.given.end(), row.names.back()) ==
                                            typed.given.end();
      if (again) answer.add(row.names.back(), row.says);
    }
  } else {
    plain_word(typed, folders, answer);
  }
  return answer.text();
}

}  // namespace plugward
