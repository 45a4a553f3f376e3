// SPDX-License-Identifier: MIT
// Written by hand rather than by the drawing library's SVG backend: that one numbers its ids from a counter
// of the whole process (so that equal pictures differ) and has neither titles nor named groups. Tested in
// canvas_test.cpp.
#include "draw/svg_writer.h"

#include <cmath>

#include "base/format.h"
#include "base/xml_text.h"

namespace plugward {
namespace {

std::string pair(Point p) {
  return svg_number(p.x) + " " + svg_number(p.y);
}

std::string path_data(const Shape& shape) {
  std::string data;
  for (const Shape::Command& c : shape.path) {
    data += c.op;
    if (c.op != 'Z') data += pair(c.p1);
    if (c.op == 'C') data += " " + pair(c.p2) + " " + pair(c.p3);
  }
  return data;
}

std::string element(const Shape& shape) {
  std::string text = "<path d=\"" + path_data(shape) + "\"";
  text += shape.fill ? verbatim(" fill=\"#{:06x}\"", *shape.fill) : std::string(" fill=\"none\"");
  if (shape.stroke) {
    text += verbatim(" stroke=\"#{:06x}\" stroke-width=\"{}\"", shape.stroke->ink,
                     svg_number(shape.stroke->width));
    if (!shape.stroke->dashes.empty()) {
      std::vector<std::string> dashes;
      for (const double d : shape.stroke->dashes) dashes.push_back(svg_number(d));
      text += verbatim(" stroke-dasharray=\"{}\"", join(dashes, " "));
    }
    if (shape.stroke->round) text += " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
  }
  return text + "/>\n";
}

/// Outlines that were met, each stored once.
using Outlines = std::map<std::string, std::size_t>;

std::string element(const Words& words, const std::string& prefix, const GlyphSource& source,
                    Outlines& outlines) {
  const GlyphRun run = source(words.text, words.points, words.bold);
  const double shift = words.anchor == Anchor::Start    ? 0
                       : words.anchor == Anchor::Middle ? run.width / 2
                                                        : run.width;
  std::string text = verbatim("<g fill=\"#{:06x}\" transform=\"translate({})", words.ink, pair(words.at));
  if (words.rotation != 0) text += verbatim(" rotate({})", svg_number(-words.rotation));
  text += "\">";
  for (const Glyph& glyph : run.glyphs) {
    if (glyph.outline.empty()) continue;
    const std::size_t id = outlines.try_emplace(glyph.outline, outlines.size()).first->second;
    text += verbatim("<use href=\"#{}o{}\" x=\"{}\"", prefix, id, svg_number(glyph.at.x - shift));
    if (const std::string y = svg_number(glyph.at.y); y != "0") text += verbatim(" y=\"{}\"", y);
    text += "/>";
  }
  text += verbatim("<text x=\"{}\" font-size=\"{}\"{} textLength=\"{}\" fill-opacity=\"0\">{}</text></g>\n",
                   svg_number(-shift), svg_number(words.points * 25.4 / 72.0),
                   words.bold ? " font-weight=\"bold\"" : "", svg_number(std::max(run.width, 0.1)),
                   xml_escaped(words.text));
  return text;
}

}  // namespace

std::string svg_number(double value) {
  std::string text = verbatim("{:.3f}", value);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string write_svg(const Scene& scene, const std::string& prefix, const GlyphSource& source) {
  Outlines outlines;
  std::string body;
  for (const Group& group : scene.groups) {
    body += verbatim("<g>\n<title>{}</title>\n", xml_escaped(group.name));
    for (const auto& item : group.items) {
      if (const Shape* shape = std::get_if<Shape>(&item)) {
        body += element(*shape);
      } else {
        body += element(std::get<Words>(item), prefix, source, outlines);
      }
    }
    body += "</g>\n";
  }

  std::vector<std::string_view> by_id(outlines.size());
  for (const auto& [outline, id] : outlines) by_id[id] = outline;

  std::string text = verbatim(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" "
      "font-family=\"DejaVu Sans, sans-serif\" role=\"img\" aria-labelledby=\"{4}title {4}desc\">\n"
      "<title id=\"{4}title\">{2}</title>\n<desc id=\"{4}desc\">{3}</desc>\n<defs>\n",
      svg_number(scene.width), svg_number(scene.height), xml_escaped(scene.title),
      xml_escaped(scene.description), prefix);
  for (std::size_t id = 0; id < by_id.size(); ++id)
    text += verbatim("<path id=\"{}o{}\" d=\"{}\"/>\n", prefix, id, by_id[id]);
  text += verbatim("</defs>\n<path d=\"M0 0H{0}V{1}H0Z\" fill=\"#ffffff\"/>\n", svg_number(scene.width),
                   svg_number(scene.height));
  return text + body + "</svg>\n";
}

}  // namespace plugward
