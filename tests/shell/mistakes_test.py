#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The mistakes of tests/mistakes/thirty_mistakes.md: each message is as it stands there, and names place, fault and cure.

    mistakes_test.py PROGRAM SOURCE_DIR

PLUGWARD_REWRITE=1 in the environment writes the messages anew.
"""
import difflib
import os
import pathlib
import re
import sys

from shell_case import Faults, Scratch

FILES = re.compile(r"^`([a-z]+\.xml)`:\n\n```xml\n(.*?)^```$", re.M | re.S)
MISTAKE = re.compile(r"^## (\d+)\. ([^\n]*)\n\nIn `([a-z]+\.xml)`:\n\n```diff\n(.*?)^```\n\n```console\n(.*?)^```$", re.M | re.S)
PLACE = r"^[a-z]+\.xml:\d+:\d+: (error|warning): .+ \[([a-z-]+)\]$"
# A cure says what to write or to do; a nearest name and a list of what there is are cures too.
CURE = r"^help: |: write '| is written like '"


def changed(text, difference):
    """The file with its lines '-' replaced by those that follow with '+'; lines '+' alone go before the root's end."""
    old = [line[1:] for line in difference.splitlines() if line.startswith("-")]
    new = [line[1:] for line in difference.splitlines() if line.startswith("+")]
    lines = text.splitlines()
    at = lines.index(old[0]) if old else len(lines) - 1
    if lines[at:at + len(old)] != old:
        sys.exit(f"these lines are not in the file: {old}")
    return "\n".join(lines[:at] + new + lines[at + len(old):]) + "\n"


def main():
    program, source = sys.argv[1:3]
    path = pathlib.Path(source) / "tests/mistakes/thirty_mistakes.md"
    page = path.read_text(encoding="utf-8")
    files, mistakes = dict(FILES.findall(page)), MISTAKE.findall(page)
    faults = Faults()
    faults.check(set(files) == {"board.xml", "harness.xml", "loom.xml"}, f"the page shows {sorted(files)}")
    faults.check([int(m[0]) for m in mistakes] == list(range(1, page.count("\n## ") + 1)), "a mistake is not in its form")
    faults.check(len(mistakes) >= 30, f"only {len(mistakes)} mistakes")
    rules = set()
    with Scratch(program, source) as scratch:
        for name, text in files.items():
            (scratch.folder / name).write_text(text, encoding="utf-8")
        status, _, said = scratch.run("plugward lint board.xml harness.xml loom.xml")
        faults.check((status, said) == (0, ""), f"the files are not fine before: {said}")
        for number, title, name, difference, shown in mistakes:
            file = scratch.folder / name
            file.write_text(changed(files[name], difference), encoding="utf-8")
            _, _, said = scratch.run(f"plugward lint {name}")
            file.write_text(files[name], encoding="utf-8")
            first = re.search(PLACE, said, re.M)
            faults.check(first, f"{number}. {title}: names no place: {said}")
            faults.check("^" in said, f"{number}. {title}: does not show the place: {said}")
            faults.check(re.search(CURE, said, re.M), f"{number}. {title}: names no cure: {said}")
            if first:
                rules.add(first.group(2))
            page = page.replace(f"```diff\n{difference}```\n\n```console\n{shown}```", f"```diff\n{difference}```\n\n```console\n{said}```", 1)
            if said != shown and os.environ.get("PLUGWARD_REWRITE") != "1":
                faults.check(False, f"{number}. {title}:\n" + "".join(
                    difflib.unified_diff(shown.splitlines(True), said.splitlines(True), "thirty_mistakes.md", "what it says")))
    faults.check(len(rules) >= 12, f"only {len(rules)} rules: {sorted(rules)}")
    if os.environ.get("PLUGWARD_REWRITE") == "1":
        path.write_text(page, encoding="utf-8")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
