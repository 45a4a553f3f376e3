#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""README and .ci/run name the same packages and the same test command.

    packages_test.py SOURCE_DIR
"""
import pathlib
import re
import sys


def packages_of_ci(text):
    block = re.search(r"^packages=\((.*?)\)", text, re.S | re.M)
    return sorted(block.group(1).split()) if block else None


def packages_of_readme(text):
    """All words after 'apt-get install' of the commands, continued lines joined."""
    commands = re.findall(r"apt-get install ([^\n&|;`]*)", text.replace("\\\n", " "))
    return [sorted(word for word in command.split() if not word.startswith("-")) for command in commands]


def main():
    root = pathlib.Path(sys.argv[1])
    ci = (root / ".ci/run").read_text(encoding="utf-8")
    readme = (root / "README.md").read_text(encoding="utf-8")
    wanted = packages_of_ci(ci)
    found = []
    lists = packages_of_readme(readme)
    if not wanted:
        found.append(".ci/run has no packages=( ... ) list")
    if not lists:
        found.append("README.md has no 'apt-get install' command")
    # The first command is for the program alone; the one for the tests names all that .ci/run installs.
    if wanted and lists and wanted not in lists:
        best = max(lists, key=lambda names: len(set(names) & set(wanted)))
        found.append(f"README.md and .ci/run differ in: {' '.join(sorted(set(wanted) ^ set(best)))}")
    command = "cmake --workflow --preset test"
    for name, text in ((".ci/run", ci), ("README.md", readme)):
        if command not in text:
            found.append(f"{name} does not name '{command}'")
    for fault in found:
        print(fault)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
