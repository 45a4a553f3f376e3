// SPDX-License-Identifier: MIT
// The only file that names cairo and pango. One user unit is one point (1/72 inch) everywhere; PNG scales the
// whole. Hinting is off, so that text is as wide on paper as it was measured.
#include "draw/canvas.h"

#include <cairo-pdf.h>
#include <cairo.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdlib>
#include <deque>
#include <map>
#include <optional>
#include <unordered_map>

#include "base/file.h"
#include "base/format.h"
#include "base/utf8.h"
#include "draw/style.h"
#include "draw/svg_writer.h"

namespace plugward {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;

struct Release {
  void operator()(cairo_t* p) const { cairo_destroy(p); }
  void operator()(cairo_surface_t* p) const { cairo_surface_destroy(p); }
  void operator()(cairo_path_t* p) const { cairo_path_destroy(p); }
  void operator()(cairo_font_options_t* p) const { cairo_font_options_destroy(p); }
  void operator()(PangoFontDescription* p) const { pango_font_description_free(p); }
  void operator()(PangoLayoutIter* p) const { pango_layout_iter_free(p); }
  void operator()(PangoFontMap* p) const { g_object_unref(p); }
  void operator()(PangoContext* p) const { g_object_unref(p); }
  void operator()(PangoLayout* p) const { g_object_unref(p); }
};
template <class T>
using Owned = std::unique_ptr<T, Release>;

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw WorldError(verbatim("cannot draw: {}", cairo_status_to_string(status)));
}

/// Lays out single lines of text. Its own font map: nothing outside can change what it chooses.
class Typesetter {
 public:
  Typesetter() : map_(pango_cairo_font_map_new()), context_(pango_font_map_create_context(map_.get())) {
    const Owned<cairo_font_options_t> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context_.get(), options.get());
    pango_cairo_context_set_resolution(context_.get(), 72);
    pango_context_set_round_glyph_positions(context_.get(), FALSE);
    pango_context_set_language(context_.get(), pango_language_from_string("en"));
    pango_context_set_base_dir(context_.get(), PANGO_DIRECTION_LTR);
    layout_.reset(pango_layout_new(context_.get()));
    pango_layout_set_single_paragraph_mode(layout_.get(), TRUE);
  }

  /// The text laid out; valid until the next call.
  PangoLayout* layout(const std::string& text, double points, bool bold) const {
    pango_layout_set_font_description(layout_.get(), font(points, bold));
    const std::string shown = first_invalid_utf8(text) ? printable(text) : text;  // pango takes nothing else
    pango_layout_set_text(layout_.get(), shown.data(), static_cast<int>(shown.size()));
    return layout_.get();
  }

  struct Run {
    int width = 0;                ///< pango units
    int highest = 0, lowest = 0;  ///< of the ink, downwards from the baseline
  };
  /// What the layout would say of a line without tabs, without looking for where lines may be broken: that is
  /// half of a layout's time. Nothing when the line takes several fonts, whose baselines the layout aligns.
  std::optional<Run> run(const std::string& text, double points, bool bold) const {
    pango_context_set_font_description(context_.get(), font(points, bold));
    const int size = static_cast<int>(text.size());
    Run run;
    GList* const items = pango_itemize(context_.get(), text.data(), 0, size, nullptr, nullptr);
    const bool one_font = items == nullptr || items->next == nullptr;
    PangoGlyphString* const glyphs = pango_glyph_string_new();
    for (const GList* i = items; i != nullptr; i = i->next) {
      auto* const item = static_cast<PangoItem*>(i->data);
      pango_shape_with_flags(text.data() + item->offset, item->length, text.data(), size, &item->analysis,
                             glyphs, PANGO_SHAPE_NONE);
      PangoRectangle ink{}, logical{};
      pango_glyph_string_extents(glyphs, item->analysis.font, &ink, &logical);
      run.width += logical.width;
      run.highest = std::min(run.highest, ink.y);
      run.lowest = std::max(run.lowest, ink.y + ink.height);
      pango_item_free(item);
    }
    pango_glyph_string_free(glyphs);
    g_list_free(items);
    return one_font ? std::optional(run) : std::nullopt;
  }

 private:
  struct Font {
    double points = 0;
    bool bold = false;
    Owned<PangoFontDescription> description;
  };

  const PangoFontDescription* font(double points, bool bold) const {
    for (const Font& font : fonts_) {
      if (font.points == points && font.bold == bold) return font.description.get();
    }
    Owned<PangoFontDescription> made(pango_font_description_new());
    pango_font_description_set_family(made.get(), "DejaVu Sans, sans-serif");
    pango_font_description_set_weight(made.get(), bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(made.get(), points * PANGO_SCALE);
    return fonts_.emplace_back(Font{points, bold, std::move(made)}).description.get();
  }

  Owned<PangoFontMap> map_;
  Owned<PangoContext> context_;
  Owned<PangoLayout> layout_;
  mutable std::deque<Font> fonts_;  ///< a handful
};

