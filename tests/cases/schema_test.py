#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every kept JSON output obeys the schema of its format, and each schema is used; every SARIF output obeys the
schema of OASIS, and its places are relative.

    schema_test.py SOURCE_DIR
"""
import json
import pathlib
import sys

import jsonschema


def own_schemas(folder, found):
    """By format; a schema is named by its file and its $id."""
    schemas = {}
    for path in sorted(folder.glob("*.json")):
        schema = json.loads(path.read_text(encoding="utf-8"))
        jsonschema.Draft7Validator.check_schema(schema)
        members = schema["properties"]
        name, version = members["format"]["const"], members["version"]["const"]
        if name != f"plugward-{path.stem}" or schema["$id"] != f"urn:plugward:{path.stem}:{version}":
            found.append(f"{path.name}: its $id is not that of {name} {version}")
        if not {"format", "version"} <= set(schema["required"]):
            found.append(f"{path.name}: format and version are not required")
        schemas[name] = jsonschema.Draft7Validator(schema)
    return schemas


def places(node):
    """Every artifactLocation of a SARIF log."""
    if isinstance(node, dict):
        if "artifactLocation" in node:
            yield node["artifactLocation"]
        for child in node.values():
            yield from places(child)
    elif isinstance(node, list):
        for child in node:
            yield from places(child)


def main():
    source = pathlib.Path(sys.argv[1])
    found = []
    schemas = own_schemas(source / "src/report/schemas", found)
    sarif = json.loads((source / "tests/schema/sarif-2.1.0.json").read_text(encoding="utf-8"))
    jsonschema.Draft4Validator.check_schema(sarif)
    unused = set(schemas) | {"SARIF"}
    for path in sorted((source / "tests" / "cases").glob("*/expected.stdout")):
        text = path.read_text(encoding="utf-8")
        if not text.startswith("{\n") or "json-schema.org/draft-07" in text[:80]:
            continue
        document = json.loads(text)
        if document.get("version") == "2.1.0":
            name, validator = "SARIF", jsonschema.Draft4Validator(sarif)
            for place in places(document["runs"][0]["results"]):
                if place["uri"].startswith("/") or place.get("uriBaseId") != "FOLDER":
                    found.append(f"{path.parent.name}: {place} is not relative")
        elif document.get("format") in schemas:
            name = document["format"]
            validator = schemas[name]
        else:
            found.append(f"{path.parent.name}: no schema for format {document.get('format')!r}")
            continue
        unused.discard(name)
        for error in validator.iter_errors(document):
            where = "/".join(str(step) for step in error.absolute_path)
            found.append(f"{path.parent.name}: {where}: {error.message[:200]}")
    found += [f"no case prints {name}" for name in sorted(unused)]
    for fault in found:
        print(fault)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
