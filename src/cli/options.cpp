// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/options_test.cpp.
#include "cli/options.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>
#include <memory>
#include <optional>

#include "base/edit_distance.h"
#include "base/format.h"
#include "cli/choices.h"

namespace plugward {
namespace {

/// Between these a lead can be crimped by hand at both ends and still is a lead between (common practice, no
/// source).
constexpr Millimetres shortest_adapter{30.0}, longest_adapter{10000.0};

std::string did_you_mean(const std::string& name, const std::vector<std::string>& candidates) {
  const std::string near = nearest(name, candidates);
  return near.empty() ? "" : format("; did you mean '{}'?", near);
}

std::vector<std::string> names_of(std::span<const Command> commands) {
  std::vector<std::string> names;
  for (const Command& command : commands) names.emplace_back(command.name);
  return names;
}

/// What the library fills in before the words are understood.
struct Raw {
  Options options;
  std::vector<std::string> at, jumpers, seen, known;
  std::string format = "text";
  std::string threads = "0";
  std::optional<std::string> length;
  std::string colour = "auto";
};

std::string examples_text(const Command& command) {
  std::string text = "Examples:";
  for (const Example& example : command.shown_examples())
    text += format("\n  {}:\n    {}", example_says(example), example.line);
  return text;
}

std::vector<std::pair<std::string, ProductFormat>> formats_of(const Takes& takes) {
  static constexpr std::pair<std::string_view, ProductFormat> words[] = {
      {"text", ProductFormat::Text},   {"json", ProductFormat::Json},         {"csv", ProductFormat::Csv},
      {"sarif", ProductFormat::Sarif}, {"markdown", ProductFormat::Markdown}, {"spice", ProductFormat::Spice}};
  std::vector<std::pair<std::string, ProductFormat>> formats;
  for (const std::string& choice : choices(takes, "--format")) {
    for (const auto& [word, value] : words) {
      if (word == choice) formats.emplace_back(choice, value);
    }
  }
  return formats;
}

void add_options(CLI::App& app, const Command& command, Raw& raw) {
  const Takes& takes = command.takes;
  Options& options = raw.options;
  app.set_help_flag("-h,--help", "this text");
  app.get_formatter()->column_width(28);
  // Each occurrence takes one value: a file name behind it is a word of its own.
  const auto repeated = [&app](const char* name, std::vector<std::string>& into, const char* says,
                               const char* type) {
    app.add_option(name, into, says)->allow_extra_args(false)->type_name(type);
  };
  app.add_option(std::string(takes.words), options.words, std::string(takes.words_say))->type_name("");
  if (takes.swap) {
    app.add_option("--to", options.to_board, "the board that the machine moves to")->type_name("BOARD");
    repeated("--at", raw.at, "this plug goes on that header of the new board", "PLUG=HEADER");
    repeated("--jumper", raw.jumpers, "this jumper of the new board sits at that rail", "JUMPER=RAIL");
  }
  if (takes.record) {
    app.add_option("--record", options.record, "write the new loom and changed harnesses into this folder")
        ->type_name("DIR");
    app.add_flag("--back", options.way_back, "the way back from the new board, step by step");
  }
  if (takes.flags)
    app.add_option("--paper", options.paper, "a4 (default), letter or tape (12 mm)")->type_name("SIZE");
  if (takes.sheet) {
    app.add_option("--to", options.to_board,
                   "of a loom: the board that the machine moves to; --at and --jumper are then that board's")
        ->type_name("BOARD");
    app.add_flag("--place", options.place, "choose the headers, as 'place' does");
    app.add_option("--machine", options.machine, "what the machine is called; else a blank")
        ->type_name("NAME");
    app.add_option("--date", options.date, "of the sheet; else of SOURCE_DATE_EPOCH, else a blank")
        ->type_name("YYYY-MM-DD");
    app.add_option("--as", options.sheet_as, "pdf, html, text or markdown; else by the suffix of -o")
        ->type_name("KIND");
    app.add_option("--language", options.language, "of the sheet's words: en (default) or another")
        ->type_name("CODE");
    app.add_option("--paper", options.paper, "a4 (default) or letter")->type_name("SIZE");
    app.add_flag("--landscape", options.landscape, "paper with its long side down");
    app.add_option("--view", options.view, "wire (the side of the leads, default) or mating")
        ->type_name("VIEW");
  }
  if (takes.fitting) {
    repeated("--at", raw.at, "this plug goes on that header", "PLUG=HEADER");
    repeated("--jumper", raw.jumpers, "this jumper is fitted at that rail", "JUMPER=RAIL");
    repeated("--seen", raw.seen,
             "colours seen, cavity 1 first; - empty, ? cannot be told; fan:BK,RD for a fan without a file",
             "PLUG=BN,RD,-");
  }
  if (takes.measured) {
    repeated("--measured", raw.options.measured,
             "a reading: J9.2=5.02V, J9.3:minus=beep, J9.1:J9.3=4.7kohm, PLUG.1:TERMINAL=beep", "POINTS=READING");
    app.add_option("--record-measured", options.record_measured,
                   "write the board file with what the readings settle as evidence to this file")
        ->type_name("FILE");
    if (!takes.sheet)
      app.add_option("--date", options.date, "of the readings; else of SOURCE_DATE_EPOCH, else today")
          ->type_name("YYYY-MM-DD");
  }
  if (takes.start) {
    app.add_option("--seen", options.seen_list,
                   "colours from left to right; - empty, ? cannot be told, RD=V proved to be V")
        ->type_name("RD,GN,WH");
    app.add_option("--view", options.view, "seen from the wire side (default), the mating side, or unknown")
        ->type_name("VIEW");
    app.add_option("--pitch,--family", options.housing, "of the housing, as far as known: 2.54 or xh-2.50")
        ->type_name("MM");
    repeated("--known", raw.known, "a figure of the device: needs=24V, draws=0.1A, count=30", "NAME=VALUE");
    app.add_option("--id", options.id, "of the description; else the name of the file")->type_name("ID");
    app.add_option("--title", options.title, "what people call it")->type_name("TEXT");
    app.add_option("--date", options.date, "of the evidence; else of SOURCE_DATE_EPOCH, else today")
        ->type_name("YYYY-MM-DD");
    app.add_flag("--replace", options.replace, "write over a file that is there");
  }
  if (takes.jumpers)
    repeated("--jumper", raw.jumpers, "this jumper is fitted at that rail on every board that has it",
             "JUMPER=RAIL");
  if (takes.folders)
    repeated("--in", options.folders, "a folder of board files, searched to its depth", "DIR");
  if (takes.folders) {
    app.add_option("--threads", raw.threads, "files judged at a time; default: as many as there are cores")
        ->type_name("N");
  }
  if (takes.adapter) {
    app.add_flag("--adapter", options.adapter,
                 "plan a lead between cable and header instead of moving contacts");
    app.add_option("--length", raw.length, "of the lead of --adapter; default: 100 mm")->type_name("MM");
  }
  if (takes.families) repeated("--families", options.families, "more connector families", "FILE");
  if (takes.format) {
    std::vector<std::string> names = choices(takes, "--format");
    names.front() += " (default)";
    const std::string last = names.back();
    names.pop_back();
    app.add_option("--format", raw.format, format("{} or {}", join(names, ", "), last))->type_name("FORMAT");
  }
  if (takes.symptom) {
    app.add_option("--symptom", options.symptom, "what is seen; without it, all that can be seen are listed")
        ->type_name("WORD");
    app.add_option("--plug", options.plug, "seen at this plug alone; else at any")->type_name("PLUG");
  }
  if (takes.picture) {
    app.add_option("--picture", options.picture, "svg, pdf or png; else by the suffix of -o")
        ->type_name("KIND");
    app.add_option("--plug", options.plug, "draw this plug alone; else all that are placed")
        ->type_name("PLUG");
    app.add_option("--view", options.view, "wire (the side of the leads, default) or mating")
        ->type_name("VIEW");
    app.add_option("--paper", options.paper, "a4 (default) or letter, both landscape")->type_name("SIZE");
  }
  app.add_option("-o,--output", options.output, "write to this file instead of standard output")
      ->type_name("FILE");
  app.add_option("--max-errors", options.max_errors, "diagnostics of one rule that are shown; 0: all")
      ->type_name("N");
  app.add_option("--color,--colour", raw.colour, "always, never or auto (default)")->type_name("WHEN");
  if (takes.watch)
    app.add_flag("--watch", options.watch, "do it again whenever one of the files is saved; Ctrl-C ends it");
  app.footer(examples_text(command));
}

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

template <class Value>
Value chosen(std::string_view option, const std::string& word,
             const std::vector<std::pair<std::string, Value>>& values) {
  std::vector<std::string> names;
  for (const auto& [name, value] : values) {
    if (name == word) return value;
    names.push_back(name);
  }
  throw UsageError(
      format("'{}' takes {}, not '{}'{}", option, join(names, ", "), word, did_you_mean(word, names)));
}

std::vector<NamedValue> assignments(std::string_view option, std::string_view form,
                                    const std::vector<std::string>& texts) {
  std::vector<NamedValue> result;
  for (const std::string& text : texts) {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == text.size()) {
      throw UsageError(format("'{} {}' is not of the form {}", option, text, form));
    }
    result.push_back({text.substr(0, equals), text.substr(equals + 1)});
  }
  return result;
}

/// "fan:BK,RD" as {"fan", "BK,RD"}; "" as name when it is "PLUG=COLOURS".
NamedValue kind_seen(const std::string& text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string::npos || colon == 0 || colon + 1 == text.size() || text.find('=') < colon) return {};
  return {text.substr(0, colon), text.substr(colon + 1)};
}

