#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Memory grows at most with the size of what is read.

    memory_test.py PROGRAM SOURCE_DIR MOST_MEMORY

Each kind of input is made small, 4 and 16 times as large; the most memory that a run held is read from the system. What
the larger input takes above the small one may be at most so many times more. What a circuit takes grows with the square of
its largest island, whose matrix is dense: there the limits of the reader bound it, and the test is a figure.
"""
import subprocess
import sys

from bench import Bench, Faults

SIZES = (1, 4, 16)
AT_MOST = {"loom": 24 << 20, "plugs judged": 48 << 20}  # of the largest
SLACK = 2 << 20  # of what the allocator hands out in pieces

BOARD = ('<board id="b" title="t" width="900 mm" height="600 mm" evidence="e"><evidence id="e" kind="schematic"/>\n'
         '<rail id="5V" volts="4.9..5.2 V"/>\n{}</board>\n')
HEADER = ('<header id="J{0}" label="LIMIT {0}" use="limit" family="xh-2.50" positions="3" x="{0} mm" y="5 mm">'
          '<pin n="1" function="supply" rail="5V"/><pin n="2" function="ground"/>'
          '<pin n="3" function="input" signal="limit" rail="5V" withstands="-0.3..5.5 V" low-below="0.8 V" '
          'high-above="2 V" pull="up" pull-ohms="40 kohm"/></header>\n')
HARNESS = '<harness id="h" title="t" evidence="e"><evidence id="e" kind="measurement"/>\n{}{}</harness>\n'
SWITCH = '<dry-switch id="s{0}" use="limit" rests="open"/>\n'
PLUG = ('<plug id="p{0}" family="xh-2.50" positions="3"><lead cavity="2" colour="BK" gauge="26 AWG" length="300 mm" '
        'to="s{0}.B"/><lead cavity="3" colour="WH" gauge="26 AWG" length="300 mm" to="s{0}.A"/></plug>\n')
FAMILY = '<family id="own-{0}" title="own {0}" pitch="2.5 mm" positions="2..16" profile="bare"/>\n'


def board(count):
    return BOARD.format("".join(HEADER.format(n) for n in range(count)))


def harness(count):
    return HARNESS.format("".join(SWITCH.format(n) for n in range(count)), "".join(PLUG.format(n) for n in range(count)))


def loom(count):
    files = "".join(f'<harness id="h{n}" file="one.xml"/>\n' for n in range(count))
    seats = "".join(f'<seat plug="h{n}/p0" header="J{n}"/>\n' for n in range(count))
    return ('<loom id="l" title="t" board="b.xml" evidence="e"><evidence id="e" kind="photograph"/>\n'
            f"{files}{seats}</loom>\n")


def at(count):
    return [word for n in range(count) for word in ("--at", f"p{n}=J{n}")]


def kinds(number):
    """A name, the files to write, the command."""
    yield "board", {"b.xml": board(number * 300)}, ["lint", "b.xml"]
    yield "harness", {"h.xml": harness(number * 300)}, ["lint", "h.xml"]
    yield "loom", {"b.xml": board(16 * 12), "one.xml": harness(1), "l.xml": loom(number * 12)}, ["check", "l.xml"]
    yield "families", {"f.xml": "<families>" + "".join(FAMILY.format(n) for n in range(number * 1000)) + "</families>"}, [
        "lint", "f.xml"]
    yield "faults", {"b.xml": board(number * 300).replace('function="', 'funktion="')}, ["lint", "b.xml"]
    yield "all faults", {"b.xml": board(number * 300).replace('function="', 'funktion="')}, [
        "lint", "b.xml", "--max-errors", "0"]
    yield "comment", {"b.xml": board(1).replace("<rail", "<!--" + "x" * (number * 500_000) + "--><rail")}, ["lint", "b.xml"]
    yield "one word", {"b.xml": board(1).replace('id="b"', 'id="' + "x" * (number * 500_000) + '"')}, ["lint", "b.xml"]
    yield "plugs judged", {"b.xml": board(number * 50), "h.xml": harness(number * 50)}, [
        "check", "b.xml", "h.xml", *at(number * 50)]
    yield "headers to choose from", {"b.xml": board(number * 60), "h.xml": harness(2)}, ["place", "b.xml", "h.xml"]
    yield "boards searched", {f"boards/b{n}.xml": board(40).replace('id="b"', f'id="b{n}"') for n in range(number * 8)} | {
        "h.xml": harness(1)}, ["find", "h.xml", "--in", "boards", "--threads", "2"]


def most_memory(bench, meter, folder, words):
    done = subprocess.run([meter, bench.program, *words], cwd=folder, env=bench.environment, capture_output=True,
                          stdin=subprocess.DEVNULL, timeout=120, check=True)
    used, status = (int(word) for word in done.stdout.split())
    return status, used


def main():
    faults, table = Faults(), {}
    with Bench(sys.argv[1], sys.argv[2]) as bench:
        for number in SIZES:
            for name, files, words in kinds(number):
                folder = bench.folder(f"{name} {number}")
                for file, text in files.items():
                    (folder / file).parent.mkdir(exist_ok=True)
                    (folder / file).write_text(text, encoding="utf-8")
                status, used = most_memory(bench, sys.argv[3], folder, words)
                faults.must(status in (0, 1), f"{name} {number}: status {status}")
                table.setdefault(name, []).append(used)
    for name, (small, middle, large) in table.items():
        times = (SIZES[2] - SIZES[0]) / (SIZES[1] - SIZES[0])
        shown = ", ".join(f"{used / (1 << 20):.1f}" for used in (small, middle, large))
        print(f"{name}: {shown} MiB")
        if name in AT_MOST:
            faults.must(large <= AT_MOST[name], f"{name}: {shown} MiB")
            continue
        faults.must(large - small <= 1.25 * times * max(middle - small, 0) + SLACK, f"{name}: {shown} MiB")
    faults.end()


if __name__ == "__main__":
    main()
