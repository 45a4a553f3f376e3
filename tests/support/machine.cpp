// SPDX-License-Identifier: MIT
#include "support/machine.h"

#include <algorithm>
#include <stdexcept>

#include "base/file.h"
#include "base/format.h"

namespace plugward::test {
namespace {

void refuse_errors(const Sources& sources, const Diagnostics& diagnostics) {
  if (!diagnostics.has_errors()) return;
  const Diagnostic& first = diagnostics.all().front();
  throw std::runtime_error(format("{}: {}", sources.file(first.span.file).path, first.message));
}

}  // namespace

Machine::Machine() {
  add_builtin_families(catalogue);
}

Machine::Machine(const std::string& loom_path, const std::string& board_path) : Machine() {
  read_loom(sources.add(loom_path, read_file(loom_path)));
  read_to(board_path);
}

std::unique_ptr<Machine> Machine::of_text(const std::string& loom_text, const std::string& board_path) {
  std::unique_ptr<Machine> machine(new Machine());
  machine->read_loom(machine->sources.add(PLUGWARD_SOURCE_DIR "/harnesses/text.xml", loom_text));
  machine->read_to(board_path);
  return machine;
}

std::unique_ptr<Machine> Machine::shipped(const std::string& loom_name, const std::string& board_name) {
  return std::make_unique<Machine>(shipped_loom(loom_name), shipped_board(board_name));
}

void Machine::read_loom(FileId file) {
  Description description = read_description(sources, file, catalogue, diagnostics, {},
                                             [this](const std::string& path, std::size_t) {
                                               for (FileId id = 1; id <= sources.size(); ++id) {
                                                 if (sources.file(id).path == path) return OpenedFile{id, ""};
                                               }
                                               return OpenedFile{sources.add(path, read_file(path)), ""};
                                             });
  refuse_errors(sources, diagnostics);
  if (!description.loom_files) throw std::runtime_error("no loom");
  loom = std::move(description.loom);
  files = std::move(description.loom_files);
  bench = loom_bench(*loom, *files);
}

void Machine::read_to(const std::string& board_path) {
  Description description =
      read_description(sources, sources.add(board_path, read_file(board_path)), catalogue, diagnostics);
  refuse_errors(sources, diagnostics);
  to = std::move(description.board);
}

int Machine::plug(const std::string& name) const {
  const auto found = std::find(bench.names.begin(), bench.names.end(), name);
  if (found == bench.names.end()) throw std::runtime_error("no plug " + name);
  return static_cast<int>(found - bench.names.begin());
}

int Machine::header(const std::string& id) const {
  for (std::size_t h = 0; h < to->headers.size(); ++h) {
    if (to->headers[h].id == id) return static_cast<int>(h);
  }
  throw std::runtime_error("no header " + id);
}

std::string shipped_loom(const std::string& name) {
  return PLUGWARD_SOURCE_DIR "/harnesses/" + name + ".xml";
}

std::string shipped_board(const std::string& name) {
  return PLUGWARD_SOURCE_DIR "/boards/" + name + ".xml";
}

}  // namespace plugward::test
