// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/draft_test.cpp and, through a terminal, in tests/shell/dialogue_test.py.
#include "cli/dialogue.h"

#include <algorithm>
#include <charconv>

#include "base/format.h"

namespace plugward {
namespace {

/// Asks until `take` understands the answer.
template <class Take>
void ask_until(const Ask& ask, const std::string& question, Take take) {
  std::string trouble;
  for (;;) {
    const std::string answer = ask(trouble.empty() ? question : format("{}\n{}", trouble, question));
    try {
      take(answer);
      return;
    } catch (const UsageError& error) {
      trouble = error.what();
    }
  }
}

const DeviceKind& ask_kind(const Ask& ask) {
  const DeviceKind* kind = nullptr;
  ask_until(ask, format("What is at the far end? {}\nEnter: not known", kind_words()),
            [&](const std::string& answer) {
              kind = find_kind(answer.empty() ? "unknown" : answer);
              if (kind == nullptr) throw UsageError(format("'{}' is none of these", answer));
            });
  return *kind;
}

void ask_seen(const Ask& ask, CableDraft& draft) {
  ask_until(ask,
            "Which colours sit in the housing, from left to right? RD,GN,WH; '-' an empty cavity, '?' cannot "
            "be told\n"
            "Codes: BK BN RD OG YE GN BU VT GY WH PK TQ, two joined for two colours. Enter: not known",
            [&](const std::string& answer) {
              if (!answer.empty()) draft.leads = read_seen(*draft.kind, answer);
            });
  if (!draft.leads.empty()) return;
  const std::size_t usual = draft.kind->terminals.empty() ? 2 : draft.kind->terminals.size();
  ask_until(ask, format("How many leads has it? 1 to 200. Enter: not known, {} are taken", usual),
            [&](const std::string& answer) {
              std::size_t count = usual;
              if (!answer.empty()) {
                const auto [end, error] =
                    std::from_chars(answer.data(), answer.data() + answer.size(), count);
                if (error != std::errc() || end != answer.data() + answer.size() || count < 1 || count > 200)
                  throw UsageError(format("'{}' is no count from 1 to 200", answer));
              }
              std::string list = "?";
              for (std::size_t i = 1; i < count; ++i) list += ",?";
              draft.leads = read_seen(*draft.kind, list);
            });
}

void ask_view(const Ask& ask, CableDraft& draft) {
  ask_until(
      ask,
      "Seen from which side? wire (where the leads go in), mating (where the pins go in). Enter: not known",
      [&](const std::string& answer) {
        if (!answer.empty() && answer != "wire" && answer != "mating")
          throw UsageError(format("'{}' is neither wire nor mating", answer));
        draft.view = answer.empty()     ? DraftView::Unknown
                     : answer == "wire" ? DraftView::Wire
                                        : DraftView::Mating;
      });
}

void ask_ends(const Ask& ask, CableDraft& draft) {
  if (draft.kind->alike) return;
  for (std::size_t i = 0; i < draft.leads.size(); ++i) {
    SeenCavity& lead = draft.leads[i];
    std::string open;
    for (const KindTerminal& terminal : draft.kind->terminals) {
      const bool taken = std::any_of(draft.leads.begin(), draft.leads.end(),
                                     [&](const SeenCavity& other) { return other.to == terminal.id; });
      if (!taken) open += format("{}{} {}", open.empty() ? "" : ", ", terminal.id, terminal.says);
    }
    if (!lead.lead || !lead.to.empty() || open.empty()) continue;
    ask_until(
        ask,
        format(
            "Was it proved (print, beep, drawing; not colour) where lead {} ({}) goes? {}. Enter: not known",
            i + 1, to_code(lead.colour), open),
        [&](const std::string& answer) {
          if (answer.empty()) return;
          const KindTerminal* terminal = find_terminal(*draft.kind, answer);
          if (terminal == nullptr) throw UsageError(format("'{}' is none of its terminals", answer));
          for (const SeenCavity& other : draft.leads) {
            if (other.to == terminal->id) throw UsageError(format("'{}' is taken already", terminal->id));
          }
          lead.to = terminal->id;
        });
  }
}

void ask_figures(const Ask& ask, CableDraft& draft) {
  for (const KindFigure& figure : draft.kind->figures) {
    const auto said = [&](const NamedValue& one) { return one.name == figure.attribute; };
    if (std::any_of(draft.known.begin(), draft.known.end(), said)) continue;
    ask_until(ask, format("{}? such as {}. Enter: not known", figure.asks, figure.example),
              [&](const std::string& answer) {
                if (answer.empty()) return;
                CableDraft trial = draft;
                trial.known.push_back(read_known(*draft.kind, {std::string(figure.attribute), answer}));
                check_draft(trial);
                draft = std::move(trial);
              });
  }
}

}  // namespace

CableDraft ask_draft(const Said& said, const Ask& ask) {
  CableDraft draft;
  draft.kind = said.kind.empty() ? &ask_kind(ask) : find_kind(said.kind);
  if (draft.kind == nullptr) draft = read_draft(said.kind, "?");  // throws: no such kind
  draft.id = draft.kind->word;
  draft.title = draft.kind->title;
  if (!said.seen.empty()) {
    draft.leads = read_seen(*draft.kind, said.seen);
  } else {
    ask_seen(ask, draft);
  }
  if (said.view.empty()) {
    ask_view(ask, draft);
  } else {
    draft.view = read_view(said.view);
  }
  if (said.housing.empty()) {
    ask_until(
        ask,
        "Which housing, or which pitch in mm? xh-2.50, 2.54 ('plugward list families'). Enter: not known",
        [&](const std::string& answer) { draft.family = read_housing(answer.empty() ? "?" : answer); });
  } else {
    draft.family = read_housing(said.housing);
  }
  for (const NamedValue& one : said.known) draft.known.push_back(read_known(*draft.kind, one));
  ask_ends(ask, draft);
  ask_figures(ask, draft);
  return draft;
}

}  // namespace plugward