double to_points(int pango_units) {
  return static_cast<double>(pango_units) / PANGO_SCALE;
}

/// Of a layout, in points: width, and from top to baseline to bottom.
TextMeasure::Size extents(PangoLayout* layout) {
  PangoRectangle logical{};
  pango_layout_get_extents(layout, nullptr, &logical);
  const double baseline = to_points(pango_layout_get_baseline(layout));
  return {to_points(logical.width), baseline, to_points(logical.height) - baseline};
}

/// Remembers what it measured: a page asks for the same words at many scales.
class PangoMeasure final : public TextMeasure {
 public:
  Size measure(const std::string& text, double points, bool bold) const override {
    Face& face = face_of(points, bold);
    const auto [entry, is_new] = face.known.try_emplace(text);
    if (is_new) entry->second = look(text, face);
    return entry->second;
  }

 private:
  /// One size of one weight. There are a handful.
  struct Face {
    double points = 0;
    bool bold = false;
    Size usual;  ///< of its own letters
    std::unordered_map<std::string, Size> known{};
  };

  Face& face_of(double points, bool bold) const {
    for (Face& face : faces_) {
      if (face.points == points && face.bold == bold) return face;
    }
    return faces_.emplace_back(Face{points, bold, extents(typesetter_.layout("Ag", points, bold))});
  }

  /// As high as the first font's letters, or as the ink where another font's letters reach further. Line
  /// heights of other fonts are not asked for: some are half as high again as their letters.
  Size look(const std::string& text, const Face& face) const {
    const bool plain = !first_invalid_utf8(text) &&
                       std::none_of(text.begin(), text.end(), [](char c) { return c >= 0 && c < ' '; });
    const auto run = plain ? typesetter_.run(text, face.points, face.bold) : std::nullopt;
    if (run) {
      return {to_points(run->width) / points_per_mm,
              std::max(face.usual.ascent, to_points(-run->highest)) / points_per_mm,
              std::max(face.usual.descent, to_points(run->lowest)) / points_per_mm};
    }
    PangoLayout* const layout = typesetter_.layout(text, face.points, face.bold);
    PangoRectangle ink{}, logical{};
    pango_layout_get_extents(layout, &ink, &logical);
    const double baseline = to_points(pango_layout_get_baseline(layout));
    return {to_points(logical.width) / points_per_mm,
            std::max(face.usual.ascent, baseline - to_points(ink.y)) / points_per_mm,
            std::max(face.usual.descent, to_points(ink.y + ink.height) - baseline) / points_per_mm};
  }

  Typesetter typesetter_;
  mutable std::deque<Face> faces_;
};

void set_ink(cairo_t* c, Ink ink) {
  cairo_set_source_rgb(c, ((ink >> 16U) & 0xFFU) / 255.0, ((ink >> 8U) & 0xFFU) / 255.0,
                       (ink & 0xFFU) / 255.0);
}

void trace(cairo_t* c, const Shape& shape) {
  cairo_new_path(c);
  for (const Shape::Command& s : shape.path) {
    const auto mm = [](double v) { return v * points_per_mm; };
    switch (s.op) {
      case 'M':
        cairo_move_to(c, mm(s.p1.x), mm(s.p1.y));
        break;
      case 'L':
        cairo_line_to(c, mm(s.p1.x), mm(s.p1.y));
        break;
      case 'C':
        cairo_curve_to(c, mm(s.p1.x), mm(s.p1.y), mm(s.p2.x), mm(s.p2.y), mm(s.p3.x), mm(s.p3.y));
        break;
      default:
        cairo_close_path(c);
    }
  }
}

