// SPDX-License-Identifier: MIT
#include "support/many_boards.h"

#include <algorithm>
#include <random>
#include <vector>

#include "base/format.h"

namespace plugward::test {
namespace {

class Writer {
 public:
  Writer(const ManyBoards& how, std::uint32_t number)
      : how_(how),
        number_(number),
        random_(how.seed * 1000003U + number),
        habits_(how.seed * 7919U + (how.makers == 0 ? number : number % how.makers)) {}

  std::string run() {
    head();
    std::vector<Kind> kinds;
    for (const char* name : {"motor", "limit", "fan", "probe", "heater", "thermistor", "trigger", "led",
                             "sensor", "servo", "filament"}) {
      for (int variant = 0; variant < 2; ++variant) kinds.push_back(kind_of(name));
    }
    while (text_.size() + 120 < how_.size) header(kinds[random_() % kinds.size()]);
    return text_ + "</board>\n";
  }

 private:
  struct Kind {
    std::string name, use, family;
    std::vector<std::string> pins;
  };

  // The library's distributions differ from one to the other; the engine's numbers do not.
  std::size_t below(std::size_t n) { return habits_() % n; }
  bool one_in(std::size_t n) { return below(n) == 0; }
  std::string any(std::initializer_list<const char*> of) { return of.begin()[below(of.size())]; }

  void head() {
    text_ = format(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<board id=\"made-{0}\" title=\"Made board {0}\" revision=\"{1}\" width=\"120 mm\" height=\"90 mm\" "
        "evidence=\"print\">\n"
        "  <evidence id=\"print\" kind=\"board-print\" revision=\"B\" date=\"2026-03-02\" note=\"read off "
        "the "
        "board\"/>\n"
        "  <evidence id=\"drawing\" kind=\"makers-drawing\" date=\"2025-11-20\"/>\n"
        "  <evidence id=\"guess\" kind=\"assumption\"/>\n",
        number_, any({"A", "B", "C"}));
    text_ +=
        format("  <rail id=\"24V\" volts=\"{}\" limit=\"10 A\"/>\n", any({"22.8..25.2 V", "21.6..26.4 V"}));
    text_ += "  <rail id=\"12V\" volts=\"11.4..12.6 V\" limit=\"1 A\"/>\n";
    text_ +=
        format("  <rail id=\"5V\" volts=\"{}\" limit=\"1.5 A\"/>\n", any({"4.75..5.25 V", "4.9..5.2 V"}));
    text_ += "  <rail id=\"3V3\" volts=\"3.2..3.3 V\" limit=\"0.3 A\"/>\n";
    if (how_.jumpers) {
      text_ += "  <jumper id=\"JP1\" label=\"PROBE V\" rails=\"5V 24V\"/>\n";
      text_ += "  <jumper id=\"JP2\" label=\"FAN V\" rails=\"12V 24V\"/>\n";
    }
  }

  Kind kind_of(const std::string& kind) {
    std::vector<std::string> pins;
    std::string family = "xh-2.50";
    std::string use = kind;
    if (kind == "motor") {
      pins = {coil(1, 'A'), coil(1, 'B'), coil(2, 'A'), coil(2, 'B')};
      if (one_in(2)) std::swap(pins[1], pins[2]);
    } else if (kind == "limit" || kind == "filament") {
      pins = {supply("5V", ""), ground(), input(kind)};
    } else if (kind == "sensor") {
      pins = {supply("24V", ""), input(kind), ground()};
    } else if (kind == "probe" || kind == "servo") {
      family = any({"pin-2.54", "pin-2.54", "xh-2.50"});
      pins = {output("servo"), supply("5V", kind == "probe" ? "JP1" : ""), ground()};
    } else if (kind == "trigger") {
      use = "probe";
      family = any({"pin-2.54", "pin-2.54", "xh-2.50"});
      pins = {ground(), input("probe")};
    } else if (kind == "fan") {
      family = any({"xh-2.50", "kk-2.54"});
      pins = {supply(any({"12V", "24V"}), "JP2"), one_in(4) ? ground() : switched("fan", "0.1 ohm", "1 A")};
      if (one_in(3)) pins.push_back(input("tach"));
    } else if (kind == "heater") {
      family = any({"vh-3.96", "screw-5.08"});
      pins = {supply("24V", ""), switched("heater", "0.02 ohm", "6 A")};
    } else if (kind == "thermistor") {
      pins = {thermistor_input(), ground()};
    } else {
      pins = {supply("5V", ""), output("led-data"), ground()};
    }
    if (one_in(2)) {
      for (std::size_t i = pins.size(); i > 1; --i) std::swap(pins[i - 1], pins[below(i)]);
    }
    return {kind, use, family, pins};
  }

