# SPDX-License-Identifier: MIT
"""Sheets as PDF files, read back by programs that others wrote: qpdf, and poppler's pdfinfo, pdftotext, pdftocairo.

    sheet_pdf_test.py path/to/sheet_trial

Distances are measured in what pdftocairo makes of the true-size page: centres of pins and cavities by the colour
of their squares, and the rule by its longest stroke. A program that is missing is a failure, not a skipped test.
"""
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

NEEDED = {"qpdf": "qpdf", "pdfinfo": "poppler-utils", "pdftotext": "poppler-utils", "pdftocairo": "poppler-utils"}
MM = 25.4 / 72
TOLERANCE = 0.1  # mm
# src/draw/style.h: pin, cavity, outline
PIN, CAVITY, OUTLINE = (0xD8, 0xB6, 0x4A), (0xFB, 0xFA, 0xF6), (0x2B, 0x2B, 0x2B)
PAGE_SIZES = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}  # mm: ISO 216; ANSI/ASME Y14.1
faults = []


def expect(what, got, wanted):
    if got != wanted:
        faults.append(f"{what}: got {got!r}, wanted {wanted!r}")


def run(*command):
    done = subprocess.run([str(c) for c in command], capture_output=True, text=True, check=False)
    expect(f"status of {' '.join(map(str, command[:2]))}", (done.returncode, done.stderr), (0, ""))
    return done.stdout


def colour(attributes, name):
    """The colour of 'fill' or 'stroke' as three bytes."""
    found = re.search(rf'{name}(?:="|:)rgb\(([\d.]+)%, ?([\d.]+)%, ?([\d.]+)%\)', attributes)
    return tuple(round(float(c) * 2.55) for c in found.groups()) if found else None


def paths(svg):
    """(attributes, points in mm) of every path; a transform is a matrix."""
    for attributes in re.findall(r"<path ([^>]*)/>", svg):
        data = re.search(r' d="([^"]*)"|^d="([^"]*)"', attributes)
        if not data:
            continue
        numbers = [float(n) for n in re.findall(r"-?\d+\.?\d*(?:e-?\d+)?", data.group(1) or data.group(2) or "")]
        points = list(zip(numbers[0::2], numbers[1::2]))
        matrix = re.search(r'transform="matrix\(([^)]*)\)"', attributes)
        if matrix:
            a, b, c, d, e, f = (float(n) for n in matrix.group(1).split(","))
            points = [(a * x + c * y + e, b * x + d * y + f) for x, y in points]
        yield attributes, [(x * MM, y * MM) for x, y in points]


def rows_of(centres):
    """Centres at one height, from left to right, in runs that belong to one part."""
    rows = {}
    for x, y in centres:
        key = next((k for k in rows if abs(k - y) < 0.05), y)
        rows.setdefault(key, []).append(x)
    return [sorted(xs) for _, xs in sorted(rows.items())]


