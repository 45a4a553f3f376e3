// SPDX-License-Identifier: MIT
#include "support/random_device.h"

#include "base/format.h"

namespace plugward::test {
namespace {

class DeviceMaker {
 public:
  DeviceMaker(Dice& dice, std::string id, std::string use, std::string volts)
      : dice_(dice), id_(std::move(id)), use_(std::move(use)), volts_(std::move(volts)) {}

  RandomDevice run() {
    if (use_ == "limit" || use_ == "filament" || use_ == "sensor") {
      switch (dice_.below(volts_.empty() ? 3 : 6)) {
        case 0:
        case 1:
          return dry_switch();
        case 2:
          return changeover();
        case 3:
          return optical();
        case 4:
          return proximity();
        default:
          return sensor();
      }
    }
    if (use_ == "probe") return !volts_.empty() && dice_.chance(75) ? probe() : dry_switch();
    if (use_ == "fan") return fan();
    if (use_ == "heater") return dice_.chance(85) ? heater() : solenoid();
    if (use_ == "thermistor") return thermistor();
    if (use_ == "motor") return motor();
    if (use_ == "led") {
      const std::size_t n = dice_.below(5);
      return n < 2 ? led_string() : n < 4 ? rgb_strip() : lamp();
    }
    if (use_ == "display") return panel();
    switch (dice_.below(5)) {
      case 0:
        return solenoid();
      case 1:
        return own_supply();
      case 2:
        return module();
      case 3:
        return mystery();
      default:
        return fan();
    }
  }

 private:
  using List = std::vector<std::string>;

  /// With what is fed from a header that has no supply, if at all.
  const std::string& fed() const {
    static const std::string usual = "24";
    return volts_.empty() ? usual : volts_;
  }

  RandomDevice line(const std::string& element) { return {XmlNode(element, {{"id", id_}}), {}}; }
  RandomDevice made() { return {XmlNode("device", {{"id", id_}, {"use", use_}}), {}}; }

  void maybe(XmlNode& node, int percent, const std::string& key, const List& values) {
    if (dice_.chance(percent)) node.set(key, dice_.pick(values));
  }

  /// What a load for the rail says that it needs.
  std::string needs() {
    if (volts_ == "24") return dice_.pick<std::string>({"20..28 V", "10..30 V", "22..26 V"});
    if (volts_ == "12") return dice_.pick<std::string>({"10..14 V", "10.8..13.2 V", "6..26 V"});
    if (volts_ == "3.3") return dice_.pick<std::string>({"3..3.6 V", "3..5.5 V"});
    return dice_.pick<std::string>({"4.5..5.5 V", "4.6..5.5 V", "3..5.5 V", "4.5..30 V"});
  }

  void feed(XmlNode& node, const List& draws) {
    node.set("needs", needs()).set("draws", dice_.pick(draws));
    maybe(node, 75, "reversed", {"destroyed", "blocked", "harmless"});
  }

  XmlNode terminal(const std::string& id, const std::string& function, const std::string& signal = "") {
    XmlNode t("terminal", {{"id", id}});
    if (!function.empty()) t.set("function", function);
    if (!signal.empty()) t.set("signal", signal);
    if ((function == "input" || function == "output") && dice_.chance(70)) {
      t.set("withstands", dice_.pick<std::string>({"-0.3..5.5 V", "-0.3..3.6 V", "-0.3..30 V"}));
    }
    if (dice_.chance(2)) t.set("optional", "yes");
    return t;
  }

  XmlNode load(const std::string& plus, const std::string& minus, const List& draws) {
    XmlNode node("load", {{"plus", plus}, {"minus", minus}});
    feed(node, draws);
    maybe(node, 15, "survives", {"36 V"});
    return node;
  }

  static TerminalWish supply(std::string id) { return {std::move(id), {"supply"}}; }
  static TerminalWish ground(std::string id) { return {std::move(id), {"ground"}}; }
  static TerminalWish minus(std::string id, std::string signal = "") {
    return {std::move(id), {"switched", "ground"}, std::move(signal)};
  }
  static TerminalWish to_input(std::string id, std::string signal) {
    return {std::move(id), {"input"}, std::move(signal)};
  }
  static TerminalWish to_output(std::string id, std::string signal) {
    return {std::move(id), {"output"}, std::move(signal)};
  }

  RandomDevice dry_switch() {
    RandomDevice d = line("dry-switch");
    d.node.set("use", use_).set("rests", dice_.pick<std::string>({"open", "closed"}));
    d.wishes = {to_input("A", use_), ground("B")};
    return d;
  }

  RandomDevice changeover() {
    RandomDevice d = made();
    d.node.children = {XmlNode("terminal", {{"id", "C"}, {"signal", use_}}),
                       XmlNode("terminal", {{"id", "NC"}, {"signal", use_}}),
                       XmlNode("terminal", {{"id", "NO"}, {"function", "spare"}}),
                       XmlNode("switch", {{"a", "C"}, {"b", "NC"}, {"rests", "closed"}}),
                       XmlNode("switch", {{"a", "C"}, {"b", "NO"}, {"rests", "open"}})};
    d.wishes = {to_input("C", use_), ground("NC")};
    if (dice_.chance(40)) d.wishes.push_back({"NO", {"unused"}});
    return d;
  }

