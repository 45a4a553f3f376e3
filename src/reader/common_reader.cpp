// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/board_reader_test.cpp.
#include "reader/common_reader.h"

#include <array>

#include "base/edit_distance.h"
#include "base/format.h"
#include "catalogue/family_search.h"

namespace plugward {
namespace {

/// Only a loom tells of what is planned: the last of them.
constexpr std::array<Word<EvidenceKind>, 9> loom_evidence_kinds{
    {{"board-print", EvidenceKind::BoardPrint},
     {"makers-drawing", EvidenceKind::MakersDrawing},
     {"schematic", EvidenceKind::Schematic},
     {"measurement", EvidenceKind::Measurement},
     {"photograph", EvidenceKind::Photograph},
     {"data-sheet", EvidenceKind::DataSheet},
     {"standard", EvidenceKind::Standard},
     {"assumption", EvidenceKind::Assumption},
     {"plan", EvidenceKind::Plan}}};
constexpr auto evidence_kinds = [] {
  std::array<Word<EvidenceKind>, loom_evidence_kinds.size() - 1> kinds{};
  for (std::size_t i = 0; i < kinds.size(); ++i) kinds[i] = loom_evidence_kinds[i];
  return kinds;
}();
constexpr std::array<Word<Numbering>, 2> numberings{
    {{"zigzag", Numbering::Zigzag}, {"by-row", Numbering::ByRow}}};
constexpr std::array<Word<KeyState>, 3> key_states{
    {{"intact", KeyState::Intact}, {"removed", KeyState::Removed}, {"unknown", KeyState::Unknown}}};

void check_against_family(const Reading& reading, const Attributes& a, const Outline& shape,
                          const Family& family) {
  const auto note_family = [&](Diagnostic& diagnostic) {
    if (family.span.known()) diagnostic.note(family.span, format("family '{}' is declared here", family.id));
  };
  if (shape.rows > family.rows) {
    note_family(a.conflict(Key::Rows, format("'{}' is made with one row only", family.id)));
  } else if (shape.positions < family.fewest_positions || shape.positions > family.most_positions) {
    Diagnostic& fault =
        reading.fault(Rule::PositionRange, shape.positions_span,
                      format("'{}' is made with {} to {} positions, not {}", family.id,
                             family.fewest_positions, family.most_positions, shape.positions));
    fault.help("count again, or name another family: 'plugward list families' tells how many each has");
    note_family(fault);
  }
}

}  // namespace

void read_evidence(const Reading& reading, XmlTree::Index index, std::vector<Evidence>& list, Ids& ids) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id, Key::Kind},
                     {Key::Revision, Key::Date, Key::Note});
  refuse_children(reading, index);
  const bool fresh = ids.declare(reading, a, static_cast<int>(list.size()));
  Evidence evidence;
  const bool in_loom = reading.tree.node(0).name == "loom";
  evidence.kind = (in_loom ? a.one_of(Key::Kind, loom_evidence_kinds) : a.one_of(Key::Kind, evidence_kinds))
                      .value_or(EvidenceKind::Assumption);
  evidence.revision = a.text(Key::Revision);
  evidence.date = a.date(Key::Date);
  evidence.note = a.text(Key::Note);
  evidence.span = a.element_span();
  if (!fresh) return;
  evidence.id = a.id(Key::Id);
  list.push_back(std::move(evidence));
}

std::string_view read_evidence_reference(const Reading& reading, const Attributes& a, const Ids& evidences) {
  return evidences.reference(reading, a, Key::Evidence);
}

void refuse_family(const Reading& reading, std::string_view id, Span span,
                   const std::vector<std::string>& known) {
  Diagnostic& diagnostic =
      reading.fault(Rule::UnknownFamily, span, format("unknown connector family '{}'", id));
  const std::vector<std::string_view> names(known.begin(), known.end());
  const std::vector<std::string> like = families_like(reading.catalogue, id);
  if (!nearest(id, known).empty() || like.empty()) {
    suggest(diagnostic, id, names, "known families");
  } else if (like.size() == 1) {
    diagnostic.help(format("did you mean '{}'?", like[0]));
  } else {
    diagnostic.help(format("families like it: {}", join(like, ", ")));
  }
  diagnostic.help("'plugward list families' shows them; one of your own goes into a 'families' file");
}

Outline read_shape(const Reading& reading, const Attributes& a) {
  Outline shape;
  shape.family = a.id(Key::Family);
  shape.family_span = a.span(Key::Family);
  shape.positions = a.number(Key::Positions, 1, reading.limits.positions).value_or(0);
  shape.positions_span = a.span(Key::Positions);
  const std::optional<int> rows = a.number(Key::Rows, 1, 2);
  shape.rows = rows.value_or(1);
  shape.numbering = a.one_of(Key::Numbering, numberings).value_or(Numbering::Zigzag);
  shape.key = a.one_of(Key::Key, key_states).value_or(KeyState::Intact);
  if (a.has(Key::Numbering) && shape.rows == 1 && (rows || !a.has(Key::Rows))) {
    a.conflict(Key::Numbering, "'numbering' has a meaning with two rows only")
        .help("delete it, or add rows=\"2\"");
  }
  if (shape.positions % shape.rows != 0) {
    a.conflict(Key::Positions,
               format("{} positions cannot stand in {} equal rows", shape.positions, shape.rows))
        .note(a.span(Key::Rows), "the rows are stated here")
        .help("'positions' counts all rows together");
  }
  if (shape.family.empty()) return shape;
  const Family* family = reading.catalogue.find(shape.family);
  if (family == nullptr) {
    refuse_family(reading, shape.family, shape.family_span, reading.catalogue.ids());
  } else if (shape.positions > 0) {
    check_against_family(reading, a, shape, *family);
  }
  return shape;
}

}  // namespace plugward
