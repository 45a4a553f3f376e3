# SPDX-License-Identifier: MIT
"""Which limits a solved state leaves: harms as (place, kind), judged from ngspice's voltages and currents.

Places: a pin "J9.1", a terminal "probe.P", "load of probe", "heater of heater", "rail 5V". An overcurrent of a pin, its
contact or its lead and a short circuit there are one kind, "over-current".
"""

import dataclasses
import itertools

from description import quantity, span
from network import COIL_LIMIT, GROUND, heater_ohms, rail_node, terminal_node

MARGIN = 0.02  # V past a voltage limit
SHARE = 1.01  # of a current limit
REVERSED = -0.5  # V
BACK_FEED = 1e-3  # A into a rail
SHORT_MULTIPLE = 3.0  # of a rail's limit
SHORT = 20.0  # A, of a rail without a limit
OUTPUT_LIMIT = 0.02  # A
HEATER_OVER, HEATER_OFF = 1.2, 0.05  # of the rated power
CLOSE = 3e-5  # of a limit: nearer than this, what holds open nodes in ngspice decides, and either answer will do

# Amps a single copper wire carries in free air by AWG ("AWG Current Capacity", chassis wiring).
CHASSIS = {10: 55, 12: 41, 14: 32, 16: 22, 18: 16, 20: 11, 22: 7, 24: 3.5, 26: 2.2, 28: 1.4, 30: 0.86, 32: 0.53}


@dataclasses.dataclass
class Harm:
    value: float
    limit: float
    state: str
    covered: bool = False  # need not be named: another harm of the same state is, or it is too close to its limit


class Harms(dict):
    """(place, kind) -> the worst Harm."""

    def __init__(self):
        self.one_of = {}  # sets of (place, kind) of which one must be named

    def add(self, place, kind, value, limit, state, covered=False):
        old = self.get((place, kind))
        if old is None or (old.covered, -abs(old.value - old.limit)) > (covered, -abs(value - limit)):
            self[(place, kind)] = Harm(value, limit, state, covered)

    def above(self, place, kind, value, limit, state, covered=False):
        """Adds it when it is beyond the limit; margins are in the limit already."""
        close = CLOSE * max(abs(limit), 1e-3)
        if value > limit - close:
            self.add(place, kind, value, limit, state, covered or value <= limit + close)

    def below(self, place, kind, value, limit, state, covered=False):
        close = CLOSE * max(abs(limit), 1e-3)
        if value < limit + close:
            self.add(place, kind, value, limit, state, covered or value >= limit - close)

    def missed(self, named):
        """What must be named and is not."""
        missed = [key for key, harm in self.items() if not harm.covered and key not in named]
        return missed + [next(iter(group)) for group in self.one_of if not group & named.keys()]


class View:
    """Some nodes in one state of the circuit, whatever pieces they are in."""

    __slots__ = ("states",)

    def __init__(self, states):
        self.states = states

    def volts(self, node):
        for state in self.states:
            if node in state.solved.volts:
                return state.solved.volts[node]
        return 0.0

    def held(self, node, loaded):
        """Does it hang on ground or a rail, which are all held against each other?"""
        return any(node in s.solved.volts and hangs(s, node, loaded) for s in self.states)

    def joined(self, a, b, loaded):
        here = [s for s in self.states if a in s.solved.volts]
        if any(b in s.solved.volts and s.solved.joined(a, b, loaded) for s in here):
            return True
        return any(hangs(s, a, loaded) for s in here) and (b == GROUND or self.held(b, loaded))

    def supported(self, node, high):
        """Do ground or the rails hold it up (high), or down?"""
        return any(node in s.solved.volts and s.solved.held(node, {GROUND, *map(rail_node, s.rails)}, high) for s in self.states)

    @property
    def rest(self):
        return all(s.rest for s in self.states)

    @property
    def powered(self):
        return all(s.powered for s in self.states)

    @property
    def words(self):
        return ", ".join(s.words for s in self.states if s.words)


def hangs(state, node, loaded):
    solved = state.solved
    return solved.joined(node, GROUND, loaded) or any(solved.joined(node, rail_node(r), loaded) for r in state.rails)


