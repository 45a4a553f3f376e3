# SPDX-License-Identifier: MIT
"""Seeded variations of the shipped files: other values, other drives, pulls, clamps and reversals at the same places."""

import glob
import os
import re
import xml.etree.ElementTree as ET

FACTORS = (0.1, 0.25, 0.6, 1.7, 4, 10)
SCALED = {"draws", "watts", "ohms", "drop", "leak", "pull", "limit", "each", "pull-ohms", "length", "amps"}
NEEDS = ("3..3.6 V", "4.5..5.5 V", "10..14 V", "10..30 V", "20..28 V")
WITHSTANDS = ("-0.3..3.6 V", "-0.5..5.5 V", "-12..12 V", "-0.5..30 V")


def scaled(text, rng):
    match = re.fullmatch(r"([0-9.]+)( ?[A-Za-z]+)", text)
    if not match:  # a board's pull="up"
        return text
    number, unit = match.groups()
    return f"{float(number) * rng.choice(FACTORS):.4f}{unit}"


def choose(element, key, values, rng, often=0.3):
    """Sets an attribute to one of the values; None takes it away."""
    if rng.random() > often:
        return
    value = rng.choice(values)
    if value is None:
        element.attrib.pop(key, None)
    else:
        element.set(key, value)


def vary_device_part(e, rng):
    kind = e.tag
    if kind in ("load", "fan", "proximity", "led-string"):
        choose(e, "needs", NEEDS, rng)
    if kind in ("load", "fan"):
        choose(e, "reversed", ("destroyed", "blocked", "harmless", None), rng)
        choose(e, "survives", ("31 V", None), rng)
    if kind in ("heater", "heater-element"):
        choose(e, "volts", ("5 V", "12 V", "24 V"), rng)
    if kind in ("switch", "dry-switch"):
        choose(e, "rests", ("open", "closed"), rng)
    if kind in ("driver", "proximity"):
        kinds = ("sinking", "sourcing") if kind == "proximity" else ("sinking", "sourcing", "push-pull")
        choose(e, "kind", kinds, rng)
        if e.get("kind") != "push-pull":
            choose(e, "leak", ("0.1 mA", "1 mA", None), rng)
            choose(e, "pull", ("10 kohm", "1 kohm", "none", None), rng)
        else:
            e.attrib.pop("leak", None)
            e.attrib.pop("pull", None)
        choose(e, "drop", ("0.1 V", "1.5 V", "3 V", None), rng)
        choose(e, "limit", ("5 mA", "50 mA", "0.2 A", None), rng)
    if kind == "terminal" and e.get("function") in ("input", "output"):
        choose(e, "withstands", WITHSTANDS + (None,), rng)
    if kind == "lead":
        choose(e, "gauge", ("18 AWG", "22 AWG", "24 AWG", "28 AWG", "0.14 mm2", None), rng)


def vary_pin(pin, rails, rng):
    function = pin.get("function")
    if function == "output":
        choose(pin, "drive", ("push-pull", "open-drain"), rng, 0.2)
        choose(pin, "ohms", ("20 ohm", "330 ohm", None), rng)
        choose(pin, "low", ("0.1 V", "1 V", None), rng)
        if pin.get("drive") == "open-drain":
            pin.attrib.pop("high", None)
    if function == "input":
        choose(pin, "pull", ("up", "down"), rng)
        choose(pin, "withstands", WITHSTANDS, rng)
        if rng.random() < 0.4:
            pin.set("clamp", rng.choice(rails))
            pin.set("clamp-drop", rng.choice(("0.3 V", "0.7 V")))
            pin.set("injection", rng.choice(("1 mA", "5 mA", "20 mA")))
    if function in ("output", "switched"):
        choose(pin, "at-reset", ("on", "off", None), rng)


def write_varied(source, folder, rng):
    """Copies of all boards and harnesses, varied, into folder/boards and folder/harnesses."""
    for kind in ("boards", "harnesses"):
        os.makedirs(os.path.join(folder, kind))
        for path in sorted(glob.glob(f"{source}/{kind}/*.xml")):
            if ET.parse(path).getroot().tag == "loom":
                continue
            tree = ET.parse(path)
            rails = [r.get("id") for r in tree.getroot().findall("rail")]
            for e in tree.getroot().iter():
                if e.tag == "pin":
                    vary_pin(e, rails, rng)
                elif kind == "harnesses":
                    vary_device_part(e, rng)
                for key in sorted(SCALED & set(e.attrib)):
                    if rng.random() < 0.3:
                        e.set(key, scaled(e.get(key), rng))
            tree.write(os.path.join(folder, kind, os.path.basename(path)), encoding="unicode")
