#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""'cmake --install' into a scratch folder, with DESTDIR, moved to another place: the program, its module and its data
are found there, and everything is where people and programs look for it.

    install_test.py BUILD_DIR SOURCE_DIR
"""
import gzip
import os
import pathlib
import subprocess
import sys
import tempfile

from shell_case import Faults

EXPECTED = """
bin/plugward
lib/plugward/plugward_canvas.so
share/bash-completion/completions/plugward
share/doc/plugward/README.md
share/doc/plugward/changelog.Debian.gz
share/doc/plugward/copyright
share/fish/vendor_completions.d/plugward.fish
share/man/man1/plugward.1.gz
share/plugward/boards/README.md
share/plugward/boards/board.xsd
share/plugward/boards/heron-m7.xml
share/plugward/catalog.xml
share/plugward/families/families.xml
share/plugward/families/families.xsd
share/plugward/harnesses/README.md
share/plugward/harnesses/harness.xsd
share/plugward/harnesses/kite-probe.xml
share/plugward/harnesses/loom.xsd
share/plugward/harnesses/wren-a4.xml
share/zsh/vendor-completions/_plugward
""".split()


def files_of(folder):
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if not path.is_dir())


def main():
    build, source = (pathlib.Path(argument).resolve() for argument in sys.argv[1:3])
    faults = Faults()
    with tempfile.TemporaryDirectory() as scratch:
        scratch = pathlib.Path(scratch).resolve()
        done = subprocess.run(["cmake", "--install", build, "--prefix", "/opt/plugward"], text=True, capture_output=True,
                              env={**os.environ, "DESTDIR": str(scratch / "dest")}, check=False)
        faults.check(done.returncode == 0, f"cmake --install: {done.stdout}{done.stderr}")
        installed = files_of(scratch / "dest/opt/plugward")
        faults.check(files_of(scratch / "dest") == [f"opt/plugward/{name}" for name in installed], "files beside the prefix")
        for name in EXPECTED:
            faults.check(name in installed, f"'{name}' is not installed")
        for name in installed:
            shipped = name.removeprefix("share/plugward/")
            known = name in EXPECTED or (source / shipped).exists() or (source / "src/report" / shipped).exists()
            faults.check(known, f"'{name}' is installed, of which this test knows nothing")
        # Every description file that is shipped, and its schema, and no byte changed.
        for folder in ("boards", "harnesses"):
            for path in sorted((source / folder).rglob("*.x[ms][ld]")):
                copy = scratch / "dest/opt/plugward/share/plugward" / path.relative_to(source)
                faults.check(copy.exists() and copy.read_bytes() == path.read_bytes(), f"'{path.name}' is not installed as it is")

        place = scratch / "another place"
        os.rename(scratch / "dest/opt/plugward", place)
        empty = scratch / "empty"
        empty.mkdir()
        environment = {"PATH": f"{place}/bin:{os.environ['PATH']}", "HOME": str(scratch / "none"), "LC_ALL": "C.UTF-8",
                       "XDG_DATA_HOME": str(scratch / "none"), "XDG_DATA_DIRS": str(scratch / "none")}
        for variable in ("ASAN_OPTIONS", "LSAN_OPTIONS", "UBSAN_OPTIONS"):
            if variable in os.environ:
                environment[variable] = os.environ[variable]

        def run(*arguments):
            return subprocess.run(arguments, cwd=empty, env=environment, text=True, capture_output=True, check=False)

        judged = run("plugward", "check", "heron-m7", "kite-probe", "--at", "control=J9", "--at", "trigger=J10", "--jumper",
                     "JP2=5V")
        faults.check(judged.returncode == 1 and judged.stdout.startswith("REPIN: ") and not judged.stderr,
                     f"check: {judged.returncode} {judged.stdout[:200]} {judged.stderr}")
        for name in ("boards/heron-m7.xml", "heron-m7", "board/heron-m7"):
            linted = run("plugward", "lint", name)
            wanted = (2, f"plugward: error: cannot read '{name}': No such file or directory, nor is it in "
                         f"'{place}/share/plugward'\n") if name.startswith("board/") else (0, "")
            faults.check((linted.returncode, linted.stderr) == wanted, f"lint {name}: {linted.returncode} {linted.stderr}")
        looked = run("plugward", "find", "kite-probe", "--in", "boards")
        faults.check(looked.returncode == 0 and "heron-a4.xml" in looked.stdout, f"find: {looked.stdout} {looked.stderr}")
        drawn = run("plugward", "draw", "heron-m7", "kite-probe", "--at", "control=J9", "-o", "kite.pdf")
        faults.check(drawn.returncode == 0 and (empty / "kite.pdf").read_bytes().startswith(b"%PDF"), f"draw: {drawn.stderr}")
        page = gzip.open(place / "share/man/man1/plugward.1.gz").read().decode()
        faults.check(page.count(".SS ") >= 14, "the manual is not whole")

        # The catalogue leads from the schemas' names to the schemas, and with it xmllint takes a file from any folder.
        catalog = place / "share/plugward/catalog.xml"
        environment["XML_CATALOG_FILES"] = catalog.as_uri()
        for name, file, folder in (("board", "heron-m7", "boards"), ("harness", "kite-probe", "harnesses"),
                                   ("loom", "wren-a4", "harnesses")):
            fine = run("xmllint", "--nonet", "--noout", "--schema", f"urn:plugward:{name}",
                       str(place / f"share/plugward/{folder}/{file}.xml"))
            faults.check(fine.returncode == 0, f"by the catalogue: {fine.stderr}")
        fine = run("xmllint", "--nonet", "--noout", "--schema", "urn:plugward:families",
                   str(place / "share/plugward/families/families.xml"))
        faults.check(fine.returncode == 0, f"by the catalogue: {fine.stderr}")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
