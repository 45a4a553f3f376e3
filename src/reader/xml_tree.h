// SPDX-License-Identifier: MIT
// A file as a strict XML tree in which every name and value knows its bytes in the file. No meaning yet.
//
//   if (const auto tree = read_tree(sources, id, limits, diagnostics)) {
//     for (XmlTree::Index child : tree->children(0)) use(tree->node(child).name);
//   }
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "diag/diagnostic.h"
#include "diag/source.h"
#include "reader/limits.h"

namespace plugward {

struct XmlAttribute {
  std::string_view name;
  std::string_view value;      ///< references resolved
  std::uint32_t name_at = 0;   ///< offset of the name in the file
  std::uint32_t value_at = 0;  ///< the value as written, without its quotes: [value_at, value_end)
  std::uint32_t value_end = 0;
};

/// An element, or text where only elements may stand (its name is "").
struct XmlNode {
  std::string_view name;
  std::uint32_t begin = 0;  ///< the start tag from '<' to behind '>', or the text
  std::uint32_t end = 0;
  std::uint32_t first_attribute = 0;
  std::uint32_t attributes = 0;
  std::uint32_t after = 0;  ///< index of the first node that is not inside this one

  bool is_text() const { return name.empty(); }
};

/// Nodes in the order of the file; node 0 is the root. The views live as long as the tree and the text that
/// it was read from.
class XmlTree {
 public:
  using Index = std::uint32_t;

  /// Walks the children of one node: `for (Index child : tree.children(parent))`.
  class Children {
   public:
    struct Iterator {
      const XmlTree* tree;
      Index at;
      Index operator*() const { return at; }
      Iterator& operator++() {
        at = tree->nodes_[at].after;
        return *this;
      }
      bool operator!=(const Iterator& other) const { return at != other.at; }
    };
    Children(const XmlTree& tree, Index parent) : tree_(&tree), parent_(parent) {}
    Iterator begin() const { return {tree_, parent_ + 1}; }
    Iterator end() const { return {tree_, tree_->nodes_[parent_].after}; }

   private:
    const XmlTree* tree_;
    Index parent_;
  };

  FileId file() const { return file_; }
  const XmlNode& node(Index index) const { return nodes_[index]; }
  std::size_t size() const { return nodes_.size(); }
  Children children(Index parent) const { return {*this, parent}; }
  std::span<const XmlAttribute> attributes(const XmlNode& node) const {
    return std::span(attributes_).subspan(node.first_attribute, node.attributes);
  }

  Span span(const XmlNode& node) const { return {file_, node.begin, node.end}; }
  Span name_span(const XmlNode& node) const {
    if (node.is_text()) return span(node);
    return {file_, node.begin + 1, node.begin + 1 + static_cast<std::uint32_t>(node.name.size())};
  }
  Span name_span(const XmlAttribute& attribute) const {
    return {file_, attribute.name_at, attribute.name_at + static_cast<std::uint32_t>(attribute.name.size())};
  }
  Span value_span(const XmlAttribute& attribute) const {
    return {file_, attribute.value_at, attribute.value_end};
  }

 private:
  friend class TreeBuilder;
  friend class QuickTree;
  FileId file_ = 0;
  std::unique_ptr<char[]> copy_;  ///< what the views look at; none when that is the text in Sources
  std::vector<XmlNode> nodes_;
  std::vector<XmlAttribute> attributes_;
};

/// Nothing when the text cannot be read as XML; then exactly one diagnostic says why, at the best place.
/// A second root and text outside the root are reported and left out of the tree. Doubled attributes stay in
/// it for the reader of the element to report.
std::optional<XmlTree> read_tree(const Sources&, FileId, const ReaderLimits&, Diagnostics&);

/// The same without the short way of quick_tree(), for what that does not read. `body`: where the document
/// begins. REQUIRES: check_text() has found nothing in the text.
std::optional<XmlTree> careful_tree(const Sources&, FileId, std::size_t body, const ReaderLimits&,
                                    Diagnostics&);

}  // namespace plugward
