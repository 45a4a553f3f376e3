# SPDX-License-Identifier: MIT
"""Boards, harnesses and connector families, read from their XML with nothing but boards/README.md and harnesses/README.md.

Quantities become floats in V, A, ohm, W, mm, mm2. What is not stated is None. What no shipped file uses is refused with
NotImplementedError, so that a file shipped later cannot pass unjudged.
"""

import dataclasses
import glob
import re
import xml.etree.ElementTree as ET

PREFIX = {"": 1.0, "u": 1e-6, "m": 1e-3, "k": 1e3, "M": 1e6}


def quantity(text, unit):
    """'4.7 kohm' -> 4700.0; None stays None."""
    if text is None:
        return None
    match = re.fullmatch(rf"(-?[0-9.]+) ?([umkM]?){unit}", text)
    if not match:
        raise ValueError(f"'{text}' is not a quantity in {unit}")
    return float(match.group(1)) * PREFIX[match.group(2)]


def span(text, unit):
    """'3..3.6 V' -> (3.0, 3.6); '5 V' -> (5.0, 5.0); None stays None."""
    if text is None:
        return None
    low, dots, high = text.partition("..")
    if not dots:
        return (quantity(text, unit),) * 2
    return quantity(low + re.search(r" ?[umkM]?[A-Za-z]+$", high).group(0), unit), quantity(high, unit)


def on_off(text):
    return None if text is None else text == "on"


@dataclasses.dataclass
class Gauge:
    awg: int | None
    area: float  # mm2


def gauge(text):
    if text is None:
        return None
    match = re.fullmatch(r"([0-9]+) AWG", text)
    if not match:
        return Gauge(None, quantity(text, "mm2"))
    number = int(match.group(1))
    diameter = 0.127 * 92 ** ((36 - number) / 39)  # mm, ASTM B258-02
    return Gauge(number, 3.141592653589793 * diameter**2 / 4)


# --- boards


@dataclasses.dataclass
class Pin:
    name: str  # "J9.1"
    function: str
    attributes: dict

    def volts(self, key):
        return quantity(self.attributes.get(key), "V")

    def amps(self, key):
        return quantity(self.attributes.get(key), "A")

    def ohms(self, key):
        return quantity(self.attributes.get(key), "ohm")

    def volt_span(self, key):
        return span(self.attributes.get(key), "V")


@dataclasses.dataclass
class Header:
    id: str
    family: str
    positions: int
    rows: int
    pins: dict  # number -> Pin
    numbering: str = "zigzag"  # of two rows


@dataclasses.dataclass
class Board:
    id: str
    path: str
    rails: dict  # id -> ((min, max), limit or None)
    jumpers: dict  # id -> rail ids
    headers: dict  # id -> Header


def settled(statements, kinds, default):
    """The pin's attributes when two statements stand: a measurement outranks.

    While two others disagree the verdict is to measure; what is said of harm until then goes by the first."""
    measured = [s for s in statements if kinds.get(s.get("evidence", default)) == "measurement"]
    return (measured or statements)[0]


def read_board(path):
    return board_of(ET.parse(path).getroot(), path)


def board_of(root, path=""):
    kinds = {e.get("id"): e.get("kind") for e in root.findall("evidence")}
    rails = {r.get("id"): (span(r.get("volts"), "V"), quantity(r.get("limit"), "A")) for r in root.findall("rail")}
    jumpers = {j.get("id"): j.get("rails").split() for j in root.findall("jumper")}
    headers = {}
    for h in root.findall("header"):
        stated = {}
        for p in h.findall("pin"):
            stated.setdefault(int(p.get("n")), []).append(p.attrib)
        pins = {}
        for n in range(1, int(h.get("positions")) + 1):
            attributes = settled(stated.get(n, [{"function": "unknown"}]), kinds, h.get("evidence", root.get("evidence")))
            pins[n] = Pin(f"{h.get('id')}.{n}", attributes["function"], attributes)
        headers[h.get("id")] = Header(h.get("id"), h.get("family"), len(pins), int(h.get("rows", "1")), pins,
                                      h.get("numbering", "zigzag"))
    return Board(root.get("id"), path, rails, jumpers, headers)


# --- harnesses


@dataclasses.dataclass
class Device:
    id: str
    terminals: dict  # id -> attributes
    parts: list  # (element name, attributes)
    use: str = ""  # as its element states it


@dataclasses.dataclass
class Lead:
    colour: str
    gauge: Gauge | None
    length: float | None  # mm
    device: str | None
    terminal: str | None


@dataclasses.dataclass
class Plug:
    id: str
    family: str
    positions: int
    rows: int
    leads: dict  # cavity -> Lead
    numbering: str = "zigzag"


@dataclasses.dataclass
class Harness:
    id: str
    path: str
    devices: dict  # id -> Device
    plugs: dict  # id -> Plug


def picked(attributes, *keys, **more):
    """The stated ones of these attributes, and some more."""
    return {key: attributes[key] for key in keys if key in attributes} | more


