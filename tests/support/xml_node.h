// SPDX-License-Identifier: MIT
// An XML element as a tree that tests build, change, cut down and print.
//
//   XmlNode rail("rail", {{"id", "5V"}, {"volts", "5 V"}});
//   to_text(rail) == "<rail id=\"5V\" volts=\"5 V\"/>\n"
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace plugward::test {

struct XmlNode {
  using Attribute = std::pair<std::string, std::string>;

  std::string name;
  std::vector<Attribute> attributes;
  std::vector<XmlNode> children;

  XmlNode() = default;
  explicit XmlNode(std::string n, std::vector<Attribute> a = {})
      : name(std::move(n)), attributes(std::move(a)) {}

  /// The value, or "" when the attribute is absent.
  std::string get(std::string_view key) const {
    const auto at = find(key);
    return at == attributes.end() ? "" : at->second;
  }
  bool has(std::string_view key) const { return find(key) != attributes.end(); }
  /// Adds the attribute or replaces its value.
  XmlNode& set(std::string_view key, std::string value) {
    const auto at = std::find_if(attributes.begin(), attributes.end(),
                                 [&](const Attribute& a) { return a.first == key; });
    if (at == attributes.end()) {
      attributes.emplace_back(std::string(key), std::move(value));
    } else {
      at->second = std::move(value);
    }
    return *this;
  }
  void drop(std::string_view key) {
    std::erase_if(attributes, [&](const Attribute& a) { return a.first == key; });
  }

 private:
  std::vector<Attribute>::const_iterator find(std::string_view key) const {
    return std::find_if(attributes.begin(), attributes.end(),
                        [&](const Attribute& a) { return a.first == key; });
  }
};

/// Values must need no escapes.
inline std::string to_text(const XmlNode& node, int depth = 0) {
  const std::string indent(static_cast<std::size_t>(2 * depth), ' ');
  std::string text = indent + "<" + node.name;
  for (const auto& [key, value] : node.attributes) text += " " + key + "=\"" + value + "\"";
  if (node.children.empty()) return text + "/>\n";
  text += ">\n";
  for (const XmlNode& child : node.children) text += to_text(child, depth + 1);
  return text + indent + "</" + node.name + ">\n";
}

}  // namespace plugward::test
