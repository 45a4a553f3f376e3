// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/lint_test.cpp.
#include "report/lint.h"

#include <algorithm>
#include <string_view>

#include "base/format.h"
#include "report/json.h"

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

std::string counted(std::size_t count, std::string_view word) {
  return format("{} {}{}", count, word, count == 1 ? "" : "s");
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

std::string words_of(const LintedFile& file, const Counts& counts) {
  if (file.description.board) return words_of(*file.description.board);
  if (file.description.harness) return words_of(*file.description.harness);
  if (counts.errors > 0) return counted(counts.errors, "error");
  return file.description.families ? "connector families" : "nothing read";
}

std::string_view kind_of(const LintedFile& file) {
  if (file.description.board) return "board";
  if (file.description.harness) return "harness";
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
