// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/difference_text_test.cpp.
#include "report/difference_text.h"

#include <array>
#include <utility>

#include "base/counted.h"
#include "base/format.h"

namespace plugward {
namespace {

std::string or_none(const std::string& text, std::string_view none) {
  return text.empty() ? std::string(none) : text;
}

std::string place_words(const std::optional<SeatState>& state, const std::string& header) {
  if (!state) return "-";
  return or_none(header, *state == SeatState::Unknown ? "not known" : "on none");
}

std::string change_words(const PlugDifference& plug, bool other_board) {
  std::string words;
  switch (plug.change) {
    case PlugChange::Same:
      words = "where it was";
      break;
    case PlugChange::Moved:
      words = other_board ? "other board" : "another header";
      break;
    case PlugChange::Unplugged:
      words = "unplugged";
      break;
    case PlugChange::PluggedIn:
      words = "plugged in";
      break;
    case PlugChange::Unclear:
      words = "not known";
      break;
    case PlugChange::Added:
      return "only in the second";
    case PlugChange::Removed:
      return "only in the first";
  }
  if (!plug.moves.empty())
    words += format(", {} moved", counted(plug.moves.size(), "{} contact", "{} contacts"));
  if (!plug.leads_in.empty())
    words += format(", {} added", counted(plug.leads_in.size(), "{} lead", "{} leads"));
  if (!plug.leads_out.empty())
    words += format(", {} gone", counted(plug.leads_out.size(), "{} lead", "{} leads"));
  if (plug.housing_a != plug.housing_b) words += ", another housing";
  if (!plug.parts_in.empty())
    words += format(", {} added", counted(plug.parts_in.size(), "{} part", "{} parts"));
  if (!plug.parts_out.empty())
    words += format(", {} gone", counted(plug.parts_out.size(), "{} part", "{} parts"));
  return words;
}

void write_jumpers(Paper& paper, const LoomDifference& d) {
  if (d.jumpers.empty()) return;
  paper.heading("Jumpers");
  std::vector<std::vector<std::string>> rows = {{"jumper", d.loom_a, d.loom_b}};
  for (const JumperDifference& j : d.jumpers) {
    const auto at = [](bool there, const std::string& rail) {
      return there ? or_none(rail, "not known") : std::string("-");
    };
    // Jumpers of two boards may bear one name and have nothing to do with each other.
    const std::string& board = j.in_a ? d.board_a : d.board_b;
    rows.push_back({d.other_board() ? format("{} of '{}'", j.jumper, board) : j.jumper, at(j.in_a, j.rail_a),
                    at(j.in_b, j.rail_b)});
  }
  paper.table(rows);
}

void write_plugs(Paper& paper, const LoomDifference& d) {
  paper.heading("Plugs");
  const bool other = d.other_board();
  std::vector<std::vector<std::string>> rows = {{"plug", other ? format("on '{}'", d.board_a) : "was on",
                                                 other ? format("on '{}'", d.board_b) : "is on", ""}};
  for (const PlugDifference& p : d.plugs) {
    rows.push_back({p.name, place_words(p.state_a, p.header_a), place_words(p.state_b, p.header_b),
                    change_words(p, other)});
  }
  paper.table(rows);
}

std::string cavity_words(int cavity) {
  return cavity == 0 ? std::string("out of the housing") : format("cavity {}", cavity);
}

void write_details(Paper& paper, const PlugDifference& p) {
  if (p.untouched()) return;
  paper.heading(format("Plug '{}'", p.name));
  const auto item = [&](const std::string& text) { paper.paragraph(text, {"  - ", "    "}); };
  if (p.housing_a != p.housing_b) item(format("housing: {} -> {}", p.housing_a, p.housing_b));
  for (const LeadMove& m : p.moves) {
    item(format("lead {}: {} -> {}", m.lead, cavity_words(m.from), cavity_words(m.to)));
  }
  for (const std::string& lead : p.leads_in) item("lead added: " + lead);
  for (const std::string& lead : p.leads_out) item("lead gone: " + lead);
  for (const std::string& part : p.parts_in) item("built in: " + part);
  for (const std::string& part : p.parts_out) item("taken out: " + part);
}

}  // namespace

std::string difference_summary(const LoomDifference& d) {
  const std::array<std::pair<PlugChange, std::string_view>, 7> words{
      {{PlugChange::Same, "where it was"},
       {PlugChange::Moved, d.other_board() ? "over to the other board" : "on another header"},
       {PlugChange::Unplugged, "unplugged"},
       {PlugChange::PluggedIn, "plugged in"},
       {PlugChange::Unclear, "not known"},
       {PlugChange::Added, "only in the second"},
       {PlugChange::Removed, "only in the first"}}};
  std::vector<std::string> counts;
  for (const auto& [change, word] : words) {
    const int n = d.count(change);
    if (n > 0)
      counts.push_back(format("{} {}", n, n > 1 && change == PlugChange::Same ? "where they were" : word));
  }
  std::string text = format("{}: {}", counted(d.plugs.size(), "{} plug", "{} plugs"), join(counts, ", "));
  const int touched = d.touched();
  if (touched > 0) text += format("; contacts, leads, parts or housings of {} differ", touched);
  return text;
}

std::string difference_text(const LoomDifference& d, const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(format("From loom '{}' on board '{}' to loom '{}' on {}.", d.loom_a, d.board_a, d.loom_b,
                         d.other_board() ? format("board '{}'", d.board_b) : std::string("the same board")));
  paper.paragraph(difference_summary(d));
  write_jumpers(paper, d);
  write_plugs(paper, d);
  for (const PlugDifference& p : d.plugs) write_details(paper, p);
  return paper.text();
}

}  // namespace plugward
