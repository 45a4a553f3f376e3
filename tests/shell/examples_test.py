#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every command's help shows examples, and each does on the shipped files what the help says of it.

    examples_test.py PROGRAM SOURCE_DIR

They run in the order of the overview in one scratch folder, so one may use what another wrote. An example with
--watch runs until it says that it watches, and is ended by SIGINT.
"""
import re
import shlex
import signal
import sys

from shell_case import Faults, Scratch, wait_for


def examples(help_text):
    """(what it does, command line, status) as the help shows them."""
    block = help_text.split("\nExamples:\n", 1)
    lines = block[1].splitlines() if len(block) == 2 else []
    for says, line in zip(lines[0::2], lines[1::2]):
        status = re.search(r" \(exit status (\d)\):$", says)
        yield says.strip(" :"), line.strip(), int(status.group(1)) if status else 0


def watched(scratch, line):
    process = scratch.start(shlex.split(line))
    came = wait_for(lambda: "Ctrl-C ends it" in scratch.said("stderr"))
    process.send_signal(signal.SIGINT)
    return process.wait(30) if came else -1


def main():
    faults = Faults()
    with Scratch(*sys.argv[1:3]) as scratch:
        _, overview, _ = scratch.run("plugward --help")
        commands = re.findall(r"^  ([a-z]+) +\S", overview.split("Commands:\n")[1], re.M)
        faults.check(len(commands) > 10, f"the overview lists {commands}")
        for command in commands:
            _, text, _ = scratch.run(f"plugward {command} --help")
            found = list(examples(text))
            faults.check(found, f"'{command} --help' shows no example")
            for says, line, expected in found:
                faults.check(line.startswith(f"plugward {command} "), f"an example of '{command}' is '{line}'")
                if "--watch" in line:
                    status, err = watched(scratch, line), ""
                else:
                    status, out, err = scratch.run(line)
                    faults.check(out or "-o" in line, f"'{line}' ({says}) prints nothing")
                faults.check(status == expected, f"'{line}' ({says}) ends with {status}: {err}")
                written = re.search(r" -o (\S+)", line)
                if written:
                    faults.check((scratch.folder / written.group(1)).exists(), f"'{line}' writes nothing")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
