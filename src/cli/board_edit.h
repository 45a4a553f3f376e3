// SPDX-License-Identifier: MIT
// A board file with something written into it: the text around stays byte by byte as it was, so that
// comments, order and layout are kept, and what is known of a pin rests on a measurement.
//
//   BoardEdit edit(text, board);
//   edit.rests_on_reading(pin.span, edit.add_reading("J9.2 read 5.02 V", "2026-11-25"));
//   edit.text()                                   // to be judged: lines are where they were
//   edit.tidy_text()                              // to be kept: each evidence on a line of its own
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/board.h"

namespace plugward {

class BoardEdit {
 public:
  /// `text` is the file that `board` was read from.
  BoardEdit(std::string text, const Board& board);

  /// Declares evidence of the kind 'measurement'; its id, which no other evidence has.
  std::string add_reading(std::string_view note, std::string_view date);
  /// The pin whose start tag this is rests on that evidence.
  void rests_on(Span pin, std::string_view evidence);
  /// Adds or replaces an attribute of the element whose start tag this is.
  void set(Span element, std::string_view attribute, std::string_view value);
  /// Describes a pin of which the file has no element.
  void add_pin(const Header& header, std::string_view element);

  std::string text() const;
  std::string tidy_text() const;

 private:
  struct Change {
    std::size_t begin = 0, end = 0;  ///< these bytes of the old text
    std::string with;
    bool own_line = false;
  };
  std::string changed(bool tidy) const;

  std::string old_;
  std::size_t evidence_at_ = 0;
  std::string indent_;
  std::vector<std::string> ids_;
  std::vector<Change> changes_;
};

}  // namespace plugward
