# SPDX-License-Identifier: MIT
"""The second judge of hazards against the program on random boards, harnesses, jumpers and seatings.

usage: random_test.py HAZARD_WORLDS SOURCE_DIR --count N [--first SEED] [--jobs 2] [--log FILE] [--whole]
       random_test.py HAZARD_WORLDS SOURCE_DIR --shrink SEED

HAZARD_WORLDS (random_worlds.cpp) makes the worlds by their seeds and says which harms the program finds in each; here
each is judged again from its two files, by network.py, limits.py and ngspice. Both must find the same harms at the same
places: none missed, none invented. A disagreement is cut down to the smallest pair of files that still shows it and
printed; --shrink SEED does that for one seed. --log adds a line for each thousand seeds that are done, so that a long
run that was broken off goes on with --first.

Cases that have more states than the program tries are counted and not compared.
"""

import argparse
import collections
import concurrent.futures
import copy
import dataclasses
import itertools
import os
import subprocess
import sys
import tempfile
import time
import xml.etree.ElementTree as ET

import description
import hazard_test
import limits
import network
import program

CASES_PER_BATCH = 200
MOST_SHOWN = 5


@dataclasses.dataclass
class World:
    seed: str
    placements: dict  # plug -> header
    jumpers: dict
    seat: str  # "p1 1 0 0": the plug, turned, columns, rows; "" when all are at home
    board: ET.Element
    harness: ET.Element

    def line(self):
        table = lambda entries: " ".join(f"{key}={value}" for key, value in sorted(entries.items()))
        trees = (ET.tostring(tree, encoding="unicode").replace("\n", " ").replace("\t", " ") for tree in (self.board, self.harness))
        return "\t".join(("world", self.seed, table(self.placements), table(self.jumpers), self.seat, *trees))


@dataclasses.dataclass
class Answer:
    """What the program says of a world."""
    world: World
    harms: list  # (rule, message, state)
    refused: str = ""
    many: bool = False  # more states than it tries


def world_of(line):
    _, seed, at, jumpers, seat, board, harness = line.split("\t")
    table = lambda words: dict(word.split("=") for word in words.split())
    return World(seed, table(at), table(jumpers), seat, ET.fromstring(board), ET.fromstring(harness))


def answers(lines):
    for line in lines:
        word, _, rest = line.rstrip("\n").partition("\t")
        if word == "world":
            answer = Answer(world_of(line.rstrip("\n")), [])
        elif word == "harm":
            answer.harms.append(tuple(rest.split("\t")))
        elif word == "refused":
            answer.refused = rest
        elif word == "many":
            answer.many = True
        elif word == "end":
            yield answer


def theirs_of(answer, board, harness):
    """(place, kind) -> message."""
    found = {}
    for rule, message, state in answer.harms:
        if rule in program.KINDS:
            place, kind = program.place_of(message, harness.devices), program.KINDS[rule]
            if kind == "back-feed":
                place = program.at_rail(place, board, answer.world.jumpers)
            found[(place, kind)] = message + (f" ({state})" if state else "")
    return found


@dataclasses.dataclass
class Outcome:
    seed: str
    ours: limits.Harms
    theirs: dict
    missed: list
    invented: list

    def differs(self):
        return bool(self.missed or self.invented)


def judge(given, families, folder, whole):
    """(Outcomes, how many cases have too many states) of some Answers."""
    circuits, skipped = [], 0
    for answer in given:
        world = answer.world
        board, harness = description.board_of(world.board), description.harness_of(world.harness)
        seats = {}
        if world.seat:
            plug, turned, columns, rows = world.seat.split()
            seats[plug] = (turned == "1", int(columns), int(rows))
        circuit = network.build(board, harness, world.placements, {}, world.jumpers, seats)
        try:
            if answer.many:
                raise network.TooManyStates("for the program")
            circuits.append((answer, board, harness, circuit, [(p, list(p.states())) for p in circuit.pieces(whole)]))
        except network.TooManyStates:
            skipped += 1
    hazard_test.solve_all([pieces for *_, pieces in circuits], folder)
    outcomes = []
    for answer, board, harness, circuit, pieces in circuits:
        ours = limits.judge(circuit, pieces, board, families)
        theirs = theirs_of(answer, board, harness)
        outcomes.append(Outcome(answer.world.seed, ours, theirs, ours.missed(theirs), [key for key in theirs if key not in ours]))
    return outcomes, skipped


# --- a smallest case


def ask(binary, worlds):
    run = subprocess.run([binary], input="".join(w.line() + "\n" for w in worlds), capture_output=True, text=True, check=True)
    return list(answers(run.stdout.splitlines()))


def smaller(world):
    """Worlds with one element, attribute, placement, jumper or wrong seating less."""
    for tree in ("harness", "board"):
        parents = [e for e in getattr(world, tree).iter() if len(e)]
        for i, parent in enumerate(parents):
            for k in range(len(parent)):
                less = copy.deepcopy(world)
                same = [e for e in getattr(less, tree).iter() if len(e)][i]
                same.remove(same[k])
                yield less
    for entries in ("placements", "jumpers"):
        for key in getattr(world, entries):
            less = copy.deepcopy(world)
            del getattr(less, entries)[key]
            yield less
    if world.seat:
        yield dataclasses.replace(copy.deepcopy(world), seat="")
    for tree in ("harness", "board"):
        for i, element in enumerate(getattr(world, tree).iter()):
            for key in element.attrib:
                less = copy.deepcopy(world)
                del list(getattr(less, tree).iter())[i].attrib[key]
                yield less


