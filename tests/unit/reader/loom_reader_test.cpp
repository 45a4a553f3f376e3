// SPDX-License-Identifier: MIT
// The loom's own text: nothing is opened here.
#include "model/loom.h"

#include <doctest/doctest.h>

#include <random>

#include "reader_support.h"
#include "support/said.h"

using namespace std::string_literals;

namespace plugward::test {
namespace {

/// A loom around `inside`: evidence seen (photograph), harness a and b.
std::string loom_around(std::string_view inside) {
  return format(
      "<loom id=\"l\" title=\"L\" board=\"b.xml\" evidence=\"seen\"><evidence id=\"seen\" "
      "kind=\"photograph\"/>\n"
      "<harness id=\"a\" file=\"h.xml\"/><harness id=\"b\" file=\"h.xml\"/>\n{}</loom>",
      inside);
}

struct Row {
  const char* name;
  const char* inside;
  const char* faults;  ///< whole; "" when it is fine
};

const Row rows[] = {
    {"all that may stand in it",
     "<fitted jumper=\"JP1\" rail=\"5V\"/><fitted jumper=\"JP2\"/><seat plug=\"a/p\" header=\"J1\" leads=\"2 "
     "- "
     "1\"/><seat plug=\"a/q\"/><loose plug=\"b/p\"/><free header=\"J2\"/><taken header=\"J3\"/>",
     ""},
    {"two plugs on one header", "<seat plug=\"a/p\" header=\"J1\"/><seat plug=\"b/p\" header=\"J1\"/>",
     "3:56 header 'J1' stands twice: it holds one plug [conflict]; "},
    {"one plug on two headers", "<seat plug=\"a/p\" header=\"J1\"/><seat plug=\"a/p\" header=\"J2\"/>",
     "3:43 plug 'a/p' stands twice [conflict]; "},
    {"one plug seated and loose", "<loose plug=\"a/p\"/><seat plug=\"a/p\" header=\"J2\"/>",
     "3:32 plug 'a/p' stands twice [conflict]; "},
    {"a header that is free and not", "<free header=\"J1\"/><seat plug=\"a/p\" header=\"J1\"/>",
     "3:45 header 'J1' stands twice: it holds one plug [conflict]; "},
    {"a header that is free and taken", "<free header=\"J1\"/><taken header=\"J1\"/>",
     "3:35 header 'J1' stands twice: a plug sits on it, or it is free, or taken [conflict]; "},
    {"a jumper in two positions", "<fitted jumper=\"JP1\" rail=\"5V\"/><fitted jumper=\"JP1\" rail=\"24V\"/>",
     "3:49 jumper 'JP1' stands twice [conflict]; "},
    {"a harness that is not declared", "<seat plug=\"c/p\" header=\"J1\"/>",
     "3:13 harness 'c' is not declared [undeclared-reference]; "},
    {"a plug without its harness", "<loose plug=\"p\"/><loose plug=\"a/b/c\"/><loose plug=\"/p\"/>",
     "3:14 'p' is no plug of a harness [bad-id]; 3:31 'a/b/c' is no plug of a harness [bad-id]; "
     "3:52 '/p' is no plug of a harness [bad-id]; "},
    {"a harness twice", "<harness id=\"a\" file=\"g.xml\"/>",
     "3:14 harness 'a' is declared twice [doubled-id]; "},
    {"evidence that is not declared", "<loose plug=\"a/p\" evidence=\"sen\"/>",
     "3:29 evidence 'sen' is not declared [undeclared-reference]; "},
    {"a loose plug with a header", "<loose plug=\"a/p\" header=\"J1\"/>",
     "3:19 unknown attribute 'header' of 'loose' [unknown-attribute]; "},
    {"a doubled attribute", "<loose plug=\"a/p\" plug=\"a/q\"/>",
     "3:19 'plug' stands twice in one 'loose' [doubled-attribute]; "},
    {"a missing attribute", "<seat header=\"J1\"/>", "3:2 'seat' needs 'plug' [missing-attribute]; "},
    {"an unknown element", "<seet plug=\"a/p\"/>x",
     "3:2 unknown element 'seet' in 'loom' [unknown-element]; 3:19 text inside 'loom' [stray-text]; "},
    {"something inside a seat", "<seat plug=\"a/p\"><lead/></seat>",
     "3:19 unknown element 'lead' in 'seat' [unknown-element]; "},
    {"a lead twice", "<loose plug=\"a/p\" leads=\"1 1\"/>",
     "3:28 leads: the lead of cavity 1 stands twice [doubled-position]; "},
    {"every fault of a list of leads, each at its word", "<loose plug=\"a/p\" leads=\"2 2 x - 0 1\"/>",
     "3:28 leads: the lead of cavity 2 stands twice [doubled-position]; "
     "3:30 leads: 'x' is no cavity [bad-number]; 3:34 leads: '0' is no cavity [bad-number]; "},
    {"a list of leads with an entity: the place is the whole list",
     "<loose plug=\"a/p\" leads=\"2 2&#32;x\"/>",
     "3:26 leads: the lead of cavity 2 stands twice [doubled-position]; "
     "3:26 leads: 'x' is no cavity [bad-number]; "},
    {"no cavities", "<loose plug=\"a/p\" leads=\"1 x\"/><loose plug=\"b/p\" leads=\"0 201\"/>",
     "3:28 leads: 'x' is no cavity [bad-number]; 3:57 leads: '0' is no cavity [bad-number]; "
     "3:59 leads: '201' is no cavity [bad-number]; "},
    {"empty values", "<loose plug=\"\" leads=\"\" note=\"\"/>",
     "3:14 'plug' of 'loose' is empty [bad-word]; 3:23 'leads' of 'loose' is empty [bad-word]; "
     "3:31 'note' of 'loose' is empty [bad-word]; "},
};

}  // namespace

TEST_CASE("a loom's text: every fault in one run, each at its place") {
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Read read(loom_around(row.inside));
    CHECK(read.faults() == row.faults);
    CHECK((read.description.loom != nullptr) == (*row.faults == '\0'));
    CHECK(read.description.loom_files == nullptr);
  }
}

