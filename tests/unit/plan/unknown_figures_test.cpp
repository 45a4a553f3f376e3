// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "plan/meter.h"
#include "support/bench.h"

using namespace plugward;
using namespace plugward::test;

TEST_CASE("of a figure that nobody has stated no reading is expected") {
  for (const char* device : {"<thermistor id='d'/>", "<heater-element id='d' volts='24 V'/>",
                             "<heater-element id='d' watts='40 W'/>", "<dry-switch id='d' use='limit'/>"}) {
    CAPTURE(device);
    const Bench bench(
        "<board id='b' title='B' width='9 mm' height='9 mm' evidence='e'><evidence id='e' kind='schematic'/>"
        "<header id='J1' use='spare' family='xh-2.50' positions='2'/></board>",
        std::string("<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>") + device +
            "<plug id='p' family='xh-2.50' positions='2'><lead cavity='1' colour='RD' to='A'/><lead "
            "cavity='2' "
            "colour='BK' to='B'/></plug></harness>");
    CHECK(plug_readings(bench.fitting({{"p", "J1"}}), 0).empty());
  }
}