  RandomDevice optical() {
    RandomDevice d = line("optical-switch");
    d.node.set("use", use_).set("rests", dice_.pick<std::string>({"on", "off"}));
    feed(d.node, {"10 mA", "20 mA"});
    d.node.drop("reversed");
    d.wishes = {supply("V"), ground("G"), to_input("S", use_)};
    return d;
  }

  RandomDevice proximity() {
    RandomDevice d = line("proximity");
    d.node.set("use", use_).set("kind", dice_.pick<std::string>({"sinking", "sinking", "sourcing"}));
    feed(d.node, {"10 mA", "15 mA"});
    d.node.drop("reversed");
    maybe(d.node, 60, "drop", {"2 V", "0.4 V", "0.2 V"});
    maybe(d.node, 40, "leak", {"0.1 mA", "0.01 mA"});
    maybe(d.node, 80, "pull", {"none", "none", "10 kohm", "4.7 kohm"});
    maybe(d.node, 60, "limit", {"0.2 A", "20 mA"});
    maybe(d.node, 80, "rests", {"on", "off"});
    d.wishes = {supply("V"), ground("G"), to_input("Q", use_)};
    return d;
  }

  /// The same by its parts.
  RandomDevice sensor() {
    RandomDevice d = made();
    XmlNode driver("driver", {{"terminal", "S"},
                              {"plus", "V"},
                              {"minus", "G"},
                              {"kind", dice_.pick<std::string>({"push-pull", "sinking", "sourcing"})}});
    maybe(driver, 50, "drop", {"0.4 V", "1 V"});
    if (driver.get("kind") != "push-pull") maybe(driver, 80, "pull", {"none", "10 kohm"});
    maybe(driver, 50, "rests", {"on", "off"});
    d.node.children = {terminal("V", "supply"), terminal("G", "ground"), terminal("S", "output", use_)};
    if (!dice_.chance(8)) d.node.children.push_back(load("V", "G", {"5 mA", "20 mA"}));
    if (!dice_.chance(4)) d.node.children.push_back(std::move(driver));
    d.wishes = {supply("V"), ground("G"), to_input("S", use_)};
    return d;
  }

  RandomDevice probe() {
    RandomDevice d = line("servo-probe");
    feed(d.node, {"0.1 A", "0.3 A"});
    maybe(d.node, 30, "withstands", {"-0.3..3.6 V", "-0.3..30 V"});
    maybe(d.node, 30, "rests", {"open", "closed"});
    d.wishes = {supply("V"), ground("G"), to_output("P", "servo"), to_input("T", "probe"), ground("H")};
    return d;
  }

  RandomDevice fan() {
    RandomDevice d = line("fan");
    feed(d.node, {"0.1 A", "0.2 A", "0.8 A"});
    d.wishes = {supply("V"), minus("G")};
    if (dice_.chance(35)) {
      d.node.set("sense", "yes");
      d.wishes.push_back(to_input("S", "tach"));
    }
    if (dice_.chance(20)) {
      d.node.set("control", "yes");
      d.wishes.push_back(to_output("C", "pwm"));
    }
    return d;
  }

  RandomDevice heater() {
    RandomDevice d = line("heater-element");
    d.node.set("volts", fed() + " V")
        .set("watts", dice_.pick<std::string>({"15 W", "40 W", "60 W", "200 W"}));
    d.wishes = {supply("A"), {"B", {"switched"}}};
    return d;
  }

  RandomDevice thermistor() {
    RandomDevice d = line("thermistor");
    d.node.set("ohms", dice_.pick<std::string>({"100 kohm", "10 kohm", "1 kohm"}));
    if (d.node.get("ohms") != "1 kohm") d.node.set("beta", "3950 K");
    d.wishes = {to_input("A", "temperature"), ground("B")};
    return d;
  }

  RandomDevice motor() {
    RandomDevice d = line("motor");
    d.node.set("ohms", dice_.pick<std::string>({"2 ohm", "1.4 ohm", "30 ohm"}));
    maybe(d.node, 85, "amps", {"0.8 A", "1.5 A", "2.5 A"});
    const auto end = [](const char* id, const char* where) { return TerminalWish{id, {"coil"}, "", where}; };
    d.wishes = {end("A1", "1A"), end("B1", "1B"), end("A2", "2A"), end("B2", "2B")};
    if (dice_.chance(20)) std::swap(d.wishes[0].coil, d.wishes[1].coil);
    return d;
  }

  RandomDevice led_string() {
    RandomDevice d = line("led-string");
    d.node.set("count", dice_.pick<std::string>({"1", "8", "30"}));
    maybe(d.node, 50, "each", {"20 mA", "60 mA"});
    d.wishes = {supply("V"), to_output("D", "led-data"), ground("G")};
    if (dice_.chance(20)) {
      d.node.set("out", "yes");
      d.wishes.push_back({"Q", {"unused"}});
    }
    return d;
  }

