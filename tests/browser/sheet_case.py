# SPDX-License-Identifier: MIT
"""What tests of a sheet in a browser have in common: the first argument of the program is the folder of the sheets."""
import pathlib
import sys

from webdriver import BrowserCase

FOLDER = pathlib.Path(sys.argv.pop(1)).resolve()
SAMPLE = FOLDER / "sample.html"
SHEETS = [FOLDER / f"{name}.html" for name in ("sample", "swap", "check")]


class SheetCase(BrowserCase):
    def setUp(self):
        """Every test begins on a sheet that was never opened before."""
        self.browser.open(SAMPLE)
        self.browser.run("localStorage.clear()")
        self.browser.reload()

    def status(self, blank):
        return self.browser.text(f"#reading-{blank}-status")

    def retype(self, blank, typed):
        self.browser.clear(f"#reading-{blank}")
        self.browser.type(f"#reading-{blank}", typed)

    def faces(self):
        return [self.browser.seen(f'[data-face="{face}"]') for face in ("wire", "mating")]

    def paper(self):
        return self.browser.style("body", "background-color")
