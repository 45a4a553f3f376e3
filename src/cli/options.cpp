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
  std::vector<std::string> at, jumpers, seen;
  std::string format = "text";
  std::string threads = "0";
  std::optional<std::string> length;
  std::string colour = "auto";
};

void add_options(CLI::App& app, const Command& command, Raw& raw) {
  const Takes& takes = command.takes;
  Options& options = raw.options;
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
    app.add_option("--paper", options.paper, "a4 (default) or letter")->type_name("SIZE");
    app.add_flag("--landscape", options.landscape, "paper with its long side down");
    app.add_option("--view", options.view, "wire (the side of the leads, default) or mating")
        ->type_name("VIEW");
  }
  if (takes.fitting) {
    repeated("--at", raw.at, "this plug goes on that header", "PLUG=HEADER");
    repeated("--jumper", raw.jumpers, "this jumper is fitted at that rail", "JUMPER=RAIL");
    repeated("--seen", raw.seen, "colours seen, cavity 1 first; - empty, ? cannot be told", "PLUG=BN,RD,-");
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
    const char* says = takes.csv ? "text (default), json or csv" : "text (default) or json";
    app.add_option("--format", raw.format, says)->type_name("FORMAT");
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
  app.footer(format("Example:\n  {}", command.example));
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

/// The library's word for a fault, as ours.
std::string fault_text(const CLI::ParseError& error, const CLI::App& app) {
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ExtrasError)) {
    for (const std::string& extra : app.remaining()) {
      const std::string name = extra.substr(0, extra.find('='));
      if (name.starts_with("-")) {
        return format("unknown option '{}'{}", name, did_you_mean(name, option_names(app)));
      }
    }
  }
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ConversionError)) {
    return "'--max-errors' takes a whole number from 0 on";  // the one option that is not text
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
      "'plugward --version' names the version.\n"
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
  options.at = assignments("--at", "PLUG=HEADER", raw.at);
  options.jumpers = assignments("--jumper", "JUMPER=RAIL", raw.jumpers);
  options.seen = assignments("--seen", "PLUG=COLOUR,COLOUR,...", raw.seen);
  std::vector<std::pair<std::string, ProductFormat>> formats{{"text", ProductFormat::Text},
                                                             {"json", ProductFormat::Json}};
  if (command.takes.csv) formats.emplace_back("csv", ProductFormat::Csv);
  options.format = chosen<ProductFormat>("--format", raw.format, formats);
  options.colour = chosen<ColourChoice>(
      "--color", raw.colour,
      {{"always", ColourChoice::Always}, {"never", ColourChoice::Never}, {"auto", ColourChoice::Auto}});
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
  if (name == "--help" || name == "-h" || name == "help") return Information{overview(commands)};
  if (name == "--version") return Information{format("plugward {}\n", PLUGWARD_VERSION)};
  const auto command =
      std::find_if(commands.begin(), commands.end(), [&](const Command& c) { return c.name == name; });
  if (command == commands.end()) {
    const std::string_view kind = name.starts_with("-") ? "option" : "command";
    throw UsageError(format("unknown {} '{}'{}", kind, name, did_you_mean(name, names_of(commands))));
  }
  Raw raw;
  CLI::App app(format("plugward {}: {}", name, command->description), format("plugward {}", name));
  app.set_help_flag("-h,--help", "this text");
  app.get_formatter()->column_width(28);
  add_options(app, *command, raw);
  std::vector<std::string> rest(arguments.rbegin(), std::prev(arguments.rend()));
  try {
    app.parse(rest);
  } catch (const CLI::CallForHelp&) {
    return Information{app.help()};
  } catch (const CLI::ParseError& error) {
    throw UsageError(fault_text(error, app));
  }
  return understand(std::move(raw), *command);
}

std::string meant(const std::vector<std::string>& like, std::string_view otherwise) {
  if (like.empty()) return format("; {}", otherwise);
  if (like.size() == 1) return format("; did you mean '{}'?", like[0]);
  return format("; did you mean one of {}?", join(like, ", "));
}

}  // namespace plugward
