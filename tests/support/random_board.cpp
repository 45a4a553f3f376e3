// SPDX-License-Identifier: MIT
#include <array>

#include "base/format.h"
#include "support/random_world.h"

namespace plugward::test {
namespace {

struct FamilyRow {
  std::string_view id;
  std::size_t fewest;
  std::size_t most;
  bool two_rows;
};

// As in src/catalogue/families.xml.
constexpr std::array<FamilyRow, 17> families{{{"pin-2.54", 1, 80, true},
                                              {"kk-2.54", 2, 16, false},
                                              {"box-2.54", 6, 64, true},
                                              {"xh-2.50", 1, 20, false},
                                              {"ph-2.00", 2, 16, false},
                                              {"eh-2.50", 2, 15, false},
                                              {"zh-1.50", 2, 13, false},
                                              {"sh-1.00", 2, 20, false},
                                              {"gh-1.25", 2, 15, false},
                                              {"sm-2.50", 2, 18, false},
                                              {"microfit-3.00", 2, 24, true},
                                              {"minifit-4.20", 2, 24, true},
                                              {"vh-3.96", 2, 11, false},
                                              {"screw-3.50", 2, 16, false},
                                              {"screw-5.08", 2, 16, false},
                                              {"m12-a", 2, 17, false},
                                              {"m8", 3, 5, false}}};

class BoardMaker {
 public:
  explicit BoardMaker(Dice& dice) : dice_(dice) {}

  XmlNode run() {
    XmlNode board("board",
                  {{"id", "b"}, {"title", "Random board"}, {"width", "200 mm"}, {"height", "80 mm"}});
    if (!dice_.chance(1)) board.set("evidence", dice_.chance(1) ? "guess" : "meter");
    for (const auto& [id, kind] : std::vector<XmlNode::Attribute>{{"meter", "measurement"},
                                                                  {"print", "board-print"},
                                                                  {"drawing", "makers-drawing"},
                                                                  {"schematic", "schematic"},
                                                                  {"guess", "assumption"}}) {
      board.children.emplace_back("evidence", std::vector<XmlNode::Attribute>{{"id", id}, {"kind", kind}});
    }
    add_rails(board);
    for (int n = 1; n <= 2; ++n) {
      if (!dice_.chance(50)) continue;
      const std::string rails =
          dice_.pick<std::string>({"5V 24V", "12V 24V", "5V 12V", "3V3 5V", "5V 12V 24V"});
      jumpers_.push_back(format("JP{}", n));
      board.children.emplace_back("jumper",
                                  std::vector<XmlNode::Attribute>{{"id", jumpers_.back()}, {"rails", rails}});
    }
    const std::size_t headers = 1 + dice_.below(5);
    for (std::size_t i = 0; i < headers; ++i) board.children.push_back(header(i));
    return board;
  }

 private:
  void add_rails(XmlNode& board) {
    struct Volts {
      std::string id;
      std::vector<std::string> ranges;
      std::vector<std::string> limits;
    };
    const std::vector<Volts> rows{{"24V", {"24 V", "22.8..25.2 V", "21.6..26.4 V"}, {"10 A", "10 A", "2 A"}},
                                  {"12V", {"12 V", "11.4..12.6 V"}, {"5 A", "1 A"}},
                                  {"5V", {"5 V", "4.9..5.2 V", "4.75..5.25 V"}, {"2 A", "1 A", "0.5 A"}},
                                  {"3V3", {"3.3 V", "3.2..3.4 V"}, {"0.3 A", "0.1 A"}}};
    for (const Volts& row : rows) {
      XmlNode rail("rail", {{"id", row.id}, {"volts", dice_.pick(row.ranges)}});
      if (dice_.chance(85)) rail.set("limit", dice_.pick(row.limits));
      board.children.push_back(std::move(rail));
    }
  }

  XmlNode pin(const std::string& function) { return XmlNode("pin", {{"n", "0"}, {"function", function}}); }

  void maybe(XmlNode& node, int percent, const std::string& key, const std::vector<std::string>& values) {
    if (dice_.chance(percent)) node.set(key, dice_.pick(values));
  }

  XmlNode supply(const std::vector<std::string>& rails) {
    XmlNode p = pin("supply");
    if (!jumpers_.empty() && dice_.chance(25)) {
      p.set("jumper", dice_.pick(jumpers_));
    } else {
      p.set("rail", dice_.pick(rails));
    }
    maybe(p, 70, "limit", {"0.5 A", "2 A", "2 A", "5 A", "12 A"});
    return p;
  }

