// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/cable_text_test.cpp.
#include "report/cable_text.h"

#include <algorithm>

#include "base/format.h"
#include "catalogue/lines.h"
#include "fit/seating.h"

namespace plugward {
namespace {

std::string numbers(const std::vector<int>& list) {
  return list.empty() ? "-" : verbatim("{}", join(list, ", "));
}

std::string ids_of(const JudgedCable& cable) {
  std::vector<std::string> ids;
  for (const Harness* one : cable.chain) ids.push_back(one->id);
  return verbatim("{}", join(ids, " + "));
}

std::string headline(const JudgedCable& cable) {
  std::string words(to_words(cable.judgement.kind));
  if (cable.judgement.kind == CableKind::NullModem) {
    switch (cable.judgement.handshake) {
      case Handshake::Full:
        words += ", full handshake";
        break;
      case Handshake::InPart:
        words += ", handshake in part";
        break;
      case Handshake::None:
        words += ", without handshake";
        break;
    }
  }
  if (!cable.judgement.split.empty()) words += ", with split pairs";
  return format("{}: {}", ids_of(cable), words);
}

std::string end_words(const Plug& plug) {
  const std::string scheme = wiring_scheme(plug);
  std::string words = format("plug '{}', {}, {} positions", plug.id, plug.family, plug.positions);
  if (plug.rows > 1) {
    words += plug.numbering == Numbering::ByRow ? ", numbered row by row" : ", numbered in zigzag";
  }
  if (!scheme.empty()) words += format(", colours of {}", scheme);
  return words;
}

/// What is written of one end of a group: numbers, the other numbering, names of the lines, colours.
struct Cells {
  std::string numbers, others, names, colours;
};

Cells cells_of(const Plug& plug, const std::vector<int>& contacts) {
  if (contacts.empty()) return {"-", "", "", ""};
  std::vector<std::string> others, names, colours;
  for (const int k : contacts) {
    if (plug.rows > 1) others.push_back(verbatim("({})", other_number(plug, k)));
    if (const PortLine* line = port_line(plug.family, k)) names.emplace_back(line->name);
    if (const Lead* lead = plug.lead_in(k); lead != nullptr && lead->colour.known()) {
      colours.push_back(to_code(lead->colour));
    }
  }
  const auto all = [](const std::vector<std::string>& texts) { return verbatim("{}", join(texts, " ")); };
  return {numbers(contacts), all(others), all(names), all(colours)};
}

/// One row a group; columns in which nothing stands are left out.
std::vector<std::vector<std::string>> contact_rows(const CableMap& map) {
  std::vector<std::vector<std::string>> rows;
  for (const CableGroup& group : map.groups) {
    const Cells a = cells_of(*map.a, group.a);
    const Cells b = cells_of(*map.b, group.b);
    rows.push_back({a.numbers, a.others, a.names, a.colours, group.a.empty() || group.b.empty() ? "  " : "--",
                    b.numbers, b.others, b.names, b.colours});
  }
  for (std::size_t column = rows.empty() ? 0 : rows[0].size(); column-- > 0;) {
    const auto empty = [&](const std::vector<std::string>& row) { return row[column].empty(); };
    if (!std::all_of(rows.begin(), rows.end(), empty)) continue;
    for (auto& row : rows) row.erase(row.begin() + static_cast<std::ptrdiff_t>(column));
  }
  return rows;
}

void write_pairs(Paper& paper, const JudgedCable& cable) {
  const CableJudgement& judged = cable.judgement;
  if (!judged.pairs_matter) return;
  paper.heading("Pairs");
  for (const CarriedPair& pair : judged.pairs) {
    paper.line(format("  contacts {}-{} to contacts {}-{}", pair.a.first, pair.a.second, pair.b.first,
                      pair.b.second));
  }
  for (const SplitPair& split : judged.split) {
    const Harness& one = *cable.chain[static_cast<std::size_t>(split.cable)];
    paper.paragraph(
        format("contacts {} and {} of plug '{}' of '{}' should share a pair and are on cores of two: it "
               "beeps through, and its signals leak into each other",
               split.one, split.other, one.plugs[split.at_b ? 1 : 0].id, one.id),
        {"  fault: ", "         "});
  }
  if (!judged.pairs_stated) {
    paper.paragraph(
        "which cores are twisted together is not stated (cable, 'pairs'): a split pair would not show",
        {"  not known: ", "             "});
  }
}

void write_ports(Paper& paper, const JudgedCable& cable) {
  const CableMap& map = cable.map;
  if (map.a->family != "de-9" || map.b->family != "de-9") return;
  paper.heading("Between serial ports (TIA-574)");
  const auto write = [&](std::string_view between, const std::vector<int>& clash) {
    paper.paragraph(clash.empty() ? format("{}: no output meets an output", between)
                                  : format("{}: output meets output on {}", between, numbers(clash)),
                    {"  ", "    "});
  };
  write("two DTE, or two DCE", cable.judgement.clash_between_dte);
  write("a DTE and a DCE", cable.judgement.clash_dte_to_dce);
}

}  // namespace

bool JudgedCable::fine() const {
  return judgement.kind != CableKind::Nothing && judgement.kind != CableKind::Other &&
         judgement.split.empty();
}

int other_number(const Plug& plug, int contact) {
  if (plug.rows < 2) return 0;
  const Numbering other = plug.numbering == Numbering::ByRow ? Numbering::Zigzag : Numbering::ByRow;
  return number_at(place_of(contact, plug.positions, plug.rows, plug.numbering), plug.positions, plug.rows,
                   other);
}

std::string cable_text(const JudgedCable& cable, const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(headline(cable), {"", "  "});
  paper.line();
  paper.paragraph(end_words(*cable.map.a), {"from ", "     "});
  paper.paragraph(end_words(*cable.map.b), {"to   ", "     "});
  paper.line();
  paper.table(contact_rows(cable.map));
  if (cable.map.a->rows > 1 || cable.map.b->rows > 1) {
    paper.line();
    paper.paragraph(
        "In (...) the number of the same contact the other way: zigzag counts across the rows, row by row "
        "counts along them.",
        {});
  }
  const CableJudgement& judged = cable.judgement;
  if (!judged.open_a.empty() || !judged.open_b.empty() || !judged.joined.empty()) paper.line();
  const auto open = [&](const Plug& plug, const std::vector<int>& contacts) {
    if (contacts.empty()) return;
    paper.paragraph(
        format("contacts of plug '{}' that do not reach the other end: {}", plug.id, numbers(contacts)),
        {"", "  "});
  };
  open(*cable.map.a, judged.open_a);
  open(*cable.map.b, judged.open_b);
  for (const CableGroup& group : judged.joined) {
    const auto joined = [&](const Plug& plug, const std::vector<int>& contacts) {
      if (contacts.size() < 2) return;
      paper.paragraph(format("joined at plug '{}': contacts {}", plug.id, numbers(contacts)), {"", "  "});
    };
    joined(*cable.map.a, group.a);
    joined(*cable.map.b, group.b);
  }
  write_pairs(paper, cable);
  write_ports(paper, cable);
  return paper.text();
}

}  // namespace plugward