void draw(cairo_t* c, const Shape& shape) {
  trace(c, shape);
  if (shape.fill) {
    set_ink(c, *shape.fill);
    cairo_fill_preserve(c);
  }
  if (shape.stroke) {
    set_ink(c, shape.stroke->ink);
    cairo_set_line_width(c, shape.stroke->width * points_per_mm);
    cairo_set_line_cap(c, shape.stroke->round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(c, shape.stroke->round ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
    std::vector<double> dashes = shape.stroke->dashes;
    for (double& d : dashes) d *= points_per_mm;
    cairo_set_dash(c, dashes.data(), static_cast<int>(dashes.size()), 0);
    cairo_stroke_preserve(c);
  }
  cairo_new_path(c);
}

void draw(cairo_t* c, const Words& words, const Typesetter& typesetter) {
  PangoLayout* const layout = typesetter.layout(words.text, words.points, words.bold);
  const TextMeasure::Size size = extents(layout);
  double shift = 0;
  if (words.anchor == Anchor::Middle) shift = size.width / 2;
  if (words.anchor == Anchor::End) shift = size.width;
  cairo_save(c);
  cairo_translate(c, words.at.x * points_per_mm, words.at.y * points_per_mm);
  cairo_rotate(c, -words.rotation * std::acos(-1.0) / 180.0);
  cairo_move_to(c, -shift, -size.ascent);
  set_ink(c, words.ink);
  pango_cairo_show_layout(c, layout);
  cairo_restore(c);
}

void draw(cairo_t* c, const Scene& scene, const Typesetter& typesetter) {
  for (const Group& group : scene.groups) {
    for (const auto& item : group.items) {
      if (const Shape* shape = std::get_if<Shape>(&item)) {
        draw(c, *shape);
      } else {
        draw(c, std::get<Words>(item), typesetter);
      }
    }
  }
  check(cairo_status(c));
}

cairo_status_t append_bytes(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

/// cairo 1.16 writes dates as "20260302000000Z" or with an offset, without the "D:" of ISO 32000-1, 7.9.4.
/// The prefix is put in and the time shortened by two digits (seconds may be left out), so that no offset in
/// the file's cross-reference table changes.
void repair_date(std::string& pdf, std::string_view key) {
  const std::size_t at = pdf.rfind(key);
  if (at == std::string::npos) return;
  const std::size_t open = pdf.find('(', at), close = pdf.find(')', at);
  if (open == std::string::npos || close == std::string::npos || pdf.compare(open + 1, 2, "D:") == 0) return;
  const std::size_t room = close - open - 1;
  std::string digits;
  for (std::size_t i = open + 1; i < close && digits.size() < 14 && pdf[i] >= '0' && pdf[i] <= '9'; ++i)
    digits += pdf[i];
  if (digits.size() < 8) return;
  digits.resize(std::min<std::size_t>({digits.size(), 12, (room - 2) / 2 * 2}));
  const std::string date = "D:" + digits;
  pdf.replace(open, room + 2, "(" + date + ")" + std::string(room - date.size(), ' '));
}

/// cairo 1.16 gives numbers to objects of a structure tree that it then does not write (beside the
/// destinations), and lists them as if they stood at the begin of the file. They are marked as free (ISO
/// 32000-1, 7.5.4), which reads as null; entries have one length, so nothing else moves.
void free_unwritten_objects(std::string& pdf) {
  constexpr std::size_t entry_length = 20;
  const std::size_t start = pdf.rfind("startxref\n");
  if (start == std::string::npos) return;
  const std::size_t table = std::strtoul(pdf.c_str() + start + 10, nullptr, 10);
  std::size_t at = pdf.find("\n0 ", table);
  if (at == std::string::npos) return;
  const std::size_t count = std::strtoul(pdf.c_str() + at + 3, nullptr, 10);
  at = pdf.find('\n', at + 1) + 1;
  for (std::size_t n = 1; n < count; ++n) {
    const std::size_t entry = at + n * entry_length;
    if (entry + entry_length > pdf.size()) return;
    const std::size_t object = std::strtoul(pdf.c_str() + entry, nullptr, 10);
    const std::string head = verbatim("{} 0 obj", n);
    if (pdf.compare(object, head.size(), head) != 0)
      pdf.replace(entry, entry_length, "0000000000 65535 f \n");
  }
}

/// Named places, links and outline entries. The library numbers pages from 1 and counts y from the top.
class PdfMarks {
 public:
  PdfMarks(cairo_surface_t* surface, cairo_t* c, const PageFacts& facts)
      : surface_(surface), c_(c), facts_(facts) {
    const auto place = [&](const PagePoint& to) { places_.emplace(to.name, to); };
    for (const OutlineEntry& entry : facts.outline) place(entry.to);
    for (const PageLink& link : facts.links) place(link.to);
  }

  /// What belongs to this page, which is the one being drawn.
  void add(std::size_t page) const {
    for (const auto& [name, place] : places_) {
      if (place.page != page) continue;
      tag(CAIRO_TAG_DEST, verbatim("name='{}' x=0 y={}", escaped(name), points(place.y)));
    }
    for (const PageLink& link : facts_.links) {
      if (link.page != page) continue;
      tag(CAIRO_TAG_LINK,
          verbatim("dest='{}' rect=[{} {} {} {}]", escaped(link.to.name), points(link.left), points(link.top),
                   points(link.right - link.left), points(link.bottom - link.top)));
    }
  }

  void add_outline() const {
    std::vector<int> parents{CAIRO_PDF_OUTLINE_ROOT};
    for (const OutlineEntry& entry : facts_.outline) {
      parents.resize(std::min(parents.size(), static_cast<std::size_t>(entry.level) + 1));
      const std::string to = verbatim("dest='{}'", escaped(entry.to.name));
      parents.push_back(cairo_pdf_surface_add_outline(surface_, parents.back(), entry.title.c_str(),
                                                      to.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN));
    }
  }

 private:
  static std::string points(double mm) { return verbatim("{:.3f}", mm * points_per_mm); }

  /// Attributes stand between apostrophes.
  static std::string escaped(const std::string& text) {
    std::string safe;
    for (const char c : text) {
      if (c == '\'' || c == '\\') safe += '\\';
      safe += c;
    }
    return safe;
  }

  void tag(const char* name, const std::string& attributes) const {
    cairo_tag_begin(c_, name, attributes.c_str());
    cairo_tag_end(c_, name);
  }

  cairo_surface_t* surface_;
  cairo_t* c_;
  const PageFacts& facts_;
  std::map<std::string, PagePoint> places_;
};

std::string render_pdf(const std::vector<Scene>& scenes, const PageFacts& facts, bool labels) {
  std::string bytes;
  const Scene& scene = scenes.front();
  const Owned<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(
      append_bytes, &bytes, scene.width * points_per_mm, scene.height * points_per_mm));
  check(cairo_surface_status(surface.get()));
  const auto set = [&](cairo_pdf_metadata_t key, const std::string& value) {
    cairo_pdf_surface_set_metadata(surface.get(), key, value.c_str());
  };
  set(CAIRO_PDF_METADATA_TITLE, facts.title);
  set(CAIRO_PDF_METADATA_AUTHOR, "plugward");
  set(CAIRO_PDF_METADATA_SUBJECT, facts.subject);
  if (!facts.keywords.empty()) set(CAIRO_PDF_METADATA_KEYWORDS, facts.keywords);
  set(CAIRO_PDF_METADATA_CREATOR, "plugward");
  std::string when = facts.date.empty() ? "2000-01-01" : facts.date;
  if (when.size() == 10) when += "T00:00:00Z";
  set(CAIRO_PDF_METADATA_CREATE_DATE, when);
  set(CAIRO_PDF_METADATA_MOD_DATE, when);
  {
    const Owned<cairo_t> c(cairo_create(surface.get()));
    const Typesetter typesetter;
    const PdfMarks marks(surface.get(), c.get(), facts);
    for (std::size_t i = 0; i < scenes.size(); ++i) {
      const Scene& page = scenes[i];
      cairo_pdf_surface_set_size(surface.get(), page.width * points_per_mm, page.height * points_per_mm);
      if (labels) cairo_pdf_surface_set_page_label(surface.get(), verbatim("{}", i + 1).c_str());
      draw(c.get(), page, typesetter);
      marks.add(i);
      cairo_show_page(c.get());
    }
    marks.add_outline();
    check(cairo_status(c.get()));
  }
  cairo_surface_finish(surface.get());
  check(cairo_surface_status(surface.get()));
  repair_date(bytes, "/CreationDate");
  repair_date(bytes, "/ModDate");
  free_unwritten_objects(bytes);
  return bytes;
}

/// The library's images have at most 32767 rows; a higher one is drawn coarser.
std::string render_png(const Scene& scene, double dpi) {
  dpi = std::min(dpi, 32000 * 25.4 / std::max(scene.width, scene.height));
  const double scale = dpi / 72.0;
  const Owned<cairo_surface_t> surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(scene.width / 25.4 * dpi)),
                                 static_cast<int>(std::ceil(scene.height / 25.4 * dpi))));
  check(cairo_surface_status(surface.get()));
  const Owned<cairo_t> c(cairo_create(surface.get()));
  set_ink(c.get(), style::paper);
  cairo_paint(c.get());
  cairo_scale(c.get(), scale, scale);
  draw(c.get(), scene, Typesetter());
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes));
  return bytes;
}

