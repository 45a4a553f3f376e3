// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/seen_test.cpp.
#include "cli/seen.h"

#include <algorithm>
#include <optional>
#include <variant>

#include "base/edit_distance.h"
#include "base/format.h"
#include "quantity/colour.h"

namespace plugward {
namespace {

/// What was seen in one cavity: nothing, or a lead of this colour (which may be unknown).
using Sight = std::optional<WireColour>;

std::vector<std::string_view> split(std::string_view text) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t comma = text.find(',');
    parts.push_back(text.substr(0, comma));
    if (comma == std::string_view::npos) return parts;
    text.remove_prefix(comma + 1);
  }
}

/// The two ends of a part without polarity, or nothing.
struct EndsOf {
  std::optional<std::pair<int, int>> operator()(const Switch& p) const { return {{p.a, p.b}}; }
  std::optional<std::pair<int, int>> operator()(const Heater& p) const { return {{p.a, p.b}}; }
  std::optional<std::pair<int, int>> operator()(const Resistor& p) const { return {{p.a, p.b}}; }
  std::optional<std::pair<int, int>> operator()(const TemperatureSensor& p) const { return {{p.a, p.b}}; }
  template <class Other>
  std::optional<std::pair<int, int>> operator()(const Other&) const {
    return std::nullopt;
  }
};

/// A device that is nothing but one part without polarity between `a` and `b`.
bool is_bare_part(const Device& device, TerminalIndex a, TerminalIndex b) {
  if (device.parts.size() != 1 || device.terminals.size() != 2) return false;
  const auto ends = std::visit(EndsOf{}, device.parts.front());
  const auto passive = [](const Terminal& t) { return t.function == TerminalFunction::Passive; };
  return ends && std::minmax(ends->first, ends->second) == std::minmax(a, b) &&
         std::all_of(device.terminals.begin(), device.terminals.end(), passive);
}

bool interchangeable(const Harness& harness, const Lead& one, const Lead& other) {
  if (!one.to || !other.to || one.gauge != other.gauge) return false;
  if (*one.to == *other.to) return true;
  return one.to->device == other.to->device &&
         is_bare_part(harness.devices[static_cast<std::size_t>(one.to->device)], one.to->terminal,
                      other.to->terminal);
}

bool all_interchangeable(const Harness& harness, const std::vector<const Lead*>& leads) {
  return std::all_of(leads.begin(), leads.end(), [&](const Lead* lead) {
    return lead == leads.front() || interchangeable(harness, *leads.front(), *lead);
  });
}

/// A lead of which only the colour is known, and what all `like` share apart from where they go.
Lead blurred(const Plug& plug, const WireColour& colour, const std::vector<const Lead*>& like) {
  Lead lead;
  lead.colour = colour;
  lead.span = plug.span;
  if (like.empty()) return lead;
  const Lead& first = *like.front();
  const auto all_have = [&](auto member) {
    return std::all_of(like.begin(), like.end(), [&](const Lead* l) { return l->*member == first.*member; });
  };
  lead.span = first.span;
  if (all_have(&Lead::gauge)) lead.gauge = first.gauge;
  if (all_have(&Lead::length)) lead.length = first.length;
  return lead;
}

/// The leads of one colour in the file, handed out cavity by cavity.
class Identifier {
 public:
  Identifier(const Harness& harness, const Plug& plug, const std::vector<Sight>& sights)
      : harness_(harness), plug_(plug), sights_(sights) {}

  Lead lead_for(std::size_t index) {
    const WireColour& colour = *sights_[index];
    if (!colour.known()) return blurred(plug_, colour, {});
    std::vector<const Lead*> like;
    for (const Lead& lead : plug_.leads) {
      if (lead.colour == colour) like.push_back(&lead);
    }
    const auto same = [&](const Sight& sight) { return sight && *sight == colour; };
    const auto seen = static_cast<std::size_t>(std::count_if(sights_.begin(), sights_.end(), same));
    const auto before = static_cast<std::size_t>(
        std::count_if(sights_.begin(), sights_.begin() + static_cast<std::ptrdiff_t>(index), same));
    const bool told_apart = !like.empty() && seen <= like.size() && all_interchangeable(harness_, like);
    if (told_apart) return *like[before];
    if (like.size() < seen) like.clear();  // an extra lead of this colour: nothing that they share is sure
    return blurred(plug_, colour, like);
  }

 private:
  const Harness& harness_;
  const Plug& plug_;
  const std::vector<Sight>& sights_;
};

Parsed<std::vector<Sight>> read_sights(const Plug& plug, std::string_view colours) {
  const std::vector<std::string_view> words = split(colours);
  if (words.size() != static_cast<std::size_t>(plug.positions)) {
    return Fault{
        format("plug '{}' has {} cavities, but {} {} listed: write '-' for an empty one and '?' for a "
               "colour that cannot be told",
               plug.id, plug.positions, words.size(), words.size() == 1 ? "is" : "are"),
        0, colours.size()};
  }
  std::vector<Sight> sights;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == "-") {
      sights.emplace_back(std::nullopt);
      continue;
    }
    const Parsed<WireColour> colour = parse_colour(words[i]);
    if (const Fault* fault = std::get_if<Fault>(&colour)) {
      const auto begin = static_cast<std::size_t>(words[i].data() - colours.data());
      return Fault{format("cavity {} of plug '{}': {}", i + 1, plug.id, fault->message), begin,
                   begin + words[i].size()};
    }
    sights.emplace_back(std::get<WireColour>(colour));
  }
  return sights;
}

std::string note_of(const Plug& plug, const Lead& lead) {
  if (!lead.colour.known()) {
    return format("plug '{}', cavity {}: where a lead of unknown colour goes is not known", plug.id,
                  lead.cavity);
  }
  return format("plug '{}', cavity {}: the colour {} does not tell where this lead goes", plug.id,
                lead.cavity, to_code(lead.colour));
}

}  // namespace

Parsed<SeenResult> rearrange_as_seen(const Harness& harness, const std::string& plug_id,
                                     std::string_view colours) {
  const Plug* plug = harness.plug(plug_id);
  if (plug == nullptr) {
    std::vector<std::string> ids;
    for (const Plug& one : harness.plugs) ids.push_back(one.id);
    const std::string near = nearest(plug_id, ids);
    const std::string hint =
        near.empty() ? format("it has {}", join(ids, ", ")) : format("did you mean '{}'?", near);
    return Fault{format("harness '{}' has no plug '{}'; {}", harness.id, plug_id, hint), 0, 0};
  }
  Parsed<std::vector<Sight>> read = read_sights(*plug, colours);
  if (Fault* fault = std::get_if<Fault>(&read)) return *fault;
  const std::vector<Sight>& sights = std::get<std::vector<Sight>>(read);

  SeenResult result{harness, {}};
  std::vector<Lead> leads;
  Identifier identifier(harness, *plug, sights);
  for (std::size_t i = 0; i < sights.size(); ++i) {
    if (!sights[i]) continue;
    Lead lead = identifier.lead_for(i);
    lead.cavity = static_cast<int>(i) + 1;
    if (!lead.to) result.notes.push_back(note_of(*plug, lead));
    leads.push_back(std::move(lead));
  }
  result.harness.plugs[static_cast<std::size_t>(plug - harness.plugs.data())].leads = std::move(leads);
  return result;
}

}  // namespace plugward
