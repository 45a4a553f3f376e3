// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/board_edit_test.cpp.
#include "cli/board_edit.h"

#include <algorithm>

#include "base/format.h"
#include "base/xml_text.h"

namespace plugward {
namespace {

/// Where in a start tag the value of this attribute stands: begin and end within the quotes; {0, 0}: it has
/// none.
std::pair<std::size_t, std::size_t> value_in(std::string_view tag, std::string_view attribute) {
  for (std::size_t at = tag.find(attribute); at != tag.npos; at = tag.find(attribute, at + 1)) {
    const bool begins = at > 0 && std::string_view(" \t\r\n").find(tag[at - 1]) != std::string_view::npos;
    std::size_t next = tag.find_first_not_of(" \t\r\n", at + attribute.size());
    if (!begins || next == tag.npos || tag[next] != '=') continue;
    next = tag.find_first_not_of(" \t\r\n", next + 1);
    if (next == tag.npos || (tag[next] != '"' && tag[next] != '\'')) continue;
    const std::size_t end = tag.find(tag[next], next + 1);
    // A quote before it that is still open: this is inside another value.
    const std::string_view before = tag.substr(0, at);
    if (std::count(before.begin(), before.end(), tag[next]) % 2 == 0 && end != tag.npos)
      return {next + 1, end};
  }
  return {0, 0};
}

/// The end of a header that had no pins.
constexpr std::string_view closing = "</header>";

/// `<header ...><pin .../></header>` with each pin on a line of its own.
std::string on_lines(std::string text, const std::string& indent) {
  for (std::size_t at = text.find("<pin"); at != std::string::npos;
       at = text.find("<pin", at + indent.size() + 6))
    text.insert(at, indent + "  ");
  return text.insert(text.size() - closing.size(), indent);
}

}  // namespace

BoardEdit::BoardEdit(std::string text, const Board& board) : old_(std::move(text)) {
  evidence_at_ = board.span.end;
  for (const Evidence& e : board.evidences) {
    evidence_at_ = std::max<std::size_t>(evidence_at_, e.span.end);
    ids_.push_back(e.id);
  }
  // An element that is not empty ends behind its end tag; <evidence ...></evidence> is rare and right.
  if (old_.compare(evidence_at_, 2, "</") == 0) evidence_at_ = old_.find('>', evidence_at_) + 1;
  indent_ = old_.find("\r\n") == std::string::npos ? "\n  " : "\r\n  ";
}

std::string BoardEdit::add_reading(std::string_view note, std::string_view date) {
  int number = 1;
  std::string id;
  do {
    id = verbatim("reading-{}", number++);
  } while (std::find(ids_.begin(), ids_.end(), id) != ids_.end());
  ids_.push_back(id);
  const std::string day = date.empty() ? "" : verbatim(" date=\"{}\"", date);
  changes_.push_back(
      {evidence_at_, evidence_at_,
       verbatim("<evidence id=\"{}\" kind=\"measurement\"{} note=\"{}\"/>", id, day, xml_escaped(note)),
       true});
  return id;
}

void BoardEdit::set(Span element, std::string_view attribute, std::string_view value) {
  const std::string_view tag = std::string_view(old_).substr(element.begin, element.end - element.begin);
  const auto [begin, end] = value_in(tag, attribute);
  if (end != 0) {
    changes_.push_back({element.begin + begin, element.begin + end, xml_escaped(value), false});
    return;
  }
  std::size_t at = tag.ends_with("/>") ? element.end - 2 : element.end - 1;
  while (at > element.begin && old_[at - 1] == ' ') --at;
  changes_.push_back({at, at, verbatim(" {}=\"{}\"", attribute, xml_escaped(value)), false});
}

void BoardEdit::rests_on(Span pin, std::string_view evidence) {
  set(pin, "evidence", evidence);
}

void BoardEdit::add_pin(const Header& header, std::string_view element) {
  const std::string_view tag =
      std::string_view(old_).substr(header.span.begin, header.span.end - header.span.begin);
  if (tag.ends_with("/>")) {
    const std::size_t at = header.span.end - 2u;
    const auto opened = std::find_if(changes_.begin(), changes_.end(), [&](const Change& c) {
      return c.begin == at && c.with.ends_with(closing);
    });
    if (opened != changes_.end()) {
      opened->with.insert(opened->with.size() - closing.size(), element);
    } else {
      changes_.push_back({at, header.span.end, verbatim(">{}{}", element, closing), false});
    }
  } else {
    changes_.push_back({header.span.end, header.span.end, std::string(element), true});
  }
}

std::string BoardEdit::changed(bool tidy) const {
  std::vector<Change> in_order = changes_;
  std::stable_sort(in_order.begin(), in_order.end(),
                   [](const Change& a, const Change& b) { return a.begin < b.begin; });
  std::string text;
  std::size_t at = 0;
  for (const Change& change : in_order) {
    text.append(old_, at, change.begin - at);
    if (tidy && change.own_line) {
      const bool pin = change.with.starts_with("<pin");
      text += pin ? indent_ + "  " : indent_;
    }
    text += tidy && change.with.ends_with(closing) ? on_lines(change.with, indent_) : change.with;
    at = change.end;
  }
  return text.append(old_, at, std::string::npos);
}

std::string BoardEdit::text() const {
  return changed(false);
}
std::string BoardEdit::tidy_text() const {
  return changed(true);
}

}  // namespace plugward
