// SPDX-License-Identifier: MIT
// How the judge names things: the same pin, lead or terminal has the same name in every message.
#pragma once

#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "model/fitting.h"

namespace plugward {

const Header& header_of(const Fitting&, int header);
const Plug& plug_of(const Fitting&, int plug);
const Lead& lead_of(const Fitting&, const Contact&);
const Pin& pin_of(const Fitting&, const Contact&);

std::string pin_name(const Fitting&, int header, int pin);       ///< "J9.2"
std::string pin_name(const Fitting&, const Contact&);
std::string lead_name(const Fitting&, int plug, int lead);       ///< "RD lead in cavity 2 of 'control'"
std::string terminal_name(const Fitting&, TerminalRef);          ///< "'V'"
/// The contact as a place: pin, lead and, where known, terminal.
Locus locus_of(const Fitting&, const Contact&);
std::string jumper_name(const Jumper&);                          ///< "JP2 (PROBE V)"
std::string device_name(const Device&);                          ///< its title, else its id

/// The terminals that a part lies between.
std::vector<TerminalIndex> ends_of(const Part&);
/// The terminal and all that are one net with it inside the device.
std::vector<TerminalIndex> joined_to(const Device&, TerminalIndex);

}  // namespace plugward
