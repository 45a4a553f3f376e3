// SPDX-License-Identifier: MIT
#include "report/parts_text.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plugward;

TEST_CASE("a field of comma-separated values") {
  // RFC 4180, section 2, from memory; the apostrophe keeps spreadsheets from reckoning (common practice, no
  // source).
  struct Row {
    std::string text, field;
  };
  const std::vector<Row> rows{{"", ""},
                              {"plain text", "plain text"},
                              {"a, b", "\"a, b\""},
                              {"3\" tube", "\"3\"\" tube\""},
                              {"two\nlines", "\"two\nlines\""},
                              {"=1+1", "'=1+1"},
                              {"-12, V", "\"'-12, V\""},
                              {"\rx", "\"'\rx\""},
                              {"\xC2\xB5", "\xC2\xB5"}};
  for (const Row& row : rows) CHECK(csv_field(row.text) == row.field);
}

TEST_CASE("a list as comma-separated values") {
  PartsList list;
  list.planned = true;
  PartItem wire;
  wire.kind = PartKind::Wire;
  wire.what = "stranded wire";
  wire.gauge = awg(26);
  wire.colour.first = Colour::Brown;
  wire.length = Millimetres(100.0);
  wire.needed = 1;
  wire.purpose = "adapter-J9";
  PartItem resistor;
  resistor.kind = PartKind::Component;
  resistor.what = "resistor";
  resistor.value = "6.8 kohm";
  resistor.demands = "1 %, 0.125 W or more";
  resistor.needed = 2;
  resistor.spares = 1;
  list.items = {wire, resistor};
  CHECK(parts_csv(list) ==
        "kind,item,family,positions,gauge,colour,length_mm,value,demands,needed,spares,buy,purpose\r\n"
        "wire,stranded wire,,,26 AWG,BN,100,,,1,0,1,adapter-J9\r\n"
        "component,resistor,,,,,,6.8 kohm,\"1 %, 0.125 W or more\",2,1,3,\r\n");
  CHECK(parts_csv({}) ==
        "kind,item,family,positions,gauge,colour,length_mm,value,demands,needed,spares,buy,purpose\r\n");
}
