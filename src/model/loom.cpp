// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/loom_reader_test.cpp: what is written is read back.
#include "model/loom.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "base/format.h"
#include "base/xml_text.h"

namespace plugward {
namespace {

/// ` name="value"`; nothing when the value is empty.
std::string attribute(std::string_view name, std::string_view value) {
  return value.empty() ? "" : verbatim(" {}=\"{}\"", name, xml_escaped(value));
}

/// What most elements end in.
template <class Element>
std::string basis(const Element& element) {
  return attribute("evidence", element.evidence) + attribute("note", element.note);
}

std::string leads_text(const std::vector<int>& leads) {
  std::vector<std::string> words;
  for (const int lead : leads) words.push_back(lead == 0 ? std::string("-") : verbatim("{}", lead));
  return verbatim("{}", join(words, " "));
}

std::string seat_text(const Seat& seat) {
  return verbatim("  <{}{}{}{}{}/>\n", seat.state == SeatState::Loose ? "loose" : "seat",
                  attribute("plug", seat.plug_name()), attribute("header", seat.header),
                  attribute("leads", leads_text(seat.leads)), basis(seat));
}

}  // namespace

const LoomHarness* Loom::harness(std::string_view name) const {
  const auto found =
      std::find_if(harnesses.begin(), harnesses.end(), [&](const LoomHarness& h) { return h.id == name; });
  return found == harnesses.end() ? nullptr : &*found;
}

const Seat* Loom::seat(std::string_view in_harness, std::string_view plug) const {
  const auto found = std::find_if(seats.begin(), seats.end(),
                                  [&](const Seat& s) { return s.harness == in_harness && s.plug == plug; });
  return found == seats.end() ? nullptr : &*found;
}

const Evidence* Loom::evidence_of(std::string_view own) const {
  const std::string_view name = own.empty() ? std::string_view(evidence) : own;
  const auto found =
      std::find_if(evidences.begin(), evidences.end(), [&](const Evidence& e) { return e.id == name; });
  return found == evidences.end() ? nullptr : &*found;
}

std::string file_of_loom(std::string_view loom_path, std::string_view file) {
  const std::filesystem::path folder = std::filesystem::path(loom_path).parent_path();
  return (folder / std::filesystem::path(file)).lexically_normal().generic_string();
}

std::string file_for_loom(std::string_view loom_path, std::string_view path) {
  const std::filesystem::path target = std::filesystem::path(path).lexically_normal();
  if (target.is_absolute()) return target.generic_string();
  const std::filesystem::path folder = std::filesystem::path(loom_path).parent_path();
  const std::string way =
      target.lexically_relative(folder.empty() ? "." : folder.lexically_normal()).generic_string();
  // Out of a folder above the working folder there is no way back down by texts alone.
  return file_of_loom(loom_path, way) == target.generic_string() ? way : "";
}

std::string loom_text(const Loom& loom) {
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text += verbatim("<loom{}{}{}{}>\n", attribute("id", loom.id), attribute("title", loom.title),
                   attribute("board", loom.board), basis(loom));
  for (const Evidence& e : loom.evidences) {
    text += verbatim("  <evidence{}{}{}{}{}/>\n", attribute("id", e.id), attribute("kind", to_word(e.kind)),
                     attribute("revision", e.revision), attribute("date", e.date), attribute("note", e.note));
  }
  for (const FittedJumper& j : loom.jumpers) {
    text +=
        verbatim("  <fitted{}{}{}/>\n", attribute("jumper", j.jumper), attribute("rail", j.rail), basis(j));
  }
  for (const LoomHarness& h : loom.harnesses) {
    text += verbatim("  <harness{}{}{}/>\n", attribute("id", h.id), attribute("file", h.file),
                     attribute("note", h.note));
  }
  for (const Seat& seat : loom.seats) text += seat_text(seat);
  for (const LoomHeader& h : loom.headers) {
    text += verbatim("  <{}{}{}/>\n", h.taken ? "taken" : "free", attribute("header", h.header), basis(h));
  }
  return text + "</loom>\n";
}

}  // namespace plugward
