// SPDX-License-Identifier: MIT
// Idea: what a pin is differs in words (fit/match.h); what settles it is the first reading whose computed
// band on the one board does not meet that on the other. Where no reading differs, the maker's papers must be
// asked. Tested in tests/cases: compare-boards.
#include "cli/board_difference.h"

#include <optional>

#include "base/format.h"
#include "fit/match.h"
#include "judge/measurement.h"
#include "model/fitting.h"
#include "plan/meter.h"

namespace plugward {
namespace {

std::string or_not_stated(const std::string& text) {
  return text.empty() ? "not stated" : text;
}

template <class Q>
std::string words(const std::optional<Q>& value) {
  return value ? to_text(*value) : "";
}

/// What a description says of a pin beside its function.
struct Stated {
  std::string what;
  std::string value;
};

std::vector<Stated> details(const Pin& pin) {
  std::string pull;
  if (pin.pull)
    pull = format("{}{}", pin.pull->up ? "up" : "down",
                  pin.pull->ohms.value > 0.0 ? format(", {}", to_text(pin.pull->ohms)) : "");
  return {{"limit", words(pin.limit)},
          {"withstands", words(pin.withstands)},
          {"withstands without power", words(pin.withstands_unpowered)},
          {"high level", words(pin.high)},
          {"low level", words(pin.low)},
          {"reads low below", words(pin.low_below)},
          {"reads high above", words(pin.high_above)},
          {"pull", pull},
          {"at reset", pin.on_at_reset ? (*pin.on_at_reset ? "on" : "off") : ""},
          {"net", pin.net}};
}

struct Band {
  double low = 0, high = 0;
  std::string words;
};

class Comparer {
 public:
  Comparer(const Board& a, std::string_view a_name, const Board& b, std::string_view b_name,
           const Catalogue& catalogue)
      : a_(a), b_(b), a_name_(a_name), b_name_(b_name), catalogue_(catalogue) {}

  std::vector<BoardDifference> run() {
    add("the board", "name", a_.id, b_.id, "read the print on the board");
    add("the board", "revision", a_.revision, b_.revision, "read the print on the board");
    rails();
    jumpers();
    for (const Header& header : a_.headers) {
      const Header* other = b_.header(header.id);
      if (other == nullptr) {
        add(header.id, "header", "there", "not there", "look at the board");
      } else {
        headers(header, *other);
      }
    }
    for (const Header& header : b_.headers) {
      if (a_.header(header.id) == nullptr)
        add(header.id, "header", "not there", "there", "look at the board");
    }
    return std::move(list_);
  }

 private:
  void add(const std::string& where, std::string what, const std::string& first, const std::string& second,
           std::string settle, std::string reading = "") {
    if (first == second) return;
    list_.push_back({where, std::move(what), or_not_stated(first), or_not_stated(second), std::move(settle),
                     std::move(reading)});
  }

  /// A pin that this rail feeds, as its name; "" none.
  static std::string pin_on(const Board& board, const std::string& rail) {
    for (const Header& header : board.headers) {
      for (const Pin& pin : header.pins) {
        if (pin.function == PinFunction::Supply && pin.rail == rail)
          return format("{}.{}", header.id, pin.number);
      }
    }
    return "";
  }

  void rails() {
    for (const Rail& rail : a_.rails) {
      const std::string where = format("rail {}", rail.id);
      const Rail* other = b_.rail(rail.id);
      if (other == nullptr) {
        add(where, "rail", to_text(rail.volts), "not there", "look for what makes it on the board");
        continue;
      }
      const std::string pin = pin_on(a_, rail.id);
      add(where, "volts", to_text(rail.volts), to_text(other->volts),
          format("board powered alone, nothing plugged in: volts from {} to the supply's minus",
                 pin.empty() ? "a pin of it" : pin),
          format("within {}: {}; within {}: {}", to_text(rail.volts), a_name_, to_text(other->volts),
                 b_name_));
      add(where, "limit", words(rail.limit), words(other->limit),
          "look up what makes it, and what else it feeds");
    }
    for (const Rail& rail : b_.rails) {
      if (a_.rail(rail.id) == nullptr)
        add(format("rail {}", rail.id), "rail", "not there", to_text(rail.volts),
            "look for what makes it on the board");
    }
  }

  void jumpers() {
    for (const Jumper& jumper : a_.jumpers) {
      const Jumper* other = b_.jumper(jumper.id);
      add(format("jumper {}", jumper.id), "rails", join(jumper.rails, ", "),
          other == nullptr ? "not there" : join(other->rails, ", "),
          "read the print beside it, then volts at its middle");
    }
    for (const Jumper& jumper : b_.jumpers) {
      if (a_.jumper(jumper.id) == nullptr)
        add(format("jumper {}", jumper.id), "rails", "not there", join(jumper.rails, ", "),
            "look at the board");
    }
  }

  void headers(const Header& a, const Header& b) {
    const std::string place = "look at the board";
    add(a.id, "label", a.label, b.label, "read the print beside it");
    add(a.id, "use", a.use, b.use, "read the print beside it, or the maker's manual");
    add(a.id, "family", a.family, b.family,
        "measure the pitch over all contacts; look for ramp, latch and shroud");
    add(a.id, "positions", format("{}", a.positions), format("{}", b.positions), "count the pins");
    add(a.id, "rows", format("{}", a.rows), format("{}", b.rows), "count the rows");
    if (a.rows == 2 && b.rows == 2)
      add(a.id, "numbering", a.numbering == Numbering::Zigzag ? "zigzag" : "by-row",
          b.numbering == Numbering::Zigzag ? "zigzag" : "by-row", "look for the printed number of pin 2");
    add(a.id, "place", place_words(a), place_words(b), place);
    for (int n = 1; n <= std::min(a.positions, b.positions); ++n) pins(a, b, n);
  }

