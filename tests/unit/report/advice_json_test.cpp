// SPDX-License-Identifier: MIT
#include "report/advice_json.h"

#include <doctest/doctest.h>

#include "report/json.h"
#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("advice as JSON: every member, in its order") {
  const Sample sample;
  const Json json = Json::parse(advice_json(sample.sources, sample.fitting, sample.repin));
  std::string keys;
  for (const auto& [key, value] : json.items()) keys += key + " ";
  CHECK(keys ==
        "format version verdict summary board harness placements unplaced jumpers findings measurements softer "
        "parts cures uncured plan "
        "settings budget lead_losses heaters led_strings fuses wrong_seatings limits ");
  CHECK(json["verdict"] == "REPIN");
  CHECK(json["board"].dump() ==
        R"({"id":"wren-1","title":"Wren one","revision":"B","file":"boards/wren-1.xml"})");
  CHECK(json["harness"].dump() == R"({"id":"breeze","title":"Breeze fan","file":"harnesses/breeze.xml"})");
  CHECK(json["placements"].dump() == R"([{"plug":"fan","header":"J1"}])");
  CHECK(json["unplaced"].dump() == R"(["spare"])");
  CHECK(json["jumpers"].dump() == R"({"JP1":"24V"})");
  CHECK(json["findings"][0].dump() ==
        R"({"rule":"reversed-supply","weight":"harm",)"
        R"("message":"the fan gets its 24 V the wrong way round, which destroys it",)"
        R"("state":"J1.3 on","path":"24V - J1.1 - BK - G","figure":-24.0,"limit":0.0,"unit":"V",)"
        R"("first":{"file":"harnesses/breeze.xml","line":2,"column":3,"end_line":2,"end_column":21},)"
        R"("second":{"file":"boards/wren-1.xml","line":2,"column":3,"end_line":2,"end_column":15},)"
        R"("second_says":"J1.1 is declared here","measurement":null})");
  CHECK(json["plan"]["plugs"][0]["cavities"][0].dump() ==
        R"({"cavity":1,"now":{"colour":"BK","mark":null,"terminal":"G"},)"
        R"("then":{"colour":"RD","mark":"+","terminal":"V"},"pin":1})");
  CHECK(json["plan"]["plugs"][0]["cavities"][2].dump() == R"({"cavity":3,"now":null,"then":null,"pin":3})");
  CHECK(json["plan"]["plugs"][0]["steps"][0].dump() ==
        R"({"kind":"park","lead":{"colour":"BK","mark":null,"terminal":"G"},"from":1,"to":3,"why":""})");
  CHECK(
      json["wrong_seatings"][1].dump() ==
      R"({"plug":"fan","header":"J1","kind":"shifted","words":"shifted by 1 towards pin 3","overhanging":true,)"
      R"("pin_of_cavity":[2,3,0],"worst":"note","findings":[]})");
}

TEST_CASE("advice as JSON: no plan is null, a measurement is told twice: with its doubt and in the list") {
  const Sample sample;
  const Json json = Json::parse(advice_json(sample.sources, sample.fitting, sample.measure));
  CHECK(json["plan"].is_null());
  CHECK(
      json["measurements"].dump() ==
      R"([{"action":"look where JP1 is fitted","expect":"at 24V: the fan may go on","settles":"the supply of J1.1",)"
      R"("cost":0}])");
  CHECK(json["findings"][0]["measurement"] == json["measurements"][0]);
}

TEST_CASE("advice as JSON: the same input gives the same bytes") {
  const Sample one, two;
  CHECK(advice_json(one.sources, one.fitting, one.repin) == advice_json(two.sources, two.fitting, two.repin));
}

}  // namespace plugward
