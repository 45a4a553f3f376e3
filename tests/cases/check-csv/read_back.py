# SPDX-License-Identifier: MIT
"""Reads CSV strictly and prints each record as a list."""
import csv
import sys

with open(sys.argv[1], newline="", encoding="utf-8") as file:
    rows = list(csv.reader(file, strict=True))
assert len({len(row) for row in rows}) == 1, "records of different length"
for row in rows:
    print(row)
