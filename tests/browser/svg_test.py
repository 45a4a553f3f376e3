#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Pictures look the same in librsvg and in Chromium, on their own and inside a sheet, and stay small.

    svg_test.py FOLDER OUT      FOLDER: sheets and pictures, see CMakeLists.txt; OUT: the shipped samples
"""
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

from png import read_grey, share
from webdriver import ELEMENT, BrowserCase

FOLDER, OUT = (pathlib.Path(argument).resolve() for argument in sys.argv[1:3])
del sys.argv[1:3]
WIDTH = 1200
MOST_BYTES = 150_000
# Share of pixels. Measured on the samples: 0.000004; two faces of one plug differ by 0.007.
THRESHOLD = 0.0001


def by_librsvg(path):
    return read_grey(subprocess.run(["rsvg-convert", "--width", str(WIDTH), "--keep-aspect-ratio", str(path)],
                                    check=True, capture_output=True).stdout)


def pictures_of(name, before=""):
    """The pictures of a sheet as files of their own: each gets those outlines back that it shares with others.
    `before`: a pattern of what stands before those that are wanted."""
    text = (FOLDER / f"{name}.html").read_text(encoding="utf-8")
    shared = re.search('<svg class="outlines".*?</svg>', text, re.S).group(0)
    pictures = re.findall(before + "(<svg.*?</svg>)", text.replace(shared, ""), re.S)
    outlines = re.findall(r'<path id="([^"]+)".*?/>', shared)
    by_id = dict(zip(outlines, re.findall("<path.*?/>", shared)))

    def alone(picture):
        used = sorted(set(re.findall(r'href="#([^"]+)"', picture)))
        return picture.replace("<defs>", "<defs>" + "\n".join(by_id[each] for each in used), 1)

    return [alone(picture).encode() for picture in pictures]


class SvgTest(BrowserCase):
    def by_chromium(self, element, height):
        """Alone in the corner of the window, at the size that librsvg drew."""
        page = self.browser
        page.phone(width=WIDTH, height=height)
        page.run("""
          const svg = arguments[0];
          svg.style.cssText = `position: fixed; left: 0; top: 0; z-index: 99; display: block; max-width: none;
                               max-height: none; width: ${arguments[1]}px; height: auto;
                               box-sizing: content-box; padding-bottom: 2px; background: white`;
          for (let box = svg.parentElement; box; box = box.parentElement) box.hidden = false;""",
                 {ELEMENT: element}, WIDTH)
        return read_grey(page.screenshot())

    def same(self, name, mine, theirs):
        differing = share(mine, theirs)
        print(f"{name}: {mine.width} x {mine.height}, {100 * differing:.4f} % of the pixels differ")
        self.assertLessEqual(differing, THRESHOLD, name)

    def test_files(self):
        paths = sorted([*FOLDER.glob("*.svg"), *OUT.glob("*.svg")])
        self.assertGreaterEqual(len(paths), 3)
        for path in paths:
            with self.subTest(path.name):
                drawn = by_librsvg(path)
                self.browser.open(path)
                self.same(path.name, drawn, self.by_chromium(self.browser.find("svg"), drawn.height))

    def test_pictures_of_sheets(self):
        for name, numbers in (("sample", (0, 1)), ("check", (1, 2)), ("swap", (2, 3))):
            pictures = pictures_of(name)
            for number in numbers:
                with self.subTest(name, number=number):
                    with tempfile.NamedTemporaryFile(suffix=".svg") as alone:
                        alone.write(pictures[number])
                        alone.flush()
                        drawn = by_librsvg(alone.name)
                    self.browser.open(FOLDER / f"{name}.html")
                    elements = self.browser.do("elements", {"using": "css selector", "value": "figure svg"})
                    shot = self.by_chromium(elements[number][ELEMENT], drawn.height)
                    self.same(f"{name}.html, picture {number + 1}", drawn, shot)

    def test_another_picture_would_be_noticed(self):
        wire, mating = (by_librsvg(FOLDER / f"plug-{face}.svg") for face in ("wire", "mating"))
        self.assertGreater(share(wire, mating), 10 * THRESHOLD)

    def test_a_plug_is_small(self):
        sizes = {path.name: path.stat().st_size for path in [*FOLDER.glob("*.svg"), *OUT.glob("*.svg")]}
        for name in ("check", "swap"):
            for number, picture in enumerate(pictures_of(name, before="<div data-face=[^>]*>")):
                sizes[f"{name}.html, face {number + 1}"] = len(picture)
        self.assertGreater(len(sizes), 40)
        print(f"{len(sizes)} pictures of plugs, the largest {max(sizes.values())} bytes")
        self.assertEqual({name: size for name, size in sizes.items() if size >= MOST_BYTES}, {})


if __name__ == "__main__":
    unittest.main()