  XmlNode ground() {
    XmlNode p = pin("ground");
    maybe(p, 15, "limit", {"1 A", "5 A", "12 A"});
    return p;
  }

  std::string logic_rail() { return dice_.chance(75) ? "3V3" : "5V"; }

  void add_pull(XmlNode& p, int percent_up, int percent_down) {
    if (dice_.chance(percent_up)) {
      p.set("pull", "up");
    } else if (dice_.chance(percent_down)) {
      p.set("pull", "down");
    }
    if (p.has("pull")) maybe(p, 85, "pull-ohms", {"10 kohm", "4.7 kohm", "47 kohm", "1 kohm"});
  }

  XmlNode output(const std::string& signal) {
    const std::string rail = logic_rail();
    XmlNode p = pin("output");
    p.set("signal", signal).set("rail", rail);
    maybe(p, 96, "high", {rail == "3V3" ? "2.9..3.3 V" : "4.4..5 V"});
    maybe(p, 80, "limit", {"8 mA", "20 mA"});
    maybe(p, 15, "low", {"0.4 V"});
    maybe(p, 15, "ohms", {"50 ohm", "330 ohm"});
    maybe(p, 25, "at-reset", {"on", "off"});
    maybe(p, 20, "withstands", {"-0.3..3.6 V", "-0.3..5.5 V"});
    if (dice_.chance(7)) {
      p.set("drive", "open-drain");
      add_pull(p, 70, 0);
    }
    return p;
  }

  XmlNode input(const std::string& signal) {
    const std::string rail = logic_rail();
    XmlNode p = pin("input");
    p.set("signal", signal).set("rail", rail);
    const bool analogue = signal == "temperature";
    if (analogue) p.set("analogue", "yes");
    maybe(p, 93, "withstands",
          rail == "5V" ? std::vector<std::string>{"-0.3..5.5 V"}
                       : std::vector<std::string>{"-0.3..3.6 V", "-0.3..5.5 V", "-0.3..5.5 V"});
    maybe(p, 20, "withstands-unpowered", {"3.6 V", "0.3 V"});
    maybe(p, 10, "withstands-pulled", {"3.6 V"});
    if (!analogue && dice_.chance(96)) {
      p.set("low-below", rail == "5V" ? "1.5 V" : "0.8 V").set("high-above", rail == "5V" ? "3.5 V" : "2 V");
    }
    add_pull(p, analogue ? 95 : 65, 25);
    if (dice_.chance(12)) {
      p.set("clamp", rail);
      maybe(p, 60, "injection", {"5 mA", "0 A"});
    }
    return p;
  }

  XmlNode switched(const std::string& signal) {
    XmlNode p = pin("switched");
    p.set("signal", signal);
    maybe(p, 80, "ohms", {"0.02 ohm", "0.1 ohm"});
    maybe(p, 90, "limit", {"1 A", "3 A", "10 A"});
    maybe(p, 85, "at-reset", {"off", "off", "off", "off", "on"});
    return p;
  }

  XmlNode coil(const std::string& bridge, const std::string& end) {
    XmlNode p = pin("coil");
    p.set("coil", bridge).set("end", end);
    maybe(p, 95, "rail", {"24V"});
    maybe(p, 90, "limit", {"1 A", "1.8 A", "2 A"});
    return p;
  }

  XmlNode any_pin() {
    switch (dice_.below(8)) {
      case 0:
        return supply({"24V", "12V", "5V", "3V3"});
      case 1:
        return ground();
      case 2:
        return output(dice_.pick<std::string>({"servo", "led-data", "pwm", "lamp"}));
      case 3:
        return input(dice_.pick<std::string>({"limit", "probe", "sensor", "tach", "button", "temperature"}));
      case 4:
        return switched(dice_.pick<std::string>({"fan", "heater", "red"}));
      case 5:
        return coil(dice_.pick<std::string>({"1", "2"}), dice_.pick<std::string>({"A", "B"}));
      case 6:
        return pin("unused");
      default:
        return pin("unknown");
    }
  }

