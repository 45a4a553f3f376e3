// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/lint_test.cpp.
#include "report/lint.h"

#include <algorithm>
#include <string_view>

#include "base/counted.h"
#include "base/format.h"
#include "report/json.h"
#include "report/words.h"

namespace plugward {
namespace {

struct Counts {
  std::size_t errors = 0;
  std::size_t warnings = 0;
};

/// By FileId.
std::vector<Counts> counts_of(const Sources& sources, const Diagnostics& diagnostics) {
  std::vector<Counts> counts(sources.size() + 1);
  for (const Diagnostic& d : diagnostics.all()) {
    Counts& own = counts[d.span.file];
    ++(d.severity == Severity::Error ? own.errors : own.warnings);
  }
  return counts;
}

std::string with_unknown(std::string text, std::size_t unknown) {
  return unknown == 0 ? text : format("{}, {} not known", text, unknown);
}

std::string words_of(const Board& board) {
  std::size_t pins = 0;
  std::size_t unknown = 0;
  for (const Header& header : board.headers) {
    pins += header.pins.size();
    unknown +=
        static_cast<std::size_t>(std::count_if(header.pins.begin(), header.pins.end(), [](const Pin& pin) {
          return pin.contest || pin.function == PinFunction::Unknown;
        }));
  }
  return with_unknown(
      format("board '{}': {}, {}", board.id, counted(board.headers.size(), "{} header", "{} headers"),
             counted(pins, "{} pin", "{} pins")),
      unknown);
}

std::string words_of(const Harness& harness) {
  std::size_t leads = 0;
  std::size_t unknown = 0;
  for (const Plug& plug : harness.plugs) {
    leads += plug.leads.size();
    unknown += static_cast<std::size_t>(
        std::count_if(plug.leads.begin(), plug.leads.end(), [](const Lead& lead) { return !lead.to; }));
  }
  return with_unknown(
      format("harness '{}': {}, {}, {}", harness.id, counted(harness.plugs.size(), "{} plug", "{} plugs"),
             counted(leads, "{} lead", "{} leads"),
             counted(harness.devices.size(), "{} device", "{} devices")),
      unknown);
}

std::string words_of(const Loom& loom, const LoomFiles* files) {
  const auto seats = [&](SeatState state) {
    return static_cast<std::size_t>(std::count_if(loom.seats.begin(), loom.seats.end(),
                                                  [&](const Seat& seat) { return seat.state == state; }));
  };
  std::size_t plugs = 0;
  if (files != nullptr) {
    for (const Harness& harness : files->harnesses) plugs += harness.plugs.size();
  }
  const std::size_t known = seats(SeatState::OnHeader) + seats(SeatState::Loose);
  const std::string_view es = loom.harnesses.size() == 1 ? "" : "es";
  return with_unknown(
      format("loom '{}': {} harness{}, {} on headers, {} loose", loom.id, loom.harnesses.size(), es,
             counted(seats(SeatState::OnHeader), "{} plug", "{} plugs"), seats(SeatState::Loose)),
      plugs > known ? plugs - known : 0);
}

/// The place in the loom that a finding is about: the seat of its plug, else the loom.
Span place_in_loom(const Loom& loom, const Fitting& fitting, const Finding& finding) {
  if (finding.first.file == loom.span.file) return finding.first;
  for (const FittedJumper& fitted : loom.jumpers) {
    const Jumper* jumper = fitting.board->jumper(fitted.jumper);
    if (jumper != nullptr && jumper->span.known() && jumper->span == finding.first) return fitted.jumper_span;
  }
  const int plug = plug_of_finding(fitting, finding);
  for (const Placement& placement : fitting.placements) {
    if (placement.plug != plug) continue;
    const std::string& header = header_at(fitting, placement.header).id;
    for (const Seat& seat : loom.seats) {
      if (seat.state == SeatState::OnHeader && seat.header == header) return seat.plug_span;
    }
  }
  return loom.id_span;
}

std::string told(const LintedFile& file, const Counts& counts) {
  if (file.words.empty() && counts.errors > 0) return counted(counts.errors, "{} error", "{} errors");
  if (file.words.empty()) return "nothing read";
  if (file.kind != "loom") return file.words;
  return format("{}; as it stands: {}", file.words,
                counts.warnings == 0 ? "nothing speaks against it"
                                     : counted(counts.warnings, "{} warning", "{} warnings"));
}

Json diagnostic_json(const Sources& sources, const Diagnostic& d) {
  Json json;
  json["rule"] = rule_info(d.rule).id;
  json["severity"] = d.severity == Severity::Error ? "error" : "warning";
  json["message"] = d.message;
  json["place"] = place(sources, d.span);
  json["notes"] = Json::array();
  for (const Note& note : d.notes) {
    Json one;
    one["message"] = note.message;
    one["place"] = place(sources, note.span);
    json["notes"].push_back(one);
  }
  json["helps"] = d.helps;
  return json;
}

}  // namespace

LintedFile linted(FileId file, const Description& description) {
  if (description.board) return {file, "board", words_of(*description.board)};
  if (description.harness) return {file, "harness", words_of(*description.harness)};
  if (description.loom) return {file, "loom", words_of(*description.loom, description.loom_files.get())};
  if (description.families) return {file, "families", "connector families"};
  return {file, "", ""};
}

void lint_loom(const Loom& loom, const Fitting& fitting, const Assessment& now, Diagnostics& diagnostics) {
  for (const Finding& finding : now.findings) {
    if (finding.weight == Weight::Note) continue;
    const std::string_view what = finding.weight == Weight::Harm    ? "harm"
                                  : finding.weight == Weight::Fault ? "fault"
                                                                    : "not known";
    const std::string when = finding.state.empty() ? "" : format(" (when {})", finding.state);
    Diagnostic& diagnostic = diagnostics.add(finding.rule, place_in_loom(loom, fitting, finding),
                                             format("as it stands, {}: {}{}", what, finding.message, when));
    diagnostic.severity = Severity::Warning;
    if (finding.first.known() && finding.first.file != loom.span.file) {
      diagnostic.note(finding.first, "it is about this");
    }
    if (finding.second.known()) diagnostic.note(finding.second, finding.second_says);
    if (finding.measurement) {
      diagnostic.help(format("{}: {}", finding.measurement->action, finding.measurement->expect));
    }
  }
}

std::string lint_text(const Sources& sources, const std::vector<LintedFile>& files,
                      const Diagnostics& diagnostics) {
  const std::vector<Counts> counts = counts_of(sources, diagnostics);
  std::string text;
  for (const LintedFile& file : files)
    text += verbatim("{}: {}\n", sources.file(file.file).path, told(file, counts[file.file]));
  return text;
}

std::string lint_json(const Sources& sources, const std::vector<LintedFile>& files,
                      const Diagnostics& diagnostics) {
  Json json;
  json["format"] = "plugward-lint";
  json["version"] = 1;
  json["files"] = Json::array();
  const std::vector<Counts> all_counts = counts_of(sources, diagnostics);
  for (const LintedFile& file : files) {
    const Counts& counts = all_counts[file.file];
    Json one;
    one["file"] = sources.file(file.file).path;
    one["kind"] = text_or_null(file.kind);
    one["errors"] = counts.errors;
    one["warnings"] = counts.warnings;
    json["files"].push_back(one);
  }
  json["diagnostics"] = Json::array();
  for (const Diagnostic& d : diagnostics.all()) json["diagnostics"].push_back(diagnostic_json(sources, d));
  return json_text(json);
}

}  // namespace plugward
