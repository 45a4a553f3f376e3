#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""--watch does its work again when a file is saved, as the various editors save, and at no other time.

    watch_test.py PROGRAM SOURCE_DIR
"""
import os
import signal
import sys

from shell_case import Faults, Scratch, wait_for

WATCHING = "plugward: watching {} files; Ctrl-C ends it\n"


class Watch:
    def __init__(self, scratch, arguments, faults):
        self.scratch, self.faults = scratch, faults
        self.process = scratch.start(["plugward"] + arguments)

    def says(self, text, times=1, kind="stderr"):
        came = wait_for(lambda: self.scratch.said(kind).count(text) >= times)
        self.faults.check(came and self.scratch.said(kind).count(text) == times,
                          f"'{text}' {times} times in {kind}, which is:\n{self.scratch.said(kind)}")

    def end(self, how=signal.SIGINT):
        self.faults.check(self.process.poll() is None, f"the watch ended by itself: {self.scratch.said('stderr')}")
        self.process.send_signal(how)
        status = self.process.wait(30)
        self.faults.check(status == 0, f"ended by {how.name} with status {status}")


def save_over(path, text):
    """As an editor that writes a new file and renames it over the old one."""
    new = path.with_name("." + path.name + ".new")
    new.write_text(text, encoding="utf-8")
    os.replace(new, path)


def save_with_backup(path, text):
    """As an editor that moves the old file away and writes a new one under its name."""
    os.replace(path, path.with_name(path.name + "~"))
    path.write_text(text, encoding="utf-8")


def ticks(process):
    """Time of the processor that it has used, in clock ticks (proc(5))."""
    with open(f"/proc/{process.pid}/stat", encoding="ascii") as stat:
        return sum(int(field) for field in stat.read().rsplit(")", 1)[1].split()[11:13])


def test_lint(scratch, faults):
    board = scratch.folder / "boards/heron-m7.xml"
    good = board.read_text(encoding="utf-8")
    broken = good[:len(good) // 2]
    watch = Watch(scratch, ["lint", "boards/heron-m7.xml", "harnesses/kite-probe.xml", "--watch"], faults)
    watch.says(WATCHING.format(2))
    watch.says("board 'heron-m7'", 1, "stdout")
    # In place, half-edited: its error is shown, and the watch goes on.
    board.write_text(broken, encoding="utf-8")
    watch.says("plugward: 'boards/heron-m7.xml' was saved\n", 1)
    watch.says("[not-well-formed]", 1)
    for number, save in enumerate((save_over, save_with_backup), 2):
        save(board, good)
        watch.says("plugward: 'boards/heron-m7.xml' was saved\n", number)
        watch.says("board 'heron-m7'", number, "stdout")
    # Files of no concern, in the same folders.
    (scratch.folder / "boards/other.xml").write_text("<x/>", encoding="utf-8")
    before = ticks(watch.process)
    wait_for(lambda: False, 1.0)
    faults.check(ticks(watch.process) - before <= 2, "it works while nothing is saved")
    watch.says("was saved", 3)
    # Gone, then there again.
    board.unlink()
    watch.says("plugward: error: cannot read 'boards/heron-m7.xml': No such file or directory\n", 1)
    board.write_text(good, encoding="utf-8")
    watch.says("board 'heron-m7'", 4, "stdout")
    watch.end()


def test_draw(scratch, faults):
    picture = scratch.folder / "kite.svg"
    harness = scratch.folder / "harnesses/kite-probe.xml"
    good = harness.read_text(encoding="utf-8")
    watch = Watch(scratch, ["draw", "boards/heron-m7.xml", "harnesses/kite-probe.xml", "--at", "control=J9", "--plug",
                            "control", "-o", "kite.svg", "--watch"], faults)
    watch.says(WATCHING.format(2))
    first = picture.read_text(encoding="utf-8")
    save_over(harness, good.replace("</plug>", "</plg>"))
    watch.says("[not-well-formed]", 1)
    faults.check(picture.read_text(encoding="utf-8") == first, "the picture changed though the file is broken")
    # A fault that the command line shows only now is no end either.
    save_over(harness, good.replace('id="control"', 'id="steer"'))
    watch.says("plugward: error: --at: ", 1)
    faults.check(picture.read_text(encoding="utf-8") == first, "the picture changed though there is no such plug")
    save_over(harness, good.replace('colour="BN"', 'colour="VT"'))
    faults.check(wait_for(lambda: picture.read_text(encoding="utf-8") != first), "the picture did not change")
    faults.check(not [name for name in os.listdir(scratch.folder) if name.startswith(".")], "something was left behind")
    watch.end(signal.SIGTERM)


def test_loom(scratch, faults):
    """The files that a loom names are watched too, and those that it names later."""
    loom = scratch.folder / "harnesses/wren-a4.xml"
    watch = Watch(scratch, ["check", "harnesses/wren-a4.xml", "--watch"], faults)
    watch.says("; Ctrl-C ends it\n")
    watch.says("MATE", 1, "stdout")
    motor = scratch.folder / "harnesses/x-motor.xml"
    other = scratch.folder / "elsewhere/motor.xml"
    other.parent.mkdir()
    other.write_text(motor.read_text(encoding="utf-8"), encoding="utf-8")
    motor.write_text(motor.read_text(encoding="utf-8"), encoding="utf-8")
    watch.says("x-motor.xml' was saved\n", 1)
    text = loom.read_text(encoding="utf-8")
    save_over(loom, text.replace('"motor-x" file="x-motor.xml"', '"motor-x" file="../elsewhere/motor.xml"'))
    watch.says("wren-a4.xml' was saved\n", 1)
    watch.says("MATE", 3, "stdout")
    save_over(other, "<harness")
    watch.says("elsewhere/motor.xml' was saved\n", 1)
    watch.says("elsewhere/motor.xml:1:", 1)
    watch.end()


def test_sheet(scratch, faults):
    """A sheet is written anew; what no save can cure ends at once."""
    watch = Watch(scratch, ["sheet", "boards/heron-m7.xml", "harnesses/kite-probe.xml", "--at", "control=J9", "-o",
                            "kite.html", "--watch"], faults)
    watch.says(WATCHING.format(2))
    first = (scratch.folder / "kite.html").read_text(encoding="utf-8")
    harness = scratch.folder / "harnesses/kite-probe.xml"
    save_over(harness, harness.read_text(encoding="utf-8").replace("Kite bed probe, five leads", "Kite no. 2"))
    faults.check(wait_for(lambda: (scratch.folder / "kite.html").read_text(encoding="utf-8") != first),
                 "the sheet did not change")
    watch.end()
    status, _, err = scratch.run("plugward draw boards/heron-m7.xml harnesses/kite-probe.xml --watch")
    faults.check((status, err) == (2, "plugward: error: 'draw' needs -o FILE.svg, .pdf or .png, or --picture KIND\n"),
                 f"draw without -o: {status} {err}")


def main():
    faults = Faults()
    for test in (test_lint, test_draw, test_loom, test_sheet):
        with Scratch(*sys.argv[1:3]) as scratch:
            test(scratch, faults)
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
