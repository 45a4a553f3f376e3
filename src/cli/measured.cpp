// SPDX-License-Identifier: MIT
// Idea: every statement about a pin is tried by writing into the board's text that it rests on the reading,
// reading that text again, and computing what the meter would show (plan/meter.h). So what is judged is what
// --record-measured writes, and a reading can only choose among statements, never invent one: 5 V at an
// unknown pin may be a supply or an input pulled up to it. A beep does more: a pin that beeps to ground is
// ground. Tested in tests/cases: measured-*.
#include "cli/measured.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <optional>
#include <set>

#include "base/file.h"
#include "base/format.h"
#include "cli/board_edit.h"
#include "cli/evidence_date.h"
#include "cli/reading_words.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/meter.h"

namespace plugward {
namespace {

/// A pin of the board; header -1: the supply's minus.
struct BoardPoint {
  int header = -1;
  int pin = 0;
};

/// A name and a number behind its last dot: "J9.2" is {"J9", 2}; nothing when it is no such word.
std::optional<std::pair<std::string, int>> dotted(const std::string& word) {
  const std::size_t dot = word.rfind('.');
  if (dot == std::string::npos || dot == 0 || dot + 1 == word.size()) return std::nullopt;
  int number = 0;
  const auto [end, error] = std::from_chars(word.data() + dot + 1, word.data() + word.size(), number);
  if (error != std::errc() || end != word.data() + word.size()) return std::nullopt;
  return std::pair(word.substr(0, dot), number);
}

class Bench {
 public:
  Bench(Workbench& bench, Fitting& fitting, const Options& options)
      : bench_(bench),
        fitting_(fitting),
        options_(options),
        edit_(bench.sources.file(bench.board->span.file).text, *bench.board),
        date_(evidence_date(options.date)) {}

  void run() {
    for (const std::string& text : options_.measured) take(read_reading(text));
    std::unique_ptr<Board> board = read_again(edit_);
    for (const auto& [header, pin, words] : contests_) {
      Pin& contested =
          board->headers[static_cast<std::size_t>(header)].pins[static_cast<std::size_t>(pin) - 1];
      contested.contest = Contest{words, {}};
    }
    record(*board);
    bench_.board = std::move(board);
    fitting_.board = bench_.board.get();
  }

 private:
  struct Contested {
    int header, pin;
    std::string words;
  };

  void note(const MeterReading& reading, const std::string& what) {
    bench_.notes.push_back(format("reading {}: {}", reading.text, what));
  }

  // Points

  std::optional<BoardPoint> board_point(const std::string& word) const {
    if (word == "minus") return BoardPoint{};
    const auto parts = dotted(word);
    if (!parts) return std::nullopt;
    for (std::size_t h = 0; h < bench_.board->headers.size(); ++h) {
      const Header& header = bench_.board->headers[h];
      if (header.id != parts->first) continue;
      if (parts->second < 1 || parts->second > header.positions) {
        throw UsageError(format("--measured: header '{}' has pins 1 to {}, not {}", header.id,
                                header.positions, parts->second));
      }
      return BoardPoint{static_cast<int>(h), parts->second};
    }
    return std::nullopt;
  }

  Plug* plug_of_point(const std::string& word, int& cavity) {
    const auto parts = dotted(word);
    if (!parts) return nullptr;
    for (Plug& plug : bench_.harness->plugs) {
      if (plug.id == parts->first && parts->second >= 1 && parts->second <= plug.positions) {
        cavity = parts->second;
        return &plug;
      }
    }
    return nullptr;
  }

  void take(const MeterReading& reading) {
    const auto red = board_point(reading.red), black = board_point(reading.black);
    if (red && black) {
      reading.shown == Shown::Voltage ? take_volts(reading, *red, *black) : take_ohms(reading, *red, *black);
      return;
    }
    if (red.has_value() == black.has_value()) {
      take_lead(reading);
      return;
    }
    throw UsageError(format("--measured {}: '{}' is no pin of board '{}', such as J9.2", reading.text,
                            red ? reading.black : reading.red, bench_.board->id));
  }

  // The board

  const Pin& pin(BoardPoint p) const {
    return bench_.board->headers[static_cast<std::size_t>(p.header)]
        .pins[static_cast<std::size_t>(p.pin) - 1];
  }
  std::string name(BoardPoint p) const {
    return format("{}.{}", bench_.board->headers[static_cast<std::size_t>(p.header)].id, p.pin);
  }

