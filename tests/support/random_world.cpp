// SPDX-License-Identifier: MIT
#include "support/random_world.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "support/random_device.h"

namespace plugward::test {
namespace {

class HarnessMaker {
 public:
  HarnessMaker(Dice& dice, RandomWorld& world) : dice_(dice), world_(world) {
    for (const XmlNode& node : world.board.children) {
      if (node.name == "header") headers_.push_back(&node);
      if (node.name == "jumper") rails_of_jumper_[node.get("id")] = node.get("rails");
    }
    dice_.shuffle(headers_);
  }

  void run() {
    XmlNode& harness = world_.harness;
    harness = XmlNode("harness", {{"id", "h"}, {"title", "Random harness"}});
    if (!dice_.chance(1)) harness.set("evidence", dice_.chance(1) ? "guess" : "meter");
    harness.children = {XmlNode("evidence", {{"id", "meter"}, {"kind", "measurement"}}),
                        XmlNode("evidence", {{"id", "guess"}, {"kind", "assumption"}})};
    state_jumpers();
    const std::vector<std::size_t> how_many{1, 1, 1, 1, 1, 1, 2, 2, 3, 4};
    const std::size_t plugs = std::min(dice_.pick(how_many), headers_.size());
    while (plugs_.size() < plugs) add_plug();
    for (XmlNode& device : devices_) harness.children.push_back(std::move(device));
    for (XmlNode& plug : plugs_) harness.children.push_back(std::move(plug));
  }

 private:
  void state_jumpers() {
    for (const auto& [jumper, rails] : rails_of_jumper_) {
      if (dice_.chance(75)) world_.jumpers[jumper] = dice_.pick(split(rails));
    }
  }

  static std::vector<std::string> split(const std::string& words) {
    std::vector<std::string> out(1);
    for (const char c : words) {
      if (c == ' ')
        out.emplace_back();
      else
        out.back() += c;
    }
    return out;
  }

  /// "24", "12" ... of the rail that the header's supply pin has, mostly; "" when it has none.
  std::string volts_of(const XmlNode& header) {
    std::string rail;
    for (const XmlNode& pin : header.children) {
      if (pin.get("function") != "supply") continue;
      rail = pin.get("rail");
      if (rail.empty()) {
        const auto stated = world_.jumpers.find(pin.get("jumper"));
        rail = stated == world_.jumpers.end() ? split(rails_of_jumper_[pin.get("jumper")]).front()
                                              : stated->second;
      }
    }
    if (rail.empty() && !dice_.chance(10)) return "";
    if (rail.empty() || dice_.chance(8)) rail = dice_.pick<std::string>({"24V", "12V", "5V", "3V3"});
    return rail == "3V3" ? "3.3" : rail.substr(0, rail.size() - 1);
  }

  XmlNode lead(const std::string& device, const TerminalWish& wish, bool strong) {
    XmlNode node("lead",
                 {{"cavity", "0"},
                  {"colour", dice_.pick<std::string>({"RD", "BK", "WH", "YE", "GNYE", "BU", "BN", "?"})}});
    if (dice_.chance(88)) {
      node.set("gauge", strong
                            ? dice_.pick<std::string>({"18 AWG", "18 AWG", "20 AWG", "22 AWG"})
                            : dice_.pick<std::string>({"22 AWG", "24 AWG", "26 AWG", "28 AWG", "0.14 mm2"}));
    }
    if (dice_.chance(80)) node.set("length", dice_.pick<std::string>({"300 mm", "1000 mm"}));
    if (!dice_.chance(2)) node.set("to", device + "." + wish.id);
    if (dice_.chance(5)) node.set("mark", "x");
    return node;
  }

  /// The pin of the header that the wish would best meet and that is free; 0 when there is none.
  static int pin_for(const XmlNode& header, const TerminalWish& wish, const std::set<int>& taken) {
    for (const bool same_signal : {true, false}) {
      for (const std::string& function : wish.functions) {
        for (const XmlNode& pin : header.children) {
          if (pin.get("function") != function || taken.contains(std::stoi(pin.get("n")))) continue;
          if (!wish.coil.empty() && pin.get("coil") + pin.get("end") != wish.coil) continue;
          if (same_signal && !wish.signal.empty() && pin.get("signal") != wish.signal) continue;
          return std::stoi(pin.get("n"));
        }
      }
    }
    return 0;
  }

  struct Loose {
    XmlNode node;
    TerminalWish wish;
  };

  void seat(XmlNode& plug, const XmlNode& header, std::vector<Loose> leads) {
    const int positions = std::stoi(plug.get("positions"));
    std::set<int> taken;
    std::vector<int> cavity;
    for (const Loose& one : leads) {
      int at = pin_for(header, one.wish, taken);
      if (at == 0 || at > positions) {
        at = 1;
        while (taken.contains(at)) ++at;
      }
      taken.insert(at);
      cavity.push_back(at);
    }
    disturb(cavity, positions);
    for (std::size_t i = 0; i < leads.size(); ++i) {
      if (cavity[i] > positions) continue;
      leads[i].node.set("cavity", std::to_string(cavity[i]));
      plug.children.push_back(std::move(leads[i].node));
    }
  }

