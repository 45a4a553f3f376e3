#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every rule of src/diag/rule.def fires in some case: its id stands in [...] in a kept output.

    rules_test.py SOURCE_DIR
"""
import pathlib
import re
import sys


def main():
    source = pathlib.Path(sys.argv[1])
    rules = re.findall(r'^PLUGWARD_RULE\(\w+, "([a-z-]+)"', (source / "src/diag/rule.def").read_text(), re.M)
    shown = set()
    for path in (source / "tests/cases").glob("*/expected.std*"):
        for line in path.read_text(encoding="utf-8").splitlines():
            if "does not fire" not in line:
                shown.update(re.findall(r"\[([a-z-]+)\]", line))
    missing = [rule for rule in rules if rule not in shown]
    for rule in missing:
        print(f"no case shows [{rule}]")
    return 1 if missing or not rules else 0


if __name__ == "__main__":
    sys.exit(main())
