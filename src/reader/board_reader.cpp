// SPDX-License-Identifier: MIT
// Two passes over the root's children, because elements may stand in any order: first what can be referred to
// (evidence, rails, jumpers), then what refers to it. Tested in tests/unit/reader/board_reader_test.cpp.
#include "reader/board_reader.h"

#include <algorithm>
#include <array>

#include "base/format.h"

namespace plugward {
namespace {

constexpr std::array<std::string_view, 5> children{"evidence", "rail", "jumper", "hole", "header"};

constexpr std::array<Word<int>, 4> rotations{{{"0", 0}, {"90", 90}, {"180", 180}, {"270", 270}}};
constexpr std::array<Word<bool>, 2> sides{{{"top", false}, {"underside", true}}};

/// One coordinate of something on the board; 0 when absent or bad.
Millimetres read_coordinate(const Attributes& a, Key key, Millimetres size, std::string_view extent) {
  const auto value = a.quantity<Millimetres>(key, Sign::NotNegative);
  if (value && size.value > 0.0 && *value > size) {
    a.conflict(key, format("{} {} is off the board, whose {} is {}", key_name(key), to_text(*value), extent,
                           to_text(size)))
        .help("x and y count from the lower left corner");
  }
  return value.value_or(Millimetres{});
}

void read_place(const Attributes& a, const Board& board, Millimetres& x, Millimetres& y) {
  x = read_coordinate(a, Key::X, board.width, "width");
  y = read_coordinate(a, Key::Y, board.height, "height");
}

void read_rail(const Reading& reading, XmlTree::Index index, Board& board, Ids& ids) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id, Key::Volt}, {Key::Limit});
  refuse_children(reading, index);
  const bool fresh = ids.declare(reading, a, static_cast<int>(board.rails.size()));
  Rail rail;
  rail.volts = a.range<Volts>(Key::Volt).value_or(Range<Volts>{});
  rail.limit = a.quantity<Amps>(Key::Limit, Sign::Positive);
  rail.span = a.element_span();
  if (a.has(Key::Limit)) rail.limit_span = a.span(Key::Limit);
  if (!fresh) return;
  rail.id = a.id(Key::Id);
  board.rails.push_back(std::move(rail));
}

/// The rails among which a jumper chooses: two or more, each once.
std::vector<std::string> read_rail_list(const Reading& reading, const Attributes& a, const Ids& rails) {
  std::vector<std::string> list;
  if (!a.has(Key::Rails)) return list;
  const std::string_view text = a.text(Key::Rails);
  if (text.empty()) return list;
  const Span whole = a.span(Key::Rails);
  const bool verbatim = whole.end - whole.begin == text.size();
  bool doubled = false;
  std::size_t begin = text.find_first_not_of(' ');
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string_view id = text.substr(begin, end - begin);
    const Span place = verbatim ? Span{whole.file, whole.begin + static_cast<std::uint32_t>(begin),
                                       whole.begin + static_cast<std::uint32_t>(end)}
                                : whole;
    if (std::find(list.begin(), list.end(), id) != list.end()) {
      doubled = true;
      reading.fault(Rule::Conflict, place, format("rail '{}' stands twice in 'rails'", id))
          .help("name each rail once");
    } else {
      rails.resolve(reading, id, place);
      list.emplace_back(id);
    }
    begin = text.find_first_not_of(' ', end);
  }
  if (list.size() < 2 && !doubled) {
    a.conflict(Key::Rails, "a jumper chooses between two rails or more")
        .help("without a choice there is no jumper: let the pins name the rail");
  }
  return list;
}

void read_jumper(const Reading& reading, XmlTree::Index index, Board& board, BoardNames& names) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id, Key::Rails}, {Key::Label, Key::X, Key::Y});
  refuse_children(reading, index);
  const bool fresh = names.jumpers.declare(reading, a, static_cast<int>(board.jumpers.size()));
  Jumper jumper;
  jumper.label = a.text(Key::Label);
  jumper.span = a.element_span();
  read_place(a, board, jumper.x, jumper.y);
  jumper.rails = read_rail_list(reading, a, names.rails);
  if (!fresh) return;
  jumper.id = a.id(Key::Id);
  board.jumpers.push_back(std::move(jumper));
}

void read_hole(const Reading& reading, XmlTree::Index index, Board& board) {
  const Attributes a(reading, reading.tree.node(index), {Key::X, Key::Y, Key::Diameter});
  refuse_children(reading, index);
  Hole hole;
  read_place(a, board, hole.x, hole.y);
  hole.diameter = a.quantity<Millimetres>(Key::Diameter, Sign::Positive).value_or(Millimetres{});
  board.holes.push_back(hole);
}

