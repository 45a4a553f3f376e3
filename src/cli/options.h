// SPDX-License-Identifier: MIT
// The command line as a plain struct. options.cpp is the one place that names the option library.
#pragma once

#include <functional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "cli/colour.h"
#include "cli/command.h"
#include "cli/exit_status.h"
#include "plan/adapter_lead.h"

namespace plugward {

/// The person asked for something that the command line cannot mean. Caught once, in main; exit status 2.
/// The message is complete and may end in "did you mean ...".
class UsageError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// The end of such a message: "; did you mean 'x'?", of several "; did you mean one of x, y?", else ";
/// `otherwise`".
std::string meant(const std::vector<std::string>& like, std::string_view otherwise);

/// "NAME=VALUE" as given after an option.
struct NamedValue {
  std::string name;
  std::string value;
};

enum class ProductFormat { Text, Json, Csv, Sarif, Markdown, Spice };

struct Options {
  const Command* command = nullptr;
  std::vector<std::string> words;  ///< what stands without an option: files, a rule, a list
  std::vector<NamedValue> at;
  std::vector<NamedValue> jumpers;
  std::vector<NamedValue> seen;
  std::vector<NamedValue> seen_kinds;  ///< --seen KIND:COLOURS: a device of which there is no file
  std::vector<std::string> measured;   ///< --measured, as given
  std::string record_measured;         ///< --record-measured, a file; "": write nothing down
  std::vector<std::string> families;
  std::vector<std::string> folders;  ///< --in
  int threads = 0;                   ///< files read and judged at a time; 0: as many as the machine has cores
  bool adapter = false;              ///< an adapter lead instead of moving contacts
  Millimetres adapter_length = usual_adapter_length;  ///< --length
  std::string to_board;                               ///< --to
  std::string record;                                 ///< --record, a folder; "": write nothing down
  bool way_back = false;                              ///< --back
  ProductFormat format = ProductFormat::Text;
  std::string output;   ///< "" or "-": standard output
  std::string picture;  ///< "svg", "pdf", "png"; "": by the suffix of `output`
  std::string plug;
  std::string symptom;          ///< --symptom; "": list those that the machine can show
  bool place = false;           ///< --place
  std::string machine;          ///< --machine, as the person calls it
  std::string date;             ///< --date, as given
  std::string sheet_as;         ///< --as; "": by the suffix of `output`
  std::string language = "en";  ///< --language, of the sheet; nothing of the environment is asked
  bool landscape = false;
  bool watch = false;  ///< --watch: again whenever a file of the command line is saved
  std::string view = "wire";
  bool view_given = false;
  std::string seen_list;          ///< start: --seen
  std::string housing;            ///< start: --pitch, --family
  std::vector<NamedValue> known;  ///< start: --known
  std::string id, title;          ///< start: of what is described; "": by -o and the kind
  bool replace = false;           ///< start: over a file that is there
  std::string paper = "a4";
  int max_errors = 20;  ///< diagnostics of one rule; 0: all
  ColourChoice colour = ColourChoice::Auto;
  bool colour_out = false;  ///< settled by main from `colour`, the streams and the environment
  bool colour_err = false;
  /// Where a command that runs long may write piece by piece; set by main. Empty stream_out: the product goes
  /// to a file, whole or not at all, and is handed over with the Outcome.
  std::function<void(std::string_view)> stream_out;
  std::function<void(std::string_view)> stream_err;
  bool terminal_err = false;  ///< a person watches standard error

  bool to_stdout() const { return output.empty() || output == "-"; }
};

/// One option of a command, as help and manual tell it and shells complete it.
struct OptionRow {
  std::vector<std::string> names;  ///< "-o", "--output"
  std::string value;               ///< what stands behind it, "" for nothing: "PLUG=HEADER"
  std::string says;
  std::vector<std::string> words;  ///< the value is one of these, when not empty
  bool repeats = false;            ///< may be given several times
};

/// What stands above an example: what it does, and the exit status where that is not 0.
std::string example_says(const Example&);

/// In the order of the help text.
std::vector<OptionRow> option_rows(const Command&);

/// Text to be printed instead of running a command: --help, --version.
struct Information {
  std::string text;
};

/// `arguments` without the program's name. Throws UsageError.
std::variant<Options, Information> parse_command_line(const std::vector<std::string>& arguments,
                                                      std::span<const Command> commands);

}  // namespace plugward
