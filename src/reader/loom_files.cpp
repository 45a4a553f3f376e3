// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/loom_files_test.cpp.
#include <algorithm>
#include <map>
#include <optional>

#include "base/format.h"
#include "reader/board_reader.h"
#include "reader/harness_reader.h"
#include "reader/loom_reader.h"
#include "reader/schema_link.h"

namespace plugward {
namespace {

/// What a file held that a loom names; empty when it could not be read.
struct Named {
  std::unique_ptr<Board> board;
  std::unique_ptr<Harness> harness;
};

std::string_view kind_of_root(std::string_view root) {
  if (root == "families") return "a file of connector families";
  return root == "board" ? "a board" : root == "harness" ? "a harness" : root == "loom" ? "a loom" : "";
}

/// Opens the files of one loom, each once.
class Files {
 public:
  Files(const Reading& reading, const Sources& sources, const OpenFile& open)
      : reading_(reading), sources_(sources), open_(open), left_(reading.limits.loom_bytes) {}

  /// `root` is what the file must be: "board" or "harness".
  const Named& get(const std::string& path, std::string_view root, Span named_at) {
    const auto [found, fresh] = read_.try_emplace({path, std::string(root)});
    if (fresh) found->second = read(path, root, named_at);
    return found->second;
  }

 private:
  Named read(const std::string& path, std::string_view root, Span named_at) {
    const OpenedFile opened = open_(path, std::min(left_, reading_.limits.bytes));
    if (opened.file == 0) {
      Diagnostic& fault = reading_.fault(Rule::UnreadableFile, named_at, opened.error);
      fault.help("files are looked for from the folder of the loom");
      if (left_ < reading_.limits.bytes) {
        fault.help(format("the files that a loom names may have {} bytes together; {} were left for this one",
                          reading_.limits.loom_bytes, left_));
      }
      return {};
    }
    left_ -= std::min(left_, sources_.file(opened.file).text.size());
    Diagnostics found;
    Named named = read_text(opened.file, path, root, named_at, found);
    if (found.has_errors()) named = {};
    for (const Diagnostic& diagnostic : found.all()) {
      Diagnostic& added = reading_.diagnostics.add(diagnostic.rule, diagnostic.span, diagnostic.message);
      added.notes = diagnostic.notes;
      added.helps = diagnostic.helps;
    }
    return named;
  }

  Named read_text(FileId file, const std::string& path, std::string_view root, Span named_at,
                  Diagnostics& found) const {
    Named named;
    const auto tree = read_tree(sources_, file, reading_.limits, found);
    if (!tree) return named;
    const std::string_view is = tree->node(0).name;
    if (is != root) {
      const std::string_view kind = kind_of_root(is);
      found.add(Rule::WrongRoot, named_at,
                kind.empty() ? format("the root of '{}' is '{}', not '{}'", path, is, root)
                             : format("'{}' is {}, not a {}", path, kind, root));
      return named;
    }
    const Reading inner{*tree, reading_.catalogue, found, reading_.limits};
    check_schema_link(inner);
    if (root == "board") {
      named.board = read_board(inner);
    } else {
      named.harness = read_harness(inner);
    }
    return named;
  }

