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

Counts counts_of(const Diagnostics& diagnostics, FileId file) {
  Counts counts;
  for (const Diagnostic& d : diagnostics.all()) {
    if (d.span.file == file) ++(d.severity == Severity::Error ? counts.errors : counts.warnings);
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
      format("board '{}': {}, {}", board.id, counted(board.headers.size(), "header"), counted(pins, "pin")),
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
  return with_unknown(format("harness '{}': {}, {}, {}", harness.id, counted(harness.plugs.size(), "plug"),
                             counted(leads, "lead"), counted(harness.devices.size(), "device")),
                      unknown);
}

std::string words_of(const Loom& loom, const LoomFiles* files, const Counts& counts) {
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
  const std::string what =
      with_unknown(format("loom '{}': {} harness{}, {} on headers, {} loose", loom.id, loom.harnesses.size(),
                          es, counted(seats(SeatState::OnHeader), "plug"), seats(SeatState::Loose)),
                   plugs > known ? plugs - known : 0);
  return format("{}; as it stands: {}", what,
                counts.warnings == 0 ? "nothing speaks against it" : counted(counts.warnings, "warning"));
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

std::string words_of(const LintedFile& file, const Counts& counts) {
  if (file.description.board) return words_of(*file.description.board);
  if (file.description.harness) return words_of(*file.description.harness);
  if (file.description.loom) {
    return words_of(*file.description.loom, file.description.loom_files.get(), counts);
  }
  if (counts.errors > 0) return counted(counts.errors, "error");
  return file.description.families ? "connector families" : "nothing read";
}

std::string_view kind_of(const LintedFile& file) {
  if (file.description.board) return "board";
  if (file.description.harness) return "harness";
  if (file.description.loom) return "loom";
  return file.description.families ? "families" : "";
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
  std::string text;
  for (const LintedFile& file : files) {
    text +=
        format("{}: {}\n", sources.file(file.file).path, words_of(file, counts_of(diagnostics, file.file)));
  }
  return text;
}

std::string lint_json(const Sources& sources, const std::vector<LintedFile>& files,
                      const Diagnostics& diagnostics) {
  Json json;
  json["format"] = "plugward-lint";
  json["version"] = 1;
  json["files"] = Json::array();
  for (const LintedFile& file : files) {
    const Counts counts = counts_of(diagnostics, file.file);
    Json one;
    one["file"] = sources.file(file.file).path;
    one["kind"] = text_or_null(kind_of(file));
    one["errors"] = counts.errors;
    one["warnings"] = counts.warnings;
    json["files"].push_back(one);
  }
  json["diagnostics"] = Json::array();
  for (const Diagnostic& d : diagnostics.all()) json["diagnostics"].push_back(diagnostic_json(sources, d));
  return json_text(json);
}

}  // namespace plugward
