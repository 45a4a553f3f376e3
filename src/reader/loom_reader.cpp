// SPDX-License-Identifier: MIT
// Elements may stand in any order: evidence and harnesses first, then what names them.
// Tested in tests/unit/reader/loom_reader_test.cpp.
#include "reader/loom_reader.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <utility>

#include "base/format.h"
#include "reader/common_reader.h"

namespace plugward {
namespace {

constexpr std::array<std::string_view, 7> children{"evidence", "fitted", "harness", "seat",
                                                   "loose",    "free",   "taken"};

/// What a loom may say once only, and where it did.
class Said {
 public:
  /// False when `name` was there before: then `message` is reported at `place`.
  bool once(const Reading& reading, const std::string& name, Span place, const std::string& message) {
    const auto [found, fresh] = places_.emplace(name, place);
    if (!fresh) {
      reading.fault(Rule::Conflict, place, message)
          .note(found->second, "it stands here already")
          .help("leave out the one that is not so on the machine");
    }
    return fresh;
  }

 private:
  std::map<std::string, Span> places_;
};

struct LoomNames {
  Ids evidences{"evidence"};
  Ids harnesses{"harness"};
  Said jumpers, plugs, headers;
};

/// A statement that nothing backs.
void check_evidence(const Reading& reading, const Attributes& a, const Loom& loom, Key key,
                    const std::string& what) {
  if (a.written(Key::Evidence) || !loom.evidence.empty()) return;
  reading.fault(Rule::NoEvidence, a.span(key), format("nothing says how it is known {}", what))
      .help("declare an 'evidence' and name it here or at the loom: evidence=\"...\"");
}

void read_fitted(const Reading& reading, XmlTree::Index index, Loom& loom, LoomNames& names) {
  const Attributes a(reading, reading.tree.node(index), {Key::Jumper}, {Key::Rail, Key::Evidence, Key::Note});
  refuse_children(reading, index);
  FittedJumper fitted;
  fitted.jumper = a.id(Key::Jumper);
  fitted.rail = a.id(Key::Rail);
  fitted.evidence = read_evidence_reference(reading, a, names.evidences);
  fitted.note = a.text(Key::Note);
  fitted.span = a.element_span();
  fitted.jumper_span = a.span(Key::Jumper);
  fitted.rail_span = a.span(Key::Rail);
  if (fitted.jumper.empty()) return;
  if (!names.jumpers.once(reading, fitted.jumper, fitted.jumper_span,
                          format("jumper '{}' stands twice", fitted.jumper))) {
    return;
  }
  if (!fitted.rail.empty()) {
    check_evidence(reading, a, loom, Key::Jumper, format("where jumper '{}' sits", fitted.jumper));
  }
  loom.jumpers.push_back(std::move(fitted));
}

void read_harness_name(const Reading& reading, XmlTree::Index index, Loom& loom, Ids& ids) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id, Key::File}, {Key::Note});
  refuse_children(reading, index);
  const bool fresh = ids.declare(reading, a, static_cast<int>(loom.harnesses.size()));
  LoomHarness harness;
  harness.file = a.text(Key::File);
  harness.note = a.text(Key::Note);
  harness.span = a.element_span();
  harness.file_span = a.span(Key::File);
  if (!fresh) return;
  harness.id = a.id(Key::Id);
  loom.harnesses.push_back(std::move(harness));
}

/// "motor-x/motor" as harness and plug; false when it is not of that form or no such harness is declared.
bool read_plug_name(const Reading& reading, const Attributes& a, const Ids& harnesses, Seat& seat) {
  if (!a.has(Key::Plug)) return false;
  const std::string_view name = a.text(Key::Plug);
  if (name.empty()) return false;
  const std::size_t slash = std::min(name.find('/'), name.size());
  const std::string_view harness = name.substr(0, slash);
  const std::string_view plug = name.substr(std::min(slash + 1, name.size()));
  if (!is_id(harness) || !is_id(plug)) {
    reading.fault(Rule::BadId, a.span(Key::Plug), format("'{}' is no plug of a harness", name))
        .help("write HARNESS/PLUG, the id of a harness in this loom and of a plug in its file");
    return false;
  }
  Span place = a.span(Key::Plug);
  if (place.end - place.begin == name.size()) place.end = place.begin + static_cast<std::uint32_t>(slash);
  if (!harnesses.resolve(reading, harness, place)) return false;
  seat.harness = harness;
  seat.plug = plug;
  return true;
}