  std::unique_ptr<Board> read_again(const BoardEdit& edit) {
    const std::string& path = bench_.sources.file(bench_.board->span.file).path;
    const FileId file = bench_.sources.add(path, edit.text());
    Diagnostics faults;
    Description read = read_description(bench_.sources, file, bench_.catalogue, faults);
    if (!read.board) throw UsageError(format("--measured: '{}' cannot take what was read into it", path));
    return std::move(read.board);
  }

  /// The board as it is when the statement whose start tag this is rests on a reading.
  std::unique_ptr<Board> board_if(Span statement, BoardPoint p) {
    BoardEdit trial = edit_;
    if (statement.begin != bench_.board->headers[static_cast<std::size_t>(p.header)].span.begin)
      trial.rests_on(statement, trial.add_reading("trial", ""));
    return read_again(trial);
  }

  /// Weak evidence, or none: a doubt that a reading may settle.
  bool doubted(BoardPoint p) const {
    const Header& header = bench_.board->headers[static_cast<std::size_t>(p.header)];
    const Evidence* evidence = bench_.board->evidence_of(header, pin(p));
    return pin(p).contest || evidence == nullptr || evidence->kind == EvidenceKind::Assumption;
  }

  struct Band {
    double low = 0, high = 0;
  };

  /// What a voltmeter from this pin to ground must show; nothing when it cannot be said.
  std::optional<Band> volts_band(const Board& board, BoardPoint p) const {
    const Pin& there = board.headers[static_cast<std::size_t>(p.header)].pin(p.pin);
    if (there.function == PinFunction::Ground) return Band{0.0, 0.0};
    Fitting alone = fitting_;
    alone.board = &board;
    for (const ExpectedReading& r : bare_board_readings(alone, p.header)) {
      if (r.at.red != p.pin || !r.low || !r.high) continue;
      const bool to_ground =
          r.at.black == 0 ||
          board.headers[static_cast<std::size_t>(p.header)].pin(r.at.black).function == PinFunction::Ground;
      if (to_ground) return Band{*r.low, *r.high};
    }
    return std::nullopt;
  }

  /// Handheld meters: half a percent and a few digits (common practice, no source).
  static bool within(double value, const Band& band) {
    const double slack = 0.05 + 0.005 * std::abs(value);
    return value >= band.low - slack && value <= band.high + slack;
  }

  void settle(const MeterReading& reading, BoardPoint p, Span statement, const std::string& says) {
    if (!settled_.insert({p.header, p.pin}).second) return;
    edit_.rests_on(statement, edit_.add_reading(format("{} read {}", name(p), shown_words(reading)), date_));
    note(reading, says);
  }

  void contest(const MeterReading& reading, BoardPoint p, const std::string& stated) {
    contests_.push_back({p.header, p.pin, format("something that reads {}", shown_words(reading))});
    note(reading,
         format("{} is stated as {}, and that does not read so: it counts as not known", name(p), stated));
  }

  void take_volts(const MeterReading& reading, BoardPoint red, BoardPoint black) {
    double value = reading.value;
    if (red.header < 0) std::swap(red, black);
    if (black.header >= 0 && pin(black).function != PinFunction::Ground) {
      if (pin(red).function != PinFunction::Ground)
        throw UsageError(format(
            "--measured {}: volts are read against ground: a pin that is ground, or 'minus'", reading.text));
      std::swap(red, black);
      value = -value;
    }
    const auto fits_board = [&](const Board& board) {
      const auto band = volts_band(board, red);
      return !band || within(value, *band);
    };
    if (again(reading, red, fits_board)) return;
    const Pin& stated = pin(red);
    if (!stated.jumper.empty() && !fitting_.jumpers.contains(stated.jumper) && !stated.contest) {
      take_jumper(reading, red, value);
      return;
    }
    if (stated.function == PinFunction::Unknown && !stated.contest) {
      note(reading,
           format("{} is not known, and volts alone do not tell a supply from an output or an input that is "
                  "pulled up; power off, beep from it to a pin of that supply, or to minus",
                  name(red)));
      return;
    }
    const auto first = board_if(stated.span, red);
    const auto mine = volts_band(*first, red);
    const bool fits = !mine || within(value, *mine);
    const std::string words = to_words(pin_in(*first, red));
    if (stated.contest) {
      const auto second = board_if(stated.contest->span, red);
      const auto theirs = volts_band(*second, red);
      const bool other_fits = !theirs || within(value, *theirs);
      if (fits && other_fits) {
        note(reading, format("both statements about {} may read so: it settles nothing", name(red)));
      } else if (!fits && !other_fits) {
        contest(reading, red, format("{} or {}", words, to_words(pin_in(*second, red))));
      } else {
        settle(reading, red, fits ? stated.span : stated.contest->span,
               format("measured: {} is {}", name(red), fits ? words : to_words(pin_in(*second, red))));
      }
      return;
    }
    if (!mine) {
      note(reading, format("nothing is known that {}, {}, should read", name(red), words));
    } else if (!fits) {
      contest(reading, red, words);
    } else if (doubted(red) && stated.function == PinFunction::Supply) {
      settle(reading, red, stated.span, format("measured: {} is {}", name(red), words));
    } else {
      note(reading, format("agrees: {} is {}", name(red), words));
    }
  }

