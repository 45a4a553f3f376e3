// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/harness_text_test.cpp: what is written is read back.
#include "model/harness_text.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "base/xml_text.h"
#include "quantity/exact_text.h"

namespace plugward {
namespace {

constexpr std::size_t longest_id = 40;

/// An element that grows attribute by attribute. What is not stated is not written.
class Element {
 public:
  explicit Element(std::string_view name) : text_(format("<{}", name)) {}

  Element& text(std::string_view name, std::string_view value) {
    if (!value.empty()) text_ += format(" {}=\"{}\"", name, xml_escaped(value));
    return *this;
  }
  template <class Q>
  Element& value(std::string_view name, const Q& quantity) {
    return text(name, exact_text(quantity));
  }
  template <class Q>
  Element& value(std::string_view name, const std::optional<Q>& quantity) {
    return quantity ? value(name, *quantity) : *this;
  }
  Element& number(std::string_view name, int value) { return text(name, format("{}", value)); }

  std::string empty() const { return text_ + "/>"; }
  std::string open() const { return text_ + ">"; }

 private:
  std::string text_;
};

std::string_view to_word(Reversal reversal) {
  switch (reversal) {
    case Reversal::Destroyed:
      return "destroyed";
    case Reversal::Blocked:
      return "blocked";
    case Reversal::Harmless:
      return "harmless";
    case Reversal::Unknown:
      return "";
  }
  return "";
}

std::string_view to_word(OutputKind kind) {
  switch (kind) {
    case OutputKind::PushPull:
      return "push-pull";
    case OutputKind::Sinking:
      return "sinking";
    case OutputKind::Sourcing:
      return "sourcing";
  }
  return "";
}

std::string_view one_of(const std::optional<bool>& value, std::string_view yes, std::string_view no) {
  return !value ? std::string_view() : *value ? yes : no;
}

/// A figure of which 0 says that nobody has looked.
template <class Q>
std::optional<Q> stated(const Q& quantity) {
  return quantity.value > 0.0 ? std::optional(quantity) : std::nullopt;
}

/// The element of each kind of part.
class PartWriter {
 public:
  explicit PartWriter(const std::vector<std::string>& terminals) : terminals_(terminals) {}

  std::string operator()(const Load& p) const {
    if (p.plus == p.minus) {
      return Element("feed").text("terminal", id(p.plus)).value("volts", p.needs).empty();
    }
    return Element("load")
        .text("plus", id(p.plus))
        .text("minus", id(p.minus))
        .value("needs", p.needs)
        .value("draws", p.draws_stated ? std::optional(p.draws) : std::nullopt)
        .value("survives", p.survives)
        .text("reversed", to_word(p.reversed))
        .empty();
  }
  std::string operator()(const Heater& p) const {
    return ends("heater", p).value("volts", stated(p.volts)).value("watts", stated(p.watts)).empty();
  }
  std::string operator()(const Resistor& p) const {
    return ends("resistor", p).value("ohms", p.ohms).value("limit", p.limit).empty();
  }
  std::string operator()(const Switch& p) const {
    const std::string_view rests = p.rests_closed ? "closed" : "open";
    return ends("switch", p).text("rests", p.rests_stated ? rests : "").empty();
  }
  std::string operator()(const Coil& p) const {
    return ends("coil", p).value("ohms", stated(p.ohms)).value("amps", p.amps).empty();
  }
  std::string operator()(const TemperatureSensor& p) const {
    return ends("temperature-sensor", p).value("ohms", stated(p.nominal)).value("beta", p.beta).empty();
  }
  std::string operator()(const Driver& p) const {
    Element e("driver");
    e.text("terminal", id(p.terminal)).text("plus", id(p.plus)).text("minus", id(p.minus));
    e.text("kind", to_word(p.kind)).value("drop", p.drop).value("leak", p.leak).value("pull", p.pull);
    if (p.pull_stated && !p.pull) e.text("pull", "none");
    return e.value("limit", p.limit).text("rests", one_of(p.rests_on, "on", "off")).empty();
  }
  std::string operator()(const Receiver& p) const {
    Element e("receiver");
    e.text("terminal", id(p.terminal)).text("plus", id(p.plus)).text("minus", id(p.minus));
    e.value("low-below", p.low_below).value("high-above", p.high_above);
    if (p.low_below_share) e.text("low-below-share", share_text(*p.low_below_share));
    if (p.high_above_share) e.text("high-above-share", share_text(*p.high_above_share));
    return e.value("open-circuit", p.open_circuit)
        .value("pull", p.pull)
        .text("pull-to", one_of(p.pull_up, "plus", "minus"))
        .value("above-supply", p.above_supply)
        .empty();
  }
  std::string operator()(const Diode& p) const {
    return Element("diode")
        .text("anode", id(p.anode))
        .text("cathode", id(p.cathode))
        .value("drop", p.drop)
        .empty();
  }
  std::string operator()(const Join& p) const { return ends("join", p).empty(); }
  std::string operator()(const Source& p) const {
    return Element("source")
        .text("plus", id(p.plus))
        .text("minus", id(p.minus))
        .value("volts", p.volts)
        .empty();
  }
  std::string operator()(const Regulator& p) const {
    return Element("regulator")
        .text("in", id(p.in))
        .text("out", id(p.out))
        .text("minus", id(p.minus))
        .value("volts", p.volts)
        .value("needs", p.needs)
        .value("limit", p.limit)
        .empty();
  }

 private:
  const std::string& id(TerminalIndex t) const { return terminals_[static_cast<std::size_t>(t)]; }

