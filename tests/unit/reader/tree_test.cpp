// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/format.h"
#include "reader/tag_trail.h"
#include "reader/text_check.h"
#include "reader/xml_tree.h"

namespace plugward {
namespace {

struct Parsed {
  Sources sources;
  Diagnostics diagnostics;
  std::optional<XmlTree> tree;

  explicit Parsed(std::string text, const ReaderLimits& limits = {}) {
    const FileId file = sources.add("t.xml", std::move(text));
    tree = read_tree(sources, file, limits, diagnostics);
  }
};

TEST_CASE(
    "names and values know their bytes in the file, behind references, line ends and a byte-order mark") {
  const Parsed parsed(
      "\xEF\xBB\xBF<?xml version=\"1.0\" encoding='utf-8' ?>\r\n<a  b = \"x&amp;y\" \xC3\xA4='1\r\n2'>\r\n"
      "  <!-- c --><?p i?><c d=\"\"/>\r\n  t &lt; u \r\n</a>\r\n<!-- end -->");
  REQUIRE(parsed.tree);
  const XmlTree& tree = *parsed.tree;
  REQUIRE(tree.size() == 3);
  const auto text_of = [&](Span span) { return parsed.sources.text(span); };
  CHECK(text_of(tree.name_span(tree.node(0))) == "a");
  const auto attributes = tree.attributes(tree.node(0));
  REQUIRE(attributes.size() == 2);
  CHECK(attributes[0].value == "x&y");
  CHECK(text_of(tree.value_span(attributes[0])) == "x&amp;y");
  CHECK(text_of(tree.name_span(attributes[1])) == "\xC3\xA4");
  CHECK(attributes[1].value == "1 2");
  CHECK(text_of(tree.value_span(attributes[1])) == "1\r\n2");
  CHECK(text_of(tree.span(tree.node(1))) == "<c d=\"\"/>");
  CHECK(text_of(tree.value_span(tree.attributes(tree.node(1))[0])) == "");
  CHECK(tree.node(2).is_text());
  CHECK(text_of(tree.span(tree.node(2))) == "t &lt; u");
}

TEST_CASE("children are walked without their own children") {
  const Parsed parsed("<r><a><b/><b/></a><c><d><e/></d></c><f/></r>");
  REQUIRE(parsed.tree);
  const auto names = [&](XmlTree::Index parent) {
    std::string text;
    for (const XmlTree::Index child : parsed.tree->children(parent)) text += parsed.tree->node(child).name;
    return text;
  };
  CHECK(names(0) == "acf");
  CHECK(names(1) == "bb");
  CHECK(names(2) == "");
  CHECK(names(4) == "d");
}

TEST_CASE("what pugixml takes and XML does not is refused") {
  struct Row {
    const char* name;
    std::string text;
    const char* message;
    std::uint32_t begin;
  };
  const Row rows[] = {
      {"text of one letter at the end", "<a/>x", "text outside the root element", 4},
      {"two roots", "<a/><b/>", "a second root element 'b'", 5},
      {"unknown entity", "<a b='&nbsp;'/>", "unknown reference '&nbsp;'", 6},
      {"lonely ampersand", "<a b='x & y'/>", "'&' begins a reference that has no end", 8},
      {"zero character", "<a b='&#0;'/>", "'&#0;' is no character", 6},
      {"surrogate", "<a b='&#xD800;'/>", "'&#xD800;' is no character", 6},
      {"beyond Unicode", "<a b='&#x110000;'/>", "'&#x110000;' is no character", 6},
      {"capital X", "<a b='&#X41;'/>", "'&#X41;' is no character", 6},
      {"less in a value, short", "<a b='<'/>", "'<' inside a value", 6},
      {"less in a value, long", "<a b='123456789 123456789<'/>", "'<' inside a value", 25},
      {"dashes in a comment", "<a><!-- -- --></a>", "'--' inside a comment", 8},
      {"comment that ends with three dashes", "<a><!-- ---></a>", "'--' inside a comment", 8},
      {"late declaration", " <?xml version='1.0'?><a/>", "the XML declaration does not begin the file", 1},
      {"declaration in capitals", "<?XML version='1.0'?><a/>", "the XML declaration does not begin the file",
       0},
      {"empty declaration", "<?xml?><a/>", "the XML declaration must begin with version=\"1.0\"", 5},
      {"namespace in an instruction", "<?a:b c?><a/>", "bad name 'a:b' of a processing instruction", 2},
      {"control character", "<a b='\x1F'/>", "control character U+001F", 6},
      {"no element", "<!-- -->", "the file holds no element", 0},
      {"no end", "<a", "the start tag is broken here", 2},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Parsed parsed(row.text);
    REQUIRE(parsed.diagnostics.all().size() == 1);
    CHECK(parsed.diagnostics.all()[0].message == row.message);
    CHECK(parsed.diagnostics.all()[0].span.begin == row.begin);
  }
}

TEST_CASE("limits hold") {
  const auto first_message = [](const Parsed& parsed) {
    return parsed.diagnostics.all().empty() ? std::string() : parsed.diagnostics.all()[0].message;
  };
  const auto nested = [](int depth) {
    std::string text;
    for (int i = 0; i < depth; ++i) text += "<a>";
    for (int i = 0; i < depth; ++i) text += "</a>";
    return text;
  };
  CHECK(first_message(Parsed(nested(32))) == "");
  CHECK(first_message(Parsed(nested(33))) == "elements stand more than 32 deep inside one another");
  CHECK(first_message(Parsed(nested(200000))) == "elements stand more than 32 deep inside one another");
  ReaderLimits limits;
  limits.entries = 3;
  CHECK(first_message(Parsed("<a><b/><b/></a>", limits)) == "");
  CHECK(first_message(Parsed("<a><b/><b/><b/></a>", limits)) == "the file has more than 3 elements");
  limits.bytes = 4;
  CHECK(first_message(Parsed("<a/>", limits)) == "");
  CHECK(first_message(Parsed("<ab/>", limits)) == "the file has 5 bytes; at most 4 are read");
}

TEST_CASE("every reference that XML knows is taken") {
  for (const char* fine :
       {"", "plain", "&lt;&gt;&amp;&quot;&apos;", "&#65;", "&#x41;", "&#xE000;", "&#1114111;", "&#0065;"}) {
    CAPTURE(fine);
    CHECK_FALSE(check_references(fine));
  }
}

TEST_CASE("the open tags of a broken text") {
  const auto trail = [](std::string_view text) {
    std::string names;
    for (const OpenTag& tag : open_tags(text, text.size())) names += format("{}@{} ", tag.name, tag.at);
    return names;
  };
  CHECK(trail("<a><b x='>'><c/></b><d>") == "a@1 d@21 ");
  CHECK(trail("<a><!-- <b> --><?p <c>?><![CDATA[<d>]]>") == "a@1 ");
  CHECK(trail("</x><a><b") == "a@5 ");
  CHECK(trail("") == "");
}

}  // namespace
}  // namespace plugward
