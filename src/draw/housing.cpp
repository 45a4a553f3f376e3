// SPDX-License-Identifier: MIT
#include "draw/housing.h"

#include <algorithm>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double usual_pitch = 4.0;  ///< mm, of a family without a pitch in a row (circular)
constexpr double strip = 4.6;        ///< height of a row of numbers outside the body
constexpr double key_height = 1.8;

double pitch_of(const Family* family) {
  return family != nullptr && family->pitch.value > 0 ? family->pitch.value : usual_pitch;
}

BodySize size_of(const Family* family, int rows, double scale, const std::optional<Cited<Millimetres>>& extra,
                 const std::optional<Cited<Millimetres>>& depth) {
  BodySize size;
  const double pitch = pitch_of(family);
  const double row_pitch = family != nullptr && family->row_pitch.value > 0 ? family->row_pitch.value : pitch;
  size.pitch = pitch * scale;
  size.row_pitch = row_pitch * scale;
  size.side = (extra ? extra->value.value : pitch) / 2 * scale;
  const double usual_depth =
      (rows - 1) * row_pitch + pitch * (family != nullptr && family->profile != Profile::Bare ? 1.6 : 1.0);
  size.half_depth =
      std::max(depth ? depth->value.value : usual_depth, (rows - 1) * row_pitch + 0.8 * pitch) / 2 * scale;
  // Square pins stand at the pitch and their housings are cut to it; nothing else is drawn as if it were
  // known.
  size.stated = (extra && depth) || (family != nullptr && family->profile == Profile::Bare);
  return size;
}

bool has_key_on(KeySide key, bool top) {
  return (key == KeySide::Near || key == KeySide::Far) && key_on_top(key) == top;
}

bool number_outside(const Housing& h, int cavity) {
  const double y = centre(h.grid, cavity).y;
  const Extent e = extent(h.grid);
  return h.leads_up ? y > e.bottom - 0.01 : y < e.top + 0.01;
}

}  // namespace

BodySize plug_size(const Family* family, int rows, double scale) {
  static const std::optional<Cited<Millimetres>> none;
  return size_of(family, rows, scale, family ? family->plug_extra : none, family ? family->plug_depth : none);
}

BodySize header_size(const Family* family, int rows, double scale) {
  static const std::optional<Cited<Millimetres>> none;
  return size_of(family, rows, scale, family ? family->header_extra : none,
                 family ? family->header_depth : none);
}

double housing_height(const BodySize& size, const Family* family) {
  const KeySide key = family ? key_side(*family) : KeySide::None;
  const bool keyed = key == KeySide::Near || key == KeySide::Far;
  return 2 * size.half_depth + (keyed ? key_height : 0) + strip;
}

Housing place_housing(Grid grid, const BodySize& size, const Family* family, double top, bool leads_up) {
  Housing h;
  h.leads_up = leads_up;
  if (family != nullptr) {
    h.key = key_side(*family);
    h.key_name = key_word(*family);
  }
  const double above = (leads_up ? 0 : strip) + (has_key_on(h.key, true) ? key_height : 0);
  const double middle = top + above + size.half_depth;
  grid.origin.y = middle + (grid.rows - 1) * size.row_pitch / 2;
  h.grid = grid;
  const Extent e = extent(grid);
  h.body = {e.left - size.side, middle - size.half_depth, e.right + size.side, middle + size.half_depth};
  const double tightest =
      grid.rows > 1 ? std::min(size.pitch, size.row_pitch) - 3.9 : 2 * size.half_depth - 1.2;
  h.cavity = std::clamp(0.58 * size.pitch, 1.2, std::max(1.4, tightest));
  const double gap = size.pitch - h.cavity;
  h.wire = std::clamp(0.2 * size.pitch, 1.0, 2.4);
  if (grid.rows > 1) h.wire = std::min({h.wire, 0.15 * size.pitch, 0.38 * gap});
  h.wire = std::min(h.wire, 0.7 * h.cavity);
  return h;
}