class Views:
    """The states of a circuit whose pieces are solved."""

    def __init__(self, pieces):
        self.pieces = pieces  # (Piece, its States)
        self.of_node = {node: i for i, (piece, _) in enumerate(pieces) for node in piece.nodes}

    def at(self, *nodes):
        """One View for each joint state of these nodes; none when one of them is nowhere."""
        if any(n not in self.of_node for n in nodes if n != GROUND):
            return
        involved = sorted({self.of_node[n] for n in nodes if n != GROUND})
        for states in itertools.product(*(self.pieces[i][1] for i in involved)):
            if len(states) == 1 or all(fits(a, b) for a, b in itertools.combinations(states, 2)):
                yield View(states)


def fits(a, b):
    return a.powered == b.powered and all(b.rails.get(rail, volts) == volts for rail, volts in a.rails.items())


def chassis(gauge):
    """The table's row; for a size in mm2 that of the next thinner size."""
    if gauge.awg is not None:
        return CHASSIS.get(gauge.awg)
    for awg in sorted(CHASSIS):
        if 3.141592653589793 / 4 * (0.127 * 92 ** ((36 - awg) / 39)) ** 2 <= gauge.area * 1.0001:
            return CHASSIS[awg]
    return None


def rating(family, gauge, positions):
    """The rating at this gauge that is made for a housing of this size; else the smallest of all."""
    fit = [(most, amps) for amps, g, most in family["ratings"]
           if g and gauge and g.awg == gauge.awg is not None and (most is None or positions <= most)]
    tightest = min((most for most, _ in fit if most is not None), default=None)
    fit = [amps for most, amps in fit if most in (None, tightest)]
    return min(fit or [amps for amps, _, _ in family["ratings"]], default=None)


def contact_limits(contact, families):
    """(what, amps) of everything in series at a contact."""
    pin, lead = contact.pin, contact.lead
    limits = []
    for family in {contact.header.family, contact.plug.family}:
        limits.append(rating(families[family], lead.gauge, contact.plug.positions))
    if lead.gauge:
        limits.append(chassis(lead.gauge))
    if pin.function != "coil":
        limits.append(pin.amps("limit") or (OUTPUT_LIMIT if pin.function == "output" else None))
    return [amps for amps in limits if amps]


def judge_clamps(piece, states, harms, pins):
    for e in piece.fixed:
        if not e.name.startswith("clamp "):
            continue
        pin = pins[e.name.split()[2]]
        limit = pin.amps("injection")
        for state in states if limit is not None else ():
            harms.above(pin.name, "clamp-current", state.solved.current(e), limit * SHARE, state.words)


def regulated(circuit, contact, current):
    """A motor driver sets its coil's current, whatever the resistances would let through."""
    if contact.pin.function != "coil" or current < 1e-6 or contact.terminal is None:
        return current
    device = circuit.devices[contact.lead.device]
    coils = [part for kind, part in device.parts if kind == "coil" and contact.lead.terminal in (part["a"], part["b"])]
    limit = contact.pin.amps("limit") or COIL_LIMIT
    return min([limit] + [quantity(c["amps"], "A") for c in coils[:1] if "amps" in c]) if coils else current


def short_limit(board, rails):
    """More than this through a contact is a short circuit of one of these rails."""
    limits = [board.rails[rail][1] for rail in rails]
    return max([SHORT_MULTIPLE * limit if limit else SHORT for limit in limits])


def judge_currents(circuit, piece, states, board, families, harms):
    """What contacts and outputs carry while the board has power. Without power no rail holds a current."""
    wires = {e.name: e for e in piece.fixed if e.name.startswith("contact ")}
    contacts = []  # (contact, its element, least limit, from where on it is short)
    for c in circuit.contacts:
        e = wires.get(f"contact {c.pin.name}")
        if e is None or c.terminal is None:
            continue
        supply = c.pin.function == "supply"
        short = short_limit(board, [e.a.removeprefix("rail ")]) if supply else max([SHORT] + [short_limit(board, [r]) for r in piece.rails])
        contacts.append((c, e, min(contact_limits(c, families), default=None), short, supply))
    limits = {}  # of outputs inside devices
    for device in circuit.devices.values():
        for kind, part in device.parts:
            if kind == "driver" and "limit" in part:
                limits["driver " + terminal_node(device.id, part["terminal"])] = quantity(part["limit"], "A")
    for state in states:
        if not state.powered:
            continue
        amps = [(c, state.solved.current(e), limit, short, supply) for c, e, limit, short, supply in contacts]
        shorts = {c.pin.name for c, out, _, short, supply in amps if supply and out > short}
        others = frozenset((c.pin.name, "over-current") for c, out, _, short, supply in amps
                           if not shorts and not supply and abs(out) > short * (1 + CLOSE))
        state.shorted = bool(shorts or others)
        if others:  # fed by a supply of its own: named in one place
            harms.one_of[others] = state.words
        for c, out, limit, short, supply in amps:
            if supply:
                harms.above(c.pin.name, "over-current", out, short, state.words)
            elif others:
                harms.above(c.pin.name, "over-current", abs(out), short, state.words, True)
            if c.pin.function == "coil":  # more than it sets can only come from elsewhere
                harms.above(c.pin.name, "over-current", abs(out), (c.pin.amps("limit") or COIL_LIMIT) * SHARE, state.words, state.shorted)
            if limit:
                # Beside a short circuit no rail holds its voltage: only the short must be named, where it leaves its rail.
                harms.above(c.pin.name, "over-current", regulated(circuit, c, abs(out)), limit * SHARE, state.words, state.shorted)
        for e in state.elements if limits else ():
            if e.name in limits:
                harms.above(e.name.removeprefix("driver "), "over-current", state.solved.current(e), limits[e.name] * SHARE,
                            state.words, state.shorted)


