// SPDX-License-Identifier: MIT
// That ngspice agrees is shown in tests/outside/spice_test.py.
#include "report/spice.h"

#include <doctest/doctest.h>

#include <array>

#include "support/bench.h"

using namespace plugward;
using namespace plugward::test;

TEST_CASE("a resistor on a rail, whole") {
  const Bench bench(
      "<board id='b' title='B' width='50 mm' height='50 mm' evidence='e'><evidence id='e' "
      "kind='measurement'/>"
      "<rail id='5V' volts='5 V' limit='1 A'/><header id='J1' use='spare' family='xh-2.50' positions='2'>"
      "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/></header></board>",
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>"
      "<device id='d' use='spare'><terminal id='A'/><terminal id='B'/><resistor a='A' b='B' ohms='100 "
      "ohm'/></device>"
      "<plug id='p' family='xh-2.50' positions='2'><lead cavity='1' colour='RD' to='A'/>"
      "<lead cavity='2' colour='BK' to='B'/></plug></harness>");
  const std::array contacts{Contact{0, 0, 0, 1}, Contact{0, 1, 0, 2}};
  // No sign of a name may be read as a command: ngspice runs a shell for some.
  const std::array<std::string, 1> heads{"title\n.control\nshell rm `$x` ; \"y\" 'z' {q} \\"};
  CHECK(spice_netlist(bench.fitting({{"p", "J1"}}), contacts, {}, heads) ==
        "* plugward: the circuit of a wiring\n"
        "* title_.control_shell rm __x_ _ _y_ _z_ _q_ _\n"
        ".options rshunt=1e12 reltol=1e-7 vntol=1e-9 abstol=1e-14 itl1=2000\n"
        "*\n"
        "* island 1\n"
        "* n1_1 is 5V, held at its volts\n"
        "* n1_2 is A\n"
        "* n1_3 is B\n"
        "v1_0 n1_1 0 5\n"
        "r1_0 n1_1 n1_2 0.07\n"
        "r1_1 0 n1_3 0.07\n"
        "r1_2 n1_2 n1_3 100\n"
        "rx1_1 n1_1 0 1e15\n"
        "rx1_2 n1_2 0 1e15\n"
        "rx1_3 n1_3 0 1e15\n"
        ".control\n"
        "set numdgt=10\n"
        "op\n"
        "echo state 1.1: at rest\n"
        "print v(n1_1)\n"
        "print v(n1_2)\n"
        "print v(n1_3)\n"
        "print i(v1_0)\n"
        "quit 0\n"
        ".endc\n"
        ".end\n");
}