  RandomDevice rgb_strip() {
    RandomDevice d = line("rgb-strip");
    d.node.set("volts", needs()).set("draws", dice_.pick<std::string>({"0.3 A", "1 A"}));
    d.wishes = {supply("V"), minus("R", "red"), minus("G", "green"), minus("B", "blue")};
    return d;
  }

  /// An LED with its resistor, joined at a node that no lead comes from.
  RandomDevice lamp() {
    RandomDevice d = made();
    d.node.children = {terminal("P", "supply"), terminal("K", "return"), XmlNode("terminal", {{"id", "N"}}),
                       XmlNode("resistor", {{"a", "P"}, {"b", "N"}, {"ohms", "1 kohm"}, {"limit", "0.25 W"}}),
                       XmlNode("diode", {{"anode", "N"}, {"cathode", "K"}, {"drop", "2 V"}})};
    if (dice_.chance(50)) d.node.children.push_back(load("P", "K", {"20 mA"}));
    d.wishes = {supply("P"), minus("K")};
    return d;
  }

  RandomDevice panel() {
    RandomDevice d = made();
    d.node.children = {terminal("V", "supply"),
                       terminal("G", "ground"),
                       terminal("H", "ground"),
                       terminal("A", "output", "button"),
                       terminal("B", "output", "encoder"),
                       terminal("L", "input", "lamp"),
                       load("V", "G", {"50 mA"}),
                       XmlNode("receiver", {{"terminal", "L"},
                                            {"plus", "V"},
                                            {"minus", "G"},
                                            {"low-below", "0.8 V"},
                                            {"high-above", "2 V"}}),
                       XmlNode("switch", {{"a", "A"}, {"b", "H"}, {"rests", "open"}}),
                       XmlNode("switch", {{"a", "B"}, {"b", "H"}, {"rests", "open"}}),
                       XmlNode("join", {{"a", "G"}, {"b", "H"}})};
    d.wishes = {
        supply("V"),           ground("G"), ground("H"), to_input("A", "button"), to_input("B", "encoder"),
        to_output("L", "lamp")};
    return d;
  }

  RandomDevice solenoid() {
    RandomDevice d = made();
    d.node.children = {XmlNode("terminal", {{"id", "A"}}), XmlNode("terminal", {{"id", "B"}}),
                       XmlNode("coil", {{"a", "A"}, {"b", "B"}, {"ohms", "48 ohm"}})};
    if (dice_.chance(50)) d.node.children.push_back(XmlNode("diode", {{"anode", "B"}, {"cathode", "A"}}));
    d.wishes = {supply("A"), minus("B")};
    return d;
  }

  /// A box with a supply of its own that gives a signal.
  RandomDevice own_supply() {
    RandomDevice d = made();
    d.node.children = {
        XmlNode("terminal", {{"id", "V"}}), terminal("G", "ground"), terminal("S", "output", "sensor"),
        XmlNode("source", {{"plus", "V"},
                           {"minus", "G"},
                           {"volts", dice_.pick<std::string>({"3.2..3.4 V", "4.8..5.2 V", "12 V"})}}),
        XmlNode("driver", {{"terminal", "S"}, {"plus", "V"}, {"minus", "G"}, {"kind", "push-pull"}})};
    d.wishes = {ground("G"), to_input("S", "sensor")};
    return d;
  }

  /// A relay module: an input with a pull of its own.
  RandomDevice module() {
    RandomDevice d = made();
    XmlNode receiver("receiver", {{"terminal", "I"}, {"plus", "V"}, {"minus", "G"}});
    if (dice_.chance(85)) receiver.set("low-below", "0.8 V").set("high-above", "2 V");
    if (dice_.chance(50))
      receiver.set("pull", "10 kohm").set("pull-to", dice_.pick<std::string>({"plus", "minus"}));
    d.node.children = {terminal("V", "supply"), terminal("G", "ground"), terminal("I", "input", "pwm"),
                       load("V", "G", {"70 mA"}), std::move(receiver)};
    d.wishes = {supply("V"), ground("G"), to_output("I", "pwm")};
    return d;
  }

  RandomDevice mystery() {
    RandomDevice d = made();
    d.node.children = {terminal("V", "supply"), terminal("G", "ground"),
                       XmlNode("terminal", {{"id", "X"}, {"function", "unknown"}}),
                       load("V", "G", {"20 mA"})};
    d.wishes = {supply("V"), ground("G"), {"X", {"unused", "unknown", "input"}}};
    return d;
  }

  Dice& dice_;
  std::string id_;
  std::string use_;
  std::string volts_;
};

}  // namespace

RandomDevice random_device(Dice& dice, const std::string& id, const std::string& use,
                           const std::string& volts) {
  return DeviceMaker(dice, id, use, volts).run();
}

}  // namespace plugward::test
