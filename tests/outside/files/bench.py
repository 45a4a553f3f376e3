# SPDX-License-Identifier: MIT
"""What the tests of files share: the program in a folder of its own, the demo's files, and how to look at a folder."""
import hashlib
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

QUIET = ("NO_COLOR", "CLICOLOR_FORCE", "FORCE_COLOR", "TERM", "COLUMNS", "SOURCE_DATE_EPOCH")
FITTED = ["--at", "control=J9", "--at", "trigger=J10", "--jumper", "JP2=5V"]


class Bench:
    """A folder with the program and `boards` and `harnesses` in it, in which commands are run."""

    def __init__(self, program, source):
        # Any user may come in: some commands are run as one who may not write.
        self.root = pathlib.Path(tempfile.mkdtemp(prefix="files "))
        self.root.chmod(0o755)
        self.program = self.root / "bin" / "plugward"
        self.program.parent.mkdir()
        for name in ("plugward", "plugward_canvas.so"):
            shutil.copy(pathlib.Path(program).parent / name, self.program.parent / name)
        self.place = self.root / "place"
        self.place.mkdir()
        for folder in ("boards", "harnesses"):
            shutil.copytree(pathlib.Path(source) / folder, self.place / folder)
        self.environment = {k: v for k, v in os.environ.items() if k not in QUIET}
        self.environment.update(LC_ALL="C", HOME=str(self.root))

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.root, ignore_errors=True)

    def folder(self, name):
        made = self.root / name
        made.mkdir(parents=True)
        return made

    def run(self, *words, cwd=None, timeout=60, **how):
        how.setdefault("env", self.environment)
        return subprocess.run([self.program, *words], cwd=cwd or self.place, capture_output=True,
                              stdin=subprocess.DEVNULL, timeout=timeout, check=False, **how)

    def start(self, *words, cwd=None, **how):
        how.setdefault("env", self.environment)
        return subprocess.Popen([self.program, *words], cwd=cwd or self.place, stdin=subprocess.DEVNULL,
                                stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, **how)


def told(done):
    return os.fsdecode(done.stderr)


def last(done):
    """The last line on standard error."""
    return "".join(told(done).splitlines()[-1:])


def contents(folder):
    """Every name below `folder` with what it holds."""
    found = {}
    folder = os.fsdecode(folder)
    for path in sorted(pathlib.Path(folder).rglob("*")):
        name = os.fsencode(path.relative_to(folder))
        if path.is_symlink():
            found[name] = b"-> " + os.fsencode(os.readlink(path))
        elif path.is_dir():
            found[name] = b"folder"
        elif path.is_file():
            found[name] = hashlib.sha256(path.read_bytes()).digest()
        else:
            found[name] = b"special"
    return found


class Faults:
    """Counts what was looked at, and says at the end what was wrong."""

    def __init__(self):
        self.looked = 0
        self.faults = []

    def must(self, holds, says):
        self.looked += 1
        if not holds:
            self.faults.append(says)

    def same(self, got, wanted, about):
        self.must(got == wanted, f"{about}:\n  came   {got!r}\n  wanted {wanted!r}")

    def take(self, other):
        self.looked += other.looked
        self.faults += other.faults

    def end(self, summary=""):
        for fault in self.faults[:20]:
            print("FAULT", fault)
        print(f"{self.looked} looked at, {len(self.faults)} faults", summary)
        sys.exit(1 if self.faults or not self.looked else 0)
