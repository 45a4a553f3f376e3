// SPDX-License-Identifier: MIT
// Tested in tests/cases (check-markdown).
#include "report/check_markdown.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "report/sheet_markdown.h"
#include "sheet/documents.h"

namespace plugward {
namespace {

constexpr auto left_to_the_sheet =
    std::to_array<std::string_view>({"board", "test-card", "firmware", "parts", "true-size"});

/// No picture, and nothing that leads to one.
void without_pictures(sheet::Section& section) {
  std::erase_if(section.blocks,
                [](const sheet::Block& block) { return std::holds_alternative<sheet::Picture>(block); });
  for (sheet::Block& block : section.blocks) {
    if (auto* table = std::get_if<sheet::Table>(&block)) {
      for (auto& row : table->rows) {
        for (sheet::Cell& cell : row) cell.picture.clear();
      }
    }
    if (auto* steps = std::get_if<sheet::Steps>(&block)) {
      for (sheet::Step& step : steps->steps) step.picture.clear();
    }
  }
}

}  // namespace

std::string check_markdown(const Sources& sources, const Fitting& fitting, const Advice& advice,
                           bool standing) {
  sheet::Document document =
      sheet::check_document(fitting, advice, {.sources = &sources, .standing = standing});
  std::erase_if(document.sections, [](const sheet::Section& section) {
    return std::find(left_to_the_sheet.begin(), left_to_the_sheet.end(), section.id) !=
           left_to_the_sheet.end();
  });
  for (sheet::Section& section : document.sections) without_pictures(section);
  return sheet_markdown(document);
}

}  // namespace plugward
