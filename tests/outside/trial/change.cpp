// SPDX-License-Identifier: MIT
#include "outside/trial/change.h"

#include <algorithm>
#include <array>
#include <set>

#include "base/format.h"

namespace plugward::test {
namespace {

void for_each_node(XmlNode& node, const std::function<void(XmlNode&)>& visit) {
  visit(node);
  for (XmlNode& child : node.children) for_each_node(child, visit);
}

/// "J1" becomes "zJ1" or "aJ1", so that neighbours in the alphabet change sides.
std::string other_name(const std::string& id) {
  if (id.empty()) return id;
  return (id.back() % 2 == 0 ? "a" : "z") + id;
}

std::string other_names(const std::string& ids) {
  std::string out;
  std::size_t begin = 0;
  while (begin <= ids.size()) {
    const std::size_t end = std::min(ids.find(' ', begin), ids.size());
    out += (out.empty() ? "" : " ") + other_name(ids.substr(begin, end - begin));
    begin = end + 1;
  }
  return out;
}

void rename(XmlNode& node, const std::set<std::string>& hand_made) {
  const bool of_a_device = node.name == "device";
  for (auto& [key, value] : node.attributes) {
    if (node.name == "lead" && key == "to") {
      const std::size_t dot = value.find('.');
      const std::string device = value.substr(0, dot);
      const std::string terminal = value.substr(dot + 1);
      value = other_name(device) + "." + (hand_made.contains(device) ? other_name(terminal) : terminal);
    } else if (key == "id" || key == "rail" || key == "jumper" || key == "clamp" || key == "evidence") {
      value = other_name(value);
    } else if (key == "rails") {
      value = other_names(value);
    }
  }
  for (XmlNode& child : node.children) {
    rename(child, hand_made);
    if (!of_a_device) continue;
    for (auto& [key, value] : child.attributes) {
      static const std::set<std::string> ends{"a", "b", "plus", "minus", "terminal", "anode", "cathode"};
      if (ends.contains(key)) value = other_name(value);
    }
  }
}

/// A place in a tree: the way down from the root, child by child.
using Way = std::vector<std::size_t>;

XmlNode& at(XmlNode& root, const Way& way) {
  XmlNode* node = &root;
  for (const std::size_t step : way) node = &node->children[step];
  return *node;
}

void collect_ways(const XmlNode& node, Way& way, std::vector<Way>& out) {
  for (std::size_t i = 0; i < node.children.size(); ++i) {
    way.push_back(i);
    out.push_back(way);
    collect_ways(node.children[i], way, out);
    way.pop_back();
  }
}

/// Later places first, so that what was dropped does not move what comes next.
std::vector<Way> ways_of(const XmlNode& root) {
  std::vector<Way> out;
  Way way;
  collect_ways(root, way, out);
  std::reverse(out.begin(), out.end());
  return out;
}

using Tree = XmlNode RandomWorld::*;
constexpr std::array<Tree, 2> trees{&RandomWorld::board, &RandomWorld::harness};

class Shrinker {
 public:
  Shrinker(RandomWorld world, const std::function<bool(const RandomWorld&)>& fails)
      : world_(std::move(world)), fails_(fails) {}

  RandomWorld run() {
    for (bool smaller = true; smaller;) {
      smaller = false;
      for (const Tree tree : trees) smaller = drop_elements(tree) || smaller;
      for (const Tree tree : trees) smaller = drop_attributes(tree) || smaller;
      smaller = drop_entries(&RandomWorld::at) || smaller;
      smaller = drop_entries(&RandomWorld::jumpers) || smaller;
    }
    return std::move(world_);
  }

 private:
  bool take(RandomWorld candidate) {
    if (!fails_(candidate)) return false;
    world_ = std::move(candidate);
    return true;
  }

  bool drop_elements(Tree tree) {
    bool any = false;
    for (Way way : ways_of(world_.*tree)) {
      RandomWorld candidate = world_;
      const std::size_t last = way.back();
      way.pop_back();
      auto& children = at(candidate.*tree, way).children;
      children.erase(children.begin() + static_cast<std::ptrdiff_t>(last));
      any = take(std::move(candidate)) || any;
    }
    return any;
  }

  bool drop_attributes(Tree tree) {
    bool any = false;
    for (const Way& way : ways_of(world_.*tree)) {
      const auto attributes = at(world_.*tree, way).attributes;
      for (const auto& [key, value] : attributes) {
        RandomWorld candidate = world_;
        at(candidate.*tree, way).drop(key);
        any = take(std::move(candidate)) || any;
      }
    }
    return any;
  }

  bool drop_entries(std::map<std::string, std::string> RandomWorld::*entries) {
    bool any = false;
    const auto all = world_.*entries;
    for (const auto& [key, value] : all) {
      RandomWorld candidate = world_;
      (candidate.*entries).erase(key);
      any = take(std::move(candidate)) || any;
    }
    return any;
  }

