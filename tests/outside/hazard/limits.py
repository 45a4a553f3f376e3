# SPDX-License-Identifier: MIT
"""Which limits a solved state leaves: harms as (place, kind), judged from ngspice's voltages and currents.

Places: a pin "J9.1", a terminal "probe.P", "load of probe", "heater of heater", "rail 5V". An overcurrent of a pin, its
contact or its lead and a short circuit there are one kind, "over-current".
"""

import dataclasses

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

# Amps a single copper wire carries in free air by AWG ("AWG Current Capacity", chassis wiring).
CHASSIS = {10: 55, 12: 41, 14: 32, 16: 22, 18: 16, 20: 11, 22: 7, 24: 3.5, 26: 2.2, 28: 1.4, 30: 0.86, 32: 0.53}


@dataclasses.dataclass
class Harm:
    value: float
    limit: float
    state: str
    covered: bool = False  # another harm of the same state is named instead


class Harms(dict):
    """(place, kind) -> the worst Harm."""

    def add(self, place, kind, value, limit, state, covered=False):
        old = self.get((place, kind))
        if old is None or (old.covered, -abs(old.value - old.limit)) > (covered, -abs(value - limit)):
            self[(place, kind)] = Harm(value, limit, state, covered)


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


def through_supply_pins(circuit, solved, rail):
    """What flows into a rail through its pins. What comes through a pull or a clamp is judged as that pin's."""
    names = [e.name for e in circuit.fixed if e.name.startswith("contact ") and e.a == rail]
    return sum(max(0.0, -solved.currents[name]) for name in names)


def judge_clamps(circuit, solved, add):
    for name, current in solved.currents.items():
        if name.startswith("clamp "):
            pin = next(c.pin for c in circuit.contacts if c.pin.name == name.split()[2])
            limit = pin.amps("injection")
            if limit is not None and current > limit * SHARE:
                add(pin.name, "clamp-current", current, limit)


def regulated(circuit, contact, current):
    """A motor driver sets its coil's current, whatever the resistances would let through."""
    if contact.pin.function != "coil" or current < 1e-6 or contact.terminal is None:
        return current
    device = circuit.devices[contact.lead.device]
    coils = [part for kind, part in device.parts if kind == "coil" and contact.lead.terminal in (part["a"], part["b"])]
    limit = contact.pin.amps("limit") or COIL_LIMIT
    return min([limit] + [quantity(c["amps"], "A") for c in coils[:1] if "amps" in c]) if coils else current


def judge_currents(circuit, solved, board, families, add):
    amps = {}  # place -> (current, limit)
    shorts = {}  # place -> (current, limit)
    for contact in circuit.contacts:
        out = solved.currents.get(f"contact {contact.pin.name}", 0.0)
        current = regulated(circuit, contact, abs(out))
        limits = contact_limits(contact, families)
        if limits and current > min(limits) * SHARE:
            amps[contact.pin.name] = (current, min(limits))
        if contact.pin.function == "supply":
            rail = next(e.a for e in circuit.fixed if e.name == f"contact {contact.pin.name}") if contact.terminal else None
            limit = board.rails[rail.removeprefix("rail ")][1] if rail else None
            threshold = SHORT_MULTIPLE * limit if limit else SHORT
            if out > threshold:
                shorts[contact.pin.name] = (out, threshold)
    for device in circuit.devices.values():
        for kind, part in device.parts:
            node = terminal_node(device.id, part.get("terminal", ""))
            if kind == "driver" and "limit" in part:
                current, limit = abs(solved.currents.get(f"driver {node}", 0.0)), quantity(part["limit"], "A")
                if current > limit * SHARE:
                    amps[node] = (current, limit)
    for rail, (_, limit) in board.rails.items():
        out = solved.currents.get(rail_node(rail), 0.0)
        if limit and out > limit * SHARE:
            amps[rail_node(rail)] = (out, limit)
        back = through_supply_pins(circuit, solved, rail_node(rail))
        if back > BACK_FEED:
            add(rail_node(rail), "back-feed", back, BACK_FEED, bool(shorts))
    for place, (current, limit) in amps.items():
        # Beside a short circuit no rail holds its voltage: only the short must be named, where it leaves its rail.
        add(place, "over-current", current, limit, bool(shorts) and place not in shorts)
    for place, (current, limit) in shorts.items():
        add(place, "over-current", current, limit)


