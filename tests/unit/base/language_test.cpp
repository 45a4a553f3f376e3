// SPDX-License-Identifier: MIT
// PO files as the manual of GNU gettext describes them ("The Format of PO Files").
#include "base/language.h"

#include <doctest/doctest.h>

#include <set>

#include "base/counted.h"

using namespace plugward;

namespace {

const std::string header =
    "msgid \"\"\n"
    "msgstr \"\"\n"
    "\"Language: de\\n\"\n"
    "\"Plural-Forms: nplurals=2; plural=(n != 1);\\n\"\n"
    "\n";

/// Speaks while it lives.
class Speaking {
 public:
  explicit Speaking(const Language& language) { speak(&language); }
  ~Speaking() { speak(nullptr); }
  Speaking(const Speaking&) = delete;
  Speaking& operator=(const Speaking&) = delete;
};

Language language(const std::string& entries) {
  PoReading read = parse_po(header + entries);
  for (const PoFault& fault : read.faults) MESSAGE(fault.line << ": " << fault.message);
  REQUIRE(read.faults.empty());
  return std::move(read.language);
}

std::string faults(const std::string& text) {
  std::string all;
  for (const PoFault& fault : parse_po(text).faults)
    all += std::to_string(fault.line) + ": " + fault.message + "\n";
  return all;
}

}  // namespace

TEST_CASE("without a language all is said in English") {
  CHECK(std::string(tr("plug")) == "plug");
  CHECK(format("{} of {}", 3, "5") == "3 of 5");
  CHECK(counted(1, "{} plug", "{} plugs") == "1 plug");
  CHECK(counted(0, "{} plug", "{} plugs") == "0 plugs");
  CHECK(spoken_language() == "en");
}

TEST_CASE("words, with a context where there is one") {
  const Language german = language(
      "#: src/sheet/words.cpp\n"
      "msgid \"plug\"\n"
      "msgstr \"Stecker\"\n"
      "\n"
      "# of a screen\n"
      "msgctxt \"of a screen\"\n"
      "msgid \"light\"\n"
      "msgstr \"hell\"\n"
      "\n"
      "msgid \"\"\n"
      "\"two \"\n"
      "\"\\\"lines\\\"\\n\"\n"
      "msgstr \"zwei\\tZeilen\\\\\"\n");
  const Speaking now(german);
  CHECK(spoken_language() == "de");
  CHECK(german.size() == 3);
  CHECK(std::string(tr("plug")) == "Stecker");
  CHECK(tr(std::string_view("plug")) == "Stecker");
  CHECK(std::string(tr("header")) == "header");
  CHECK(std::string(tr("light")) == "light");
  CHECK(std::string(tr_in("of a screen", "light")) == "hell");
  CHECK(std::string(tr("two \"lines\"\n")) == "zwei\tZeilen\\");
  CHECK(verbatim("plug {}", 1) == "plug 1");
}

TEST_CASE("a translation puts its arguments in its own order") {
  const Language german = language(
      "msgid \"{} on {:.1f} V\"\n"
      "msgstr \"an {1:.1f} V: {0}\"\n");
  const Speaking now(german);
  CHECK(format("{} on {:.1f} V", "fan", 12.0) == "an 12.0 V: fan");
  CHECK(format_later(later("{} on {:.1f} V"), "fan", 5.0) == "an 5.0 V: fan");
}

TEST_CASE("plural forms go by the language's own rule") {
  // Polish, as the gettext manual has it: one, 2 to 4, the rest.
  const PoReading polish = parse_po(
      "msgid \"\"\n"
      "msgstr \"\"\n"
      "\"Language: pl\\n\"\n"
      "\"Plural-Forms: nplurals=3; plural=n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : "
      "2;\\n\"\n"
      "\n"
      "msgid \"{} file\"\n"
      "msgid_plural \"{} files\"\n"
      "msgstr[0] \"{} plik\"\n"
      "msgstr[1] \"{} pliki\"\n"
      "msgstr[2] \"{} plik\xC3\xB3w\"\n");
  REQUIRE(polish.faults.empty());
  const Speaking now(polish.language);
  CHECK(counted(1, "{} file", "{} files") == "1 plik");
  CHECK(counted(3, "{} file", "{} files") == "3 pliki");
  CHECK(counted(5, "{} file", "{} files") == "5 plik\xC3\xB3w");
  CHECK(counted(12, "{} file", "{} files") == "12 plik\xC3\xB3w");
  CHECK(counted(22, "{} file", "{} files") == "22 pliki");
}

