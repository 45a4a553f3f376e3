// SPDX-License-Identifier: MIT
// What several JSON answers hold, so that it looks the same in all of them.
#pragma once

#include <string>
#include <vector>

#include "plan/repin.h"
#include "report/json.h"

namespace plugward {

Json array_of(const std::vector<std::string>& texts);

/// One entry an element, made by `make`.
template <class T, class Make>
Json list_of(const std::vector<T>& items, Make make) {
  Json list = Json::array();
  for (const T& item : items) list.push_back(make(item));
  return list;
}

Json measurement_json(const Measurement&);
Json settings_json(const std::vector<Setting>&);
/// {"colour", "mark", "terminal"}; null for no lead.
Json lead_json(const Harness&, const Lead*);
Json step_json(const Harness&, const Plug&, const Step&);
Json cure_json(const Cure&);

}  // namespace plugward