def expanded(element):
    """(terminals, parts) of a device that is written in one line."""
    a = element.attrib
    supply = {"V": {"function": "supply"}, "G": {"function": "ground"}}
    load = ("load", picked(a, "needs", "draws", "survives", "reversed", plus="V", minus="G"))
    ends = {"A": {"function": "passive"}, "B": {"function": "passive"}}
    kind = element.tag
    if kind == "dry-switch":
        return ends, [("switch", picked(a, "rests", a="A", b="B"))]
    if kind == "heater-element":
        return ends, [("heater", picked(a, "volts", "watts", a="A", b="B"))]
    if kind == "thermistor":
        return ends, [("temperature-sensor", picked(a, "ohms", "beta", a="A", b="B"))]
    if kind == "motor":
        coils = [("coil", picked(a, "ohms", "amps", a=f"A{n}", b=f"B{n}")) for n in (1, 2)]
        return {t: {"function": "passive"} for t in ("A1", "B1", "A2", "B2")}, coils
    if kind == "fan":
        terminals, parts = {"V": {"function": "supply"}, "G": {"function": "return"}}, [load]
        if a.get("sense", "no") == "yes":
            terminals["S"] = {"function": "output"}
            parts.append(("driver", {"terminal": "S", "plus": "V", "minus": "G", "kind": "sinking"}))
        if a.get("control", "no") == "yes":  # at most 5.25 V, at most 5 mA
            terminals["C"] = {"function": "input"}
            parts.append(("receiver", {"terminal": "C", "plus": "V", "minus": "G", "open-circuit": "5.25 V", "pull": "1050 ohm"}))
        return terminals, parts
    if kind == "led-string" and "brightness" not in a:
        draws = int(a["count"]) * quantity(a.get("each", "60 mA"), "A")
        data = {"D": {"function": "input"}} | ({"Q": {"function": "spare"}} if a.get("out") == "yes" else {})
        load[1].update(needs=a.get("needs", "3.5..5.3 V"), draws=f"{draws} A")
        shares = {"low-below-share": "0.3", "high-above-share": "0.7", "above-supply": "0.5 V"}
        return supply | data, [load, ("receiver", {"terminal": "D", "plus": "V", "minus": "G"} | shares)]
    if kind == "proximity":
        driver = picked(a, "kind", "drop", "leak", "pull", "limit", "rests", terminal="Q", plus="V", minus="G")
        return supply | {"Q": {"function": "output"}}, [load, ("driver", driver)]
    if kind == "optical-switch":
        driver = picked(a, "rests", terminal="S", plus="V", minus="G", kind="push-pull")
        return supply | {"S": {"function": "output"}}, [load, ("driver", driver)]
    if kind == "rgb-strip":
        strip = picked(a, "draws", needs=a["volts"], reversed="blocked")
        terminals = {"V": {"function": "supply"}} | {t: {"function": "return"} for t in "RGB"}
        return terminals, [("load", strip | {"plus": "V", "minus": t}) for t in "RGB"]
    if kind == "servo-probe":
        terminals = supply | {"P": {"function": "input", "withstands": a.get("withstands", "-0.3..5.5 V")},
                              "T": {"function": "output"}, "H": {"function": "ground"}}
        receiver = ("receiver", {"terminal": "P", "plus": "V", "minus": "G"})
        return terminals, [load, receiver, ("switch", {"a": "T", "b": "H", "rests": a.get("rests", "open")}),
                           ("join", {"a": "G", "b": "H"})]
    raise NotImplementedError(f"the device '{kind}' with {a}")


DEVICES = {"dry-switch", "fan", "heater-element", "thermistor", "motor", "led-string", "rgb-strip", "servo-probe", "proximity", "optical-switch"}


def harness_paths(folder):
    """The harness files in a folder; it holds loom files as well."""
    return [path for path in sorted(glob.glob(f"{folder}/*.xml")) if ET.parse(path).getroot().tag == "harness"]


def read_harness(path):
    return harness_of(ET.parse(path).getroot(), path)


def harness_of(root, path=""):
    devices, plugs = {}, {}
    for e in root:
        if e.tag == "device":
            terminals = {t.get("id"): t.attrib for t in e.findall("terminal")}
            devices[e.get("id")] = Device(e.get("id"), terminals, [(p.tag, p.attrib) for p in e if p.tag != "terminal"],
                                            e.get("use", ""))
        elif e.tag in DEVICES:
            devices[e.get("id")] = Device(e.get("id"), *expanded(e), e.get("use", ""))
        elif e.tag == "plug":
            leads = {}
            for l in e.findall("lead"):
                device, dot, terminal = (l.get("to") or "").rpartition(".")
                leads[int(l.get("cavity"))] = Lead(l.get("colour"), gauge(l.get("gauge")), quantity(l.get("length"), "mm"),
                                                   device if dot else None, terminal or None)
            plugs[e.get("id")] = Plug(e.get("id"), e.get("family"), int(e.get("positions")), int(e.get("rows", "1")), leads,
                                     e.get("numbering", "zigzag"))
        elif e.tag != "evidence":
            raise NotImplementedError(f"the element '{e.tag}'")
    for plug in plugs.values():
        for lead in plug.leads.values():
            if lead.terminal and lead.device is None:  # 'TERMINAL' alone: the one device that has it
                (lead.device,) = [d.id for d in devices.values() if lead.terminal in d.terminals]
    return Harness(root.get("id"), path, devices, plugs)


# --- families


def read_families(path):
    """Family id -> {"ratings": [(amps, gauge text or None, most positions or None)], "mates": ids}."""
    families = {}
    for f in ET.parse(path).getroot().findall("family"):
        ratings = [(quantity(r.get("amps"), "A"), gauge(r.get("gauge")), r.get("circuits")) for r in f.findall("rating")]
        mates = {m.get("family") or m.get("with") for m in f.findall("mates")}
        families[f.get("id")] = {"ratings": [(a, g, int(c) if c else None) for a, g, c in ratings], "mates": mates}
    return families
