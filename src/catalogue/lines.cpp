// SPDX-License-Identifier: MIT
// DE-9: "RS-232 pinout" lesson, which names TIA-574. 8P8C: cable tester manual p. 5 and a network cable's
// text, which name TIA/EIA-568. Neither standard itself was read. Tested in tests/outside/standard_test.cpp.
#include "catalogue/lines.h"

namespace plugward {

const PortLine* port_line(std::string_view family, int contact) {
  static constexpr std::array<PortLine, 9> lines{{{"DCD", "carrier detect", LineEnd::Dce},
                                                  {"RxD", "received data", LineEnd::Dce},
                                                  {"TxD", "transmitted data", LineEnd::Dte},
                                                  {"DTR", "terminal ready", LineEnd::Dte},
                                                  {"SG", "signal ground", LineEnd::Both},
                                                  {"DSR", "data set ready", LineEnd::Dce},
                                                  {"RTS", "request to send", LineEnd::Dte},
                                                  {"CTS", "clear to send", LineEnd::Dce},
                                                  {"RI", "ring indicator", LineEnd::Dce}}};
  if (family != "de-9" || contact < 1 || contact > 9) return nullptr;
  return &lines[static_cast<std::size_t>(contact) - 1];
}

std::span<const ContactPair> contact_pairs(std::string_view family) {
  static constexpr std::array<ContactPair, 4> pairs{{{1, 2}, {3, 6}, {4, 5}, {7, 8}}};
  if (family != "8p8c") return {};
  return pairs;
}

std::span<const PairScheme> pair_schemes() {
  static constexpr std::array<PairScheme, 2> schemes{
      {{"T568A", {"WHGN", "GN", "WHOG", "BU", "WHBU", "OG", "WHBN", "BN"}},
       {"T568B", {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "WHBN", "BN"}}}};
  return schemes;
}

}  // namespace plugward
