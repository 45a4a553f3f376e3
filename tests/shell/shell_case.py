# SPDX-License-Identifier: MIT
"""A scratch folder with copies of the shipped files, where 'plugward' is on the PATH and nothing of the machine's own
settings is seen."""
import os
import pathlib
import pty
import re
import select
import shutil
import signal
import subprocess
import tempfile
import time

LOUD = ("NO_COLOR", "CLICOLOR_FORCE", "FORCE_COLOR", "PLUGWARD_PATH", "SOURCE_DATE_EPOCH")


class Scratch:
    """with Scratch(program, source) as scratch: scratch.run("plugward lint boards/heron-m7.xml")"""

    def __init__(self, program, source):
        self.program, self.source = pathlib.Path(program).resolve(), pathlib.Path(source).resolve()

    def __enter__(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.keeper.name).resolve() / "work"
        self.folder.mkdir()
        for name in ("boards", "harnesses"):
            shutil.copytree(self.source / name, self.folder / name)
        binaries = self.folder.parent / "bin"
        binaries.mkdir()
        os.symlink(self.program, binaries / "plugward")
        none = str(self.folder.parent / "none")
        self.environment = {k: v for k, v in os.environ.items() if k not in LOUD}
        self.environment.update(PATH=f"{binaries}:{os.environ['PATH']}", LC_ALL="C.UTF-8", TERM="dumb", HOME=none,
                                XDG_DATA_HOME=none, XDG_DATA_DIRS=none)
        return self

    def __exit__(self, *_):
        self.keeper.cleanup()

    def run(self, command, **more):
        """A command line of bash: status, standard output, standard error."""
        done = subprocess.run(["bash", "-c", command], cwd=self.folder, env={**self.environment, **more}, text=True,
                              capture_output=True, stdin=subprocess.DEVNULL, timeout=120, check=False)
        return done.returncode, done.stdout, done.stderr

    def start(self, arguments):
        """A program that goes on; its two outputs in files 'stdout' and 'stderr' beside the scratch folder."""
        self.outputs = {kind: self.folder.parent / kind for kind in ("stdout", "stderr")}
        out, err = (open(path, "wb") for path in self.outputs.values())
        with out, err:
            return subprocess.Popen(arguments, cwd=self.folder, env=self.environment, stdin=subprocess.DEVNULL,
                                    stdout=out, stderr=err)

    def said(self, kind):
        return self.outputs[kind].read_text(encoding="utf-8")


def wait_for(what, seconds=60):
    """Until what() is true; says whether it came."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if what():
            return True
        time.sleep(0.02)
    return False


class Terminal:
    """A program at a terminal of 40 lines and 200 columns."""

    def __init__(self, arguments, folder, environment):
        self.child, self.screen = pty.fork()
        if self.child == 0:
            os.chdir(folder)
            os.execvpe(arguments[0], arguments, environment)
        self.text = ""

    def read(self, seconds=0.1):
        ready, _, _ = select.select([self.screen], [], [], seconds)
        if not ready:
            return False
        try:
            data = os.read(self.screen, 65536)
        except OSError:  # the other end is closed
            return False
        self.text += data.decode("utf-8", "replace")
        return bool(data)

    def type(self, text):
        os.write(self.screen, text.encode())

    def see(self, pattern, seconds=30):
        """Until the pattern is on the screen: what fits it; the text up to its end is forgotten. None: it did not come."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            found = re.search(pattern, self.text)
            if found:
                self.text = self.text[found.end():]
                return found.group()
            self.read()
        return None

    def end(self, seconds=60):
        """All that it writes until it ends; its status, or the signal that ended it as a negative number."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            more = self.read()
            done, status = os.waitpid(self.child, os.WNOHANG)
            if done and not more:
                os.close(self.screen)
                return os.waitstatus_to_exitcode(status)
            if done:
                while self.read(0.05):
                    pass
                os.close(self.screen)
                return os.waitstatus_to_exitcode(status)
        os.kill(self.child, signal.SIGKILL)
        os.waitpid(self.child, 0)
        os.close(self.screen)
        return -signal.SIGKILL


class Faults:
    """Faults are told one a line; the status of the test is whether there were any."""

    def __init__(self):
        self.count = 0

    def check(self, fine, text):
        if not fine:
            self.count += 1
            print(f"FAIL: {text}")

    def status(self):
        return 1 if self.count else 0
