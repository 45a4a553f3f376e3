# SPDX-License-Identifier: MIT
"""The circuit that a mating makes, in every state that it can take, as lists of elements for SPICE.

The model is that of boards/README.md, "What is taken for granted"; the values are written here a second time on purpose.
A state is one choice for each rail (both ends of its range), pin, switch and device output. `Circuit.pieces` cuts the
circuit at ground and at the rails, which nothing can move; `whole` leaves it in one piece and takes all products, so that
nothing depends on what is thought independent.
"""

import dataclasses
import itertools

from description import span, quantity

CONTACT = 0.02  # ohm
LEAD = 0.05  # ohm, when gauge or length is not stated
COPPER = 0.017241  # ohm mm2/m, IEC 60028
PULL = 40e3  # ohm
OUTPUT = 50.0  # ohm
OUTPUT_LOW = 0.4  # V
LOW_SIDE = 0.1  # ohm
BODY = 0.7  # V
DIODE = 1.0  # ohm
DRIVER = 1.0  # ohm
DRIVER_DROP = 0.4  # V
CLOSED = 0.05  # ohm
JOIN = 0.01  # ohm
DRIVER_BODY = 10.0  # ohm, reverse conduction of an output that leaks
REVERSE = (0.7, 10.0)  # V, ohm of a reversed load
OWN_SUPPLY = 0.1  # ohm
OWN_LEVEL = 1e3  # ohm, behind the level that a device puts on a terminal
COIL_LIMIT = 2.0  # A
MOST_STATES = 20000

GROUND = "0"


@dataclasses.dataclass
class Element:
    kind: str  # R resistor, D diode from a to b, V source with its plus at a, I current from a to b through it
    a: str
    b: str
    value: float  # ohm, V or A
    drop: float = 0.0  # V, of a diode
    name: str = ""  # what it is, where its current is judged


@dataclasses.dataclass
class Option:
    words: str
    rest: bool  # may be so while the firmware is not running and nothing is touched
    elements: list
    unpowered: bool = True  # may be so while the board has no power


@dataclasses.dataclass
class Contact:
    pin: object  # description.Pin
    lead: object
    terminal: str | None  # node
    header: object
    plug: object


class State:
    """Of one piece. `solved` comes from ngspice."""

    __slots__ = ("words", "rest", "powered", "rails", "elements", "solved", "shorted")

    def __init__(self, options, rails, powered, fixed):
        self.words = ", ".join([o.words for o in options if o.words] + [f"{rail} at {volts:g} V" for rail, volts in rails.items()])
        self.rest = all(o.rest for o in options)
        self.powered, self.rails = powered, rails
        supplies = [Element("V", rail_node(rail), GROUND, volts, name=rail_node(rail)) for rail, volts in rails.items()]
        self.elements = supplies + fixed + [e for o in options for e in o.elements]
        self.solved, self.shorted = None, False


class Piece:
    """A part of the circuit that meets the rest at ground and rails only, with its states."""

    def __init__(self, circuit, rails):
        self.circuit, self.rails = circuit, sorted(rails)
        self.fixed, self.choices, self.nodes = [], [], set()

    def states(self):
        ends = [sorted(set(self.circuit.rails[rail])) for rail in self.rails]
        count = 1
        for options in ends + self.choices:
            count *= len(options)
        if count > MOST_STATES:
            raise TooManyStates(f"{count} states")
        for volts in itertools.product(*ends):
            rails = dict(zip(self.rails, volts))
            for options in itertools.product(*self.choices):
                yield State(options, rails, True, self.fixed)
        if self.circuit.has_source:
            rails = dict.fromkeys(self.rails, 0.0)
            without = [[o for o in options if o.unpowered] for options in self.choices]
            for options in itertools.product(*without):
                yield State(options, rails, False, self.fixed)


class TooManyStates(Exception):
    pass


