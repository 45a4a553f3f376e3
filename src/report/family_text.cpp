// SPDX-License-Identifier: MIT
// The connector families as text. Tested in tests/unit/report/list_text_test.cpp.
#include "base/format.h"
#include "report/list_text.h"

namespace plugward {
namespace {

std::string value_text(const std::string& value) {
  return value;
}
std::string value_text(bool value) {
  return value ? "yes" : "no";
}
std::string value_text(Lance value) {
  switch (value) {
    case Lance::Contact:
      return "on the contact";
    case Lance::Housing:
      return "in the housing";
    case Lance::None:
      return "none";
  }
  return "";
}
std::string value_text(const Rating& rating) {
  std::string text = to_text(rating.amps);
  if (rating.gauge.area.value > 0) text += " at " + to_text(rating.gauge);
  if (rating.circuits > 0) text += format(", up to {} positions", rating.circuits);
  return rating.condition.empty() ? text : format("{} ({})", text, rating.condition);
}
template <class Unit>
std::string value_text(Quantity<Unit> value) {
  return to_text(value);
}
template <class Q>
std::string value_text(Range<Q> value) {
  return to_text(value);
}

template <class T>
void write_cited(Paper& paper, std::string_view name, const Cited<T>& cited) {
  const std::string source = cited.source.empty() ? std::string(to_word(cited.certainty))
                                                  : format("{}: {}", to_word(cited.certainty), cited.source);
  paper.paragraph(format("{} [{}]", value_text(cited.value), source),
                  {format("  {:<14}", name), std::string(16, ' ')});
}

template <class T>
void write_cited(Paper& paper, std::string_view name, const std::optional<Cited<T>>& cited) {
  if (cited) {
    write_cited(paper, name, *cited);
  } else {
    paper.line(format("  {:<14}not known", name));
  }
}

std::string pitch_text(const Family& family) {
  return family.pitch.value > 0 ? to_text(family.pitch) : "none";  // circular
}

std::string smallest_rating(const Family& family) {
  const Cited<Rating>* rating = family.smallest_rating();
  if (rating == nullptr) return "not known";
  const bool with_gauge = rating->value.gauge.area.value > 0;
  return to_text(rating->value.amps) + (with_gauge ? " at " + to_text(rating->value.gauge) : "");
}

}  // namespace

std::string families_text(const Catalogue& catalogue, const TextOptions& options) {
  Paper paper(options);
  std::vector<std::vector<std::string>> rows = {{"family", "pitch", "rows", "smallest rating", "housings"}};
  for (const Family& family : catalogue.all()) {
    rows.push_back(
        {family.id, pitch_text(family), format("{}", family.rows), smallest_rating(family), family.title});
  }
  paper.table(rows);
  paper.line();
  paper.line("At length, with sources: plugward list families FAMILY");
  return paper.text();
}

std::string family_text(const Family& family, const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(format("{}: {}", painted(family.id, Tone::Strong, options), family.title));
  paper.line();
  paper.line(format("  {:<14}{}", "pitch", pitch_text(family)));
  paper.line(format("  {:<14}{}", "rows", family.rows));
  paper.line(format("  {:<14}{} to {}", "positions", family.fewest_positions, family.most_positions));
  paper.line(format("  {:<14}{}", "profile", to_word(family.profile)));
  for (const Cited<Rating>& rating : family.ratings) write_cited(paper, "rating", rating);
  if (family.ratings.empty()) paper.line(format("  {:<14}not known", "rating"));
  write_cited(paper, "voltage", family.voltage);
  write_cited(paper, "wire", family.wire);
  write_cited(paper, "latch", family.latch);
  write_cited(paper, "lance", family.lance);
  write_cited(paper, "first cavity", family.first_cavity);
  write_cited(paper, "release", family.release);
  write_cited(paper, "moving again", family.reuse);
  if (!family.mates.empty()) paper.line(format("  {:<14}{}", "mates with", join(family.mates, ", ")));
  for (const Cited<std::string>& caution : family.cautions) write_cited(paper, "caution", caution);
  return paper.text();
}

}  // namespace plugward
