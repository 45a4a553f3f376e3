# SPDX-License-Identifier: MIT
"""What xmllint and the schemas refuse, the reader refuses too; what is shipped, both take.

usage: schema_test.py READ_MANY SOURCE_DIR [COUNT [SEED]]

xmllint is the referee. Valid files are mutated COUNT times with a fixed seed; every mutant goes to both. The reader may
refuse more than the schemas can say (it knows functions, families, sums); never less. A mutant that the reader takes
and xmllint does not is printed whole.
"""

import glob
import os
import random
import re
import subprocess
import sys
import tempfile

SCHEMAS = {"board": "boards/board.xsd", "loom": "harnesses/loom.xsd", "harness": "harnesses/harness.xsd", "families": "src/catalogue/families.xsd"}

WORDS = ["", " ", "5", "5 V", "-5 V", "5V", "5  V", " 5 V", "5 V ", "5..3 V", "3..5 V", "1e3 V", "+5 V", ".5 V", "5. V",
         "0 V", "5 kV", "5 v", "5 mm", "-1 mm", "0x10", "1", "01", "0", "-1", "+1", "200", "201", "1000", "1 ", "yes",
         "Yes", "no", "true", "on", "off", "up", "A", "B", "a", "BN", "BNBN", "WHGN", "?", "??", "bn", "GNYE", "26 AWG",
         "26AWG", "AWG 26", "4/0 AWG", "00 AWG", "026 AWG", "45 AWG", "0.14 mm2", "0.7", "1.5", ".7", "0.0", "0.70000001", "2026-02-30",
         "2026-02-28", "2026-2-8", "0000-01-01", "2024-02-29", "2023-02-29", "2026-02-28Z", "\u00e4", "5 \u03a9", "a b", "a\tb",
         "a&#10;b", "&amp;", "&lt;", "&nbsp;", "&#0;", "&#x1F;", "&#xD800;", "&#x110000;", "&", "&#;", "&;", "<", ">", "]]>",
         "x" * 40, "x" * 41, "-x", ".x", "_x", "x:y", "5V", "24V", "5V 24V", " 5V 24V", "5V  24V ", "probe", "xh-2.50",
         "pin-2.54", "2..16", "02..16", "0..3", "16..2", "ground", "supply", "open", "closed", "destroyed", "sinking",
         "a/b", "a/", "/b", "a/b/c", "a /b", "2 1", "2 1 -", "- -", " 1  2 ", "2,1", "1 1", "201 1", "01 2", "J2", "JP2"]

INSERTS = ["<!-- x -->", "<!-- a -- b -->", "<!--->", "<!-- x --->", "<?pi x?>", "<?xml version='1.0'?>", "<?XML x?>", "<?a:b x?>", "<?\u00d7 x?>",
           "<![CDATA[]]>", "<![CDATA[x]]>", "text", "&amp;", "&foo;", "]]>", "<x/>", "<pin/>", "</x>", "<", ">", "&",
           "\"", "'", "=", "\0", "\x01", "\x7f", "\u0085", "\ufffe", "\ufeff", "\xa0", "<!DOCTYPE board>", "<a:b/>", "<b xmlns='u'/>", " ", "\n", "\r", "\t",
           "<board/>", "<header></header>", "<x y='1' y='2'/>", "<x y=1/>", "<x y/>", "< x/>", "<x / >", "<x y='1'z='2'/>"]

# One fault of XML itself each; the board around it is fine.
BOARD = ('<board id="b" title="B" width="9 mm" height="9 mm" evidence="e"><evidence id="e" kind="schematic"/>'
         '<header id="J" use="spare" family="pin-2.54" positions="2"/></board>')
