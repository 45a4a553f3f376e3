#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The Debian package that CPack makes: its control fields and what is in it. It is not installed here.

    package_test.py BUILD_DIR
"""
import pathlib
import re
import subprocess
import sys
import tempfile

from shell_case import Faults

# Linked by the program itself and, for pictures, by its module.
LIBRARIES = ("libc6", "libstdc++6", "libfmt9", "libpugixml1v5", "libcairo2", "libpango-1.0-0", "libpangocairo-1.0-0")


def main():
    build = pathlib.Path(sys.argv[1]).resolve()
    faults = Faults()
    with tempfile.TemporaryDirectory() as folder:
        done = subprocess.run(["cpack", "-G", "DEB", "-B", folder, "--config", build / "CPackConfig.cmake"], cwd=folder, text=True,
                              capture_output=True, check=False)
        packages = list(pathlib.Path(folder).glob("*.deb"))
        faults.check(done.returncode == 0 and len(packages) == 1, f"cpack: {done.stdout}{done.stderr}")
        if faults.count:
            return 1

        def ask(*arguments):
            return subprocess.run(["dpkg-deb", *arguments], text=True, capture_output=True, check=True).stdout

        deb = packages[0]
        faults.check(re.fullmatch(r"plugward_\d+\.\d+\.\d+-1_[a-z0-9]+\.deb", deb.name), f"it is called {deb.name}")
        fields = dict(re.findall(r"^([A-Za-z-]+): *((?:.*\n)(?: .*\n)*)", ask("--field", deb), re.M))
        for name in ("Package", "Version", "Architecture", "Maintainer", "Installed-Size", "Depends", "Section", "Priority",
                     "Description"):
            faults.check(fields.get(name, "").strip(), f"no field '{name}'")
        depends = [word.split()[0] for word in fields.get("Depends", "").split(", ")]
        for library in LIBRARIES:
            faults.check(library in depends, f"it does not depend on {library}, but on {depends}")
        faults.check(not [word for word in depends if word.endswith("-dev")], f"it depends on {depends}")
        lines = fields.get("Description", "").splitlines()
        faults.check(0 < len(lines[0]) < 80 and len(lines) > 2, f"Description: {lines}")
        contents = ask("--contents", deb).splitlines()
        names = [line.split()[5] for line in contents]
        for line, name in zip(contents, names):
            faults.check(line.split()[1] == "root/root", f"not root's: {line}")
            wanted = "drwxr-xr-x" if name.endswith("/") else "-rwxr-xr-x" if "/bin/" in name else "-rw-r--r--"
            faults.check(line.split()[0] == wanted, f"{line.split()[0]} {name}")
        for name in ("bin/plugward", "lib/plugward/plugward_canvas.so", "share/man/man1/plugward.1.gz", "share/plugward/catalog.xml",
                     "share/plugward/boards/heron-m7.xml", "share/bash-completion/completions/plugward",
                     "share/zsh/vendor-completions/_plugward", "share/fish/vendor_completions.d/plugward.fish",
                     "share/doc/plugward/copyright"):
            faults.check(f"./usr/{name}" in names, f"'{name}' is not in the package")
        faults.check(all(name.startswith("./usr/") or name == "./" for name in names), f"beside /usr: {names}")
        sums = subprocess.run(["dpkg-deb", "--info", deb, "md5sums"], text=True, capture_output=True, check=False).stdout
        faults.check(len(sums.splitlines()) == len([name for name in names if not name.endswith("/")]), "md5sums are not whole")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