TEST_CASE("what is read stands in the loom") {
  const Read read(loom_around(rows[0].inside));
  REQUIRE(read.description.loom);
  const Loom& loom = *read.description.loom;
  CHECK(loom.id == "l");
  CHECK(loom.board == "b.xml");
  REQUIRE(loom.seats.size() == 3);
  CHECK(loom.seats[0].state == SeatState::OnHeader);
  CHECK(loom.seats[0].plug_name() == "a/p");
  CHECK(loom.seats[0].header == "J1");
  CHECK(loom.seats[0].leads == std::vector{2, 0, 1});
  CHECK(loom.seats[1].state == SeatState::Unknown);
  CHECK(loom.seats[2].state == SeatState::Loose);
  CHECK(loom.evidence_of("")->kind == EvidenceKind::Photograph);
  CHECK(loom.evidence_of("none") == nullptr);
  REQUIRE(loom.jumpers.size() == 2);
  CHECK(loom.jumpers[0].rail == "5V");
  CHECK(loom.jumpers[1].rail.empty());
  REQUIRE(loom.headers.size() == 2);
  CHECK(!loom.headers[0].taken);
  CHECK(loom.headers[1].taken);
  CHECK(read.sources.text(loom.seats[0].plug_span) == "a/p");
  CHECK(read.sources.text(loom.board_span) == "b.xml");
  CHECK(loom.harness("b")->file == "h.xml");
  CHECK(loom.harness("c") == nullptr);
  CHECK(loom.seat("b", "p") == &loom.seats[2]);
  CHECK(loom.seat("b", "q") == nullptr);
}

TEST_CASE("without evidence a loom is read and warned about; what is not known needs none") {
  const Read read(
      "<loom id=\"l\" title=\"L\" board=\"b.xml\"><harness id=\"a\" file=\"h.xml\"/>\n<fitted "
      "jumper=\"JP1\"/><fitted "
      "jumper=\"JP2\" rail=\"5V\"/>\n<seat plug=\"a/p\"/><seat plug=\"a/q\" header=\"J1\"/><free "
      "header=\"J2\"/></loom>");
  CHECK(read.faults() ==
        "2:39 nothing says how it is known where jumper 'JP2' sits [no-evidence]; "
        "3:31 nothing says how it is known where plug 'a/q' sits [no-evidence]; "
        "3:63 nothing says how it is known what is on header 'J2' [no-evidence]; ");
  CHECK(read.description.loom != nullptr);
}

TEST_CASE("a loom has harnesses, and not without end") {
  const Read none("<loom id=\"l\" title=\"L\" board=\"b.xml\"></loom>");
  CHECK(none.faults() == "1:2 the loom has no 'harness' [missing-element]; ");
  ReaderLimits limits;
  limits.harnesses = 1;
  const Read many(loom_around(""), limits);
  CHECK(many.faults() == "2:32 more than 1 harnesses in one loom [too-large]; ");
}

