// SPDX-License-Identifier: MIT
// Ids of the file are those of the document with a word before them ("step-", "picture-"), so that no two
// kinds can meet. Tested in sheet_html_test.cpp.
#include "report/sheet_html_blocks.h"

#include <algorithm>

#include "base/format.h"
#include "base/xml_text.h"

namespace plugward {
namespace {

std::string text_html(const sheet::Text& text) {
  const std::string escaped = xml_escaped(text.text);
  return text.strong ? verbatim("<p><strong>{}</strong></p>\n", escaped) : verbatim("<p>{}</p>\n", escaped);
}

/// `prefix` makes the ids of the boxes: "box-2-0-" gives "box-2-0-1".
std::string list_html(const sheet::List& list, const std::string& prefix) {
  const std::string_view tag = list.numbered ? "ol" : "ul";
  // Without a marker some readers no longer call it a list: the role says it again.
  std::string html = list.boxes && !list.numbered ? verbatim("<{} class=\"boxes\" role=\"list\">\n", tag)
                                                  : verbatim("<{}>\n", tag);
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const std::string item = xml_escaped(list.items[i]);
    html += list.boxes
                ? verbatim(
                      "<li><div class=\"box\"><input type=\"checkbox\" id=\"{0}{1}\" autocomplete=\"off\">"
                      "<label for=\"{0}{1}\">{2}</label></div></li>\n",
                      prefix, i + 1, item)
                : verbatim("<li>{}</li>\n", item);
  }
  return html + verbatim("</{}>\n", tag);
}

std::string cell_html(const HtmlSheet& sheet, const sheet::Cell& cell, std::string_view open,
                      std::string_view close) {
  std::string words = xml_escaped(cell.text);
  if (!picture_link_html(sheet, cell.picture).empty())
    words = verbatim("<a href=\"#picture-{}\">{}</a>", xml_escaped(cell.picture), words);
  if (cell.mood == sheet::Mood::Plain) return verbatim("<{}>{}</{}>", open, words, close);
  return verbatim("<{}><span class=\"{}\"><span class=\"shape\" aria-hidden=\"true\">{}</span>{}</span></{}>",
                  open, mood_class(cell.mood), mood_shape(cell.mood), words, close);
}

/// The first cell of a row names it, unless it is empty. `name` is what a reader calls the scroller.
std::string table_html(const HtmlSheet& sheet, const sheet::Table& table, const std::string& name) {
  std::size_t columns = table.head.size();
  for (const auto& row : table.rows) columns = std::max(columns, row.size());
  std::string html =
      verbatim("<div class=\"scroller\" role=\"group\" tabindex=\"0\" aria-label=\"{}\">\n<table>\n",
               xml_escaped(name));
  if (!table.head.empty()) {
    html += "<thead><tr>";
    for (std::size_t i = 0; i < columns; ++i) {
      const std::string head = i < table.head.size() ? xml_escaped(table.head[i]) : "";
      html += head.empty() ? "<td></td>" : verbatim("<th scope=\"col\">{}</th>", head);
    }
    html += "</tr></thead>\n";
  }
  html += "<tbody>\n";
  for (const auto& row : table.rows) {
    html += "<tr>";
    for (std::size_t i = 0; i < columns; ++i) {
      const sheet::Cell cell = i < row.size() ? row[i] : sheet::Cell{};
      const bool names_row = i == 0 && columns > 1 && !cell.text.empty();
      html +=
          names_row ? cell_html(sheet, cell, "th scope=\"row\"", "th") : cell_html(sheet, cell, "td", "td");
    }
    html += "</tr>\n";
  }
  return html + "</tbody>\n</table>\n</div>\n";
}

struct BlockHtml {
  const HtmlSheet& sheet;
  const sheet::Section& section;
  std::string place;  ///< "2-0-": makes ids of what has none

  std::string operator()(const sheet::Text& text) const { return text_html(text); }
  std::string operator()(const sheet::Warning& warning) const { return caution_html(warning.text); }
  std::string operator()(const sheet::List& list) const { return list_html(list, "box-" + place); }
  std::string operator()(const sheet::Table& table) const { return table_html(sheet, table, section.title); }
  std::string operator()(const sheet::Steps& steps) const { return steps_html(sheet, steps); }
  std::string operator()(const sheet::Picture& picture) const { return picture_html(sheet, picture); }
};

/// Without the XML declaration, which has no place inside HTML.
std::string inline_svg(const HtmlSheet& sheet, const sheet::Picture& picture, PictureFace face) {
  std::string svg = (*sheet.pictures)(picture, face);
  if (svg.starts_with("<?xml")) svg.erase(0, svg.find("?>") + 2);
  svg.erase(0, std::min(svg.find_first_not_of(" \r\n\t"), svg.size()));
  return sheet.outlines->taken_from(svg);
}

}  // namespace

