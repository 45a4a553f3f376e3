# SPDX-License-Identifier: MIT
"""The harms that the program finds, as (place, kind) like those of limits.py."""

import json
import os
import re
import subprocess
import xml.etree.ElementTree as ET

# Rule -> kind; the harms of other rules are not of the circuit.
KINDS = {
    "overvoltage": "overvoltage", "supply-too-high": "supply-too-high", "reversed-supply": "reversed-supply",
    "heater-power": "heater-power", "always-on": "always-on", "clamp-current": "clamp-current", "back-feed": "back-feed",
    "short-circuit": "over-current", "pin-overcurrent": "over-current", "contact-overcurrent": "over-current",
    "wire-overcurrent": "over-current", "rail-overload": "over-current", "resistor-power": "resistor-power",
}

# Where in a message the place is named.
PLACE = (
    r"(?:on|at|through the contact of|through|into the protection diode of|backwards into|drawn from) "
    r"(?P<name>'[^']+'|rail '[^']+'|J\w+\.\d+|the \w+ of '[^']+')"
)
SUBJECT = r"^(?P<name>the \w+ of '[^']+') (?:gets|heats|turns)"


def place_of(message, devices):
    match = re.search(SUBJECT, message) or re.search(PLACE, message)
    if not match:
        raise ValueError(f"no place in '{message}'")
    name = match.group("name").replace("'", "")
    if name.startswith("the "):
        return name.removeprefix("the ")
    if match.group("name").startswith("'") and "." not in name:  # a terminal of the only device
        return f"{next(iter(devices))}.{name}"
    return name


def at_rail(place, board, jumpers):
    """The rail behind a supply pin: where it is fed backwards does not matter."""
    header, dot, number = place.rpartition(".")
    if not dot or header not in board.headers:
        return place
    attributes = board.headers[header].pins[int(number)].attributes
    rail = attributes.get("rail") or jumpers.get(attributes.get("jumper"))
    return f"rail {rail}" if attributes["function"] == "supply" else place


def write_variant(harness, arrangement, path):
    """The harness with only these plugs, their leads moved. arrangement: plug -> cavity -> the cavity it was in."""
    tree = ET.parse(harness.path)
    for plug in tree.getroot().findall("plug"):
        if plug.get("id") not in arrangement:  # the program would look for a header for it
            tree.getroot().remove(plug)
            continue
        now = {old: new for new, old in arrangement[plug.get("id")].items()}
        for lead in plug.findall("lead"):
            cavity = int(lead.get("cavity"))
            lead.set("cavity", str(now[cavity]))
    tree.write(path, encoding="unicode")


def command(program, board, harness_path, placements, jumpers):
    args = [program, "check", board.path, harness_path, "--format", "json"]
    args += [f"--at={plug}={header}" for plug, header in placements.items()]
    return args + [f"--jumper={jumper}={rail}" for jumper, rail in jumpers.items()]


def harms(args, devices, board, jumpers):
    """(place, kind) -> message; None when the program refuses the files."""
    run = subprocess.run(args, capture_output=True, text=True, check=False, env=os.environ | {"LC_ALL": "C.UTF-8"})
    if run.returncode == 1 and not run.stdout:
        return None
    if run.returncode not in (0, 1):
        raise RuntimeError(f"{' '.join(args)}: exit {run.returncode}\n{run.stderr[-1000:]}")
    found = {}
    for finding in json.loads(run.stdout)["findings"]:
        if finding["weight"] == "harm" and finding["rule"] in KINDS:
            state = f" ({finding['state']})" if finding["state"] else ""
            place, kind = place_of(finding["message"], devices), KINDS[finding["rule"]]
            if kind == "back-feed":
                place = at_rail(place, board, jumpers)
            found[(place, kind)] = finding["message"] + state
    return found
