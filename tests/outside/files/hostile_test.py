#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Files of somebody else's: none reaches another file than those that a loom names, none costs more than it is worth.

    hostile_test.py PROGRAM SOURCE_DIR

What no file may reach is a pipe that nobody writes into: a program that opens it waits for ever, and the test says so.
A file with a secret lies beside it, of which no output may tell. The limits are then passed by one, and every message is
compared whole.
"""
import os
import subprocess
import sys

from bench import FITTED, Bench, Faults, told

BOARD = ('<board id="b" title="t" width="90 mm" height="60 mm" evidence="e"{root}><evidence id="e" kind="schematic"/>'
         '<header id="J1" use="limit" family="pin-2.54" positions="2" label="{label}"/>{inside}</board>\n')
HARNESS = ('<harness id="h" title="t" evidence="e"><evidence id="e" kind="measurement"/>'
           '<dry-switch id="s" use="limit" rests="open"/><plug id="p" family="pin-2.54" positions="2"/></harness>\n')
LOOM = '<loom id="l" title="t" board="{board}" evidence="e"><evidence id="e" kind="photograph"/>{inside}</loom>\n'
SECRET = "the-secret-words"
XSI = ' xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"'


def board(root="", label="x", inside="", before=""):
    return before + BOARD.format(root=root, label=label, inside=inside)


def reaching(to):
    """Files that try to draw in what lies at `to`, each with its whole message; "": it is taken and nothing comes of it."""
    doctype = "{0}:1:1: error: a document type declaration [document-type]"
    laughs = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 30))
    return [
        ("external", board(before=f'<!DOCTYPE board [<!ENTITY x SYSTEM "{to}">]>\n', label="&x;"), doctype),
        ("public", board(before=f'<!DOCTYPE board PUBLIC "-//x//y" "{to}">\n'), doctype),
        ("outer-types", board(before=f'<!DOCTYPE board SYSTEM "{to}">\n'), doctype),
        ("parameter", board(before=f'<!DOCTYPE board [<!ENTITY % x SYSTEM "{to}"> %x;]>\n'), doctype),
        ("in-elements", board(before=f'<!DOCTYPE board [<!ENTITY x SYSTEM "{to}">]>\n', inside="&x;"), doctype),
        ("unparsed", board(before=f'<!DOCTYPE board [<!NOTATION n SYSTEM "{to}"><!ENTITY x SYSTEM "{to}" NDATA n>]>\n'),
         doctype),
        ("laughs", board(before=f'<!DOCTYPE board [<!ENTITY l0 "ha">{laughs}]>\n', label="&l29;"), doctype),
        ("late", board() + f'<!DOCTYPE board [<!ENTITY x SYSTEM "{to}">]>\n',
         "{0}:2:1: error: a document type declaration [document-type]"),
        ("undeclared", board(label="&x;"), "{0}:1:169: error: unknown reference '&x;' [not-well-formed]"),
        ("include", board(inside=f'<xi:include href="{to}" parse="text"/>'),
         "{0}:1:174: error: unknown element 'xi:include' in 'board' [unknown-element]"),
        ("include-root", f'<xi:include xmlns:xi="http://www.w3.org/2001/XInclude" href="{to}"/>\n',
         "{0}:1:2: error: the root element 'xi:include' is no description [wrong-root]"),
        ("schema", board(root=f'{XSI} xsi:noNamespaceSchemaLocation="{to}"'), ""),
        ("schemas", board(root=f'{XSI} xsi:schemaLocation="a {to}"'),
         "{0}:1:121: error: unknown attribute 'xsi:schemaLocation' of 'board' [unknown-attribute]"),
        ("style", board(before=f'<?xml-stylesheet type="text/xsl" href="{to}"?>\n'), ""),
        ("evidence", board(inside=f'<evidence id="f" kind="schematic" note="{to}"/>'), ""),
    ]


def reaches_nothing(bench, faults):
    folder = bench.folder("reach")
    (folder / "secret.xml").write_text(f"<{SECRET}/>", encoding="utf-8")
    os.mkfifo(folder / "pipe.xml")
    (folder / "h.xml").write_text(HARNESS, encoding="utf-8")
    for to in ("secret.xml", "pipe.xml", (folder / "pipe.xml").as_uri(), str(folder / "pipe.xml")):
        for name, text, wanted in reaching(to):
            file = folder / f"{name}.xml"
            file.write_text(text, encoding="utf-8")
            (folder / "loom.xml").write_text(LOOM.format(board=file.name, inside=""), encoding="utf-8")
            for words in (["lint", file.name], ["check", file.name, "h.xml", "--at", "p=J1"], ["check", "loom.xml"],
                          ["lint", file.name, "--families", file.name], ["lint", file.name, "--format", "json"]):
                about = f"{name} to {to}: {words}"
                try:
                    done = bench.run(*words, cwd=folder, timeout=20)
                except subprocess.TimeoutExpired:
                    faults.must(False, f"{about}: it waits for the pipe")
                    continue
                faults.must(SECRET.encode() not in done.stdout + done.stderr, f"{about}: tells the secret")
                faults.must(done.returncode in (0, 1, 2), f"{about}: {done}")
                if words == ["lint", file.name]:
                    faults.same(told(done).partition("\n")[0], wanted.format(file.name), about)
    # What a loom names is opened; but only plain files, and nothing when it is no description.
    (folder / "loom.xml").write_text(LOOM.format(board="pipe.xml", inside='<harness id="h" file="h.xml"/>'),
                                     encoding="utf-8")
    faults.same(told(bench.run("check", "loom.xml", cwd=folder, timeout=20)).partition("\n")[0],
                "loom.xml:1:31: error: cannot read 'pipe.xml': it is no plain file [unreadable-file]", "a loom's pipe")


def limits(bench, faults):
    """One beyond every limit, and the message whole."""
    folder = bench.folder("limits")
    many = "".join(f'<header id="H{n}" use="limit" family="pin-2.54" positions="2"/>' for n in range(19998))
    one = '<harness id="h" file="h.xml"/>'
    pad = "<!--" + "x" * (7 << 20) + "-->"
    for number in range(6):
        (folder / f"p{number}.xml").write_text(HARNESS + pad, encoding="utf-8")
    (folder / "h.xml").write_text(HARNESS, encoding="utf-8")
    (folder / "b.xml").write_text(board(), encoding="utf-8")
    size = 8 << 20
    left = (32 << 20) - len(board()) - 4 * len(HARNESS + pad)
    rows = [
        ("size", board(inside="<!--" + "x" * (size - len(board()) - 6) + "-->"),
         f"size.xml:1:1: error: the file has {size + 1} bytes; at most {size} are read [too-large]\n"
         "1 error, 0 warnings\n"),
        ("vast", " " * (65 << 20), "plugward: error: cannot read 'vast.xml': larger than 64 MiB\n"),
        ("depth", "<board>" * 33 + "</board>" * 33,
         "depth.xml:1:226: error: elements stand more than 32 deep inside one another [too-large]\n1 error, 0 warnings\n"),
        ("deep", "<a>" * 900000 + "</a>" * 900000,
         "deep.xml:1:98: error: elements stand more than 32 deep inside one another [too-large]\n"
         "1 error, 0 warnings\n"),
        ("entries", board(inside=many).replace("/><header", "/>\n<header"),
         "entries.xml:20000:2: error: the file has more than 20000 elements [too-large]\n"
         '<header id="H19997" use="limit" family="pin-2.54" positions="2"/></board>\n'
         " ^~~~~~\n1 error, 0 warnings\n"),
        ("positions", '<board id="b" title="t" width="90 mm" height="60 mm"><evidence id="e" kind="schematic"/>\n'
         '<header id="J1" use="limit" family="pin-2.54" positions="201" evidence="e"/></board>',
         "positions.xml:2:58: error: positions: 201 is not from 1 to 200 [bad-number]\n"
         '<header id="J1" use="limit" family="pin-2.54" positions="201" evidence="e"/></board>\n'
         + " " * 57 + "^~~\n1 error, 0 warnings\n"),
        ("pins", '<board id="b" title="t" width="90 mm" height="60 mm" evidence="e"><evidence id="e" kind="schematic"/>\n'
         '<header id="J1" use="limit" family="pin-2.54" positions="2">\n<pin n="3" function="ground"/></header></board>',
         "pins.xml:3:9: error: header 'J1' has positions 1 to 2, not 3 [position-range]\n"
         '<pin n="3" function="ground"/></header></board>\n        ^\n'
         "pins.xml:2:58: note: the number of positions is stated here\n"
         '<header id="J1" use="limit" family="pin-2.54" positions="2">\n' + " " * 57 + "^\nhelp: correct the position, or write positions=\"3\" at the header\n1 error, 0 warnings\n"),
        ("leads", HARNESS.replace("<plug", "\n<plug").replace('"2"/>', '"2">\n<lead cavity="3" colour="BN" to="A"/></plug>'),
         "leads.xml:3:15: error: plug 'p' has cavities 1 to 2, not 3 [position-range]\n"
         '<lead cavity="3" colour="BN" to="A"/></plug></harness>\n              ^\n'
         "leads.xml:2:43: note: the number of positions is stated here\n"
         '<plug id="p" family="pin-2.54" positions="2">\n' + " " * 42 + "^\nhelp: correct the cavity, or write positions=\"3\" at the plug\n1 error, 0 warnings\n"),
        ("cavities", HARNESS.replace("<plug", "\n<plug").replace('positions="2"', 'positions="201"'),
         "cavities.xml:2:43: error: positions: 201 is not from 1 to 200 [bad-number]\n"
         '<plug id="p" family="pin-2.54" positions="201"/></harness>\n' + " " * 42 + "^~~\n1 error, 0 warnings\n"),
        ("harnesses", LOOM.format(board="b.xml", inside="".join(f'\n<harness id="h{n}" file="h.xml"/>' for n in range(201))),
         "harnesses.xml:202:2: error: more than 200 harnesses in one loom [too-large]\n"
         '<harness id="h200" file="h.xml"/></loom>\n ^~~~~~~\n1 error, 0 warnings\n'),
        ("together", LOOM.format(board="b.xml", inside="".join(f'\n<harness id="h{n}" file="p{n}.xml"/>' for n in range(5))),
         "together.xml:6:24: error: cannot read 'p4.xml': larger than 3 MiB [unreadable-file]\n"
         '<harness id="h4" file="p4.xml"/></loom>\n' + " " * 23 + "^~~~~~\n"
         "help: files are looked for from the folder of the loom\n"
         f"help: the files that a loom names may have {32 << 20} bytes together; {left} were left for this one\n"
         "1 error, 0 warnings\n"),
        ("itself", LOOM.format(board="itself.xml", inside=one),
         "itself.xml:1:31: error: 'itself.xml' is a loom, not a board [wrong-root]\n"
         + LOOM.format(board="itself.xml", inside=one) + " " * 30 + "^~~~~~~~~~\n1 error, 0 warnings\n"),
    ]
    for name, text, wanted in rows:
        (folder / f"{name}.xml").write_text(text, encoding="utf-8")
        done = bench.run("lint", f"{name}.xml", cwd=folder, timeout=30)
        faults.same(told(done), wanted, f"limit: {name}")
        faults.same(done.returncode, 2 if wanted.startswith("plugward:") else 1, f"limit: {name}: status")
    # At the limit it is taken.
    (folder / "size.xml").write_text(board(inside="<!--" + "x" * (size - len(board()) - 7) + "-->"), encoding="utf-8")
    faults.same((folder / "size.xml").stat().st_size, size, "the file at the limit")
    faults.same(told(bench.run("lint", "size.xml", cwd=folder)), "", "a file at the limit")


def endless(bench, faults):
    """What never ends is given up."""
    faults.same(told(bench.run("lint", "/dev/zero")), "plugward: error: cannot read '/dev/zero': larger than 64 MiB\n",
                "/dev/zero")
    faults.same(told(bench.run("check", "boards/heron-m7.xml", "harnesses/kite-probe.xml", *FITTED, "--families",
                               "/dev/zero")), "plugward: error: cannot read '/dev/zero': larger than 64 MiB\n", "families")


def main():
    faults = Faults()
    with Bench(sys.argv[1], sys.argv[2]) as bench:
        reaches_nothing(bench, faults)
        limits(bench, faults)
        endless(bench, faults)
    faults.end()


if __name__ == "__main__":
    main()