def back(piece, state, rail):
    """What flows into a rail through its pins. What comes through a pull or a clamp is judged as that pin's."""
    wires = (e for e in piece.fixed if e.a == rail_node(rail) and e.name.startswith("contact "))
    return sum(max(0.0, -state.solved.current(e)) for e in wires)


def judge_rails(board, pieces, harms):
    """What leaves and enters a rail, summed over the pieces that hang on it, each in its worst state."""
    rails = sorted({rail for piece, _ in pieces for rail in piece.rails})
    for rail in rails:
        limit = board.rails[rail][1]
        hanging = [(piece, states) for piece, states in pieces if rail in piece.rails]
        corners = {tuple(sorted(s.rails.items())) + (s.powered,) for _, states in hanging for s in states}
        for corner in joint_corners(corners):
            sums = {}
            for shorted in (True, False):
                for name, amount in (("out", lambda p, s: s.solved.amps[rail_node(rail)]), ("in", lambda p, s: back(p, s, rail))):
                    sums[name, shorted] = total(hanging, corner, shorted, amount)
            powered, at = corner["powered"], ", ".join(f"{r} at {v:g} V" for r, v in corner.items() if r != "powered")
            if limit and powered:
                judge_sum(harms, rail, "over-current", sums["out", False], sums["out", True], limit * SHARE, at)
            judge_sum(harms, rail, "back-feed", sums["in", False if powered else True], sums["in", True], BACK_FEED, at)


def judge_sum(harms, rail, kind, clear, with_shorts, limit, at):
    if clear is not None:
        harms.above(rail_node(rail), kind, clear, limit, at)
    if with_shorts is not None:
        harms.above(rail_node(rail), kind, with_shorts, limit, at, True)


def total(hanging, corner, shorted, amount):
    """The most that can flow at this corner of the rails; `shorted`: also in states with a short circuit. None: no such state."""
    result = 0.0
    for piece, states in hanging:
        here = [amount(piece, s) for s in states
                if s.powered == corner["powered"] and (shorted or not s.shorted) and all(corner[r] == v for r, v in s.rails.items())]
        if not here:
            return None
        # What comes back over a clamp may relieve a rail; whether one counts on it is left open.
        result += max(0.0, *here) if shorted else max(here)
    return result


def joint_corners(corners):
    """Every way to set all the rails that are named together: dicts of rail -> volts, and "powered"."""
    for powered in (True, False):
        ends = {}
        for *rails, has_power in corners:
            for rail, volts in rails if has_power == powered else ():
                ends.setdefault(rail, set()).add(volts)
        if ends:
            for volts in itertools.product(*map(sorted, ends.values())):
                yield dict(zip(ends, volts)) | {"powered": powered}


def judge_pins(circuit, views, harms):
    for contact in circuit.contacts:
        pin = contact.pin
        if pin.function not in ("output", "input"):
            continue
        lowest, highest = pin.volt_span("withstands") or (None, None)
        if "pull" in pin.attributes and "withstands-pulled" in pin.attributes:
            highest = pin.volts("withstands-pulled")
        without = pin.volts("withstands-unpowered")
        if (lowest, highest, without) == (None, None, None):
            continue
        for view in views.at(pin.name):
            volts, most = view.volts(pin.name), highest if view.powered else without
            # The rails hold it even where the node is not loaded.
            if view.supported(pin.name, True):
                judge_voltage(pin.name, volts, (None, most), view, harms)
            if view.supported(pin.name, False):
                judge_voltage(pin.name, volts, (lowest, None), view, harms)


