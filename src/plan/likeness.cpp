// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/likeness_test.cpp, and through tests/unit/plan/find_test.cpp with and without it.
#include "plan/likeness.h"

#include <algorithm>
#include <cassert>
#include <cstring>
#include <optional>
#include <type_traits>

#include "base/format.h"
#include "fit/seating.h"

namespace plugward {
namespace {

constexpr char mark = '\x01';  ///< before and after a stand-in; no identifier of a file holds it

std::string stand_in(char kind, std::size_t index) {
  return format("{}{}{}{}", mark, kind, index, mark);
}

template <class T>
int index_in(const std::vector<T>& list, std::string_view id) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

void add_once(std::vector<int>& sorted, int value) {
  const auto at = std::lower_bound(sorted.begin(), sorted.end(), value);
  if (value >= 0 && (at == sorted.end() || *at != value)) sorted.insert(at, value);
}

int position(const std::vector<int>& sorted, int value) {
  const auto at = std::lower_bound(sorted.begin(), sorted.end(), value);
  return at == sorted.end() || *at != value ? -1 : static_cast<int>(at - sorted.begin());
}

void collect(const Board& board, const Pin& pin, Likeness& like) {
  if (!pin.rail.empty()) add_once(like.rails, index_in(board.rails, pin.rail));
  if (pin.clamp) add_once(like.rails, index_in(board.rails, pin.clamp->rail));
  if (!pin.jumper.empty()) add_once(like.jumpers, index_in(board.jumpers, pin.jumper));
}

/// After the rails of all pins, those of their jumpers.
void collect_behind_jumpers(const Board& board, Likeness& like) {
  for (const int j : like.jumpers) {
    for (const std::string& rail : board.jumpers[static_cast<std::size_t>(j)].rails) {
      add_once(like.rails, index_in(board.rails, rail));
    }
  }
}

/// Bytes that are equal when, and only when, what was written is equal. Grows by itself, not by
/// std::string::append: a key is made of a hundred small pieces, and the calls would cost more than the
/// bytes.
class Key {
 public:
  template <class T>
  requires(std::is_arithmetic_v<T> || std::is_enum_v<T>) void put(T value) { write(&value, sizeof value); }
  void put(const std::string& text) {
    put(text.size());
    write(text.data(), text.size());
  }
  template <class Unit>
  void put(Quantity<Unit> quantity) {
    put(quantity.value);
  }
  template <class T>
  void put(const Range<T>& range) {
    put(range.min);
    put(range.max);
  }
  template <class T>
  void put(const std::optional<T>& value) {
    put(value.has_value());
    if (value) put(*value);
  }
  std::string take() {
    text_.resize(used_);
    return std::move(text_);
  }

 private:
  void write(const void* bytes, std::size_t size) {
    if (text_.size() - used_ < size) text_.resize(2 * text_.size() + size);
    std::memcpy(text_.data() + used_, bytes, size);
    used_ += size;
  }

