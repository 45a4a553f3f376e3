// SPDX-License-Identifier: MIT
// One smoke test a format, by programs that others wrote: librsvg's rsvg-convert and poppler's pdfinfo and
// pdftotext.
#include "draw/canvas.h"

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "base/file.h"
#include "draw/mating_picture.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

struct Ran {
  int status = -1;
  std::string output;
};

Ran run(const std::string& command) {
  Ran ran;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  while (const std::size_t n = fread(buffer.data(), 1, buffer.size(), pipe))
    ran.output.append(buffer.data(), n);
  ran.status = pclose(pipe);
  return ran;
}

bool have(const std::string& program) {
  return run("command -v " + program).status == 0;
}

std::string file_with(const std::string& name, const std::string& bytes) {
  const std::string path = (std::filesystem::path(PLUGWARD_BINARY_DIR) / name).string();
  write_file(path, bytes);
  return path;
}

Scene scene_of(const test::Fixture& f) {
  const auto measure = make_text_measure();
  return mating_picture(f.fitting, f.advice, {}, *measure);
}

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("equal input gives equal bytes in every format") {
  const Scene scene = scene_of(*test::foreign_titles());
  for (const PictureFormat format : {PictureFormat::Svg, PictureFormat::Pdf, PictureFormat::Png}) {
    CAPTURE(static_cast<int>(format));
    const std::string first = render(scene, {format, 100, "", ""});
    CHECK(first == render(scene, {format, 100, "", ""}));
    CHECK(first.size() > 2000);
  }
}

TEST_CASE("SVG: title and description come first and name the picture") {
  Scene scene{20, 10, "A <b> & \"c\"", "what is seen", {}};
  Group group{"frame", {}};
  group.add(Words{{5, 6}, "1 < 2", 9, false, 0x112233, Anchor::Start, 0});
  scene.groups.push_back(group);
  const std::string svg = render(scene, {PictureFormat::Svg, 150, "", ""});
  CHECK(svg.rfind("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                  "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20mm\" height=\"10mm\" viewBox=\"0 0 20 "
                  "10\" font-family=\"DejaVu Sans, sans-serif\" role=\"img\" "
                  "aria-labelledby=\"title desc\">\n"
                  "<title id=\"title\">A &lt;b&gt; &amp; &quot;c&quot;</title>\n<desc id=\"desc\">what is "
                  "seen</desc>\n",
                  0) == 0);
  CHECK(contains(
      svg, "<g>\n<title>frame</title>\n<g fill=\"#112233\" transform=\"translate(5 6)\"><use href=\"#o"));
  CHECK(contains(svg, ">1 &lt; 2</text>"));
}

TEST_CASE("SVG: a prefix keeps the ids of several pictures in one page apart") {
  Scene scene{20, 10, "t", "d", {}};
  Group group{"frame", {}};
  group.add(Words{{5, 6}, "1", 9, false, 0, Anchor::Start, 0});
  scene.groups.push_back(group);
  const std::string svg = render(scene, {PictureFormat::Svg, 150, "", "j9-"});
  CHECK(contains(svg, "aria-labelledby=\"j9-title j9-desc\""));
  CHECK(contains(svg, "<path id=\"j9-o0\""));
  CHECK(contains(svg, "<use href=\"#j9-o0\""));
  CHECK_FALSE(contains(svg, "id=\"o"));
}

TEST_CASE("SVG: rsvg-convert draws it") {
  if (!have("rsvg-convert")) return;
  const std::string svg = file_with(
      "canvas_test.svg", render(scene_of(*test::foreign_titles()), {PictureFormat::Svg, 150, "", ""}));
  const std::string png = svg + ".png";
  const Ran ran = run("rsvg-convert -o '" + png + "' '" + svg + "'");
  CHECK(ran.output == "");
  CHECK(ran.status == 0);
  CHECK(read_file(png).size() > 20000);
}