std::string_view mood_class(sheet::Mood mood) {
  switch (mood) {
    case sheet::Mood::Plain:
      return "";
    case sheet::Mood::Good:
      return "good";
    case sheet::Mood::Caution:
      return "caution";
    case sheet::Mood::Bad:
      return "bad";
    case sheet::Mood::Doubtful:
      return "doubtful";
  }
  return "";
}

std::string_view mood_shape(sheet::Mood mood) {
  switch (mood) {
    case sheet::Mood::Plain:
      return "";
    case sheet::Mood::Good:
      return "✓";
    case sheet::Mood::Caution:
      return "▲";
    case sheet::Mood::Bad:
      return "✗";
    case sheet::Mood::Doubtful:
      return "?";
  }
  return "";
}

std::string caution_html(std::string_view text) {
  return verbatim(
      "<div role=\"note\"><span class=\"shape\" aria-hidden=\"true\">▲</span>"
      "<p><strong>{}</strong> {}</p></div>\n",
      xml_escaped(tr("Caution:")), xml_escaped(text));
}

std::string picture_link_html(const HtmlSheet& sheet, const std::string& picture) {
  if (picture.empty()) return "";
  for (const sheet::Section& section : sheet.document->sections) {
    for (const sheet::Block& block : section.blocks) {
      const auto* found = std::get_if<sheet::Picture>(&block);
      if (found != nullptr && found->id == picture)
        return verbatim("<a href=\"#picture-{}\">{}</a>", xml_escaped(picture),
                        xml_escaped(format("Picture: {}", found->title)));
    }
  }
  return "";
}

std::string picture_html(const HtmlSheet& sheet, const sheet::Picture& picture) {
  // Boards and parts at true size look the same from either side of a plug.
  const bool two_faces = picture.kind == sheet::PictureKind::Plug;
  const std::string wire = inline_svg(sheet, picture, PictureFace::Wire);
  const std::string mating = two_faces ? inline_svg(sheet, picture, PictureFace::Mating) : "";
  const std::string id = xml_escaped(picture.id);
  const std::string title = xml_escaped(picture.title);
  const bool true_size = picture.kind == sheet::PictureKind::TrueSize;
  std::string html = verbatim("<figure id=\"picture-{}\"{}>\n<figcaption id=\"caption-{}\">{}</figcaption>\n",
                              id, true_size ? " class=\"true-size\"" : "", id, title);
  if (!wire.empty()) {
    html += verbatim(
        "<div class=\"scroller\" role=\"group\" tabindex=\"0\" aria-labelledby=\"caption-{}\">\n", id);
    html += two_faces
                ? verbatim("<div data-face=\"wire\">{}</div>\n<div data-face=\"mating\" hidden>{}</div>\n",
                           wire, mating)
                : wire;
    html += "</div>\n";
    if (!true_size)
      html += verbatim(
          "<button type=\"button\" aria-pressed=\"false\" aria-describedby=\"caption-{}\">{}</button>\n", id,
          xml_escaped(tr("Larger")));
  }
  if (!picture.words.empty() && wire.empty())
    html += verbatim("<p>{}</p>\n", xml_escaped(picture.words));
  else if (!picture.words.empty())
    html += verbatim("<details><summary>{}</summary><p>{}</p></details>\n",
                     xml_escaped(tr("What the picture shows, in words")), xml_escaped(picture.words));
  return html + "</figure>\n";
}

std::string section_html(const HtmlSheet& sheet, const sheet::Section& section, std::size_t number) {
  std::string html = verbatim(
      "<section id=\"section-{0}\" aria-labelledby=\"heading-{0}\"{1}>\n<h2 id=\"heading-{0}\">{2}</h2>\n",
      xml_escaped(section.id), section.own_page ? " class=\"own-page\"" : "", xml_escaped(section.title));
  for (std::size_t i = 0; i < section.blocks.size(); ++i)
    html += std::visit(BlockHtml{sheet, section, verbatim("{}-{}-", number + 1, i + 1)}, section.blocks[i]);
  return html + "</section>\n";
}

}  // namespace plugward
