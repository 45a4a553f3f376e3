// SPDX-License-Identifier: MIT
// Steps of the work with their boxes and blanks. Tested in sheet_html_test.cpp.
#include <cmath>

#include "base/format.h"
#include "base/xml_text.h"
#include "report/sheet_html_blocks.h"

namespace plugward {
namespace {

std::string box_html(const std::string& id, std::string_view label_class, const std::string& label) {
  return verbatim(
      "<div class=\"{0}\"><input type=\"checkbox\" id=\"{1}\" autocomplete=\"off\">"
      "<label for=\"{1}\">{2}</label></div>\n",
      label_class, id, label);
}

/// What the script compares with; the shortest text that reads back as the same number.
std::string limit(std::string_view name, std::optional<double> value) {
  if (!value) return "";
  if (std::isinf(*value)) return verbatim(" data-{}=\"{}inf\"", name, *value < 0 ? "-" : "");
  return verbatim(" data-{}=\"{}\"", name, *value);
}

std::string expected_html(const std::string& id, const std::string& expect) {
  if (expect.empty()) return "";
  return verbatim("<span id=\"{0}-expect\" data-expect=\"{1}\"><span class=\"key\">{2}</span> {1}</span>", id,
                  xml_escaped(expect), xml_escaped(tr("expected:")));
}

std::string status_html(const std::string& id) {
  return verbatim("<p class=\"status\" id=\"{}-status\" role=\"status\" aria-live=\"polite\"></p></li>\n",
                  id);
}

/// What is seen or heard: as expected or not.
std::string choice_html(const sheet::Blank& blank) {
  const std::string id = "reading-" + xml_escaped(blank.id);
  const std::string& otherwise = blank.too_low.empty() ? blank.too_high : blank.too_low;
  std::string html =
      verbatim("<li class=\"reading\"><span id=\"{0}-points\">{1}</span>", id, xml_escaped(blank.points));
  html += verbatim(
      "<span class=\"entry\" role=\"radiogroup\" id=\"{0}\" aria-labelledby=\"{0}-points\" "
      "aria-describedby=\"{0}-expect {0}-status\" data-otherwise=\"{1}\">"
      "<label><input type=\"radio\" name=\"{0}\" value=\"yes\" autocomplete=\"off\"> {2}</label>"
      "<label><input type=\"radio\" name=\"{0}\" value=\"no\" autocomplete=\"off\"> {3}</label></span>",
      id, xml_escaped(otherwise), xml_escaped(tr("as expected")), xml_escaped(tr("not so")));
  return html + expected_html(id, blank.expect) + status_html(id);
}

std::string blank_html(const sheet::Blank& blank) {
  if (blank.unit.empty() && !blank.expect.empty()) return choice_html(blank);
  const std::string id = "reading-" + xml_escaped(blank.id);
  const std::string unit = xml_escaped(blank.unit);
  std::string described = id + "-status";
  if (!blank.expect.empty()) described = id + "-expect " + described;
  std::string html =
      verbatim("<li class=\"reading\"><label for=\"{}\">{}</label>", id, xml_escaped(blank.points));
  html += verbatim("<span class=\"entry\"><input type=\"text\" id=\"{}\" data-unit=\"{}\"{}{}", id, unit,
                   limit("low", blank.low), limit("high", blank.high));
  if (!blank.too_low.empty()) html += verbatim(" data-too-low=\"{}\"", xml_escaped(blank.too_low));
  if (!blank.too_high.empty()) html += verbatim(" data-too-high=\"{}\"", xml_escaped(blank.too_high));
  html +=
      verbatim(" aria-describedby=\"{}\" autocomplete=\"off\" autocapitalize=\"off\" spellcheck=\"false\">",
               described);
  if (!unit.empty()) html += verbatim("<span>{}</span>", unit);
  return html + "</span>" + expected_html(id, blank.expect) + status_html(id);
}

/// "<p><span class="key">See:</span> ...</p>"; "" for no text.
std::string keyed(std::string_view key, const std::string& text) {
  if (text.empty()) return "";
  return verbatim("<p><span class=\"key\">{}</span> {}</p>\n", key, xml_escaped(text));
}

std::string step_html(const HtmlSheet& sheet, const sheet::Step& step) {
  const std::string id = xml_escaped(step.id);
  std::string html = verbatim("<li id=\"step-{}\" value=\"{}\">\n", id, step.number);
  for (const std::string& caution : step.cautions) html += caution_html(caution);
  if (step.power)
    html += verbatim("<p class=\"power\"><span class=\"shape\" aria-hidden=\"true\">⚡</span> {}</p>\n",
                     xml_escaped(tr("Power is on during this step.")));
  html += box_html("box-" + id, "box act",
                   verbatim("<span class=\"unseen\">{} </span>{}",
                            xml_escaped(format("Step {}:", step.number)), xml_escaped(step.act)));
  if (!step.parts.empty()) {
    html += "<ul class=\"boxes\" role=\"list\">\n";
    for (std::size_t i = 0; i < step.parts.size(); ++i)
      html +=
          "<li>" + box_html(verbatim("box-{}-{}", id, i + 1), "box", xml_escaped(step.parts[i])) + "</li>\n";
    html += "</ul>\n";
  }
  html += keyed(tr("See:"), step.see);
  html += keyed(tr("If not:"), step.wrong);
  if (!step.blanks.empty()) {
    html += "<ul class=\"readings\" role=\"list\">\n";
    for (const sheet::Blank& blank : step.blanks) html += blank_html(blank);
    html += "</ul>\n";
  }
  if (!step.code.empty())
    html += verbatim("<p class=\"key\">{}</p>\n<pre tabindex=\"0\"><code>{}</code></pre>\n",
                     xml_escaped(tr("Check with:")), xml_escaped(step.code));
  html += keyed(tr("Not proved by this:"), step.not_proved);
  if (const std::string link = picture_link_html(sheet, step.picture); !link.empty())
    html += "<p>" + link + "</p>\n";
  return html + "</li>\n";
}

}  // namespace

std::string steps_html(const HtmlSheet& sheet, const sheet::Steps& steps) {
  std::string html = "<ol class=\"steps\">\n";
  for (const sheet::Step& step : steps.steps) html += step_html(sheet, step);
  return html + "</ol>\n";
}

}  // namespace plugward
