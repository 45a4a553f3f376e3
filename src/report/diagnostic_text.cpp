// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/diagnostic_text_test.cpp.
#include "report/diagnostic_text.h"

#include <algorithm>
#include <map>
#include <string_view>

#include "base/counted.h"
#include "base/format.h"
#include "base/utf8.h"

namespace plugward {
namespace {

enum class Ink { Bold, Red, Magenta, Cyan, Green };

std::string_view escape_of(Ink ink) {
  switch (ink) {
    case Ink::Bold:
      return "\x1b[1m";
    case Ink::Red:
      return "\x1b[1;31m";
    case Ink::Magenta:
      return "\x1b[1;35m";
    case Ink::Cyan:
      return "\x1b[1;36m";
    case Ink::Green:
      return "\x1b[1;32m";
  }
  return "";
}

bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 || byte == 0x7F;
}

bool starts_code_point(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

/// Control characters from a file must not reach a terminal: one '?' each, tabs only where they may stay.
std::string harmless(std::string_view text, bool keep_tabs) {
  std::string safe(text);
  for (char& c : safe) {
    if (is_control(c) && !(keep_tabs && c == '\t')) c = '?';
  }
  return safe;
}

class Writer {
 public:
  Writer(const Sources& sources, const DiagnosticTextOptions& options)
      : sources_(sources), options_(options) {}

  void diagnostic(const Diagnostic& d) {
    const bool error = d.severity == Severity::Error;
    heading(d.span, error ? "error" : "warning", error ? Ink::Red : Ink::Magenta, d.message,
            rule_info(d.rule).id);
    excerpt(d.span);
    for (const Note& note : d.notes) {
      heading(note.span, "note", Ink::Cyan, note.message, "");
      excerpt(note.span);
    }
    for (const std::string& help : d.helps) heading({}, "help", Ink::Cyan, help, "");
  }
  void line(std::string_view text) {
    text_ += text;
    text_ += '\n';
  }
  std::string take() { return std::move(text_); }

 private:
  std::string inked(Ink ink, std::string_view text) const {
    if (!options_.colour) return std::string(text);
    return format("{}{}\x1b[0m", escape_of(ink), text);
  }

  void heading(Span span, std::string_view severity, Ink ink, std::string_view message,
               std::string_view rule) {
    if (span.known()) text_ += inked(Ink::Bold, harmless(place_name(sources_, span), false) + ":") + " ";
    text_ += inked(ink, format("{}:", severity)) + " " + harmless(message, false);
    if (!rule.empty()) text_ += format(" [{}]", rule);
    text_ += '\n';
  }

  /// The source line, and under it '^' and '~' up to the end of the span on that line.
  void excerpt(Span span) {
    if (!span.known() || sources_.file(span.file).in_words) return;
    const Line source = line_at(sources_, span.file, span.begin);
    if (first_invalid_utf8(source.text) || count_code_points(source.text) > options_.widest) return;
    const std::size_t begin =
        std::min<std::size_t>(span.begin - std::min(span.begin, source.begin), source.text.size());
    const std::size_t end =
        std::clamp<std::size_t>(span.end - std::min(span.end, source.begin), begin, source.text.size());
    line(harmless(source.text, true));
    for (const char c : source.text.substr(0, begin)) {
      if (starts_code_point(c)) text_ += c == '\t' ? '\t' : ' ';
    }
    const std::size_t width =
        std::max<std::size_t>(count_code_points(source.text.substr(begin, end - begin)), 1);
    line(inked(Ink::Green, "^" + std::string(width - 1, '~')));
  }

  const Sources& sources_;
  const DiagnosticTextOptions& options_;
  std::string text_;
};

}  // namespace

std::string diagnostics_summary(const Diagnostics& diagnostics) {
  return format("{}, {}", counted(diagnostics.errors(), "{} error", "{} errors"),
                counted(diagnostics.warnings(), "{} warning", "{} warnings"));
}

std::string diagnostics_text(const Sources& sources, const Diagnostics& diagnostics,
                             const DiagnosticTextOptions& options) {
  if (diagnostics.all().empty()) return "";
  Writer writer(sources, options);
  std::map<Rule, std::size_t> seen;
  for (const Diagnostic& d : diagnostics.all()) {
    const bool capped = options.per_rule != 0 && d.severity == Severity::Error;
    if (++seen[d.rule] > options.per_rule && capped) continue;
    writer.diagnostic(d);
  }
  for (const RuleInfo& rule : all_rules()) {
    const auto count = seen.find(rule.rule);
    if (count == seen.end() || rule.severity != Severity::Error) continue;
    if (options.per_rule == 0 || count->second <= options.per_rule) continue;
    writer.line(format("... and {} more [{}]", count->second - options.per_rule, rule.id));
  }
  writer.line(diagnostics_summary(diagnostics));
  return writer.take();
}

}  // namespace plugward