  std::string text_ = std::string(1000, '\0');  ///< written up to `used_`
  std::size_t used_ = 0;
};

void put_pin(Key& key, const Board& board, const Header& header, const Pin& pin, const Likeness& like) {
  // Names every member, so that a new one does not go by unnoticed. Not judged: label, net, places in files.
  const auto& [number, function, signal, net, label, rail, jumper, coil, coil_end, drive, high, low, ohms,
               limit, on_at_reset, withstands, withstands_unpowered, withstands_pulled, analogue, low_below,
               high_above, pull, clamp, evidence, contest, span, function_span] = pin;
  key.put(function), key.put(signal);
  key.put(position(like.rails, rail.empty() ? -1 : index_in(board.rails, rail)));
  key.put(position(like.jumpers, jumper.empty() ? -1 : index_in(board.jumpers, jumper)));
  key.put(coil), key.put(coil_end), key.put(drive), key.put(high), key.put(low), key.put(ohms),
      key.put(limit);
  key.put(on_at_reset), key.put(withstands), key.put(withstands_unpowered), key.put(withstands_pulled);
  key.put(analogue), key.put(low_below), key.put(high_above);
  key.put(pull.has_value());
  if (pull) key.put(pull->up), key.put(pull->ohms);
  key.put(clamp.has_value());
  if (clamp) {
    key.put(position(like.rails, index_in(board.rails, clamp->rail)));
    key.put(clamp->drop), key.put(clamp->limit);
  }
  const Evidence* stated = board.evidence_of(header, pin);
  key.put(stated == nullptr ? -1 : static_cast<int>(stated->kind));
  key.put(contest.has_value());
  if (contest) key.put(contest->statement);
}

void put_header(Key& key, const Header& header) {
  key.put(header.use), key.put(header.family), key.put(header.positions), key.put(header.rows);
  key.put(header.numbering), key.put(header.key);
}

/// What the header has beside the pins that are met: a terminal of no signal may mean any of them.
void put_signals(Key& key, const Header& header) {
  std::vector<std::pair<PinFunction, std::string>> signals;
  for (const Pin& pin : header.pins) {
    if (!pin.signal.empty()) signals.emplace_back(pin.function, pin.signal);
  }
  std::sort(signals.begin(), signals.end());
  key.put(signals.size());
  for (const auto& [function, signal] : signals) key.put(function), key.put(signal);
}

void put_rails_and_jumpers(Key& key, const Board& board, const Likeness& like) {
  for (const int r : like.rails) {
    key.put(board.rails[static_cast<std::size_t>(r)].volts);
    key.put(board.rails[static_cast<std::size_t>(r)].limit);
  }
  for (const int j : like.jumpers) {
    const Jumper& jumper = board.jumpers[static_cast<std::size_t>(j)];
    key.put(jumper.rails.size());
    for (const std::string& rail : jumper.rails) key.put(position(like.rails, index_in(board.rails, rail)));
  }
}

/// By lead, the pin that it meets; nullptr: none.
std::vector<const Pin*> pins_met(const Fitting& fitting, const Placement& placement) {
  const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(placement.plug)];
  const Header& header = fitting.board->headers[static_cast<std::size_t>(placement.header)];
  const Seating home = home_seating(plug, placement.header, *fitting.board);
  std::vector<const Pin*> met;
  for (const Lead& lead : plug.leads) {
    const int pin = lead.cavity < 1 ? 0 : home.pin_of_cavity[static_cast<std::size_t>(lead.cavity) - 1];
    met.push_back(pin == 0 ? nullptr : &header.pin(pin));
  }
  return met;
}

}  // namespace

Likeness likeness(const Board& board, const std::vector<int>& headers) {
  Likeness like{headers, {}, {}, {}};
  for (const int h : headers) {
    for (const Pin& pin : board.headers[static_cast<std::size_t>(h)].pins) collect(board, pin, like);
  }
  collect_behind_jumpers(board, like);
  Key key;
  for (const int h : headers) {
    const Header& header = board.headers[static_cast<std::size_t>(h)];
    put_header(key, header);
    key.put(header.pins.size());
    for (const Pin& pin : header.pins) key.put(pin.number), put_pin(key, board, header, pin, like);
  }
  put_rails_and_jumpers(key, board, like);
  like.key = key.take();
  return like;
}

std::string wiring(const Fitting& fitting) {
  const Board& board = *fitting.board;
  Likeness like;
  std::vector<std::vector<const Pin*>> met;
  for (const Placement& placement : fitting.placements) {
    met.push_back(pins_met(fitting, placement));
    for (const Pin* pin : met.back()) {
      if (pin != nullptr) collect(board, *pin, like);
    }
  }
  collect_behind_jumpers(board, like);
  Key key;
  for (std::size_t p = 0; p < fitting.placements.size(); ++p) {
    const Header& header = board.headers[static_cast<std::size_t>(fitting.placements[p].header)];
    key.put(fitting.placements[p].plug);
    put_header(key, header);
    put_signals(key, header);
    for (std::size_t l = 0; l < met[p].size(); ++l) {
      const Pin* pin = met[p][l];
      // Two contacts in one cavity meet the same pin: the first of them stands for it.
      const auto first = std::find(met[p].begin(), met[p].end(), pin);
      key.put(pin == nullptr ? -1 : static_cast<int>(first - met[p].begin()));
      if (pin != nullptr && first - met[p].begin() == static_cast<std::ptrdiff_t>(l))
        put_pin(key, board, header, *pin, like);
    }
  }
  put_rails_and_jumpers(key, board, like);
  return key.take() + jumper_key(board, like, fitting.jumpers);
}