  template <class TwoEnded>
  Element ends(std::string_view name, const TwoEnded& part) const {
    return Element(name).text("a", id(part.a)).text("b", id(part.b));
  }

  const std::vector<std::string>& terminals_;
};

std::string terminal_text(const Terminal& terminal, const std::string& id) {
  return Element("terminal")
      .text("id", id)
      .text("function", terminal.function == TerminalFunction::Passive ? "" : to_word(terminal.function))
      .text("signal", terminal.signal)
      .text("optional", terminal.optional ? "yes" : "")
      .text("inner", terminal.inner ? "yes" : "")
      .value("withstands", terminal.withstands)
      .empty();
}

std::string leds_text(const LedString& leds) {
  return Element("leds")
      .number("count", leds.count)
      .value("each", leds.each)
      .text("brightness", leds.brightness ? percent_text(*leds.brightness) : "")
      .value("loop", leds.loop)
      .empty();
}

/// A cable has no parts to be told one by one.
std::string cable_text(const Device& device) {
  std::vector<std::string> pairs;
  for (const CorePair& pair : device.pairs) pairs.push_back(format("{}-{}", pair.a + 1, pair.b + 1));
  return format("  {}\n", Element("cable")
                              .text("id", device.id)
                              .text("title", device.title)
                              .number("cores", static_cast<int>(device.terminals.size()))
                              .text("pairs", plugward::format("{}", join(pairs, " ")))
                              .text("evidence", device.evidence)
                              .empty());
}

std::string device_text(const Device& device) {
  if (device.kind == "cable") return cable_text(device);
  std::string text = "  " +
                     Element("device")
                         .text("id", device.id)
                         .text("title", device.title)
                         .text("use", device.use)
                         .text("kind", device.kind)
                         .text("evidence", device.evidence)
                         .open() +
                     "\n";
  const std::vector<std::string> ids = terminal_ids(device);
  for (std::size_t t = 0; t < device.terminals.size(); ++t) {
    text += format("    {}\n", terminal_text(device.terminals[t], ids[t]));
  }
  for (const Part& part : device.parts) text += format("    {}\n", part_text(part, ids));
  if (device.leds) text += format("    {}\n", leds_text(*device.leds));
  return text + "  </device>\n";
}

/// How the file names the terminal: the shortest name that means no other.
std::string to_text(const Harness& harness, TerminalRef ref) {
  const Device& device = harness.devices[static_cast<std::size_t>(ref.device)];
  const std::string own = terminal_ids(device)[static_cast<std::size_t>(ref.terminal)];
  if (harness.devices.size() == 1 && harness.terminals_named(own).size() < 2) return own;
  const std::string whole = format("{}.{}", device.id, own);
  return harness.terminals_named(whole).size() < 2 ? whole : own;
}

std::string plug_text(const Harness& harness, const Plug& plug) {
  std::string text = "  " +
                     Element("plug")
                         .text("id", plug.id)
                         .text("label", plug.label)
                         .text("family", plug.family)
                         .number("positions", plug.positions)
                         .text("rows", plug.rows == 1 ? "" : format("{}", plug.rows))
                         .text("numbering", plug.numbering == Numbering::ByRow ? "by-row" : "")
                         .text("key", plug.key == KeyState::Intact    ? ""
                                      : plug.key == KeyState::Removed ? "removed"
                                                                      : "unknown")
                         .text("evidence", plug.evidence)
                         .open() +
                     "\n";
  std::vector<const Lead*> leads;
  for (const Lead& lead : plug.leads) {
    if (lead.cavity > 0) leads.push_back(&lead);
  }
  std::sort(leads.begin(), leads.end(), [](const Lead* a, const Lead* b) { return a->cavity < b->cavity; });
  for (const Lead* lead : leads) {
    text += format("    {}\n", Element("lead")
                                   .number("cavity", lead->cavity)
                                   .text("colour", to_code(lead->colour))
                                   .value("gauge", lead->gauge)
                                   .value("length", lead->length)
                                   .text("to", lead->to ? to_text(harness, *lead->to) : "")
                                   .text("mark", lead->mark)
                                   .empty());
  }
  return text + "  </plug>\n";
}

}  // namespace

std::vector<std::string> terminal_ids(const Device& device) {
  std::vector<std::string> ids;
  const auto taken = [&](const std::string& id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end() || device.terminal(id).has_value();
  };
  for (const Terminal& terminal : device.terminals) {
    std::string id = terminal.id;
    std::replace(id.begin(), id.end(), ' ', '-');
    id.resize(std::min(id.size(), longest_id));
    // A name that was changed may be one that another terminal has.
    const std::string stem = id.substr(0, longest_id - 3);
    for (int n = 2; id != terminal.id && taken(id); ++n) id = format("{}-{}", stem, n);
    ids.push_back(std::move(id));
  }
  return ids;
}

std::string part_text(const Part& part, const std::vector<std::string>& terminals) {
  return std::visit(PartWriter(terminals), part);
}

std::string harness_text(const Harness& harness) {
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text += Element("harness")
              .text("id", harness.id)
              .text("title", harness.title)
              .text("evidence", harness.evidence)
              .open() +
          "\n";
  for (const Evidence& e : harness.evidences) {
    text += format("  {}\n", Element("evidence")
                                 .text("id", e.id)
                                 .text("kind", to_word(e.kind))
                                 .text("revision", e.revision)
                                 .text("date", e.date)
                                 .text("note", e.note)
                                 .empty());
  }
  for (const Device& device : harness.devices) text += device_text(device);
  for (const Plug& plug : harness.plugs) text += plug_text(harness, plug);
  return text + "</harness>\n";
}

}  // namespace plugward
