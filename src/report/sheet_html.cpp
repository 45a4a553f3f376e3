// SPDX-License-Identifier: MIT
// The page around the blocks: head with a policy that lets nothing in or out, title block, tools, contents.
// What the script does is tested with real clicks in tests/browser, the rest in sheet_html_test.cpp.
#include "report/sheet_html.h"

#include <array>
#include <cstdint>

#include "base/format.h"
#include "base/xml_text.h"
#include "report/sheet_html_blocks.h"

namespace plugward {
namespace {

/// Words between tags.
std::string said(std::string_view text) {
  return xml_escaped(text);
}

/// FNV-1a over 64 bits (Fowler, Noll, Vo; RFC 9923): equal content gives equal keys, on every machine.
class ContentHash {
 public:
  void add(std::string_view text) {
    for (const char c : text) step(static_cast<unsigned char>(c));
    step(0);  // so that "ab" + "c" is not "a" + "bc"
  }
  std::uint64_t value() const { return value_; }

 private:
  void step(unsigned char byte) { value_ = (value_ ^ byte) * 0x100000001b3U; }
  std::uint64_t value_ = 0xcbf29ce484222325U;
};

/// A sheet of other work must not show the ticks of this one: all that is ticked or typed makes the key.
/// Words around it may change without losing what was done.
std::string content_key(const sheet::Document& document) {
  ContentHash hash;
  const sheet::Title& title = document.title;
  for (const std::string* text :
       {&title.machine, &title.harness, &title.board, &title.old_board, &title.date, &document.heading})
    hash.add(*text);
  for (const sheet::Section& section : document.sections) {
    for (const sheet::Block& block : section.blocks) {
      if (const auto* list = std::get_if<sheet::List>(&block); list != nullptr && list->boxes)
        for (const std::string& item : list->items) hash.add(item);
      const auto* steps = std::get_if<sheet::Steps>(&block);
      if (steps == nullptr) continue;
      for (const sheet::Step& step : steps->steps) {
        hash.add(step.id);
        hash.add(step.act);
        for (const std::string& part : step.parts) hash.add(part);
        for (const sheet::Blank& blank : step.blanks) {
          hash.add(blank.id);
          hash.add(blank.points);
          hash.add(blank.expect);
        }
      }
    }
  }
  return verbatim("{:016x}", hash.value());
}

std::string head_html(const sheet::Document& document) {
  return verbatim(
      "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src '{}'; "
      "script-src '{}'; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"referrer\" content=\"no-referrer\">\n<title>{}</title>\n<style>{}</style>\n</head>\n",
      xml_escaped(document.language), sheet_style().hash, sheet_script().hash, xml_escaped(document.heading),
      sheet_style().text);
}

std::string title_html(const sheet::Title& title) {
  std::string html = "<dl class=\"title\">\n";
  const auto row = [&](std::string_view name, const std::string& text) {
    if (!text.empty()) html += verbatim("<dt>{}</dt><dd>{}</dd>\n", name, xml_escaped(text));
  };
  row(tr("Machine"), title.machine);
  row(tr("Harness"), title.harness);
  row(tr("Old board"), title.old_board);
  row(tr("Board"), title.board);
  if (title.date.empty()) {
    html += verbatim(
        "<dt><label for=\"sheet-date\">{}</label></dt><dd><input type=\"text\" id=\"sheet-date\" "
        "size=\"12\" autocomplete=\"off\"></dd>\n",
        xml_escaped(tr("Date")));
  } else {
    row(tr("Date"), title.date);
  }
  return html + "</dl>\n";
}

/// One line, as in the text twin: "REPIN: move 2 contacts first".
std::string verdict_html(const sheet::Document& document) {
  if (document.verdict.empty())
    return document.summary.empty() ? "" : verbatim("<p>{}</p>\n", xml_escaped(document.summary));
  const std::string shape =
      document.mood == sheet::Mood::Plain
          ? ""
          : verbatim("<span class=\"shape\" aria-hidden=\"true\">{}</span>", mood_shape(document.mood));
  const std::string verdict = verbatim("<strong class=\"{}\">{}{}</strong>", mood_class(document.mood), shape,
                                       xml_escaped(document.verdict));
  if (document.summary.empty()) return verbatim("<p class=\"verdict\">{}</p>\n", verdict);
  return verbatim("<p class=\"verdict\">{}: {}</p>\n", verdict, xml_escaped(document.summary));
}

std::string header_html(const sheet::Document& document) {
  std::string html = verbatim("<header>\n<h1>{}</h1>\n", xml_escaped(document.heading));
  html += verdict_html(document);
  html += title_html(document.title);
  html += verbatim(
      "<div class=\"settings\">\n<label>{} <select id=\"colours\" autocomplete=\"off\">"
      "<option value=\"\">{}</option><option value=\"light\">{}</option>"
      "<option value=\"dark\">{}</option></select></label>\n"
      "<button type=\"button\" id=\"clear\">{}</button>\n</div>\n",
      said(tr_in("of a page on a screen", "Colours")), said(tr_in("of a page on a screen", "as the device")),
      said(tr_in("of a page on a screen", "light")), said(tr_in("of a page on a screen", "dark")),
      said(tr("Clear all ticks and readings")));
  return html +
         verbatim(
             "<p id=\"not-kept\" class=\"screen\" role=\"status\" hidden>{}</p>\n"
             "<noscript><p>{}</p></noscript>\n</header>\n",
             said(tr("This browser does not keep what you tick and type: it is lost when the page is closed. "
                     "Print it first.")),
             said(tr("Scripts are off: ticks and readings are not kept, readings are not compared, and plugs "
                     "are shown from the wire side alone.")));
}

bool shows_plugs(const sheet::Document& document) {
  for (const sheet::Section& section : document.sections)
    for (const sheet::Block& block : section.blocks)
      if (const auto* picture = std::get_if<sheet::Picture>(&block))
        if (picture->kind == sheet::PictureKind::Plug) return true;
  return false;
}

bool has_boxes(const sheet::Document& document) {
  for (const sheet::Section& section : document.sections)
    for (const sheet::Block& block : section.blocks) {
      if (const auto* steps = std::get_if<sheet::Steps>(&block); steps != nullptr && !steps->steps.empty())
        return true;
      if (const auto* list = std::get_if<sheet::List>(&block); list != nullptr && list->boxes) return true;
    }
  return false;
}

/// What stays in sight: how far the work is, and the face of the pictures. What does nothing is left out.
std::string tools_html(const sheet::Document& document) {
  const bool plugs = shows_plugs(document);
  const bool boxes = has_boxes(document);
  std::string html = verbatim("<div class=\"tools\" role=\"region\" aria-label=\"{}\"{}>\n",
                              said(tr("Progress and pictures")), plugs || boxes ? "" : " hidden");
  html += verbatim(
      "<p{}><label for=\"progress\" id=\"progress-words\">{}</label> "
      "<progress id=\"progress\" max=\"1\" value=\"0\"></progress></p>\n",
      boxes ? "" : " hidden", said(tr("Steps done")));
  if (plugs)
    html += verbatim(
        "<fieldset><legend>{}</legend>"
        "<label><input type=\"radio\" name=\"face\" value=\"wire\" autocomplete=\"off\" checked> {}</label>"
        "<label><input type=\"radio\" name=\"face\" value=\"mating\" autocomplete=\"off\"> {}</label>"
        "</fieldset>\n",
        said(tr("Plugs seen from")), said(tr_in("Plugs seen from", "wire side")),
        said(tr_in("Plugs seen from", "mating face")));
  return html + "</div>\n";
}

std::string contents_html(const sheet::Document& document) {
  if (document.sections.empty()) return "";
  std::string html = verbatim("<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">{}</h2>\n<ol>\n",
                              said(tr("Contents")));
  for (const sheet::Section& section : document.sections)
    html += verbatim("<li><a href=\"#section-{}\">{}</a></li>\n", xml_escaped(section.id),
                     xml_escaped(section.title));
  return html + "</ol>\n</nav>\n";
}

struct ScriptWord {
  std::string_view name, text;
};

/// What the script says; {0} and {1} are put in by it.
constexpr std::array<ScriptWord, 18> script_words{{
    {"progress", later("{0} of {1} steps done")},
    {"fits", later("{0}: as expected")},
    {"too-low", later("{0}: too low")},
    {"too-low-to", later("{0}: too low: points to {1}")},
    {"too-high", later("{0}: too high")},
    {"too-high-to", later("{0}: too high: points to {1}")},
    {"so", later("as expected")},
    {"not-so", later("not as expected")},
    {"not-so-to", later("not as expected: points to {0}")},
    {"noted", later("noted")},
    {"open", later("open")},
    {"beep", later("beep")},
    {"no-beep", later("no beep")},
    {"not-a-number", later("not understood yet: type a number such as 4.9, 4,9 or 12k, or the word open")},
    {"other-unit", later("this reading is in {0}: another unit was typed")},
    {"which-prefix", later("milli or mega? Write the number in full, or k for a thousand")},
    {"which-comma", later("is the comma a decimal sign? Write 12.345 or 12345")},
    {"beep-tells-little", later("type the number: a beep does not tell this value from others")},
}};

}  // namespace

std::string sheet_html(const sheet::Document& document, const PictureSvg& pictures) {
  SharedOutlines outlines;
  const HtmlSheet sheet{&document, &pictures, &outlines};
  std::string html = head_html(document);
  html += verbatim("<body>\n<a class=\"skip\" href=\"#content\">{}</a>\n", said(tr("Skip to the content")));
  html += header_html(document) + tools_html(document) + contents_html(document);
  html += verbatim("<main id=\"content\" tabindex=\"-1\" data-key=\"{}\"", content_key(document));
  for (const ScriptWord& word : script_words)
    html += verbatim(" data-{}=\"{}\"", word.name, said(tr(word.text)));
  html += ">\n";
  for (std::size_t i = 0; i < document.sections.size(); ++i)
    html += section_html(sheet, document.sections[i], i);
  html += "</main>\n" + outlines.svg();
  if (!document.limits.empty())
    html += verbatim("<footer>\n<p>{}</p>\n</footer>\n", xml_escaped(document.limits));
  html += verbatim(
      "<dialog id=\"clear-dialog\" aria-labelledby=\"clear-question\">\n<p id=\"clear-question\">{}</p>\n"
      "<button type=\"button\" id=\"clear-no\">{}</button>"
      "<button type=\"button\" id=\"clear-yes\">{}</button>\n</dialog>\n",
      said(tr("Clear all ticks and readings of this sheet? They cannot be brought back.")),
      said(tr("Keep them")), said(tr("Clear all")));
  return html + verbatim("<script>{}</script>\n</body>\n</html>\n", sheet_script().text);
}

}  // namespace plugward
