// SPDX-License-Identifier: MIT
// CommonMark 0.31, backslash escapes (from memory); tables and task lists as widely read beside it.
// Tested in tests/unit/report/sheet_markdown_test.cpp.
#include "report/sheet_markdown.h"

#include <algorithm>
#include <map>

#include "base/format.h"

namespace plugward {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Of a text that begins "12." or "12)": where that sign is; else npos.
std::size_t list_sign(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size() && is_digit(text[i])) ++i;
  const bool sign = i > 0 && i < text.size() && (text[i] == '.' || text[i] == ')');
  return sign && (i + 1 == text.size() || text[i + 1] == ' ') ? i : std::string_view::npos;
}

std::string strong(const std::string& escaped) {
  return escaped.empty() ? escaped : format("**{}**", escaped);
}

class MarkdownWriter {
 public:
  explicit MarkdownWriter(const sheet::Document& document) : document_(document) { name_pictures(); }

  std::string run() {
    heading(1, document_.heading);
    text_ += format("{}: {}\n\n", strong(markdown_escaped(document_.verdict)),
                    markdown_escaped(document_.summary));
    title();
    for (const sheet::Section& section : document_.sections) {
      heading(2, section.title);
      for (const sheet::Block& block : section.blocks)
        std::visit([this](const auto& one) { write(one); }, block);
    }
    if (!document_.limits.empty()) text_ += format("---\n\n{}\n", markdown_escaped(document_.limits));
    while (text_.ends_with("\n\n")) text_.pop_back();
    return text_;
  }

 private:
  /// Equal headings get "-1", "-2" ... behind their anchors, in the order of the document.
  void name_pictures() {
    std::map<std::string, int> seen;
    const auto anchor = [&seen](const std::string& heading) {
      const std::string plain = markdown_anchor(heading);
      const int before = seen[plain]++;
      return before == 0 ? plain : format("{}-{}", plain, before);
    };
    anchor(document_.heading);
    for (const sheet::Section& section : document_.sections) {
      anchor(section.title);
      for (const sheet::Block& block : section.blocks) {
        if (const auto* picture = std::get_if<sheet::Picture>(&block))
          pictures_[picture->id] = {anchor(picture->title), picture->title};
      }
    }
  }

  void heading(int level, const std::string& words) {
    text_ += format("{} {}\n\n", std::string(static_cast<std::size_t>(level), '#'), markdown_escaped(words));
  }

  std::string linked(const std::string& escaped, const std::string& picture) const {
    const auto found = pictures_.find(picture);
    return found == pictures_.end() ? escaped : format("[{}](#{})", escaped, found->second.anchor);
  }

  void title() {
    const sheet::Title& t = document_.title;
    const auto row = [this](std::string_view name, const std::string& value, bool blank) {
      if (!value.empty() || blank)
        text_ += format("- {}: {}\n", name, value.empty() ? "..............." : markdown_escaped(value));
    };
    row(tr("machine"), t.machine, true);
    row(tr("harness"), t.harness, false);
    row(tr("from board"), t.old_board, false);
    row(t.old_board.empty() ? tr("board") : tr("to board"), t.board, false);
    row(tr("date"), t.date, true);
    text_ += "\n";
  }

  void write(const sheet::Text& text) {
    const std::string words = markdown_escaped(text.text);
    text_ += (text.strong ? strong(words) : words) + "\n\n";
  }

  void write(const sheet::Warning& warning) {
    text_ += format("> **Caution:** {}\n\n", markdown_escaped(warning.text));
  }

  void write(const sheet::List& list) {
    int number = 0;
    for (const std::string& item : list.items) {
      const std::string sign = list.numbered ? format("{}.", ++number) : std::string("-");
      text_ += format("{} {}{}\n", sign, list.boxes ? "[ ] " : "", markdown_escaped(item));
    }
    text_ += list.items.empty() ? "" : "\n";
  }

  void write_row(std::string_view indent, const std::vector<std::string>& cells) {
    text_ += format("{}| {} |\n", indent, join(cells, " | "));
  }

  void write_rule(std::string_view indent, std::size_t columns) {
    write_row(indent, std::vector<std::string>(columns, "---"));
  }

