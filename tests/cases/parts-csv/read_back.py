# SPDX-License-Identifier: MIT
"""Reads a parts list with Python's csv module and prints it field by field."""
import csv
import sys

with open(sys.argv[1], encoding="utf-8", newline="") as file:
    text = file.read()
records = list(csv.reader(text.splitlines(keepends=True), strict=True))
header, rows = records[0], records[1:]
assert text.endswith("\r\n") and text.count("\n") == text.count("\r\n") == len(records)
assert all(len(row) == len(header) for row in rows)
for row in rows:
    item = dict(zip(header, row))
    assert int(item["buy"]) == int(item["needed"]) + int(item["spares"])
    print("; ".join(f"{name}={value}" for name, value in item.items() if value))
