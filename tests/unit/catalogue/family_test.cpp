// SPDX-License-Identifier: MIT
// That families.xml reads without fault is tested with the reader.
#include "catalogue/family.h"

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <vector>

#include "base/file.h"

using namespace plugward;

namespace {

Cited<Rating> rating(double amps, int gauge, int circuits = 0) {
  return {{Amps(amps), awg(gauge), "", circuits}, Certainty::Quoted, "a sheet"};
}

double amps(const Cited<Rating>* rating) {
  return rating == nullptr ? 0.0 : rating->value.amps.value;
}

Family named(std::string id, std::string title) {
  Family family;
  family.id = std::move(id);
  family.title = std::move(title);
  return family;
}

std::size_t count(std::string_view text, std::string_view part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + 1)) ++found;
  return found;
}

}  // namespace

TEST_CASE("a catalogue keeps its order and replaces by id") {
  Catalogue catalogue;
  catalogue.add(named("a", "first"));
  catalogue.add(named("b", "second"));
  catalogue.add(named("a", "from the user's file"));
  CHECK(catalogue.ids() == std::vector<std::string>{"a", "b"});
  REQUIRE(catalogue.find("a") != nullptr);
  CHECK(catalogue.find("a")->title == "from the user's file");
  CHECK(catalogue.find("c") == nullptr);
  CHECK(catalogue.find("") == nullptr);
}

TEST_CASE("a rating is found at its gauge only") {
  Family family;
  family.ratings = {rating(3.0, 22), rating(2.0, 26)};
  CHECK(amps(family.rating_at(awg(22))) == 3.0);
  CHECK(amps(family.rating_at(awg(26))) == 2.0);
  CHECK(family.rating_at(awg(24)) == nullptr);
  CHECK(family.rating_at(awg(21)) == nullptr);
  CHECK(amps(family.smallest_rating()) == 2.0);
  CHECK(Family{}.smallest_rating() == nullptr);
}

TEST_CASE("a cross-section counts as an AWG size within two per cent") {
  Family family;
  family.ratings = {rating(3.0, 22)};  // 0.3255 mm2
  const auto at = [&](double area) { return family.rating_at(Gauge{{}, SquareMillimetres(area)}); };
  CHECK(at(0.33) != nullptr);
  CHECK(at(0.32) != nullptr);
  CHECK(at(0.335) == nullptr);
  CHECK(at(0.315) == nullptr);
}

TEST_CASE("a rating without a gauge holds at none, but may be the smallest") {
  Family family;
  family.ratings = {rating(3.0, 22),
                    {{Amps(1.0), Gauge{}, "gauge not given", 0}, Certainty::Secondary, "a seller"}};
  CHECK(amps(family.rating_at(awg(22))) == 3.0);
  CHECK(family.rating_at(awg(30)) == nullptr);
  CHECK(amps(family.smallest_rating()) == 1.0);
}

TEST_CASE("ratings that depend on the size of the housing") {
  Family family;
  family.ratings = {rating(7.0, 20, 2), rating(5.5, 20, 6), rating(4.5, 20, 24), rating(6.0, 22, 2)};
  struct Row {
    int positions;
    double amps;
  };
  constexpr std::array rows{Row{0, 4.5}, Row{1, 7.0}, Row{2, 7.0},  Row{3, 5.5},
                            Row{6, 5.5}, Row{7, 4.5}, Row{24, 4.5}, Row{25, 0.0}};
  for (const Row& row : rows) {
    CAPTURE(row.positions);
    CHECK(amps(family.rating_at(awg(20), row.positions)) == row.amps);
  }
}

TEST_CASE("of several ratings at one gauge the smallest counts") {
  Family family;
  family.ratings = {rating(9.0, 18), rating(7.0, 18), rating(8.0, 18, 4)};
  CHECK(amps(family.rating_at(awg(18))) == 7.0);
  CHECK(amps(family.rating_at(awg(18), 2)) == 7.0);
}

TEST_CASE("the words of the file") {
  CHECK(to_word(Certainty::Maker) == "maker");
  CHECK(to_word(Certainty::Quoted) == "quoted");
  CHECK(to_word(Certainty::Footprint) == "footprint");
  CHECK(to_word(Certainty::Secondary) == "secondary");
  CHECK(to_word(Certainty::Derived) == "derived");
  CHECK(to_word(Certainty::Memory) == "memory");
  CHECK(to_word(Certainty::User) == "user");
  CHECK(to_word(Profile::Bare) == "bare");
  CHECK(to_word(Profile::BoxShroud) == "box-shroud");
  CHECK(to_word(Profile::OpenWafer) == "open-wafer");
  CHECK(to_word(Profile::FrictionRamp) == "friction-ramp");
  CHECK(to_word(Profile::Screw) == "screw");
  CHECK(to_word(Profile::Circular) == "circular");
  CHECK(to_word(Lance::Contact) == "contact");
  CHECK(to_word(Lance::Housing) == "housing");
  CHECK(to_word(Lance::None) == "none");
}

TEST_CASE("the built-in catalogue is families.xml, byte for byte") {
  CHECK((builtin_families() == read_file(PLUGWARD_SOURCE_DIR "/src/catalogue/families.xml")));
}

TEST_CASE("every figure of the built-in catalogue names its certainty and source") {
  const std::string_view text = builtin_families();
  std::size_t figures = 0;
  for (const std::string_view element :
       {"<rating ", "<voltage ", "<wire ", "<plug ", "<header ", "<latch ", "<lance ", "<first-cavity ",
        "<release ", "<reuse ", "<mates ", "<caution "}) {
    figures += count(text, element);
  }
  CHECK(figures > 100);
  CHECK(count(text, " certainty=\"") == figures);
  CHECK(count(text, " source=\"") == figures);
}

TEST_CASE("nothing from memory is shipped as a rating, voltage, width or lance") {
  const std::string_view text = builtin_families();
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = text.substr(begin, end - begin);
    if (line.find("certainty=\"memory\"") != line.npos) {
      CAPTURE(line);
      CHECK((line.find("<caution ") != line.npos || line.find("<latch ") != line.npos));
    }
    begin = end + 1;
  }
}
