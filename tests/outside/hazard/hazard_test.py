# SPDX-License-Identifier: MIT
"""A second judge of hazards that shares no code with the program: Python and ngspice against 'plugward check'.

usage: hazard_test.py PROGRAM SOURCE_DIR [--any-family] [--varied N] [--all | --sample N] [--seed S] [--only TEXT] [--keep FOLDER] [--whole]

Every shipped harness, on every header of the shipped boards that its plug goes on with equal positions, at every position
of the jumper that feeds the header, as shipped, with every two cavities exchanged, and turned. The kite probe also with
both plugs on. For each of these, every state is solved by ngspice and the limits are judged here (network.py, limits.py);
the program judges a copy of the harness in which the leads sit so. Both must find the same harms at the same places.
Nothing may be missed, nothing invented. In a state with a short circuit no other overcurrent need be named.

--any-family also takes the headers of other families, as if the leads had been crimped into another housing; --varied
adds the cases of N seeded variations of all the files (vary.py). The shipped files made 1234 cases on 2026-11-25 with
--any-family; the cases of a variation are as many (11106 with 8 of them: two to eight minutes on two shared cores). Beyond 1500 cases, or --sample, the varied ones are sampled by
the seed unless --all is given.

--whole takes all products of all states; without it, parts of the circuit that share nothing but ground and rails are
solved apart.

To repeat a disagreement: the same call with --only and the line that it is printed with; --keep leaves the files in
FOLDER, and the call of the program is printed.
"""

import argparse
import collections
import concurrent.futures
import dataclasses
import glob
import itertools
import os
import random
import sys
import tempfile

import description
import limits
import network
import program
import spice
import vary

SAMPLE = 1500
CASES_PER_RUN = 25


@dataclasses.dataclass
class Case:
    board: description.Board
    harness: description.Harness
    placements: dict  # plug -> header
    arrangement: dict  # plug -> cavity -> cavity as shipped
    jumpers: dict

    def words(self):
        leads = "; ".join(f"{plug} " + " ".join(f"{new}<{old}" for new, old in sorted(moved.items()) if new != old)
                          for plug, moved in self.arrangement.items() if any(n != o for n, o in moved.items()))
        at = " ".join(f"{plug}={header}" for plug, header in self.placements.items())
        set_to = " ".join(f"{jumper}={rail}" for jumper, rail in self.jumpers.items())
        return f"{self.harness.id} on {self.board.id}: {at} {set_to} ({leads or 'as shipped'})"


def arrangements(plug):
    """cavity -> the cavity whose lead it holds, for the leads there are; as shipped, two exchanged, turned."""
    n = plug.positions
    orders = [list(range(1, n + 1)), list(range(n, 0, -1))]
    for a, b in itertools.combinations(range(n), 2):
        order = list(range(1, n + 1))
        order[a], order[b] = order[b], order[a]
        orders.append(order)
    unique = []
    for order in orders:
        held = {new: old for new, old in enumerate(order, 1) if old in plug.leads}
        if held not in unique:
            unique.append(held)
    return unique


def goes_on(plug, header, families, any_family):
    mates = any_family or plug.family == header.family or header.family in families[plug.family]["mates"] or plug.family in families[header.family]["mates"]
    return mates and plug.rows == header.rows and plug.positions == header.positions


def jumper_positions(board, headers):
    """Every setting of the jumpers that feed these headers."""
    used = sorted({pin.attributes["jumper"] for h in headers for pin in board.headers[h].pins.values() if "jumper" in pin.attributes})
    return [dict(zip(used, rails)) for rails in itertools.product(*(board.jumpers[j] for j in used))]


def all_cases(source, families, any_family):
    boards = [description.read_board(path) for path in sorted(glob.glob(f"{source}/boards/*.xml"))]
    harnesses = [description.read_harness(path) for path in description.harness_paths(f"{source}/harnesses")]
    for harness, board in itertools.product(harnesses, boards):
        fits = {plug.id: [h.id for h in board.headers.values() if goes_on(plug, h, families, any_family)] for plug in harness.plugs.values()}
        together = [{plug: header} for plug, headers in fits.items() for header in headers]
        if len(fits) == 2:  # both on, each on the first header that takes it
            together.append({plug: headers[0] for plug, headers in fits.items() if headers})
        for placements in together:
            ways = [arrangements(harness.plugs[plug]) for plug in placements]
            for jumpers in jumper_positions(board, placements.values()):
                for chosen in itertools.product(*ways):
                    yield Case(board, harness, placements, dict(zip(placements, chosen)), jumpers)


def solve_all(circuits, folder):
    """Gives every state of every piece its solution; circuits: lists of (Piece, its States)."""
    states = [state for pieces in circuits for _, of_piece in pieces for state in of_piece]
    for state, solved in zip(states, spice.solve([s.elements for s in states], folder)):
        state.solved = solved


@dataclasses.dataclass
class Outcome:
    case: Case
    ours: dict
    theirs: dict
    missed: list
    invented: list
    call: str
    refused: bool = False


