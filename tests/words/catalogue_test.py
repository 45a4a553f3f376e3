#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every catalogue passes msgfmt's own check and has no text that the sources no longer have; what it lacks is listed.

    catalogue_test.py SOURCE_DIR
"""
import pathlib
import subprocess
import sys

import template


def faults(po, wanted):
    found = []
    check = subprocess.run(["msgfmt", "--check-format", "--check-domain", "-o", "/dev/null", str(po)],
                           capture_output=True, text=True)
    if check.returncode != 0 or check.stderr:
        found.append(f"msgfmt: {check.stderr.strip()}")
    said = {}
    for (context, msgid, plural, texts), _ in template.entries(po.read_text(encoding="utf-8")):
        said[(context, msgid, plural)] = texts
    for key in sorted(wanted):  # said in English until somebody translates it; what the demo shows is tested beside
        if not all(said.get(key, [""])):
            print(f"{po.name}: note: not translated: {key}")
    found += [f"no longer in the sources: {key}" for key in said if key not in wanted]
    return found


def main():
    root = pathlib.Path(sys.argv[1])
    wanted = {(context, msgid, plural)
              for (context, msgid, plural, _), _ in template.entries(template.template(root))}
    if len(wanted) < 1000:
        print(f"only {len(wanted)} texts were found in the sources")
        return 1
    found = []
    for po in sorted((root / "src/sheet/languages").glob("*.po")):
        found += [f"{po.name}: {fault}" for fault in faults(po, wanted)]
    print("\n".join(found))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