def judge_pins(circuit, solved, add):
    for contact in circuit.contacts:
        pin = contact.pin
        limits = pin.volt_span("withstands")
        if pin.function not in ("output", "input") or limits is None or pin.name not in solved.volts:
            continue
        if "pull" in pin.attributes and "withstands-pulled" in pin.attributes:
            limits = (limits[0], pin.volts("withstands-pulled"))
        volts = solved.volts[pin.name]
        if solved.joined(pin.name, GROUND, loaded=False):
            judge_voltage(pin.name, volts, limits, add)


def judge_voltage(place, volts, limits, add):
    if volts > limits[1] + MARGIN:
        add(place, "overvoltage", volts, limits[1])
    elif volts < limits[0] - MARGIN:
        add(place, "overvoltage", volts, limits[0])


def device_ground(circuit, device):
    """The node against which a device's terminals are measured: a ground terminal that has a contact, else ground."""
    touched = {c.terminal for c in circuit.contacts}
    for terminal, attributes in device.terminals.items():
        node = terminal_node(device.id, terminal)
        if attributes.get("function") == "ground" and node in touched:
            return node
    return GROUND


def judge_device(circuit, device, solved, rest, add):
    def across(a, b):
        a, b = terminal_node(device.id, a), terminal_node(device.id, b)
        return solved.volts[a] - solved.volts[b] if a in solved.volts and b in solved.volts else 0.0

    ground = device_ground(circuit, device)
    withstood = set()
    for terminal, attributes in device.terminals.items():
        node = terminal_node(device.id, terminal)
        limits = span(attributes.get("withstands"), "V")
        if limits:
            withstood.add(terminal)
            if node in solved.volts and solved.joined(node, ground, loaded=True):
                judge_voltage(node, solved.volts[node] - solved.volts[ground], limits, add)
    for kind, part in device.parts:
        if kind == "load":
            volts = across(part["plus"], part["minus"])
            most = quantity(part.get("survives"), "V") or span(part["needs"], "V")[1]
            if volts > most + MARGIN:
                add(f"load of {device.id}", "supply-too-high", volts, most)
            # A relay or amplifier of a heater that is fed while nothing is switched on.
            if rest and device.use == "heater" and volts >= span(part["needs"], "V")[0]:
                add(terminal_node(device.id, part["minus"]), "always-on", volts, span(part["needs"], "V")[0])
            if volts < REVERSED and part.get("reversed") not in ("blocked", "harmless"):
                add(f"load of {device.id}", "reversed-supply", volts, 0.0)
        elif kind == "heater":
            watts, rated = across(part["a"], part["b"]) ** 2 / heater_ohms(part), quantity(part["watts"], "W")
            if watts > rated * HEATER_OVER:
                add(f"heater of {device.id}", "heater-power", watts, rated * HEATER_OVER)
            if rest and watts > rated * HEATER_OFF:
                add(f"heater of {device.id}", "always-on", watts, rated * HEATER_OFF)
        elif kind == "receiver" and "above-supply" in part and part["terminal"] not in withstood:
            node, minus = terminal_node(device.id, part["terminal"]), terminal_node(device.id, part["minus"])
            if node in solved.volts and minus in solved.volts and solved.joined(node, minus, loaded=True):
                limit = across(part["plus"], part["minus"]) + quantity(part["above-supply"], "V")
                below = -quantity(part["above-supply"], "V")  # the same beyond its minus
                judge_voltage(node, across(part["terminal"], part["minus"]), (below, limit), add)


def judge(circuit, solutions, board, families):
    """The harms over all states; solutions: (State, Solved)."""
    harms = Harms()
    for state, solved in solutions:
        add = lambda place, kind, value, limit, covered=False: harms.add(place, kind, value, limit, state.words, covered)
        judge_currents(circuit, solved, board, families, add)
        judge_pins(circuit, solved, add)
        judge_clamps(circuit, solved, add)
        for device in circuit.devices.values():
            judge_device(circuit, device, solved, state.rest, add)
    return harms
