#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""glpsol finds the same optimum, level by level.

    optimum_test.py OPTIMUM_CASES [--count N] [--seed S] [--bench]

Each instance is written as a binary program in CPLEX LP form and solved once a level of preference: the most
important level is made least, then held at that value while the next one is made least. No weights, so nothing
can be lost in them. The programs are built from the instance alone and share no code with the solver:

    target   y[g,k] = 1: group g is used as its choice k; z[r,c,k] = 1: lead r is in cavity c under choice k
             sum_k y[g,k] = 1;  sum_c z[r,c,k] = y[g,k];  sum_{r,k} z[r,c,k] <= 1
    place    x[r,h] = 1: plug r is on header h; u[r] = 1: on none;  w[r,h,a] >= x[r,h] + x[anchor,a] - 1

--bench prints our time and glpsol's on the same instances and fails when the ratio is below 100.
GNU Linear Programming Kit, reference manual for version 5.0 (CPLEX LP format).
"""
import argparse
import json
import pathlib
import subprocess
import sys
import tempfile
import time


class Program:
    """Binary program whose objective has levels."""

    def __init__(self, levels):
        self.levels = [dict() for _ in range(levels)]
        self.rows = []
        self.binaries = []
        self.seconds = 0.0

    def binary(self, name, levels):
        self.binaries.append(name)
        self.cost(name, levels)

    def cost(self, name, levels):
        for total, value in zip(self.levels, levels):
            if value:
                total[name] = value

    @staticmethod
    def expression(terms):
        return "\n".join(f" {'+' if k >= 0 else '-'} {abs(k)} {n}" for n, k in terms.items())

    def write(self, path, level, held):
        lines = ["Minimize", " obj:"]
        lines.append(self.expression(self.levels[level]) or " 0 " + self.binaries[0])
        lines.append("Subject To")
        rows = self.rows + [(self.levels[i], "=", value) for i, value in enumerate(held) if self.levels[i]]
        for number, (terms, sense, right) in enumerate(rows):
            lines.append(f" r{number}: {self.expression(terms)} {sense} {right}")
        lines.append("Binary")
        lines.extend(" " + name for name in self.binaries)
        lines.append("End")
        path.write_text("\n".join(lines) + "\n", encoding="ascii")

    def solve(self, folder):
        """The least value of every level, or None when there is no solution."""
        held = []
        for level, terms in enumerate(self.levels):
            if not terms and level > 0:
                held.append(0)
                continue
            program, answer = folder / "p.lp", folder / "p.sol"
            self.write(program, level, held)
            begin = time.perf_counter()
            subprocess.run(["glpsol", "--lp", program, "-w", answer], stdout=subprocess.DEVNULL, check=True)
            self.seconds += time.perf_counter() - begin
            head = next(line for line in answer.read_text().splitlines() if line.startswith("s mip"))
            status, value = head.split()[4:6]
            if status == "n":
                return None
            if status != "o":
                raise RuntimeError(f"glpsol says {head}")
            held.append(round(float(value)))
        return held


def program_of_target(instance):
    program = Program(4)
    in_column = {}
    row = 0
    for g, choices in enumerate(instance["groups"]):
        one = {}
        for k, choice in enumerate(choices):
            y = f"y_{g}_{k}"
            program.binary(y, choice["levels"])
            one[y] = 1
            for r, line in enumerate(choice["lines"]):
                taken = {y: -1}
                for column, levels in line:
                    z = f"z_{row + r}_{column}_{k}"
                    program.binary(z, levels)
                    taken[z] = 1
                    in_column.setdefault(column, {})[z] = 1
                program.rows.append((taken, "=", 0))
        program.rows.append((one, "=", 1))
        row += len(choices[0]["lines"])
    program.rows += [(terms, "<=", 1) for terms in in_column.values()]
    return program


def program_of_place(instance):
    program = Program(8)
    in_header = {}
    goes = [dict(line) for line in instance["cost"]]
    for r, line in enumerate(instance["cost"]):
        program.binary(f"u_{r}", [1])
        one = {f"u_{r}": 1}
        for h, levels in line:
            x = f"x_{r}_{h}"
            program.binary(x, levels)
            one[x] = 1
            in_header.setdefault(h, {})[x] = 1
        program.rows.append((one, "=", 1))
    program.rows += [(terms, "<=", 1) for terms in in_header.values()]
    for r, anchor in enumerate(instance["anchor"]):
        if anchor == r:
            continue
        for h in goes[r]:
            for a in goes[anchor]:
                far = instance["distance"][a][h]
                if far == 0 or a == h:
                    continue
                w = f"w_{r}_{h}_{a}"
                program.binary(w, [0] * 7 + [far])
                program.rows.append(({w: 1, f"x_{r}_{h}": -1, f"x_{anchor}_{a}": -1}, ">=", -1))
    return program


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("cases")
    parser.add_argument("--count", type=int, default=60)
    parser.add_argument("--seed", type=int, default=2026)
    parser.add_argument("--bench", action="store_true")
    options = parser.parse_args()
    made = subprocess.run([options.cases, str(options.seed), str(options.count)], check=True, capture_output=True,
                          text=True)
    faults = solvable = 0
    ours = theirs = 0.0
    with tempfile.TemporaryDirectory() as name:
        for number, line in enumerate(made.stdout.splitlines()):
            instance = json.loads(line)
            build = program_of_target if instance["kind"] == "target" else program_of_place
            program = build(instance)
            best = program.solve(pathlib.Path(name))
            ours += instance["micros"] * 1e-6
            theirs += program.seconds
            solvable += best is not None
            if best != instance["ours"]:
                faults += 1
                print(f"instance {number} of seed {options.seed} ({instance['kind']}): ours {instance['ours']}, "
                      f"glpsol {best}")
    print(f"{options.count} instances (seed {options.seed}), {solvable} with a solution, {faults} differ")
    if options.bench:
        ratio = theirs / ours
        what = f"optimum of {options.count} targets and placements"
        print(f"{what:58} | {'glpsol on the same instances':44} | {ratio:8.0f} | at least 100")
        print(f"    {ours * 1e3:.1f} ms; glpsol {theirs * 1e3:.0f} ms")
        faults += ratio < 100
    return 1 if faults or solvable < options.count // 4 else 0


if __name__ == "__main__":
    sys.exit(main())
