#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""A run that is killed leaves its output whole or not at all.

    killed_test.py PROGRAM SOURCE_DIR [TRIES]

Half of the runs are killed at a random moment, the others a moment after the first new name appears beside the output.
Then the output must be the old file or the whole new one, a record must hold whole files and its loom only with all
the others, nothing else may be touched but for one temporary, and the same command must end well afterwards.
"""
import multiprocessing
import os
import random
import shutil
import sys
import time

from bench import FITTED, Bench, Faults, contents

PAIR = ["boards/heron-m7.xml", "harnesses/kite-probe.xml"]
KITE = [*PAIR, *FITTED]
SWAP = ["harnesses/wren-a4.xml", "--to", "boards/heron-m7.xml"]
COMMANDS = {
    "draw.svg": ["draw", *KITE, "-o"],
    "draw.pdf": ["draw", *KITE, "-o"],
    "draw.png": ["draw", *KITE, "--plug", "control", "-o"],
    "sheet.html": ["sheet", *KITE, "-o"],
    "sheet.pdf": ["sheet", *KITE, "-o"],
    "record": ["swap", *SWAP, "-o", os.devnull, "--record"],
}


def is_temporary(name):
    return name.split(b"/")[-1].startswith(b".plugward-")


def begun(folder, before, process):
    """True as soon as a name is in the folder that was not there; False when the process ended first."""
    while process.poll() is None:
        if any(name not in before for name in os.listdir(folder)):
            return True
    return False


def kill_one(process, folder, before, lasts, dice):
    if dice.random() < 0.5:
        time.sleep(dice.random() * lasts * 1.1)
    elif begun(folder, before, process):
        time.sleep(dice.random() * dice.choice([0.0001, 0.001, 0.01]))
    process.kill()
    return process.wait() == -9


def look(faults, name, folder, old, whole, inside):
    """`inside`: what the output's folder holds after the kill."""
    left = {n: held for n, held in inside.items() if is_temporary(n)}
    rest = {n: held for n, held in inside.items() if n not in left}
    faults.must(len(left) <= 1, f"{name}: {len(left)} temporaries are left")
    if name != "record":
        faults.must(rest in (old, whole), f"{name}: {folder} holds neither the old file nor the whole new one: {rest}")
        return
    wrong = [n for n, held in rest.items() if whole.get(n) != held]
    faults.must(not wrong, f"record: not whole: {wrong}")
    if b"record/loom.xml" in rest:
        faults.must(rest == whole, "record: the loom is there before the files that it names")


class Tries:
    """A share of all tries, for one process."""

    def __init__(self, bench, wholes, lasts):
        self.bench, self.wholes, self.lasts = bench, wholes, lasts

    def __call__(self, share):
        seed, tries = share
        faults, dice = Faults(), random.Random(seed)
        counts = dict.fromkeys(("killed", "with a temporary", "not yet whole"), 0)
        for number in range(tries):
            name = list(COMMANDS)[number % len(COMMANDS)]
            folder = self.bench.folder(f"out {seed}")
            if name != "record" and dice.random() < 0.5:
                (folder / name).write_bytes(b"old")
            old = contents(folder)
            process = self.bench.start(*COMMANDS[name], folder / name)
            counts["killed"] += kill_one(process, folder, os.listdir(folder), self.lasts[name], dice)
            inside = contents(folder)
            look(faults, name, folder, old, self.wholes[name], inside)
            counts["with a temporary"] += any(is_temporary(n) for n in inside)
            counts["not yet whole"] += inside != self.wholes[name]
            if number % 20 == 0 or number % 3 == 0 and b"record" in inside:
                self.bench.run(*COMMANDS[name], folder / name)
                again = {n: held for n, held in contents(folder).items() if not is_temporary(n)}
                faults.must(again == self.wholes[name], f"{name}: run again it does not end well")
            shutil.rmtree(folder)
        return faults, counts


def main():
    program, source = sys.argv[1:3]
    tries = int(sys.argv[3]) if len(sys.argv) > 3 else 500
    faults, total = Faults(), {}
    with Bench(program, source) as bench:
        untouched = contents(bench.place)
        wholes, lasts = {}, {}
        for name, words in COMMANDS.items():
            folder = bench.folder(f"whole {name}")
            began = time.monotonic()
            done = bench.run(*words, folder / name)
            lasts[name] = time.monotonic() - began
            wholes[name] = contents(folder)
            faults.must(wholes[name] and done.returncode in (0, 1), f"{name}: {done.stderr}")
        shares = 4
        with multiprocessing.get_context("fork").Pool(shares) as pool:
            for share, counts in pool.map(Tries(bench, wholes, lasts), [(i, tries // shares) for i in range(shares)]):
                faults.take(share)
                total = {name: total.get(name, 0) + count for name, count in counts.items()}
        faults.same(contents(bench.place), untouched, "the inputs")
    faults.must(total["killed"] > tries // 2, f"too few were killed: {total}")
    faults.must(total["with a temporary"] > tries // 20, f"too few were killed while they wrote: {total}")
    faults.end(f"; {tries} tries: {total}")


if __name__ == "__main__":
    main()
