// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/record_test.cpp: what is recorded is read back and judged as planned.
#include "plan/record.h"

#include <algorithm>
#include <filesystem>

#include "base/format.h"
#include "model/harness_text.h"
#include "plan/loom_apart.h"

namespace plugward {
namespace {

constexpr std::size_t longest_id = 40;

/// How the loom in `loom_path` names `path`.
std::string named_from(const std::string& loom_path, const std::string& path) {
  const std::string way = file_for_loom(loom_path, path);
  return way.empty() ? std::filesystem::absolute(path).lexically_normal().generic_string() : way;
}

std::string and_also(std::string note, const std::string& more) {
  if (note.empty()) return more;
  return more.empty() ? note : format("{}; {}", note, more);
}

class Recorder {
 public:
  Recorder(const SwapPlan& plan, const Loom& old, const LoomFiles& files, const RecordPlace& where)
      : plan_(plan), old_(old), files_(files), where_(where) {}

  Record run() {
    head();
    jumpers();
    harnesses();
    headers();
    record_.files.push_back({where_.loom, loom_text(record_.loom)});
    return std::move(record_);
  }

 private:
  void head() {
    Loom& loom = record_.loom;
    loom.id = format("{}-{}", old_.id, plan_.board->id).substr(0, longest_id);
    loom.title = format("{}; on {}", old_.title, plan_.board->title);
    loom.board = named_from(where_.loom, where_.board);
    loom.evidence = record_evidence;
    loom.note = old_.note;
    Evidence evidence;
    evidence.id = record_evidence;
    evidence.kind = EvidenceKind::Plan;
    evidence.note =
        "planned, not yet seen: when the work is done and every plug and jumper was looked at, write the "
        "kind "
        "photograph or measurement here, add the day (date), and say in this note what was looked at";
    loom.evidences.push_back(std::move(evidence));
  }

  void jumpers() {
    for (const JumperChoice& choice : plan_.jumpers) {
      FittedJumper fitted;
      fitted.jumper = choice.jumper;
      fitted.rail = choice.rail;
      if (choice.rail.empty()) fitted.note = "no plug of this machine depends on it";
      record_.loom.jumpers.push_back(std::move(fitted));
    }
  }

  void harnesses() {
    const std::vector<Harness> now = harnesses_apart(plan_.harness, files_);
    int plug = 0;
    for (std::size_t h = 0; h < now.size(); ++h) {
      LoomHarness named = old_.harnesses[h];
      const bool rebuilt = is_rebuilt(now[h], files_.harnesses[h], old_);
      if (rebuilt) {
        named.note = and_also(format("built anew from '{}'", named.file), named.note);
        named.file = beside_loom(named.id);
        add_file(now[h], named.file);
      } else {
        named.file = named_from(where_.loom, file_of_loom(where_.old_loom, named.file));
      }
      record_.loom.harnesses.push_back(std::move(named));
      for (std::size_t p = 0; p < now[h].plugs.size(); ++p) seat(now[h], h, p, rebuilt, plug++);
    }
  }

  /// The loom's own file keeps its name.
  std::string beside_loom(const std::string& id) const {
    const std::string name = id + ".xml";
    const bool taken = std::filesystem::path(where_.loom).filename().string() == name;
    return taken ? id + "-harness.xml" : name;
  }

  void add_file(const Harness& harness, const std::string& name) {
    const std::filesystem::path folder = std::filesystem::path(where_.loom).parent_path();
    record_.files.push_back({(folder / name).generic_string(), harness_text(harness)});
    record_.harnesses.push_back(harness);
  }

  void seat(const Harness& harness, std::size_t h, std::size_t p, bool rebuilt, int plug) {
    const PlugTransfer& transfer = plan_.of(plug);
    const Plug& now = harness.plugs[p];
    const Seat* was = old_.seat(harness.id, now.id);
    Seat seat;
    seat.harness = harness.id;
    seat.plug = now.id;
    if (!rebuilt) seat.leads = leads_now(now, files_.harnesses[h].plugs[p], was);
    if (transfer.goes_over()) {
      seat.state = SeatState::OnHeader;
      seat.header = plan_.board->headers[static_cast<std::size_t>(*transfer.to)].id;
    } else {
      seat.state = SeatState::Loose;
      seat.note = format("{}: {}", transfer.kind == Transfer::Off ? "stays off" : "no place here",
                         transfer.why.empty() ? std::string("no header takes it") : transfer.why);
      if (was != nullptr && was->state == SeatState::Loose) seat.note = and_also(was->note, seat.note);
    }
    for (const Lead& lead : now.leads) {
      if (lead.cavity > 0) continue;
      const std::string out = format("{} is out of its cavity, insulated and tagged", to_code(lead.colour));
      seat.note = and_also(seat.note, out);
    }
    record_.loom.seats.push_back(std::move(seat));
  }

  void headers() {
    Loom& loom = record_.loom;
    std::vector<std::string> uses;
    for (const LoomHeader& header : old_.headers) {
      if (!header.taken) continue;
      const Header* on_old = files_.board.header(header.header);
      if (on_old != nullptr) uses.push_back(on_old->use);
      loom.note = and_also(
          loom.note,
          format("what sat on {} of board '{}'{} goes over too: say here which header it took", header.header,
                 files_.board.id, header.note.empty() ? "" : format(" ({})", header.note)));
    }
    for (const int h : plan_.free_headers) {
      const Header& header = plan_.board->headers[static_cast<std::size_t>(h)];
      if (std::find(uses.begin(), uses.end(), header.use) != uses.end()) continue;
      LoomHeader free;
      free.header = header.id;
      loom.headers.push_back(std::move(free));
    }
  }

  const SwapPlan& plan_;
  const Loom& old_;
  const LoomFiles& files_;
  const RecordPlace& where_;
  Record record_;
};

}  // namespace

Record finished_state(const SwapPlan& plan, const Loom& old, const LoomFiles& files,
                      const RecordPlace& where) {
  return Recorder(plan, old, files, where).run();
}

}  // namespace plugward
