// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/loom_difference_test.cpp.
#include "plan/loom_difference.h"

#include <algorithm>
#include <map>
#include <utility>

#include "base/format.h"

namespace plugward {
namespace {

/// A lead of a plug as the loom has it now.
struct LeadNow {
  const Lead* lead = nullptr;
  int cavity = 0;  ///< 0: out of the housing
};

std::vector<LeadNow> leads_of(const Plug& plug, const Seat* seat) {
  std::vector<LeadNow> leads;
  for (const Lead& lead : plug.leads) {
    int cavity = lead.cavity;
    if (seat != nullptr && !seat->leads.empty()) {
      const auto found = std::find(seat->leads.begin(), seat->leads.end(), lead.cavity);
      cavity = found == seat->leads.end() ? 0 : static_cast<int>(found - seat->leads.begin()) + 1;
    }
    leads.push_back({&lead, cavity});
  }
  return leads;
}

std::string lead_words(const Harness& harness, const Lead& lead) {
  const std::string name =
      lead.mark.empty() ? to_code(lead.colour) : format("{} marked '{}'", to_code(lead.colour), lead.mark);
  return lead.to ? format("{} to '{}'", name, harness.terminal_name(*lead.to)) : name;
}

/// What a lead is known by when files differ.
std::string looks(const Harness& harness, const Lead& lead) {
  return format("{} {} {}", lead_words(harness, lead), lead.gauge ? to_text(*lead.gauge) : "",
                lead.length ? to_text(*lead.length) : "");
}

std::string housing_words(const Plug& plug) {
  return format("{}, {} position{}{}", plug.family, plug.positions, plug.positions == 1 ? "" : "s",
                plug.key == KeyState::Removed ? ", key removed" : "");
}

/// In the file, the leads are in the same cavities.
bool same_in_file(const Harness& ha, const Plug& a, const Harness& hb, const Plug& b) {
  return std::equal(
      a.leads.begin(), a.leads.end(), b.leads.begin(), b.leads.end(),
      [&](const Lead& x, const Lead& y) { return x.cavity == y.cavity && looks(ha, x) == looks(hb, y); });
}

/// One side of the comparison.
struct Side {
  const Loom& loom;
  const LoomFiles& files;