NASTY = [
    "", " ", "x", "<", "<board", "<board/", "<board", BOARD[:-1], BOARD + "x", BOARD + BOARD, BOARD + "<x/>", BOARD + "</board>",
    BOARD + "&amp;", BOARD + "<![CDATA[x]]>", "x" + BOARD, " <?xml version=\"1.0\"?>" + BOARD, "<!-- -->" + "<?xml version=\"1.0\"?>" + BOARD,
    "<?xml?>" + BOARD, "<?xml ?>" + BOARD, "<?xml version='1.0'>" + BOARD, "<?xml version=1.0?>" + BOARD, "<?xml version=''?>" + BOARD,
    "<?xml version='2.0'?>" + BOARD, "<?xml version='1.0' encoding=''?>" + BOARD, "<?xml version='1.0' encoding='latin-1'?>" + BOARD,
    "<?xml encoding='UTF-8'?>" + BOARD, "<?xml version='1.0'encoding='UTF-8'?>" + BOARD, "<?xml version='1.0' standalone='maybe'?>" + BOARD,
    "<?xml version='1.0' standalone='yes' encoding='UTF-8'?>" + BOARD, "<?xml version='1.0' x='1'?>" + BOARD, "<?XML version='1.0'?>" + BOARD,
    "<!DOCTYPE board [<!ENTITY x 'y'>]>" + BOARD.replace('"B"', '"&x;"'), "<!doctype board>" + BOARD,
    BOARD.replace('"B"', '"B" title="B"'), BOARD.replace('"B"', '"<"'), BOARD.replace('"B"', '"&"'), BOARD.replace('"B"', '"&nbsp;"'),
    BOARD.replace('"B"', '"&#1;"'), BOARD.replace('"B"', '"&#xFFFF;"'), BOARD.replace('"B"', '"&#xd800;"'), BOARD.replace('"B"', '"&#X41;"'),
    BOARD.replace('"B"', '"&#99999999999;"'), BOARD.replace('"B"', '"&#-1;"'), BOARD.replace('"B"', '"&#+65;"'), BOARD.replace('"B"', '"&# 65;"'),
    BOARD.replace('"B"', '"&amp"'), BOARD.replace('"B"', '"& amp;"'), BOARD.replace('"B"', '"B"a="b"'), BOARD.replace('"B"', 'B'), BOARD.replace('="B"', ''),
    BOARD.replace('"B"', '"B\''), BOARD.replace('"B"', '"B" xml:lang="en"'), BOARD.replace('"B"', '"B" xmlns="u"'), BOARD.replace('"B"', '"B" xmlns:x="u"').replace("<header", "<x:header"),
    BOARD.replace('"B"', '"B" xsi:noNamespaceSchemaLocation="board.xsd"'), BOARD.replace('"B"', '"B" a:b="1"'), BOARD.replace('"B"', '"B" :b="1"'),
    BOARD.replace("<board", "< board"), BOARD.replace("</board", "</ board"), BOARD.replace("</board>", "</board x='1'>"), BOARD.replace("</board>", "</Board>"), BOARD.replace("</board>", "</boar>"),
    BOARD.replace("</board>", ""), BOARD.replace("/></board>", "></board>"), BOARD.replace("<header", "<header<"), BOARD.replace("<header", "<1header"),
    BOARD.replace("<header", "<!-- -- --><header"), BOARD.replace("<header", "<!-- --->" + "<header"), BOARD.replace("<header", "<!-- <header"), BOARD.replace("<header", "<!><header"),
    BOARD.replace("<header", "<?x<header"), BOARD.replace("<header", "<? x?><header"), BOARD.replace("<header", "<?xml version='1.0'?><header"),
    BOARD.replace("<header", "<?\u00d7?><header"), BOARD.replace("<header", "<?1?><header"), BOARD.replace("<header", "\x0b<header"), BOARD.replace("<header", "]]><header"),
    BOARD.replace("<header", "\x00<header"), BOARD.replace("<header", "\ufffe<header"), BOARD.replace("<header", "&#32;&#1;<header"), BOARD.replace("<header", "<![CDATA[x<header"),
]
NASTY_BYTES = [b"\xff" + BOARD.encode(), BOARD.encode("utf-16"), BOARD.encode("utf-16-le"), BOARD.replace('"B"', '"\u00e4"').encode("latin-1"),
               BOARD.replace('"B"', '"@"').encode().replace(b"@", b"\xc0\x80"), BOARD.replace('"B"', '"@"').encode().replace(b"@", b"\xed\xa0\x80"),
               BOARD.encode() + b"\0", b"\0" + BOARD.encode()]

