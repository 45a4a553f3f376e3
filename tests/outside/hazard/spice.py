# SPDX-License-Identifier: MIT
"""Many small circuits solved by ngspice in one batch run.

Diodes are ideal pieces of a line, written as behavioural sources. Nodes that nothing drives are held by a very large
resistor; whether a node is driven is told by `Solved.joined`. One run takes 0.1 ms for a network of seven elements; beyond
some thousand networks in a run ngspice's matrix takes longer for each. Where ngspice does not converge (a current that
nothing limits but a diode), every choice of conducting diodes is solved as a linear network, and the one is taken whose
voltages agree with it.
"""

import itertools
import os
import struct
import subprocess

NETWORKS_PER_RUN = 400
OFF = 1e-12  # S, of a diode that does not conduct
AGREED = 1e-6  # V past which a diode must not be on the other side of its drop
KINK = 1e-7  # V; a diode this near its drop may conduct
LOADED = 1e-7  # A; less through a diode is nothing but what the shunts draw
MOST_STEPS = 60  # of Newton's method; what takes more is solved by choices
SHUNT = 1e10  # ohm from every node to ground


class Solved:
    """Voltages by node, currents out of voltage sources by name, and which nodes are joined by something that conducts."""

    __slots__ = ("elements", "volts", "amps", "groups")

    def __init__(self, elements, volts, amps):
        self.elements, self.volts, self.amps, self.groups = elements, volts, amps, [None, None]

    def joined(self, a, b, loaded):
        """Does a conducting way lead from a to b? `loaded`: only over diodes that carry a current."""
        parent = self.groups[loaded]
        if parent is None:
            self.groups[loaded] = parent = {}
            volts = self.volts
            for e in self.elements:
                least = LOADED * e.value if loaded else -KINK
                if e.kind == "I" or (e.kind == "D" and volts[e.a] - volts[e.b] <= e.drop + least):
                    continue
                x, y = root(parent, e.a), root(parent, e.b)
                if x != y:
                    parent[x] = y
        return root(parent, a) == root(parent, b)

    def held(self, node, outside, high):
        """Does anything outside hold the node up (high), or down? A diode without a current holds its cathode up and its
        anode down, and no more."""
        volts, ways = self.volts, []
        for e in self.elements:
            beyond = volts[e.a] - volts[e.b] - e.drop if e.kind == "D" else 0.0
            if e.kind == "I" or (e.kind == "D" and beyond <= -KINK):
                continue
            loaded = e.kind != "D" or beyond > LOADED * e.value
            ways += [(e.a, e.b)] * (loaded or high) + [(e.b, e.a)] * (loaded or not high)
        reached, more = set(outside), True
        while more:
            found = {b for a, b in ways if a in reached} - reached
            reached |= found
            more = bool(found)
        return node in reached

    def current(self, e):
        """From a to b through a resistor or a diode."""
        volts = self.volts[e.a] - self.volts[e.b]
        return volts / e.value if e.kind == "R" else max(0.0, volts - e.drop) / e.value


def root(parent, node):
    while node in parent:
        node = parent[node]
    return node


def numbered(elements):
    """The circuit without its names, (kind, a, b, value, drop) for each element, and the number of each node."""
    nodes, plain = {"0": 0}, []
    for e in elements:
        plain.append((e.kind, nodes.setdefault(e.a, len(nodes)), nodes.setdefault(e.b, len(nodes)), e.value, e.drop))
    return tuple(plain), nodes


def cards(number, plain):
    lines = []
    for i, (kind, a, b, value, drop) in enumerate(plain):
        a, b = f"n{number}_{a}" if a else "0", f"n{number}_{b}" if b else "0"
        if kind == "D":
            lines.append(f"b{number}_{i} {a} {b} i = v({a},{b}) > {drop!r} ? (v({a},{b}) - {drop!r}) / {value!r} : v({a},{b}) * {OFF!r}")
        else:
            lines.append(f"{kind.lower()}{number}_{i} {a} {b} {value!r}")
    return lines


def read_raw(path):
    """The one point of a binary raw file: name -> value."""
    with open(path, "rb") as file:
        head, _, values = file.read().partition(b"Binary:\n")
    names = [line.split(b"\t")[2].decode() for line in head.partition(b"Variables:\n")[2].splitlines()]
    if len(values) != 8 * len(names):
        raise RuntimeError(f"ngspice wrote {len(values)} bytes for {len(names)} names")
    return dict(zip(names, struct.unpack(f"{len(names)}d", values)))


