#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Long work tells how it goes on at a terminal, on standard error alone, and leaves nothing of it there.

    progress_test.py PROGRAM SOURCE_DIR

'find' looks through a pipe that nobody writes to for a while: so the work is long on any machine.
"""
import os
import re
import sys

from shell_case import Faults, Scratch, Terminal

BOARDS = 400


def many_boards(scratch):
    """A folder of boards, and one more that cannot be read until somebody writes it."""
    text = (scratch.folder / "boards/heron-a4.xml").read_text(encoding="utf-8")
    folder = scratch.folder / "many"
    folder.mkdir()
    for number in range(BOARDS):
        (folder / f"b{number:04}.xml").write_text(text.replace('id="heron-a4"', f'id="b{number}"'), encoding="utf-8")
    os.mkfifo(folder / "b0000a.xml")
    return folder / "b0000a.xml"


def what_stays(screen):
    """What a terminal shows in the end: '\\r' and then 'clear to the end of the line' wipe a line."""
    return "".join(re.sub(r"^.*\r\x1b\[K", "", line) for line in screen.replace("\r\n", "\n").split("\n"))


def main():
    faults = Faults()
    with Scratch(*sys.argv[1:3]) as scratch:
        slow = many_boards(scratch)
        text = (scratch.folder / "boards/heron-a4.xml").read_text(encoding="utf-8")

        # At a terminal, standard output into a file.
        command = "exec plugward find harnesses/kite-probe.xml --in many --threads 1 > found.txt"
        terminal = Terminal(["bash", "-c", command], scratch.folder, scratch.environment)
        terminal.see(r"\Z.", 0.7)  # nothing more to see: the pipe holds it up
        slow.write_text(text, encoding="utf-8")
        status = terminal.end()
        told = re.findall(r"(\d+) of (\d+) files", terminal.text)
        faults.check(status == 0, f"find ended with {status}")
        faults.check(told and all(int(done) <= int(of) == BOARDS + 1 for done, of in told), f"told: {terminal.text!r}")
        faults.check([int(done) for done, _ in told] == sorted(int(done) for done, _ in told), f"not in order: {told}")
        faults.check(what_stays(terminal.text) == "", f"it stays on the screen: {what_stays(terminal.text)!r}")
        faults.check(" of 401 files" not in (scratch.folder / "found.txt").read_text(encoding="utf-8"), "told in the product")

        # Into pipes: not a byte of it.
        process = scratch.start(["plugward", "find", "harnesses/kite-probe.xml", "--in", "many", "--threads", "1"])
        terminal.text = ""
        slow.write_text(text, encoding="utf-8")
        faults.check(process.wait(60) == 0, "find into pipes failed")
        faults.check(scratch.said("stderr") == "", f"into a pipe: {scratch.said('stderr')!r}")
        faults.check("\r" not in scratch.said("stdout"), "a carriage return in the product")

        # Work that cannot say how far it is says what it does, from half a second on: its board comes through a pipe.
        os.mkfifo(scratch.folder / "slow.xml")
        command = "exec plugward sheet boards/heron-m7.xml slow.xml --at control=J9 -o sheet.html"
        terminal = Terminal(["bash", "-c", command], scratch.folder, scratch.environment)
        faults.check(terminal.see(r"\r\x1b\[Kmaking the sheet \.\.\."), f"no word of the sheet: {terminal.text!r}")
        faults.check(terminal.see(r"\r\x1b\[Kmaking the sheet: \d+ s"), f"no seconds: {terminal.text!r}")
        (scratch.folder / "slow.xml").write_text((scratch.folder / "harnesses/kite-probe.xml").read_text(encoding="utf-8"),
                                                 encoding="utf-8")
        status = terminal.end()
        faults.check(status == 0 and "sheet.html" in os.listdir(scratch.folder), f"the sheet ended with {status}")
        faults.check(terminal.text.endswith("\r\x1b[K"), f"it stays on the screen: {terminal.text!r}")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