  const Reading& reading_;
  const Sources& sources_;
  const OpenFile& open_;
  std::size_t left_;
  std::map<std::pair<std::string, std::string>, Named> read_;
};

template <class T>
std::vector<std::string_view> ids_of(const std::vector<T>& list) {
  std::vector<std::string_view> ids;
  for (const T& one : list) ids.push_back(one.id);
  return ids;
}

void check_jumper(const Reading& reading, const FittedJumper& fitted, const Board& board) {
  const Jumper* jumper = board.jumper(fitted.jumper);
  if (jumper == nullptr) {
    Diagnostic& diagnostic = reading.fault(Rule::UndeclaredReference, fitted.jumper_span,
                                           format("board '{}' has no jumper '{}'", board.id, fitted.jumper));
    suggest(diagnostic, fitted.jumper, ids_of(board.jumpers), "it has");
    return;
  }
  const auto& rails = jumper->rails;
  if (fitted.rail.empty() || std::find(rails.begin(), rails.end(), fitted.rail) != rails.end()) return;
  Diagnostic& diagnostic = reading.fault(Rule::UndeclaredReference, fitted.rail_span,
                                         format("jumper '{}' has no position '{}'", jumper->id, fitted.rail));
  diagnostic.note(jumper->span, "the jumper is declared here");
  const std::vector<std::string_view> names(rails.begin(), rails.end());
  suggest(diagnostic, fitted.rail, names, "it has");
}

void check_header(const Reading& reading, const std::string& id, Span place, const Board& board) {
  if (board.header(id) != nullptr) return;
  suggest(
      reading.fault(Rule::UndeclaredReference, place, format("board '{}' has no header '{}'", board.id, id)),
      id, ids_of(board.headers), "it has");
}

void check_leads(const Reading& reading, const Seat& seat, const Plug& plug) {
  if (seat.leads.empty()) return;
  const auto tell = [&](Rule rule, std::string message) {
    reading.fault(rule, seat.leads_span, std::move(message)).note(plug.span, "the plug is declared here");
  };
  if (static_cast<int>(seat.leads.size()) != plug.positions) {
    tell(Rule::PositionRange, format("leads: {} cavities are named, and plug '{}' has {}", seat.leads.size(),
                                     plug.id, plug.positions));
    return;
  }
  for (const int lead : seat.leads) {
    if (lead == 0 || plug.lead_in(lead) != nullptr) continue;
    tell(Rule::UndeclaredReference, format("leads: plug '{}' has no lead in cavity {}", plug.id, lead));
  }
}

void check_seat(const Reading& reading, const Seat& seat, const Harness& harness) {
  const Plug* plug = harness.plug(seat.plug);
  if (plug != nullptr) {
    check_leads(reading, seat, *plug);
    return;
  }
  Diagnostic& diagnostic = reading.fault(Rule::UndeclaredReference, seat.plug_span,
                                         format("harness '{}' has no plug '{}'", seat.harness, seat.plug));
  diagnostic.note(harness.span, "the harness is declared here");
  suggest(diagnostic, seat.plug, ids_of(harness.plugs), "it has");
}

}  // namespace

void check_loom(const Reading& reading, const Loom& loom, const Board* board,
                const std::vector<const Harness*>& harnesses) {
  if (board != nullptr) {
    for (const FittedJumper& fitted : loom.jumpers) check_jumper(reading, fitted, *board);
    for (const Seat& seat : loom.seats) {
      if (seat.state == SeatState::OnHeader) check_header(reading, seat.header, seat.header_span, *board);
    }
    for (const LoomHeader& header : loom.headers) {
      check_header(reading, header.header, header.header_span, *board);
    }
  }
  std::map<std::string_view, const Harness*> by_id;
  for (std::size_t i = 0; i < harnesses.size(); ++i) by_id[loom.harnesses[i].id] = harnesses[i];
  for (const Seat& seat : loom.seats) {
    const Harness* harness = by_id[seat.harness];
    if (harness != nullptr) check_seat(reading, seat, *harness);
  }
}

std::unique_ptr<LoomFiles> read_loom_files(const Reading& reading, const Sources& sources, const Loom& loom,
                                           const OpenFile& open) {
  const std::string& loom_path = sources.file(reading.tree.file()).path;
  Files files(reading, sources, open);
  const Board* board = nullptr;
  if (!loom.board.empty()) {
    board = files.get(file_of_loom(loom_path, loom.board), "board", loom.board_span).board.get();
  }
  std::vector<const Harness*> harnesses;
  bool whole = board != nullptr;
  for (const LoomHarness& one : loom.harnesses) {
    const Harness* harness = nullptr;
    if (!one.file.empty()) {
      harness = files.get(file_of_loom(loom_path, one.file), "harness", one.file_span).harness.get();
    }
    harnesses.push_back(harness);
    whole = whole && harness != nullptr;
  }
  check_loom(reading, loom, board, harnesses);
  if (!whole) return nullptr;
  auto result = std::make_unique<LoomFiles>();
  result->board = *board;
  for (std::size_t i = 0; i < harnesses.size(); ++i) {
    result->harnesses.push_back(*harnesses[i]);
    result->harnesses.back().id = loom.harnesses[i].id;
  }
  return result;
}

}  // namespace plugward