/// A header about whose pins nobody says where they are known from.
void check_evidence(const Reading& reading, const Attributes& a, const Board& board, const Header& header) {
  if (!board.evidence.empty() || !header.evidence.empty() || a.written(Key::Evidence)) return;
  const bool bare = std::any_of(header.pins.begin(), header.pins.end(), [](const Pin& pin) {
    return pin.function != PinFunction::Unknown && pin.evidence.empty();
  });
  if (!bare) return;
  reading
      .fault(Rule::NoEvidence, a.span(Key::Id),
             format("nothing says where header '{}' is known from", header.id))
      .help("declare an 'evidence' and name it here or at the board: evidence=\"...\"");
}

void read_header(const Reading& reading, XmlTree::Index index, Board& board, const BoardNames& names,
                 Ids& headers) {
  constexpr KeySet required = KeySet{Key::Id, Key::Use} | shape_required;
  constexpr KeySet optional =
      KeySet{Key::Label, Key::X, Key::Y, Key::Rotation, Key::Side, Key::Evidence} | shape_optional;
  const Attributes a(reading, reading.tree.node(index), required, optional);
  const bool fresh = headers.declare(reading, a, static_cast<int>(board.headers.size()));
  board.headers.emplace_back();
  Header& header = board.headers.back();
  header.id = a.id(Key::Id);
  header.label = a.text(Key::Label);
  header.use = a.word(Key::Use);
  Outline shape = read_shape(reading, a);
  header.family = std::move(shape.family);
  header.positions = shape.positions;
  header.rows = shape.rows;
  header.numbering = shape.numbering;
  header.key = shape.key;
  header.family_span = shape.family_span;
  header.positions_span = shape.positions_span;
  read_place(a, board, header.x, header.y);
  header.rotation = a.one_of(Key::Rotation, rotations).value_or(0);
  header.underside = a.one_of(Key::Side, sides).value_or(false);
  header.evidence = read_evidence_reference(reading, a, names.evidences);
  header.span = a.element_span();
  read_pins(reading, index, board, names, header);
  if (fresh) check_evidence(reading, a, board, header);
}

}  // namespace

std::unique_ptr<Board> read_board(const Reading& reading) {
  auto board = std::make_unique<Board>();
  constexpr KeySet required{Key::Id, Key::Title, Key::Width, Key::Height};
  const XmlNode& root = reading.tree.node(0);
  const Attributes a(reading, root, required, KeySet{Key::Revision, Key::Evidence} | root_keys);
  board->id = a.id(Key::Id);
  board->title = a.text(Key::Title);
  board->revision = a.text(Key::Revision);
  board->width = a.quantity<Millimetres>(Key::Width, Sign::Positive).value_or(Millimetres{});
  board->height = a.quantity<Millimetres>(Key::Height, Sign::Positive).value_or(Millimetres{});
  board->span = a.element_span();

  BoardNames names;
  std::vector<XmlTree::Index> jumpers;
  std::vector<XmlTree::Index> headers;
  bool misread = false;  // an unknown element may have been meant as a header
  for (const XmlTree::Index child : reading.tree.children(0)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name == "header") {
      headers.push_back(child);
    } else if (node.name == "rail") {
      read_rail(reading, child, *board, names.rails);
    } else if (node.name == "evidence") {
      read_evidence(reading, child, board->evidences, names.evidences);
    } else if (node.name == "jumper") {
      jumpers.push_back(child);
    } else if (node.name == "hole") {
      read_hole(reading, child, *board);
    } else {
      refuse_child(reading, root, node, children);
      misread = misread || !node.is_text();
    }
  }
  // A reference that is not declared is reported; it still tells that evidence was thought of.
  board->evidence = a.id(Key::Evidence);
  names.evidences.resolve(reading, a, Key::Evidence);
  for (const XmlTree::Index jumper : jumpers) read_jumper(reading, jumper, *board, names);
  Ids header_ids("header");
  board->headers.reserve(headers.size());
  for (const XmlTree::Index header : headers) read_header(reading, header, *board, names, header_ids);
  if (headers.empty() && !misread) {
    reading.fault(Rule::MissingElement, a.name_span(), "the board has no 'header'")
        .help("describe each connector of the board as a 'header' with its pins");
  }
  return board;
}

}  // namespace plugward
