// SPDX-License-Identifier: MIT
#include "draw/leads.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr Type tag_type{style::small_type, true};
constexpr double tag_height = 4.5;

double tag_length(const std::string& code, const TextMeasure& measure) {
  return text_width(code, tag_type, measure) + 1.8;
}

}  // namespace

LeadZone lead_zone(const Grid& grid, const LabelColumns& columns, const std::vector<std::string>& codes,
                   const TextMeasure& measure) {
  LeadZone zone;
  const double spread = std::abs(columns.width - grid.pitch / grid.rows) * (columns.count - 1) / 2;
  zone.fan = std::clamp(0.35 * spread, 4.0, 12.0);
  zone.tag = tag_height;
  if (columns.turned) {
    for (const std::string& code : codes) zone.tag = std::max(zone.tag, tag_length(code, measure));
  }
  return zone;
}

double label_edge(const Housing& h, const LeadZone& zone) {
  return h.leads_up ? leads_edge(h) - zone.height() : leads_edge(h) + zone.height();
}

void add_wire(Group& group, const Shape& path, const WireColour& colour, double width) {
  const auto along = [&](Ink ink, double w, std::vector<double> dashes, bool round) {
    Shape s = path;
    s.fill.reset();
    s.stroke = Stroke{ink, w, std::move(dashes), round};
    group.add(std::move(s));
  };
  along(style::outline, width + 2 * style::fine, {}, true);
  along(colour.first ? colour_info(*colour.first).rgb : style::paper, width, {}, true);
  if (colour.second) along(colour_info(*colour.second).rgb, width, {1.5, 1.5}, false);
  if (!colour.first) along(style::quiet, style::line, {0.8, 1.2}, false);
}

void add_tag(Group& group, const std::string& code, Point at, bool turned, const TextMeasure& measure) {
  const double length = tag_length(code, measure);
  const double w = turned ? tag_height - 0.5 : length, h = turned ? length : tag_height;
  group.add(rectangle({at.x - w / 2, at.y - h / 2}, w, h, outlined(style::paper, style::outline, style::fine),
                      0.8));
  const double half_capital = 0.365 * tag_type.points * style::mm_per_point;
  const Point baseline = turned ? Point{at.x + half_capital, at.y} : Point{at.x, at.y + half_capital};
  group.add(Words{baseline, code, tag_type.points, true, style::text, Anchor::Middle, turned ? 90.0 : 0.0});
}

Group draw_lead(const Housing& h, int cavity, const WireColour& colour, const LabelColumns& columns,
                const LeadZone& zone, const std::string& name, const TextMeasure& measure) {
  Group group{format("{} lead in cavity {}", name, cavity), {}};
  const double d = h.leads_up ? -1 : 1;
  const Point c = centre(h.grid, cavity);
  const double x = slot_x(columns, label_slot(h.grid, cavity));
  const int side = side_step(h.grid, cavity, h.leads_up);
  const double bypass = bypass_x(h, cavity);
  const double edge = leads_edge(h) + d * 0.8;
  const double spread = leads_edge(h) + d * zone.fan;
  const double end = label_edge(h, zone) - d * 1.7;

  Shape path;
  path.path.push_back({'M', c, {}, {}});
  if (side != 0) path.path.push_back({'L', {bypass, c.y}, {}, {}});
  path.path.push_back({'L', {bypass, edge}, {}, {}});
  const double reach = 0.5 * (spread - edge);
  path.path.push_back({'C', {bypass, edge + reach}, {x, spread - reach}, {x, spread}});
  path.path.push_back({'L', {x, end}, {}, {}});
  add_wire(group, path, colour, h.wire);
  add_tag(group, to_code(colour), {x, spread + d * (zone.tag / 2 + 0.4)}, columns.turned, measure);
  return group;
}

}  // namespace plugward