Board part_of(const Board& board, const Likeness& like) {
  Board part;
  part.evidence = board.evidence;
  part.evidences = board.evidences;
  const auto rail_name = [&](const std::string& id) {
    const int at = id.empty() ? -1 : position(like.rails, index_in(board.rails, id));
    return at < 0 ? id : stand_in('r', static_cast<std::size_t>(at));
  };
  for (std::size_t i = 0; i < like.rails.size(); ++i) {
    part.rails.push_back(board.rails[static_cast<std::size_t>(like.rails[i])]);
    part.rails.back().id = stand_in('r', i);
  }
  for (std::size_t i = 0; i < like.jumpers.size(); ++i) {
    Jumper jumper = board.jumpers[static_cast<std::size_t>(like.jumpers[i])];
    jumper.id = stand_in('j', i);
    jumper.label.clear();
    jumper.x = jumper.y = Millimetres{};
    for (std::string& rail : jumper.rails) rail = rail_name(rail);
    part.jumpers.push_back(std::move(jumper));
  }
  for (std::size_t i = 0; i < like.headers.size(); ++i) {
    Header header = board.headers[static_cast<std::size_t>(like.headers[i])];
    header.id = stand_in('h', i);
    header.label.clear();
    header.x = header.y = Millimetres{};
    for (Pin& pin : header.pins) {
      pin.rail = rail_name(pin.rail);
      if (pin.clamp) pin.clamp->rail = rail_name(pin.clamp->rail);
      if (!pin.jumper.empty()) {
        const int at = position(like.jumpers, index_in(board.jumpers, pin.jumper));
        if (at >= 0) pin.jumper = stand_in('j', static_cast<std::size_t>(at));
      }
      pin.label.clear();
      pin.net.clear();
    }
    part.headers.push_back(std::move(header));
  }
  return part;
}

JumperPositions stated_in(const Board& board, const Likeness& like, const Board& part,
                          const JumperPositions& stated) {
  JumperPositions in_part;
  for (std::size_t j = 0; j < like.jumpers.size(); ++j) {
    const Jumper& jumper = board.jumpers[static_cast<std::size_t>(like.jumpers[j])];
    const auto found = stated.find(jumper.id);
    if (found == stated.end()) continue;
    for (std::size_t k = 0; k < jumper.rails.size(); ++k) {
      if (jumper.rails[k] == found->second) in_part[part.jumpers[j].id] = part.jumpers[j].rails[k];
    }
  }
  return in_part;
}

std::string jumper_key(const Board& board, const Likeness& like, const JumperPositions& stated) {
  std::string key;
  for (const int j : like.jumpers) {
    const Jumper& jumper = board.jumpers[static_cast<std::size_t>(j)];
    const auto found = stated.find(jumper.id);
    const auto at = found == stated.end()
                        ? jumper.rails.end()
                        : std::find(jumper.rails.begin(), jumper.rails.end(), found->second);
    key += verbatim("/j{}", at - jumper.rails.begin());
  }
  return key;
}

std::string with_names(std::string_view text, const Board& board, const Likeness& like) {
  std::string named;
  while (true) {
    const std::size_t begin = text.find(mark);
    named += text.substr(0, begin);
    if (begin == std::string_view::npos) return named;
    const std::size_t end = text.find(mark, begin + 1);
    assert(end != std::string_view::npos);
    std::size_t index = 0;
    for (const char digit : text.substr(begin + 2, end - begin - 2)) {
      index = index * 10 + static_cast<std::size_t>(digit - '0');
    }
    switch (text[begin + 1]) {
      case 'r':
        named += board.rails[static_cast<std::size_t>(like.rails[index])].id;
        break;
      case 'j':
        named += board.jumpers[static_cast<std::size_t>(like.jumpers[index])].id;
        break;
      default:
        named += board.headers[static_cast<std::size_t>(like.headers[index])].id;
        break;
    }
    text.remove_prefix(end + 1);
  }
}

}  // namespace plugward
