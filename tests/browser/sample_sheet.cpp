// SPDX-License-Identifier: MIT
// Writes a sheet that holds every kind of block, every mood and awkward words, for the browser tests; and the
// pictures of its plug on their own.
//
//   sample_sheet FOLDER      writes sample.html, plug-wire.svg, plug-mating.svg
#include <iostream>
#include <limits>

#include "base/file.h"
#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "plan/repin.h"
#include "report/sheet_html.h"
#include "support/bench.h"

namespace plugward {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

sheet::Blank blank(std::string id, std::string points, std::string expect, std::optional<double> low,
                   std::optional<double> high, std::string unit) {
  sheet::Blank made;
  made.id = std::move(id);
  made.points = std::move(points);
  made.expect = std::move(expect);
  made.low = low;
  made.high = high;
  made.unit = std::move(unit);
  return made;
}

sheet::Step step(std::string id, int number, std::string act) {
  sheet::Step made;
  made.id = std::move(id);
  made.number = number;
  made.act = std::move(act);
  return made;
}

sheet::Steps steps() {
  sheet::Step off = step("s1", 1, "Switch the machine off and pull the mains plug.");
  off.see = "the fan stands still and no lamp is lit";
  off.wrong = "a second supply still feeds the board";
  off.cautions = {"Capacitors hold their charge for a minute.", "Never move a plug under power."};
  sheet::Step move = step("s2", 2, "Move the contacts of 'control'.");
  move.parts = {"take BN (G) out of cavity 1 and hold it", "move OG (P) from cavity 3 to cavity 1",
                "seat BN (G) in cavity 3"};
  move.picture = "plug-0";
  sheet::Step resistance = step("s3", 3, "Measure with the plug off.");
  resistance.blanks = {blank("r3-1", "J9.1 to J9.3", "10..14 kohm", 10000, 14000, "ohm"),
                       blank("r3-2", "J9.2 to J9.3", "over 1 Mohm, or open", 1e6, infinite, "ohm"),
                       blank("r3-3", "J9.3 to frame", "a beep", 0, 3, "ohm"),
                       blank("r3-4", "cavity 1 to cavity 2", "reads one way round only", 0, infinite, "ohm"),
                       blank("r3-5", "J9.3 to the supply's minus", "a beep", 0, 3, "")};
  resistance.blanks.push_back(blank("r3-6", "cavity 1 to 3", "1.6..2.8 ohm", 1.697, 2.785, "ohm"));
  resistance.blanks.push_back(
      blank("r3-7", "cavity 2 to 3", "57 ohm or more: not a short", 57.4, infinite, "ohm"));
  resistance.blanks.push_back(blank("r3-8", "cavity 3 to 4", "950 ohm..1.1 kohm", 951, 1090, "ohm"));
  resistance.blanks[4].too_high = "another header: stop";
  resistance.blanks[0].too_low = "a short to ground";
  resistance.blanks[0].too_high = "a lead that is not crimped";
  sheet::Step voltage = step("s4", 4, "Switch on; measure at J9, nothing plugged in.");
  voltage.power = true;
  voltage.blanks = {blank("r4-1", "J9.2 to J9.3", "4.9..5.2 V", 4.9, 5.2, "V"),
                    blank("r4-2", "J9.1 to J9.3", "-0.1..0.1 V", -0.1, 0.1, "V"),
                    blank("r4-3", "what is printed beside J9", "", std::nullopt, std::nullopt, "")};
  voltage.blanks[0].too_low = "jumper JP2 on the wrong rail";
  voltage.blanks[0].too_high = "12 V on this pin: \"J9\" is not J9";
  voltage.code = "M280 P0 S10\nM119";
  voltage.not_proved = "that the trigger is right";
  return {{off, move, resistance, voltage}};
}

sheet::Cell cell(std::string text, sheet::Mood mood = sheet::Mood::Plain, std::string picture = "") {
  return {std::move(text), mood, std::move(picture)};
}

sheet::Table table() {
  using sheet::Mood;
  sheet::Table made;
  made.head = {"plug", "header", "", "verdict"};
  made.rows = {
      {cell("control", Mood::Plain, "plug-0"), cell("J9 PROBE"), cell("3 of 3"),
       cell("REPIN", Mood::Caution)},
      {cell("trigger"), cell("J10 ENDSTOP-WITH-A-VERY-LONG-PRINTED-NAME"), cell("2 of 3"),
       cell("MATE", Mood::Good)},
      {cell("light"), cell("J4"), cell(""), cell("APART", Mood::Bad)},
      {cell("печать <b>&amp;\"печать\""), cell("插头 J7"), cell(""), cell("MEASURE", Mood::Doubtful)}};
  return made;
}

sheet::Document document(const std::string& words) {
  using sheet::PictureKind;
  sheet::Document made;
  made.title = {"Wren no. 3 </title><script>alert(1)</script>", "Kite bed probe", "Heron M7 rev. 2", "", ""};
  made.heading = "Kite on Heron M7 <img src=x onerror=alert(1)>";
  made.verdict = "REPIN";
  made.mood = sheet::Mood::Caution;
  made.summary = "'control' on 'J9' and 'trigger' on 'J10': move 2 contacts first.";
  made.limits = "plugward compares what the files say; it cannot see a bad crimp.";
  made.sections = {
      {"plugs", "Plugs", {sheet::Text{"What goes where.", true}, table()}, false},
      {"tools",
       "What you need",
       {sheet::List{{"a pin tool", "a meter"}, true, false},
        sheet::List{{"first this", "then that"}, false, true}, sheet::List{{"loose words"}, false, false}},
       false},
      {"order-of-work",
       "Order of work",
       {sheet::Warning{"Read it through before you begin."}, steps()},
       true},
      {"pictures",
       "Pictures",
       {sheet::Picture{"plug-0", PictureKind::Plug, 0, "Plug 'control' and header J9", words},
        sheet::Picture{"board", PictureKind::Board, -1, "Board", "A picture in words alone."}},
       true}};
  return made;
}

void write_sample(const std::string& folder) {
  const test::Bench bench = test::Bench::shipped("heron-m7", "kite-probe");
  const Fitting fitting = bench.fitting({{"control", "J9"}, {"trigger", "J10"}}, {{"JP2", "5V"}});
  const Advice advice = advise(fitting);
  const auto measure = make_text_measure();
  std::string words;
  const auto svg = [&](const sheet::Picture& picture, PictureFace face) -> std::string {
    if (picture.kind != sheet::PictureKind::Plug) return "";
    MatingPictureOptions options;
    options.view = face == PictureFace::Wire ? View::WireSide : View::MatingFace;
    options.placement = picture.placement;
    const Scene scene = mating_picture(fitting, advice, options, *measure);
    if (face == PictureFace::Wire) words = scene.description;
    PictureOptions drawn;
    if (!picture.id.empty()) drawn.prefix = face == PictureFace::Wire ? "w" : "m";
    return render(scene, drawn);
  };
  const sheet::Picture plug{"", sheet::PictureKind::Plug, 0, "", ""};
  write_file(folder + "/plug-wire.svg", svg(plug, PictureFace::Wire));
  write_file(folder + "/plug-mating.svg", svg(plug, PictureFace::Mating));
  write_file(folder + "/sample.html", sheet_html(document(words), svg));
}

}  // namespace
}  // namespace plugward

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "sample_sheet FOLDER\n";
    return 2;
  }
  plugward::write_sample(argv[1]);
}
