#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The demo's sheets in all formats: their catalogue lacks nothing (missing), and no word stands beside it (marked).

    sheet_words_test.py SHEET_WORDS SOURCE_DIR missing|marked
"""
import html
import pathlib
import re
import subprocess
import sys

BOARD = "boards/heron-m7.xml"
SHEETS = [
    [BOARD, "harnesses/kite-probe.xml", "--at", "control=J9", "--at", "trigger=J10", "--jumper", "JP2=5V"],
    [BOARD, "harnesses/kite-probe.xml", "--at", "control=J9", "--at", "trigger=J10"],
    ["boards/heron-a4.xml", "harnesses/kite-probe.xml"],
    [BOARD, "harnesses/firefly-led-bar.xml", "--at", "light=J20"],
    [BOARD, "harnesses/limit-switch.xml", "--at", "limit=J5"],
    [BOARD, "harnesses/x-motor.xml", "--at", "motor=J4"],
    [BOARD, "harnesses/fan-12v.xml", "--at", "fan=J13", "--jumper", "JP3=24V"],
    [BOARD, "tests/cases/cure-sensor/harness.xml", "--at", "sensor=J21"],
    [BOARD, "harnesses/mystery-lead.xml", "--place"],
    [BOARD, "harnesses/kite-probe.xml", "--place", "--jumper", "JP2=5V"],
    ["harnesses/wren-a4.xml"],
    ["harnesses/wren-a4.xml", "--to", BOARD],
]
OPEN, CLOSE, CUT = "\u27e6", "\u27e7", "\0"
# Names, not words: of the program, of units and of markup.
NAMES = {"plugward", "ohm", "kohm", "mohm", "min", "inf", "iec", "usb", "record", "refit", "swap",
         "mate", "repin", "adapt", "measure", "apart"}


def run(program, root, words):
    done = subprocess.run([program] + words, cwd=root, capture_output=True, text=True)
    return done.returncode, done.stdout, done.stderr


def words_of_files(root, sheet):
    """What the user's own files say, and the command line."""
    files = [root / word for word in sheet if word.endswith(".xml")]
    if any("wren" in word for word in sheet):
        files += sorted((root / "harnesses").glob("*.xml")) + sorted((root / "boards").glob("*.xml"))
    text = " ".join(file.read_text(encoding="utf-8") for file in files) + " " + " ".join(sheet)
    return set(re.findall(r"[a-z]{3,}", text.lower()))


def unmarked(text):
    depth, out = 0, []
    for char in text:
        if char == OPEN:
            depth += 1
        elif char == CLOSE:
            depth = max(0, depth - 1)
            out.append(" ")
        elif char == CUT:
            depth = 0
        elif depth == 0:
            out.append(char)
    return "".join(out)


def plain(text, kind):
    if kind != "html":
        return text
    text = re.sub(r"<(script|style)>.*?</\1>", " ", text, flags=re.S)
    # Attributes that a person hears or reads.
    heard = " ".join(re.findall(r"(?:aria-label|data-too-low|data-too-high|data-expect|data-otherwise)=\"([^\"]*)\"",
                                text))
    # A text that a picture has no room for loses its end, and the mark with it.
    text = re.sub(r"</(?:p|li|td|th|h2|figcaption|summary|svg|label|dd)>", CUT, text)
    return html.unescape(re.sub(r"<[^>]*>", " ", text) + CUT + heard)


def forgotten(program, root, sheet, kind):
    code, out, err = run(program, root, ["marked", "sheet"] + sheet + ["--as", kind])
    if code != 0:
        return [f"status {code}: {out}{err}"]
    if OPEN not in out:
        return ["not one marked text"]
    known = words_of_files(root, sheet) | NAMES
    text = unmarked(plain(out, kind))
    found = {}
    text = re.sub(r"\\?\[[a-z-]+\\?\]", " ", text)  # [back-feed]: what 'explain' takes
    for line in text.split("\n"):
        for word in re.findall(r"(?<![A-Za-z0-9])[A-Za-z]{3,}(?![A-Za-z0-9])", line):
            if word.lower() not in known:
                found.setdefault(word, line.strip())
    return [f"{word}: {line}" for word, line in found.items()]


def main():
    program, root, what = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
    found = []
    for sheet in SHEETS:
        if what == "missing":
            for po in sorted((root / "src/sheet/languages").glob("*.po")):
                for kind in ["text", "markdown", "html", "pdf"]:
                    code, out, err = run(program, root, ["missing", str(po), "sheet"] + sheet +
                                         ["--as", kind])
                    if code != 0 or err:
                        found.append(f"{po.name}, {' '.join(sheet)}, {kind}:\n{out}{err}")
        else:
            for kind in ["text", "markdown", "html"]:
                found += [f"{' '.join(sheet)}, {kind}: {fault}" for fault in forgotten(program, root, sheet, kind)]
    print("\n".join(found))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
