#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The includes of src/ obey the layer table, each foreign library is named in one place, and no two types of the
one namespace bear one name (the linker would take either for the other).

    layers_test.py SOURCE_DIR
"""
import pathlib
import re
import sys

# A layer and what it may include besides itself and the standard library; the table of DEVELOPERS.md.
BELOW_MODEL = ["catalogue", "quantity", "diag", "numeric", "base"]
BELOW_FIT = ["model"] + BELOW_MODEL
BELOW_PLAN = ["judge", "fit", "circuit"] + BELOW_FIT
MAY_INCLUDE = {
    "base": [],
    "numeric": [],
    "quantity": ["base"],
    "diag": ["base"],
    "catalogue": ["quantity", "diag", "base"],
    "model": BELOW_MODEL,
    "reader": BELOW_FIT,
    "fit": BELOW_FIT,
    "circuit": BELOW_FIT,
    "judge": ["fit", "circuit"] + BELOW_FIT,
    "plan": BELOW_PLAN,
    "sheet": ["plan"] + BELOW_PLAN,
    "draw": ["sheet", "plan"] + BELOW_PLAN,
    "report": ["sheet", "plan", "reader"] + BELOW_PLAN,
    "cli": ["report", "draw", "sheet", "plan", "reader"] + BELOW_PLAN,
}
# The include path of a library, and the one file or pair that may name it.
FOREIGN = {
    r"fmt/": ["base/format.h"],
    r"Eigen/": ["numeric/linear.cpp"],
    r"pugixml\.hpp": ["reader/xml_tree.cpp"],
    r"(cairo|pango)": ["draw/canvas.cpp"],
    r"nlohmann/": ["report/json.h"],
    r"CLI/": ["cli/options.cpp"],
}
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)


def faults(src):
    found = []
    seen = {library: set() for library in FOREIGN}
    for path in sorted(src.rglob("*")):
        if path.suffix not in (".h", ".cpp", ".inc", ".def"):
            continue
        name = path.relative_to(src).as_posix()
        layer = name.split("/")[0]
        if layer not in MAY_INCLUDE:
            found.append(f"{name}: '{layer}' is not in the layer table")
            continue
        text = path.read_text(encoding="utf-8")
        if path.suffix in (".h", ".cpp") and not text.startswith("// SPDX-License-Identifier: MIT\n"):
            found.append(f"{name}: does not begin with the licence line")
        for kind, included in INCLUDE.findall(text):
            lower = included.split("/")[0]
            if kind == '"' and not (src / included).exists():
                found.append(f'{name}: "{included}" is not named from src/')
            elif kind == '"' and lower != layer and lower not in MAY_INCLUDE[layer]:
                found.append(f"{name}: {layer} may not include {included}")
            for library, places in FOREIGN.items():
                if kind == "<" and re.match(library, included):
                    seen[library].add(name)
                    if name not in places:
                        found.append(f"{name}: <{included}> is named outside {', '.join(places)}")
    for library, places in FOREIGN.items():
        if not seen[library]:
            found.append(f"<{library}> is named nowhere: is {', '.join(places)} still right?")
    return found


def types_of(text):
    """Names of the types that a file defines in namespace plugward itself, not in an unnamed or inner one."""
    text = re.sub(r"^namespace \{\n.*?^\}  // namespace\n", "", text, flags=re.S | re.M)
    inner = re.search(r"^namespace plugward::(\w+) \{", text, re.M)
    prefix = inner.group(1) + "::" if inner else ""
    return {prefix + name for name in re.findall(r"^(?:struct|class|enum class) (\w+)[^;\n]*\{", text, re.M)}


def doubled_types(source):
    """A line for each type name that two files define."""
    homes = {}
    for path in sorted(source.glob("*/*.h")) + sorted(source.glob("*/*.cpp")):
        for name in types_of(path.read_text(encoding="utf-8")):
            homes.setdefault(name, []).append(path.relative_to(source).as_posix())
    return [f"type '{name}' is defined in {' and '.join(files)}" for name, files in homes.items() if len(files) > 1]


def main():
    found = faults(pathlib.Path(sys.argv[1]) / "src") + doubled_types(pathlib.Path(sys.argv[1]) / "src")
    for fault in found:
        print(fault)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
