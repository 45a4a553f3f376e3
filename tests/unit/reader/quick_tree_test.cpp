// SPDX-License-Identifier: MIT
#include "reader/quick_tree.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include "base/file.h"
#include "support/same_tree.h"

namespace plugward {
namespace {

using test::two_trees;
using test::TwoTrees;

std::vector<std::string> texts_in(const char* folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::recursive_directory_iterator(std::string(PLUGWARD_SOURCE_DIR) + folder)) {
    if (entry.path().extension() == ".xml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());  // a seed means the same everywhere
  std::vector<std::string> texts;
  for (const auto& path : files) texts.push_back(read_file(path.string()));
  return texts;
}

TEST_CASE("every shipped board and harness is plain, and read to the same tree") {
  for (const char* folder : {"/boards", "/harnesses"}) {
    const auto texts = texts_in(folder);
    CHECK(texts.size() >= 2);
    for (const std::string& text : texts) {
      CAPTURE(text.substr(0, 200));
      CHECK(two_trees(text) == TwoTrees::Same);
    }
  }
}

TEST_CASE("what is plain") {
  for (const char* text :
       {"<a/>", "<a></a>", "<a b=''/>", "<a b=\"'\" c='\"'/>", "<a\tb='1'\r\n c='2'\n/>", "<a b='>'/>",
        "<a b='12345678'/>", "<a b='1234567\xC3\xA4\xEF\xBC\x9C'/>",
        "\xEF\xBB\xBF<?xml version='1.0'?>\r\n<a/>\n", "<!----><a><!-- <b> - > --><b/><!--x--></a><!---->",
        "<!--> a comment --><a/>", "<A_.-:9 x:y='1'/>", "<a><b><c/></b><d x='1'></d></a>", "<a b='1' b='2'/>",
        "<a xmlns:xsi='http://www.w3.org/'/>"}) {
    CAPTURE(text);
    CHECK(two_trees(text) == TwoTrees::Same);
  }
}

TEST_CASE("whatever looks different is left to careful_tree()") {
  for (const char* text : {"",
                           " ",
                           "<!-- -->",
                           "x",
                           "<",
                           "<a",
                           "<a ",
                           "<a b",
                           "<a b=",
                           "<a b='",
                           "<a b='1",
                           "<a b='1'",
                           "<a b='1'/",
                           "<a>",
                           "<a></a",
                           "<a></b>",
                           "<a></a >",
                           "</a>",
                           "<a/></a>",
                           "<a/><b/>",
                           "<a/>x",
                           "<a>x</a>",
                           "< a/>",
                           "<a/ >",
                           "<a b ='1'/>",
                           "<a b= '1'/>",
                           "<a b=1/>",
                           "<a b='1'c='2'/>",
                           "<ab='1'/>",
                           "<a ='1'/>",
                           "<a b/>",
                           "<a b='<'/>",
                           "<a b='1234567<'/>",
                           "<a b='&lt;'/>",
                           "<a b='1234567&amp;'/>",
                           "<a b='1\n2'/>",
                           "<a b='1234567\t'/>",
                           "<a -b='1'/>",
                           "<1/>",
                           "<:a/>",
                           "<\xC3\xA4/>",
                           "<a \xC3\xA4='1'/>",
                           "<a><!-- -- --></a>",
                           "<a><!-- ---></a>",
                           "<a><!--->",
                           "<a><!-->",
                           "<a><![CDATA[]]></a>",
                           "<!DOCTYPE a><a/>",
                           "<?p i?><a/>",
                           "<?xml-p i?><a/>",
                           "<?xml>\n<?xml version='1.0'?><a/>",
                           " <?xml version='1.0'?><a/>"}) {
    CAPTURE(text);
    CHECK(two_trees(text) == TwoTrees::NotQuick);
  }
  ReaderLimits limits;
  limits.depth = 2;
  limits.entries = 3;
  CHECK(two_trees("<a><b/></a>", limits) == TwoTrees::Same);
  CHECK(two_trees("<a><b><c/></b></a>", limits) == TwoTrees::NotQuick);
  CHECK(two_trees("<a><b/><b/></a>", limits) == TwoTrees::Same);
  CHECK(two_trees("<a><b/><b/><b/></a>", limits) == TwoTrees::NotQuick);
}

TEST_CASE("what is read of spoilt descriptions is read to the same tree") {
  std::vector<std::string> texts;
  for (const char* folder : {"/boards", "/harnesses", "/tests/unit/reader", "/tests/fuzz/corpus/read"}) {
    for (std::string& text : texts_in(folder)) texts.push_back(std::move(text));
  }
  std::mt19937 random(20261125);  // the seed
  const auto below = [&](std::size_t bound) { return static_cast<std::size_t>(random()) % bound; };
  constexpr std::string_view bytes = "<<>>//\"\"''==--!!??&;:. \t\r\na1\xC3\xA4\x01";
  int same = 0;
  for (int i = 0; i < 40000; ++i) {
    std::string text = texts[below(texts.size())];
    // A piece of a file shows its faults sooner than the whole.
    if (below(2) == 0) text = text.substr(below(text.size() + 1), 1 + below(300));
    for (std::size_t changes = below(3); changes > 0 && !text.empty(); --changes) {
      const std::size_t at = below(text.size());
      switch (below(4)) {
        case 0:
          text[at] = bytes[below(bytes.size())];
          break;
        case 1:
          text.insert(at, 1, bytes[below(bytes.size())]);
          break;
        case 2:
          text.erase(at, 1 + below(3));
          break;
        default:
          text.insert(at, text.substr(below(text.size()), below(40)));
      }
    }
    CAPTURE(text);
    const TwoTrees trees = two_trees(text);
    REQUIRE(trees != TwoTrees::Different);
    if (trees == TwoTrees::Same) ++same;
  }
  CHECK(same > 4000);
}

}  // namespace
}  // namespace plugward
