#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""axe-core finds nothing against a sheet, in every look and state that a person meets.

    access_test.py FOLDER AXE.min.js      FOLDER holds the sheets, see CMakeLists.txt
"""
import pathlib
import sys
import unittest

from webdriver import BrowserCase

FOLDER = pathlib.Path(sys.argv[1]).resolve()
AXE = pathlib.Path(sys.argv[2]).read_text(encoding="utf-8")
del sys.argv[1:3]

# All its rules for WCAG 2.0 to 2.2, levels A and AA, and its own good practice.
RUN = """
const done = arguments[0];
axe.run(document, {resultTypes: ['violations'],
                   runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']})
   .then(r => done({rules: r.passes.length, found: r.violations.map(v =>
       `${v.impact} ${v.id}: ${v.nodes.map(n => n.target + ' ' + n.html.slice(0, 90)).slice(0, 3).join(' | ')}`)}),
         e => done({rules: 0, found: [String(e)]}));
"""


class AccessTest(BrowserCase):
    def setUp(self):
        self.open("sample")

    def open(self, name):
        self.browser.open(FOLDER / f"{name}.html")
        self.browser.run(AXE)

    def tearDown(self):
        self.browser.media()
        self.browser.devtools("Emulation.clearDeviceMetricsOverride")

    def fill(self):
        page = self.browser
        page.click("#box-s1")
        page.click('#reading-r3-5 input[value="no"]')
        for blank, typed in (("r4-1", "4.7"), ("r3-1", "12k"), ("r3-2", "?")):
            page.type(f"#reading-{blank}", typed)

    def judge(self, rules=25):
        """`rules`: so many must have had something to judge."""
        result = self.browser.run_async(RUN)
        self.assertGreaterEqual(result["rules"], rules)
        self.assertEqual(result["found"], [])

    def test_light(self):
        self.browser.media(prefers_color_scheme="light")
        self.judge()
        self.fill()
        self.judge()

    def test_dark(self):
        self.browser.media(prefers_color_scheme="dark")
        self.fill()
        self.judge()

    def test_phone(self):
        self.browser.phone()
        self.fill()
        self.judge()

    def test_open_dialog_and_words_of_the_picture(self):
        self.browser.click("details summary")
        self.browser.click('input[value="mating"]')
        self.judge()
        self.browser.click("#clear")
        self.judge(rules=15)  # all behind the dialog is out of reach

    def test_sheets_of_the_shipped_files(self):
        for name in ("check", "swap"):
            with self.subTest(name):
                self.open(name)
                self.judge()

    def test_it_would_find_a_fault(self):
        self.browser.run("document.querySelector('#reading-r4-1').removeAttribute('id')")
        found = self.browser.run_async(RUN)["found"]
        self.assertEqual([entry.split(":")[0] for entry in found], ["serious label-title-only", "critical label"])


if __name__ == "__main__":
    unittest.main()
