// SPDX-License-Identifier: MIT
#include "cli/options.h"

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <vector>

namespace plugward {
namespace {

std::string fault_of(const std::vector<std::string>& arguments) {
  try {
    parse_command_line(arguments, all_commands());
  } catch (const UsageError& error) {
    return error.what();
  }
  return "no fault";
}

Options options_of(const std::vector<std::string>& arguments) {
  return std::get<Options>(parse_command_line(arguments, all_commands()));
}

}  // namespace

TEST_CASE("options: a whole command line") {
  const Options o = options_of({"check", "b.xml", "--at", "p=J1", "h.xml", "--at=q=J2", "--jumper", "JP2=5V",
                                "--seen", "p=-,RD,?", "--families", "mine.xml", "--format=json", "--color",
                                "never", "-o", "x.json", "--max-errors", "0"});
  CHECK(o.command->name == "check");
  CHECK(o.words == std::vector<std::string>{"b.xml", "h.xml"});
  REQUIRE(o.at.size() == 2);
  CHECK(o.at[0].name == "p");
  CHECK(o.at[0].value == "J1");
  CHECK(o.at[1].name == "q");
  CHECK(o.at[1].value == "J2");
  REQUIRE(o.jumpers.size() == 1);
  CHECK(o.jumpers[0].name == "JP2");
  CHECK(o.jumpers[0].value == "5V");
  REQUIRE(o.seen.size() == 1);
  CHECK(o.seen[0].value == "-,RD,?");
  CHECK(o.families == std::vector<std::string>{"mine.xml"});
  CHECK(o.format == ProductFormat::Json);
  CHECK(o.colour == ColourChoice::Never);
  CHECK(o.output == "x.json");
  CHECK(o.max_errors == 0);
}

TEST_CASE("options: an option that is given once takes one value and no file behind it") {
  const Options o = options_of({"check", "--jumper", "JP1=5V", "b.xml", "h.xml"});
  CHECK(o.jumpers.size() == 1);
  CHECK(o.words == std::vector<std::string>{"b.xml", "h.xml"});
}

TEST_CASE("options: faults are named with what was meant") {
  struct Row {
    std::vector<std::string> arguments;
    std::string expected;
  };
  const Row rows[] = {
      {{}, "no command given; 'plugward --help' lists them"},
      {{"chekc"}, "unknown command 'chekc'; did you mean 'check'?"},
      {{"solder"}, "unknown command 'solder'; 'plugward --help' lists them"},
      {{"--fast"}, "unknown option '--fast'; 'plugward --help' lists them"},
      {{"check", "a", "b", "--jmper", "JP=5V"}, "unknown option '--jmper'; did you mean '--jumper'?"},
      {{"check", "a", "b", "--jmper=JP=5V"}, "unknown option '--jmper'; did you mean '--jumper'?"},
      {{"check", "a", "b", "--zzzzz"}, "unknown option '--zzzzz'; 'plugward check --help' lists them"},
      {{"check"},
       "'check' takes a board file and one or more harness files, in any order; or one loom file alone; 0 "
       "words "
       "were given"},
      {{"draw"}, "'draw' takes a board file and one or more harness files, in any order; 0 words were given"},
      {{"list", "a", "b", "c"},
       "'list' takes families [FAMILY], functions, colours, gauges, rules or schemas [NAME]; 3 words were given"},
      {{"check", "a", "b", "--at", "control"}, "'--at control' is not of the form PLUG=HEADER"},
      {{"check", "a", "b", "--at", "=J9"}, "'--at =J9' is not of the form PLUG=HEADER"},
      {{"check", "a", "b", "--seen", "control="},
       "'--seen control=' is not of the form PLUG=COLOUR,COLOUR,..."},
      {{"check", "a", "b", "--format", "jsn"},
       "'--format' takes text, json, csv, sarif, markdown, spice, not 'jsn'; did you mean 'json'?"},
      {{"check", "a", "b", "--color=blue"}, "'--color' takes always, never, auto, not 'blue'"},
      {{"draw", "a", "b", "--view", "matin"},
       "'--view' takes wire, mating, not 'matin'; did you mean 'mating'?"},
      {{"draw", "a", "b", "--picture", "pfd"},
       "'--picture' takes svg, pdf, png, not 'pfd'; did you mean 'pdf'?"},
      {{"sheet", "a", "b", "--as", "markdwon"},
       "'--as' takes pdf, html, text, markdown, not 'markdwon'; did you mean 'markdown'?"},
      {{"labels", "a", "--paper", "leter"},
       "'--paper' takes a4, letter, tape, not 'leter'; did you mean 'letter'?"},
      {{"sheet", "a", "--paper", "tape"}, "'--paper' takes a4, letter, not 'tape'"},
      {{"check", "a", "b", "--max-errors", "-1"}, "'--max-errors' takes a whole number from 0 on"},
      {{"check", "a", "b", "--max-errors", "some"}, "'--max-errors' takes a whole number from 0 on"},
      {{"check", "a", "b", "--at"}, "'--at' needs PLUG=HEADER behind it"},
      {{"repin", "a", "b", "--adapter", "--length", "150"}, "--length: '150' has no unit: write '150 mm'"},
      {{"repin", "a", "b", "--adapter", "--length", "-1 mm"},
       "--length: '-1 mm' is not from 30 mm to 10000 mm"},
      {{"parts", "a", "b", "--adapter", "--length", "11000 mm"},
       "--length: '11000 mm' is not from 30 mm to 10000 mm"},
      {{"parts", "a", "b", "--length", "150 mm"},
       "'--length' is that of the lead between: it goes with '--adapter'"},
      {{"check", "a", "b", "--length", "150 mm"},
       "unknown option '--length'; 'plugward check --help' lists them"},
      {{"explain"}, "'explain' takes the word in [...] behind a message; 0 words were given"},
      {{"explain", "overvoltage", "--at", "p=J1"},
       "unknown option '--at'; 'plugward explain --help' lists them"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.expected);
    CHECK(fault_of(row.arguments) == row.expected);
  }
}

TEST_CASE("options: every word that a help text offers is taken, with the row that says so") {
  const auto row = [](std::string_view command, std::string_view name) {
    for (const Command& one : all_commands()) {
      if (one.name != command) continue;
      for (OptionRow& it : option_rows(one)) {
        if (it.names.back() == name) return it;
      }
    }
    return OptionRow{};
  };
  CHECK(row("check", "--at").names == std::vector<std::string>{"--at"});
  CHECK(row("check", "--at").value == "PLUG=HEADER");
  CHECK(row("check", "--at").repeats);
  CHECK(row("check", "--output").names == std::vector<std::string>{"-o", "--output"});
  CHECK_FALSE(row("check", "--output").repeats);
  CHECK(row("check", "--watch").value.empty());
  CHECK(row("check", "--colour").words == std::vector<std::string>{"auto", "always", "never"});
  CHECK(row("labels", "--paper").words == std::vector<std::string>{"a4", "letter", "tape"});
  for (const Command& command : all_commands()) {
    for (const OptionRow& it : option_rows(command)) {
      CAPTURE(it.names.back());
      CHECK(!it.says.empty());
      for (const std::string& word : it.words) {
        std::vector<std::string> arguments{std::string(command.name)};
        arguments.insert(arguments.end(), static_cast<std::size_t>(command.takes.fewest), "x");
        arguments.insert(arguments.end(), {it.names.front(), word});
        CHECK(fault_of(arguments) == "no fault");
      }
    }
  }
}

TEST_CASE("options: help names every command and each has its example") {
  const auto text_of = [](const std::vector<std::string>& arguments) {
    return std::get<Information>(parse_command_line(arguments, all_commands())).text;
  };
  std::set<std::string_view> names;
  for (const Command& command : all_commands()) {
    CAPTURE(command.name);
    CHECK(names.insert(command.name).second);
    CHECK(text_of({"--help"}).find("  " + std::string(command.name) + " ") != std::string::npos);
    const std::string help = text_of({std::string(command.name), "--help"});
    CHECK(!command.shown_examples().empty());
    for (const Example& example : command.shown_examples()) {
      CHECK(help.find(std::string(example.line)) != std::string::npos);
      CHECK(example.line.starts_with("plugward " + std::string(command.name) + " "));
    }
    CHECK((command.run != nullptr));
  }
  CHECK(text_of({"--version"}) == "plugward " PLUGWARD_VERSION "\n");
}

}  // namespace plugward
