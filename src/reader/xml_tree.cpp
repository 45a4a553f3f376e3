// SPDX-License-Identifier: MIT
// The only file that names pugixml. It is fast and forgiving; we need positions and strictness.
//
// Positions: the original text stays as it is and a copy is parsed in place, so a name or value that pugixml
// hands out is a pointer into the copy, and its distance from the copy's begin is its offset in the original.
// That holds only while the encoding is forced to UTF-8; otherwise another buffer would be made.
//
// Strictness: pugixml accepts doubled attributes, several roots, unknown references, '<' in values, '--' in
// comments, an XML declaration anywhere, any depth. All node kinds are therefore kept, and one walk over them
// checks each against the original bytes. Cost: linear; two vectors. Plain files never come here:
// quick_tree() has read them. Alternative not taken: a parser of our own for the rest too, which would have
// to be proved against XML from scratch. Tested in tests/unit/reader/tree_test.cpp and, against xmllint, in
// tests/outside/schema_test.py.
#include "reader/xml_tree.h"

#include <algorithm>
#include <cstring>
#include <pugixml.hpp>
#include <string>
#include <utility>

#include "base/edit_distance.h"
#include "base/format.h"
#include "reader/quick_tree.h"
#include "reader/tag_trail.h"
#include "reader/text_check.h"

namespace plugward {
namespace {

constexpr unsigned parse_options = pugi::parse_full | pugi::parse_fragment;

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

std::uint32_t narrow(std::size_t offset) {
  return static_cast<std::uint32_t>(offset);
}

}  // namespace

class TreeBuilder {
 public:
  TreeBuilder(const Sources& sources, FileId file, const ReaderLimits& limits, Diagnostics& diagnostics)
      : text_(sources.file(file).text), file_(file), limits_(limits), diagnostics_(diagnostics) {}

  std::optional<XmlTree> build(std::size_t body) {
    body_ = body;
    tree_.file_ = file_;
    tree_.copy_ = std::make_unique_for_overwrite<char[]>(text_.size() + 1);
    copy_ = tree_.copy_.get();
    std::memcpy(copy_, text_.data(), text_.size());
    copy_[text_.size()] = ' ';  // pugixml overwrites the last character, and would lose it as text
    references_ = text_.find('&') != text_.npos;
    pugi::xml_document document;
    // The mark itself is skipped: pugixml would hand it out as text.
    const auto result = document.load_buffer_inplace(copy_ + body, text_.size() + 1 - body, parse_options,
                                                     pugi::encoding_utf8);
    if (!result) {
      tell_parse_error(result.status, body + static_cast<std::size_t>(result.offset));
      return std::nullopt;
    }
    tree_.nodes_.reserve(text_.size() / 48 + 4);
    tree_.attributes_.reserve(text_.size() / 12 + 4);
    if (!walk(document)) return std::nullopt;
    if (tree_.nodes_.empty()) {
      fault(Rule::NotWellFormed, body, body, "the file holds no element")
          .help("its root is 'board', 'harness' or 'families'");
      return std::nullopt;
    }
    return std::move(tree_);
  }

 private:
  Diagnostic& fault(Rule rule, std::size_t begin, std::size_t end, std::string message) {
    return diagnostics_.add(rule, {file_, narrow(begin), narrow(end)}, std::move(message));
  }
  std::size_t offset(const char* pointer) const { return static_cast<std::size_t>(pointer - copy_); }

  /// All nodes in the order of the file, without recursion. False when the file is given up.
  bool walk(const pugi::xml_node& document) {
    pugi::xml_node node = document.first_child();
    std::vector<XmlTree::Index> open;  // indexes of the elements that hold `node`
    while (node) {
      if (!visit(node, open)) return false;
      const bool element = node.type() == pugi::node_element;
      if (element && !skipped_) {
        if (static_cast<int>(open.size()) >= limits_.depth) {
          fault(Rule::TooLarge, last().begin + 1, last().begin + 1 + last().name.size(),
                format("elements stand more than {} deep inside one another", limits_.depth));
          return false;
        }
        if (const pugi::xml_node child = node.first_child()) {
          open.push_back(narrow(tree_.nodes_.size() - 1));
          node = child;
          continue;
        }
        last().after = narrow(tree_.nodes_.size());
      }
      while (node && !node.next_sibling()) {
        node = node.parent();
        if (open.empty()) return true;
        tree_.nodes_[open.back()].after = narrow(tree_.nodes_.size());
        open.pop_back();
      }
      node = node.next_sibling();
    }
    return true;
  }

  XmlNode& last() { return tree_.nodes_.back(); }

  bool visit(const pugi::xml_node& node, const std::vector<XmlTree::Index>& open) {
    skipped_ = false;
    switch (node.type()) {
      case pugi::node_element:
        return element(node, open.empty());
      case pugi::node_pcdata:
      case pugi::node_cdata:
        return stray_text(node, open.empty());
      case pugi::node_comment:
        return comment(offset(node.value()));
      case pugi::node_declaration:
        return declaration(offset(node.name()) - 2);
      case pugi::node_pi:
        return instruction(node);
      case pugi::node_doctype: {
        const std::size_t at = offset(node.value());
        const std::size_t begin = text_.rfind("<!DOCTYPE", at);
        tell_doctype(begin == text_.npos ? at : begin);
        return false;
      }
      case pugi::node_null:
      case pugi::node_document:
        break;
    }
    return true;
  }