TEST_CASE("the files that a loom names are found from its folder") {
  struct Way {
    const char *loom, *file, *path, *back;
  };
  // back: what file_for_loom makes of the path again.
  const Way ways[] = {{"wren.xml", "x.xml", "x.xml", "x.xml"},
                      {"harnesses/wren.xml", "x.xml", "harnesses/x.xml", "x.xml"},
                      {"harnesses/wren.xml", "../boards/b.xml", "boards/b.xml", "../boards/b.xml"},
                      {"harnesses/wren.xml", "./a//b/../x.xml", "harnesses/a/x.xml", "a/x.xml"},
                      {"harnesses/wren.xml", "/srv/x.xml", "/srv/x.xml", "/srv/x.xml"},
                      {"/srv/wren.xml", "../x.xml", "/x.xml", "/x.xml"},
                      {"../wren.xml", "x.xml", "../x.xml", "x.xml"}};
  for (const Way& way : ways) {
    CAPTURE(way.loom);
    CAPTURE(way.file);
    CHECK(file_of_loom(way.loom, way.file) == way.path);
    CHECK(file_for_loom(way.loom, way.path) == way.back);
    CHECK(file_of_loom(way.loom, file_for_loom(way.loom, way.path)) == way.path);
  }
  CHECK(file_for_loom("/srv/wren.xml", "x.xml").empty());  // where the working folder lies is not known
  CHECK(file_for_loom("../a/wren.xml", "x.xml").empty());
}

namespace {

class LoomDice {
 public:
  explicit LoomDice(unsigned seed) : random_(seed) {}

  Loom loom() {
    Loom loom;
    loom.id = id("loom", 0);
    loom.title = text();
    loom.board = text();
    for (int i = 0; i < below(4); ++i) {
      const auto kind = static_cast<EvidenceKind>(below(8));
      loom.evidences.push_back(
          {id("e", i), kind, maybe(text()), maybe("2026-02-2"s + digit()), maybe(text()), {}});
    }
    const auto basis = [&] {
      return loom.evidences.empty() ? ""s
                                    : maybe(loom.evidences[static_cast<std::size_t>(below(
                                                               static_cast<int>(loom.evidences.size())))]
                                                .id);
    };
    loom.evidence = basis();
    loom.note = maybe(text());
    for (int i = 0; i < below(4); ++i) {
      FittedJumper fitted;
      fitted.jumper = id("JP", i);
      fitted.rail = maybe("24V");
      fitted.evidence = basis();
      fitted.note = maybe(text());
      loom.jumpers.push_back(fitted);
    }
    int header = 0;
    for (int i = 0; i <= below(5); ++i) {
      loom.harnesses.push_back({id("h", i), text(), maybe(text()), {}, {}});
      for (int p = 0; p < below(3); ++p) {
        Seat seat;
        seat.harness = loom.harnesses.back().id;
        seat.plug = id("p", p);
        seat.state = static_cast<SeatState>(below(3));
        if (seat.state == SeatState::OnHeader) seat.header = id("J", ++header);
        for (int c = 1; c <= below(5); ++c) seat.leads.push_back(below(3) == 0 ? 0 : c);
        std::shuffle(seat.leads.begin(), seat.leads.end(), random_);
        seat.evidence = basis();
        seat.note = maybe(text());
        loom.seats.push_back(seat);
      }
    }
    for (int i = 0; i < below(4); ++i) {
      LoomHeader free;
      free.header = id("J", ++header);
      free.taken = below(2) == 0;
      free.evidence = basis();
      free.note = maybe(text());
      loom.headers.push_back(free);
    }
    return loom;
  }

 private:
  int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
  std::string digit() { return format("{}", below(9)); }
  std::string id(std::string_view stem, int i) {
    return format("{}{}{}", stem, i, below(2) == 0 ? "" : "-.+_x");
  }
  std::string maybe(std::string value) { return below(2) == 0 ? "" : value; }
  std::string text() {
    const std::string_view bits[] = {"a",        " ",     "&",   "<",  ">", "\"", "'",
                                     "\xC3\xA4", "&amp;", "]]>", "--", "/", "%"};
    std::string made;
    for (int i = 0; i <= below(8); ++i) made += bits[static_cast<std::size_t>(below(13))];
    return made;
  }

  std::mt19937 random_;
};

}  // namespace

TEST_CASE("a loom that is written is read back equal") {
  for (unsigned seed = 0; seed < 1000; ++seed) {
    CAPTURE(seed);
    const Loom loom = LoomDice(seed).loom();
    const std::string text = loom_text(loom);
    CAPTURE(text);
    const Read read(text);
    REQUIRE_MESSAGE(read.description.loom, read.faults());
    CHECK(same(*read.description.loom, loom));
    CHECK(loom_text(*read.description.loom) == text);
  }
}

}  // namespace plugward::test
