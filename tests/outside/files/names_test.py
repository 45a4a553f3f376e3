#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Files may be called anything that the system allows: blanks, line feeds, letters of any script, bytes of none.

    names_test.py PROGRAM SOURCE_DIR

Every name is read from and written to. What no loom file can name is refused with a reason and nothing is written;
error messages bring no control character to a terminal.
"""
import os
import shutil
import sys

from bench import FITTED, Bench, Faults, contents

# A name, and whether XML can hold it.
NAMES = [
    (b"with space", True), ("gr\u00fcn \u2013 \u677f \U0001f50c".encode(), True), (b"'quote\"&<>", True),
    (b"-dash", True), (b"a=b,c;d", True), (b"percent%20#x?y", True), (b"$HOME `x` \\ *", True),
    (b"new\nline", False), (b"tab\tand\rreturn", False), (b"\x1b[31mred", False), (b"raw\xff\xfe", False),
]


def shown(name):
    """As an error message shows it."""
    text = name.decode("utf-8", errors="surrogateescape")
    return "".join("?" if (c < " " and c != "\n") or "\udc80" <= c <= "\udcff" else c for c in text)


def reads(bench, faults, name, board, harness, folder):
    pair = [board, harness]
    for words in (["check", *pair, *FITTED], ["check", *pair, *FITTED, "--format", "json"], ["lint", *pair],
                  ["lint", *pair, "--format", "json"], ["sheet", *pair, *FITTED, "--as", "markdown"],
                  ["find", harness, "--in", folder], ["find", harness, "--in", folder, "--format", "json"],
                  ["parts", *pair, *FITTED, "--format", "csv"], ["place", *pair]):
        done = bench.run(*words)
        faults.must(done.returncode in (0, 1) and done.stdout, f"{name}: {words[0]}: {done.stderr}")
        if "json" in words:
            faults.must(b"\xff" not in done.stdout, f"{name}: {words[0]}: JSON is not UTF-8")
    done = bench.run("check", board, os.path.join(folder, b"no " + name))
    wanted = f"plugward: error: cannot read '{shown(os.path.join(folder, b'no ' + name))}': No such file or directory\n"
    faults.same(done.stderr, wanted.encode(), f"{name}: a file that is not there")


def writes(bench, faults, name, board, harness, folder):
    before = contents(folder)
    for command, suffixes in (("draw", (b".svg", b".pdf", b".png")), ("sheet", (b".pdf", b".html", b".md", b".txt"))):
        for suffix in suffixes:
            out = os.path.join(folder, name + suffix)
            done = bench.run(command, board, harness, *FITTED, "-o", out)
            faults.same((done.returncode, done.stdout), (0, b""), f"{name}: {command} {suffix}: {done.stderr}")
            faults.must(os.path.exists(out) and done.stderr.count(b"\n") < 3, f"{name}: {command} {suffix}: {done.stderr}")
            faults.same(sorted(contents(folder)), sorted([*before, name + suffix]), f"{name}: {command} {suffix}")
            if os.path.exists(out):
                os.remove(out)


def records(bench, faults, name, board, loom, folder, nameable):
    out = os.path.join(folder, name)
    before = contents(folder)
    done = bench.run("swap", loom, "--to", board, "--record", out)
    if not nameable:
        wanted = (f"plugward: error: --record: no loom file can name '{shown(board)}', which has control characters or "
                  "is not UTF-8: rename it\n")
        faults.same((done.returncode, done.stderr.decode(), contents(folder)), (2, wanted, before), f"{name}: record")
        return
    faults.must(done.returncode == 1 and done.stdout, f"{name}: record: {done.stderr}")
    again = bench.run("check", os.path.join(out, b"loom.xml"))
    wanted = bench.run("swap", loom, "--to", board, "--record", bench.root / "plain")
    plain = bench.run("check", bench.root / "plain" / "loom.xml")
    faults.must(wanted.returncode == 1 and plain.stdout, f"{name}: record into a plain folder: {wanted.stderr}")
    faults.same((again.returncode, again.stdout.splitlines()[0]), (plain.returncode, plain.stdout.splitlines()[0]),
                f"{name}: the record, read: {again.stderr}")
    shutil.rmtree(bench.root / "plain")


def main():
    faults = Faults()
    with Bench(sys.argv[1], sys.argv[2]) as bench:
        for name, nameable in NAMES:
            folder = os.path.join(os.fsencode(bench.root), b"names", name)
            os.makedirs(folder)
            for part in ("boards", "harnesses"):
                shutil.copytree(os.fsencode(bench.place / part), os.path.join(folder, part.encode()))
            board = os.path.join(folder, b"boards", name + b".xml")
            harness = os.path.join(folder, name + b".xml")
            loom = os.path.join(folder, b"harnesses", name + b".xml")
            shutil.move(os.path.join(folder, b"boards", b"heron-m7.xml"), board)
            shutil.copy(os.path.join(folder, b"harnesses", b"kite-probe.xml"), harness)
            shutil.move(os.path.join(folder, b"harnesses", b"wren-a4.xml"), loom)
            reads(bench, faults, name, board, harness, folder)
            writes(bench, faults, name, board, harness, folder)
            records(bench, faults, name, board, loom, folder, nameable)
    faults.end(f"; {len(NAMES)} names")


if __name__ == "__main__":
    main()