  bool element(const pugi::xml_node& node, bool outermost) {
    const std::string_view name = node.name();
    const std::size_t at = offset(node.name());
    if (outermost && !tree_.nodes_.empty()) {
      fault(Rule::WrongRoot, at, at + name.size(), format("a second root element '{}'", name))
          .note(tree_.name_span(tree_.nodes_[0]), "the first is here")
          .help("put it into the first, or into a file of its own");
      skipped_ = true;
      return true;
    }
    if (static_cast<int>(tree_.nodes_.size()) >= limits_.entries) {
      fault(Rule::TooLarge, at, at + name.size(),
            format("the file has more than {} elements", limits_.entries));
      return false;
    }
    XmlNode made;
    made.name = name;
    made.begin = narrow(at - 1);
    made.first_attribute = narrow(tree_.attributes_.size());
    std::size_t end = at + name.size();
    for (const pugi::xml_attribute& it : node.attributes()) {
      const std::size_t value_at = offset(it.value());
      const std::size_t value_end = check_value(value_at);
      if (value_end == text_.npos) return false;
      tree_.attributes_.push_back(
          {it.name(), it.value(), narrow(offset(it.name())), narrow(value_at), narrow(value_end)});
      end = value_end + 1;
    }
    while (end < text_.size() && text_[end] != '>') ++end;
    made.end = narrow(std::min(end + 1, text_.size()));
    made.attributes = narrow(tree_.attributes_.size()) - made.first_attribute;
    tree_.nodes_.push_back(made);
    return true;
  }

  /// The offset of the closing quote; npos (and a diagnostic) when the value is not well-formed.
  std::size_t check_value(std::size_t begin) {
    std::size_t end = begin;
    while (text_[end] != text_[begin - 1] && text_[end] != '<') ++end;
    if (text_[end] == '<') {
      fault(Rule::NotWellFormed, end, end + 1, "'<' inside a value")
          .help("write '&lt;', or end the value with its quote before this place");
      return text_.npos;
    }
    if (references_) {
      if (auto bad = check_references(text_.substr(begin, end - begin))) {
        fault(Rule::NotWellFormed, begin + bad->begin, begin + bad->end, std::move(bad->message))
            .help(std::move(bad->help));
        return text_.npos;
      }
    }
    return end;
  }

  bool stray_text(const pugi::xml_node& node, bool outermost) {
    const bool cdata = node.type() == pugi::node_cdata;
    std::size_t begin = offset(node.value());
    std::size_t end = 0;
    if (cdata) {
      end = text_.find("]]>", begin) + 3;
      begin -= 9;  // <![CDATA[
    } else {
      while (begin < text_.size() && is_blank(text_[begin])) ++begin;
      end = std::min(text_.find('<', begin), text_.size());
      while (end > begin && is_blank(text_[end - 1])) --end;
    }
    if (outermost) {
      fault(Rule::StrayText, begin, end, "text outside the root element")
          .help("delete it, or make it a comment: <!-- ... -->");
      return true;
    }
    XmlNode made;
    made.begin = narrow(begin);
    made.end = narrow(end);
    made.first_attribute = narrow(tree_.attributes_.size());
    made.after = narrow(tree_.nodes_.size() + 1);
    tree_.nodes_.push_back(made);
    return true;
  }

  bool comment(std::size_t begin) {
    const std::size_t dashes = text_.find("--", begin);
    if (dashes == text_.npos || text_.substr(dashes).starts_with("-->")) return true;
    fault(Rule::NotWellFormed, dashes, dashes + 2, "'--' inside a comment")
        .help("write '- -', or end the comment with '-->'");
    return false;
  }

  bool declaration(std::size_t begin) {
    // check_text() has read the declaration that begins the file.
    if (begin == body_ && text_.substr(begin).starts_with("<?xml")) return true;
    fault(Rule::NotWellFormed, begin, begin + 5, "the XML declaration does not begin the file")
        .help("move it to the very beginning, or delete it");
    return false;
  }

  bool instruction(const pugi::xml_node& node) {
    const std::string_view target = node.name();
    const std::size_t at = offset(node.name());
    for (const char c : target) {
      if (static_cast<signed char>(c) > 0 && c != ':') continue;
      fault(Rule::NotWellFormed, at, at + target.size(),
            format("bad name '{}' of a processing instruction", target))
          .help("delete the instruction; plugward reads none");
      return false;
    }
    return true;
  }

  void tell_doctype(std::size_t begin) {
    fault(Rule::DocumentType, begin, std::min(begin + 9, text_.size()), "a document type declaration")
        .help("delete it; the schemas beside the data take its place");
  }

