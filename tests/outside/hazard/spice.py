# SPDX-License-Identifier: MIT
"""Many small circuits solved by ngspice in one batch run.

Diodes are ideal pieces of a line, written as behavioural sources. A current that is wanted is that of a zero-volt source
in series. Nodes that nothing drives are held by a very large resistor; whether a node is driven is told by `Solved.joined`.
"""

import os
import subprocess

NETWORKS_PER_RUN = 400
OFF = 1e-12  # S, of a diode that does not conduct
KINK = 1e-7  # V; a diode this near its drop carries nothing but what the shunts draw
SHUNT = 1e10  # ohm from every node to ground


class Solved:
    """Voltages by node, currents by element name, and which nodes are joined by something that conducts."""

    def __init__(self, elements, volts, currents):
        self.elements, self.volts, self.currents = elements, volts, currents
        self.groups = {}

    def joined(self, a, b, loaded):
        """Does a conducting way lead from a to b? `loaded`: only over diodes that carry a current."""
        if loaded not in self.groups:
            self.groups[loaded] = parent = {}
            least = KINK if loaded else -KINK
            for e in self.elements:
                if e.kind != "D" or self.volts[e.a] - self.volts[e.b] > e.drop + least:
                    parent[root(parent, e.a)] = root(parent, e.b)
        return root(self.groups[loaded], a) == root(self.groups[loaded], b)


def root(parent, node):
    while parent.get(node, node) != node:
        node = parent[node]
    return node


def cards(number, elements):
    """The cards of one circuit, its node names and the sources whose currents are wanted."""
    nodes, lines, wanted = {"0": "0"}, [], {}

    def node(name):
        return nodes.setdefault(name, f"n{number}_{len(nodes)}")

    for i, e in enumerate(elements):
        a, b, tag = node(e.a), node(e.b), f"{number}_{i}"
        if e.kind == "V":
            lines.append(f"v{tag} {a} {b} {e.value!r}")
        elif e.name:
            lines.append(f"vs{tag} {a} m{tag} 0")
            a = f"m{tag}"
        if e.kind == "R":
            lines.append(f"r{tag} {a} {b} {e.value!r}")
        elif e.kind == "D":
            lines.append(f"b{tag} {a} {b} i = v({a},{b}) > {e.drop!r} ? (v({a},{b}) - {e.drop!r}) / {e.value!r} : v({a},{b}) * {OFF!r}")
        if e.name:
            # ngspice counts a source's current into its plus; out of a rail is the other way.
            wanted[e.name] = (f"v{tag}", -1.0) if e.kind == "V" else (f"vs{tag}", 1.0)
    return lines, nodes, wanted


def read_raw(path):
    """The one point of an ASCII raw file: name -> value."""
    with open(path, encoding="ascii") as file:
        text = file.read()
    head, _, values = text.partition("Values:\n")
    names = [line.split()[1] for line in head.partition("Variables:\n")[2].splitlines()]
    numbers = values.split()[1:]
    if len(names) != len(numbers):
        raise RuntimeError(f"ngspice wrote {len(numbers)} values for {len(names)} names")
    return dict(zip(names, map(float, numbers)))


def solve(networks, folder):
    """A Solved for each list of elements."""
    solved = []
    for begin in range(0, len(networks), NETWORKS_PER_RUN):
        batch = networks[begin:begin + NETWORKS_PER_RUN]
        made = [cards(i, elements) for i, elements in enumerate(batch)]
        raw = os.path.join(folder, "states.raw")
        with open(os.path.join(folder, "states.cir"), "w", encoding="ascii") as file:
            file.write("every state of some matings\n")
            for lines, _, _ in made:
                file.write("\n".join(lines) + "\n")
            file.write(f".options rshunt={SHUNT:g} reltol=1e-7 vntol=1e-9 abstol=1e-13 gmin=1e-15 itl1=1000\n")
            file.write(".control\nset filetype=ascii\nset numdgt=15\nop\nwrite states.raw all\nquit\n.endc\n.end\n")
        if os.path.exists(raw):
            os.remove(raw)
        run = subprocess.run(["ngspice", "-b", "states.cir"], cwd=folder, capture_output=True, text=True, check=False)
        if not os.path.exists(raw):
            raise RuntimeError("ngspice gave nothing:\n" + run.stdout[-2000:] + run.stderr[-2000:])
        values = read_raw(raw)
        for elements, (_, nodes, wanted) in zip(batch, made):
            volts = {name: 0.0 if node == "0" else values[node if node in values else f"v({node})"] for name, node in nodes.items()}
            currents = {}
            for name, (source, sign) in wanted.items():
                currents[name] = sign * values[f"i({source})" if f"i({source})" in values else f"{source}#branch"]
            solved.append(Solved(elements, volts, currents))
    return solved
