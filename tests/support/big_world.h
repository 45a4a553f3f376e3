// SPDX-License-Identifier: MIT
// A machine of any size made of the shipped files: the headers of "Heron M7" again and again on one board,
// and the shipped harnesses again and again as one loom.
#pragma once

#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "plan/place.h"
#include "reader/descriptions.h"

namespace plugward::test {

struct BigWorld {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Board board;
  Harness harness;

  Fitting fitting() const {
    return {&board, &harness, &catalogue, {}, {{"JP2", "5V"}, {"JP4", "24V"}, {"JP3", "12V"}}};
  }
};

inline const std::vector<std::string>& loom_harnesses() {
  static const std::vector<std::string> names{
      "x-motor",       "thermistor",      "limit-switch",     "optical-switch",  "fan-24v",
      "nozzle-heater", "kite-probe",      "fan-12v",          "x-motor",         "limit-switch",
      "thermistor",    "firefly-led-bar", "inductive-sensor", "changeover-limit"};
  return names;
}

/// REQUIRES: headers and plugs are positive.
inline std::unique_ptr<BigWorld> big_world(std::size_t headers, std::size_t plugs) {
  auto world = std::make_unique<BigWorld>();
  add_builtin_families(world->catalogue);
  const std::string root = PLUGWARD_SOURCE_DIR;
  const auto read = [&](const std::string& path) {
    const FileId file = world->sources.add(path, read_file(root + path));
    return read_description(world->sources, file, world->catalogue, world->diagnostics);
  };
  const auto shipped = read("/boards/heron-m7.xml");
  world->board = *shipped.board;
  for (Rail& rail : world->board.rails) {
    if (rail.limit) rail.limit = Amps(rail.limit->value * static_cast<double>(headers));
  }
  const std::vector<Header> some = world->board.headers;
  world->board.headers.clear();
  for (std::size_t i = 0; i < headers; ++i) {
    Header header = some[i % some.size()];
    header.id = format("J{}", i + 1);
    header.y = header.y + Millimetres(100.0 * static_cast<double>(i / some.size()));
    world->board.headers.push_back(std::move(header));
  }
  std::vector<Harness> copies;
  std::size_t count = 0;
  for (std::size_t i = 0; count < plugs; ++i) {
    const auto& names = loom_harnesses();
    Harness copy = *read("/harnesses/" + names[i % names.size()] + ".xml").harness;
    copy.id = format("h{}", i + 1);
    while (count + copy.plugs.size() > plugs) copy.plugs.pop_back();
    count += copy.plugs.size();
    copies.push_back(std::move(copy));
  }
  if (world->diagnostics.has_errors()) throw std::runtime_error("a shipped file has errors");
  std::vector<const Harness*> list;
  for (const Harness& copy : copies) list.push_back(&copy);
  world->harness = merged(list);
  return world;
}

}  // namespace plugward::test
