#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The manual page has every command, option and example of the help texts, and groff finds nothing to warn of.

    manual_test.py PROGRAM SOURCE_DIR MANUAL.gz
"""
import gzip
import re
import subprocess
import sys

from shell_case import Faults, Scratch


def main():
    faults = Faults()
    page = gzip.open(sys.argv[3], "rb").read()
    done = subprocess.run(["groff", "-man", "-Tutf8", "-ww", "-P-cbou", "-rLL=400n"], input=page, capture_output=True, check=False)
    faults.check(done.returncode == 0 and not done.stderr, f"groff says: {done.stderr.decode()}")
    shown = done.stdout.decode("utf-8")
    text = re.sub(r"\s+", " ", shown)
    sections = re.findall(r"^[A-Z][A-Z ]+$", shown, re.M)
    for name in ("NAME", "SYNOPSIS", "DESCRIPTION", "COMMANDS", "FILES", "ENVIRONMENT", "EXIT STATUS"):
        faults.check(name in sections, f"no section {name} in {sections}")
    with Scratch(*sys.argv[1:3]) as scratch:
        _, version, _ = scratch.run("plugward --version")
        faults.check(version.strip() in text, "the page does not name the version")
        _, overview, _ = scratch.run("plugward --help")
        for command in re.findall(r"^  ([a-z]+) +\S", overview.split("Commands:\n")[1], re.M):
            part = re.search(rf"^   {command}$(.*?)(?=^   [a-z]+$|^[A-Z])", shown, re.M | re.S)
            faults.check(part, f"no part about '{command}'")
            if not part:
                continue
            part = re.sub(r"\s+", " ", part.group(1))
            _, help_text, _ = scratch.run(f"plugward {command} --help")
            options = re.findall(r"^  (-\S+)", help_text, re.M)
            faults.check(len(options) > 2, f"'{command} --help' shows the options {options}")
            for option in (name for names in options for name in names.split(",")):
                if option not in ("-h", "--help"):
                    faults.check(f" {option} " in part or f" {option}, " in part, f"'{option}' of '{command}' is missing")
            for example in re.findall(r"^    (plugward .*)$", help_text, re.M):
                faults.check(re.sub(r"\s+", " ", example) in part, f"'{example}' is missing")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
