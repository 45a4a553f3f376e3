// SPDX-License-Identifier: MIT
// Time of a sheet's PDF against a bare program that shows the same texts and strokes with cairo and pango,
// laid out beforehand. Bars: 1.5 times; a sheet of 30 pages in under a second.
#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <functional>

#include "base/format.h"
#include "draw/canvas.h"
#include "draw/sheet_pages.h"
#include "sheet/documents.h"
#include "support/bench_row.h"
#include "support/machine.h"
#include "unit/draw/looms.h"
#include "unit/draw/sheet_documents.h"

namespace plugward {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;

/// Processor seconds.
double best_of(int runs, const std::function<void()>& work) {
  double best = 1e9;
  for (int i = 0; i < runs; ++i) {
    const std::clock_t start = std::clock();
    work();
    best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return best;
}

cairo_status_t count_bytes(void* bytes, const unsigned char*, unsigned int length) {
  *static_cast<std::size_t*>(bytes) += length;
  return CAIRO_STATUS_SUCCESS;
}

void ink(cairo_t* c, Ink value) {
  cairo_set_source_rgb(c, ((value >> 16U) & 0xFFU) / 255.0, ((value >> 8U) & 0xFFU) / 255.0,
                       (value & 0xFFU) / 255.0);
}

void show(cairo_t* c, const Shape& shape) {
  for (const Shape::Command& s : shape.path) {
    const auto mm = [](double v) { return v * points_per_mm; };
    if (s.op == 'M') cairo_move_to(c, mm(s.p1.x), mm(s.p1.y));
    if (s.op == 'L') cairo_line_to(c, mm(s.p1.x), mm(s.p1.y));
    if (s.op == 'C')
      cairo_curve_to(c, mm(s.p1.x), mm(s.p1.y), mm(s.p2.x), mm(s.p2.y), mm(s.p3.x), mm(s.p3.y));
    if (s.op == 'Z') cairo_close_path(c);
  }
  if (shape.fill) {
    ink(c, *shape.fill);
    cairo_fill_preserve(c);
  }
  if (shape.stroke) {
    ink(c, shape.stroke->ink);
    cairo_set_line_width(c, shape.stroke->width * points_per_mm);
    cairo_stroke_preserve(c);
  }
  cairo_new_path(c);
}

void show(cairo_t* c, PangoLayout* layout, const Words& words) {
  PangoFontDescription* font =
      pango_font_description_from_string(words.bold ? "DejaVu Sans Bold" : "DejaVu Sans");
  pango_font_description_set_absolute_size(font, words.points * PANGO_SCALE);
  pango_layout_set_font_description(layout, font);
  pango_font_description_free(font);
  pango_layout_set_text(layout, words.text.data(), static_cast<int>(words.text.size()));
  PangoRectangle logical{};
  pango_layout_get_extents(layout, nullptr, &logical);
  const double width = static_cast<double>(logical.width) / PANGO_SCALE;
  const double shift = words.anchor == Anchor::Start ? 0 : words.anchor == Anchor::Middle ? width / 2 : width;
  cairo_save(c);
  cairo_translate(c, words.at.x * points_per_mm, words.at.y * points_per_mm);
  cairo_rotate(c, -words.rotation * std::acos(-1.0) / 180.0);
  cairo_move_to(c, -shift, -static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE);
  ink(c, words.ink);
  pango_cairo_show_layout(c, layout);
  cairo_restore(c);
}

std::size_t bare_pdf(const std::vector<Scene>& pages) {
  std::size_t bytes = 0;
  cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(
      count_bytes, &bytes, pages[0].width * points_per_mm, pages[0].height * points_per_mm);
  cairo_t* c = cairo_create(surface);
  // A program begins without fonts; the library's default map would keep them from run to run.
  PangoFontMap* fonts = pango_cairo_font_map_new();
  PangoContext* context = pango_font_map_create_context(fonts);
  PangoLayout* layout = pango_layout_new(context);
  for (const Scene& page : pages) {
    for (const Group& group : page.groups) {
      for (const auto& item : group.items) {
        if (const Shape* shape = std::get_if<Shape>(&item)) {
          show(c, *shape);
        } else {
          show(c, layout, std::get<Words>(item));
        }
      }
    }
    cairo_show_page(c);
  }
  g_object_unref(layout);
  g_object_unref(context);
  g_object_unref(fonts);
  cairo_destroy(c);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
  return bytes;
}

struct Paper {
  const char* name;
  SheetPagesOptions options;
};

void compare(const char* name, const std::function<std::string(const SheetPagesOptions&)>& ours,
             const std::function<SheetPages(const SheetPagesOptions&)>& pages_of) {
  for (const Paper& paper :
       {Paper{"A4 portrait", {}}, Paper{"Letter landscape", {true, true, View::WireSide}}}) {
    const SheetPages pages = pages_of(paper.options);
    const double bare = best_of(7, [&] { bare_pdf(pages.pages); });
    const double whole = best_of(7, [&] { ours(paper.options); });
    const double layout = best_of(7, [&] { pages_of(paper.options); });
    test::bench_row(format("sheet of {}, {}, {} pages, as PDF", name, paper.name, pages.pages.size()),
                    "bare cairo and pango, same texts and strokes", whole / bare, "at most 1.5");
    test::bench_detail(format("{:.0f} ms, of these layout {:.0f} ms; bare {:.0f} ms", whole * 1e3,
                              layout * 1e3, bare * 1e3));
  }
}

/// The words are measured anew in each run. What the plugs need is known before: judging is not drawing.
void compare(const char* name, const sheet::Document& document, const SheetPictures& pictures) {
  compare(
      name,
      [&](const SheetPagesOptions& options) {
        return sheet_pdf(document, pictures, options, *make_text_measure());
      },
      [&](const SheetPagesOptions& options) {
        return sheet_pages(document, pictures, options, *make_text_measure());
      });
}

void run() {
  const test::LoomPtr loom = test::shipped_loom(14);
  compare("14 plugs placed", test::every_block(14), SheetPictures(loom->fitting, loom->advice));

  const auto machine = test::Machine::shipped("wren-a4", "heron-m7");
  const Fitting fitting = machine->fitting();
  const auto plan = plan_swap(fitting, *machine->to, {});
  sheet::SheetFacts told;
  told.machine = "Wren no. 3";
  told.date = "2026-11-25";
  compare("swap of a machine", sheet::swap_document(swap_papers(*plan), told), SheetPictures(*plan));
}

}  // namespace
}  // namespace plugward

int main() {
  plugward::run();
}
