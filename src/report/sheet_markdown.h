// SPDX-License-Identifier: MIT
// A document as Markdown: CommonMark with tables and task lists. No raw HTML; every character of the files
// that would mean something is escaped. Links to pictures go by the anchors that common viewers make of
// headings: lower case, spaces as hyphens, other signs left out.
//
//   write_file("wren.md", sheet_markdown(document));
#pragma once

#include <string>
#include <string_view>

#include "sheet/document.h"

namespace plugward {

std::string sheet_markdown(const sheet::Document&);

/// `text` as it must be written to be read as it is, at the beginning of a line as well.
std::string markdown_escaped(std::string_view text);
/// "plug-control-on-j9-probe" of the heading "Plug 'control' on J9 (PROBE)".
std::string markdown_anchor(std::string_view heading);

}  // namespace plugward