@dataclasses.dataclass
class Circuit:
    contacts: list
    fixed: list  # elements of every state
    choices: list  # lists of Options
    devices: dict
    rails: dict  # rail -> (min, max), of those that are touched
    has_source: bool  # some device has a supply of its own, so that the board may be fed without its power

    def pieces(self, whole=False):
        groups = [[e] for e in self.fixed] + [[e for o in options for e in o.elements] for options in self.choices]
        outside = {GROUND} | {rail_node(rail) for rail in self.rails}
        parent = {}

        def root(node):
            while node in parent:
                node = parent[node]
            return node

        inner = [[n for e in group for n in (e.a, e.b) if n not in outside] for group in groups]
        first = next((nodes[0] for nodes in inner if nodes), None)
        for nodes in inner:
            for node in nodes:
                x, y = root(first if whole else nodes[0]), root(node)
                if x != y:
                    parent[x] = y
        pieces = {}
        for i, (group, nodes) in enumerate(zip(groups, inner)):
            if not nodes:
                continue
            piece = pieces.setdefault(root(nodes[0]), Piece(self, self.rails if whole else ()))
            piece.nodes.update(nodes)
            piece.rails = sorted({*piece.rails, *(n.removeprefix("rail ") for e in group for n in (e.a, e.b) if n in outside and n != GROUND)})
            if i < len(self.fixed):
                piece.fixed += group
            else:
                piece.choices.append(self.choices[i - len(self.fixed)])
        return list(pieces.values())


def rail_node(rail):
    return f"rail {rail}"


def terminal_node(device, terminal):
    return f"{device}.{terminal}"