def outcome_of(answer, families):
    """Of one world; None when it cannot be judged any more."""
    if answer.refused or answer.many:
        return None
    with tempfile.TemporaryDirectory() as folder:
        try:
            outcomes, _ = judge([answer], families, folder, False)
        except (KeyError, ValueError, TypeError, NotImplementedError):  # it lacks what a device needs
            return None
    return outcomes[0] if outcomes else None


def symptoms(outcome):
    return {("missed", kind) for _, kind in outcome.missed} | {("invented", kind) for _, kind in outcome.invented}


def shrink(binary, answer, families):
    """The smallest world that still disagrees about one kind of harm in the same way."""
    whole = outcome_of(answer, families)
    wanted = sorted(symptoms(whole))[0]
    progress = True
    while progress:
        progress = False
        for candidate in ask(binary, list(smaller(answer.world))):
            outcome = outcome_of(candidate, families)
            if outcome is not None and wanted in symptoms(outcome):
                answer, progress = candidate, True
                break
    return answer


def show(binary, answer, families):
    small = shrink(binary, answer, families)
    outcome = outcome_of(small, families)
    world = small.world
    print(f"DISAGREE: seed {world.seed}, cut down: at {world.placements}, jumpers {world.jumpers}, seat '{world.seat}'")
    for key in outcome.missed:
        harm = outcome.ours.get(key) or limits.Harm(0, 0, "one of several")
        print(f"  missed:   {key[1]} at {key[0]}: {harm.value:.6g}, limit {harm.limit:.6g} ({harm.state})")
    for key in outcome.invented:
        print(f"  invented: {key[1]} at {key[0]}: {outcome.theirs[key]}")
    for tree in (world.board, world.harness):
        ET.indent(tree)
        print(ET.tostring(tree, encoding="unicode"))
    sys.stdout.flush()


# --- many


@dataclasses.dataclass
class Count:
    cases: int = 0
    skipped: int = 0
    refused: int = 0
    seated: int = 0
    ours: int = 0
    theirs: int = 0
    missed: int = 0
    invented: int = 0
    kinds: collections.Counter = dataclasses.field(default_factory=collections.Counter)

    def add(self, other):
        for field in dataclasses.fields(self):
            setattr(self, field.name, getattr(self, field.name) + getattr(other, field.name))

    def words(self):
        return (f"{self.cases} cases ({self.seated} turned or shifted), {self.refused} refused, {self.skipped} with too many states: "
                f"{self.ours} harms by ngspice, {self.theirs} by the program, {self.missed} missed, {self.invented} invented")


def judge_seeds(first, count, binary, families, whole):
    """(Count, Answers that disagree) of the seeds from `first`."""
    run = subprocess.run([binary, str(count), str(first)], capture_output=True, text=True, check=True)
    given = list(answers(run.stdout.splitlines()))
    taken = [a for a in given if not a.refused]
    total = Count(cases=len(given), refused=len(given) - len(taken), seated=sum(a.world.seat != "" for a in taken))
    with tempfile.TemporaryDirectory() as folder:
        outcomes, total.skipped = judge(taken, families, folder, whole)
    for o in outcomes:
        must = [kind for (_, kind), harm in o.ours.items() if not harm.covered]
        total.ours += len(must)
        total.kinds.update(must)
        total.theirs += len(o.theirs)
        total.missed += len(o.missed)
        total.invented += len(o.invented)
    differing = {o.seed for o in outcomes if o.differs()}
    return total, [a for a in taken if a.world.seed in differing]


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("binary")
    parser.add_argument("source")
    parser.add_argument("--count", type=int, default=2000)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--log")
    parser.add_argument("--whole", action="store_true")
    parser.add_argument("--shrink", type=int)
    options = parser.parse_args()
    families = description.read_families(os.path.join(options.source, "src/catalogue/families.xml"))
    if options.shrink is not None:
        _, differing = judge_seeds(options.shrink, 1, options.binary, families, options.whole)
        for answer in differing:
            show(options.binary, answer, families)
        return 1 if differing else 0
    starts = list(range(options.first, options.first + options.count, CASES_PER_BATCH))
    sizes = [min(CASES_PER_BATCH, options.first + options.count - start) for start in starts]
    total, shown, seeds, begin = Count(), 0, [], time.monotonic()
    with concurrent.futures.ProcessPoolExecutor(max_workers=options.jobs) as pool:
        runs = pool.map(judge_seeds, starts, sizes, *map(itertools.repeat, (options.binary, families, options.whole)))
        for start, size, (count, differing) in zip(starts, sizes, runs):
            total.add(count)
            seeds += [answer.world.seed for answer in differing]
            for answer in differing[:max(0, MOST_SHOWN - shown)]:
                show(options.binary, answer, families)
                shown += 1
            if options.log and ((start + size - options.first) % 1000 == 0 or start == starts[-1]):
                with open(options.log, "a", encoding="utf-8") as log:
                    log.write(f"seeds {options.first}..{start + size - 1}, {time.monotonic() - begin:.0f} s: {total.words()}\n")
    print(f"seeds {options.first}..{options.first + options.count - 1}: {total.words()}")
    print("  " + ", ".join(f"{count} {kind}" for kind, count in total.kinds.most_common()))
    if seeds:
        print("seeds that disagree: " + " ".join(seeds))
    return 1 if seeds or total.refused else 0


if __name__ == "__main__":
    sys.exit(main())
