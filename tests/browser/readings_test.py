#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Readings are compared with what was expected while they are typed.

    readings_test.py FOLDER      FOLDER holds the sheets, see CMakeLists.txt
"""
import unittest

from sheet_case import FOLDER, SheetCase


class ReadingsTest(SheetCase):
    def test_readings_are_compared_as_typed(self):
        volts, ohms, open_end, beep = "r4-1", "r3-1", "r3-2", "r3-3"
        unclear = "not understood yet: type a number such as 4.9, 4,9 or 12k, or the word open"
        prefix = "milli or mega? Write the number in full, or k for a thousand"
        rows = [
            # 4.9..5.2 V
            (volts, "4.9", "4.9 V: as expected"),
            (volts, "4,9", "4.9 V: as expected"),
            (volts, "4.9 V", "4.9 V: as expected"),
            (volts, " 5.2V ", "5.2 V: as expected"),
            (volts, "4900 mV", "4.9 V: as expected"),
            (volts, "5.00 volts", "5 V: as expected"),
            (volts, "5,000", "5 V: as expected"),
            (volts, "4.899", "4.899 V: too low: points to jumper JP2 on the wrong rail"),
            (volts, ".5", "0.5 V: too low: points to jumper JP2 on the wrong rail"),
            (volts, "-5", "-5 V: too low: points to jumper JP2 on the wrong rail"),
            (volts, "5.201", '5.201 V: too high: points to 12 V on this pin: "J9" is not J9'),
            (volts, "1.2 kV", '1.2 kV: too high: points to 12 V on this pin: "J9" is not J9'),
            (volts, "OL", 'OL: too high: points to 12 V on this pin: "J9" is not J9'),
            (volts, "open", "this reading is in V: another unit was typed"),
            (volts, "5 ohm", "this reading is in V: another unit was typed"),
            (volts, "5 MV", prefix),
            (volts, "five", unclear),
            (volts, "4.9.1", unclear),
            (volts, "-", unclear),
            # 10..14 kohm
            (ohms, "12k", "12 kohm: as expected"),
            (ohms, "12 K", "12 kohm: as expected"),
            (ohms, "12000", "12 kohm: as expected"),
            (ohms, "12.000 k\u03a9", "12 kohm: as expected"),
            (ohms, "12,1 kohm", "12.1 kohm: as expected"),
            (ohms, "13k3", "13.3 kohm: as expected"),
            (ohms, "0.0135 M\u2126", "13.5 kohm: as expected"),
            (ohms, "10k", "10 kohm: as expected"),
            (ohms, "14k", "14 kohm: as expected"),
            (ohms, "9.99k", "9.99 kohm: too low: points to a short to ground"),
            (ohms, "12", "12 ohm: too low: points to a short to ground"),
            (ohms, "14.01k", "14.01 kohm: too high: points to a lead that is not crimped"),
            (ohms, "1.2 Mohm", "1.2 Mohm: too high: points to a lead that is not crimped"),
            (ohms, "open", "open: too high: points to a lead that is not crimped"),
            (ohms, "12,000", "is the comma a decimal sign? Write 12.345 or 12345"),
            (ohms, "12 m", prefix),
            (ohms, "12 V", "this reading is in ohm: another unit was typed"),
            (ohms, "no beep", "type the number: a beep does not tell this value from others"),
            (ohms, "beep", "beep: too low: points to a short to ground"),
            # over 1 Mohm, or open
            (open_end, "OL", "open: as expected"),
            (open_end, "0.L", "open: as expected"),
            (open_end, "OL MOhm", "open: as expected"),
            (open_end, "\u221e", "open: as expected"),
            (open_end, "1.2 Mohm", "1.2 Mohm: as expected"),
            (open_end, "1M", "1 Mohm: as expected"),
            (open_end, "999k", "999 kohm: too low"),
            (open_end, "no beep", "no beep: as expected"),
            # a beep: 0..3 ohm
            (beep, "beep", "beep: as expected"),
            (beep, "0.3", "0.3 ohm: as expected"),
            (beep, "3", "3 ohm: as expected"),
            (beep, "3R3", "3.3 ohm: too high"),
            (beep, "no beep", "type the number: a beep does not tell this value from others"),
            (beep, "OL", "open: too high"),
            # printed 1.6..2.8 ohm, computed 1.697..2.785; 57 ohm or more, 57.4; 950 ohm..1.1 kohm, 951..1090
            ("r3-6", "1.6", "1.6 ohm: as expected"),
            ("r3-6", "1.59", "1.59 ohm: too low"),
            ("r3-6", "2.8", "2.8 ohm: as expected"),
            ("r3-6", "2.81", "2.81 ohm: too high"),
            ("r3-7", "57", "57 ohm: as expected"),
            ("r3-7", "56.9", "56.9 ohm: too low"),
            ("r3-7", "OL", "open: as expected"),
            ("r3-8", "950", "950 ohm: as expected"),
            ("r3-8", "1.1k", "1.1 kohm: as expected"),
            ("r3-8", "949", "949 ohm: too low"),
            ("r3-8", "1101", "1.101 kohm: too high"),
            # -0.1..0.1 V
            ("r4-2", "\u22120.1", "-0.1 V: as expected"),
            ("r4-2", "0", "0 V: as expected"),
            ("r4-2", "-0.11", "-0.11 V: too low"),
            # every reading is in the band, and no band at all
            ("r3-4", "0.55 V", "noted"),
            ("r4-3", "PROBE", "noted"),
        ]
        for blank, typed, said in rows:
            with self.subTest(blank=blank, typed=typed):
                self.retype(blank, typed)
                self.assertEqual(self.status(blank), said)

    def test_comparison_follows_every_key(self):
        said = []
        for key in "4.95":
            self.browser.type("#reading-r4-1", key)
            said.append(self.status("r4-1"))
        low = "too low: points to jumper JP2 on the wrong rail"
        self.assertEqual(said, [f"4 V: {low}", f"4 V: {low}", "4.9 V: as expected", "4.95 V: as expected"])

    def test_a_wrong_reading_is_told_to_screen_readers(self):
        page = self.browser
        page.type("#reading-r4-1", "12")
        attribute = "return document.getElementById(arguments[0]).getAttribute(arguments[1])"
        self.assertEqual(page.run(attribute, "reading-r4-1", "aria-invalid"), "true")
        self.assertEqual(page.run(attribute, "reading-r4-1", "aria-describedby"),
                         "reading-r4-1-expect reading-r4-1-status")
        self.assertEqual(page.run(attribute, "reading-r4-1-status", "aria-live"), "polite")
        self.retype("r4-1", "5")
        self.assertIsNone(page.run(attribute, "reading-r4-1", "aria-invalid"))

    def test_readings_persist(self):
        page = self.browser
        page.type("#reading-r4-1", "4,7 V")
        page.click('#reading-r3-5 input[value="no"]')
        page.reload()
        self.assertEqual(page.value("#reading-r4-1"), "4,7 V")
        self.assertEqual(self.status("r4-1"), "4.7 V: too low: points to jumper JP2 on the wrong rail")
        self.assertEqual(self.status("r3-5"), "not as expected: points to another header: stop")
        page.click('#reading-r3-5 input[value="yes"]')
        self.assertEqual(self.status("r3-5"), "as expected")
        page.clear("#reading-r4-1")
        page.reload()
        self.assertEqual(page.value("#reading-r4-1"), "")
        self.assertEqual(self.status("r4-1"), "")

    def test_every_expected_reading_of_the_swap_fits_itself(self):
        """The ends of what a blank asks for, as they are printed, are as expected when they are typed."""
        page = self.browser
        page.open(FOLDER / "swap.html")
        found = page.run(r"""
          const found = [];
          let tried = 0;
          for (const input of document.querySelectorAll('.reading input[type=text]')) {
            const band = document.getElementById(input.id + '-expect')?.textContent.match(
                /(-?[\d.]+)\.\.(-?[\d.]+) (\w+)$/);
            if (!band) continue;
            for (const end of [band[1], band[2]]) {
              ++tried;
              input.value = end + ' ' + band[3];
              input.dispatchEvent(new Event('input'));
              const status = document.getElementById(input.id + '-status');
              if (status.dataset.state !== 'fits') found.push(band[0] + ' | ' + status.textContent);
            }
          }
          return [tried, [...new Set(found)]]""")
        self.assertGreater(found[0], 40)
        self.assertEqual(found[1], [])


if __name__ == "__main__":
    unittest.main()
