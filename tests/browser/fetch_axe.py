#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Fetches axe-core, which judges the accessibility of pages, by npm: a pinned version with a pinned checksum. It is
used by the tests alone (licence MPL-2.0) and is not part of the sources.

    fetch_axe.py FOLDER      leaves FOLDER/axe.min.js; does nothing when the right one is there
"""
import base64
import hashlib
import pathlib
import subprocess
import sys
import tarfile
import tempfile

PACKAGE, VERSION = "axe-core", "4.14.1"
# As the registry states it ("dist.integrity" of this version), in base64.
SHA512 = "FHfa+lmNjQZfJz1q8wKqIDwC6DExcHt/pkjNQb09a3NPjCKg2rhu5qb2S4r76ASyFNNtuFooJpZe37OgudVGtQ=="
NEED = "The accessibility test needs this package once; run it where npm is installed and reaches its registry."


def fetched(folder):
    """The path of the package's archive."""
    done = subprocess.run(["npm", "pack", f"{PACKAGE}@{VERSION}", "--ignore-scripts", "--no-update-notifier",
                           "--loglevel=error", "--pack-destination", folder], cwd=folder, text=True,
                          stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=240)
    if done.returncode != 0:
        raise OSError(done.stdout.strip())
    return pathlib.Path(folder) / f"{PACKAGE}-{VERSION}.tgz"


def main():
    folder = pathlib.Path(sys.argv[1])
    script, mark = folder / "axe.min.js", folder / "archive.sha512"
    if script.exists() and mark.exists() and mark.read_text(encoding="ascii") == SHA512:
        return 0
    with tempfile.TemporaryDirectory() as work:
        try:
            archive = fetched(work)
            found = base64.b64encode(hashlib.sha512(archive.read_bytes()).digest()).decode("ascii")
        except (OSError, subprocess.TimeoutExpired) as error:
            print(f"cannot fetch {PACKAGE} {VERSION} by npm: {error}\n{NEED}")
            return 1
        if found != SHA512:
            print(f"{PACKAGE} {VERSION} is not the file that was expected:\nsha512 {found}\nexpected {SHA512}")
            return 1
        with tarfile.open(archive) as packed:
            text = packed.extractfile("package/axe.min.js").read()
    folder.mkdir(parents=True, exist_ok=True)
    script.write_bytes(text)
    mark.write_text(SHA512, encoding="ascii")
    print(f"{PACKAGE} {VERSION}: {len(text)} bytes")
    return 0


if __name__ == "__main__":
    sys.exit(main())