double bypass_x(const Housing& h, int cavity) {
  // Nearly half way to the next column: the numbers need the room beside their cavities, and a move may pass
  // too.
  const int side = side_step(h.grid, cavity, h.leads_up);
  const double x = centre(h.grid, cavity).x + side * (0.55 * h.grid.pitch - h.wire / 2);
  if (h.grid.view == View::WireSide) return x;
  return std::clamp(x, h.body.left + h.wire / 2 + 0.3,
                    h.body.right - h.wire / 2 - 0.3);  // hidden behind the body
}

double numbers_edge(const Housing& h) {
  const double key = has_key_on(h.key, !h.leads_up) ? key_height : 0;
  return h.leads_up ? h.body.bottom + key + strip : h.body.top - key - strip;
}

double leads_edge(const Housing& h) {
  const double key = has_key_on(h.key, h.leads_up) ? key_height : 0;
  return h.leads_up ? h.body.top - key : h.body.bottom + key;
}

std::vector<Point> way_out(const Housing& h, int cavity) {
  const Point c = centre(h.grid, cavity);
  const double edge = numbers_edge(h);
  if (number_outside(h, cavity)) return {{c.x, edge}};
  // A lead of the other row passes on one side of this gap, so the way out keeps to the other.
  const int side = side_step(h.grid, cavity, !h.leads_up);
  const double x = c.x + side * 0.38 * h.grid.pitch;
  return {{c.x + side * h.cavity / 2, c.y}, {x, c.y}, {x, edge}};
}

Shape first_mark(const Grid& grid, const Box& body) {
  const double y = centre(grid, 1).y;
  const bool left = grid.view == View::WireSide;
  const double tip = left ? body.left - 0.7 : body.right + 0.7, back = left ? tip - 2.8 : tip + 2.8;
  return polygon({{tip, y}, {back, y - 1.7}, {back, y + 1.7}}, filled(style::outline));
}

Group draw_body(const Housing& h, const std::string& name) {
  Group group{format("{} housing", name), {}};
  const double w = h.body.right - h.body.left;
  const Look look = outlined(style::housing, style::outline, style::line);
  if (h.key == KeySide::Near || h.key == KeySide::Far) {
    const double kw = std::min(0.4 * w, 14.0), x = (h.body.left + h.body.right - kw) / 2;
    group.add(
        rectangle({x, key_on_top(h.key) ? h.body.top - key_height : h.body.bottom}, kw, key_height, look));
  }
  group.add(rectangle({h.body.left, h.body.top}, w, h.body.bottom - h.body.top, look, 0.8));
  group.add(first_mark(h.grid, h.body));
  return group;
}

Group draw_cavity(const Housing& h, int cavity, bool filled_in, const std::string& name) {
  Group group{format("{} cavity {}", name, cavity), {}};
  const Point c = centre(h.grid, cavity);
  const auto square = [&](double side, const Look& look) {
    group.add(rectangle({c.x - side / 2, c.y - side / 2}, side, side, look));
  };
  square(h.cavity, outlined(style::cavity, style::outline, style::fine));
  if (filled_in) {
    square(h.cavity * 0.66, outlined(style::contact, style::outline, style::fine));
    if (h.grid.view == View::MatingFace) square(h.cavity * 0.28, filled(style::outline));
  }
  double baseline = 0;
  const double capital = 0.73 * style::small_type * style::mm_per_point;
  if (h.leads_up) {
    baseline = number_outside(h, cavity) ? numbers_edge(h) - strip + 0.9 + capital
                                         : c.y + h.cavity / 2 + 0.6 + capital;
  } else {
    baseline = number_outside(h, cavity) ? numbers_edge(h) + strip - 0.9 : c.y - h.cavity / 2 - 0.7;
  }
  group.add(
      Words{{c.x, baseline}, format("{}", cavity), style::small_type, true, style::text, Anchor::Middle, 0});
  return group;
}

}  // namespace plugward
