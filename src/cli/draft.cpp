// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/draft_test.cpp: every kind, known and not, reads back without a fault.
#include "cli/draft.h"

#include <algorithm>
#include <cmath>

#include "base/edit_distance.h"
#include "base/format.h"
#include "base/xml_text.h"
#include "reader/descriptions.h"

namespace plugward {
namespace {

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> parts;
  for (;;) {
    const std::size_t comma = text.find(',');
    parts.emplace_back(text.substr(0, comma));
    if (comma == std::string_view::npos) return parts;
    text.remove_prefix(comma + 1);
  }
}

SeenCavity read_lead(const DeviceKind& kind, const std::string& word) {
  SeenCavity lead;
  if (word == "-") {
    lead.lead = false;
    return lead;
  }
  const std::size_t equals = word.find('=');
  const Parsed<WireColour> colour = parse_colour(word.substr(0, equals));
  if (const Fault* fault = std::get_if<Fault>(&colour)) throw UsageError("--seen: " + fault->message);
  lead.colour = std::get<WireColour>(colour);
  if (equals == std::string::npos || word.substr(equals + 1) == "?") return lead;
  const KindTerminal* terminal = find_terminal(kind, word.substr(equals + 1));
  if (terminal == nullptr) {
    throw UsageError(format("--seen: '{}' has no terminal '{}'{}", kind.word, word.substr(equals + 1),
                            kind.terminals.empty() ? "; nothing is known of it yet"
                                                   : format("; it has {}", terminal_words(kind))));
  }
  lead.to = terminal->id;
  return lead;
}

/// Each terminal once. The other end of a device whose ends are alike follows from the one.
void settle(const DeviceKind& kind, std::vector<SeenCavity>& leads) {
  std::vector<SeenCavity*> there;
  for (SeenCavity& lead : leads) {
    if (lead.lead) there.push_back(&lead);
  }
  if (!kind.terminals.empty() && there.size() > kind.terminals.size()) {
    throw UsageError(format("--seen: {} leads, but a '{}' has {} terminals: {}; '-' is an empty cavity",
                            there.size(), kind.word, kind.terminals.size(), terminal_words(kind)));
  }
  for (const SeenCavity* lead : there) {
    const auto same = [&](const SeenCavity* other) { return !lead->to.empty() && other->to == lead->to; };
    if (std::count_if(there.begin(), there.end(), same) > 1)
      throw UsageError(format("--seen: terminal '{}' stands twice", lead->to));
  }
  if (!kind.alike || there.size() != 2) return;
  for (std::size_t i = 0; i < 2; ++i) {
    if (!there[i]->to.empty()) continue;
    const std::string& other = there[1 - i]->to;
    there[i]->to = other.empty() ? (i == 0 ? "A" : "B") : (other == "A" ? "B" : "A");
  }
}

/// What a line needs so that it has a terminal for every lead: sense="yes".
std::vector<std::string_view> extra_terminals(const CableDraft& draft) {
  std::vector<std::string_view> attributes;
  const auto leads = static_cast<std::size_t>(
      std::count_if(draft.leads.begin(), draft.leads.end(), [](const SeenCavity& l) { return l.lead; }));
  std::size_t plain = 0;
  for (const KindTerminal& terminal : draft.kind->terminals) plain += terminal.with.empty() ? 1u : 0u;
  for (const KindTerminal& terminal : draft.kind->terminals) {
    if (terminal.with.empty()) continue;
    const bool named = std::any_of(draft.leads.begin(), draft.leads.end(),
                                   [&](const SeenCavity& l) { return l.to == terminal.id; });
    if (!named && plain >= leads) continue;
    attributes.push_back(terminal.with);
    ++plain;
  }
  return attributes;
}

bool is_known(const CableDraft& draft, std::string_view attribute) {
  return std::any_of(draft.known.begin(), draft.known.end(),
                     [&](const NamedValue& one) { return one.name == attribute; });
}

std::string device_line(const CableDraft& draft) {
  const DeviceKind& kind = *draft.kind;
  if (kind.element.empty()) {
    std::string text = "  <device id=\"device\" use=\"unknown\">\n";
    int number = 0;
    for (const SeenCavity& lead : draft.leads) {
      if (lead.lead) text += format("    <terminal id=\"{}\" function=\"unknown\"/>\n", ++number);
    }
    return text + "  </device>\n";
  }
  std::string text = format("  <{} id=\"{}\"", kind.element, kind.word);
  for (const std::string_view attribute : extra_terminals(draft)) text += format(" {}=\"yes\"", attribute);
  if (kind.element == "dry-switch" && !is_known(draft, "use")) text += " use=\"limit\"";
  for (const NamedValue& one : draft.known) text += format(" {}=\"{}\"", one.name, xml_escaped(one.value));
  return text + "/>\n";
}

/// A comment line; "--" may not stand in one.
std::string note(std::string_view indent, std::string text) {
  for (std::size_t at = text.find("--"); at != std::string::npos; at = text.find("--"))
    text.replace(at, 2, "-");
  return format("{}<!-- {} -->\n", indent, text);
}

std::string figure_notes(const CableDraft& draft) {
  std::string text;
  for (const KindFigure& figure : draft.kind->figures) {
    if (is_known(draft, figure.attribute)) continue;
    text += note("  ", format("Not stated: {}. Once known, add {}=\"{}\" to the line below.", figure.asks,
                              figure.attribute,
                              figure.form == FigureForm::VoltRange && figure.example == "24 V"
                                  ? std::string_view("21.6..26.4 V")
                              : figure.form == FigureForm::VoltRange && figure.example == "12 V"
                                  ? std::string_view("10.8..13.2 V")
                                  : figure.example));
  }
  if (draft.kind->element.empty()) {
    text += note("  ",
                 "What this is nobody has told. Once known, put a line such as a fan's here instead: "
                 "harnesses/README.md lists the common devices.");
  }
  return text;
}

std::string lead_notes(const CableDraft& draft) {
  const DeviceKind& kind = *draft.kind;
  if (kind.element.empty()) return "";
  if (kind.alike) return note("    ", "Either lead may be A: it makes no difference.");
  DeviceKind there = kind;
  const std::vector<std::string_view> extra = extra_terminals(draft);
  std::erase_if(there.terminals, [&](const KindTerminal& t) {
    return !t.with.empty() && std::find(extra.begin(), extra.end(), t.with) == extra.end();
  });
  const bool open = std::any_of(draft.leads.begin(), draft.leads.end(),
                                [](const SeenCavity& lead) { return lead.lead && lead.to.empty(); });
  if (!open) return "";
  std::string text =
      note("    ", format("Where a lead goes is left out until it is proved; then add to=\"{}\". "
                          "Terminals: {}. 'plugward check' says what to measure.",
                          kind.terminals.front().id, terminal_words(there)));
  if (!kind.custom.empty()) text += note("    ", format("Custom, which proves nothing: {}.", kind.custom));
  return text;
}

std::string housing_notes(const CableDraft& draft) {
  std::string text;
  if (is_unknown_family(draft.family)) {
    text += note(
        "  ",
        "Which housing it is: 'plugward list families' shows them; write its name as family. The pitch is "
        "best measured over all contacts.");
  }
  text += note(
      "  ", draft.view == DraftView::Unknown
                ? "From which side the row was looked at is not known. Look at the side of the leads, find "
                  "the mark of cavity 1, put the leads in order, then delete evidence=\"side\"."
                : "Cavity 1 is the one at the left, looking at the side of the leads, latch or ramp up. If "
                  "the housing has a mark at the other end, count from there.");
  return text;
}

std::string evidence_lines(const CableDraft& draft) {
  const std::string date = draft.date.empty() ? "" : format(" date=\"{}\"", draft.date);
  const std::string_view side = draft.view == DraftView::Mating ? ", from the mating side" : "";
  std::string text =
      format("  <evidence id=\"seen\" kind=\"photograph\"{} note=\"colours looked at in the housing{}\"/>\n",
             date, side);
  if (draft.view == DraftView::Unknown)
    text += format("  <evidence id=\"side\" kind=\"assumption\"{} note=\"taken as seen from the leads\"/>\n",
                   date);
  return text;
}

}  // namespace

