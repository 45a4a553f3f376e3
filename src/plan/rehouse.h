// SPDX-License-Identifier: MIT
// Other housings for the same leads: one plug split over two headers, or two plugs joined into one.
//
//   if (auto r = rehouse(fitting, {0}, {8, 9})) ...       // plug 0 split over headers 8 and 9
//   if (auto r = rehouse(fitting, {0, 1}, {4})) ...       // plugs 0 and 1 joined on header 4
//   r->steps, r->parts, r->harness                        // judged: nothing is left against it
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/repin.h"

namespace plugward {

struct Rehousing {
  std::vector<int> plugs;             ///< of the harness as it is, that are given up or cut down
  std::vector<int> headers;           ///< that the new plugs sit on
  int housings = 0;                   ///< new ones
  int moves = 0;                      ///< contacts that go to another housing or another cavity
  int crimps = 0;                     ///< of these: with a new contact, because the families differ
  int settings = 0;                   ///< motors that then run the other way round
  Harness harness;                    ///< as it will be
  std::vector<Placement> placements;  ///< of that harness: the new plugs, and those that were placed already
  Assessment after;                   ///< judged: clean
  std::string summary;                ///< "split 'probe' over J9 (PROBE) and J10 (TRIGGER): ..."
  std::vector<std::string> parts;     ///< housings and contacts to buy
  std::vector<std::string> cautions;
  std::vector<std::string> steps;
  std::vector<std::string> checks;
};

/// The cheapest way to bring all leads of `plugs` onto `headers`, in housings that fit them; one that fits
/// already is kept. Nothing when no order of the leads is clean, when a lead's far end is not known, when the
/// conductors cannot be moved one by one, or when the contacts of the new housing do not take a lead. Plugs
/// placed by the fitting stay, those in `plugs` excepted. REQUIRES: one plug and two headers, or two plugs
/// and one header; the headers are free.
std::optional<Rehousing> rehouse(const Fitting&, const std::vector<int>& plugs,
                                 const std::vector<int>& headers);

/// The cheapest split of the plug over any two free headers: fewest new housings, then contacts moved.
std::optional<Rehousing> best_split(const Fitting&, int plug);

/// The cheapest joining of two plugs on any one free header.
std::optional<Rehousing> best_join(const Fitting&, int plug, int other);

}  // namespace plugward
