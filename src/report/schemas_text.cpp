// SPDX-License-Identifier: MIT
// Tested in tests/cases/list-schemas.
#include "base/format.h"
#include "report/json.h"
#include "report/schemas.h"

namespace plugward {

std::string schemas_text(const TextOptions& options) {
  Paper paper(options);
  std::vector<std::vector<std::string>> rows{{"schema", "format", "version", "what it is"}};
  for (const Schema& schema : all_schemas()) {
    const Json json = Json::parse(schema.text);
    const Json& members = json.at("properties");
    rows.push_back({std::string(schema.name), members.at("format").at("const").get<std::string>(),
                    members.at("version").at("const").dump(), json.at("title").get<std::string>()});
  }
  paper.table(rows, "");
  paper.line();
  paper.paragraph("'plugward list schemas NAME' prints one: JSON Schema, draft 7.");
  return paper.text();
}

}  // namespace plugward
