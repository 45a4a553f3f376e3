#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""'plugward start' at a terminal asks; each question says what answers there are, and Enter is 'not known'.

    dialogue_test.py PROGRAM SOURCE_DIR
"""
import os
import pty
import select
import sys
import termios
import time

from shell_case import Faults, Scratch


class Talk:
    """A program at a terminal of its own."""

    def __init__(self, scratch, arguments):
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.chdir(scratch.folder)
            os.execvpe("plugward", ["plugward"] + arguments, scratch.environment)
        self.heard = ""
        how = termios.tcgetattr(self.terminal)
        how[3] &= ~termios.ECHO  # what is answered is not heard again
        termios.tcsetattr(self.terminal, termios.TCSANOW, how)

    def hear(self, end, seconds=20):
        """Reads until `end` comes, and gives what came."""
        until = time.monotonic() + seconds
        while not self.heard.endswith(end) and time.monotonic() < until:
            if not select.select([self.terminal], [], [], 1)[0]:
                continue
            try:
                more = os.read(self.terminal, 65536)
            except OSError:  # the program has ended
                break
            if not more:
                break
            self.heard += more.decode("utf-8").replace("\r\n", "\n")
        said, self.heard = self.heard, ""
        return said

    def answer(self, text):
        os.write(self.terminal, text.encode("utf-8") + b"\n")

    def status(self):
        return os.waitstatus_to_exitcode(os.waitpid(self.pid, 0)[1])


def test_fan(scratch, faults):
    talk = Talk(scratch, ["start", "-o", "my-fan.xml", "--date", "2026-11-25"])
    for question, reply in (("What is at the far end?", "fann"),
                            ("'fann' is none of these", "fan"),
                            ("Which colours sit in the housing", "BK,RX"),
                            ("RX", "BK,RD"),
                            ("Seen from which side?", "wire"),
                            ("Which housing, or which pitch", "2.5"),
                            ("where lead 1 (BK) goes? V plus, G ground, S speed sense, C speed control.", "minus"),
                            ("where lead 2 (RD) goes?", ""),
                            ("volts on its label? such as 24 V.", "24 V"),
                            ("amps on its label? such as 0.08 A.", "")):
        asked = talk.hear("> ")
        faults.check(question in asked, f"'{question}' in what was asked:\n{asked}")
        faults.check("Enter: not known" in asked, f"what Enter means, in:\n{asked}")
        talk.answer(reply)
    faults.check(talk.status() == 0, "the dialogue ended well")
    text = (scratch.folder / "my-fan.xml").read_text(encoding="utf-8")
    for line in ('<fan id="fan" needs="21.6..26.4 V"/>', '<plug id="fan" family="unknown-2.50" positions="2">',
                 '<lead cavity="1" colour="BK" to="G"/>', '<lead cavity="2" colour="RD"/>'):
        faults.check(line in text, f"{line} in\n{text}")
    status, _, errors = scratch.run("plugward lint my-fan.xml")
    faults.check((status, errors) == (0, ""), f"lint: {status}, {errors}")


def test_nothing_known(scratch, faults):
    talk = Talk(scratch, ["start", "--date", "2026-11-25", "-o", "thing.xml"])
    for _ in range(5):
        talk.hear("> ")
        talk.answer("")
    faults.check(talk.status() == 0, "Enter all the way is a description")
    status, out, errors = scratch.run("plugward lint thing.xml")
    faults.check((status, errors) == (0, ""), f"lint: {status}, {out}, {errors}")


def test_end_of_answers(scratch, faults):
    talk = Talk(scratch, ["start", "fan", "-o", "none.xml"])
    talk.hear("> ")
    os.write(talk.terminal, b"\x04")
    said = talk.hear("written\n")
    faults.check("no more answers came; nothing was written" in said, said)
    faults.check(talk.status() == 2, "status 2")
    faults.check(not (scratch.folder / "none.xml").exists(), "no file")


def main():
    faults = Faults()
    with Scratch(sys.argv[1], sys.argv[2]) as scratch:
        test_fan(scratch, faults)
        test_nothing_known(scratch, faults)
        test_end_of_answers(scratch, faults)
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
