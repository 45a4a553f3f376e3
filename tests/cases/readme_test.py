#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What README shows is what the program prints.

    readme_test.py SOURCE_DIR PROGRAM

In each ```console block a line '$ plugward ...' is run in SOURCE_DIR; the lines behind it, up to the next '$ ' or the
end of the block, must be its output (standard error and output together), where a line '...' stands for any lines.
"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile


def examples(text):
    for block in re.findall(r"^```console\n(.*?)^```$", text, re.S | re.M):
        for part in re.split(r"^\$ ", block, flags=re.M)[1:]:
            command, _, shown = part.partition("\n")
            if command.startswith("plugward "):
                yield command, shown


def agrees(shown, got):
    pieces = [re.escape(piece) for piece in re.split(r"^\.\.\.\n", shown, flags=re.M)]
    return re.fullmatch("(?:.*\n)*?".join(pieces), got) is not None


def main():
    source, program = (pathlib.Path(argument).resolve() for argument in sys.argv[1:3])
    found = list(examples((source / "README.md").read_text(encoding="utf-8")))
    if not found:
        print("README.md shows no '$ plugward ...' in a ```console block")
        return 1
    faults = 0
    with tempfile.TemporaryDirectory() as folder:
        os.symlink(program, pathlib.Path(folder) / "plugward")
        environment = {**os.environ, "PATH": f"{folder}:{os.environ['PATH']}", "NO_COLOR": "1", "LC_ALL": "C"}
        for command, shown in found:
            got = subprocess.run(["bash", "-c", command], cwd=source, env=environment, stdin=subprocess.DEVNULL,
                                 stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=120, check=False).stdout
            if not agrees(shown, got):
                faults += 1
                print(f"README.md shows for '{command}':\n{shown}\nbut it prints:\n{got}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