class Builder:
    def __init__(self, board, jumpers):
        self.board, self.jumpers = board, jumpers
        self.fixed, self.choices, self.rails, self.has_source = [], [], {}, False

    def rail(self, rail):
        """The node of a rail, which is then there at both ends of its range."""
        self.rails[rail] = self.board.rails[rail][0]
        return rail_node(rail)

    def resistor(self, a, b, ohms, name=""):
        return Element("R", a, b, ohms, name=name)

    # --- what stands behind a pin

    def pin(self, pin):
        """The pin's node."""
        if pin.function == "ground":
            return GROUND
        if pin.function == "supply":
            return self.rail(pin.attributes.get("rail") or self.jumpers[pin.attributes["jumper"]])
        if pin.function in ("output", "input", "switched", "coil"):
            getattr(self, pin.function)(pin)
        self.pull_and_clamp(pin)
        return pin.name

    def thevenin(self, pin, word, rest, volts, ohms):
        inner = f"{pin.name} inside"
        return Option(f"{pin.name} {word} {volts:g} V", rest, [Element("V", inner, GROUND, volts), self.resistor(inner, pin.name, ohms)], False)

    def output(self, pin):
        ohms = pin.ohms("ohms") or OUTPUT
        low = {0.0, pin.volts("low") if pin.volts("low") is not None else OUTPUT_LOW}
        high = pin.volt_span("high")
        push_pull = pin.attributes.get("drive") != "open-drain"
        at_reset = push_pull and pin.attributes.get("at-reset") == "on"
        options = [Option("", not at_reset, [])]
        options += [self.thevenin(pin, "low", False, v, ohms) for v in sorted(low)]
        if push_pull and high:
            options += [self.thevenin(pin, "high", at_reset, v, ohms) for v in sorted(set(high))]
        elif push_pull:  # as high as the rail that powers it
            rail = self.rail(pin.attributes["rail"])
            options.append(Option(f"{pin.name} high", at_reset, [self.resistor(rail, pin.name, ohms)], False))
        self.choices.append(options)

    def input(self, pin):
        pass  # takes no current of its own

    def switched(self, pin):
        self.fixed.append(Element("D", GROUND, pin.name, DIODE, BODY))
        at_reset = pin.attributes.get("at-reset") == "on"
        on = self.resistor(pin.name, GROUND, pin.ohms("ohms") or LOW_SIDE)
        self.choices.append([Option("", not at_reset, []), Option(f"{pin.name} on", at_reset, [on], False)])

    def coil(self, pin):
        if "rail" not in pin.attributes:
            return
        rail = self.rail(pin.attributes["rail"])
        ohms = self.board.rails[pin.attributes["rail"]][0][1] / (pin.amps("limit") or COIL_LIMIT)
        self.choices.append([
            Option("", True, []),
            Option(f"{pin.name} low", False, [self.resistor(pin.name, GROUND, ohms)], False),
            Option(f"{pin.name} high", False, [self.resistor(rail, pin.name, ohms)], False),
        ])

    def pull_and_clamp(self, pin):
        if "pull" in pin.attributes:
            to = self.rail(pin.attributes["rail"]) if pin.attributes["pull"] == "up" else GROUND
            self.fixed.append(self.resistor(to, pin.name, pin.ohms("pull-ohms") or PULL, f"pull {pin.name}"))
        if "clamp" in pin.attributes:
            drop = pin.volts("clamp-drop") if "clamp-drop" in pin.attributes else 0.3
            self.fixed.append(Element("D", pin.name, self.rail(pin.attributes["clamp"]), DIODE, drop, f"clamp up {pin.name}"))
            self.fixed.append(Element("D", GROUND, pin.name, DIODE, drop, f"clamp down {pin.name}"))

    # --- the parts of a device

    def device(self, device):
        for number, (kind, part) in enumerate(device.parts):
            node = lambda key, part=part: terminal_node(device.id, part[key])
            getattr(self, "part_" + kind.replace("-", "_"))(device, part, node)

    def part_load(self, device, part, node):
        low, high = span(part["needs"], "V")
        ohms = (low + high) / 2 / quantity(part["draws"], "A")
        if part.get("reversed") == "blocked":
            self.fixed.append(Element("D", node("plus"), node("minus"), ohms))
            return
        self.fixed.append(self.resistor(node("plus"), node("minus"), ohms))
        if part.get("reversed") != "harmless":
            self.fixed.append(Element("D", node("minus"), node("plus"), REVERSE[1], REVERSE[0]))

    def part_heater(self, device, part, node):
        self.fixed.append(self.resistor(node("a"), node("b"), heater_ohms(part)))

    def part_resistor(self, device, part, node):
        self.fixed.append(self.resistor(node("a"), node("b"), quantity(part["ohms"], "ohm")))

    part_coil = part_temperature_sensor = part_resistor

    def part_join(self, device, part, node):
        self.fixed.append(self.resistor(node("a"), node("b"), JOIN))

    def part_switch(self, device, part, node):
        closed = part["rests"] == "closed"
        self.choices.append([
            Option("", not closed, []),
            Option(f"{part['a']}-{part['b']} closed", closed, [self.resistor(node("a"), node("b"), CLOSED)]),
        ])

    def part_diode(self, device, part, node):
        drop = quantity(part.get("drop", "0.7 V"), "V")
        self.fixed.append(Element("D", node("anode"), node("cathode"), DIODE, drop))

    def part_source(self, device, part, node):
        self.has_source = True
        inner = node("plus") + " inside"
        self.fixed.append(self.resistor(inner, node("plus"), OWN_SUPPLY))
        ends = sorted(set(span(part["volts"], "V")))
        self.choices.append([Option(f"own supply {v:g} V", True, [Element("V", inner, node("minus"), v)]) for v in ends])

    def part_receiver(self, device, part, node):
        if "open-circuit" in part:
            inner = node("terminal") + " inside"
            ohms = quantity(part["pull"], "ohm") if "pull" in part else OWN_LEVEL
            self.fixed.append(Element("V", inner, node("minus"), quantity(part["open-circuit"], "V")))
            self.fixed.append(self.resistor(inner, node("terminal"), ohms))
        elif "pull" in part:
            self.fixed.append(self.resistor(node("terminal"), node(part["pull-to"]), quantity(part["pull"], "ohm")))
        elif "pull-to" in part:
            raise NotImplementedError("a receiver with a pull of no stated resistance")

    def part_driver(self, device, part, node):
        """Conducts to plus or minus like a diode; off, it leaks, and conducts the other way."""
        terminal, plus, minus = node("terminal"), node("plus"), node("minus")
        name = f"driver {terminal}"
        drops = sorted({0.0, quantity(part["drop"], "V") if "drop" in part else DRIVER_DROP})
        sink = [[Element("D", terminal, minus, DRIVER, drop, name)] for drop in drops]
        source = [[Element("D", plus, terminal, DRIVER, drop, name)] for drop in drops]
        kind = part["kind"]
        on, off = (sink if kind == "sinking" else source), (sink if kind == "push-pull" else [[]])
        if "leak" in part and kind != "push-pull":  # up to this much, and never past its supply
            a, b = (terminal, minus) if kind == "sinking" else (plus, terminal)
            off = off + [[Element("I", a, b, quantity(part["leak"], "A")), Element("D", b, a, DRIVER_BODY)]]
        if part.get("pull", "none") != "none":
            self.fixed.append(self.resistor(terminal, plus if kind == "sinking" else minus, quantity(part["pull"], "ohm")))
        rests = part.get("rests")
        options = [Option(f"{part['terminal']} on", rests != "off", e) for e in on]
        options += [Option(f"{part['terminal']} off", rests != "on", e) for e in off]
        self.choices.append(options)


