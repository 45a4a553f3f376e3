// SPDX-License-Identifier: MIT
// The description of a cable made from a few words. What is not known is left out, so that the judge asks for
// it, and comments say how to find it.
//
//   CableDraft draft = read_draft("fan", "BK,RD=V,YE");     // throws UsageError
//   const std::string xml = draft_text(draft);              // lint finds nothing in it
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/kinds.h"
#include "cli/options.h"
#include "quantity/colour.h"

namespace plugward {

/// One cavity. `lead` is false where it is empty.
struct SeenCavity {
  bool lead = true;
  WireColour colour;
  std::string to;  ///< id of the terminal; "" not known
};

/// From where the row of colours was told.
enum class DraftView { Wire, Mating, Unknown };

struct CableDraft {
  const DeviceKind* kind = nullptr;
  std::vector<SeenCavity> leads;  ///< as told, from left to right
  DraftView view = DraftView::Wire;
  std::string family = "unknown";  ///< or "unknown-2.50", or one of the catalogue
  std::vector<NamedValue> known;   ///< attributes of the line
  std::string id;                  ///< of the harness
  std::string title;
  std::string date;  ///< of the evidence; "" none
};

/// "BK,RD=V,-,?": colours, '-' an empty cavity, '?' a colour that cannot be told; behind '=' what is proved
/// of the lead. A device of which either end may be A has its two leads told apart. Throws UsageError.
std::vector<SeenCavity> read_seen(const DeviceKind&, std::string_view list);
/// A draft with its kind's own id and title. Throws UsageError.
CableDraft read_draft(std::string_view kind, std::string_view list);

/// What --known says, as the line takes it: one voltage becomes the range that is 10 % wide either way.
/// Throws UsageError for an attribute that the line does not take.
NamedValue read_known(const DeviceKind&, const NamedValue&);

/// "2.54", "2.5 mm" or the id of a family -> what the file says. Throws UsageError.
std::string read_housing(std::string_view words);

/// "wire", "mating" or "unknown".
DraftView read_view(std::string_view word);

std::string draft_text(const CableDraft&);

/// Throws UsageError with the first fault that the reader finds in a text made from words of the person.
void check_text(const std::string& text);
void check_draft(const CableDraft&);

}  // namespace plugward
