// SPDX-License-Identifier: MIT
// The meaning of a harness file. The format is told in harnesses/README.md.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "model/harness.h"
#include "reader/common_reader.h"
#include "reader/reading.h"

namespace plugward {

/// REQUIRES: the root is named "harness". What is bad is reported; the harness then lacks it.
std::unique_ptr<Harness> read_harness(const Reading&);

/// A device as read. `complete` is false when one of its terminals could not be read: leads are then not
/// checked against it.
struct ReadDevice {
  Device device;
  bool complete = true;
};

/// A 'device' written out: its terminals and parts.
ReadDevice read_device(const Reading&, XmlTree::Index, const Attributes&);
inline constexpr KeySet device_required{Key::Id, Key::Use};
inline constexpr KeySet device_optional{Key::Title, Key::Evidence};  ///< in one line as well

/// A device in one line ("fan", "motor" ...): the attributes it takes, and what the line stands for.
struct Shorthand {
  std::string_view element;
  KeySet required;
  KeySet optional;
  void (*expand)(const Attributes&, Device&);
};
const Shorthand* find_shorthand(std::string_view element);
inline constexpr std::size_t shorthand_count = 11;
std::span<const Shorthand, shorthand_count> all_shorthands();

/// The devices that leads may go to.
struct DeviceNames {
  Ids ids{"device"};
  std::vector<bool> complete;  ///< one for each device of the harness
  bool all_complete = true;
};

/// Reads the leads of a 'plug' element; their cavities are checked when plug.positions is not 0.
void read_leads(const Reading&, XmlTree::Index, const Harness&, const DeviceNames&, Plug&);

/// Parts that devices in both forms have.
Load read_load(const Attributes&, TerminalIndex plus, TerminalIndex minus);
Driver read_driver(const Attributes&, TerminalIndex terminal, TerminalIndex plus, TerminalIndex minus);

}  // namespace plugward