  /// A further reading of a pin that was settled: it agrees, or the readings contradict each other.
  template <class Fits>
  bool again(const MeterReading& reading, BoardPoint p, Fits fits) {
    if (!settled_.contains({p.header, p.pin})) return false;
    const auto board = read_again(edit_);
    if (!fits(*board)) {
      throw UsageError(format("--measured {}: it contradicts the readings of {} before it: measure again",
                              reading.text, name(p)));
    }
    note(reading, format("agrees: {} is {}", name(p), to_words(pin_in(*board, p))));
    return true;
  }

  static const Pin& pin_in(const Board& board, BoardPoint p) {
    return board.headers[static_cast<std::size_t>(p.header)].pin(p.pin);
  }

  void take_jumper(const MeterReading& reading, BoardPoint p, double value) {
    const Jumper* jumper = bench_.board->jumper(pin(p).jumper);
    std::vector<std::string> fit;
    for (const std::string& id : jumper->rails) {
      const Rail* rail = bench_.board->rail(id);
      if (rail != nullptr && within(value, {rail->volts.min.value, rail->volts.max.value})) fit.push_back(id);
    }
    if (fit.size() == 1) {
      fitting_.jumpers[jumper->id] = fit.front();
      note(reading, format("measured: jumper {} sits at {}", jumper->id, fit.front()));
    } else if (fit.empty()) {
      contest(reading, p, format("supply by {}", jumper->id));
    } else {
      note(reading, format("{} may sit at any of {}: it settles nothing", jumper->id, join(fit, ", ")));
    }
  }

  /// Whether `is` is the same net as `known` by what the board says.
  static bool same_net(const Pin& is, const Pin* known) {
    if (known == nullptr || known->function == PinFunction::Ground) return is.function == PinFunction::Ground;
    return is.function == PinFunction::Supply && is.rail == known->rail && is.jumper == known->jumper;
  }

  void take_ohms(const MeterReading& reading, BoardPoint red, BoardPoint black) {
    if (red.header < 0) std::swap(red, black);
    const auto sure = [&](BoardPoint p) {
      return p.header < 0 ||
             (!doubted(p) && (pin(p).function == PinFunction::Ground ||
                              (pin(p).function == PinFunction::Supply && pin(p).jumper.empty())));
    };
    if (!sure(black) && sure(red)) std::swap(red, black);
    if (!sure(black) || red.header < 0) {
      throw UsageError(
          format("--measured {}: one of the two must be 'minus', or a ground or supply pin that is known",
                 reading.text));
    }
    const Pin* known = black.header < 0 ? nullptr : &pin(black);
    const Pin& stated = pin(red);
    if (!reading.beep() && !reading.open()) {
      note(reading, "neither a beep nor clearly none: it settles nothing");
      return;
    }
    if (again(reading, red,
              [&](const Board& board) { return same_net(pin_in(board, red), known) == reading.beep(); }))
      return;
    if (stated.function == PinFunction::Unknown && !stated.contest) {
      if (!reading.beep()) {
        note(reading,
             format("{} is not the same net as {}; what it is stays unknown", name(red), reading.black));
        return;
      }
      become(reading, red, known);
      return;
    }
    const auto first = board_if(stated.span, red);
    const bool fits = same_net(pin_in(*first, red), known) == reading.beep();
    const std::string words = to_words(pin_in(*first, red));
    if (stated.contest) {
      const auto second = board_if(stated.contest->span, red);
      const bool other_fits = same_net(pin_in(*second, red), known) == reading.beep();
      if (fits == other_fits) {
        note(reading, format("it does not tell the two statements about {} apart", name(red)));
      } else {
        settle(reading, red, fits ? stated.span : stated.contest->span,
               format("measured: {} is {}", name(red), fits ? words : to_words(pin_in(*second, red))));
      }
    } else if (!fits) {
      contest(reading, red, words);
    } else if (doubted(red) && reading.beep()) {
      settle(reading, red, stated.span, format("measured: {} is {}", name(red), words));
    } else {
      note(reading, format("agrees: {} is {}", name(red), words));
    }
  }

