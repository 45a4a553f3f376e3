#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every kept JSON output obeys the schema of its format, and each schema is used.

    schema_test.py SOURCE_DIR
"""
import json
import pathlib
import sys

import jsonschema


def main():
    tests = pathlib.Path(sys.argv[1]) / "tests"
    schemas = {}
    for path in sorted((tests / "schema").glob("*.json")):
        schema = json.loads(path.read_text(encoding="utf-8"))
        jsonschema.Draft7Validator.check_schema(schema)
        schemas[schema["properties"]["format"]["const"]] = schema
    unused = set(schemas)
    found = []
    for path in sorted((tests / "cases").glob("*/expected.stdout")):
        text = path.read_text(encoding="utf-8")
        if not text.startswith("{\n"):
            continue
        document = json.loads(text)
        name = document.get("format")
        if name not in schemas:
            found.append(f"{path.parent.name}: no schema for format {name!r}")
            continue
        unused.discard(name)
        for error in jsonschema.Draft7Validator(schemas[name]).iter_errors(document):
            where = "/".join(str(step) for step in error.absolute_path)
            found.append(f"{path.parent.name}: {where}: {error.message[:200]}")
    found += [f"no case prints {name}" for name in sorted(unused)]
    for fault in found:
        print(fault)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