  std::vector<XmlNode> pins_for(const std::string& use) {
    if (use == "limit" || use == "filament" || use == "sensor") {
      std::vector<XmlNode> pins{ground(), input(use)};
      if (dice_.chance(75)) {
        pins.push_back(supply(use == "sensor" ? std::vector<std::string>{"24V", "12V", "5V"}
                                              : std::vector<std::string>{"5V", "5V", "24V", "3V3"}));
      }
      return pins;
    }
    if (use == "probe") {
      std::vector<XmlNode> pins{output("servo"), supply({"5V", "5V", "24V"}), ground()};
      if (dice_.chance(60)) pins.insert(pins.end(), {input("probe"), ground()});
      return pins;
    }
    if (use == "fan") {
      std::vector<XmlNode> pins{supply({"24V", "12V"}), dice_.chance(75) ? switched("fan") : ground()};
      if (dice_.chance(35)) pins.push_back(input("tach"));
      if (dice_.chance(25)) pins.push_back(output("pwm"));
      return pins;
    }
    if (use == "heater") return {supply({"24V", "24V", "12V"}), switched("heater")};
    if (use == "thermistor") return {input("temperature"), ground()};
    if (use == "motor") return {coil("1", "A"), coil("1", "B"), coil("2", "A"), coil("2", "B")};
    if (use == "led") {
      if (dice_.chance(30))
        return {supply({"24V", "12V"}), switched("red"), switched("green"), switched("blue")};
      return {supply({"5V", "5V", "12V"}), output("led-data"), ground()};
    }
    if (use == "display") {
      return {
          supply({"5V", "5V", "3V3"}), ground(), ground(), input("button"), input("encoder"), output("lamp")};
    }
    std::vector<XmlNode> pins;
    const std::size_t n = 2 + dice_.below(5);
    for (std::size_t i = 0; i < n; ++i) pins.push_back(any_pin());
    return pins;
  }

  /// A second statement about a pin; sometimes it says the same.
  XmlNode rival_of(XmlNode& first) {
    first.set("evidence", "print");
    XmlNode other = dice_.chance(30) ? first : any_pin();
    other.set("n", first.get("n")).set("evidence", dice_.chance(15) ? "meter" : "drawing");
    return other;
  }

  XmlNode header(std::size_t index) {
    const std::string use =
        dice_.pick<std::string>({"limit", "limit", "filament", "sensor", "probe", "probe", "fan", "fan",
                                 "heater", "thermistor", "motor", "led", "led", "display", "spare"});
    std::vector<XmlNode> pins = pins_for(use);
    for (XmlNode& p : pins) {
      if (dice_.chance(2)) p = any_pin();
    }
    while (dice_.chance(12)) pins.push_back(dice_.chance(60) ? pin("unused") : any_pin());
    if (dice_.chance(65)) dice_.shuffle(pins);
    XmlNode out("header", {{"id", format("J{}", index + 1)}, {"use", dice_.chance(8) ? "spare" : use}});
    const FamilyRow& family = pick_family(pins.size());
    while (pins.size() < family.fewest) pins.push_back(pin("unused"));
    out.set("family", std::string(family.id)).set("positions", std::to_string(pins.size()));
    if (family.two_rows && pins.size() % 2 == 0 && (family.id == "box-2.54" || dice_.chance(50))) {
      out.set("rows", "2");
      maybe(out, 25, "numbering", {"by-row", "zigzag"});
    }
    maybe(out, 6, "key", {"removed", "unknown"});
    out.set("x", format("{} mm", 15 + 35 * index)).set("y", "10 mm");
    maybe(out, 30, "rotation", {"90", "180"});
    maybe(out, 10, "evidence", {"schematic", "print", "drawing", "schematic", "guess"});
    int n = 0;
    for (XmlNode& p : pins) {
      p.set("n", std::to_string(++n));
      if (dice_.chance(1)) continue;  // not described
      maybe(p, 2, "evidence", {"guess", "print", "print", "print"});
      if (dice_.chance(2)) {
        XmlNode rival = rival_of(p);
        out.children.push_back(p);
        out.children.push_back(std::move(rival));
        continue;
      }
      out.children.push_back(p);
    }
    return out;
  }

  const FamilyRow& pick_family(std::size_t positions) {
    if (dice_.chance(55)) return families[3];
    const FamilyRow& family = families[dice_.below(families.size())];
    return positions <= family.most ? family : families[3];
  }

  Dice& dice_;
  std::vector<std::string> jumpers_;
};

}  // namespace

XmlNode random_board(Dice& dice) {
  return BoardMaker(dice).run();
}

}  // namespace plugward::test
