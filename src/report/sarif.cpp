// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/sarif_test.cpp, and in tests/cases against the schema of OASIS.
#include "report/sarif.h"

#include <algorithm>
#include <filesystem>

#include "base/format.h"
#include "report/json.h"

namespace plugward {
namespace {

constexpr std::string_view schema =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
constexpr std::string_view base_id = "FOLDER";

/// A message in which '{' stands for itself.
Json message(std::string_view text) {
  std::string escaped;
  for (const char c : text) {
    escaped += c;
    if (c == '{' || c == '}') escaped += c;
  }
  return {{"text", escaped}};
}

std::string_view level_of(Severity severity) {
  return severity == Severity::Error ? "error" : "warning";
}

std::string_view level_of(Weight weight) {
  switch (weight) {
    case Weight::Harm:
    case Weight::Fault:
      return "error";
    case Weight::Doubt:
      return "warning";
    case Weight::Note:
      return "note";
  }
  return "";
}

Json rules_json() {
  Json rules = Json::array();
  for (const RuleInfo& info : all_rules()) {
    const bool reading = info.kind == RuleKind::Reading;
    Json rule;
    rule["id"] = info.id;
    rule["shortDescription"] = message(info.summary);
    rule["fullDescription"] = message(info.why);
    rule["help"] =
        message(format("{}\n\nFor example: {}\n\nWhat to do: {}", info.why, info.example, info.cure));
    rule["defaultConfiguration"] = {{"level", level_of(info.severity)}};
    rule["properties"] = {{"tags", {reading ? "description" : "wiring"}}};
    rules.push_back(rule);
  }
  return rules;
}

std::size_t rule_index(Rule rule) {
  const auto rules = all_rules();
  return static_cast<std::size_t>(
      std::find_if(rules.begin(), rules.end(), [&](const RuleInfo& info) { return info.rule == rule; }) -
      rules.begin());
}

class Writer {
 public:
  Writer(const Sources& sources, const SarifOptions& options) : sources_(sources), options_(options) {}

  void add(Rule rule, std::string_view level, const std::string& text) {
    Json result;
    result["ruleId"] = rule_info(rule).id;
    result["ruleIndex"] = rule_index(rule);
    result["level"] = level;
    result["message"] = message(text);
    results_.push_back(std::move(result));
  }
  void at(Span span) {
    if (span.known()) results_.back()["locations"] = Json::array({{{"physicalLocation", physical(span)}}});
  }
  void related(Span span, const std::string& text) {
    if (!span.known()) return;
    Json& list = results_.back()["relatedLocations"];
    Json one;
    one["id"] = list.size() + 1;
    one["physicalLocation"] = physical(span);
    if (!text.empty()) one["message"] = message(text);
    list.push_back(one);
  }
  void fix(Span span, const std::string& inserted) {
    Json change;
    change["artifactLocation"] = location(span.file);
    change["replacements"] =
        Json::array({{{"deletedRegion", region(span)}, {"insertedContent", {{"text", inserted}}}}});
    Json one;
    one["description"] = message(format("write '{}'", inserted));
    one["artifactChanges"] = Json::array({change});
    results_.back()["fixes"] = Json::array({one});
  }

  std::string text(Json properties) {
    Json driver;
    driver["name"] = "plugward";
    driver["semanticVersion"] = options_.version;
    driver["rules"] = rules_json();
    Json run;
    run["tool"] = {{"driver", driver}};
    run["invocations"] = Json::array({{{"executionSuccessful", true}}});
    run["originalUriBaseIds"] = {
        {base_id, {{"description", message("the folder that plugward was run in")}}}};
    run["columnKind"] = "unicodeCodePoints";
    run["results"] = results_;
    if (!properties.is_null()) run["properties"] = std::move(properties);
    Json log;
    log["$schema"] = schema;
    log["version"] = "2.1.0";
    log["runs"] = Json::array({run});
    return json_text(log);
  }

 private:
  Json location(FileId file) const {
    const std::string uri = uri_of(sources_.file(file).path, options_.folder);
    Json json{{"uri", uri}};
    if (!uri.starts_with('/')) json["uriBaseId"] = base_id;
    return json;
  }
  Json region(Span span) const {
    const LineColumn begin = line_column(sources_, span.file, span.begin);
    const LineColumn end = line_column(sources_, span.file, span.end);
    Json json;
    json["startLine"] = begin.line;
    json["startColumn"] = begin.column;
    json["endLine"] = end.line;
    json["endColumn"] = end.column;
    return json;
  }
  Json physical(Span span) const {
    Json json;
    json["artifactLocation"] = location(span.file);
    json["region"] = region(span);
    return json;
  }

  const Sources& sources_;
  const SarifOptions& options_;
  Json results_ = Json::array();
};

/// What "did you mean 'x'?" offers; "" for none. A misspelt element has a second name at its end, so that
/// exchanging one of them would spoil the file.
std::string offered(const Diagnostic& d) {
  constexpr std::string_view begin = "did you mean '";
  constexpr std::string_view end = "'?";
  if (d.rule == Rule::UnknownElement) return "";
  for (const std::string& help : d.helps) {
    if (!help.starts_with(begin) || !help.ends_with(end)) continue;
    const std::string word = help.substr(begin.size(), help.size() - begin.size() - end.size());
    if (word.find_first_of("<>&\"'") == std::string::npos) return word;
  }
  return "";
}

}  // namespace

std::string uri_of(std::string_view path, std::string_view folder) {
  std::filesystem::path told(path);
  if (told.is_absolute() && !folder.empty()) told = told.lexically_relative(folder);
  std::string uri;
  for (const char c : told.lexically_normal().generic_string()) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       std::string_view("-._~/").find(c) != std::string_view::npos;
    uri +=
        plain ? std::string(1, c) : verbatim("%{:02X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
  }
  return uri;
}

std::string lint_sarif(const Sources& sources, const Diagnostics& diagnostics, const SarifOptions& options) {
  Writer writer(sources, options);
  for (const Diagnostic& d : diagnostics.all()) {
    std::string text = d.message;
    for (const Note& note : d.notes) {
      if (!note.span.known()) text += format("; {}", note.message);
    }
    for (const std::string& help : d.helps) text += format("; {}", help);
    writer.add(d.rule, level_of(d.severity), text);
    writer.at(d.span);
    for (const Note& note : d.notes) writer.related(note.span, note.message);
    const std::string word = offered(d);
    if (!word.empty() && d.span.known()) writer.fix(d.span, word);
  }
  return writer.text(nullptr);
}

std::string check_sarif(const Sources& sources, const Advice& advice, const SarifOptions& options) {
  Writer writer(sources, options);
  for (const Finding& finding : advice.now.findings) {
    std::string text = finding.message;
    if (!finding.state.empty()) text += format(" (when {})", finding.state);
    if (finding.measurement)
      text += format("; {}: {}", finding.measurement->action, finding.measurement->expect);
    writer.add(finding.rule, level_of(finding.weight), text);
    // A finding that the harness cannot help is shown at the board.
    writer.at(finding.first.known() ? finding.first : finding.second);
    if (finding.first.known()) writer.related(finding.second, finding.second_says);
  }
  return writer.text({{"verdict", to_word(advice.verdict)}, {"summary", advice.summary}});
}

}  // namespace plugward
