// SPDX-License-Identifier: MIT
// What the file is made of. What it does in a browser is in tests/browser.
#include "report/sheet_html.h"

#include <doctest/doctest.h>

#include <functional>
#include <limits>

namespace plugward {
namespace {

std::string no_picture(const sheet::Picture&, PictureFace) {
  return "";
}

/// Between two texts, the first of them included.
std::string part(const std::string& html, const std::string& from, const std::string& to) {
  const std::size_t begin = html.find(from);
  REQUIRE(begin != std::string::npos);
  const std::size_t end = html.find(to, begin + from.size());
  REQUIRE(end != std::string::npos);
  return html.substr(begin, end - begin);
}

sheet::Document with(sheet::Block block) {
  sheet::Document document;
  document.heading = "h";
  document.sections.push_back({"a", "A", {std::move(block)}, false});
  return document;
}

/// The one section without its heading.
std::string body_of(const sheet::Document& document, const PictureSvg& svg = no_picture) {
  const std::string html = sheet_html(document, svg);
  const std::string head =
      "<section id=\"section-a\" aria-labelledby=\"heading-a\">\n<h2 id=\"heading-a\">A</h2>\n";
  return part(html, head, "</section>").substr(head.size());
}

std::string key_of(const sheet::Document& document) {
  return part(sheet_html(document, no_picture), "data-key=\"", "\" ");
}

sheet::Step step_with_everything() {
  sheet::Step step;
  step.id = "s41";
  step.number = 41;
  step.cautions = {"hot & <sharp>"};
  step.act = "measure \"J9\"";
  step.see = "5 V";
  step.wrong = "a jumper";
  step.parts = {"first"};
  sheet::Blank volts{"r41-1", "J9.2 to J9.3", "4.9..5.2 V", 4.9, 5.2, "V", "the <rail>", ""};
  sheet::Blank open{"r41-2", "J9.1", "", 1e6, std::numeric_limits<double>::infinity(), "ohm", "", "x"};
  sheet::Blank sound{"r41-3", "J9.3", "a beep", 0, 3, "", "", "not ground"};
  step.blanks = {volts, open, sound};
  step.code = "M119\nM42";
  step.not_proved = "the rest";
  step.power = true;
  return step;
}

}  // namespace

TEST_CASE("blocks as HTML: texts escaped, boxes labelled, shapes beside colours") {
  using sheet::Mood;
  struct Row {
    const char* name;
    sheet::Block block;
    const char* html;
  };
  const Row rows[] = {
      {"text", sheet::Text{"a < b & \"c\"", false}, "<p>a &lt; b &amp; &quot;c&quot;</p>\n"},
      {"strong text", sheet::Text{"<b>", true}, "<p><strong>&lt;b&gt;</strong></p>\n"},
      {"caution", sheet::Warning{"<hot>"},
       "<div role=\"note\"><span class=\"shape\" aria-hidden=\"true\">▲</span>"
       "<p><strong>Caution:</strong> &lt;hot&gt;</p></div>\n"},
      {"list", sheet::List{{"x", "<y>"}, false, false}, "<ul>\n<li>x</li>\n<li>&lt;y&gt;</li>\n</ul>\n"},
      {"numbered list", sheet::List{{"x"}, false, true}, "<ol>\n<li>x</li>\n</ol>\n"},
      {"boxes", sheet::List{{"<x>"}, true, false},
       "<ul class=\"boxes\" role=\"list\">\n<li><div class=\"box\"><input type=\"checkbox\" id=\"box-1-1-1\" "
       "autocomplete=\"off\"><label for=\"box-1-1-1\">&lt;x&gt;</label></div></li>\n</ul>\n"},
      {"table",
       sheet::Table{{"plug", "", "verdict"},
                    {{{"<control>", Mood::Plain, ""}, {"J9", Mood::Plain, ""}, {"REPIN", Mood::Caution, ""}},
                     {{"", Mood::Plain, ""}, {"J10", Mood::Doubtful, "not-here"}}}},
       "<div class=\"scroller\" role=\"group\" tabindex=\"0\" aria-label=\"A\">\n<table>\n"
       "<thead><tr><th scope=\"col\">plug</th><td></td><th scope=\"col\">verdict</th></tr></thead>\n"
       "<tbody>\n<tr><th scope=\"row\">&lt;control&gt;</th><td>J9</td><td><span class=\"caution\">"
       "<span class=\"shape\" aria-hidden=\"true\">▲</span>REPIN</span></td></tr>\n"
       "<tr><td></td><td><span class=\"doubtful\"><span class=\"shape\" "
       "aria-hidden=\"true\">?</span>J10</span>"
       "</td><td></td></tr>\n</tbody>\n</table>\n</div>\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(body_of(with(row.block)) == row.html);
  }
}

TEST_CASE("a step as HTML: cautions first, then the box, what to see, the blanks with their limits") {
  CHECK(body_of(with(sheet::Steps{{step_with_everything()}})) == R"(<ol class="steps">
<li id="step-s41" value="41">
<div role="note"><span class="shape" aria-hidden="true">▲</span><p><strong>Caution:</strong> hot &amp; &lt;sharp&gt;</p></div>
<p class="power"><span class="shape" aria-hidden="true">⚡</span> Power is on during this step.</p>
<div class="box act"><input type="checkbox" id="box-s41" autocomplete="off"><label for="box-s41"><span class="unseen">Step 41: </span>measure &quot;J9&quot;</label></div>
<ul class="boxes" role="list">
<li><div class="box"><input type="checkbox" id="box-s41-1" autocomplete="off"><label for="box-s41-1">first</label></div>
</li>
</ul>
<p><span class="key">See:</span> 5 V</p>
<p><span class="key">If not:</span> a jumper</p>
<ul class="readings" role="list">
<li class="reading"><label for="reading-r41-1">J9.2 to J9.3</label><span class="entry"><input type="text" id="reading-r41-1" data-unit="V" data-low="4.9" data-high="5.2" data-too-low="the &lt;rail&gt;" aria-describedby="reading-r41-1-expect reading-r41-1-status" autocomplete="off" autocapitalize="off" spellcheck="false"><span>V</span></span><span id="reading-r41-1-expect" data-expect="4.9..5.2 V"><span class="key">expected:</span> 4.9..5.2 V</span><p class="status" id="reading-r41-1-status" role="status" aria-live="polite"></p></li>
<li class="reading"><label for="reading-r41-2">J9.1</label><span class="entry"><input type="text" id="reading-r41-2" data-unit="ohm" data-low="1000000" data-high="inf" data-too-high="x" aria-describedby="reading-r41-2-status" autocomplete="off" autocapitalize="off" spellcheck="false"><span>ohm</span></span><p class="status" id="reading-r41-2-status" role="status" aria-live="polite"></p></li>
<li class="reading"><span id="reading-r41-3-points">J9.3</span><span class="entry" role="radiogroup" id="reading-r41-3" aria-labelledby="reading-r41-3-points" aria-describedby="reading-r41-3-expect reading-r41-3-status" data-otherwise="not ground"><label><input type="radio" name="reading-r41-3" value="yes" autocomplete="off"> as expected</label><label><input type="radio" name="reading-r41-3" value="no" autocomplete="off"> not so</label></span><span id="reading-r41-3-expect" data-expect="a beep"><span class="key">expected:</span> a beep</span><p class="status" id="reading-r41-3-status" role="status" aria-live="polite"></p></li>
</ul>
<p class="key">Check with:</p>
<pre tabindex="0"><code>M119
M42</code></pre>
<p><span class="key">Not proved by this:</span> the rest</p>
</li>
</ol>
)");
}

TEST_CASE(
    "a picture as HTML: both faces of a plug, one hidden; the words beneath; a link from where it is named") {
  sheet::Document document =
      with(sheet::Picture{"plug-3", sheet::PictureKind::Plug, 0, "Plug <3>", "words & more"});
  sheet::Table table;
  table.rows = {{{"control", sheet::Mood::Plain, "plug-3"}}};
  document.sections[0].blocks.push_back(table);
  std::string asked;
  const std::string html = body_of(document, [&](const sheet::Picture& picture, PictureFace face) {
    asked += picture.id + (face == PictureFace::Wire ? " wire, " : " mating, ");
    return std::string("<?xml version=\"1.0\"?>\n<svg>") + (face == PictureFace::Wire ? "w" : "m") +
           "</svg>\n";
  });
  CHECK(asked == "plug-3 wire, plug-3 mating, ");
  CHECK(html == R"(<figure id="picture-plug-3">
<figcaption id="caption-plug-3">Plug &lt;3&gt;</figcaption>
<div class="scroller" role="group" tabindex="0" aria-labelledby="caption-plug-3">
<div data-face="wire"><svg>w</svg>
</div>
<div data-face="mating" hidden><svg>m</svg>
</div>
</div>
<button type="button" aria-pressed="false" aria-describedby="caption-plug-3">Larger</button>
<details><summary>What the picture shows, in words</summary><p>words &amp; more</p></details>
</figure>
<div class="scroller" role="group" tabindex="0" aria-label="A">
<table>
<tbody>
<tr><td><a href="#picture-plug-3">control</a></td></tr>
</tbody>
</table>
</div>
)");
}

TEST_CASE(
    "a picture that looks the same from either side is asked for once, and one without SVG is told in "
    "words") {
  int asked = 0;
  const auto svg = [&](const sheet::Picture&, PictureFace) {
    ++asked;
    return std::string("<svg></svg>");
  };
  const std::string board =
      body_of(with(sheet::Picture{"board", sheet::PictureKind::Board, -1, "Board", ""}), svg);
  CHECK(asked == 1);
  CHECK(board ==
        "<figure id=\"picture-board\">\n<figcaption id=\"caption-board\">Board</figcaption>\n"
        "<div class=\"scroller\" role=\"group\" tabindex=\"0\" "
        "aria-labelledby=\"caption-board\">\n<svg></svg></div>\n"
        "<button type=\"button\" aria-pressed=\"false\" aria-describedby=\"caption-board\">Larger</button>\n"
        "</figure>\n");
  CHECK(body_of(with(sheet::Picture{"t", sheet::PictureKind::TrueSize, -1, "At true size", "a & b"})) ==
        "<figure id=\"picture-t\" class=\"true-size\">\n<figcaption id=\"caption-t\">At true "
        "size</figcaption>\n"
        "<p>a &amp; b</p>\n</figure>\n");
}

TEST_CASE("outlines of letters that pictures share stand in the file once") {
  sheet::Document document = with(sheet::Picture{"plug-1", sheet::PictureKind::Plug, 0, "P", ""});
  const std::string html = sheet_html(document, [](const sheet::Picture&, PictureFace face) -> std::string {
    if (face == PictureFace::Wire)
      return "<svg><defs>\n<path id=\"w0\" d=\"M1\"/>\n<path id=\"w1\" d=\"M2\"/>\n</defs>"
             "<path id=\"own\" fill=\"none\" d=\"M1\"/><use href=\"#w1\" x=\"1\"/><use href=\"#w0\"/>"
             "<use href=\"#own\"/></svg>";
    return "<svg><defs>\n<path id=\"m0\" d=\"M2\"/>\n<path id=\"m1\" d=\"M3\"/>\n</defs>"
           "<use href=\"#m0\"/><use href=\"#m1\"/></svg>";
  });
  CHECK(part(html, "<div data-face=\"wire\"", "<button type=\"button\" aria") ==
        "<div data-face=\"wire\"><svg><defs>\n</defs><path id=\"own\" fill=\"none\" d=\"M1\"/>"
        "<use href=\"#o1\" x=\"1\"/><use href=\"#o0\"/><use href=\"#own\"/></svg></div>\n"
        "<div data-face=\"mating\" hidden><svg><defs>\n</defs><use href=\"#o1\"/><use href=\"#o2\"/></svg>"
        "</div>\n</div>\n");
  CHECK(part(html, "</main>", "<dialog") ==
        "</main>\n<svg class=\"outlines\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>\n"
        "<path id=\"o0\" d=\"M1\"/>\n<path id=\"o1\" d=\"M2\"/>\n<path id=\"o2\" d=\"M3\"/>\n"
        "</defs></svg>\n");
}

TEST_CASE("the head lets nothing in or out but its own style and script") {
  sheet::Document document = with(sheet::Text{"x", false});
  document.language = "de";
  document.heading = "</title>";
  const std::string html = sheet_html(document, no_picture);
  CHECK(html.starts_with(
      "<!DOCTYPE html>\n<html lang=\"de\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-"));
  CHECK(part(html, "<title>", "<style>") == "<title>&lt;/title&gt;</title>\n");
  CHECK(html.ends_with("</script>\n</body>\n</html>\n"));
  for (const char* outside : {"http:", "https:", "src=", "@import", "url(", "style=\"", " onclick"}) {
    CAPTURE(outside);
    CHECK(html.find(outside) == std::string::npos);
  }
}

TEST_CASE("the page around the blocks") {
  sheet::Document document = with(sheet::Text{"x", false});
  document.title = {"Wren <3>", "Kite", "Heron M7 rev. 2", "Heron A4", "2026-11-25"};
  document.heading = "Moving 'Wren' to Heron M7";
  document.verdict = "18 of 20 plugs";
  document.mood = sheet::Mood::Bad;
  document.summary = "two are left";
  document.limits = "It cannot see <all>.";
  const std::string html = sheet_html(document, no_picture);
  CHECK(part(html, "<header>", "<div class=\"settings\">") == R"(<header>
<h1>Moving 'Wren' to Heron M7</h1>
<p class="verdict"><strong class="bad"><span class="shape" aria-hidden="true">✗</span>18 of 20 plugs</strong>: two are left</p>
<dl class="title">
<dt>Machine</dt><dd>Wren &lt;3&gt;</dd>
<dt>Harness</dt><dd>Kite</dd>
<dt>Old board</dt><dd>Heron A4</dd>
<dt>Board</dt><dd>Heron M7 rev. 2</dd>
<dt>Date</dt><dd>2026-11-25</dd>
</dl>
)");
  document.summary = "";
  document.mood = sheet::Mood::Plain;
  CHECK(part(sheet_html(document, no_picture), "<p class=\"verdict\">", "<dl") ==
        "<p class=\"verdict\"><strong class=\"\">18 of 20 plugs</strong></p>\n");
  CHECK(part(html, "<nav", "<main") ==
        "<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">Contents</h2>\n<ol>\n"
        "<li><a href=\"#section-a\">A</a></li>\n</ol>\n</nav>\n");
  CHECK(part(html, "<footer>", "<dialog") == "<footer>\n<p>It cannot see &lt;all&gt;.</p>\n</footer>\n");
  // Nothing to tick and no plug to be seen: no bar.
  CHECK(part(html, "<div class=\"tools\"", "<p") ==
        "<div class=\"tools\" role=\"region\" aria-label=\"Progress and pictures\" hidden>\n");
}

TEST_CASE("the key of the store changes with all that is ticked or typed, and with nothing else") {
  const sheet::Document document = with(sheet::Steps{{step_with_everything()}});
  const std::string key = key_of(document);
  CHECK(key_of(document) == key);

  using Change = std::function<void(sheet::Document&, sheet::Step&)>;
  const Change others[] = {
      [](sheet::Document& d, sheet::Step&) { d.title.machine = "another"; },
      [](sheet::Document& d, sheet::Step&) { d.title.date = "2026-11-26"; },
      [](sheet::Document& d, sheet::Step&) { d.heading = "another"; },
      [](sheet::Document&, sheet::Step& s) { s.id = "s42"; },
      [](sheet::Document&, sheet::Step& s) { s.act += "."; },
      [](sheet::Document&, sheet::Step& s) { s.parts.push_back("second"); },
      [](sheet::Document&, sheet::Step& s) { s.blanks[0].points = "J9.1 to J9.3"; },
      [](sheet::Document&, sheet::Step& s) { s.blanks[0].expect = "11..13 V"; },
      [](sheet::Document& d, sheet::Step&) {
        d.sections[0].blocks.push_back(sheet::List{{"x"}, true, false});
      },
  };
  std::size_t row = 0;
  for (const Change& change : others) {
    CAPTURE(row++);
    sheet::Document changed = document;
    change(changed, std::get<sheet::Steps>(changed.sections[0].blocks[0]).steps[0]);
    CHECK(key_of(changed) != key);
  }

  sheet::Document same = document;
  same.summary = "other words";
  same.limits = "other limits";
  same.sections[0].title = "B";
  same.sections[0].blocks.push_back(sheet::List{{"x"}, false, false});
  std::get<sheet::Steps>(same.sections[0].blocks[0]).steps[0].see = "other words";
  CHECK(key_of(same) == key);
}

}  // namespace plugward