  /// An unknown pin that beeps to a known one is what that one is.
  void become(const MeterReading& reading, BoardPoint p, const Pin* known) {
    if (!settled_.insert({p.header, p.pin}).second) return;
    const Header& header = bench_.board->headers[static_cast<std::size_t>(p.header)];
    const bool ground = known == nullptr || known->function == PinFunction::Ground;
    const std::string id =
        edit_.add_reading(format("{} to {}: {}", name(p), reading.black, shown_words(reading)), date_);
    const Span tag = pin(p).span;
    if (tag == header.span) {
      edit_.add_pin(header, verbatim("<pin n=\"{}\" function=\"{}\"{} evidence=\"{}\"/>", p.pin,
                                     ground ? "ground" : "supply",
                                     ground ? "" : verbatim(" rail=\"{}\"", known->rail), id));
    } else {
      edit_.set(tag, "function", ground ? "ground" : "supply");
      if (!ground) edit_.set(tag, "rail", known->rail);
      edit_.rests_on(tag, id);
    }
    note(reading, format("measured: {} is {}", name(p), ground ? "ground" : "supply " + known->rail));
  }

  // Leads

  void take_lead(const MeterReading& reading) {
    int cavity = 0;
    std::string end = reading.black;
    Plug* plug = plug_of_point(reading.red, cavity);
    if (plug == nullptr) {
      plug = plug_of_point(reading.black, cavity);
      end = reading.red;
    }
    if (plug == nullptr) {
      throw UsageError(
          format("--measured {}: '{}' is no pin of the board (J9.2), no cavity of a plug (PLUG.1), and not "
                 "'minus'",
                 reading.text, reading.red));
    }
    const std::vector<TerminalRef> ends = bench_.harness->terminals_named(end);
    if (reading.shown == Shown::Voltage || ends.size() != 1) {
      throw UsageError(
          format("--measured {}: a lead is followed by beep or open to one terminal; there {} '{}'",
                 reading.text, ends.size() > 1 ? "are several of the name" : "is no terminal", end));
    }
    const auto lead = std::find_if(plug->leads.begin(), plug->leads.end(),
                                   [&](const Lead& one) { return one.cavity == cavity; });
    if (lead == plug->leads.end())
      throw UsageError(format("--measured {}: cavity {} of '{}' is empty", reading.text, cavity, plug->id));
    const bool stated = lead->to && *lead->to == ends.front();
    if (reading.beep() && !lead->to) {
      lead->to = ends.front();
      note(reading, format("measured: the {} lead goes to {}", to_code(lead->colour), end));
    } else if (reading.beep() == stated || !lead->to) {
      note(reading, stated ? format("agrees: the {} lead goes to {}", to_code(lead->colour), end)
                           : format("the {} lead does not go to {}", to_code(lead->colour), end));
    } else {
      note(reading, format("the {} lead is stated to go to {}: where it goes counts as not known",
                           to_code(lead->colour), bench_.harness->terminal_name(*lead->to)));
      lead->to.reset();
    }
  }

  void record(const Board& board) const {
    if (options_.record_measured.empty()) return;
    if (std::filesystem::exists(options_.record_measured)) {
      throw WorldError(
          format("cannot write '{}': it is there already; name a new file", options_.record_measured));
    }
    (void)board;
    write_file(options_.record_measured, edit_.tidy_text());
  }

  Workbench& bench_;
  Fitting& fitting_;
  const Options& options_;
  BoardEdit edit_;
  std::string date_;
  std::set<std::pair<int, int>> settled_;
  std::vector<Contested> contests_;
};

}  // namespace

void apply_measured(Workbench& bench, Fitting& fitting, const Options& options) {
  if (options.measured.empty()) return;
  if (!bench.board || bench.loom)
    throw UsageError("'--measured' goes with a board file and harness files, not with a loom");
  Bench(bench, fitting, options).run();
}

}  // namespace plugward
