#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What an HTML sheet does under real clicks and keys.

    sheet_test.py FOLDER      FOLDER holds the sheets, see CMakeLists.txt
"""
import json
import subprocess
import tempfile
import unittest

from sheet_case import FOLDER, SAMPLE, SHEETS, SheetCase
from webdriver import ENTER, ESCAPE, RIGHT, SPACE, TAB, Browser

WHITE, BLACK = "rgba(255, 255, 255, 1)", "rgba(0, 0, 0, 1)"


class SheetTest(SheetCase):
    # ---- Boxes

    def test_ticks_count_and_persist(self):
        page = self.browser
        self.assertEqual(page.text("#progress-words"), "0 of 4 steps done")
        page.click("#box-s1")
        page.click('label[for="box-s3"]')
        page.click("#box-s2-1")  # a part of a step is no step
        page.click("#box-2-1-2")
        self.assertEqual(page.text("#progress-words"), "2 of 4 steps done")
        self.assertEqual(page.run("return document.getElementById('progress').value"), 2)
        page.reload()
        ticked = page.run("return [...document.querySelectorAll('input:checked[type=checkbox]')].map(b => b.id)")
        self.assertEqual(ticked, ["box-2-1-2", "box-s1", "box-s2-1", "box-s3"])
        self.assertEqual(page.text("#progress-words"), "2 of 4 steps done")
        page.click("#box-s1")
        page.reload()
        self.assertFalse(page.checked("#box-s1"))
        self.assertTrue(page.checked("#box-s3"))

    def test_another_sheet_does_not_show_the_ticks_of_this_one(self):
        page = self.browser
        page.click("#box-s1")
        other = FOLDER / "other.html"
        text = SAMPLE.read_text(encoding="utf-8")
        key = page.run("return document.getElementById('content').dataset.key")
        other.write_text(text.replace(f'data-key="{key}"', f'data-key="{"0" * 16}"'), encoding="utf-8")
        page.open(other)
        self.assertFalse(page.checked("#box-s1"))
        page.open(SAMPLE)
        self.assertTrue(page.checked("#box-s1"))

    def test_broken_store_is_begun_anew(self):
        page = self.browser
        key = page.run("return 'plugward-sheet-' + document.getElementById('content').dataset.key")
        for broken in ("{", "null", "[]", '{"ticks": null, "texts": {}, "choices": {}}', '"text"'):
            with self.subTest(broken=broken):
                page.run("localStorage.setItem(arguments[0], arguments[1])", key, broken)
                page.reload()
                page.click("#box-s1")
                page.reload()
                self.assertTrue(page.checked("#box-s1"))

    def test_two_windows_agree(self):
        page = self.browser
        first = page.tell("window")
        page.do("window", {"handle": page.do("window/new", {"type": "tab"})["handle"]})
        page.open(SAMPLE)
        page.click("#box-s1")
        page.type("#reading-r4-1", "5")
        page.ask("DELETE", f"/session/{page.session}/window")
        page.do("window", {"handle": first})
        page.wait_until(lambda: page.checked("#box-s1"), "the other window's tick does not come over")
        self.assertEqual(self.status("r4-1"), "5 V: as expected")

    # ---- Pictures and colours

    def test_face_switch_shows_one_face(self):
        page = self.browser
        self.assertEqual(self.faces(), [True, False])
        page.click('input[value="mating"]')
        self.assertEqual(self.faces(), [False, True])
        page.reload()
        self.assertEqual(self.faces(), [False, True])
        page.click('input[value="wire"]')
        self.assertEqual(self.faces(), [True, False])

    def test_larger_picture(self):
        page = self.browser
        width = "return document.querySelector('[data-face=wire] svg').getBoundingClientRect().width"
        page.phone()
        try:
            small = page.run(width)
            page.click("#picture-plug-0 button")
            self.assertGreater(page.run(width), 2.5 * small)
            self.assertEqual(page.run("return document.documentElement.scrollWidth"), 360)
        finally:
            page.devtools("Emulation.clearDeviceMetricsOverride")

    def test_dark_and_light(self):
        page = self.browser
        dark = "rgba(20, 23, 26, 1)"
        option = '#colours option[value="{}"]'
        try:
            page.media(prefers_color_scheme="light")
            self.assertEqual(self.paper(), WHITE)
            page.media(prefers_color_scheme="dark")
            self.assertEqual(self.paper(), dark)
            page.click(option.format("light"))
            self.assertEqual(self.paper(), WHITE)
            page.media(prefers_color_scheme="light")
            page.click(option.format("dark"))
            self.assertEqual(self.paper(), dark)
            page.reload()
            self.assertEqual(self.paper(), dark)
            page.click(option.format(""))
            self.assertEqual(self.paper(), WHITE)
        finally:
            page.media()

    # ---- Clearing

    def test_clear_asks_first(self):
        page = self.browser
        page.click("#box-s1")
        page.type("#reading-r4-1", "5")
        page.click('#reading-r3-5 input[value="yes"]')
        page.click('input[value="mating"]')
        for way in ("button", "key"):
            page.click("#clear")
            self.assertTrue(page.seen("#clear-dialog"))
            if way == "button":
                page.click("#clear-no")
            else:
                page.keys([ESCAPE])
            self.assertFalse(page.seen("#clear-dialog"))
            self.assertTrue(page.checked("#box-s1"))
        page.click("#clear")
        page.click("#clear-yes")
        self.assertFalse(page.seen("#clear-dialog"))
        for _ in range(2):
            self.assertFalse(page.checked("#box-s1"))
            self.assertEqual(page.value("#reading-r4-1"), "")
            self.assertEqual(self.status("r4-1"), "")
            self.assertEqual(self.status("r3-5"), "")
            self.assertEqual(page.text("#progress-words"), "0 of 4 steps done")
            self.assertEqual(self.faces(), [False, True])  # how one looks at it is not work that was done
            page.reload()

    # ---- Keyboard

    def focused(self):
        return self.browser.run("return document.activeElement.id || document.activeElement.value || "
                                "document.activeElement.className || document.activeElement.tagName")

    def tab_to(self, name, most=60):
        for _ in range(most):
            self.browser.keys([TAB])
            if self.focused() == name:
                return
        self.fail(f"{name} is not reached by the Tab key")

    def test_keyboard_alone_does_everything(self):
        page = self.browser
        page.keys([TAB])
        self.assertEqual(self.focused(), "skip")
        self.assertTrue(page.run("return document.activeElement.getBoundingClientRect().top >= 0"))
        page.keys([ENTER])
        self.assertEqual(page.run("return location.hash"), "#content")
        self.tab_to("box-s1")
        page.keys([SPACE])
        self.assertTrue(page.checked("#box-s1"))
        outline = page.run("return getComputedStyle(document.activeElement).outlineStyle")
        self.assertEqual(outline, "solid")
        self.tab_to("reading-r3-1")
        page.keys(["1", "2", "k"])
        self.assertEqual(self.status("r3-1"), "12 kohm: as expected")
        page.reload()
        self.tab_to("clear")
        page.keys([ENTER])
        self.assertEqual(self.focused(), "clear-no")
        page.keys([TAB])
        self.assertEqual(self.focused(), "clear-yes")
        page.keys([ENTER])
        self.assertFalse(page.checked("#box-s1"))
        self.assertEqual(self.focused(), "clear")  # back where it was
        self.tab_to("wire")
        page.keys([RIGHT])
        self.assertEqual(self.faces(), [False, True])

    def test_focus_is_not_under_the_bar(self):
        page = self.browser
        page.phone()
        try:
            page.run("scrollTo(0, document.body.scrollHeight)")
            page.run("location.hash = '#step-s3'")
            covered = page.run("return document.getElementById('step-s3').getBoundingClientRect().top - "
                               "document.querySelector('.tools').getBoundingClientRect().bottom")
            self.assertGreaterEqual(covered, 0)
        finally:
            page.devtools("Emulation.clearDeviceMetricsOverride")

    # ---- Paper and narrow windows

    def test_print_is_black_on_white_with_what_was_typed(self):
        page = self.browser
        page.click('#colours option[value="dark"]')
        page.click("#box-s1")
        page.type("#reading-r4-1", "4.7")
        try:
            for scheme in ("dark", "light"):
                page.media("print", prefers_color_scheme=scheme)
                for selector in ("body", "#reading-r4-1-status", '[role="note"]', "#reading-r4-1", "a", ".verdict"):
                    self.assertEqual(page.style(selector, "color"), BLACK, selector)
                self.assertEqual(self.paper(), WHITE)
                self.assertEqual(self.status("r4-1"), "4.7 V: too low: points to jumper JP2 on the wrong rail")
                self.assertEqual([page.seen(s) for s in (".tools", ".settings", "nav", "figure button", ".skip")],
                                 [False] * 5)
                self.assertEqual(page.style("figure", "break-inside"), "avoid")
                self.assertTrue(page.seen("#box-s1"))
                after = "return getComputedStyle(document.querySelector(arguments[0]), '::after').content"
                self.assertEqual(page.run(after, "#box-s1"), '"\u2713"')
                self.assertEqual(page.run(after, "#box-s2"), "none")
        finally:
            page.media()

    def test_paper_holds_what_was_typed(self):
        page = self.browser
        page.type("#reading-r4-1", "4.7")
        page.type("#sheet-date", "25 Nov")
        page.click('input[value="mating"]')
        with tempfile.NamedTemporaryFile(suffix=".pdf") as paper:
            paper.write(page.printed())
            paper.flush()
            text = subprocess.run(["pdftotext", "-layout", paper.name, "-"], check=True, capture_output=True,
                                  text=True).stdout
        lines = [" ".join(line.split()) for line in text.splitlines()]
        self.assertIn("J9.2 to J9.3 4.7 V expected: 4.9..5.2 V", lines)
        self.assertIn("\u25bc 4.7 V: too low: points to jumper JP2 on the wrong rail", lines)
        self.assertIn("Date 25 Nov", lines)
        self.assertIn("J9.1 to J9.3 V expected: -0.1..0.1 V", lines)  # a blank to be written in by hand
        self.assertIn("mating face, wires", text)  # of the picture, as it was switched
        for word in ("Contents", "Clear all", "Plugs seen from", "Larger", "Skip"):
            self.assertNotIn(word, text)

    def test_true_size_is_true_on_screen_and_paper(self):
        """A millimetre is 96/25.4 px (CSS Values and Units 3, section 6.2); a browser prints it as a millimetre."""
        page = self.browser
        size = """
          return [...document.querySelectorAll('.true-size svg')].map(svg =>
              [svg.getBoundingClientRect().width / svg.viewBox.baseVal.width,
               svg.getBoundingClientRect().height / svg.viewBox.baseVal.height])"""
        try:
            page.open(FOLDER / "check.html")
            for medium in ("screen", "print"):
                page.media(medium)
                pages = page.run(size)
                self.assertEqual(len(pages), 1, medium)
                for along in pages[0]:
                    self.assertAlmostEqual(along, 96 / 25.4, delta=0.005, msg=medium)
        finally:
            page.media()

    def test_no_sideways_scrolling(self):
        page = self.browser
        try:
            for sheet in SHEETS:
                page.open(sheet)
                for width in (320, 360, 412, 768, 1280):
                    with self.subTest(sheet=sheet.name, width=width):
                        page.phone(width=width)
                        self.assertEqual(page.run("return document.documentElement.scrollWidth"), width)
                        # Only what has its own scroller may be wider.
                        wide = page.run("""
                          return [...document.querySelectorAll('body *')]
                              .filter(e => !e.closest('.scroller, pre, .skip') &&
                                           e.getBoundingClientRect().right > arguments[0] + 0.5)
                              .map(e => e.outerHTML.slice(0, 80))""", width)
                        self.assertEqual(wide, [])
        finally:
            page.devtools("Emulation.clearDeviceMetricsOverride")

    # ---- The whole file

    def test_ids_are_unique_and_links_lead_somewhere(self):
        page = self.browser
        for sheet in SHEETS:
            with self.subTest(sheet=sheet.name):
                page.open(sheet)
                self.assertEqual(page.run("""
                  const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
                  return ids.filter((id, at) => ids.indexOf(id) !== at)"""), [])
                self.assertEqual(page.run("""
                  const named = ['for', 'href', 'aria-labelledby', 'aria-describedby'];
                  return named.flatMap(name => [...document.querySelectorAll(`[${name}]`)].flatMap(
                      e => e.getAttribute(name).split(' ').map(id => id.replace(/^#/, ''))
                            .filter(id => !document.getElementById(id))))"""), [])

    def test_headings_are_in_order(self):
        page = self.browser
        for sheet in SHEETS:
            with self.subTest(sheet=sheet.name):
                page.open(sheet)
                levels = page.run("return [...document.querySelectorAll('h1, h2, h3, h4')].map(h => h.tagName)")
                self.assertEqual(levels[0], "H1")
                self.assertEqual(set(levels[1:]), {"H2"})

    # ---- Nothing in, nothing out

    def test_texts_are_escaped(self):
        page = self.browser
        self.assertEqual(page.tell("title"), "Kite on Heron M7 <img src=x onerror=alert(1)>")
        self.assertEqual(page.text("h1"), "Kite on Heron M7 <img src=x onerror=alert(1)>")
        self.assertEqual(page.text(".title dd"), "Wren no. 3 </title><script>alert(1)</script>")
        self.assertEqual(page.run("return document.querySelectorAll('script, img, b').length"), 1)
        self.assertIn('печать <b>&amp;"печать"', page.text("#section-plugs table"))

    def test_no_request_leaves_the_file(self):
        page = self.browser
        page.log("performance")
        page.log("browser")
        page.reload()
        page.click("#box-s1")
        page.click('input[value="mating"]')
        asked = set()
        for entry in page.log("performance"):
            message = json.loads(entry["message"])["message"]
            if message["method"] == "Network.requestWillBeSent":
                asked.add(message["params"]["request"]["url"])
        self.assertEqual(asked, {SAMPLE.as_uri()})
        self.assertEqual([entry["message"] for entry in page.log("browser")], [])

    def test_policy_stops_what_is_not_ours(self):
        page = self.browser
        page.run("""
          window.done = [];
          document.addEventListener('securitypolicyviolation', e => window.done.push(e.effectiveDirective));
          const script = document.createElement('script');
          script.textContent = 'window.done.push("ran")';
          document.body.append(script);
          const image = new Image();
          image.src = 'http://127.0.0.1:1/x.png';
          document.body.append(image);
          const style = document.createElement('style');
          style.textContent = 'body { display: none }';
          document.head.append(style);""")
        page.wait_until(lambda: len(page.run("return window.done")) >= 3, "the policy stops fewer than three")
        self.assertEqual(sorted(page.run("return window.done")), ["img-src", "script-src-elem", "style-src-elem"])


class RefusedStoreTest(unittest.TestCase):
    """Some browsers give a file no store, or a person has switched it off."""

    def test_works_without_a_store(self):
        # 2: blocked, for cookies and all other stores.
        with Browser(prefs={"profile.default_content_setting_values.cookies": 2}) as page:
            page.open(SAMPLE)
            refused = page.run("try { localStorage.length; return 'given' } catch (e) { return e.name }")
            self.assertEqual(refused, "SecurityError")
            self.assertEqual(page.text("#not-kept"), "This browser does not keep what you tick and type: it is "
                             "lost when the page is closed. Print it first.")
            page.click("#box-s1")
            page.type("#reading-r4-1", "5")
            page.click('input[value="mating"]')
            self.assertEqual(page.text("#progress-words"), "1 of 4 steps done")
            self.assertEqual(page.text("#reading-r4-1-status"), "5 V: as expected")
            self.assertTrue(page.seen('[data-face="mating"]'))
            page.click("#clear")
            page.click("#clear-yes")
            self.assertFalse(page.checked("#box-s1"))

    def test_note_is_hidden_where_there_is_a_store(self):
        with Browser() as page:
            page.open(SAMPLE)
            self.assertFalse(page.seen("#not-kept"))


class NoScriptTest(unittest.TestCase):
    def test_without_scripts_nothing_is_shown_that_does_nothing(self):
        with Browser(prefs={"profile.managed_default_content_settings.javascript": 2}) as page:
            page.open(SAMPLE)
            shown = [page.seen(s) for s in (".tools", ".settings", "figure button", "#step-s1")]
            self.assertEqual(shown, [False, False, False, True])
            self.assertEqual([page.seen(f'[data-face="{face}"]') for face in ("wire", "mating")], [True, False])
            self.assertEqual(page.text("noscript"), "Scripts are off: ticks and readings are not kept, readings "
                             "are not compared, and plugs are shown from the wire side alone.")
            page.click("#box-s1")
            self.assertTrue(page.checked("#box-s1"))


if __name__ == "__main__":
    unittest.main()