TAG = re.compile(r"<[a-z][^<>]*>")
ATTRIBUTE = re.compile(r'\s([\w:-]+)="([^"]*)"')


def root_of(text):
    return next(root for root in SCHEMAS if re.search(f"<{root}[\\s>]", text))  # a loom holds elements 'harness'


def shortened(text):
    """The begin of a long file, whole: a mutation then meets something that matters."""
    root = root_of(text)
    item = {"board": "</header>", "harness": "</plug>", "families": "</family>", "loom": "/>"}[root]
    if len(text) < 6000:
        return text
    return text[:text.index(item, 4500) + len(item)] + f"\n</{root}>\n"


def mutate(text, names, rng):
    """One to three small changes; bytes come back, for not every mutant is UTF-8."""
    for _ in range(rng.choice([1, 1, 1, 2, 3])):
        kind = rng.randrange(14)
        attributes = list(ATTRIBUTE.finditer(text))
        tags = list(TAG.finditer(text))
        if not attributes or not tags:
            break
        a, t = rng.choice(attributes), rng.choice(tags)
        if kind == 0:  # delete an attribute
            text = text[:a.start()] + text[a.end():]
        elif kind == 1:  # double an attribute
            text = text[:a.end()] + a.group(0) + text[a.end():]
        elif kind == 2:  # rename an attribute
            text = text[:a.start(1)] + rng.choice(names + ["x", "xml:lang", "xmlns", "a:b", "ID"]) + text[a.end(1):]
        elif kind in (3, 4, 5):  # another value
            text = text[:a.start(2)] + rng.choice(WORDS + [b.group(2) for b in attributes]) + text[a.end(2):]
        elif kind == 6:  # change one character of a value
            at = rng.randrange(a.start(2), a.end(2) + 1)
            text = text[:at] + rng.choice(list(" .-+0159VAmk_xZ\u00e4\"<&'")) + text[at + rng.randrange(2):]
        elif kind == 7:  # delete a tag
            text = text[:t.start()] + text[t.end():]
        elif kind == 8:  # double a tag
            text = text[:t.end()] + t.group(0) + text[t.end():]
        elif kind == 9:  # rename an element
            name = re.match(r"<([\w-]+)", t.group(0)).group(1)
            other = re.match(r"<([\w-]+)", rng.choice(tags).group(0)).group(1)
            text = text[:t.start()] + t.group(0).replace(name, rng.choice([other, "x", "x:y", name.upper()]), 1) + text[t.end():]
        elif kind == 10:  # swap two tags
            o = rng.choice(tags)
            first, second = sorted([t, o], key=lambda m: m.start())
            if first.end() <= second.start():
                text = (text[:first.start()] + second.group(0) + text[first.end():second.start()] + first.group(0) + text[second.end():])
        elif kind == 11:  # put something in
            at = rng.choice([t.start(), t.end(), rng.randrange(len(text))])
            text = text[:at] + rng.choice(INSERTS) + text[at:]
        elif kind == 12:  # cut
            at = rng.randrange(len(text))
            text = text[:at] if rng.randrange(2) else text[:at] + text[at + rng.randrange(1, 9):]
        elif kind == 13:  # random bytes
            data = bytearray(text.encode("utf-8", "surrogatepass"))
            data[rng.randrange(len(data))] = rng.randrange(256)
            try:
                text = data.decode("utf-8")
            except UnicodeDecodeError:
                return bytes(data)
    return text.encode("utf-8", "surrogatepass")


def referee(schema, paths):
    """The paths that xmllint takes."""
    taken = set()
    for begin in range(0, len(paths), 400):
        batch = paths[begin:begin + 400]
        run = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", schema] + batch, capture_output=True, check=False)
        lines = run.stderr.decode("utf-8", "replace").splitlines()
        if any("Schemas parser error" in line for line in lines):
            sys.exit("the schema itself is broken:\n" + "\n".join(lines[:20]))
        taken.update(line[:-len(" validates")] for line in lines if line.endswith(" validates"))
    return taken


