# SPDX-License-Identifier: MIT
"""The circuit that a mating makes, in every state that it can take, as lists of elements for SPICE.

The model is that of boards/README.md, "What is taken for granted"; the values are written here a second time on purpose.
A state is one choice for each rail (both ends of its range), pin, switch and device output; all products are taken, with no
split into independent parts, so that nothing here depends on what the program thinks is independent.
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
COIL_LIMIT = 2.0  # A
MOST_STATES = 20000

GROUND = "0"


@dataclasses.dataclass
class Element:
    kind: str  # R resistor, D diode from a to b, V source with its plus at a
    a: str
    b: str
    value: float  # ohm, or V
    drop: float = 0.0  # V, of a diode
    name: str = ""  # its current from a to b is wanted under this name


@dataclasses.dataclass
class Option:
    words: str
    rest: bool  # may be so while the firmware is not running and nothing is touched
    elements: list


@dataclasses.dataclass
class Contact:
    pin: object  # description.Pin
    lead: object
    terminal: str | None  # node
    header: object
    plug: object


@dataclasses.dataclass
class State:
    words: str
    rest: bool
    elements: list


@dataclasses.dataclass
class Circuit:
    contacts: list
    fixed: list  # elements of every state
    choices: list  # lists of Options
    devices: dict

    def states(self):
        count = 1
        for options in self.choices:
            count *= len(options)
        if count > MOST_STATES:
            raise NotImplementedError(f"{count} states")
        for options in itertools.product(*self.choices):
            words = ", ".join(o.words for o in options if o.words)
            elements = self.fixed + [e for o in options for e in o.elements]
            yield State(words, all(o.rest for o in options), elements)


def rail_node(rail):
    return f"rail {rail}"


def terminal_node(device, terminal):
    return f"{device}.{terminal}"


class Builder:
    def __init__(self, board, jumpers):
        self.board, self.jumpers = board, jumpers
        self.fixed, self.choices, self.rails = [], [], set()

    def rail(self, rail):
        """The node of a rail, which is then there at both ends of its range."""
        if rail not in self.rails:
            self.rails.add(rail)
            ends = sorted(set(self.board.rails[rail][0]))
            self.choices.append([Option(f"{rail} at {v:g} V", True, [Element("V", rail_node(rail), GROUND, v, name=rail_node(rail))]) for v in ends])
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
        return Option(f"{pin.name} {word} {volts:g} V", rest, [Element("V", inner, GROUND, volts), self.resistor(inner, pin.name, ohms)])

    def output(self, pin):
        ohms = pin.ohms("ohms") or OUTPUT
        low = {0.0, pin.volts("low") if pin.volts("low") is not None else OUTPUT_LOW}
        high = pin.volt_span("high") or (self.board.rails[pin.attributes["rail"]][0] if "rail" in pin.attributes else None)
        at_reset = pin.attributes.get("at-reset") == "on"
        options = [Option("", not at_reset, [])]
        options += [self.thevenin(pin, "low", False, v, ohms) for v in sorted(low)]
        if pin.attributes.get("drive") != "open-drain":
            if high is None:
                raise NotImplementedError(f"{pin.name}: no high level")
            options += [self.thevenin(pin, "high", at_reset, v, ohms) for v in sorted(set(high))]
        self.choices.append(options)

    def input(self, pin):
        pass  # takes no current of its own

    def switched(self, pin):
        self.fixed.append(Element("D", GROUND, pin.name, DIODE, BODY))
        at_reset = pin.attributes.get("at-reset") == "on"
        on = self.resistor(pin.name, GROUND, pin.ohms("ohms") or LOW_SIDE)
        self.choices.append([Option("", not at_reset, []), Option(f"{pin.name} on", at_reset, [on])])

    def coil(self, pin):
        rail = self.rail(pin.attributes["rail"])
        ohms = self.board.rails[pin.attributes["rail"]][0][1] / (pin.amps("limit") or COIL_LIMIT)
        self.choices.append([
            Option("", True, []),
            Option(f"{pin.name} low", False, [self.resistor(pin.name, GROUND, ohms)]),
            Option(f"{pin.name} high", False, [self.resistor(rail, pin.name, ohms)]),
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

    def part_receiver(self, device, part, node):
        if {"open-circuit", "pull", "pull-to"} & set(part):
            raise NotImplementedError("a receiver with a level of its own")

    def part_driver(self, device, part, node):
        """Conducts to plus or minus like a diode; off, it leaks as a resistor would, and conducts the other way."""
        terminal, plus, minus = node("terminal"), node("plus"), node("minus")
        name = f"driver {terminal}"
        drops = sorted({0.0, quantity(part["drop"], "V") if "drop" in part else DRIVER_DROP})
        sink = [[Element("D", terminal, minus, DRIVER, drop, name)] for drop in drops]
        source = [[Element("D", plus, terminal, DRIVER, drop, name)] for drop in drops]
        kind = part["kind"]
        on, off = (sink if kind == "sinking" else source), (sink if kind == "push-pull" else [[]])
        if "leak" in part and kind != "push-pull":
            supply = max(span(p["needs"], "V")[1] for k, p in device.parts if k == "load")
            a, b = (terminal, minus) if kind == "sinking" else (plus, terminal)
            off = off + [[self.resistor(a, b, supply / quantity(part["leak"], "A")), Element("D", b, a, DRIVER_BODY)]]
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


def build(board, harness, placements, arrangement, jumpers):
    """placements: plug id -> header id; arrangement: plug id -> cavity -> lead, or as shipped when it is not there."""
    builder = Builder(board, jumpers)
    contacts = []
    for plug_id, header_id in placements.items():
        plug, header = harness.plugs[plug_id], board.headers[header_id]
        for cavity, lead in sorted(arrangement.get(plug_id, plug.leads).items()):
            pin = header.pins[cavity]
            node = builder.pin(pin)
            terminal = terminal_node(lead.device, lead.terminal) if lead.terminal else None
            contacts.append(Contact(pin, lead, terminal, header, plug))
            if terminal:
                builder.fixed.append(builder.resistor(node, terminal, CONTACT + lead_ohms(lead), f"contact {pin.name}"))
    for device in harness.devices.values():
        builder.device(device)
    return Circuit(contacts, builder.fixed, builder.choices, harness.devices)
