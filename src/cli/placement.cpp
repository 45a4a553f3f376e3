// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/placement_test.cpp.
#include "cli/placement.h"

#include <algorithm>
#include <optional>
#include <set>

#include "base/edit_distance.h"
#include "base/format.h"

namespace plugward {
namespace {

/// Index of the entry with this id, or nothing.
template <class T>
std::optional<int> index_of(const std::vector<T>& list, const std::string& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const T& item) { return item.id == id; });
  if (found == list.end()) return std::nullopt;
  return static_cast<int>(found - list.begin());
}

template <class T>
std::string unknown(std::string_view owner, std::string_view what, const std::vector<T>& list,
                    const std::string& id) {
  std::vector<std::string> ids;
  ids.reserve(list.size());
  for (const T& item : list) ids.push_back(item.id);
  const std::string near = nearest(id, ids);
  const std::string hint =
      near.empty() ? format("it has {}", join(ids, ", ")) : format("did you mean '{}'?", near);
  return format("--at: {} has no {} '{}'; {}", owner, what, id, hint);
}

/// The uses of the devices that the plug's leads go to; of all devices when no lead says where it goes.
std::set<std::string> uses_of(const Harness& harness, const Plug& plug) {
  std::set<std::string> uses;
  for (const Lead& lead : plug.leads) {
    if (lead.to) uses.insert(harness.devices[static_cast<std::size_t>(lead.to->device)].use);
  }
  if (uses.empty()) {
    for (const Device& device : harness.devices) uses.insert(device.use);
  }
  return uses;
}

std::string header_list(const Board& board, const std::vector<int>& headers) {
  std::vector<std::string> names;
  for (const int index : headers) {
    const Header& header = board.headers[static_cast<std::size_t>(index)];
    names.push_back(header.label.empty() ? header.id : format("{} ({})", header.id, header.label));
  }
  return format("{}", join(names, ", "));
}

std::vector<int> free_headers(const Board& board, const Plug& plug, const std::set<int>& taken,
                              const std::set<std::string>* uses) {
  std::vector<int> found;
  for (std::size_t i = 0; i < board.headers.size(); ++i) {
    const Header& header = board.headers[i];
    if (header.positions != plug.positions || taken.count(static_cast<int>(i)) > 0) continue;
    if (uses != nullptr && uses->count(header.use) == 0) continue;
    found.push_back(static_cast<int>(i));
  }
  return found;
}

class Chooser {
 public:
  Chooser(const Board& board, const Harness& harness)
      : board_(board), harness_(harness), header_of_(harness.plugs.size()) {}

  bool state(const NamedValue& at) {
    const auto plug = index_of(harness_.plugs, at.name);
    const auto header = index_of(board_.headers, at.value);
    if (!plug) return fail(unknown(format("harness '{}'", harness_.id), "plug", harness_.plugs, at.name));
    if (!header) return fail(unknown(format("board '{}'", board_.id), "header", board_.headers, at.value));
    auto& place = header_of_[static_cast<std::size_t>(*plug)];
    if (place) return fail(format("'--at' names plug '{}' twice", at.name));
    if (!taken_.insert(*header).second) return fail(format("'--at' puts two plugs on header '{}'", at.value));
    place = *header;
    return true;
  }

  /// Places the plugs that were not stated.
  bool choose() {
    const std::set<int> stated = taken_;
    for (std::size_t i = 0; i < header_of_.size(); ++i) {
      if (header_of_[i]) continue;
      const Plug& plug = harness_.plugs[i];
      const std::set<std::string> uses = uses_of(harness_, plug);
      const std::vector<int> candidates = free_headers(board_, plug, stated, &uses);
      if (candidates.empty()) {
        choice_.notes.push_back(no_header(plug, uses));
      } else if (candidates.size() > 1) {
        return fail(format("plug '{}' may go on {}: say which with --at {}=HEADER; 'plugward place' ranks them", plug.id,
                           header_list(board_, candidates), plug.id));
      } else if (!taken_.insert(candidates.front()).second) {
        return fail(format("two plugs, one of them '{}', may go on {}: say which with --at {}=HEADER; 'plugward place' "
                           "ranks them",
                           plug.id, header_list(board_, candidates), plug.id));
      } else {
        header_of_[i] = candidates.front();
      }
    }
    return true;
  }

  PlacementChoice stated_result() {
    collect();
    return std::move(choice_);
  }

  PlacementChoice result() {
    collect();
    if (choice_.error.empty() && choice_.placements.empty()) {
      fail(choice_.notes.empty() ? format("harness '{}' has no plug", harness_.id)
                                 : choice_.notes.front() + ", and there is no other plug to judge");
    }
    return std::move(choice_);
  }

 private:
  void collect() {
    for (std::size_t i = 0; i < header_of_.size(); ++i) {
      if (header_of_[i]) choice_.placements.push_back({static_cast<int>(i), *header_of_[i]});
    }
  }

  std::string no_header(const Plug& plug, const std::set<std::string>& uses) const {
    const std::string what =
        format("plug '{}' is on no header: board '{}' has no free header with {} position{} and use '{}'",
               plug.id, board_.id, plug.positions, plug.positions == 1 ? "" : "s", join(uses, "' or '"));
    const std::vector<int> others = free_headers(board_, plug, taken_, nullptr);
    if (others.empty()) return format("{}; --at {}=HEADER places it anyway", what, plug.id);
    return format("{}; --at {}=HEADER places it, for example on {}", what, plug.id,
                  header_list(board_, others));
  }

  bool fail(std::string message) {
    choice_.error = std::move(message);
    return false;
  }

  const Board& board_;
  const Harness& harness_;
  std::vector<std::optional<int>> header_of_;
  std::set<int> taken_;
  PlacementChoice choice_;
};

}  // namespace

PlacementChoice stated_placements(const Board& board, const Harness& harness,
                                  const std::vector<NamedValue>& at) {
  Chooser chooser(board, harness);
  for (const NamedValue& one : at) {
    if (!chooser.state(one)) break;
  }
  return chooser.stated_result();
}

PlacementChoice choose_placements(const Board& board, const Harness& harness,
                                  const std::vector<NamedValue>& at) {
  Chooser chooser(board, harness);
  const bool stated =
      std::all_of(at.begin(), at.end(), [&](const NamedValue& one) { return chooser.state(one); });
  if (stated) chooser.choose();
  return chooser.result();
}

}  // namespace plugward
