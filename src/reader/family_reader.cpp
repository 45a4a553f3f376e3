// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/family_reader_test.cpp.
#include "reader/family_reader.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>

#include "base/format.h"
#include "reader/common_reader.h"

namespace plugward {
namespace {

constexpr std::array<Word<Certainty>, 7> certainties{{{"maker", Certainty::Maker},
                                                      {"quoted", Certainty::Quoted},
                                                      {"footprint", Certainty::Footprint},
                                                      {"secondary", Certainty::Secondary},
                                                      {"derived", Certainty::Derived},
                                                      {"memory", Certainty::Memory},
                                                      {"user", Certainty::User}}};
constexpr std::array<Word<Profile>, 7> profiles{{{"bare", Profile::Bare},
                                                 {"box-shroud", Profile::BoxShroud},
                                                 {"open-wafer", Profile::OpenWafer},
                                                 {"friction-ramp", Profile::FrictionRamp},
                                                 {"screw", Profile::Screw},
                                                 {"circular", Profile::Circular},
                                                 {"coded", Profile::Coded}}};
constexpr std::array<Word<Lance>, 3> lances{
    {{"contact", Lance::Contact}, {"housing", Lance::Housing}, {"none", Lance::None}}};

constexpr KeySet cited_keys{Key::Certainty, Key::Source};

template <class T>
Cited<T> cite(const Attributes& a, T value) {
  return {std::move(value), a.one_of(Key::Certainty, certainties).value_or(Certainty::User),
          std::string(a.text(Key::Source))};
}

void read_rating(const Reading&, const Attributes& a, Family& family) {
  Rating rating;
  rating.amps = a.quantity<Amps>(Key::Ampere, Sign::Positive).value_or(Amps{});
  rating.gauge = a.gauge(Key::Gauge).value_or(Gauge{});
  rating.circuits = a.number(Key::Circuits, 1, 1000).value_or(0);
  rating.condition = a.text(Key::Condition);
  family.ratings.push_back(cite(a, std::move(rating)));
}

void read_voltage(const Reading&, const Attributes& a, Family& family) {
  family.voltage = cite(a, a.quantity<Volts>(Key::Volt, Sign::Positive).value_or(Volts{}));
}

void read_wire(const Reading&, const Attributes& a, Family& family) {
  const auto from = a.gauge(Key::From);
  const auto to = a.gauge(Key::To);
  if (from && to && from->area > to->area) {
    a.conflict(Key::From, format("{} is thicker than {}", to_text(*from), to_text(*to)))
        .note(a.span(Key::To), "the thickest is stated here")
        .help("'from' is the thinnest wire, 'to' the thickest; a thinner wire has the larger AWG number");
  }
  if (from && to) family.wire = cite(a, Range<SquareMillimetres>::of(from->area, to->area));
}

void read_body(const Reading& reading, const Attributes& a, std::optional<Cited<Millimetres>>& extra,
               std::optional<Cited<Millimetres>>& depth) {
  if (const auto value = a.quantity<Millimetres>(Key::Extra, Sign::NotNegative)) extra = cite(a, *value);
  if (const auto value = a.quantity<Millimetres>(Key::Depth, Sign::Positive)) depth = cite(a, *value);
  if (a.written(Key::Extra) || a.written(Key::Depth)) return;
  reading.fault(Rule::MissingAttribute, a.name_span(), format("'{}' needs 'extra' or 'depth'", a.element()));
}

void read_plug_body(const Reading& reading, const Attributes& a, Family& family) {
  read_body(reading, a, family.plug_extra, family.plug_depth);
}

void read_header_body(const Reading& reading, const Attributes& a, Family& family) {
  read_body(reading, a, family.header_extra, family.header_depth);
}

void read_latch(const Reading&, const Attributes& a, Family& family) {
  family.latch = cite(a, a.yes_no(Key::Value).value_or(false));
}

void read_lance(const Reading&, const Attributes& a, Family& family) {
  family.lance = cite(a, a.one_of(Key::On, lances).value_or(Lance::None));
}

void read_first_cavity(const Reading&, const Attributes& a, Family& family) {
  family.first_cavity = cite(a, std::string(a.text(Key::Text)));
}

void read_release(const Reading&, const Attributes& a, Family& family) {
  family.release = cite(a, std::string(a.text(Key::Text)));
}

void read_reuse(const Reading&, const Attributes& a, Family& family) {
  family.reuse = cite(a, std::string(a.text(Key::Text)));
}

void read_mates(const Reading&, const Attributes& a, Family& family) {
  cite(a, 0);  // checks certainty and source
  const std::string_view id = a.id(Key::Family);
  if (!id.empty()) family.mates.emplace_back(id);
}

void read_caution(const Reading&, const Attributes& a, Family& family) {
  family.cautions.push_back(cite(a, std::string(a.text(Key::Text))));
}

struct FactRow {
  std::string_view element;
  bool many;  ///< may stand more than once
  KeySet required;
  KeySet optional;
  void (*read)(const Reading&, const Attributes&, Family&);
};

constexpr std::array<FactRow, 12> fact_rows{{
    {"rating", true, {Key::Ampere}, {Key::Gauge, Key::Circuits, Key::Condition}, read_rating},
    {"voltage", false, {Key::Volt}, {}, read_voltage},
    {"wire", false, {Key::From, Key::To}, {}, read_wire},
    {"plug", false, {}, {Key::Extra, Key::Depth}, read_plug_body},
    {"header", false, {}, {Key::Extra, Key::Depth}, read_header_body},
    {"latch", false, {Key::Value}, {}, read_latch},
    {"lance", false, {Key::On}, {}, read_lance},
    {"first-cavity", false, {Key::Text}, {}, read_first_cavity},
    {"release", false, {Key::Text}, {}, read_release},
    {"reuse", false, {Key::Text}, {}, read_reuse},
    {"mates", true, {Key::Family}, {}, read_mates},
    {"caution", true, {Key::Text}, {}, read_caution},
}};

constexpr auto fact_names = [] {
  std::array<std::string_view, fact_rows.size()> names{};
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = fact_rows[i].element;
  return names;
}();

void read_facts(const Reading& reading, XmlTree::Index element, Family& family) {
  std::array<Span, fact_rows.size()> first{};
  for (const XmlTree::Index child : reading.tree.children(element)) {
    const XmlNode& node = reading.tree.node(child);
    const auto name = std::find(fact_names.begin(), fact_names.end(), node.name);
    if (name == fact_names.end()) {
      refuse_child(reading, reading.tree.node(element), node, fact_names);
      continue;
    }
    const auto at = static_cast<std::size_t>(name - fact_names.begin());
    const FactRow& row = fact_rows[at];
    refuse_children(reading, child);
    const Attributes a(reading, node, row.required, row.optional | cited_keys);
    row.read(reading, a, family);
    if (first[at].known() && !row.many) {
      reading.fault(Rule::Conflict, a.name_span(), format("'{}' stands twice in one family", row.element))
          .note(first[at], "first here")
          .help("keep the better source");
    }
    if (!first[at].known()) first[at] = a.name_span();
  }
}

/// "2..16": fewest and most positions.
void read_counts(const Reading& reading, const Attributes& a, Family& family) {
  if (!a.has(Key::Positions)) return;
  const std::string_view text = a.text(Key::Positions);
  if (text.empty()) return;
  const std::size_t dots = text.find("..");
  const auto count = [](std::string_view part) {
    int value = 0;
    const auto [stop, error] = std::from_chars(part.data(), part.data() + part.size(), value);
    const bool fine =
        error == std::errc() && stop == part.data() + part.size() && part[0] != '0' && value >= 1;
    return fine ? value : 0;
  };
  const int fewest = dots == text.npos ? 0 : count(text.substr(0, dots));
  const int most = dots == text.npos ? 0 : count(text.substr(dots + 2));
  if (fewest == 0 || most < fewest || most > 1000) {
    reading
        .fault(Rule::BadNumber, a.span(Key::Positions),
               format("positions: '{}' is no range of whole numbers", text))
        .help("write fewest..most, all rows together, like 2..16");
    return;
  }
  family.fewest_positions = fewest;
  family.most_positions = most;
}

/// Families that are said to mate with one that nobody declares.
void check_mates(const Reading& reading, XmlTree::Index element, const Ids& ids) {
  for (const XmlTree::Index child : reading.tree.children(element)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name != "mates") continue;
    for (const XmlAttribute& attribute : reading.tree.attributes(node)) {
      const bool other = attribute.name != "family" || !is_id(attribute.value);
      if (other || !ids.complete() || ids.find(attribute.value) ||
          reading.catalogue.find(attribute.value) != nullptr)
        continue;
      std::vector<std::string> known = reading.catalogue.ids();
      known.insert(known.end(), ids.names().begin(), ids.names().end());
      refuse_family(reading, attribute.value, reading.tree.value_span(attribute), known);
    }
  }
}

Family read_family(const Reading& reading, XmlTree::Index index, Ids& ids, int number) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id, Key::Title, Key::Positions, Key::Profile},
                     {Key::Pitch, Key::RowPitch, Key::Rows});
  ids.declare(reading, a, number);
  Family family;
  family.id = a.id(Key::Id);
  family.title = a.text(Key::Title);
  family.span = a.element_span();
  family.pitch = a.quantity<Millimetres>(Key::Pitch, Sign::Positive).value_or(Millimetres{});
  family.row_pitch = a.quantity<Millimetres>(Key::RowPitch, Sign::Positive).value_or(Millimetres{});
  const auto rows = a.number(Key::Rows, 1, 2);
  family.rows = rows.value_or(1);
  const auto profile = a.one_of(Key::Profile, profiles);
  family.profile = profile.value_or(Profile::Bare);
  if (a.has(Key::RowPitch) && rows.value_or(a.has(Key::Rows) ? 2 : 1) == 1) {
    a.conflict(Key::RowPitch, "'row-pitch' has a meaning with two rows only")
        .help("delete it, or add rows=\"2\"");
  }
  if (!a.written(Key::Pitch) && profile && !enters_one_way(*profile)) {
    reading.fault(Rule::MissingAttribute, a.name_span(), format("family '{}' needs 'pitch'", family.id))
        .note(a.span(Key::Profile), "only a circular or coded family has none")
        .help(format("add {}", key_examples({Key::Pitch})));
  }
  read_counts(reading, a, family);
  read_facts(reading, index, family);
  return family;
}

}  // namespace

std::vector<Family> read_families(const Reading& reading) {
  constexpr std::array<std::string_view, 1> known{"family"};
  const XmlNode& root = reading.tree.node(0);
  const Attributes a(reading, root, {}, root_keys);
  std::vector<Family> families;
  Ids ids("family");
  for (const XmlTree::Index child : reading.tree.children(0)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name == "family") {
      families.push_back(read_family(reading, child, ids, static_cast<int>(families.size())));
    } else {
      refuse_child(reading, root, node, known);
    }
  }
  for (const XmlTree::Index child : reading.tree.children(0)) {
    if (reading.tree.node(child).name == "family") check_mates(reading, child, ids);
  }
  return families;
}

}  // namespace plugward
