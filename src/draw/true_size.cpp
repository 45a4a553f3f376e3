// SPDX-License-Identifier: MIT
// Tested in true_size_test.cpp, and measured back from the PDF file in tests/outside/sheet_pdf_test.py.
#include "draw/true_size.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/housing.h"
#include "draw/shapes.h"
#include "draw/sheet_flow_text.h"
#include "draw/sheet_frame.h"
#include "draw/style.h"
#include "draw/words.h"

namespace plugward {
namespace {

constexpr Type name_type = flow_type::small_strong, usual = flow_type::small;
constexpr double words_width = 84;  ///< beside a part, or below one that is wide
constexpr double mark_room = 4;     ///< for the mark of position 1 at the left
constexpr double between = 4;
constexpr double pin_side = 0.64;  ///< mm: a square pin of 0.025 in; others are drawn as if they were one

bool same(const TrueSizePart& a, const TrueSizePart& b) {
  return a.header == b.header && a.family == b.family && a.positions == b.positions && a.rows == b.rows &&
         a.numbering == b.numbering;
}

void note(std::vector<TrueSizePart>& parts, TrueSizePart part) {
  const auto known =
      std::find_if(parts.begin(), parts.end(), [&](const TrueSizePart& p) { return same(p, part); });
  if (known == parts.end()) {
    parts.push_back(std::move(part));
  } else {
    known->names.push_back(std::move(part.names.front()));
  }
}

struct Drawn {
  Group group;
  double width = 0, height = 0;
};

/// Body, key and positions; the upper left corner of everything is at the origin.
Drawn draw_part(const TrueSizePart& part, const Family* family) {
  const BodySize size = part.header ? header_size(family, part.rows, 1) : plug_size(family, part.rows, 1);
  Grid grid{part.positions, part.rows, part.numbering, View::WireSide, size.pitch, size.row_pitch, {}, 0};
  const KeySide key = family ? key_side(*family) : KeySide::None;
  const bool keyed = key == KeySide::Near || key == KeySide::Far;
  const double key_depth = keyed && !part.header ? 0.8 : 0;
  const double top = keyed && key_on_top(key) ? key_depth : 0;
  grid.origin = {mark_room + size.side, top + size.half_depth + (part.rows - 1) * size.row_pitch / 2};
  const Extent e = extent(grid);
  const Box body{e.left - size.side, top, e.right + size.side, top + 2 * size.half_depth};
  Drawn drawn{{format("{} at true size", part.header ? tr("header") : tr("housing")), {}},
              body.right + 0.5,
              body.bottom + (keyed && !key_on_top(key) ? key_depth : 0)};
  Look look = outlined(part.header ? style::shroud : style::housing, style::outline, 0.2);
  if (!size.stated) look.stroke->dashes = {1.0, 0.7};
  if (keyed) {
    const double width = std::min(0.4 * (body.right - body.left), 6.0);
    const double depth = part.header ? std::min(0.6, 0.3 * size.half_depth) : key_depth;
    const double outside = part.header ? 0 : depth;
    const double y = key_on_top(key) ? body.top - outside : body.bottom + outside - depth;
    if (!part.header)
      drawn.group.add(rectangle({(body.left + body.right - width) / 2, y}, width, depth, look));
    drawn.group.add(rectangle({body.left, body.top}, body.right - body.left, body.bottom - body.top, look));
    if (part.header) {
      drawn.group.add(rectangle({(body.left + body.right - width) / 2, y}, width, depth,
                                outlined(style::paper, style::outline, 0.15)));
    }
  } else {
    drawn.group.add(rectangle({body.left, body.top}, body.right - body.left, body.bottom - body.top, look));
  }
  const double side = part.header ? pin_side : std::clamp(0.45 * size.pitch, 0.6, 1.6);
  for (int n = 1; n <= part.positions; ++n) {
    const Point c = centre(grid, n);
    const Ink ink = part.header ? style::pin : style::cavity;
    drawn.group.add(
        rectangle({c.x - side / 2, c.y - side / 2}, side, side, outlined(ink, style::outline, 0.15)));
  }
  drawn.group.add(first_mark(grid, body));
  return drawn;
}

std::string pitch_words(const Family& family, int rows) {
  if (!(family.pitch.value > 0)) return tr("pitch not stated");
  if (rows > 1 && family.row_pitch.value > 0 &&
      std::abs(family.row_pitch.value - family.pitch.value) > 1e-9) {
    return format("pitch {:.2f} mm, rows {:.2f} mm apart", family.pitch.value, family.row_pitch.value);
  }
  return format("pitch {:.2f} mm", family.pitch.value);
}

/// What stands beside a part: what it is, its pitch, where it is used.
FlowPiece piece_of(const TrueSizePart& part, const Family* family, double width, const TextMeasure& measure) {
  Drawn drawn = draw_part(part, family);
  const double room = width - drawn.width - 4;
  const bool below = room < words_width;
  const double left = below ? mark_room : drawn.width + 4, text_width = below ? width - mark_room : room;
  std::vector<std::string> first =
      wrap_at_most(format("{} of {} positions{}: {}", part.header ? tr("Header") : tr("Housing"),
                          part.positions, part.rows > 1 ? format(" in {} rows", part.rows) : std::string(),
                          family ? std::string(tr(std::string_view(family->title))) : part.family),
                   text_width, 3, name_type, measure);
  std::vector<std::string> rest;
  if (family != nullptr) rest.push_back(pitch_words(*family, part.rows));
  for (std::string& line :
       wrap_at_most(format("is {}", join(part.names, ", ")), text_width, 5, usual, measure))
    rest.push_back(std::move(line));
  const double line = style::line_height(usual.points);
  double y = below ? drawn.height + 1.5 : 0;
  Group words{tr("words"), {}};
  double baseline =
      add_lines(words, first, {left, y + baseline_of(name_type, measure)}, name_type, style::text);
  add_lines(words, rest, {left, baseline}, usual, style::text);
  y += line * static_cast<double>(first.size() + rest.size());
  FlowPiece piece;
  piece.before = between;
  piece.height = std::max(drawn.height, y) + 0.5;
  // A part too wide for the paper is named, not drawn: half a part at true size would mislead.
  if (drawn.width <= width) piece.groups.push_back(std::move(drawn.group));
  piece.groups.push_back(std::move(words));
  return piece;
}

/// How to check the printer, with the rule.
FlowPiece rule_piece(double width, const TextMeasure& measure) {
  FlowPiece piece;
  Group group{tr("rule"), {}};
  add_ruler(group, {66, 4.5});
  const std::vector<std::string> lines = wrap_at_most(
      tr("Print at 100 % (\"actual size\", not \"fit to page\"). The rule at the left must be 50 mm long: if "
         "it "
         "is "
         "not, lay no part on this page. The triangle points at position 1; housings lie with their wires "
         "towards "
         "you, headers with their pins. Dashed outlines are not in the catalogue; their pitch is."),
      width - 72, 6, usual, measure);
  add_lines(group, lines, {72, baseline_of(usual, measure)}, usual, style::text);
  piece.height = std::max(7.0, style::line_height(usual.points) * static_cast<double>(lines.size())) + 3;
  piece.groups.push_back(std::move(group));
  return piece;
}

}  // namespace

TrueSizeParts true_size_parts(const Fitting& fitting) {
  TrueSizeParts all{fitting.catalogue, {}};
  for (const Placement& placement : fitting.placements) {
    const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(placement.plug)];
    note(all.parts, {false, plug.family, plug.positions, plug.rows, plug.numbering, {plug.id}});
  }
  for (const Placement& placement : fitting.placements) {
    const Header& header = fitting.board->headers[static_cast<std::size_t>(placement.header)];
    note(all.parts,
         {true, header.family, header.positions, header.rows, header.numbering, {header_name(header)}});
  }
  return all;
}

std::vector<Scene> true_size_pages(const TrueSizeParts& all, PictureRoom page, const TextMeasure& measure) {
  const auto head = std::make_shared<const FlowPiece>(rule_piece(page.width, measure));
  std::vector<FlowPiece> pieces{*head};
  pieces.front().with_next = true;
  for (const TrueSizePart& part : all.parts) {
    FlowPiece piece = piece_of(part, all.catalogue->find(part.family), page.width, measure);
    piece.again = head;
    pieces.push_back(std::move(piece));
  }
  const FlowRoom room{0, 0, page.height};
  FlowPages flowed = flow(pieces, room, room, measure);
  std::vector<Scene> scenes;
  for (std::vector<Group>& groups : flowed.pages) {
    scenes.push_back({page.width, page.height, tr("True size"), "", std::move(groups)});
  }
  return scenes;
}

}  // namespace plugward