/// Cavity by cavity, the cavity in the file of the lead that sits there, or "-". Every word that is none is
/// reported at its place; then the list is empty.
std::vector<int> read_leads_now(const Reading& reading, const Attributes& a) {
  std::vector<int> leads;
  if (!a.has(Key::Leads)) return leads;
  const std::string_view text = a.text(Key::Leads);
  const Span whole = a.span(Key::Leads);
  const bool verbatim = whole.end - whole.begin == text.size();  // nothing written as an entity
  std::vector<bool> used(static_cast<std::size_t>(reading.limits.positions) + 1);
  bool faulty = false;
  const auto fault = [&](Rule rule, std::size_t begin, std::size_t end, std::string message) {
    Span place = whole;
    if (verbatim) {
      place.begin = whole.begin + static_cast<std::uint32_t>(begin);
      place.end = whole.begin + static_cast<std::uint32_t>(end);
    }
    Diagnostic& diagnostic = reading.fault(rule, place, std::move(message));
    if (std::exchange(faulty, true)) return;  // one help will do for the list
    diagnostic.help(
        "cavity by cavity, the cavity in the file of the lead that sits there now, or '-' for an empty one: "
        "\"2 1 -\"");
  };
  std::size_t begin = text.find_first_not_of(' ');
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string_view word = text.substr(begin, end - begin);
    const std::size_t at = std::exchange(begin, text.find_first_not_of(' ', end));
    if (word == "-") {
      leads.push_back(0);
      continue;
    }
    int lead = 0;
    const auto [stop, error] = std::from_chars(word.data(), word.data() + word.size(), lead);
    const bool number = error == std::errc() && stop == word.data() + word.size() && word.front() != '0';
    if (!number || lead < 1 || lead > reading.limits.positions) {
      fault(Rule::BadNumber, at, end, format("leads: '{}' is no cavity", word));
    } else if (used[static_cast<std::size_t>(lead)]) {
      fault(Rule::DoubledPosition, at, end, format("leads: the lead of cavity {} stands twice", lead));
    } else {
      used[static_cast<std::size_t>(lead)] = true;
      leads.push_back(lead);
    }
  }
  if (leads.empty() && !faulty && !text.empty())
    fault(Rule::BadWord, 0, text.size(), "leads: no cavity is named");
  return faulty ? std::vector<int>{} : leads;
}

void read_seat(const Reading& reading, XmlTree::Index index, Loom& loom, LoomNames& names) {
  const XmlNode& node = reading.tree.node(index);
  const bool loose = node.name == "loose";
  constexpr KeySet common{Key::Leads, Key::Evidence, Key::Note};
  const Attributes a(reading, node, {Key::Plug}, loose ? common : common | KeySet{Key::Header});
  refuse_children(reading, index);
  Seat seat;
  seat.header = loose ? std::string_view() : a.id(Key::Header);
  seat.state = loose ? SeatState::Loose : seat.header.empty() ? SeatState::Unknown : SeatState::OnHeader;
  seat.leads = read_leads_now(reading, a);
  seat.evidence = read_evidence_reference(reading, a, names.evidences);
  seat.note = a.text(Key::Note);
  seat.span = a.element_span();
  seat.plug_span = a.span(Key::Plug);
  seat.header_span = a.span(Key::Header);
  seat.leads_span = a.span(Key::Leads);
  const bool named = read_plug_name(reading, a, names.harnesses, seat);
  const bool fresh = named && names.plugs.once(reading, seat.plug_name(), seat.plug_span,
                                               format("plug '{}' stands twice", seat.plug_name()));
  if (seat.state == SeatState::OnHeader) {
    names.headers.once(reading, seat.header, seat.header_span,
                       format("header '{}' stands twice: it holds one plug", seat.header));
  }
  if (!fresh) return;
  if (seat.state != SeatState::Unknown) {
    check_evidence(reading, a, loom, Key::Plug, format("where plug '{}' sits", seat.plug_name()));
  }
  loom.seats.push_back(std::move(seat));
}