def run_ngspice(batch, folder):
    """For each plain circuit the volts of its nodes by number; None when it does not converge."""
    raw = os.path.join(folder, "states.raw")
    with open(os.path.join(folder, "states.cir"), "w", encoding="ascii") as file:
        file.write("every state of some matings\n")
        for i, plain in enumerate(batch):
            file.write("\n".join(cards(i, plain)) + "\n")
        file.write(f".options rshunt={SHUNT:g} reltol=1e-7 vntol=1e-9 abstol=1e-13 gmin=1e-15 itl1={MOST_STEPS}\n")
        file.write(".control\noptran 1 0 0 0 0 0\nset filetype=binary\nop\nwrite states.raw all\nquit\n.endc\n.end\n")
    if os.path.exists(raw):
        os.remove(raw)
    run = subprocess.run(["ngspice", "-b", "states.cir"], cwd=folder, capture_output=True, text=True, check=False)
    if not os.path.exists(raw):
        if "simulation(s) aborted" in run.stderr:
            return None
        raise RuntimeError("ngspice gave nothing:\n" + run.stdout[-2000:] + run.stderr[-2000:])
    values = read_raw(raw)
    results = []
    for number, plain in enumerate(batch):
        volts = [0.0] + [value(values, f"n{number}_{n}", f"v(n{number}_{n})") for n in range(1, count_nodes(plain))]
        # ngspice counts a source's current into its plus; out of a rail is the other way.
        amps = {i: -value(values, f"i(v{number}_{i})", f"v{number}_{i}#branch") for i, e in enumerate(plain) if e[0] == "V"}
        results.append((volts, amps))
    return results


def value(values, name, other):
    return values[name] if name in values else values[other]


def in_runs(plain, folder, way):
    return [result for begin in range(0, len(plain), NETWORKS_PER_RUN) for result in way(plain[begin:begin + NETWORKS_PER_RUN], folder)]


def by_halves(batch, folder):
    """As run_ngspice, with None for the circuits that do not converge."""
    results = run_ngspice(batch, folder)
    if results is None and len(batch) > 1:
        middle = len(batch) // 2
        return by_halves(batch[:middle], folder) + by_halves(batch[middle:], folder)
    return [None] if results is None else results


def by_choices(circuits, folder):
    """Every diode as a drop with its resistance, or open."""
    choices = [list(itertools.product((False, True), repeat=sum(e[0] == "D" for e in plain))) for plain in circuits]
    decks = [linear(plain, choice) for plain, every in zip(circuits, choices) for choice in every]
    solved = iter(in_runs(decks, folder, by_halves))
    return [agreeing(plain, [(choice, next(solved)) for choice in every]) for plain, every in zip(circuits, choices)]


def linear(plain, choice):
    conducts, nodes, drops = iter(choice), count_nodes(plain), []
    elements = []  # in the places of the old ones, the drops at the end
    for kind, a, b, size, drop in plain:
        if kind == "D" and next(conducts):
            between = nodes + len(drops)
            drops.append(("V", a, between, drop, 0.0))
            elements.append(("R", between, b, size, 0.0))
        else:
            elements.append(("R", a, b, 1 / OFF, 0.0) if kind == "D" else (kind, a, b, size, drop))
    return tuple(elements + drops)


def agreeing(plain, solved):
    diodes, nodes = [e for e in plain if e[0] == "D"], count_nodes(plain)
    for choice, result in solved:
        if result is None:
            continue
        volts, amps = result
        beyond = [volts[a] - volts[b] - drop for _, a, b, _, drop in diodes]
        if all(v > -AGREED if conducts else v < AGREED for v, conducts in zip(beyond, choice)):
            return volts[:nodes], {i: a for i, a in amps.items() if i < len(plain)}
    raise RuntimeError(f"no choice of conducting diodes agrees: {plain}")


def count_nodes(plain):
    return 1 + max((max(e[1], e[2]) for e in plain), default=0)


def solve(networks, folder):
    """A Solved for each list of elements."""
    plain = [numbered(elements) for elements in networks]
    # What has a current source is never left to Newton's method.
    smooth = [i for i, (circuit, _) in enumerate(plain) if not any(e[0] == "I" for e in circuit)]
    results = dict(zip(smooth, in_runs([plain[i][0] for i in smooth], folder, by_halves)))
    hard = [i for i in range(len(plain)) if results.get(i) is None]
    results.update(zip(hard, by_choices([plain[i][0] for i in hard], folder)))
    solved = []
    for i, (elements, (_, nodes)) in enumerate(zip(networks, plain)):
        volts, amps = results[i]
        solved.append(Solved(elements, {name: volts[n] for name, n in nodes.items()},
                             {elements[k].name: a for k, a in amps.items() if elements[k].name}))
    return solved
