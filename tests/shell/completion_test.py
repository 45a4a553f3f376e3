#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The completions of bash, zsh and fish in the shells themselves.

    completion_test.py PROGRAM SOURCE_DIR SHELL

bash and zsh at a terminal, with a real tabulator; fish through its 'complete -C'. Everything that could come next is
proved in tests/cases/complete; here, that each shell asks and shows it.
"""
import shutil
import subprocess
import sys

from shell_case import Faults, Scratch, Terminal

MATING = "boards/heron-m7.xml harnesses/kite-probe.xml"
# What is typed, and what the line is after one tabulator.
ONE_ANSWER = (
    ("plugward swa", "plugward swap "),
    ("plugward check --max", "plugward check --max-errors "),
    ("plugward draw x --picture s", "plugward draw x --picture svg "),
    ("plugward draw x --paper=le", "plugward draw x --paper=letter "),
    ("plugward lint boards/heron-m", "plugward lint boards/heron-m7.xml "),
    ("plugward swap x --to boards/heron-a", "plugward swap x --to boards/heron-a4.xml "),
    (f"plugward check {MATING} --at cont", f"plugward check {MATING} --at control="),
    (f"plugward check {MATING} --at trigger=J10", f"plugward check {MATING} --at trigger=J10 "),
    (f"plugward check {MATING} --jumper JP2=2", f"plugward check {MATING} --jumper JP2=24V "),
    ("plugward find x --in har", "plugward find x --in harnesses/"),
    ("plugward list families kk-2", "plugward list families kk-2.54 "),
    ("plugward explain heater-p", "plugward explain heater-power "),
    ("plugward lint heron-a", "plugward lint heron-a4 "),
)
END = "END"


def lines(shell, start, scratch, faults):
    """A tabulator, a word behind it, and a program of the same name shows what it got."""
    show = scratch.folder.parent / "bin" / "plugward"
    real = show.resolve()
    show.unlink()
    show.write_text(f'#!/bin/sh\nif [ "$1" = complete ]; then exec "{real}" "$@"; fi\necho "<$*>"\n', encoding="utf-8")
    show.chmod(0o755)
    terminal = Terminal(shell, scratch.folder, scratch.environment)
    terminal.type(start + "; echo rea''dy\n")
    faults.check(terminal.see(r"ready\r?\n", 60), f"{shell[0]} does not start: {terminal.text!r}")
    for typed, expected in ONE_ANSWER:
        terminal.type(typed + "\t" + END + "\n")
        wanted = "<" + expected.split(" ", 1)[1] + END + ">"
        found = terminal.see(r"<[^<>\r\n]*>", 20)
        faults.check(found == wanted, f"{shell[0]}: '{typed}' and a tabulator give {found}, not {wanted}")
    terminal.type("exit\n")
    terminal.end(10)


def bash(scratch, source, faults):
    lines(["bash", "--norc", "--noprofile", "-i"],
          f"bind 'set enable-bracketed-paste off'; . '{source}/src/cli/packaging/completions/plugward.bash'", scratch, faults)


def zsh(scratch, source, faults):
    lines(["zsh", "-f", "-i"],
          f"fpath=('{source}/src/cli/packaging/completions' $fpath); autoload -Uz compinit; compinit -D -u; unset zle_bracketed_paste",
          scratch, faults)


def fish(scratch, source, faults):
    script = f"source '{source}/src/cli/packaging/completions/plugward.fish'\n"
    for typed, expected in ONE_ANSWER:
        script += f"complete -C '{typed}'\necho {END}\n"
    done = subprocess.run(["fish", "--no-config", "-c", script], cwd=scratch.folder, env=scratch.environment, text=True,
                          capture_output=True, timeout=120, check=False)
    faults.check(not done.stderr, f"fish says: {done.stderr}")
    answers = done.stdout.split(END + "\n")
    for (typed, expected), answer in zip(ONE_ANSWER, answers):
        words = [line.split("\t")[0] for line in answer.splitlines()]
        wanted = expected.rstrip(" ").split(" ")[-1]
        faults.check(wanted in words, f"fish: '{typed}' offers {words}, not {wanted}")


def main():
    program, source, name = sys.argv[1:4]
    if shutil.which(name) is None:
        print(f"{name} is not installed")
        return 77
    faults = Faults()
    with Scratch(program, source) as scratch:
        scratch.environment["PLUGWARD_PATH"] = str(scratch.folder)
        {"bash": bash, "zsh": zsh, "fish": fish}[name](scratch, scratch.source, faults)
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
