#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What `check --format spice` writes is run by ngspice, and comes to the figures of `check --format json`: the volts
on a pin that an overvoltage names, and the most that each rail gives.

    spice_test.py PLUGWARD SOURCE_DIR
"""
import collections
import json
import pathlib
import re
import subprocess
import sys
import tempfile

HEADERS = ["J3", "J7", "J8", "J13", "J15", "J20", "J21", "J23"]


def check(program, source, pair, form):
    return subprocess.run([program, "check", *pair, "--format", form], cwd=source, capture_output=True, text=True)


class Solved:
    """Volts by node and amps out of each held node, state by state, as ngspice sees them."""

    def __init__(self, deck, folder):
        self.names, self.held, self.sources = {}, set(), {}
        for line in deck.splitlines():
            if m := re.fullmatch(r"\* (n\d+_\d+) is (.*?)(, held at its volts)?", line):
                self.names[m[1]] = m[2]
                if m[3]:
                    self.held.add(m[1])
            elif m := re.match(r"(v\d+_\d+) (n\d+_\d+) 0 ", line):
                self.sources[m[1]] = m[2]
        path = pathlib.Path(folder) / "wiring.cir"
        path.write_text(deck)
        run = subprocess.run(["ngspice", "-b", str(path)], capture_output=True, text=True)
        self.fine = run.returncode == 0 and "rror" not in run.stdout + run.stderr and "failed" not in run.stdout
        self.states = []
        for line in run.stdout.splitlines():
            if m := re.match(r"state (\d+)\.\d+:", line):
                self.states.append((int(m[1]), {}, {}))
            elif m := re.match(r"v\((n\S+)\) = (\S+)", line):
                self.states[-1][1][m[1]] = float(m[2])
            elif m := re.match(r"i\((v\S+)\) = (\S+)", line):
                self.states[-1][2][m[1]] = -float(m[2])  # ngspice counts into the plus of a source

    def most_volts(self, pin):
        nodes = [n for n, name in self.names.items() if name == pin and n not in self.held]
        return [f(v[n] for _, v, _ in self.states for n in nodes if n in v) for f in (max, min)] if nodes else None

    def rail_amps(self, rail):
        """Islands do not influence each other: their worst add up."""
        most = collections.defaultdict(float)
        for island, _, amps in self.states:
            given = sum(a for source, a in amps.items() if self.names[self.sources[source]] == rail)
            most[island] = max(most[island], given)
        return sum(most.values())


def close(one, other):
    return abs(one - other) <= max(1e-3, 2e-3 * abs(one))


def compare(pair, judged, solved, counts):
    faults = []
    for finding in judged["findings"]:
        on = re.search(r" V on (J\w+\.\d+), which", finding["message"])
        if finding["rule"] == "overvoltage" and on:
            volts = solved.most_volts(on[1])
            counts["pins"] += 1
            if volts is None or not any(close(finding["figure"], v) for v in volts):
                faults.append(f"{pair}: {finding['message']}; ngspice {volts}")
    shorted = any(f["rule"] == "short-circuit" for f in judged["findings"])
    if judged["plan"] is None and not judged["cures"] and not shorted:
        for row in judged["budget"]:
            if row["kind"] == "rail" and row["amps"] > 1e-6:
                counts["rails"] += 1
                amps = solved.rail_amps(row["at"]["rail"])
                if not close(row["amps"], amps):
                    faults.append(f"{pair}: {row['what']} gives {row['amps']} A; ngspice {amps}")
    return faults


def main():
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    counts, faults = collections.Counter(), []
    for harness in sorted((source / "harnesses").glob("*.xml")):
        plug = re.search(r'<plug id="([^"]+)"', harness.read_text(encoding="utf-8"))
        if not plug:
            continue
        for header in HEADERS:
            pair = ["boards/heron-m7.xml", f"harnesses/{harness.name}", "--at", f"{plug[1]}={header}",
                    "--jumper", "JP2=5V", "--jumper", "JP3=24V", "--jumper", "JP4=24V"]
            told = check(program, source, pair, "json")
            if told.returncode == 2:
                counts["no judgement"] += 1
                continue
            deck = check(program, source, pair, "spice").stdout
            with tempfile.TemporaryDirectory() as folder:
                solved = Solved(deck, folder)
            counts["solved" if solved.fine else "no answer"] += 1
            if solved.fine:
                faults += compare(" ".join(pair[1:4]), json.loads(told.stdout), solved, counts)
    for fault in faults:
        print(fault)
    print(dict(counts))
    enough = counts["solved"] >= 100 and counts["pins"] >= 15 and counts["rails"] >= 30
    return 1 if faults or not enough or counts["no answer"] > counts["solved"] / 20 else 0


if __name__ == "__main__":
    sys.exit(main())
