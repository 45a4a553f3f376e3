// SPDX-License-Identifier: MIT
#include "report/way_back_text.h"

#include <doctest/doctest.h>

#include "plan/record.h"
#include "report/difference_text.h"
#include "support/refit.h"

using namespace plugward;
using namespace plugward::test;

namespace {

struct Refit {
  std::map<std::string, std::string> texts = small_machine();
  Machine machine{"old.xml", texts};
  NewBoard to{texts.at("b.xml")};
  Fitting fitting = machine.fitting();
  std::unique_ptr<SwapPlan> plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
};

}  // namespace

TEST_CASE("the way back of the small machine, whole") {
  const Refit refit;
  CHECK(way_back_text(*refit.plan, way_back(*refit.plan)) ==
        "The way back from board 'new' to board 'old'.\n"
        "\n"
        "Before anything is touched\n"
        "  [ ] power off, mains plug out, USB out; wait until all lamps are out and some\n"
        "      minutes for stored charge\n"
        "  [ ] touch earthed metal before the board; hold boards by their edges\n"
        "  [ ] let heaters cool and motion stop; unplug by the housing, never by the\n"
        "      leads\n"
        "  [ ] photograph both faces of the plug and flag each lead with its cavity\n"
        "      before the first one is moved\n"
        "\n"
        "Off the new board\n"
        "  1. unplug 'limit/p' from J5 (limit)\n"
        "  2. unplug 'fan/fan' from J6 (fan)\n"
        "  3. the leads of the supply off J9 (supply); mark them as they sit: plus on pin\n"
        "     2, minus on pin 1\n"
        "\n"
        "How to free and seat a contact\n"
        "  - this family: each cavity has a small window below its opening in the mating\n"
        "    face; the maker's tool is XJ-06\n"
        "  - push the lead gently into the housing: that takes the load off the lance\n"
        "  - press the metal lance flush through its window with a fine flat blade; do\n"
        "    not lever\n"
        "  - keep it pressed and draw the lead back with two fingers; if it does not\n"
        "    follow, push it in and begin again\n"
        "  - bend the lance back to its old height, without a crease; the next time, take\n"
        "    a new contact (rule of thumb)\n"
        "  - push the contact straight in, lance towards the windows, until it clicks and\n"
        "    the lance shows\n"
        "\n"
        "Plug 'limit/p'\n"
        "  4. take out a voltage divider of 47 kohm and 6.2 kohm and join the ends as\n"
        "     they were, each joint insulated by itself\n"
        "\n"
        "Plug 'fan/fan'\n"
        "  5. take out of cavity 2, hold beside the housing: lead RD to 'fan/f.V'\n"
        "     why: held beside the housing to make room\n"
        "  6. move cavity 1 -> 2: lead BK to 'fan/f.G'\n"
        "  7. insert the held one into cavity 1: lead RD to 'fan/f.V'\n"
        "\n"
        "The old board\n"
        "  8. put board 'old' back on its standoffs\n"
        "  9. look that jumper JP is at 24V\n"
        " 10. the leads of the supply on J9 (supply): plus on pin 2, minus on pin 1; the\n"
        "     wrong way round they destroy the board\n"
        "\n"
        "On the old board\n"
        " 11. plug 'limit/p' into J1 (limit)\n"
        " 12. plug 'fan/fan' into J2 (fan)\n"
        " 13. plug 'filament/p' into J3 (filament)\n"
        "\n"
        "Before power comes back\n"
        "  [ ] tug each moved lead lightly, about 5 N (a half-litre bottle), never more\n"
        "      than 17 N: it must not slide\n"
        "  [ ] compare the depth of each contact with its neighbours\n"
        "  [ ] power still off: continuity of every lead from its cavity to the device,\n"
        "      wiggling it; no beep between neighbouring cavities\n"
        "  [ ] keep the lead that was taken out, if any, insulated singly and flagged\n"
        "\n"
        "Carried out on the model, these steps end in the machine as it was: every lead\n"
        "in its cavity, every plug on its header, every jumper at its rail.\n");
}

TEST_CASE("a way back that does not end where it should says so") {
  const Refit refit;
  WayBack back = way_back(*refit.plan);
  back.proven = false;
  const std::string text = way_back_text(*refit.plan, back);
  CHECK(
      text.ends_with("\nCarried out on the model, these steps do not end in the machine as it was. Go by\n"
                     "the old loom and its photographs, plug by plug.\n"));
}

TEST_CASE("the difference of the small machine before and after, whole") {
  const Refit refit;
  auto texts = refit.texts;
  const Record record = finished_state(*refit.plan, refit.machine.loom(), refit.machine.files(),
                                       {.loom = "refit/loom.xml", .old_loom = "old.xml", .board = "b.xml"});
  for (const RecordFile& file : record.files) texts[file.path] = file.text;
  const Machine after("refit/loom.xml", texts);
  const LoomDifference d =
      difference(refit.machine.loom(), refit.machine.files(), after.loom(), after.files());
  CHECK(difference_text(d) ==
        "From loom 'm' on board 'old' to loom 'm-new' on board 'new'.\n"
        "3 plugs: 2 over to the other board, 1 unplugged; contacts, leads, parts or\n"
        "housings of 2 differ\n"
        "\n"
        "Jumpers\n"
        "  jumper       m    m-new\n"
        "  JP of 'old'  24V  -\n"
        "  JP of 'new'  -    24V\n"
        "\n"
        "Plugs\n"
        "  plug        on 'old'  on 'new'\n"
        "  limit/p     J1        J5        other board, 2 parts added\n"
        "  fan/fan     J2        J6        other board, 2 contacts moved\n"
        "  filament/p  J3        on none   unplugged\n"
        "\n"
        "Plug 'limit/p'\n"
        "  - built in: a resistor of 47 kohm, 0.125 W\n"
        "  - built in: a resistor of 6.2 kohm, 0.125 W\n"
        "\n"
        "Plug 'fan/fan'\n"
        "  - lead BK to 'G': cavity 2 -> cavity 1\n"
        "  - lead RD to 'V': cavity 1 -> cavity 2\n");
  CHECK(difference_summary(difference(after.loom(), after.files(), after.loom(), after.files())) ==
        "3 plugs: 3 where they were");
}