TEST_CASE("PDF: pdfinfo reads title, author, date and page size") {
  if (!have("pdfinfo")) return;
  const std::string pdf = file_with("canvas_test.pdf", render(scene_of(*test::probe_to_repin()),
                                                              {PictureFormat::Pdf, 150, "2026-03-02", ""}));
  const Ran ran = run("pdfinfo -rawdates '" + pdf + "'");
  CHECK(ran.status == 0);
  CHECK(contains(
      ran.output,
      "Title:           Kite bed probe, five leads, plug control → Heron M7 motion board, J9 PROBE\n"));
  CHECK(contains(ran.output, "Author:          plugward\n"));
  CHECK(contains(ran.output, "Creator:         plugward\n"));
  CHECK(contains(ran.output, "CreationDate:    D:202603020000"));
  CHECK(contains(ran.output, "Pages:           1\n"));
  CHECK(contains(ran.output, "Page size:       785.197 x 538.583 pts"));
  CHECK_FALSE(contains(ran.output, "Error"));
}

TEST_CASE("PDF: several pages, each of its own size") {
  if (!have("pdfinfo")) return;
  const std::vector<Scene> pages{{25.4, 50.8, "first", "", {}}, {50.8, 25.4, "second", "", {}}};
  const std::string pdf =
      file_with("canvas_test_3.pdf", render_pages(pages, {PictureFormat::Pdf, 150, "", ""}));
  const Ran ran = run("pdfinfo -f 1 -l 2 '" + pdf + "'");
  CHECK(ran.status == 0);
  CHECK(contains(ran.output, "Title:           first\n"));
  CHECK(contains(ran.output, "Pages:           2\n"));
  CHECK(contains(ran.output, "Page    1 size:  72 x 144 pts\n"));
  CHECK(contains(ran.output, "Page    2 size:  144 x 72 pts\n"));
}

TEST_CASE("PNG: what would be higher than the library can hold is drawn coarser") {
  const std::string png = render({1, 12700, "", "", {}}, {PictureFormat::Png, 100, "", ""});
  // Height, big-endian, at byte 20 (PNG specification, IHDR): 32000 instead of 50000.
  CHECK(static_cast<unsigned char>(png[22]) * 256 + static_cast<unsigned char>(png[23]) == 32000);
}

TEST_CASE("PDF: its text can be searched, in every script") {
  if (!have("pdftotext")) return;
  const std::string pdf = file_with(
      "canvas_test_2.pdf", render(scene_of(*test::foreign_titles()), {PictureFormat::Pdf, 150, "", ""}));
  const Ran ran = run("pdftotext -layout '" + pdf + "' -");
  CHECK(ran.status == 0);
  CHECK(contains(ran.output, "Датчик стола «Коршун»"));
  CHECK(contains(ran.output, "苍鹭运动控制板"));
  CHECK(contains(ran.output, "plugward cannot see a bad crimp, a mislabelled board or a dead part."));
}

TEST_CASE("PNG: has the signature and the size that was asked for") {
  const Scene scene{25.4, 12.7, "", "", {}};
  const std::string png = render(scene, {PictureFormat::Png, 100, "", ""});
  CHECK(png.substr(0, 8) == "\x89PNG\r\n\x1a\n");
  // Width and height, big-endian, at bytes 16 and 20 (PNG specification, IHDR).
  CHECK(static_cast<unsigned char>(png[19]) == 100);
  CHECK(static_cast<unsigned char>(png[23]) == 50);
}

TEST_CASE("text is as wide as its size says") {
  const auto measure = make_text_measure();
  const double nine = measure->measure("supply 5 V", 9, false).width,
               eighteen = measure->measure("supply 5 V", 18, false).width;
  CHECK(eighteen == doctest::Approx(2 * nine).epsilon(0.01));
  CHECK(measure->measure("supply 5 V", 9, true).width > nine);
}

}  // namespace plugward
