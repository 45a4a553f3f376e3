// SPDX-License-Identifier: MIT
// The log is checked against the schema of OASIS in tests/cases.
#include "report/sarif.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

using namespace plugward;

TEST_CASE("paths become relative references") {
  struct Row {
    const char *path, *folder, *uri;
  };
  const Row rows[] = {
      {"boards/a.xml", "/home/me", "boards/a.xml"},
      {"./boards//a.xml", "/home/me", "boards/a.xml"},
      {"../a b.xml", "/home/me", "../a%20b.xml"},
      {"/home/me/m/a.xml", "/home/me", "m/a.xml"},
      {"/home/you/a.xml", "/home/me", "../you/a.xml"},
      {"/home/me/a.xml", "", "/home/me/a.xml"},
      {"c:x#1?%.xml", "/", "c%3Ax%231%3F%25.xml"},
      {"gr\xC3\xBC\xC3\x9F.xml", "/", "gr%C3%BC%C3%9F.xml"},
      {"a\nb.xml", "/", "a%0Ab.xml"},
  };
  for (const Row& row : rows) CHECK(uri_of(row.path, row.folder) == row.uri);
}

TEST_CASE("a diagnostic as a result") {
  Sources sources;
  const FileId file = sources.add("a b.xml", "<rail volts='5 V'\n limt='\xC3\xBC'/>\n");
  Diagnostics diagnostics;
  diagnostics.add(Rule::UnknownAttribute, {file, 19, 23}, "unknown attribute '{limt}'")
      .note({file, 1, 5}, "of this")
      .note({}, "a fact")
      .help("did you mean 'limit'?")
      .help("or leave it out");
  diagnostics.add(Rule::UnknownElement, {file, 1, 5}, "unknown element").help("did you mean 'jumper'?");
  diagnostics.add(Rule::BadWord, {}, "no place").help("did you mean 'a<b'?");
  const auto log = nlohmann::json::parse(lint_sarif(sources, diagnostics, {"1.2.3", "/x"}));
  CHECK(log["version"] == "2.1.0");
  const auto& run = log["runs"][0];
  CHECK(run["tool"]["driver"]["semanticVersion"] == "1.2.3");
  CHECK(run["columnKind"] == "unicodeCodePoints");
  const auto& rules = run["tool"]["driver"]["rules"];
  CHECK(rules.size() == all_rules().size());
  REQUIRE(run["results"].size() == 3);
  const auto& first = run["results"][0];
  CHECK(first["ruleId"] == "unknown-attribute");
  CHECK(rules[first["ruleIndex"].get<std::size_t>()]["id"] == "unknown-attribute");
  CHECK(first["level"] == "error");
  CHECK(first["message"]["text"] ==
        "unknown attribute '{{limt}}'; a fact; did you mean 'limit'?; or leave it out");
  const auto& place = first["locations"][0]["physicalLocation"];
  CHECK(place["artifactLocation"] == nlohmann::json{{"uri", "a%20b.xml"}, {"uriBaseId", "FOLDER"}});
  CHECK(place["region"] ==
        nlohmann::json{{"startLine", 2}, {"startColumn", 2}, {"endLine", 2}, {"endColumn", 6}});
  CHECK(first["relatedLocations"].size() == 1);
  CHECK(first["relatedLocations"][0]["message"]["text"] == "of this");
  const auto& change = first["fixes"][0]["artifactChanges"][0];
  CHECK(change["replacements"][0]["insertedContent"]["text"] == "limit");
  CHECK(change["replacements"][0]["deletedRegion"] == place["region"]);
  // An element has its name twice: exchanging one of the two would spoil the file.
  CHECK(!run["results"][1].contains("fixes"));
  CHECK(!run["results"][2].contains("fixes"));
  CHECK(!run["results"][2].contains("locations"));
}
