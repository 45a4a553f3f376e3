// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/draft_test.cpp.
#include "cli/draft_board.h"

#include <charconv>

#include "base/format.h"
#include "base/xml_text.h"
#include "cli/draft.h"

namespace plugward {

HeaderDraft read_header_word(std::string_view word) {
  std::vector<std::string> parts;
  for (std::string_view left = word;;) {
    const std::size_t colon = left.find(':');
    parts.emplace_back(left.substr(0, colon));
    if (colon == std::string_view::npos) break;
    left.remove_prefix(colon + 1);
  }
  HeaderDraft header;
  if (parts.size() < 3 || parts.size() > 4 || parts[0].empty() || parts.back().empty()) {
    throw UsageError(
        format("'{}' is no header such as J5:xh-2.50:3 or J5:?:3:fan: its name, its family or pitch, how "
               "many positions, and what it is for",
               word));
  }
  header.id = parts[0];
  header.family = read_housing(parts[1]);
  const std::string& count = parts[2];
  const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), header.positions);
  if (error != std::errc() || end != count.data() + count.size() || header.positions < 1 ||
      header.positions > 200)
    throw UsageError(format("'{}': '{}' is no count of positions from 1 to 200", word, count));
  if (parts.size() == 4) header.use = parts[3];
  return header;
}

std::string board_draft_text(const BoardDraft& board) {
  const std::string date = board.date.empty() ? "" : format(" date=\"{}\"", board.date);
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text +=
      "<!-- Begun by 'plugward start'. What is left out is not known yet: 'plugward check' asks for it.\n"
      "     Width and height are not measured: 100 mm stand for them; only pictures need them. -->\n";
  text += format("<board id=\"{}\" title=\"{}\" width=\"100 mm\" height=\"100 mm\" evidence=\"print\">\n",
                 board.id, xml_escaped(board.title));
  text += format("  <evidence id=\"print\" kind=\"board-print\"{} note=\"read off the board\"/>\n", date);
  text +=
      "  <!-- Add the supplies, each with the volts that the meter shows on the bare board, and the "
      "jumpers:\n"
      "       <rail id=\"24V\" volts=\"22.8..25.2 V\"/>\n"
      "       <rail id=\"5V\" volts=\"4.75..5.25 V\"/>\n"
      "       <jumper id=\"JP1\" rails=\"5V 24V\"/> -->\n"
      "  <!-- Then say of each pin what stands behind it, instead of 'unknown':\n"
      "       function=\"supply\" rail=\"5V\"; function=\"ground\" (it beeps to the supply's minus, power "
      "off);\n"
      "       function=\"switched\" signal=\"fan\"; function=\"output\" or \"input\" with the signal that it "
      "is for;\n"
      "       boards/README.md has the rest. -->\n";
  for (const HeaderDraft& header : board.headers) {
    text += format("  <header id=\"{}\" use=\"{}\" family=\"{}\" positions=\"{}\">\n", header.id, header.use,
                   header.family, header.positions);
    for (int pin = 1; pin <= header.positions; ++pin)
      text += format("    <pin n=\"{}\" function=\"unknown\"/>\n", pin);
    text += "  </header>\n";
  }
  return text + "</board>\n";
}

}  // namespace plugward