def judge_cases(numbered, binary, families, keep, whole):
    """Outcomes of some cases, their states solved in few runs of ngspice."""
    with tempfile.TemporaryDirectory() as folder:
        circuits = []
        for _, case in numbered:
            leads = {p: {new: case.harness.plugs[p].leads[old] for new, old in held.items()} for p, held in case.arrangement.items()}
            circuit = network.build(case.board, case.harness, case.placements, leads, case.jumpers)
            circuits.append((circuit, [(piece, list(piece.states())) for piece in circuit.pieces(whole)]))
        solve_all([pieces for _, pieces in circuits], folder)
        outcomes = []
        for (number, case), (circuit, pieces) in zip(numbered, circuits):
            ours = limits.judge(circuit, pieces, case.board, families)
            path = os.path.join(keep or folder, f"case-{number}.xml")
            program.write_variant(case.harness, case.arrangement, path)
            args = program.command(binary, case.board, path, case.placements, case.jumpers)
            theirs = program.harms(args, case.harness.devices, case.board, case.jumpers)
            if theirs is None:
                outcomes.append(Outcome(case, {}, {}, [], [], "", refused=True))
                continue
            missed = ours.missed(theirs)
            invented = [key for key in theirs if key not in ours]
            outcomes.append(Outcome(case, ours, theirs, missed, invented, " ".join(args)))
        return outcomes


def print_table(title, outcomes):
    rows = collections.OrderedDict()
    for o in outcomes:
        row = rows.setdefault(o.case.harness.id, [0] * 5)
        for i, count in enumerate((1, sum(not h.covered for h in o.ours.values()), len(o.theirs), len(o.missed), len(o.invented))):
            row[i] += count
    rows["all"] = [sum(column) for column in zip(*rows.values())]
    print(f"{title + ':':20} {'cases':>6} {'ngspice':>8} {'program':>8} {'missed':>7} {'invented':>9}")
    for name, row in rows.items():
        print(f"{name:20} {row[0]:6} {row[1]:8} {row[2]:8} {row[3]:7} {row[4]:9}")
    kinds = collections.Counter(kind for o in outcomes for (_, kind), harm in o.ours.items() if not harm.covered)
    print("  " + ", ".join(f"{count} {kind}" for kind, count in kinds.most_common()))


def print_disagreements(outcomes, keep):
    for o in outcomes:
        if not o.missed and not o.invented:
            continue
        print(f"DISAGREE: {o.case.words()}")
        if keep:
            print(f"  {o.call}")
        for key in o.missed:
            harm = o.ours[key]
            print(f"  missed:   {key[1]} at {key[0]}: {harm.value:.5g}, limit {harm.limit:.5g} ({harm.state})")
        for key in o.invented:
            print(f"  invented: {key[1]} at {key[0]}: {o.theirs[key]}")


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program")
    parser.add_argument("source")
    parser.add_argument("--any-family", action="store_true")
    parser.add_argument("--varied", type=int, default=0)
    parser.add_argument("--keep")
    parser.add_argument("--all", action="store_true")
    parser.add_argument("--sample", type=int, default=SAMPLE)
    parser.add_argument("--seed", type=int, default=20261125)
    parser.add_argument("--only", default="")
    parser.add_argument("--whole", action="store_true")
    options = parser.parse_args()
    families = description.read_families(f"{options.source}/src/catalogue/families.xml")
    with tempfile.TemporaryDirectory() as folder:
        sources = [options.source]
        if options.keep:
            os.makedirs(options.keep)
        for i in range(options.varied):
            sources.append(os.path.join(options.keep or folder, f"varied-{i}"))
            vary.write_varied(options.source, sources[-1], random.Random(options.seed + i))
        return judge_sources(sources, families, options)


def judge_sources(sources, families, options):
    every = [[case for case in all_cases(source, families, options.any_family) if options.only in case.words()] for source in sources]
    shipped, varied = every[0], [case for cases in every[1:] for case in cases]
    wanted = max(0, options.sample - len(shipped))
    if not options.all and len(varied) > wanted:
        varied = [varied[i] for i in sorted(random.Random(options.seed).sample(range(len(varied)), wanted))]
    cases = shipped + varied
    numbered = list(enumerate(cases))
    batches = [numbered[i:i + CASES_PER_RUN] for i in range(0, len(numbered), CASES_PER_RUN)]
    with concurrent.futures.ProcessPoolExecutor(max_workers=2) as pool:
        runs = pool.map(judge_cases, batches, *map(itertools.repeat, (options.program, families, options.keep, options.whole)))
        outcomes = [outcome for run in runs for outcome in run]
    if not outcomes:
        sys.exit("no case")
    refused = sum(o.refused for o in outcomes)
    print(f"{len(cases)} of {sum(map(len, every))} cases, seed {options.seed}, {refused} refused by the program")
    print_table("as shipped", outcomes[:len(shipped)])
    if varied:
        print_table("varied", outcomes[len(shipped):])
    print_disagreements(outcomes, options.keep)
    if any(o.refused for o in outcomes[:len(shipped)]) or 10 * refused > len(outcomes):
        print("FAIL: the program refuses the files of too many cases")
        return 1
    return 1 if any(o.missed or o.invented for o in outcomes) else 0


if __name__ == "__main__":
    sys.exit(main())
