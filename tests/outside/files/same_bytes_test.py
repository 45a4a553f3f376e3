#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The same input gives the same bytes: every command, every format, whatever the surroundings.

    same_bytes_test.py PROGRAM SOURCE_DIR

Every command line runs as it is and again in each of the surroundings: addresses not shuffled, other locales (one with a
decimal comma, made here), time zones, homes, terminals, working folders, later by the clock, input files with other
times. No date comes from anywhere but --date and SOURCE_DATE_EPOCH. A command that the list leaves out is a fault.
"""
import concurrent.futures
import itertools
import os
import pathlib
import re
import shutil
import subprocess
import sys
import time

from bench import FITTED, Bench, Faults, told

PAIR = ["boards/heron-m7.xml", "harnesses/kite-probe.xml"]
KITE = [*PAIR, *FITTED]
FAN = ["boards/heron-m7.xml", "harnesses/fan-12v.xml", "--at", "fan=J11"]
LOOM = ["harnesses/wren-a4.xml"]
SWAP = [*LOOM, "--to", "boards/heron-m7.xml"]
JSON = ["--format", "json"]
# What is printed, and what goes into OUT: a file of its own.
LINES = [
    ["check", *KITE], ["check", *KITE, *JSON], ["check", *KITE, "--color", "always"], ["check", *LOOM], ["check", *FAN],
    ["check", *LOOM, *JSON], ["repin", *KITE], ["repin", *KITE, *JSON], ["repin", *KITE, "--adapter"],
    ["repin", *KITE, "--adapter", *JSON], ["place", *PAIR], ["place", *PAIR, *JSON], ["parts", *KITE],
    ["parts", *KITE, "--format", "csv"], ["parts", *KITE, *JSON],
    *(["find", PAIR[1], "--in", "boards", "--threads", n] for n in "14"), ["find", PAIR[1], "--in", "boards", *JSON],
    ["swap", *SWAP], ["swap", *SWAP, *JSON], ["swap", *SWAP, "--back"], ["swap", *SWAP, "--record", "OUT"],
    ["compare", *LOOM, *LOOM], ["compare", *LOOM, *LOOM, *JSON], ["causes", *LOOM], ["causes", *LOOM, *JSON],
    ["causes", *LOOM, "--symptom", "judders", "--plug", "motor-x/motor"], ["lint", *KITE[:2], "boards/faulty.xml"],
    ["lint", *PAIR, "boards/faulty.xml", *JSON], *(["list", what] for what in
                                                   ("families", "functions", "colours", "gauges", "rules")),
    ["list", "families", "xh-2.50"], ["explain", "back-feed"], ["--help"], ["check", "--help"], ["--version"],
    *(["draw", *KITE, "-o", f"OUT.{kind}"] for kind in ("svg", "pdf", "png")),
    *(["draw", *KITE, "--plug", "control", "--view", "mating", "-o", f"OUT.{kind}"] for kind in ("svg", "pdf", "png")),
    *(["sheet", *what, "-o", f"OUT.{kind}"] for what in (KITE, [*PAIR, "--place"], SWAP)
      for kind in ("pdf", "html", "txt", "md")),
    ["sheet", *LOOM, "--date", "2026-02-19", "--paper", "letter", "--landscape", "-o", "OUT.pdf"],
    *(["check", *KITE, "--format", kind] for kind in ("sarif", "markdown", "spice", "csv")),
    ["lint", *PAIR, "boards/faulty.xml", "--format", "sarif"], ["cable", "harnesses/standard/null-modem.xml"],
    ["start", "fan", "--seen", "BK,RD,YE", "--date", "2026-02-19"], ["sheet", *KITE, "--language", "de", "-o", "OUT.pdf"],
    *(["labels", *what, "--paper", paper, "-o", "OUT.pdf"] for what in (LOOM, SWAP) for paper in ("a4", "tape")),
]


def comma_locale(folder):
    """A locale that writes 1,5 for 1.5; nothing where it cannot be made."""
    source = folder / "source"
    source.write_text('LC_NUMERIC\ndecimal_point ","\nthousands_sep "."\ngrouping 3\nEND LC_NUMERIC\n', encoding="ascii")
    subprocess.run(["localedef", "--force", "--no-archive", "-i", source, folder / "fr_FR"], capture_output=True,
                   check=False)
    where = {"LOCPATH": str(folder), "LC_ALL": "fr_FR"}
    said = subprocess.run(["bash", "-c", "printf %.1f 1,5"], env={**os.environ, **where}, capture_output=True,
                          check=False).stdout
    return where if said == b"1,5" else None


def surroundings(bench, faults):
    """A name, what is added to the environment, the working folder, what stands before the program."""
    other = bench.folder("another place, far from the first") / "deeper"
    shutil.copytree(bench.place, other)
    for number, path in enumerate(sorted(other.rglob("*.xml"), reverse=True)):
        os.utime(path, (number * 1e6, number * 1e6))
    comma = comma_locale(bench.folder("locales"))
    faults.must(comma, "no locale with a decimal comma could be made")
    here = bench.place
    return [
        ("again, later", {}, here, []),
        ("addresses as they are", {}, here, ["setarch", "-R"]),
        ("POSIX", {"LC_ALL": "POSIX", "TZ": "XXX-14", "COLUMNS": "40", "TERM": "xterm-256color"}, here, []),
        ("UTF-8", {"LC_ALL": "C.UTF-8", "TZ": "America/St_Johns", "HOME": "/nowhere", "LINES": "5"}, other, []),
        ("comma", {**(comma or {}), "TERM": "dumb", "COLUMNS": "400", "XDG_CACHE_HOME": "/nowhere"}, here, []),
        ("bare", None, other, ["setarch", "-R"]),
    ]


def run(bench, words, number, around):
    """Status, what was printed, and what lies in the output folder."""
    name, added, place, before = around
    folder = pathlib.Path(bench.folder(f"out {number} {name}"))
    environment = {"PATH": os.environ["PATH"]} if added is None else {**bench.environment, **added}
    line = [str(folder / word.replace("OUT", "out")) if word.startswith("OUT") else word for word in words]
    done = subprocess.run([*before, bench.program, *line], cwd=place, env=environment, capture_output=True,
                          stdin=subprocess.DEVNULL, timeout=120, check=False)
    made = {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}
    shutil.rmtree(folder)

    def without(text):
        return text.replace(os.fsencode(folder), b"FOLDER").replace(os.fsencode(place), b"PLACE")

    return done.returncode, without(done.stdout), without(done.stderr), {n: without(held) for n, held in made.items()}


def first_difference(one, other):
    for what, a, b in zip(("status", "standard output", "standard error", "files"), one, other):
        if a == b:
            continue
        if isinstance(a, dict):
            names = [n for n in sorted({*a, *b}) if a.get(n) != b.get(n)]
            a, b = a.get(names[0], b""), b.get(names[0], b"")
            what = names[0]
        if isinstance(a, bytes):
            at = next((i for i, (x, y) in enumerate(itertools.zip_longest(a, b)) if x != y), 0)
            return f"{what}, byte {at}: {a[max(0, at - 40):at + 40]!r} / {b[max(0, at - 40):at + 40]!r}"
        return f"{what}: {a} / {b}"
    return ""


def dates(bench, faults):
    """Of a sheet: from --date, else from SOURCE_DATE_EPOCH, else none; never from the clock."""
    folder = bench.folder("dates")
    this_year = str(time.gmtime().tm_year).encode()
    sheet = ["sheet", "boards/heron-a4.xml", "harnesses/fan-24v.xml", "--at", "fan=J11"]
    rows = [({}, [], b""), ({"SOURCE_DATE_EPOCH": "86399"}, [], b"1970-01-01"),
            ({"SOURCE_DATE_EPOCH": "951782400", "TZ": "XXX+12"}, [], b"2000-02-29"),
            ({"SOURCE_DATE_EPOCH": "951782400"}, ["--date", "1999-12-31"], b"1999-12-31")]
    for (added, words, date), kind in itertools.product(rows, ("md", "txt", "html", "pdf")):
        out = folder / f"out.{kind}"
        done = bench.run(*sheet, *words, "-o", out, env={**bench.environment, **added})
        faults.same((done.returncode, told(done)), (0, ""), f"date {date} {kind}")
        text = out.read_bytes()
        if kind == "pdf":
            text = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, check=True).stdout
            stamps = re.findall(rb"D:(\d{14})", out.read_bytes())
            wanted = date.replace(b"-", b"")
            faults.must(all(wanted and stamp.startswith(wanted) for stamp in stamps), f"{date}: the PDF is of {stamps}")
        shown = set(re.findall(rb"\b(?:19|20)\d\d-\d\d-\d\d\b", text)) - stated(bench, sheet)
        faults.same(shown, {date} - {b""}, f"date {date} in {kind}")
    for words in (["draw", *sheet[1:], "-o", folder / "out.pdf"], ["labels", *LOOM, "-o", folder / "out.pdf"]):
        bench.run(*words)
        stamps = re.findall(rb"D:(\d{4})", (folder / "out.pdf").read_bytes())
        faults.must(this_year not in stamps, f"{words[0]}: the PDF is of today")


def stated(bench, words):
    """Dates that stand in the descriptions themselves."""
    text = b"".join((bench.place / word).read_bytes() for word in words if word.endswith(".xml"))
    return set(re.findall(rb"\b(?:19|20)\d\d-\d\d-\d\d\b", text))


def main():
    faults = Faults()
    with Bench(sys.argv[1], sys.argv[2]) as bench:
        (bench.place / "boards/faulty.xml").write_text("<board id='b'><header/>\n<pin/></board>", encoding="utf-8")
        commands = re.findall(r"^  (\w+)\s+\S", bench.run("--help").stdout.decode().partition("Commands:\n")[2], re.M)
        faults.same(sorted({line[0] for line in LINES if line[0][0] != "-"}), sorted(commands), "the commands")
        around = surroundings(bench, faults)
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            first = list(pool.map(lambda at: run(bench, LINES[at], at, ("first", {}, bench.place, [])), range(len(LINES))))
            for words, (status, out, err, files) in zip(LINES, first):
                faults.must(status in (0, 1) and (out or files), f"{words}: {status} {err}")
            time.sleep(1.1)  # clocks of PDF files count seconds
            for one in around:
                again = pool.map(lambda at, one=one: run(bench, LINES[at], at, one), range(len(LINES)))
                for words, before, now in zip(LINES, first, again):
                    difference = first_difference(before, now)
                    faults.must(not difference, f"{' '.join(words)}: {one[0]}: {difference}")
        dates(bench, faults)
        threads = [first[i] for i, words in enumerate(LINES) if "--threads" in words]
        faults.must(threads[0] == threads[1], "find: the bytes depend on the threads")
    faults.end(f"; {len(LINES)} command lines in {len(around) + 1} surroundings")


if __name__ == "__main__":
    main()
