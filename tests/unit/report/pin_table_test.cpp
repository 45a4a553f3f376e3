// SPDX-License-Identifier: MIT
#include "report/pin_table.h"

#include <doctest/doctest.h>

#include <string>

#include "support/bench.h"

using namespace plugward;
using namespace plugward::test;

namespace {

const std::string head =
    "plug,cavity,colour,mark,gauge,terminal,function_at_plug,header,pin,label,net,function_at_header,colour_"
    "then,"
    "mark_then,terminal_then\r\n";

/// A switch whose texts would be formulas or break a record.
std::string table_of(const std::string& first_pin, const std::string& second_pin) {
  const Bench bench(
      "<board id='b' title='B' width='50 mm' height='50 mm' evidence='e'><evidence id='e' "
      "kind='measurement'/>"
      "<rail id='3V3' volts='3.3 V' limit='1 A'/><header id='J1' use='limit' family='xh-2.50' positions='3'>"
      "<pin n='1' " +
          first_pin + " label='=1+1, &quot;V&quot;' net='@SUM'/><pin n='2' " + second_pin +
          "/></header></board>",
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>"
      "<dry-switch id='s' use='limit' rests='open'/><plug id='p' family='xh-2.50' positions='3'>"
      "<lead cavity='1' colour='RDBK' gauge='26 AWG' mark='-7' to='A'/><lead cavity='2' colour='?' "
      "to='B'/></plug>"
      "</harness>");
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  return check_csv(fitting, advise(fitting));
}

}  // namespace

TEST_CASE("pins as comma-separated values") {
  // RFC 4180 and the apostrophe: as in parts_text_test.cpp. An empty cavity is a record like any other.
  CHECK(
      table_of(
          "function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' pull='up' pull-ohms='10 kohm' "
          "low-below='0.8 V' high-above='2 V'",
          "function='ground'") ==
      head +
          "p,1,RDBK,'-7,26 AWG,A,passive,J1,1,\"'=1+1, \"\"V\"\"\",'@SUM,input 'limit',RDBK,'-7,A\r\n"
          "p,2,?,,,B,passive,J1,2,,,ground,?,,B\r\n"
          "p,3,,,,,,J1,3,,,not known,,,\r\n");
}

TEST_CASE("what is APART has no arrangement afterwards") {
  CHECK(table_of("function='unused'", "function='unused'") ==
        head +
            "p,1,RDBK,'-7,26 AWG,A,passive,J1,1,\"'=1+1, \"\"V\"\"\",'@SUM,connected to nothing,,,\r\n"
            "p,2,?,,,B,passive,J1,2,,,connected to nothing,,,\r\n"
            "p,3,,,,,,J1,3,,,not known,,,\r\n");
}
