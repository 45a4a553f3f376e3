// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/causes_text_test.cpp.
#include "report/causes_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/words.h"

namespace plugward {
namespace {

std::string counted(int n, std::string_view one, std::string_view many) {
  return format("{} {}", n, n == 1 ? one : many);
}

/// "plug 'limit-x/limit' on J5 (LIMIT X)"; of no plug: the board.
std::string place_words(const Fitting& fitting, int plug) {
  if (plug < 0) return "the whole board";
  const int placed = placement_of_plug(fitting, plug);
  const std::string name = format("plug '{}'", plug_at(fitting, plug).id);
  if (placed < 0) return name;
  const int header = fitting.placements[static_cast<std::size_t>(placed)].header;
  return format("{} on {}", name, header_title(header_at(fitting, header)));
}

std::string limits_of_the_search(int errors) {
  return format(
      "{} tried on the model, each by itself. Two at once are not found, nor what no file tells of. "
      "Likely kinds stand first by common experience; the order proves nothing.",
      counted(errors, "single error", "single errors"));
}

struct Writer {
  Paper& paper;
  const Fitting& fitting;
  const PlugCauses& seen;

  const TextOptions& how() const { return paper.options(); }

  void write_cause(const Cause& cause, std::size_t number) {
    const std::string first = format("  {}. ", number);
    const std::string next(first.size(), ' ');
    paper.paragraph(cause.what, {first, next});
    for (const std::string& harm : cause.harms) {
      paper.paragraph(harm, {next + painted("harm", Tone::Bad, how()) + ": ", next + "  "});
    }
    std::vector<std::string> others;
    for (const Showing& s : cause.shows) {
      if (s.symptom == seen.symptom && s.plug == seen.plug) continue;
      others.push_back(s.plug < 0
                           ? format("{} (the board)", words_of(s.symptom).word)
                           : format("{} at '{}'", words_of(s.symptom).word, plug_at(fitting, s.plug).id));
    }
    if (!others.empty())
      paper.paragraph(format("also seen then: {}", join(others, ", ")), {next, next + "  "});
    const bool told = number > 1 && alike(seen.causes[number - 2], cause);
    if (told) return;
    std::size_t last = number;
    while (last < seen.causes.size() && alike(seen.causes[last], cause)) ++last;
    const std::string which = last == number ? "" : format(" ({} to {})", number, last);
    paper.paragraph(format("comes about{}: {}", which, cause.how), {next, next + "  "});
    paper.paragraph(format("cure{}: {}", which, cause.cure), {next, next + "  "});
  }

  /// How such a thing comes about and is cured is told once for a row of causes.
  static bool alike(const Cause& a, const Cause& b) { return a.how == b.how && a.cure == b.cure; }

  std::string leads_to(const TellingReading& reading) const {
    if (reading.causes.empty()) return "none of these causes";
    std::vector<std::string> numbers;
    for (const int i : reading.causes) numbers.push_back(format("{}", i + 1));
    const bool one = numbers.size() == 1;
    if (one) return format("cause {}", numbers.front());
    const std::string which = format("causes {}", join(numbers, ", "));
    return reading.next < 0 ? which + "; no measurement tells them apart"
                            : format("{}: go on with step {}", which, reading.next + 1);
  }

  void write_step(const TellingStep& step, std::size_t number) {
    const std::string first = format("  {}. ", number);
    const std::string next(first.size(), ' ');
    const std::string power = step.power == MeterPower::On ? painted("power ON", Tone::Caution, how()) + ": "
                              : step.power == MeterPower::Off ? "power off: "
                                                              : "";
    paper.paragraph(step.action, {first + power, next});
    for (const TellingReading& reading : step.readings) {
      const std::string words = reading.words.empty()
                                    ? "anything else"
                                    : reading.words + (reading.healthy ? ", as it should be" : "");
      paper.paragraph(format("{}: {}", words, leads_to(reading)), {next + "- ", next + "    "});
    }
  }

  void write() {
    std::string place = place_words(fitting, seen.plug);
    place.front() = place.front() == 'p' ? 'P' : 'T';
    paper.heading(place);
    for (std::size_t i = 0; i < seen.causes.size(); ++i) write_cause(seen.causes[i], i + 1);
    if (seen.steps.empty()) return;
    paper.line();
    paper.line(seen.causes.size() == 1 ? "  What proves it:" : "  What tells them apart; begin with step 1:");
    for (std::size_t i = 0; i < seen.steps.size(); ++i) write_step(seen.steps[i], i + 1);
  }
};

}  // namespace

std::string causes_text(const Fitting& fitting, Symptom symptom, const std::vector<PlugCauses>& all,
                        int errors, const TextOptions& options) {
  Paper paper(options);
  const SymptomWords& words = words_of(symptom);
  paper.paragraph(format("{}: {}", painted(words.word, Tone::Strong, options), words.sees));
  if (all.empty()) {
    paper.line();
    paper.paragraph("No single error of the wiring makes this symptom here.");
  } else {
    paper.heading("Before you begin");
    for (const std::string& caution : all.front().cautions) paper.paragraph(caution, {"  [ ] ", "      "});
    for (const PlugCauses& seen : all) Writer{paper, fitting, seen}.write();
  }
  paper.line();
  paper.paragraph(limits_of_the_search(errors));
  paper.paragraph(limits_sentence());
  return paper.text();
}

std::string possible_text(const Fitting& fitting, const std::vector<PossibleSymptom>& all, int errors,
                          const std::string& command, const TextOptions& options) {
  Paper paper(options);
  paper.line("What is seen on this machine when one thing is wrong with its wiring");
  int plug = -2;
  std::vector<std::vector<std::string>> rows;
  const auto flush = [&] {
    if (!rows.empty()) paper.table(rows);
    rows.clear();
  };
  for (const PossibleSymptom& one : all) {
    if (one.showing.plug != plug) {
      flush();
      plug = one.showing.plug;
      paper.heading(place_words(fitting, plug));
    }
    const SymptomWords& words = words_of(one.showing.symptom);
    rows.push_back(
        {std::string(words.word), counted(one.causes, "cause", "causes"), std::string(words.sees)});
  }
  flush();
  paper.line();
  paper.line("The causes of one of them, and what tells them apart:");
  paper.line("  " + command);
  paper.line();
  paper.paragraph(limits_of_the_search(errors));
  return paper.text();
}

}  // namespace plugward