/// Outline of one letter at the origin, in mm. Curves are kept.
std::string outline_of(cairo_t* c, PangoFont* font, PangoGlyph glyph) {
  cairo_scaled_font_t* scaled = pango_cairo_font_get_scaled_font(reinterpret_cast<PangoCairoFont*>(font));
  if (scaled == nullptr || (glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0 || glyph == PANGO_GLYPH_EMPTY) return {};
  cairo_set_scaled_font(c, scaled);
  const cairo_glyph_t one{glyph, 0, 0};
  cairo_new_path(c);
  cairo_glyph_path(c, &one, 1);
  const Owned<cairo_path_t> path(cairo_copy_path(c));
  std::string data;
  for (int i = 0; i < path->num_data; i += path->data[i].header.length) {
    const cairo_path_data_t* p = &path->data[i];
    const auto pair = [&](int k) {
      return svg_number(p[k].point.x / points_per_mm) + " " + svg_number(p[k].point.y / points_per_mm);
    };
    switch (p->header.type) {
      case CAIRO_PATH_MOVE_TO:
        data += "M" + pair(1);
        break;
      case CAIRO_PATH_LINE_TO:
        data += "L" + pair(1);
        break;
      case CAIRO_PATH_CURVE_TO:
        data += "C" + pair(1) + " " + pair(2) + " " + pair(3);
        break;
      case CAIRO_PATH_CLOSE_PATH:
        data += "Z";
        break;
    }
  }
  // A path ends with a lone move after each close; it draws nothing.
  const std::size_t last = data.rfind('M');
  if (last != std::string::npos && data.find_first_of("LC", last) == std::string::npos) data.resize(last);
  return data;
}

GlyphRun glyph_run(cairo_t* c, const Typesetter& typesetter, const std::string& text, double points,
                   bool bold) {
  PangoLayout* const layout = typesetter.layout(text, points, bold);
  GlyphRun result{{}, extents(layout).width / points_per_mm};
  const Owned<PangoLayoutIter> iter(pango_layout_get_iter(layout));
  do {
    const PangoLayoutRun* run = pango_layout_iter_get_run_readonly(iter.get());
    if (run == nullptr) continue;
    PangoRectangle logical{};
    pango_layout_iter_get_run_extents(iter.get(), nullptr, &logical);
    int x = logical.x;
    for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
      const PangoGlyphInfo& g = run->glyphs->glyphs[i];
      result.glyphs.push_back({outline_of(c, run->item->analysis.font, g.glyph),
                               {to_points(x + g.geometry.x_offset) / points_per_mm,
                                to_points(g.geometry.y_offset) / points_per_mm}});
      x += g.geometry.width;
    }
  } while (pango_layout_iter_next_run(iter.get()) != FALSE);
  return result;
}