std::vector<SeenCavity> read_seen(const DeviceKind& kind, std::string_view list) {
  std::vector<SeenCavity> leads;
  for (const std::string& word : split(list)) leads.push_back(read_lead(kind, word));
  if (std::none_of(leads.begin(), leads.end(), [](const SeenCavity& lead) { return lead.lead; }))
    throw UsageError("--seen: a housing without a lead says nothing; list the colours, such as RD,GN,WH");
  settle(kind, leads);
  return leads;
}

CableDraft read_draft(std::string_view word, std::string_view list) {
  const DeviceKind* kind = find_kind(word);
  if (kind == nullptr) {
    std::vector<std::string> names;
    for (const DeviceKind& one : all_kinds()) {
      names.emplace_back(one.word);
      if (!one.element.empty()) names.emplace_back(one.element);
    }
    const std::string near = nearest(std::string(word), names);
    throw UsageError(
        format("no kind of device is called '{}'{}", word,
               near.empty() ? format("; there are {}", kind_words()) : format("; did you mean '{}'?", near)));
  }
  CableDraft draft;
  draft.kind = kind;
  draft.leads = read_seen(*kind, list);
  draft.id = kind->word;
  draft.title = kind->title;
  return draft;
}

NamedValue read_known(const DeviceKind& kind, const NamedValue& given) {
  const auto figure = std::find_if(kind.figures.begin(), kind.figures.end(),
                                   [&](const KindFigure& one) { return one.attribute == given.name; });
  if (figure == kind.figures.end()) {
    std::vector<std::string> names;
    for (const KindFigure& one : kind.figures) names.push_back(format("{} ({})", one.attribute, one.asks));
    throw UsageError(format("--known: of '{}' there is no '{}'; there is {}", kind.word, given.name,
                            names.empty() ? "nothing to state" : join(names, ", ")));
  }
  if (figure->form != FigureForm::VoltRange) return given;
  const Parsed<Range<Volts>> read = parse_range<Volts>(given.value);
  if (const Fault* fault = std::get_if<Fault>(&read))
    throw UsageError(format("--known {}: {}", given.name, fault->message));
  const Range<Volts> range = std::get<Range<Volts>>(read);
  if (range.min != range.max) return given;
  // A label tells the middle; makers allow about a tenth either way (common practice, no source).
  return {given.name, to_text(Range<Volts>{Volts(range.min.value * 0.9), Volts(range.max.value * 1.1)})};
}

