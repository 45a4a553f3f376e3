# SPDX-License-Identifier: MIT
"""Pictures as grey values, and how far two of them differ.

    share(read_grey(a_bytes), read_grey(b_bytes))      0.0 for pictures that look the same
"""
import struct
import zlib
from typing import NamedTuple


class Grey(NamedTuple):
    width: int
    height: int
    rows: list  # of bytearray: 0 black, 255 white; what is transparent lies on white


def _unfiltered(data, height, stride, step):
    """The rows of a PNG without its row filters (ISO/IEC 15948, clause 9)."""
    rows, above, at = [], bytearray(stride), 0
    for _ in range(height):
        kind, row = data[at], bytearray(data[at + 1:at + 1 + stride])
        at += 1 + stride
        if kind == 1:
            for i in range(step, stride):
                row[i] = (row[i] + row[i - step]) & 255
        elif kind == 2:
            for i in range(stride):
                row[i] = (row[i] + above[i]) & 255
        elif kind == 3:
            for i in range(stride):
                row[i] = (row[i] + ((row[i - step] if i >= step else 0) + above[i]) // 2) & 255
        elif kind == 4:
            for i in range(stride):
                a = row[i - step] if i >= step else 0
                b, c = above[i], above[i - step] if i >= step else 0
                pa, pb, pc = abs(b - c), abs(a - c), abs(a + b - 2 * c)
                row[i] = (row[i] + (a if pa <= pb and pa <= pc else b if pb <= pc else c)) & 255
        rows.append(row)
        above = row
    return rows


def read_grey(png):
    """Of a PNG with 8 bits a channel, RGB or RGBA, not interlaced: what browsers and rsvg-convert write."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n", "no PNG"
    at, packed, head = 8, b"", None
    while at < len(png):
        size, kind = struct.unpack(">I4s", png[at:at + 8])
        if kind == b"IHDR":
            head = struct.unpack(">IIBBBBB", png[at + 8:at + 21])
        elif kind == b"IDAT":
            packed += png[at + 8:at + 8 + size]
        at += 12 + size
    width, height, depth, colour, _, _, interlace = head
    assert depth == 8 and colour in (2, 6) and interlace == 0, f"another kind of PNG: {head}"
    step = 4 if colour == 6 else 3
    rows = []
    for row in _unfiltered(zlib.decompress(packed), height, width * step, step):
        red, green, blue = row[0::step], row[1::step], row[2::step]
        grey = bytearray((2 * r + 5 * g + b) >> 3 for r, g, b in zip(red, green, blue))
        if step == 4:
            for i, alpha in enumerate(row[3::4]):
                if alpha < 255:
                    grey[i] = (grey[i] * alpha + 255 * (255 - alpha)) // 255
        rows.append(grey)
    return Grey(width, height, rows)


def share(one, other, hair=48):
    """Share of the pixels of either that nothing like it (`hair` grey steps) lies within one pixel of in the other.

    Two programs that smooth edges each in its own way differ by less; a letter, a line or a fill that is missing,
    elsewhere or of another shade does not."""
    if one[:2] != other[:2]:
        return 1.0
    odd = 0
    for mine, theirs in ((one, other), (other, one)):
        for y, row in enumerate(mine.rows):
            opposite = theirs.rows[y]
            if row == opposite:
                continue
            near = theirs.rows[max(y - 1, 0):y + 2]
            for x, (a, b) in enumerate(zip(row, opposite)):
                if abs(a - b) <= hair:
                    continue
                around = [value for line in near for value in line[max(x - 1, 0):x + 2]]
                if not min(around) - hair <= a <= max(around) + hair:
                    odd += 1
    return odd / (2 * one.width * one.height)
