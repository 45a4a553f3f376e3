// SPDX-License-Identifier: MIT
#include "unit/draw/looms.h"

#include <algorithm>
#include <random>
#include <stdexcept>

#include "base/file.h"
#include "base/format.h"
#include "plan/place.h"

namespace plugward::test {
namespace {

struct Placed {
  const char* file;
  const char* id;  ///< of this copy of the harness
  const char* plug;
  const char* header;
};

constexpr Placed wren[] = {
    {"kite-probe", "kite-probe", "control", "J9"},
    {"kite-probe", "kite-probe", "trigger", "J10"},
    {"x-motor", "x-motor", "motor", "J2"},
    {"limit-switch", "limit-switch", "limit", "J5"},
    {"fan-24v", "fan-24v", "fan", "J11"},
    {"x-motor", "y-motor", "motor", "J3"},
    {"changeover-limit", "changeover-limit", "limit", "J6"},
    {"optical-switch", "optical-switch", "limit", "J7"},
    {"thermistor", "thermistor", "thermistor", "J18"},
    {"thermistor", "bed-thermistor", "thermistor", "J19"},
    {"fan-12v", "fan-12v", "fan", "J13"},
    {"nozzle-heater", "nozzle-heater", "heater", "J14"},
    {"firefly-led-bar", "firefly-led-bar", "light", "J20"},
    {"inductive-sensor", "inductive-sensor", "sensor", "J21"},
};

Description read(Loom& loom, const std::string& path, const std::string& text) {
  const FileId file = loom.sources.add(path, text);
  return read_description(loom.sources, file, loom.catalogue, loom.diagnostics);
}

void finish(Loom& loom) {
  if (loom.diagnostics.has_errors()) {
    std::string all;
    for (const Diagnostic& d : loom.diagnostics.all())
      all += place_name(loom.sources, d.span) + ": " + d.message + "\n";
    throw std::runtime_error(all);
  }
  loom.fitting.board = &loom.board;
  loom.fitting.harness = &loom.harness;
  loom.fitting.catalogue = &loom.catalogue;
  loom.advice = advise(loom.fitting, {.wrong_seatings = false, .softer = false});
}

template <class T>
int index_of(const std::vector<T>& list, const std::string& id) {
  const auto at = std::find_if(list.begin(), list.end(), [&](const T& item) { return item.id == id; });
  if (at == list.end()) throw std::runtime_error("no '" + id + "'");
  return static_cast<int>(at - list.begin());
}

LoomPtr of_texts(const std::string& name, const std::string& board, const std::string& harness) {
  auto loom = std::make_unique<Loom>();
  loom->name = name;
  add_builtin_families(loom->catalogue);
  Description b = read(*loom, "board.xml", board), h = read(*loom, "harness.xml", harness);
  if (b.board) loom->board = std::move(*b.board);
  if (h.harness) loom->harness = std::move(*h.harness);
  for (std::size_t i = 0; i < loom->harness.plugs.size(); ++i)
    loom->fitting.placements.push_back({static_cast<int>(i), static_cast<int>(i)});
  finish(*loom);
  return loom;
}

}  // namespace

LoomPtr shipped_loom(int plugs) {
  auto loom = std::make_unique<Loom>();
  loom->name = format("{} shipped plugs", plugs);
  add_builtin_families(loom->catalogue);
  const std::string root = PLUGWARD_SOURCE_DIR;
  const auto shipped = [&](const std::string& path) { return read(*loom, path, read_file(root + path)); };
  loom->board = std::move(*shipped("/boards/heron-m7.xml").board);
  std::vector<Harness> harnesses;
  for (int i = 0; i < plugs; ++i) {
    const Placed& placed = wren[i];
    if (!harnesses.empty() && harnesses.back().id == placed.id) continue;
    harnesses.push_back(std::move(*shipped(format("/harnesses/{}.xml", placed.file)).harness));
    harnesses.back().id = placed.id;
  }
  std::vector<const Harness*> list;
  for (const Harness& harness : harnesses) list.push_back(&harness);
  loom->harness = merged(list);
  for (int i = 0; i < plugs; ++i) {
    const std::string plug =
        list.size() == 1 ? std::string(wren[i].plug) : format("{}/{}", wren[i].id, wren[i].plug);
    loom->fitting.placements.push_back(
        {index_of(loom->harness.plugs, plug), index_of(loom->board.headers, wren[i].header)});
  }
  loom->fitting.jumpers = {{"JP2", "5V"}, {"JP3", "12V"}};
  finish(*loom);
  return loom;
}

LoomPtr four_fans() {
  const auto fan_header = [](const char* id, const char* family, const char* how) {
    return format(
        "<header id=\"{}\" label=\"FAN\" use=\"fan\" family=\"{}\" {}>"
        "<pin n=\"1\" function=\"supply\" rail=\"24V\"/><pin n=\"2\" function=\"ground\"/>{}</header>",
        id, family, how,
        std::string(how).find("rows") == std::string::npos
            ? ""
            : "<pin n=\"3\" function=\"unused\"/><pin n=\"4\" function=\"unused\"/>");
  };
  const auto fan_plug = [](int n, const char* family, const char* how, int plus, int minus) {
    return format(
        "<fan id=\"fan{0}\" title=\"Fan {0}\" needs=\"20..28 V\" draws=\"0.1 A\" reversed=\"destroyed\"/>"
        "<plug id=\"p{0}\" family=\"{1}\" {2}>"
        "<lead cavity=\"{3}\" colour=\"RD\" gauge=\"26 AWG\" to=\"fan{0}.V\"/>"
        "<lead cavity=\"{4}\" colour=\"BK\" gauge=\"26 AWG\" to=\"fan{0}.G\"/></plug>",
        n, family, how, plus, minus);
  };
  return of_texts(
      "four fans",
      "<board id=\"b\" title=\"Small board\" revision=\"1\" width=\"60 mm\" height=\"40 mm\" "
      "evidence=\"e\"><evidence id=\"e\" kind=\"schematic\" revision=\"1\" date=\"2026-03-02\"/>"
      "<rail id=\"24V\" volts=\"22.8..25.2 V\" limit=\"5 A\"/>"
      "<hole x=\"4 mm\" y=\"4 mm\" diameter=\"3.2 mm\"/>" +
          fan_header("J1", "xh-2.50", "positions=\"2\" x=\"12 mm\" y=\"5 mm\" rotation=\"0\"") +
          fan_header("J2", "xh-2.50", "positions=\"2\" x=\"55 mm\" y=\"12 mm\" rotation=\"90\"") +
          fan_header("J3", "pin-2.54",
                     "positions=\"4\" rows=\"2\" x=\"32 mm\" y=\"35 mm\" rotation=\"180\"") +
          fan_header("J4", "xh-2.50",
                     "positions=\"2\" x=\"6 mm\" y=\"30 mm\" rotation=\"270\" side=\"underside\"") +
          fan_header("J5", "xh-2.50", "positions=\"2\" x=\"25 mm\" y=\"5 mm\" rotation=\"0\"") + "</board>",
      "<harness id=\"fans\" title=\"Four fans\" evidence=\"e\"><evidence id=\"e\" kind=\"measurement\" "
      "date=\"2026-03-02\"/>" +
          fan_plug(1, "xh-2.50", "positions=\"2\"", 1, 2) + fan_plug(2, "xh-2.50", "positions=\"2\"", 2, 1) +
          fan_plug(3, "pin-2.54", "positions=\"4\" rows=\"2\"", 1, 2) +
          fan_plug(4, "xh-2.50", "positions=\"2\"", 1, 2) + "</harness>");
}

LoomPtr generated_loom(unsigned seed, int plugs) {
  std::mt19937 random(seed);
  const auto pick = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  struct Kind {
    const char* family;
    int positions, rows;
  };
  constexpr Kind kinds[] = {{"xh-2.50", 2, 1},  {"xh-2.50", 3, 1}, {"xh-2.50", 4, 1}, {"pin-2.54", 3, 1},
                            {"pin-2.54", 6, 2}, {"kk-2.54", 3, 1}, {"vh-3.96", 2, 1}, {"box-2.54", 10, 2}};
  std::string board =
      "<board id=\"b\" title=\"Board of many headers\" width=\"230 mm\" height=\"200 mm\" evidence=\"e\">"
      "<evidence id=\"e\" kind=\"measurement\" date=\"2026-03-02\"/>"
      "<rail id=\"24V\" volts=\"22.8..25.2 V\" limit=\"50 A\"/><rail id=\"12V\" volts=\"11.4..12.6 V\" "
      "limit=\"50 A\"/>"
      "<jumper id=\"JP1\" rails=\"12V 24V\"/>";
  std::string harness =
      "<harness id=\"h\" title=\"Fans by chance\" evidence=\"e\">"
      "<evidence id=\"e\" kind=\"measurement\" date=\"2026-03-02\"/>";
  for (int i = 0; i < 64; ++i) {
    const Kind& kind = kinds[pick(0, 7)];
    const int cell = i * 37 % 64;  // the plugs all over the board
    const int rotation = 90 * pick(0, 3);
    // The middle of the cell, less half the row, in the direction of the row.
    const double half = 2.54 * (kind.positions / kind.rows - 1) / 2;
    const double dx = rotation == 0     ? -half
                      : rotation == 180 ? half
                                        : 0,
                 dy = rotation == 90    ? -half
                      : rotation == 270 ? half
                                        : 0;
    const char* supply = pick(0, 9) == 0 ? "jumper=\"JP1\"" : "rail=\"24V\"";
    board += format(
        "<header id=\"J{}\" label=\"{}\" use=\"fan\" family=\"{}\" positions=\"{}\" rows=\"{}\" x=\"{} mm\" "
        "y=\"{} mm\" rotation=\"{}\" side=\"{}\"><pin n=\"1\" function=\"supply\" {}/>"
        "<pin n=\"2\" function=\"ground\"/>",
        i + 1, pick(0, 3) == 0 ? "FAN WITH A LONG PRINT" : "FAN", kind.family, kind.positions, kind.rows,
        17 + 28 * (cell % 8) + dx, 14 + 24.5 * (cell / 8) + dy, rotation,
        pick(0, 7) == 0 ? "underside" : "top", supply);
    for (int n = 3; n <= kind.positions; ++n) board += format("<pin n=\"{}\" function=\"unused\"/>", n);
    board += "</header>";
    if (i >= plugs) continue;
    const bool exchanged = pick(0, 2) == 0;
    harness += format(
        "<fan id=\"fan{0}\" title=\"Fan number {0}\" needs=\"{1}\" draws=\"0.1 A\" "
        "reversed=\"destroyed\"/><plug id=\"{2}{0}\" family=\"{3}\" positions=\"{4}\" rows=\"{5}\">"
        "<lead cavity=\"1\" colour=\"RD\" to=\"fan{0}.{6}\"/><lead cavity=\"2\" colour=\"BK\" "
        "to=\"fan{0}.{7}\"/></plug>",
        i + 1, pick(0, 6) == 0 ? "10..14 V" : "20..28 V",
        pick(0, 4) == 0 ? "a-plug-with-a-rather-long-name-" : "p", kind.family, kind.positions, kind.rows,
        exchanged ? "G" : "V", exchanged ? "V" : "G");
  }
  return of_texts(format("generated {}, {} plugs", seed, plugs), board + "</board>", harness + "</harness>");
}

}  // namespace plugward::test
