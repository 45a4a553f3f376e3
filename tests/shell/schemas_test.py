#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""An editor needs no set-up: every shipped description names its schema, which is beside it or a relative path away, and
every element and attribute of the schemas has the documentation that the editor shows.

    schemas_test.py SOURCE_DIR
"""
import pathlib
import sys
import xml.etree.ElementTree as tree

from shell_case import Faults

XS = "{http://www.w3.org/2001/XMLSchema}"
PLACE = "{http://www.w3.org/2001/XMLSchema-instance}noNamespaceSchemaLocation"
SCHEMAS = {"board": "boards/board.xsd", "harness": "harnesses/harness.xsd", "loom": "harnesses/loom.xsd",
           "families": "src/catalogue/families.xsd"}


def main():
    source = pathlib.Path(sys.argv[1]).resolve()
    faults = Faults()
    shipped = [path for folder in ("boards", "harnesses", "src/catalogue") for path in sorted((source / folder).rglob("*.xml"))]
    faults.check(len(shipped) > 15, f"only {len(shipped)} files")
    for path in shipped:
        root = tree.parse(path).getroot()
        place = root.get(PLACE)
        name = path.relative_to(source)
        faults.check(place is not None, f"{name} names no schema")
        if place is not None:
            found = (path.parent / place).resolve()
            faults.check(found == (source / SCHEMAS[root.tag]).resolve(), f"{name} names {place}")

    for schema in SCHEMAS.values():
        said = 0
        for thing in tree.parse(source / schema).getroot().iter():
            if thing.tag not in (XS + "element", XS + "attribute") or thing.get("ref"):
                continue
            text = thing.findtext(f"{XS}annotation/{XS}documentation", "").strip()
            what = f"{schema}: {thing.tag[len(XS):]} '{thing.get('name')}'"
            faults.check(text, f"{what} has no documentation")
            said += 1
        faults.check(said > 20, f"{schema} has only {said} elements and attributes")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