  void header(const Kind& kind) {
    text_ += format(
        "  <!-- {0} header of one machine part -->\n"
        "  <header id=\"J{1}\" label=\"{0} {1}\" use=\"{2}\" family=\"{3}\" positions=\"{4}\" x=\"{5}.5 mm\" "
        "y=\"{6} mm\"{7}>\n",
        kind.name, headers_ + 1, kind.use, kind.family, kind.pins.size(), 10 + random_() % 90,
        6 + random_() % 70, random_() % 2 == 0 ? " rotation=\"90\"" : "");
    for (std::size_t n = 1; n <= kind.pins.size(); ++n) pin(n, kind.pins[n - 1]);
    text_ += "  </header>\n";
    ++headers_;
  }

  void pin(std::size_t n, const std::string& what) {
    if (how_.doubts && random_() % 150 == 0) return;  // not described: unknown
    const bool contested = how_.doubts && random_() % 200 == 0;
    const std::string evidence = contested                             ? " evidence=\"print\""
                                 : how_.doubts && random_() % 150 == 0 ? " evidence=\"guess\""
                                                                       : "";
    text_ += format("    <pin n=\"{}\" {}{} net=\"P{}{}\"/>\n", n, what, evidence, "ABC"[random_() % 3],
                    random_() % 16);
    if (contested) text_ += format("    <pin n=\"{}\" function=\"unused\" evidence=\"drawing\"/>\n", n);
  }

  std::string supply(const std::string& rail, const std::string& jumper) {
    if (how_.jumpers && !jumper.empty() && one_in(2))
      return format("function=\"supply\" jumper=\"{}\"", jumper);
    return format("function=\"supply\" rail=\"{}\"{}", rail, one_in(2) ? " limit=\"1 A\"" : "");
  }
  static std::string ground() { return "function=\"ground\" label=\"G\""; }
  std::string input(const std::string& signal) {
    return format(
        "function=\"input\" signal=\"{}\" rail=\"3V3\" withstands=\"{}\" low-below=\"0.8 V\" high-above=\"2 "
        "V\"{}",
        signal, any({"-0.3..5.5 V", "-0.3..3.6 V"}),
        any({"", " pull=\"up\" pull-ohms=\"10 kohm\"", " pull=\"up\" pull-ohms=\"4.7 kohm\""}));
  }
  static std::string thermistor_input() {
    return "function=\"input\" signal=\"temperature\" rail=\"3V3\" analogue=\"yes\" withstands=\"-0.3..3.6 "
           "V\" "
           "pull=\"up\" pull-ohms=\"4.7 kohm\" clamp=\"3V3\" injection=\"5 mA\"";
  }
  std::string output(const std::string& signal) {
    return format("function=\"output\" signal=\"{}\" rail=\"{}\" high=\"{}\" limit=\"8 mA\" at-reset=\"off\"",
                  signal, "3V3", any({"2.9..3.3 V", "2.6..3.3 V"}));
  }
  static std::string switched(const std::string& signal, const std::string& ohms, const std::string& limit) {
    return format("function=\"switched\" signal=\"{}\" ohms=\"{}\" limit=\"{}\" at-reset=\"off\"", signal,
                  ohms, limit);
  }
  static std::string coil(int bridge, char end) {
    return format("function=\"coil\" coil=\"{}\" end=\"{}\" rail=\"24V\" limit=\"1.8 A\"", bridge, end);
  }

  const ManyBoards& how_;
  std::uint32_t number_;
  std::mt19937 random_;  ///< of this board
  std::mt19937 habits_;  ///< of its maker
  std::string text_;
  int headers_ = 0;
};

}  // namespace

std::string board_text(const ManyBoards& how, std::uint32_t number) {
  return Writer(how, number).run();
}

}  // namespace plugward::test