/// A header alone after --at is for the one plug that --seen makes; its name is then "".
std::vector<NamedValue> placings(const std::vector<std::string>& texts, bool one_plug) {
  std::vector<std::string> stated;
  std::vector<NamedValue> result;
  for (const std::string& text : texts) {
    if (one_plug && !text.empty() && text.find('=') == std::string::npos) {
      result.push_back({"", text});
    } else {
      stated.push_back(text);
    }
  }
  for (NamedValue& one : assignments("--at", "PLUG=HEADER", stated)) result.push_back(std::move(one));
  return result;
}

/// Of each option that takes one of a few words, the word that was given.
void check_choices(const Command& command, const Options& options) {
  const std::pair<std::string_view, const std::string*> given[] = {{"--view", &options.view},
                                                                   {"--picture", &options.picture},
                                                                   {"--as", &options.sheet_as},
                                                                   {"--language", &options.language},
                                                                   {"--paper", &options.paper}};
  for (const auto& [option, word] : given) {
    if (word->empty()) continue;  // by the suffix of -o
    std::vector<std::pair<std::string, int>> words;
    for (std::string& one : choices(command.takes, option)) words.emplace_back(std::move(one), 0);
    chosen<int>(option, *word, words);
  }
}

/// The library's word for a fault, as ours.
std::string fault_text(const CLI::ParseError& error, const CLI::App& app) {
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ExtrasError)) {
    for (const std::string& extra : app.remaining()) {
      const std::string name = extra.substr(0, extra.find('='));
      if (name.starts_with("-")) {
        const std::string hint = did_you_mean(name, option_names(app));
        return format("unknown option '{}'{}", name,
                      hint.empty() ? format("; '{} --help' lists them", app.get_name()) : hint);
      }
    }
  }
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ConversionError)) {
    return "'--max-errors' takes a whole number from 0 on";  // the one option that is not text
  }
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ArgumentMismatch)) {
    const std::string words = error.what();  // "--at: 1 required PLUG=HEADER missing"
    const std::string name = words.substr(0, words.find(':'));
    for (const CLI::Option* option : app.get_options()) {
      if (option->get_items_expected_max() > 0 && option->get_name() == name)
        return format("'{}' needs {} behind it", name, option->get_type_name());
    }
  }
  std::string text = error.what();
  while (!text.empty() && (text.back() == '\n' || text.back() == '.')) text.pop_back();
  return text;
}