def measure(pdf, page):
    """Distances of neighbours among pins and cavities of each part, and the lengths of the rules."""
    with tempfile.TemporaryDirectory() as folder:
        svg_path = Path(folder) / "page.svg"
        run("pdftocairo", "-svg", "-f", page, "-l", page, pdf, svg_path)
        svg = svg_path.read_text(encoding="utf-8")
    squares, rules = {PIN: [], CAVITY: []}, []
    for attributes, points in paths(svg):
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        if not xs:
            continue
        fill, stroke = colour(attributes, "fill"), colour(attributes, "stroke")
        if fill in squares:
            squares[fill].append(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
        if stroke == OUTLINE and len(points) == 2 and max(ys) - min(ys) < 1e-6 and 45 < max(xs) - min(xs) < 55:
            rules.append(max(xs) - min(xs))
    return {kind: rows_of(set(centres)) for kind, centres in squares.items()}, rules


def check_true_size(pdf):
    """The rows must be as the page's own words say: positions and pitch of each part in turn."""
    pages = int(re.search(r"Pages:\s+(\d+)", run("pdfinfo", pdf)).group(1))
    found = 0
    for page in range(1, pages + 1):
        text = run("pdftotext", "-f", page, "-l", page, "-layout", pdf, "-")
        parts = re.findall(r"(Housing|Header) of (\d+) positions( in 2 rows)?:[^\n]*\n(?:(?!pitch).*\n)*?\s*pitch ([\d.]+) mm", text)
        if "Print at 100 %" not in text:
            continue
        rows, rules = measure(pdf, page)
        expect(f"{pdf.name} page {page}: rules of the page and of its foot", len(rules), 2)
        for rule in rules:
            if abs(rule - 50) > TOLERANCE:
                faults.append(f"{pdf.name} page {page}: the rule is {rule:.3f} mm long")
        for kind, name in ((CAVITY, "Housing"), (PIN, "Header")):
            wanted = [(int(n), float(pitch)) for what, n, _, pitch in parts if what == name]
            expect(f"{pdf.name} page {page}: parts of kind {name}", len(rows[kind]), len(wanted))
            for xs, (count, pitch) in zip(rows[kind], wanted):
                expect(f"{pdf.name} page {page}: positions of a {name}", len(xs), count)
                for left, right in zip(xs, xs[1:]):
                    found += 1
                    if abs(right - left - pitch) > TOLERANCE:
                        faults.append(f"{pdf.name} page {page}: {right - left:.3f} mm instead of {pitch} mm")
    if found < 5:
        faults.append(f"{pdf.name}: only {found} distances were found")
    return found


def check_file(pdf):
    run("qpdf", "--check", pdf)
    paper, _, orientation = pdf.stem.partition("-")
    info = run("pdfinfo", pdf)
    if paper in PAGE_SIZES:
        width, height = PAGE_SIZES[paper]
        if orientation == "landscape":
            width, height = height, width
        size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", info)
        expect(f"{pdf.name}: width", round(float(size.group(1)) * MM, 1), width)
        expect(f"{pdf.name}: height", round(float(size.group(2)) * MM, 1), height)
    for field, value in (("Title", "Plugging 'Kite bed probe' on Heron M7"),
                         ("Author", "plugward"),
                         ("Subject", "Move two contacts of plug 'control'; then it may be plugged on J9.")):
        expect(f"{pdf.name}: {field}", re.search(rf"{field}:\s+(.*)", info).group(1), value)
    keywords = re.search(r"Keywords:\s+(.*)", info).group(1)
    expect(f"{pdf.name}: keywords begin with the verdict", keywords.split(", ")[0], "REPIN")
    expect(f"{pdf.name}: date", re.search(r"CreationDate:\s+D:(\d{8})", run("pdfinfo", "-rawdates", pdf)).group(1),
           "20261125")
    names = set(re.findall(r'"([^"]+)"', run("pdfinfo", "-dests", pdf)))
    expect(f"{pdf.name}: places", {"order-of-work", "pictures", "board", "plug-1", "true-size", "true-size-1"} - names, set())
    pages = int(re.search(r"Pages:\s+(\d+)", info).group(1))
    text = run("pdftotext", "-layout", pdf, "-")
    for page in range(1, pages + 1):
        expect(f"{pdf.name}: page number {page}", text.count(f"page {page} of {pages}"), 1)
    expect(f"{pdf.name}: limits on every page", text.count("plugward cannot see a bad crimp"), pages)
    # The step leads to its picture, on paper too.
    picture = int(re.search(r'(\d+) \[.*\] "plug-1"', run("pdfinfo", "-dests", pdf)).group(1))
    expect(f"{pdf.name}: the step names the page of its picture", f"→ page {picture}" in text, True)
    body = subprocess.run(["qpdf", "--qdf", "--object-streams=disable", pdf, "-"], capture_output=True, check=True).stdout
    expect(f"{pdf.name}: links to the plug's picture", body.count(b"/Dest (plug-1)") >= 3, True)  # outline, step, cell
    expect(f"{pdf.name}: outline", b"/Type /Outlines" in body or b"/Outlines" in body, True)
    expect(f"{pdf.name}: page labels", b"/PageLabels" in body, True)


def main():
    missing = {package for program, package in NEEDED.items() if shutil.which(program) is None}
    if missing:
        print("needs the packages " + ", ".join(sorted(missing)))
        return 1
    with tempfile.TemporaryDirectory() as folder:
        run(sys.argv[1], "write", folder)
        files = sorted(Path(folder).glob("*.pdf"))
        expect("files", len(files), 5)
        distances = 0
        for pdf in files:
            check_file(pdf)
            if pdf.stem != "foreign":
                distances += check_true_size(pdf)
        run(sys.argv[1], "demo", folder)
        for name in ("swap-a4", "swap-letter-landscape", "check-a4"):
            pdf = Path(folder) / f"{name}.pdf"
            run("qpdf", "--check", pdf)
            distances += check_true_size(pdf)
        foreign = run("pdftotext", Path(folder) / "foreign.pdf", "-")
        for words in ("苍鹭运动控制板", "Датчик стола «Коршун»"):
            expect(f"text '{words}' is found", words in foreign, True)
    for fault in faults:
        print(fault)
    print(f"{len(files)} files, {distances} distances, {len(faults)} faults")
    return 1 if faults else 0


sys.exit(main())