  void write(const sheet::Table& table) {
    std::size_t columns = table.head.size();
    for (const auto& row : table.rows) columns = std::max(columns, row.size());
    std::vector<std::string> head(columns);
    for (std::size_t i = 0; i < table.head.size(); ++i) head[i] = markdown_escaped(table.head[i]);
    write_row("", head);
    write_rule("", columns);
    for (const auto& row : table.rows) {
      std::vector<std::string> cells(columns);
      for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string words = linked(markdown_escaped(row[i].text), row[i].picture);
        cells[i] = row[i].mood == sheet::Mood::Plain ? words : strong(words);
      }
      write_row("", cells);
    }
    text_ += "\n";
  }

  void write(const sheet::Steps& steps) {
    for (const sheet::Step& step : steps.steps) write(step);
    text_ += "\n";
  }

  void write(const sheet::Step& step) {
    const std::string power = step.power ? tr(" (power on)") : "";
    text_ += format("- [ ] **{}.** {}{}\n", step.number, markdown_escaped(step.act), power);
    for (const std::string& caution : step.cautions)
      text_ += format("  - **Caution, before this step:** {}\n", markdown_escaped(caution));
    for (const std::string& part : step.parts) text_ += format("  - [ ] {}\n", markdown_escaped(part));
    const auto line = [this](std::string_view name, const std::string& words) {
      if (!words.empty()) text_ += format("  - {}: {}\n", name, markdown_escaped(words));
    };
    line(tr("check with"), step.code);
    line(tr("must be seen"), step.see);
    line(tr("if not"), step.wrong);
    line(tr("does not prove"), step.not_proved);
    const auto picture = pictures_.find(step.picture);
    if (picture != pictures_.end())
      text_ += format("  - picture: {}\n", linked(markdown_escaped(picture->second.title), step.picture));
    write(step.blanks);
  }

  void write(const std::vector<sheet::Blank>& blanks) {
    if (blanks.empty()) return;
    text_ += "\n";
    write_row("  ",
              {tr("between"), tr("expected"), tr("reading"), tr("if too low"), tr("if too high, or not so")});
    write_rule("  ", 5);
    for (const sheet::Blank& b : blanks) {
      write_row("  ", {markdown_escaped(b.points), markdown_escaped(b.expect),
                       b.unit.empty() ? tr("yes / no") : format("........ {}", b.unit),
                       !b.low && !b.high ? "" : markdown_escaped(b.too_low), markdown_escaped(b.too_high)});
    }
    text_ += "\n";
  }

  void write(const sheet::Picture& picture) {
    heading(3, picture.title);
    std::string_view words = picture.words;
    while (!words.empty()) {
      const std::size_t end = words.find('\n');
      text_ += format("- {}\n", markdown_escaped(words.substr(0, end)));
      words = end == std::string_view::npos ? std::string_view() : words.substr(end + 1);
    }
    text_ += "\n";
  }

  struct Target {
    std::string anchor, title;
  };

  const sheet::Document& document_;
  std::map<std::string, Target> pictures_;
  std::string text_;
};

}  // namespace

std::string sheet_markdown(const sheet::Document& document) {
  return MarkdownWriter(document).run();
}

std::string markdown_escaped(std::string_view text) {
  constexpr std::string_view special = "\\`*_[]<|~&";
  std::string result;
  const std::size_t sign = list_sign(text);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool at_start = i == 0 && std::string_view("#+-=>").find(c) != std::string_view::npos;
    if (c == '\n' || c == '\r') {
      result += ' ';
      continue;
    }
    if (at_start || i == sign || special.find(c) != std::string_view::npos) result += '\\';
    result += c;
  }
  return result;
}

std::string markdown_anchor(std::string_view heading) {
  std::string anchor;
  for (const char c : heading) {
    const auto byte = static_cast<unsigned char>(c);
    if (c >= 'A' && c <= 'Z') {
      anchor += static_cast<char>(c - 'A' + 'a');
    } else if ((c >= 'a' && c <= 'z') || is_digit(c) || c == '-' || c == '_' || byte >= 0x80) {
      anchor += c;
    } else if (c == ' ') {
      anchor += '-';
    }
  }
  return anchor;
}

}  // namespace plugward