TEST_CASE("fuzzy, obsolete and empty entries count as not translated") {
  const Language german = language(
      "#, fuzzy\n"
      "msgid \"plug\"\n"
      "msgstr \"Dose\"\n"
      "\n"
      "msgid \"header\"\n"
      "msgstr \"\"\n"
      "\n"
      "#~ msgid \"pin\"\n"
      "#~ msgstr \"Stift\"\n");
  CHECK(german.size() == 0);
}

TEST_CASE("what is asked for and not there is told, layout is not") {
  Language german = language("msgid \"plug\"\nmsgstr \"Stecker\"\n");
  std::set<std::string> missing;
  german.on_missing([&](std::string_view context, std::string_view text) {
    missing.insert(std::string(context) + "/" + std::string(text));
  });
  const Speaking now(german);
  (void)tr("plug");
  (void)tr("header");
  (void)tr_in("of a screen", "dark");
  (void)format("{}: {}", 1, 2);
  (void)counted(2, "{} pin", "{} pins");
  CHECK(missing == std::set<std::string>{"/header", "of a screen/dark", "/{} pin"});
}

TEST_CASE("faults are told with their lines") {
  const struct {
    std::string entries, told;
  } cases[] = {
      {"msgid \"{} of {}\"\nmsgstr \"{} von\"\n",
       "6: the translation does not take exactly the places {...} of its text\n"},
      {"msgid \"{:.1f} V\"\nmsgstr \"{:.2f} V\"\n",
       "6: the translation does not take exactly the places {...} of its text\n"},
      {"msgid \"plug\"\nmsgstr \"{}\"\n",
       "6: the translation does not take exactly the places {...} of its text\n"},
      {"msgid \"plug\"\nmsgstr \"Stecker\"\n\nmsgid \"plug\"\nmsgstr \"Stecker\"\n",
       "9: the same text stands in line 6\n"},
      {"msgid \"{} a\"\nmsgid_plural \"{} b\"\nmsgstr[0] \"{} c\"\n", "6: 1 of msgstr where 2 are due\n"},
      {"msgid \"{} a\"\nmsgid_plural \"{} b\"\nmsgstr \"{} c\"\n", "8: 'msgstr[0]' is due here\n"},
      {"msgid \"plug\"\nmsgstr \"Steck\"er\"\n", "7: a quote inside the text is written \\\"\n"},
      {"msgid \"plug\"\nmsgstr \"\\x41\"\n", "7: of the escapes only \\n \\t \\\" \\\\ are taken\n"},
      {"msgid \"plug\"\nmsgstr Stecker\n", "7: the text does not stand in one pair of quotes\n"},
      {"msgid \"plug\"\nmessage \"Stecker\"\n",
       "7: this line begins with none of #, \", msgctxt, msgid, msgid_plural, msgstr\n"},
  };
  for (const auto& one : cases) {
    CAPTURE(one.entries);
    CHECK(faults(header + one.entries).starts_with(one.told));
  }
  CHECK(faults("") == "1: no header: an entry with an empty msgid that names Language and Plural-Forms\n");
  CHECK(faults("msgid \"\"\nmsgstr \"Language: de\\nPlural-Forms: nplurals=2; plural=n+;\\n\"\n") ==
        "1: the header's Plural-Forms is missing or no rule\n");
}

TEST_CASE("places are compared by number and form") {
  CHECK(places_of("{} of {:.1f}") == std::vector<std::string>{"0", "1:.1f"});
  CHECK(places_of("{1:.1f}, {0}") == std::vector<std::string>{"0", "1:.1f"});
  CHECK(places_of("{{}} {}") == std::vector<std::string>{"0"});
  CHECK(places_of("no place") == std::vector<std::string>{});
  CHECK_FALSE(places_of("{0} {}"));
  CHECK_FALSE(places_of("{"));
  CHECK_FALSE(places_of("}"));
  CHECK_FALSE(places_of("{name}"));
}