void read_header_without_plug(const Reading& reading, XmlTree::Index index, Loom& loom, LoomNames& names) {
  const XmlNode& node = reading.tree.node(index);
  const Attributes a(reading, node, {Key::Header}, {Key::Evidence, Key::Note});
  refuse_children(reading, index);
  LoomHeader header;
  header.header = a.id(Key::Header);
  header.taken = node.name == "taken";
  header.evidence = read_evidence_reference(reading, a, names.evidences);
  header.note = a.text(Key::Note);
  header.span = a.element_span();
  header.header_span = a.span(Key::Header);
  if (header.header.empty()) return;
  if (!names.headers.once(
          reading, header.header, header.header_span,
          format("header '{}' stands twice: a plug sits on it, or it is free, or taken", header.header))) {
    return;
  }
  check_evidence(reading, a, loom, Key::Header, format("what is on header '{}'", header.header));
  loom.headers.push_back(std::move(header));
}

}  // namespace

std::unique_ptr<Loom> read_loom(const Reading& reading) {
  auto loom = std::make_unique<Loom>();
  const XmlNode& root = reading.tree.node(0);
  const Attributes a(reading, root, {Key::Id, Key::Title, Key::Board},
                     KeySet{Key::Evidence, Key::Note} | root_keys);
  loom->id = a.id(Key::Id);
  loom->title = a.text(Key::Title);
  loom->board = a.text(Key::Board);
  loom->note = a.text(Key::Note);
  loom->span = a.element_span();
  loom->id_span = a.span(Key::Id);
  loom->board_span = a.span(Key::Board);

  LoomNames names;
  std::vector<XmlTree::Index> others;
  bool misread = false;  // an unknown element may have been meant as a harness
  bool too_many = false;
  for (const XmlTree::Index child : reading.tree.children(0)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name == "evidence") {
      read_evidence(reading, child, loom->evidences, names.evidences);
    } else if (node.name == "harness") {
      if (static_cast<int>(loom->harnesses.size()) < reading.limits.harnesses) {
        read_harness_name(reading, child, *loom, names.harnesses);
      } else if (!std::exchange(too_many, true)) {
        reading.fault(Rule::TooLarge, reading.tree.name_span(node),
                      format("more than {} harnesses in one loom", reading.limits.harnesses));
      }
    } else if (std::find(children.begin(), children.end(), node.name) != children.end()) {
      others.push_back(child);
    } else {
      refuse_child(reading, root, node, children);
      misread = misread || !node.is_text();
    }
  }
  // A reference that is not declared is reported; it still tells that evidence was thought of.
  loom->evidence = a.id(Key::Evidence);
  names.evidences.resolve(reading, a, Key::Evidence);
  for (const XmlTree::Index child : others) {
    const std::string_view name = reading.tree.node(child).name;
    if (name == "fitted") {
      read_fitted(reading, child, *loom, names);
    } else if (name == "seat" || name == "loose") {
      read_seat(reading, child, *loom, names);
    } else {
      read_header_without_plug(reading, child, *loom, names);
    }
  }
  if (loom->harnesses.empty() && names.harnesses.complete() && !misread) {
    reading.fault(Rule::MissingElement, a.name_span(), "the loom has no 'harness'")
        .help("name each harness of the machine: <harness id=\"motor-x\" file=\"x-motor.xml\"/>");
  }
  return loom;
}

}  // namespace plugward