  void tell_parse_error(pugi::xml_parse_status status, std::size_t at) {
    at = std::min(at, text_.size());
    const std::size_t to = std::min(at + 1, text_.size());
    const auto bad = [&](std::string message) -> Diagnostic& {
      return fault(Rule::NotWellFormed, at, to, std::move(message));
    };
    switch (status) {
      case pugi::status_bad_doctype:
        return tell_doctype(text_.rfind("<!", at) == text_.npos ? at : text_.rfind("<!", at));
      case pugi::status_end_element_mismatch:
        return tell_mismatch(at);
      case pugi::status_no_document_element:
        bad("the file holds no element");
        return;
      case pugi::status_bad_pi:
        return tell_unended("<?", "?>", "instruction", at);
      case pugi::status_bad_comment:
        return tell_unended("<!--", "-->", "comment", at);
      case pugi::status_bad_cdata:
        return tell_unended("<![CDATA[", "]]>", "CDATA section", at);
      case pugi::status_bad_attribute:
        bad("an attribute is not written as name=\"value\"")
            .help("look for a missing quote, '=' or blank just before this place");
        return;
      case pugi::status_bad_start_element:
        bad("the start tag is broken here").help("a tag ends with '>' or '/>'");
        return;
      case pugi::status_bad_end_element:
        bad("the end tag is broken here").help("an end tag is '</', the name, '>'");
        return;
      default:
        bad("'<' does not begin a tag here").help("write '&lt;' for the sign itself");
        return;
    }
  }

  void tell_unended(std::string_view opening, std::string_view closing, std::string_view what,
                    std::size_t at) {
    const std::size_t begin = text_.rfind(opening, at);
    if (begin != text_.npos) at = begin;
    fault(Rule::NotWellFormed, at, std::min(at + opening.size(), text_.size()),
          format("the {} is broken or does not end with '{}'", what, closing));
  }

  /// An end tag that fits no open element, or the end of the file with elements open.
  void tell_mismatch(std::size_t at) {
    const std::size_t tag = at >= text_.size() ? text_.npos : text_.rfind("</", at);
    const bool ended = tag == text_.npos || text_.find_first_of("<>", tag + 1) < at;
    const std::vector<OpenTag> open = open_tags(text_, ended ? text_.size() : tag);
    const std::size_t stop = ended ? at : std::min(text_.find_first_of(" \t\r\n<>", tag + 2), text_.size());
    const std::string_view closing = ended ? "" : text_.substr(tag + 2, stop - tag - 2);
    if (open.empty()) {
      const std::size_t begin = ended ? std::min(at, text_.size()) : tag + 2;
      fault(Rule::NotWellFormed, begin, stop, format("the end tag '</{}>' has no start tag", closing))
          .help("delete it");
      return;
    }
    const OpenTag& inner = open.back();
    const Span opened{file_, narrow(inner.at), narrow(inner.at + inner.name.size())};
    if (ended) {
      diagnostics_.add(Rule::NotWellFormed, opened, format("'{}' is never closed", inner.name))
          .help(format("write '</{}>' behind its last child, or '/>' at the end of its tag", inner.name));
      return;
    }
    const bool opened_outside = std::any_of(
        open.begin(), open.end(), [&](const OpenTag& tag_open) { return tag_open.name == closing; });
    const bool misspelt = edit_distance(closing, inner.name) <= 3;
    if (!opened_outside && !misspelt) {
      fault(Rule::NotWellFormed, tag + 2, stop, format("the end tag '</{}>' has no start tag", closing))
          .note(opened, format("the innermost open element is '{}'", inner.name))
          .help("delete it, or write the start tag that it belongs to");
      return;
    }
    fault(Rule::NotWellFormed, tag + 2, stop,
          format("'</{}>' stands where '</{}>' must", closing, inner.name))
        .note(opened, format("'{}' is opened here", inner.name))
        .help(opened_outside ? format("close '{}' first, or write '/>' at the end of its tag", inner.name)
                             : format("did you mean '</{}>'?", inner.name));
  }

  std::string_view text_;
  FileId file_;
  const ReaderLimits& limits_;
  Diagnostics& diagnostics_;
  XmlTree tree_;
  char* copy_ = nullptr;
  std::size_t body_ = 0;
  bool references_ = false;  ///< there is a '&' somewhere
  bool skipped_ = false;     ///< the element just visited is left out of the tree
};

std::optional<XmlTree> read_tree(const Sources& sources, FileId file, const ReaderLimits& limits,
                                 Diagnostics& diagnostics) {
  const std::optional<std::size_t> body = check_text(sources, file, limits, diagnostics);
  if (!body) return std::nullopt;
  if (auto tree = quick_tree(sources, file, *body, limits)) return tree;
  return careful_tree(sources, file, *body, limits, diagnostics);
}

std::optional<XmlTree> careful_tree(const Sources& sources, FileId file, std::size_t body,
                                    const ReaderLimits& limits, Diagnostics& diagnostics) {
  return TreeBuilder(sources, file, limits, diagnostics).build(body);
}

}  // namespace plugward
