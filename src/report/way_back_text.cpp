// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/way_back_text_test.cpp.
#include "report/way_back_text.h"

#include <algorithm>

#include "base/format.h"
#include "plan/power_in.h"
#include "report/step_text.h"
#include "report/words.h"
#include "sheet/swap_words.h"

namespace plugward {
namespace {

class Writer {
 public:
  Writer(const SwapPlan& plan, const WayBack& back, const TextOptions& options)
      : plan_(plan), back_(back), was_(*plan.machine->harness), paper_(options) {}

  std::string run() {
    paper_.paragraph(
        format("The way back from board '{}' to board '{}'.", plan_.board->id, plan_.machine->board->id));
    boxes("Before anything is touched", back_.cautions);
    unplug();
    bench();
    board();
    plug_in();
    boxes("Before power comes back", back_.checks);
    paper_.line();
    paper_.paragraph(way_back_sentence(back_.proven));
    return paper_.text();
  }

 private:
  void boxes(std::string_view title, const std::vector<std::string>& items) {
    paper_.heading(title);
    for (const std::string& item : items) paper_.paragraph(item, {"  [ ] ", "      "});
  }

  void step(const std::string& text) { paper_.paragraph(text, {format("{:>3}. ", number_++), "     "}); }

  const Plug& plug(const PlugWayBack& one) const { return was_.plugs[static_cast<std::size_t>(one.plug)]; }

  void unplug() {
    paper_.heading("Off the new board");
    for (const PlugWayBack& one : back_.plugs) {
      if (!one.from) continue;
      step(format("unplug '{}' from {}", plug(one).id,
                  header_title(plan_.board->headers[static_cast<std::size_t>(*one.from)])));
    }
    const int power = power_header(*plan_.board);
    if (power >= 0)
      step(format("the leads of the supply off {}; mark them as they sit: {}",
                  header_title(plan_.board->headers[static_cast<std::size_t>(power)]),
                  landing_words(*plan_.board, power)));
  }

  void bench() {
    const bool any = std::any_of(back_.plugs.begin(), back_.plugs.end(),
                                 [](const PlugWayBack& one) { return one.at_bench(); });
    if (!any) return;
    if (!back_.technique.empty()) {
      paper_.heading("How to free and seat a contact");
      for (const std::string& line : back_.technique) paper_.paragraph(line, {"  - ", "    "});
    }
    for (const PlugWayBack& one : back_.plugs) {
      if (one.at_bench()) bench(one);
    }
  }

  void bench(const PlugWayBack& one) {
    paper_.heading(format("Plug '{}'", plug(one).id));
    for (const std::string& part : one.take_out) {
      step(format("take out {} and join the ends as they were, each joint insulated by itself", part));
    }
    if (one.rebuilt && one.take_out.empty() && one.leads_out.empty()) {
      step("the parts in its leads come out with those of the plug that shares its device");
    }
    for (const int cavity : one.leads_out) {
      step(cavity > 0 ? format("take the added lead out of cavity {}", cavity)
                      : std::string("take the added lead off"));
    }
    if (one.other_housing) {
      step(
          format("back into a housing of family '{}' with {} positions, with its own contacts, crimped anew: "
                 "{}",
                 plug(one).family, plug(one).positions, cavities(one)));
    }
    number_ = write_steps(paper_, was_, one.steps, number_);
    for (const int lead : one.put_back) {
      const Lead& back = plug(one).leads[static_cast<std::size_t>(lead)];
      step(format("take the insulation off and insert into cavity {}: lead {}", back.cavity,
                  lead_with_terminal(was_, back)));
    }
  }

  /// "1 RD to 'V', 2 BN to 'G'".
  std::string cavities(const PlugWayBack& one) const {
    std::vector<std::string> words;
    for (const Lead& lead : plug(one).leads) {
      words.push_back(format("{} {}", lead.cavity, lead_with_terminal(was_, lead)));
    }
    return format("{}", join(words, ", "));
  }

  void board() {
    paper_.heading("The old board");
    step(format("put board '{}' back on its standoffs", plan_.machine->board->id));
    for (const auto& [jumper, rail] : back_.jumpers)
      step(format("look that jumper {} is at {}", jumper, rail));
    const Board& old = *plan_.machine->board;
    const int power = power_header(old);
    if (power < 0) return;
    const std::string other = landing_caution(*plan_.board, old, "on the other board plus was");
    step(format("the leads of the supply on {}: {}{}; the wrong way round they destroy the board",
                header_title(old.headers[static_cast<std::size_t>(power)]), landing_words(old, power),
                other.empty() ? "" : format(" ({})", other)));
  }

  void plug_in() {
    paper_.heading("On the old board");
    for (const PlugWayBack& one : back_.plugs) {
      if (one.to) {
        step(format("plug '{}' into {}", plug(one).id,
                    header_title(plan_.machine->board->headers[static_cast<std::size_t>(*one.to)])));
      } else {
        step(format("tie '{}' back: it was on no header", plug(one).id));
      }
    }
  }

  const SwapPlan& plan_;
  const WayBack& back_;
  const Harness& was_;
  Paper paper_;
  int number_ = 1;
};

}  // namespace

std::string way_back_text(const SwapPlan& plan, const WayBack& back, const TextOptions& options) {
  return Writer(plan, back, options).run();
}

}  // namespace plugward
