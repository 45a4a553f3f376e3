// SPDX-License-Identifier: MIT
// Which housing goes on each header and which lead goes where: a re-housing before it is judged.
//
//   for (const RehousingDraft& draft : rehousing_drafts(fitting, {0}, {8, 9})) ...   // cheapest first
#pragma once

#include <string>
#include <tuple>
#include <vector>

#include "model/fitting.h"

namespace plugward {

/// A lead of one of the plugs that are given up.
struct DraftLead {
  int source = 0;  ///< index into RehousingDraft::plugs
  int lead = 0;    ///< index into Plug::leads
};

struct DraftPlace {
  int target = 0;  ///< index into RehousingDraft::headers
  int cavity = 0;  ///< 0: insulated
};

struct RehousingDraft {
  std::vector<int> plugs;    ///< as in Rehousing
  std::vector<int> headers;  ///< likewise
  std::vector<int> kept;     ///< by header: index into plugs of the housing that stays, or -1: a new one
  std::vector<DraftLead> leads;
  std::vector<DraftPlace> places;  ///< by lead
  int housings = 0;
  int moves = 0;
  int crimps = 0;
  int settings = 0;

  auto cost() const { return std::tuple(housings, moves, crimps, settings); }
};

/// Every choice of kept housings with the cheapest places for the leads, cheapest first. Empty when no order
/// gives every terminal its function, a lead's far end is not known, the conductors cannot be moved one by
/// one, or a contact that would have to be crimped on does not take the lead.
std::vector<RehousingDraft> rehousing_drafts(const Fitting&, const std::vector<int>& plugs,
                                             const std::vector<int>& headers);

const Plug& source_of(const Fitting&, const RehousingDraft&, int source);
const Header& target_of(const Fitting&, const RehousingDraft&, int target);
const Lead& lead_of(const Fitting&, const RehousingDraft&, const DraftLead&);
/// Of the housing that goes on the header.
std::string family_on(const Fitting&, const RehousingDraft&, int target);
/// The kept plug's id, or a new one: "probe-J9".
std::string housing_name(const Fitting&, const RehousingDraft&, int target);
/// Does the lead, seated at this place, need a new contact?
bool crimped_anew(const Fitting&, const RehousingDraft&, const DraftLead&, const DraftPlace&);

}  // namespace plugward
