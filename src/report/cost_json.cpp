// SPDX-License-Identifier: MIT
// Tested in tests/cases (place-json, find-json).
#include "report/cost_json.h"

namespace plugward {

Json cost_json(const PlaceCost& cost) {
  Json json;
  json["unplaced"] = cost.unplaced;
  json["unknown"] = cost.unknown;
  json["parts"] = cost.parts;
  json["housings"] = cost.housings;
  json["moves"] = cost.moves;
  json["settings"] = cost.settings;
  json["distance_mm"] = number_or_null(cost.distance / 10.0);
  return json;
}

}  // namespace plugward
