// SPDX-License-Identifier: MIT
// Which terminal should meet which pin, by function: what *should* meet. The circuit decides what happens.
#pragma once

#include <string>
#include <vector>

#include "model/fitting.h"

namespace plugward {

/// What a terminal is to meet in one arrangement of the interchangeable parts.
enum class Wish { Supply, Ground, Return, BoardOutput, BoardInput, SwitchedOrSupply, CoilEnd, Nothing, Any };

/// Does the terminal suit the pin, seen alone?
bool suits(const Terminal&, const Pin&);

/// One consistent way to read the passive parts: which of a switch's ends is the signal end, which winding is
/// on which bridge, and so on.
struct Reading {
  struct End {
    TerminalRef terminal;
    Wish wish = Wish::Any;
    std::string signal;
    int coil = 0;       ///< CoilEnd: bridge 1 or 2
    char coil_end = 'A';
  };
  std::vector<End> ends;
  bool motor_turned = false;   ///< runs the other way than stated: a setting
  std::string words;
};

/// All readings of the devices' passive parts. Never empty. Bounded: at most 4096, in a fixed order.
std::vector<Reading> readings(const Fitting&);

/// Does this pin give what the end wishes?
bool grants(const Pin&, const Header&, const Reading::End&);

}  // namespace plugward