  RandomWorld world_;
  const std::function<bool(const RandomWorld&)>& fails_;
};

}  // namespace

RandomWorld renamed(const RandomWorld& world) {
  RandomWorld other = world;
  std::set<std::string> hand_made;
  for (const XmlNode& node : world.harness.children) {
    if (node.name == "device") hand_made.insert(node.get("id"));
  }
  rename(other.board, {});
  int net = 0;
  for_each_node(other.board, [&](XmlNode& node) {
    if (node.name == "pin") node.set("net", format("N{}", ++net));
  });
  rename(other.harness, hand_made);
  other.at.clear();
  other.jumpers.clear();
  for (const auto& [plug, header] : world.at) other.at[other_name(plug)] = other_name(header);
  for (const auto& [jumper, rail] : world.jumpers) other.jumpers[other_name(jumper)] = other_name(rail);
  return other;
}

RandomWorld renumbered(const RandomWorld& world) {
  RandomWorld other = world;
  const auto find = [](XmlNode& root, const char* name, const std::string& id) -> XmlNode& {
    return *std::find_if(root.children.begin(), root.children.end(),
                         [&](const XmlNode& node) { return node.name == name && node.get("id") == id; });
  };
  for (const auto& [plug_id, header_id] : world.at) {
    XmlNode& plug = find(other.harness, "plug", plug_id);
    XmlNode& header = find(other.board, "header", header_id);
    const bool alike = plug.get("positions") == header.get("positions") &&
                       plug.get("rows") == header.get("rows") &&
                       plug.get("numbering") == header.get("numbering");
    if (!alike && (plug.has("rows") || header.has("rows"))) continue;  // cavity n is not on pin n
    const int met = std::min(std::stoi(plug.get("positions")), std::stoi(header.get("positions")));
    const auto count_again = [&](XmlNode& root, const char* key) {
      for (XmlNode& child : root.children) {
        const int n = child.has(key) ? std::stoi(child.get(key)) : 0;
        if (n >= 1 && n <= met) child.set(key, std::to_string(met + 1 - n));
      }
    };
    count_again(plug, "cavity");
    count_again(header, "n");
  }
  return other;
}

RandomWorld reordered(const RandomWorld& world) {
  RandomWorld other = world;
  const auto reverse = [](XmlNode& node) {
    // The first of two rival statements about a pin is the one that messages name.
    if (node.name == "header") return;
    std::reverse(node.children.begin(), node.children.end());
  };
  for_each_node(other.board, reverse);
  for_each_node(other.harness, reverse);
  return other;
}

RandomWorld with_bystanders(const RandomWorld& world) {
  RandomWorld other = world;
  XmlNode header("header", {{"id", "JX"},
                            {"use", "spare"},
                            {"family", "zh-1.50"},
                            {"positions", "2"},
                            {"x", "15 mm"},
                            {"y", "70 mm"}});
  header.children = {XmlNode("pin", {{"n", "1"}, {"function", "ground"}}),
                     XmlNode("pin", {{"n", "2"}, {"function", "unknown"}})};
  other.board.children.push_back(std::move(header));
  XmlNode plug("plug", {{"id", "px"}, {"family", "zh-1.50"}, {"positions", "2"}});
  plug.children = {XmlNode("lead", {{"cavity", "1"}, {"colour", "RD"}, {"to", "dx.V"}}),
                   XmlNode("lead", {{"cavity", "2"}, {"colour", "?"}, {"to", "dx.G"}})};
  other.harness.children.emplace_back(
      "fan", std::vector<XmlNode::Attribute>{{"id", "dx"}, {"needs", "20..28 V"}, {"draws", "0.1 A"}});
  other.harness.children.push_back(std::move(plug));
  return other;
}

RandomWorld with_a_fact_less(const RandomWorld& world, std::uint64_t seed) {
  RandomWorld other = world;
  std::vector<std::function<void()>> ways;
  const auto add = [&](XmlNode& node) {
    // Without one of its own it would have that of the whole file.
    if (node.has("evidence")) ways.emplace_back([&node] { node.set("evidence", "guess"); });
    if (node.name == "lead" && node.has("to")) ways.emplace_back([&node] { node.drop("to"); });
    if (node.name == "pin") {
      ways.emplace_back([&node] { node.attributes = {{"n", node.get("n")}, {"function", "unknown"}}; });
    }
  };
  for (const Tree tree : trees) {
    for_each_node(other.*tree, [&](XmlNode& node) {
      const auto rivals = [&](const XmlNode& child) {
        return std::count_if(node.children.begin(), node.children.end(), [&](const XmlNode& sibling) {
          return child.name == "pin" && sibling.get("n") == child.get("n");
        });
      };
      // Rival statements need the evidence that they rest on.
      for (XmlNode& child : node.children) {
        if (rivals(child) < 2) add(child);
      }
    });
  }
  for (const auto& [jumper, rail] : world.jumpers) {
    ways.emplace_back([&other, id = jumper] { other.jumpers.erase(id); });
  }
  Dice dice(seed);
  if (!ways.empty()) ways[dice.below(ways.size())]();
  return other;
}

RandomWorld shrunk(RandomWorld world, const std::function<bool(const RandomWorld&)>& fails) {
  return Shrinker(std::move(world), fails).run();
}

}  // namespace plugward::test