  const Harness* harness(const std::string& id) const {
    const auto found = std::find_if(files.harnesses.begin(), files.harnesses.end(),
                                    [&](const Harness& h) { return h.id == id; });
    return found == files.harnesses.end() ? nullptr : &*found;
  }
};

void compare_leads(const Side& a, const Harness& ha, const Plug& pa, const Side& b, const Harness& hb,
                   const Plug& pb, PlugDifference& out) {
  const std::vector<LeadNow> left = leads_of(pa, a.loom.seat(ha.id, pa.id));
  std::vector<LeadNow> right = leads_of(pb, b.loom.seat(hb.id, pb.id));
  const bool by_cavity = same_in_file(ha, pa, hb, pb);
  // Of leads that look alike, those that stayed are found first.
  const auto alike = [&](const LeadNow& x, const LeadNow& y) {
    return by_cavity ? x.lead->cavity == y.lead->cavity : looks(ha, *x.lead) == looks(hb, *y.lead);
  };
  std::vector<LeadNow> open;
  for (const LeadNow& lead : left) {
    const auto stayed = std::find_if(right.begin(), right.end(), [&](const LeadNow& other) {
      return alike(lead, other) && other.cavity == lead.cavity;
    });
    if (stayed == right.end()) {
      open.push_back(lead);
    } else {
      right.erase(stayed);
    }
  }
  for (const LeadNow& lead : open) {
    const auto found =
        std::find_if(right.begin(), right.end(), [&](const LeadNow& other) { return alike(lead, other); });
    if (found == right.end()) {
      out.leads_out.push_back(format("{} in cavity {}", lead_words(ha, *lead.lead), lead.cavity));
    } else {
      out.moves.push_back({lead_words(ha, *lead.lead), lead.cavity, found->cavity});
      right.erase(found);
    }
  }
  for (const LeadNow& lead : right) {
    out.leads_in.push_back(format("{} in cavity {}", lead_words(hb, *lead.lead), lead.cavity));
  }
}

std::map<std::string, int> parts_of(const Harness& harness) {
  std::map<std::string, int> parts;
  for (const Device& device : harness.devices) {
    for (const Part& part : device.parts) ++parts[part_in_words(part)];
  }
  return parts;
}

void compare_parts(const Harness& a, const Harness& b, PlugDifference& out) {
  std::map<std::string, int> more = parts_of(b);
  for (const auto& [words, count] : parts_of(a)) more[words] -= count;
  for (const auto& [words, count] : more) {
    for (int i = 0; i < count; ++i) out.parts_in.push_back(words);
    for (int i = 0; i < -count; ++i) out.parts_out.push_back(words);
  }
}

struct WhereNow {
  SeatState state = SeatState::Unknown;
  std::string header;
};

WhereNow where(const Loom& loom, const std::string& harness, const std::string& plug) {
  const Seat* seat = loom.seat(harness, plug);
  return seat == nullptr ? WhereNow{} : WhereNow{seat->state, seat->header};
}

PlugChange change_of(const WhereNow& a, const WhereNow& b, bool other_board) {
  if (a.state == SeatState::Unknown || b.state == SeatState::Unknown) {
    return a.state == b.state ? PlugChange::Same : PlugChange::Unclear;
  }
  if (a.state == SeatState::Loose && b.state == SeatState::Loose) return PlugChange::Same;
  if (b.state == SeatState::Loose) return PlugChange::Unplugged;
  if (a.state == SeatState::Loose) return PlugChange::PluggedIn;
  return a.header == b.header && !other_board ? PlugChange::Same : PlugChange::Moved;
}

void compare_plugs(const Side& a, const Side& b, LoomDifference& out) {
  const auto one_sided = [](const Side& side, const Harness& harness, const Plug& plug, PlugChange change) {
    PlugDifference one;
    one.name = format("{}/{}", harness.id, plug.id);
    one.change = change;
    const WhereNow now = where(side.loom, harness.id, plug.id);
    (change == PlugChange::Removed ? one.state_a : one.state_b) = now.state;
    (change == PlugChange::Removed ? one.header_a : one.header_b) = now.header;
    return one;
  };
  for (const Harness& ha : a.files.harnesses) {
    const Harness* hb = b.harness(ha.id);
    bool first = true;
    for (const Plug& pa : ha.plugs) {
      const Plug* pb = hb == nullptr ? nullptr : hb->plug(pa.id);
      if (pb == nullptr) {
        out.plugs.push_back(one_sided(a, ha, pa, PlugChange::Removed));
        continue;
      }
      const WhereNow was = where(a.loom, ha.id, pa.id), is = where(b.loom, ha.id, pa.id);
      PlugDifference one;
      one.name = format("{}/{}", ha.id, pa.id);
      one.change = change_of(was, is, out.other_board());
      one.state_a = was.state;
      one.state_b = is.state;
      one.header_a = was.header;
      one.header_b = is.header;
      if (housing_words(pa) != housing_words(*pb)) {
        one.housing_a = housing_words(pa);
        one.housing_b = housing_words(*pb);
      }
      compare_leads(a, ha, pa, b, *hb, *pb, one);
      if (std::exchange(first, false)) compare_parts(ha, *hb, one);
      out.plugs.push_back(std::move(one));
    }
  }
  for (const Harness& hb : b.files.harnesses) {
    const Harness* ha = a.harness(hb.id);
    for (const Plug& pb : hb.plugs) {
      if (ha != nullptr && ha->plug(pb.id) != nullptr) continue;
      out.plugs.push_back(one_sided(b, hb, pb, PlugChange::Added));
    }
  }
}

void compare_jumpers(const Loom& a, const Loom& b, LoomDifference& out) {
  const auto find = [](const Loom& loom, const std::string& id) {
    const auto found = std::find_if(loom.jumpers.begin(), loom.jumpers.end(),
                                    [&](const FittedJumper& f) { return f.jumper == id; });
    return found == loom.jumpers.end() ? nullptr : &*found;
  };
  // A jumper of another board is another jumper, whatever it is called.
  for (const FittedJumper& was : a.jumpers) {
    const FittedJumper* is = out.other_board() ? nullptr : find(b, was.jumper);
    if (is != nullptr && is->rail == was.rail) continue;
    out.jumpers.push_back({was.jumper, true, is != nullptr, was.rail, is == nullptr ? "" : is->rail});
  }
  for (const FittedJumper& is : b.jumpers) {
    if (!out.other_board() && find(a, is.jumper) != nullptr) continue;
    out.jumpers.push_back({is.jumper, false, true, "", is.rail});
  }
}

}  // namespace

int LoomDifference::count(PlugChange change) const {
  return static_cast<int>(
      std::count_if(plugs.begin(), plugs.end(), [&](const PlugDifference& p) { return p.change == change; }));
}

int LoomDifference::touched() const {
  return static_cast<int>(
      std::count_if(plugs.begin(), plugs.end(), [](const PlugDifference& p) { return !p.untouched(); }));
}

LoomDifference difference(const Loom& a, const LoomFiles& files_a, const Loom& b, const LoomFiles& files_b) {
  LoomDifference out;
  out.loom_a = a.id;
  out.loom_b = b.id;
  out.board_a = files_a.board.id;
  out.board_b = files_b.board.id;
  compare_jumpers(a, b, out);
  compare_plugs({a, files_a}, {b, files_b}, out);
  return out;
}

std::string_view to_word(PlugChange change) {
  switch (change) {
    case PlugChange::Same:
      return "same";
    case PlugChange::Moved:
      return "moved";
    case PlugChange::Unplugged:
      return "unplugged";
    case PlugChange::PluggedIn:
      return "plugged-in";
    case PlugChange::Unclear:
      return "unclear";
    case PlugChange::Added:
      return "added";
    case PlugChange::Removed:
      return "removed";
  }
  return "";
}

std::string part_in_words(const Part& part) {
  struct Words {
    std::string operator()(const Load& p) const {
      if (p.plus == p.minus) return format("a feed of {}", to_text(p.needs));
      return format("a load of {}{}", to_text(p.needs), p.draws_stated ? ", " + to_text(p.draws) : "");
    }
    std::string operator()(const Heater& p) const {
      const bool volts = p.volts.value > 0, watts = p.watts.value > 0;
      return format("a heating element{}{}{}{}", volts || watts ? " of " : "", volts ? to_text(p.volts) : "",
                    volts && watts ? ", " : "", watts ? to_text(p.watts) : "");
    }
    std::string operator()(const Resistor& p) const {
      return format("a resistor of {}{}", to_text(p.ohms), p.limit ? ", " + to_text(*p.limit) : "");
    }
    std::string operator()(const Switch& p) const {
      if (!p.rests_stated) return "a contact";
      return format("a contact, {} at rest", p.rests_closed ? "closed" : "open");
    }
    std::string operator()(const Coil& p) const {
      return p.ohms.value > 0 ? format("a winding of {}", to_text(p.ohms)) : "a winding";
    }
    std::string operator()(const TemperatureSensor& p) const {
      return p.nominal.value > 0 ? format("a temperature sensor of {}", to_text(p.nominal))
                                 : "a temperature sensor";
    }
    std::string operator()(const Driver& p) const {
      return format("{} output", p.kind == OutputKind::PushPull  ? "a push-pull"
                                 : p.kind == OutputKind::Sinking ? "a sinking"
                                                                 : "a sourcing");
    }
    std::string operator()(const Receiver&) const { return "an input"; }
    std::string operator()(const Diode& p) const { return format("a diode, {} forward", to_text(p.drop)); }
    std::string operator()(const Join&) const { return "two terminals joined"; }
    std::string operator()(const Source& p) const {
      return format("a supply of its own, {}", to_text(p.volts));
    }
    std::string operator()(const Regulator& p) const { return format("a regulator to {}", to_text(p.volts)); }
  };
  return std::visit(Words{}, part);
}

}  // namespace plugward