def heater_ohms(part):
    return quantity(part["volts"], "V") ** 2 / quantity(part["watts"], "W")


def lead_ohms(lead):
    if lead.gauge is None or lead.length is None:
        return LEAD
    return COPPER * lead.length / 1000 / lead.gauge.area


def grid_place(number, positions, rows, numbering):
    """(column, row) of a position, from 0."""
    if rows == 1:
        return number - 1, 0
    if numbering == "zigzag":
        return (number - 1) // 2, (number - 1) % 2
    return (number - 1) % (positions // 2), (number - 1) // (positions // 2)


def pins_of_cavities(plug, header, turned, shift, row_shift):
    """cavity -> the pin it is on, when the plug sits so; of those that are on one."""
    columns = plug.positions // plug.rows
    pin_at = {grid_place(n, header.positions, header.rows, header.numbering): n for n in header.pins}
    met = {}
    for cavity in range(1, plug.positions + 1):
        column, row = grid_place(cavity, plug.positions, plug.rows, plug.numbering)
        if turned:
            column, row = columns - 1 - column, plug.rows - 1 - row
        if (column + shift, row + row_shift) in pin_at:
            met[cavity] = pin_at[column + shift, row + row_shift]
    return met


def build(board, harness, placements, arrangement, jumpers, seats=None):
    """placements: plug id -> header id; arrangement: plug id -> cavity -> lead, or as shipped when it is not there;
    seats: plug id -> (turned, columns, rows) of a plug that does not sit as it should."""
    builder = Builder(board, jumpers)
    contacts = []
    for plug_id, header_id in placements.items():
        plug, header = harness.plugs[plug_id], board.headers[header_id]
        met = pins_of_cavities(plug, header, *(seats or {}).get(plug_id, (False, 0, 0)))
        for cavity, lead in sorted(arrangement.get(plug_id, plug.leads).items()):
            if cavity not in met:
                continue
            pin = header.pins[met[cavity]]
            node = builder.pin(pin)
            terminal = terminal_node(lead.device, lead.terminal) if lead.terminal else None
            contacts.append(Contact(pin, lead, terminal, header, plug))
            if terminal:
                builder.fixed.append(builder.resistor(node, terminal, CONTACT + lead_ohms(lead), f"contact {pin.name}"))
    for device in harness.devices.values():
        builder.device(device)
    return Circuit(contacts, builder.fixed, builder.choices, harness.devices, builder.rails, builder.has_source)
