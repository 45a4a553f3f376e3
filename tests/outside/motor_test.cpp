// SPDX-License-Identifier: MIT
// A four-wire motor in all 24 orders, against a published list of them (forum note "Stepper wiring question").
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "judge/function_check.h"

using namespace plugward;

namespace {

enum class Runs { Forward, Reverse, No };

/// Motor wires 1, 2 are one winding and 3, 4 the other. `order[k]` is the wire on terminal k of the header.
Runs motor_runs(const std::string& order, const std::string& header_order = "1A1B2A2B") {
  Board board;
  Header header;
  header.id = "J1";
  header.use = "motor";
  header.positions = 4;
  for (int n = 0; n < 4; ++n) {
    Pin pin;
    pin.number = n + 1;
    pin.function = PinFunction::Coil;
    pin.coil = header_order[static_cast<std::size_t>(2 * n)] - '0';
    pin.coil_end = header_order[static_cast<std::size_t>(2 * n) + 1];
    header.pins.push_back(pin);
  }
  board.headers.push_back(header);
  Harness harness;
  Device motor;
  motor.use = "motor";
  for (const std::string id : {"A1", "B1", "A2", "B2"}) {
    Terminal terminal;
    terminal.id = id;
    motor.terminals.push_back(terminal);
  }
  motor.parts.emplace_back(Coil{0, 1, Ohms(2.2), {}, {}});
  motor.parts.emplace_back(Coil{2, 3, Ohms(2.2), {}, {}});
  harness.devices.push_back(motor);
  Plug plug;
  plug.positions = 4;
  std::vector<Contact> contacts;
  for (int k = 0; k < 4; ++k) {
    Lead lead;
    lead.cavity = k + 1;
    lead.to = TerminalRef{0, order[static_cast<std::size_t>(k)] - '1'};
    plug.leads.push_back(lead);
    contacts.push_back({0, k, 0, k + 1});
  }
  harness.plugs.push_back(plug);
  const Catalogue catalogue;
  const Fitting fitting{&board, &harness, &catalogue, {{0, 0}}, {}};
  const FunctionCheck check = check_functions(fitting, contacts);
  for (const Finding& finding : check.findings) {
    if (finding.rule == Rule::SplitCoil) return Runs::No;
  }
  return check.settings.empty() ? Runs::Forward : Runs::Reverse;
}

}  // namespace

TEST_CASE("24 orders of a four-wire motor") {
  const std::vector<std::string> forward{"1234", "2143", "3421", "4312"};
  const std::vector<std::string> reverse{"2134", "1243", "3412", "4321"};
  const auto in = [](const std::vector<std::string>& list, const std::string& order) {
    return std::find(list.begin(), list.end(), order) != list.end();
  };
  std::string order = "1234";
  int dead = 0;
  do {
    CAPTURE(order);
    const Runs expected = in(forward, order) ? Runs::Forward : in(reverse, order) ? Runs::Reverse : Runs::No;
    CHECK(motor_runs(order) == expected);
    dead += expected == Runs::No ? 1 : 0;
  } while (std::next_permutation(order.begin(), order.end()));
  CHECK(dead == 16);
}

TEST_CASE("direction is not the parity of the permutation") {
  // Forward holds even and odd permutations alike: 1234 even, 3421 odd (parity counted by hand).
  CHECK(motor_runs("1234") == motor_runs("3421"));
}

TEST_CASE("STP-7 to STP-11: a cable for 1A 1B 2A 2B put straight on other headers (arithmetic)") {
  CHECK(motor_runs("1234", "2B2A1A1B") == Runs::Forward);
  CHECK(motor_runs("1234", "2A2B1A1B") == Runs::Reverse);
  CHECK(motor_runs("1234", "2B2A1B1A") == Runs::Reverse);
  CHECK(motor_runs("1234", "2A2B1B1A") == Runs::Forward);
  CHECK(motor_runs("1234", "1A2A1B2B") == Runs::No);
}

TEST_CASE("STP-12: the rule of thumb 'swap B and C' mends only half of the dead orders") {
  // Rule of a mailing-list post (2005): steps to and fro -> exchange the middle two. Coverage by arithmetic.
  int mended = 0;
  int dead = 0;
  std::string order = "1234";
  do {
    if (motor_runs(order) != Runs::No) continue;
    ++dead;
    std::string swapped = order;
    std::swap(swapped[1], swapped[2]);
    mended += motor_runs(swapped) != Runs::No ? 1 : 0;
  } while (std::next_permutation(order.begin(), order.end()));
  CHECK(dead == 16);
  CHECK(mended == 8);
}
