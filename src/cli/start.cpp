// SPDX-License-Identifier: MIT
// start: a new description from a few words, or by question and answer on a terminal. Tested in tests/cases
// and tests/shell/dialogue_test.py.
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include "base/file.h"
#include "base/format.h"
#include "base/utf8.h"
#include "cli/dialogue.h"
#include "cli/draft_board.h"
#include "cli/evidence_date.h"

namespace plugward {
namespace {

constexpr std::string_view example = "plugward start leds --seen RD,GN,WH --pitch 2.54 -o my-leds.xml";

/// The name of the file that is to be written, as an id; "" when it cannot be one.
std::string id_of_output(const Options& options) {
  if (options.to_stdout()) return "";
  const std::string stem = std::filesystem::path(options.output).stem().string();
  const bool fine =
      !stem.empty() && stem.size() <= 40 && stem[0] != '-' && stem[0] != '_' && stem[0] != '.' &&
      stem[0] != '+' &&
      stem.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.+") ==
          std::string::npos;
  return fine ? stem : "";
}

void refuse_overwriting(const Options& options) {
  std::error_code ignored;
  if (options.to_stdout() || options.replace) return;
  if (std::filesystem::exists(std::filesystem::symlink_status(options.output, ignored))) {
    throw WorldError(
        format("cannot write '{}': it is there already; '--replace' writes over it", options.output));
  }
}

std::string ask_on_terminal(const Options& options, const std::string& question) {
  options.stream_err(format("{}\n> ", question));
  std::string line;
  if (!std::getline(std::cin, line)) throw UsageError("no more answers came; nothing was written");
  const std::size_t begin = line.find_first_not_of(" \t\r");
  if (begin == std::string::npos) return "";
  return printable(line.substr(begin, line.find_last_not_of(" \t\r") - begin + 1));
}

CableDraft cable(const Options& options) {
  const std::string kind = options.words.empty() ? "" : options.words.front();
  if (options.words.size() > 1)
    throw UsageError(
        format("'{}' is one word too many; more than one goes with 'start board'", options.words[1]));
  if (kind.empty() || options.seen_list.empty()) {
    if (::isatty(STDIN_FILENO) == 0) {
      if (!kind.empty() && find_kind(kind) == nullptr) read_draft(kind, "?");  // throws: no such kind
      throw UsageError(format("'start' needs {}, as in '{}'; kinds are {}, and board",
                              kind.empty() ? "a kind of device and the colours seen" : "the colours seen",
                              example, kind_words()));
    }
    return ask_draft(
        {kind, options.seen_list, options.housing, options.view_given ? options.view : "", options.known},
        [&](const std::string& question) { return ask_on_terminal(options, question); });
  }
  CableDraft draft = read_draft(kind, options.seen_list);
  draft.view = read_view(options.view);
  if (!options.housing.empty()) draft.family = read_housing(options.housing);
  for (const NamedValue& one : options.known) draft.known.push_back(read_known(*draft.kind, one));
  return draft;
}

std::string board(const Options& options) {
  BoardDraft draft;
  if (options.words.size() < 2) {
    throw UsageError(
        "'start board' needs the board's headers, as in 'plugward start board J5:xh-2.50:3 J6:?:2:fan'");
  }
  if (!options.seen_list.empty() || !options.known.empty() || !options.housing.empty())
    throw UsageError("'--seen', '--known' and '--pitch' are of a cable; a board is told by its headers");
  for (std::size_t i = 1; i < options.words.size(); ++i)
    draft.headers.push_back(read_header_word(options.words[i]));
  const std::string id = id_of_output(options);
  draft.id = !options.id.empty() ? options.id : id.empty() ? "board" : id;
  draft.title = options.title.empty() ? "Board not described yet" : options.title;
  draft.date = evidence_date(options.date);
  return board_draft_text(draft);
}

}  // namespace

Outcome run_start(const Options& options) {
  refuse_overwriting(options);
  std::string text;
  if (!options.words.empty() && options.words.front() == "board") {
    text = board(options);
  } else {
    CableDraft draft = cable(options);
    if (const std::string id = id_of_output(options); !id.empty()) draft.id = id;
    if (!options.id.empty()) draft.id = options.id;
    if (!options.title.empty()) draft.title = options.title;
    draft.date = evidence_date(options.date);
    text = draft_text(draft);
  }
  check_text(text);
  return {ExitStatus::Fine, std::move(text), ""};
}

}  // namespace plugward