def reader(program, paths):
    """The paths that the reader takes."""
    run = subprocess.run([program], input="\n".join(paths) + "\n", capture_output=True, check=False, text=True)
    if run.returncode != 0:
        sys.exit(f"the reader failed with {run.returncode}: {run.stdout[-300:]} {run.stderr[-2000:]}")
    lines = run.stdout.splitlines()
    if len(lines) != len(paths):
        sys.exit(f"the reader judged {len(lines)} of {len(paths)} files")
    return {line[len("taken "):] for line in lines if line.startswith("taken ")}


def main():
    program, source = sys.argv[1], sys.argv[2]
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 4000
    seed = int(sys.argv[4]) if len(sys.argv) > 4 else 20260302
    rng = random.Random(seed)
    schemas = {root: os.path.join(source, path) for root, path in SCHEMAS.items()}
    shipped = {
        "board": sorted(glob.glob(f"{source}/boards/*.xml")),
        "loom": [],
        "harness": [],
        "families": [f"{source}/src/catalogue/families.xml"],
    }
    for path in sorted(glob.glob(f"{source}/harnesses/**/*.xml", recursive=True)):
        shipped[root_of(open(path, encoding="utf-8").read())].append(path)
    extra = sorted(glob.glob(f"{source}/tests/unit/reader/whole/*.xml"))
    failures = 0
    every = [path for paths in shipped.values() for path in paths] + extra
    taken = reader(program, every)
    for path in every:
        if path not in taken:
            print(f"FAIL: the reader refuses the shipped {path}")
            failures += 1
    bases = {root: list(paths) for root, paths in shipped.items()}
    for path in extra:
        text = open(path, encoding="utf-8").read()
        bases[root_of(text)].append(path)
    for root, paths in bases.items():
        for path in set(paths) - referee(schemas[root], paths):
            print(f"FAIL: xmllint refuses the shipped {path}")
            failures += 1

    both = only_reader = 0
    with tempfile.TemporaryDirectory() as folder:
        nasty = []
        for i, data in enumerate([text.encode("utf-8", "surrogatepass") for text in NASTY] + NASTY_BYTES):
            path = f"{folder}/nasty-{i:03}.xml"
            open(path, "wb").write(data)
            nasty.append(path)
        # The referee first: a case that xmllint takes (a UTF-16 file, say) proves nothing about it.
        ours = reader(program, nasty)
        for path in nasty:
            if path in ours:
                print(f"FAIL: the reader takes {open(path, 'rb').read()!r}")
                failures += 1
        plain = f"{folder}/plain.xml"
        open(plain, "w", encoding="utf-8").write(BOARD)
        if not (reader(program, [plain]) and referee(schemas["board"], [plain])):
            print("FAIL: the board around the nasty cases is not fine itself")
            failures += 1

        for number, (root, paths) in enumerate(bases.items()):
            texts = [open(path, encoding="utf-8").read() for path in paths]
            texts = [shortened(text) for text in texts]
            names = sorted({m.group(1) for text in texts for m in ATTRIBUTE.finditer(text)})
            made = []
            for i in range(count // len(bases)):
                path = f"{folder}/{root}-{i:05}.xml"
                open(path, "wb").write(mutate(rng.choice(texts), names, rng))
                made.append(path)
            theirs, ours = referee(schemas[root], made), reader(program, made)
            if root == "families" and not theirs:
                print("FAIL: no mutant of the families is valid; the mutation is too rough")
                failures += 1
            for path in made:
                if path in ours and path not in theirs:
                    failures += 1
                    why = subprocess.run(["xmllint", "--noout", "--schema", schemas[root], path], capture_output=True, check=False)
                    print(f"FAIL: seed {seed}: the reader takes what xmllint refuses:\n{why.stderr.decode('utf-8', 'replace')}")
                    sys.stdout.write(open(path, "rb").read().decode("utf-8", "replace") + "\n")
                both += path not in ours and path not in theirs
                only_reader += path not in ours and path in theirs
    print(f"{count} mutants (seed {seed}), {len(nasty)} nasty files: {both} refused by both, {only_reader} by the reader alone, {failures} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