void check_word_count(const Command& command, const Options& options) {
  const auto count = static_cast<int>(options.words.size());
  const Takes& takes = command.takes;
  if (count >= takes.fewest && count <= takes.most) return;
  throw UsageError(format("'{}' takes {}; {} {} given", command.name, takes.words_say, count,
                          count == 1 ? "word was" : "words were"));
}

std::string overview(std::span<const Command> commands) {
  std::string text =
      "plugward tells whether a cable may be plugged on a board's header, what would\n"
      "happen, and which crimp contacts to move so that it may.\n\n"
      "Usage: plugward COMMAND ...\n\nCommands:\n";
  for (const Command& command : commands) text += format("  {:<9}{}\n", command.name, command.description);
  text +=
      "\n'plugward COMMAND --help' lists a command's options and shows an example;\n"
      "'plugward --version' names the version; 'man plugward' has it all on one page.\n"
      "\nA file that is not there under its name is looked for in the folders of\n"
      "PLUGWARD_PATH and where plugward's own boards and harnesses are installed; there\n"
      "the id is enough: 'plugward lint heron-m7'.\n"
      "\nExit status: 0 plug it in, or the work is done; 1 any other verdict, or errors\n"
      "in the files; 2 no judgement was possible.\n";
  return text;
}

int thread_count(const std::string& text) {
  int count = -1;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (error != std::errc() || end != text.data() + text.size() || count < 0 || count > 1024) {
    throw UsageError("'--threads' takes a whole number up to 1024");
  }
  return count;
}