std::string read_housing(std::string_view words) {
  Catalogue catalogue;
  add_builtin_families(catalogue);
  if (words == "?" || words == "unknown") return "unknown";
  if (catalogue.find(words) != nullptr) return std::string(words);
  const bool bare = words.find_first_not_of("0123456789.") == std::string_view::npos;
  const Parsed<Millimetres> read =
      parse_quantity<Millimetres>(bare ? format("{} mm", words) : std::string(words));
  const Family* like = nullptr;
  if (const Millimetres* pitch = std::get_if<Millimetres>(&read)) {
    for (const Family& family : catalogue.all()) {
      const double off = std::abs(family.pitch.value - pitch->value);
      if (family.pitch.value > 0.0 && off < 0.1 &&
          (like == nullptr || off < std::abs(like->pitch.value - pitch->value)))
        like = &family;
    }
    if (like != nullptr) return unknown_family(like->pitch);
  }
  throw UsageError(
      format("'{}' is neither a family nor the pitch of one; 'plugward list families' shows both", words));
}

std::string draft_text(const CableDraft& draft) {
  const bool unsure = draft.view == DraftView::Unknown;
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text +=
      note("", "Begun by 'plugward start'. What is left out is not known yet: 'plugward check' asks for it.");
  text += format("<harness id=\"{}\" title=\"{}\" evidence=\"seen\">\n", draft.id, xml_escaped(draft.title));
  text += evidence_lines(draft) + figure_notes(draft) + device_line(draft) + housing_notes(draft);
  text += format("  <plug id=\"{}\" family=\"{}\" positions=\"{}\"{}>\n", draft.kind->word, draft.family,
                 draft.leads.size(), unsure ? " evidence=\"side\"" : "");
  text += lead_notes(draft);
  const bool turned = draft.view == DraftView::Mating;
  int terminal = 0;
  for (std::size_t i = 0; i < draft.leads.size(); ++i) {
    const SeenCavity& lead = draft.leads[turned ? draft.leads.size() - 1 - i : i];
    if (!lead.lead) continue;
    std::string to = lead.to;
    if (draft.kind->element.empty()) to = format("{}", ++terminal);
    text += format("    <lead cavity=\"{}\" colour=\"{}\"{}/>\n", i + 1, to_code(lead.colour),
                   to.empty() ? "" : format(" to=\"{}\"", to));
  }
  return text + "  </plug>\n</harness>\n";
}

DraftView read_view(std::string_view word) {
  return word == "mating" ? DraftView::Mating : word == "unknown" ? DraftView::Unknown : DraftView::Wire;
}

void check_text(const std::string& text) {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  add_builtin_families(catalogue);
  read_description(sources, sources.add_words("the words given", text), catalogue, diagnostics);
  diagnostics.sort();
  for (const Diagnostic& one : diagnostics.all()) {
    if (one.severity == Severity::Error) throw UsageError(one.message);
  }
}

void check_draft(const CableDraft& draft) {
  check_text(draft_text(draft));
}

}  // namespace plugward
