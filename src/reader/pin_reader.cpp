// SPDX-License-Identifier: MIT
// A pin's attributes depend on its function: one table row a function says which it must and may have.
// Rival statements: two 'pin' elements for one position, each with evidence of its own. A measurement
// outranks all other kinds; what then still disagrees makes the pin contested. Tested in
// tests/unit/reader/pin_reader_test.cpp.
#include <algorithm>
#include <array>
#include <functional>

#include "base/format.h"
#include "reader/board_reader.h"

namespace plugward {
namespace {

struct FunctionRow {
  std::string_view word;
  PinFunction function;
  KeySet required;
  KeySet optional;
};

constexpr KeySet common{Key::N, Key::Function, Key::Label, Key::Net, Key::Evidence};

constexpr std::array<FunctionRow, 8> functions{{
    {"supply", PinFunction::Supply, {}, {Key::Rail, Key::Jumper, Key::Limit}},
    {"ground", PinFunction::Ground, {}, {Key::Limit}},
    {"output",
     PinFunction::Output,
     {Key::Signal},
     {Key::Rail, Key::Drive, Key::High, Key::Low, Key::Ohm, Key::Limit, Key::AtReset, Key::Withstands,
      Key::WithstandsUnpowered, Key::Pull, Key::PullOhms, Key::Clamp, Key::ClampDrop, Key::Injection}},
    {"input",
     PinFunction::Input,
     {Key::Signal},
     {Key::Rail, Key::Analogue, Key::Withstands, Key::WithstandsUnpowered, Key::WithstandsPulled,
      Key::LowBelow, Key::HighAbove, Key::Pull, Key::PullOhms, Key::Clamp, Key::ClampDrop, Key::Injection}},
    {"switched", PinFunction::Switched, {}, {Key::Signal, Key::Ohm, Key::Limit, Key::AtReset, Key::Low}},
    {"coil", PinFunction::Coil, {Key::Coil, Key::End}, {Key::Rail, Key::Limit}},
    {"unused", PinFunction::Unused, {}, {}},
    {"unknown", PinFunction::Unknown, {}, {Key::Signal, Key::Rail}},
}};

constexpr KeySet every_pin_key = [] {
  KeySet all = common;
  for (const FunctionRow& row : functions) all = all | row.required | row.optional;
  return all;
}();

constexpr auto function_words = [] {
  std::array<Word<const FunctionRow*>, functions.size()> words{};
  for (std::size_t i = 0; i < functions.size(); ++i) words[i] = {functions[i].word, &functions[i]};
  return words;
}();

constexpr std::array<Word<DriveKind>, 2> drives{
    {{"push-pull", DriveKind::PushPull}, {"open-drain", DriveKind::OpenDrain}}};
constexpr std::array<Word<bool>, 2> on_off{{{"on", true}, {"off", false}}};
constexpr std::array<Word<bool>, 2> up_down{{{"up", true}, {"down", false}}};
constexpr std::array<Word<int>, 2> coils{{{"1", 1}, {"2", 2}}};
constexpr std::array<Word<char>, 2> coil_ends{{{"A", 'A'}, {"B", 'B'}}};

/// Attributes that this function must have and lacks, or has and cannot have.
void check_keys(const Reading& reading, const Attributes& a, const FunctionRow& row) {
  if (const KeySet missing = row.required - a.present() - a.misspelt(); !missing.empty()) {
    reading
        .fault(Rule::MissingAttribute, a.name_span(),
               format("a pin with function '{}' needs {}", row.word, key_list(missing)))
        .note(a.span(Key::Function), "the function is stated here")
        .help(format("add {}", key_examples(missing)));
  }
  const KeySet alien = a.present() - (common | row.required | row.optional);
  for (std::size_t i = 0; i < key_count && !alien.empty(); ++i) {
    const Key key = static_cast<Key>(i);
    if (!alien.has(key)) continue;
    Diagnostic& diagnostic =
        a.conflict(key, format("'{}' says nothing about a pin with function '{}'", key_name(key), row.word));
    diagnostic.note(a.span(Key::Function), "the function is stated here");
    diagnostic.help(
        row.optional.empty() && row.required.empty()
            ? "delete it, or state another function"
            : format("delete it; '{}' takes {}", row.word, key_list(row.required | row.optional)));
  }
  if (row.function != PinFunction::Supply) return;
  if (a.has(Key::Rail) && a.has(Key::Jumper)) {
    a.conflict(Key::Jumper, "a supply pin has a rail or a jumper, not both")
        .note(a.span(Key::Rail), "the rail is stated here")
        .help("keep 'jumper' when a jumper chooses the rail, else 'rail'");
  } else if (!a.written(Key::Rail) && !a.written(Key::Jumper)) {
    reading.fault(Rule::MissingAttribute, a.name_span(), "a supply pin needs 'rail' or 'jumper'")
        .help("when the rail is not known, state function=\"unknown\"");
  }
}

/// `key` needs `other` beside it; true when it is there.
bool needs(const Reading& reading, const Attributes& a, Key key, Key other) {
  if (a.written(other)) return true;
  reading
      .fault(Rule::MissingAttribute, a.span(key),
             format("'{}' needs '{}' beside it", key_name(key), key_name(other)))
      .help(format("add {}, or delete '{}'", key_examples({other}), key_name(key)));
  return false;
}

void read_pull(const Reading& reading, const Attributes& a, Pin& pin) {
  const auto up = a.one_of(Key::Pull, up_down);
  const auto ohms = a.quantity<Ohms>(Key::PullOhms, Sign::Positive);
  if (up) pin.pull = Pull{*up, ohms.value_or(Ohms{}), a.span(Key::Pull)};
  if (a.has(Key::PullOhms) && !a.has(Key::Pull)) needs(reading, a, Key::PullOhms, Key::Pull);
  if (up.value_or(false) && !a.has(Key::Rail)) needs(reading, a, Key::Pull, Key::Rail);
}

void read_clamp(const Reading& reading, const Attributes& a, const BoardNames& names, Pin& pin) {
  const auto drop = a.quantity<Volts>(Key::ClampDrop, Sign::Positive);
  const auto limit = a.quantity<Amps>(Key::Injection, Sign::NotNegative);
  for (const Key key : {Key::ClampDrop, Key::Injection}) {
    if (a.has(key) && !a.has(Key::Clamp)) needs(reading, a, key, Key::Clamp);
  }
  const std::string_view rail = names.rails.reference(reading, a, Key::Clamp);
  if (rail.empty()) return;
  Clamp clamp;
  clamp.rail = rail;
  clamp.drop = drop.value_or(clamp.drop);
  clamp.limit = limit;
  clamp.span = a.span(Key::Clamp);
  pin.clamp = std::move(clamp);
}

void read_levels(const Attributes& a, Pin& pin) {
  pin.high = a.range<Volts>(Key::High);
  pin.low = a.quantity<Volts>(Key::Low);
  if (pin.high && pin.low && *pin.low >= pin.high->min) {
    a.conflict(Key::Low, format("the low level {} is not below the high level {}", to_text(*pin.low),
                                to_text(*pin.high)))
        .note(a.span(Key::High), "the high level is stated here");
  }
  pin.analogue = a.yes_no(Key::Analogue).value_or(false);
  pin.low_below = a.quantity<Volts>(Key::LowBelow);
  pin.high_above = a.quantity<Volts>(Key::HighAbove);
  if (pin.low_below && pin.high_above && *pin.low_below > *pin.high_above) {
    a.conflict(Key::LowBelow, format("low below {} and high above {} overlap", to_text(*pin.low_below),
                                     to_text(*pin.high_above)))
        .note(a.span(Key::HighAbove), "'high-above' is stated here")
        .help("'low-below' is the smaller of the two");
  }
  for (const Key key : {Key::LowBelow, Key::HighAbove}) {
    if (!pin.analogue || !a.has(key)) continue;
    a.conflict(key, format("an analogue input has no '{}'", key_name(key)))
        .note(a.span(Key::Analogue), "stated to be analogue here")
        .help("delete one of the two");
  }
}

void read_electrical(const Reading& reading, const Attributes& a, const BoardNames& names, Pin& pin) {
  pin.drive = a.one_of(Key::Drive, drives).value_or(DriveKind::PushPull);
  pin.ohms = a.quantity<Ohms>(Key::Ohm, Sign::Positive);
  pin.on_at_reset = a.one_of(Key::AtReset, on_off);
  pin.withstands = a.range<Volts>(Key::Withstands);
  pin.withstands_unpowered = a.quantity<Volts>(Key::WithstandsUnpowered);
  pin.withstands_pulled = a.quantity<Volts>(Key::WithstandsPulled);
  read_levels(a, pin);
  read_pull(reading, a, pin);
  read_clamp(reading, a, names, pin);
}

/// The position that a 'pin' element is about; 0 when there is none, which is reported.
int read_position(const Reading& reading, const Attributes& a, const Header& header) {
  const int number = a.number(Key::N, 1, reading.limits.positions).value_or(0);
  if (number <= header.positions || header.positions == 0) return number;
  reading
      .fault(Rule::PositionRange, a.span(Key::N),
             format("header '{}' has positions 1 to {}, not {}", header.id, header.positions, number))
      .note(header.positions_span, "the number of positions is stated here")
      .help(format("correct the position, or write positions=\"{}\" at the header", number));
  return 0;
}

/// Reads one statement into `pin`, which is as new.
void read_pin(const Reading& reading, const Attributes& a, const BoardNames& names, Pin& pin) {
  constexpr KeySet plain =
      common | KeySet{Key::Rail, Key::Jumper, Key::Limit, Key::Signal, Key::Coil, Key::End};
  pin.span = a.element_span();
  pin.function_span = a.span(Key::Function);
  const auto row = a.one_of(Key::Function, function_words);
  pin.function = row ? (*row)->function : PinFunction::Unknown;
  if (row) check_keys(reading, a, **row);
  pin.signal = a.word(Key::Signal);
  pin.net = a.text(Key::Net);
  pin.label = a.text(Key::Label);
  pin.rail = names.rails.reference(reading, a, Key::Rail);
  pin.jumper = names.jumpers.reference(reading, a, Key::Jumper);
  pin.coil = a.one_of(Key::Coil, coils).value_or(0);
  pin.coil_end = a.one_of(Key::End, coil_ends).value_or('A');
  pin.limit = a.quantity<Amps>(Key::Limit, Sign::Positive);
  if (!(a.present() - plain).empty()) read_electrical(reading, a, names, pin);
  pin.evidence = read_evidence_reference(reading, a, names.evidences);
}

/// Two statements of one value go together unless both are made and differ.
template <class T>
bool together(const std::optional<T>& a, const std::optional<T>& b) {
  return !a || !b || *a == *b;
}

bool together(const std::optional<Pull>& a, const std::optional<Pull>& b) {
  return !a || !b || (a->up == b->up && a->ohms == b->ohms);
}

bool together(const std::optional<Clamp>& a, const std::optional<Clamp>& b) {
  return !a || !b || (a->rail == b->rail && a->drop == b->drop && together(a->limit, b->limit));
}

/// Nothing that both say differs: what stands behind the pin is the same.
bool agree(const Pin& a, const Pin& b) {
  const bool same_thing = a.function == b.function && a.rail == b.rail && a.jumper == b.jumper &&
                          a.signal == b.signal && a.coil == b.coil && a.coil_end == b.coil_end &&
                          a.drive == b.drive && a.analogue == b.analogue;
  return same_thing && together(a.high, b.high) && together(a.low, b.low) && together(a.ohms, b.ohms) &&
         together(a.limit, b.limit) && together(a.on_at_reset, b.on_at_reset) &&
         together(a.withstands, b.withstands) && together(a.withstands_unpowered, b.withstands_unpowered) &&
         together(a.withstands_pulled, b.withstands_pulled) && together(a.low_below, b.low_below) &&
         together(a.high_above, b.high_above) && together(a.pull, b.pull) && together(a.clamp, b.clamp);
}

/// "supply from 5V, by 'own' (measurement)".
std::string statement(const Pin& pin, const Board& board) {
  std::string what(to_word(pin.function));
  if (!pin.signal.empty()) what += format(" '{}'", pin.signal);
  if (!pin.rail.empty()) what += format(" from {}", pin.rail);
  if (!pin.jumper.empty()) what += format(" by jumper {}", pin.jumper);
  if (pin.coil > 0) what += format(" of bridge {} end {}", pin.coil, pin.coil_end);
  if (pin.withstands) what += format(" that withstands {}", to_text(*pin.withstands));
  const Evidence* evidence = board.find_evidence(pin.evidence);
  const std::string_view kind = evidence == nullptr ? "" : to_word(evidence->kind);
  return format("{}, by '{}' ({})", what, pin.evidence, kind);
}

/// One pin out of several statements about it, in the order of the file.
Pin settle(std::vector<Pin> rivals, const Board& board) {
  const auto measured = [&](const Pin& pin) {
    const Evidence* evidence = board.find_evidence(pin.evidence);
    return evidence != nullptr && evidence->kind == EvidenceKind::Measurement;
  };
  if (std::any_of(rivals.begin(), rivals.end(), measured)) std::erase_if(rivals, std::not_fn(measured));
  Pin& first = rivals.front();
  const auto rival =
      std::find_if(rivals.begin() + 1, rivals.end(), [&](const Pin& pin) { return !agree(first, pin); });
  if (rival != rivals.end()) first.contest = Contest{statement(*rival, board), rival->span};
  return std::move(first);
}

/// Reports `pin` when it may not stand beside the earlier statements about its position.
bool may_join(const Reading& reading, const Pin& pin, std::span<const Pin> earlier) {
  const auto clash = std::find_if(earlier.begin(), earlier.end(), [&](const Pin& other) {
    return pin.evidence.empty() || other.evidence.empty() || pin.evidence == other.evidence;
  });
  if (clash == earlier.end()) return true;
  reading.fault(Rule::DoubledPosition, pin.span, format("position {} is described twice", pin.number))
      .note(clash->span, "first here")
      .help("delete one, or let each name the evidence of its own that it rests on");
  return false;
}

}  // namespace

void read_pins(const Reading& reading, XmlTree::Index element, const Board& board, const BoardNames& names,
               Header& header) {
  constexpr std::array<std::string_view, 1> known{"pin"};
  header.pins.resize(static_cast<std::size_t>(header.positions));
  std::vector<std::vector<Pin>> contested;  // each: all statements about one position
  for (const XmlTree::Index child : reading.tree.children(element)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name != "pin") {
      refuse_child(reading, reading.tree.node(element), node, known);
      continue;
    }
    refuse_children(reading, child);
    const Attributes a(reading, node, {Key::N, Key::Function}, every_pin_key);
    const int position = read_position(reading, a, header);
    Pin* const slot =
        position > 0 && header.positions > 0 ? &header.pins[static_cast<std::size_t>(position) - 1] : nullptr;
    if (slot != nullptr && slot->number == 0) {
      read_pin(reading, a, names, *slot);
      slot->number = position;
      continue;
    }
    Pin other;
    read_pin(reading, a, names, other);
    if (slot == nullptr) continue;  // read for its faults only
    other.number = position;
    if (a.written(Key::Evidence) && other.evidence.empty()) continue;  // whether it is a rival cannot be told
    auto group = std::find_if(contested.begin(), contested.end(),
                              [&](const std::vector<Pin>& g) { return g.front().number == position; });
    if (group == contested.end()) group = contested.insert(contested.end(), {*slot});
    if (may_join(reading, other, *group)) group->push_back(std::move(other));
  }
  for (std::vector<Pin>& group : contested) {
    const auto at = static_cast<std::size_t>(group.front().number) - 1;
    header.pins[at] = settle(std::move(group), board);
  }
  for (std::size_t i = 0; i < header.pins.size(); ++i) {
    Pin& pin = header.pins[i];
    if (pin.number != 0) continue;
    pin.number = static_cast<int>(i) + 1;
    pin.span = pin.function_span = header.span;
  }
}

}  // namespace plugward