  void disturb(std::vector<int>& cavity, int positions) {
    std::vector<int> goal;
    for (int i = 1; i <= std::max(positions, *std::max_element(cavity.begin(), cavity.end())); ++i)
      goal.push_back(i);
    const std::size_t how = dice_.below(100);
    if (how < 40) return;
    if (how < 70 && goal.size() > 1) {
      const std::size_t a = dice_.below(goal.size());
      std::swap(goal[a], goal[(a + 1 + dice_.below(goal.size() - 1)) % goal.size()]);
    } else if (how < 82) {
      std::rotate(goal.begin(), goal.begin() + 1, goal.end());
    } else {
      dice_.shuffle(goal);
    }
    for (int& c : cavity) c = goal[static_cast<std::size_t>(c) - 1];
  }

  XmlNode plug_for(const XmlNode& header, std::size_t leads) {
    XmlNode plug("plug", {{"id", format("p{}", plugs_.size() + 1)}, {"family", header.get("family")}});
    std::size_t positions = static_cast<std::size_t>(std::stoi(header.get("positions")));
    bool same = true;
    if (dice_.chance(5)) {
      plug.set("family", dice_.pick<std::string>({"xh-2.50", "pin-2.54", "kk-2.54", "ph-2.00", "eh-2.50"}));
      same = plug.get("family") == header.get("family");
      positions = std::max<std::size_t>(positions, 2);
    }
    if (header.get("rows").empty() && dice_.chance(4)) positions += 1;
    if (header.get("family") == "m8" && plug.get("family") == "m8")
      positions = std::min<std::size_t>(positions, 5);
    if (leads > positions && header.get("rows").empty() && plug.get("family") != "m8") positions = leads;
    if (plug.get("family") == "vh-3.96") positions = std::min<std::size_t>(positions, 11);
    plug.set("positions", std::to_string(positions));
    if (same && header.has("rows")) {
      plug.set("rows", header.get("rows"));
      if (header.has("numbering") && dice_.chance(85)) plug.set("numbering", header.get("numbering"));
    }
    if (dice_.chance(5)) plug.set("key", dice_.pick<std::string>({"removed", "unknown"}));
    if (dice_.chance(4)) plug.set("evidence", dice_.pick<std::string>({"meter", "meter", "guess"}));
    return plug;
  }

  const XmlNode& next_header() {
    const XmlNode& header = *headers_[next_header_];
    ++next_header_;
    return header;
  }

  std::vector<Loose> leads_of(const RandomDevice& device) {
    std::vector<Loose> leads;
    const bool strong = device.node.name == "heater-element" || device.node.name == "motor";
    for (const TerminalWish& wish : device.wishes) {
      if (dice_.chance(2)) continue;  // not led out
      leads.push_back({lead(device.node.get("id"), wish, strong), wish});
    }
    return leads;
  }

  void add(XmlNode plug, const XmlNode& header, std::vector<Loose> leads) {
    seat(plug, header, std::move(leads));
    if (!dice_.chance(plugs_.empty() ? 0 : 5)) world_.at[plug.get("id")] = header.get("id");
    plugs_.push_back(std::move(plug));
  }

  void add_plug() {
    const XmlNode& header = next_header();
    std::string use = header.get("use");
    if (dice_.chance(4)) use = dice_.pick<std::string>({"limit", "fan", "led", "probe", "spare", "motor"});
    RandomDevice device = random_device(dice_, format("d{}", devices_.size() + 1), use, volts_of(header));
    std::vector<Loose> leads = leads_of(device);
    const auto positions = static_cast<std::size_t>(std::stoi(header.get("positions")));
    while (leads.size() > positions && !dice_.chance(10)) leads.pop_back();
    if (leads.empty())
      leads.push_back({lead(device.node.get("id"), device.wishes[0], false), device.wishes[0]});
    devices_.push_back(std::move(device.node));
    // One device in two plugs; two devices in one plug.
    if (leads.size() > 2 && next_header_ < headers_.size() && dice_.chance(15)) {
      const auto cut = static_cast<std::ptrdiff_t>(1 + dice_.below(leads.size() - 1));
      std::vector<Loose> rest(leads.begin() + cut, leads.end());
      leads.erase(leads.begin() + cut, leads.end());
      const XmlNode& other = next_header();
      add(plug_for(other, rest.size()), other, std::move(rest));
    } else if (std::stoi(header.get("positions")) >= static_cast<int>(leads.size()) + 2 && dice_.chance(20)) {
      RandomDevice second = random_device(dice_, format("d{}", devices_.size() + 1),
                                          dice_.pick<std::string>({use, use, "limit"}), volts_of(header));
      for (Loose& one : leads_of(second)) leads.push_back(std::move(one));
      devices_.push_back(std::move(second.node));
    }
    XmlNode plug = plug_for(header, leads.size());
    add(std::move(plug), header, std::move(leads));
  }

  Dice& dice_;
  RandomWorld& world_;
  std::vector<const XmlNode*> headers_;
  std::size_t next_header_ = 0;
  std::map<std::string, std::string> rails_of_jumper_;
  std::vector<XmlNode> devices_;
  std::vector<XmlNode> plugs_;
};

}  // namespace

void add_random_harness(Dice& dice, RandomWorld& world) {
  HarnessMaker(dice, world).run();
}

RandomWorld random_world(std::uint64_t seed) {
  Dice dice(seed);
  RandomWorld world;
  world.board = random_board(dice);
  add_random_harness(dice, world);
  return world;
}

std::string to_text(const RandomWorld& world) {
  std::string text = to_text(world.board) + to_text(world.harness);
  for (const auto& [plug, header] : world.at) text += format("--at {}={} ", plug, header);
  for (const auto& [jumper, rail] : world.jumpers) text += format("--jumper {}={} ", jumper, rail);
  return text + "\n";
}

}  // namespace plugward::test