/// A quantity like those in the files: "150 mm".
Millimetres adapter_length(const std::string& text, bool adapter) {
  if (!adapter) throw UsageError("'--length' is that of the lead between: it goes with '--adapter'");
  const Parsed<Millimetres> read = parse_quantity<Millimetres>(text);
  if (const Fault* fault = std::get_if<Fault>(&read)) throw UsageError("--length: " + fault->message);
  const Millimetres length = std::get<Millimetres>(read);
  if (length < shortest_adapter || length > longest_adapter) {
    throw UsageError(format("--length: '{}' is not from {} to {}", text, to_text(shortest_adapter),
                            to_text(longest_adapter)));
  }
  return length;
}

Options understand(Raw raw, const Command& command) {
  Options options = std::move(raw.options);
  options.command = &command;
  check_word_count(command, options);
  std::vector<std::string> plugs_seen;
  for (const std::string& text : raw.seen) {
    NamedValue kind = kind_seen(text);
    if (kind.name.empty()) {
      plugs_seen.push_back(text);
    } else {
      options.seen_kinds.push_back(std::move(kind));
    }
  }
  options.at = placings(raw.at, options.seen_kinds.size() == 1);
  options.jumpers = assignments("--jumper", "JUMPER=RAIL", raw.jumpers);
  options.seen = assignments("--seen", "PLUG=COLOUR,COLOUR,...", plugs_seen);
  options.known = assignments("--known", "NAME=VALUE", raw.known);
  if (!options.record_measured.empty() && options.measured.empty())
    throw UsageError("'--record-measured' writes down what '--measured' says: give a reading");
  options.format = chosen<ProductFormat>("--format", raw.format, formats_of(command.takes));
  options.colour = chosen<ColourChoice>(
      "--color", raw.colour,
      {{"always", ColourChoice::Always}, {"never", ColourChoice::Never}, {"auto", ColourChoice::Auto}});
  check_choices(command, options);
  options.threads = thread_count(raw.threads);
  if (raw.length) options.adapter_length = adapter_length(*raw.length, options.adapter);
  if (options.max_errors < 0) throw UsageError("'--max-errors' takes a whole number from 0 on");
  return options;
}

}  // namespace

std::variant<Options, Information> parse_command_line(const std::vector<std::string>& arguments,
                                                      std::span<const Command> commands) {
  if (arguments.empty()) throw UsageError("no command given; 'plugward --help' lists them");
  const std::string& name = arguments.front();
  if (name == "help" && arguments.size() > 1) return parse_command_line({arguments[1], "--help"}, commands);
  if (name == "--help" || name == "-h" || name == "help") return Information{overview(commands)};
  if (name == "--version") return Information{format("plugward {}\n", PLUGWARD_VERSION)};
  const auto command =
      std::find_if(commands.begin(), commands.end(), [&](const Command& c) { return c.name == name; });
  if (command == commands.end()) {
    const std::string_view kind = name.starts_with("-") ? "option" : "command";
    const std::string hint = did_you_mean(name, names_of(commands));
    throw UsageError(
        format("unknown {} '{}'{}", kind, name, hint.empty() ? "; 'plugward --help' lists them" : hint));
  }
  Raw raw;
  CLI::App app(format("plugward {}: {}", name, command->description), format("plugward {}", name));
  add_options(app, *command, raw);
  std::vector<std::string> rest(arguments.rbegin(), std::prev(arguments.rend()));
  try {
    app.parse(rest);
  } catch (const CLI::CallForHelp&) {
    return Information{app.help()};
  } catch (const CLI::ParseError& error) {
    throw UsageError(fault_text(error, app));
  }
  if (const CLI::Option* view = app.get_option_no_throw("--view")) raw.options.view_given = view->count() > 0;
  return understand(std::move(raw), *command);
}

std::string example_says(const Example& example) {
  if (example.status == ExitStatus::Fine) return std::string(example.says);
  return format("{} (exit status {})", example.says, static_cast<int>(example.status));
}

std::vector<OptionRow> option_rows(const Command& command) {
  Raw raw;
  CLI::App app;
  add_options(app, command, raw);
  std::vector<OptionRow> rows;
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) continue;
    OptionRow row;
    for (const std::string& name : option->get_snames()) row.names.push_back("-" + name);
    for (const std::string& name : option->get_lnames()) row.names.push_back("--" + name);
    row.value = option->get_type_size() == 0 ? "" : option->get_type_name();
    row.says = option->get_description();
    if (!option->get_lnames().empty())
      row.words = choices(command.takes, "--" + option->get_lnames().front());
    row.repeats = option->get_expected_max() > 1;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string meant(const std::vector<std::string>& like, std::string_view otherwise) {
  if (like.empty()) return format("; {}", otherwise);
  if (like.size() == 1) return format("; did you mean '{}'?", like[0]);
  return format("; did you mean one of {}?", join(like, ", "));
}

}  // namespace plugward
