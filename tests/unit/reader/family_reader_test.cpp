// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "unit/reader/reader_support.h"

namespace plugward::test {
namespace {

TEST_CASE("the built-in families read without a word") {
  const Read read(builtin_families());
  CHECK(read.faults().empty());
  CHECK(read.description.families);
  Catalogue catalogue;
  add_builtin_families(catalogue);
  CHECK(catalogue.all().size() == read.catalogue.all().size());
  CHECK(catalogue.find("pin-2.54") != nullptr);
  for (const Family& family : catalogue.all()) {
    CAPTURE(family.id);
    CHECK_FALSE(family.span.known());
    CHECK_FALSE(family.title.empty());
    CHECK(family.fewest_positions <= family.most_positions);
    for (const Cited<Rating>& rating : family.ratings) CHECK(rating.certainty != Certainty::User);
  }
}

TEST_CASE("a family of the user's own") {
  const Read read(
      "<families><family id='mine' title='Mine' pitch='2 mm' row-pitch='2.5 mm' rows='2' positions='2..20' "
      "profile='box-shroud'>"
      "<rating amps='2 A' gauge='24 AWG' circuits='6' condition='free air' certainty='maker' "
      "source='sheet'/><rating amps='1 A'/>"
      "<voltage volts='100 V' certainty='quoted' source='x'/><wire from='30 AWG' to='0.25 mm2'/><plug "
      "extra='3.8 mm' depth='4.5 mm'/><header depth='5 mm'/>"
      "<latch value='yes'/><lance on='housing'/><first-cavity text='a triangle'/><release "
      "text='lift'/><reuse text='twice'/><mates family='xh-2.50'/>"
      "<caution text='one'/><caution text='two'/></family></families>");
  CHECK(read.faults().empty());
  const Family* family = read.catalogue.find("mine");
  REQUIRE(family != nullptr);
  CHECK(read.sources.text(family->span).starts_with("<family id='mine'"));
  CHECK(family->pitch == Millimetres(2));
  CHECK(family->row_pitch == Millimetres(2.5));
  CHECK(family->rows == 2);
  CHECK(family->fewest_positions == 2);
  CHECK(family->most_positions == 20);
  CHECK(family->profile == Profile::BoxShroud);
  REQUIRE(family->ratings.size() == 2);
  CHECK(family->ratings[0].value.gauge.awg == 24);
  CHECK(family->ratings[0].value.circuits == 6);
  CHECK(family->ratings[0].value.condition == "free air");
  CHECK(family->ratings[0].certainty == Certainty::Maker);
  CHECK(family->ratings[0].source == "sheet");
  CHECK(family->ratings[1].certainty == Certainty::User);
  CHECK(family->ratings[1].value.gauge.area.value == 0.0);
  CHECK(family->voltage->value == Volts(100));
  CHECK(family->wire->value.max == SquareMillimetres(0.25));
  CHECK(family->wire->value.min.value == doctest::Approx(awg(30).area.value));
  CHECK(family->plug_extra->value == Millimetres(3.8));
  CHECK(family->plug_depth->value == Millimetres(4.5));
  CHECK_FALSE(family->header_extra);
  CHECK(family->header_depth->value == Millimetres(5));
  CHECK(family->latch->value);
  CHECK(family->lance->value == Lance::Housing);
  CHECK(family->first_cavity->value == "a triangle");
  CHECK(family->release->value == "lift");
  CHECK(family->reuse->value == "twice");
  CHECK(family->mates == std::vector<std::string>{"xh-2.50"});
  REQUIRE(family->cautions.size() == 2);
  CHECK(family->cautions[1].value == "two");
}

TEST_CASE("a bad family file adds nothing") {
  const Read read(
      "<families><family id='mine' title='M' pitch='2 mm' positions='2..3' profile='bare'/><x/></families>");
  CHECK(read.catalogue.find("mine") == nullptr);
  CHECK_FALSE(read.description.families);
}

}  // namespace
}  // namespace plugward::test