  static std::string place_words(const Header& h) {
    return format("{}, {}, turned {}{}", to_text(h.x), to_text(h.y), h.rotation,
                  h.underside ? ", underside" : "");
  }

  void pins(const Header& a, const Header& b, int n) {
    const Pin& one = a.pin(n);
    const Pin& other = b.pin(n);
    const std::string where = format("{}.{}", a.id, n);
    const std::string first = pin_words(one), second = pin_words(other);
    if (first != second) {
      std::string reading;
      std::string settle = settling(a, b, n, reading);
      add(where, "function", first, second, std::move(settle), std::move(reading));
    }
    if (one.function != other.function) return;
    const std::vector<Stated> mine = details(one), theirs = details(other);
    for (std::size_t i = 0; i < mine.size(); ++i) {
      const bool pull = mine[i].what == "pull";
      add(where, mine[i].what, mine[i].value, theirs[i].value,
          pull ? format("power off: ohms from {} to the supply that it would be pulled to; parallel paths "
                        "make it less",
                        where)
               : "look it up in the schematic or the data sheet of the part behind it");
    }
  }

  static std::string pin_words(const Pin& pin) {
    std::string text = to_words(pin);
    if (!pin.jumper.empty()) text += format(" by {}", pin.jumper);
    if (pin.contest) text += format(", and {} by another statement", pin.contest->statement);
    return text;
  }

  std::optional<Band> volts(const Board& board, const Header& header, int n) const {
    if (header.pin(n).function == PinFunction::Ground) return Band{0.0, 0.0, "0 V"};
    const Harness nothing;
    Fitting alone{&board, &nothing, &catalogue_, {}, {}};
    const int index = static_cast<int>(&header - board.headers.data());
    for (const ExpectedReading& r : bare_board_readings(alone, index)) {
      const bool grounded = r.at.black == 0 || header.pin(r.at.black).function == PinFunction::Ground;
      if (r.at.red == n && r.low && r.high && grounded) return Band{*r.low, *r.high, r.expect};
    }
    return std::nullopt;
  }

  /// The first reading that differs; `reading`: what speaks for which.
  std::string settling(const Header& a, const Header& b, int n, std::string& reading) const {
    const Pin& one = a.pin(n);
    const Pin& other = b.pin(n);
    const std::string where = format("{}.{}", a.id, n);
    if (one.contest || other.contest) {
      const Harness nothing;
      const Board& doubted = one.contest ? a_ : b_;
      const Header& header = one.contest ? a : b;
      const Fitting alone{&doubted, &nothing, &catalogue_, {}, {}};
      const Measurement m = measure_pin(alone, static_cast<int>(&header - doubted.headers.data()), n);
      reading = m.expect;
      return m.action;
    }
    const bool first_ground = one.function == PinFunction::Ground,
               second_ground = other.function == PinFunction::Ground;
    if (first_ground != second_ground) {
      reading = format("a beep: {}; no beep: not {}", first_ground ? a_name_ : b_name_,
                       first_ground ? a_name_ : b_name_);
      return format("power off, nothing plugged in: continuity from {} to the supply's minus", where);
    }
    const auto mine = volts(a_, a, n), theirs = volts(b_, b, n);
    constexpr double apart = 0.1;  // volts that any meter tells
    if (mine && theirs && (mine->low > theirs->high + apart || theirs->low > mine->high + apart)) {
      reading = format("{}: {}; {}: {}", mine->words, a_name_, theirs->words, b_name_);
      return format("board powered alone, nothing plugged in: volts from {} to the supply's minus", where);
    }
    if (one.function == PinFunction::Supply && other.function == PinFunction::Supply)
      return format("power off, nothing plugged in: continuity from {} to a known pin of either supply",
                    where);
    return format(
        "no reading tells them apart: follow {} to the part behind it, in the schematic or on the board",
        where);
  }

  const Board& a_;
  const Board& b_;
  std::string a_name_, b_name_;
  const Catalogue& catalogue_;
  std::vector<BoardDifference> list_;
};

}  // namespace

std::vector<BoardDifference> board_differences(const Board& first, std::string_view first_name,
                                               const Board& second, std::string_view second_name,
                                               const Catalogue& catalogue) {
  return Comparer(first, first_name, second, second_name, catalogue).run();
}

std::string board_differences_text(const std::vector<BoardDifference>& list, std::string_view first_name,
                                   std::string_view second_name) {
  if (list.empty()) return format("{} and {} say the same\n", first_name, second_name);
  std::string text = format("{} and {} differ in {} {}\n", first_name, second_name, list.size(),
                            list.size() == 1 ? "point" : "points");
  for (const BoardDifference& d : list) {
    text += format("\n{}: {}\n  {}: {}\n  {}: {}\n  to settle it: {}\n", d.where, d.what, first_name, d.first,
                   second_name, d.second, d.settle);
    if (!d.reading.empty()) text += format("    {}\n", d.reading);
  }
  return text;
}

}  // namespace plugward