def judge_voltage(place, volts, limits, view, harms):
    if limits[1] is not None:
        harms.above(place, "overvoltage", volts, limits[1] + MARGIN, view.words)
    if limits[0] is not None:
        harms.below(place, "overvoltage", volts, limits[0] - MARGIN, view.words)


def device_ground(circuit, device):
    """The node against which a device's terminals are measured: a ground terminal that has a contact, else ground."""
    touched = {c.terminal for c in circuit.contacts}
    for terminal, attributes in device.terminals.items():
        node = terminal_node(device.id, terminal)
        if attributes.get("function") == "ground" and node in touched:
            return node
    return GROUND


def judge_device(circuit, device, views, harms):
    def node_of(terminal):
        return terminal_node(device.id, terminal)

    ground = device_ground(circuit, device)
    withstood = set()
    for terminal, attributes in device.terminals.items():
        node = node_of(terminal)
        limits = span(attributes.get("withstands"), "V")
        if limits:
            withstood.add(terminal)
            for view in views.at(node, ground):
                if view.joined(node, ground, loaded=True):
                    judge_voltage(node, view.volts(node) - view.volts(ground), limits, view, harms)
    for kind, part in device.parts:
        if kind == "load":
            judge_load(device, part, node_of, views, harms)
        elif kind == "heater":
            ohms, rated = heater_ohms(part), quantity(part["watts"], "W")
            for view in views.at(node_of(part["a"]), node_of(part["b"])):
                watts = (view.volts(node_of(part["a"])) - view.volts(node_of(part["b"]))) ** 2 / ohms
                harms.above(f"heater of {device.id}", "heater-power", watts, rated * HEATER_OVER, view.words)
                if view.rest and view.powered:
                    harms.above(f"heater of {device.id}", "always-on", watts, rated * HEATER_OFF, view.words)
        elif kind == "resistor" and "limit" in part:
            ohms, limit = quantity(part["ohms"], "ohm"), quantity(part["limit"], "W")
            for view in views.at(node_of(part["a"]), node_of(part["b"])):
                watts = (view.volts(node_of(part["a"])) - view.volts(node_of(part["b"]))) ** 2 / ohms
                harms.above(f"resistor of {device.id}", "resistor-power", watts, limit * SHARE, view.words)
        elif kind == "receiver" and "above-supply" in part and part["terminal"] not in withstood:
            node, plus, minus = (node_of(part[key]) for key in ("terminal", "plus", "minus"))
            beyond = quantity(part["above-supply"], "V")
            for view in views.at(node, plus, minus):
                if view.joined(node, minus, loaded=True):
                    volts, supply = view.volts(node) - view.volts(minus), view.volts(plus) - view.volts(minus)
                    judge_voltage(node, volts, (-beyond, supply + beyond), view, harms)  # the same beyond its minus


def judge_load(device, part, node_of, views, harms):
    plus, minus = node_of(part["plus"]), node_of(part["minus"])
    least, most = span(part["needs"], "V")
    for view in views.at(plus, minus):
        volts = view.volts(plus) - view.volts(minus)
        harms.above(f"load of {device.id}", "supply-too-high", volts, (quantity(part.get("survives"), "V") or most) + MARGIN, view.words)
        # A relay or amplifier of a heater that is fed while nothing is switched on. Below what it needs it may close or not.
        if view.rest and view.powered and device.use == "heater":
            place = {(minus, "always-on"), (f"load of {device.id}", "always-on")}  # named by its lead or by itself
            for key in place:
                harms.above(*key, volts, -REVERSED, view.words, True)
            if volts > least * (1 + CLOSE):
                harms.one_of[frozenset(place)] = view.words
        if part.get("reversed") not in ("blocked", "harmless"):
            harms.below(f"load of {device.id}", "reversed-supply", volts, REVERSED, view.words)


def judge(circuit, pieces, board, families):
    """The harms over all states; pieces: (Piece, its States), solved."""
    harms, views = Harms(), Views(pieces)
    pins = {c.pin.name: c.pin for c in circuit.contacts}
    for piece, states in pieces:
        judge_currents(circuit, piece, states, board, families, harms)
        judge_clamps(piece, states, harms, pins)
    judge_rails(board, pieces, harms)
    judge_pins(circuit, views, harms)
    for device in circuit.devices.values():
        judge_device(circuit, device, views, harms)
    return harms