std::string render_svg(const Scene& scene, const std::string& prefix) {
  const Typesetter typesetter;
  const Owned<cairo_surface_t> surface(cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr));
  const Owned<cairo_t> c(cairo_create(surface.get()));
  cairo_set_tolerance(c.get(), 0.01);
  std::string text = write_svg(scene, prefix, [&](const std::string& words, double points, bool bold) {
    return glyph_run(c.get(), typesetter, words, points, bold);
  });
  check(cairo_status(c.get()));
  return text;
}

}  // namespace

std::string render(const Scene& scene, const PictureOptions& options) {
  switch (options.format) {
    case PictureFormat::Pdf:
      return render_pages({scene}, options);
    case PictureFormat::Png:
      return render_png(scene, options.dpi);
    case PictureFormat::Svg:
      break;
  }
  return render_svg(scene, options.prefix);
}

std::string render_pages(const std::vector<Scene>& pages, const PictureOptions& options) {
  assert(!pages.empty() && options.format == PictureFormat::Pdf);
  PageFacts facts;
  facts.title = pages.front().title;
  facts.subject = pages.front().description;
  facts.date = options.date;
  return render_pdf(pages, facts, false);
}

std::string render_book(const std::vector<Scene>& pages, const PageFacts& facts) {
  assert(!pages.empty());
  return render_pdf(pages, facts, true);
}

std::unique_ptr<TextMeasure> make_text_measure() {
  return std::make_unique<PangoMeasure>();
}

}  // namespace plugward
