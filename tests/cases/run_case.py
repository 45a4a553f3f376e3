#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Runs the command of one case and compares what it gives with what is kept.

    run_case.py CASE_FOLDER PROGRAM SOURCE_DIR

CASE_FOLDER/cmd: a first line '# purpose', then shell lines that call 'plugward'. They run in SOURCE_DIR, so that
paths in messages are relative; $OUT is an empty folder for outputs, shown as OUT in the results; $CASE is the
case's own folder, relative to SOURCE_DIR. Compared: expected.stdout, expected.stderr, expected.status.
PLUGWARD_REWRITE=1 in the environment writes them anew instead.
"""
import difflib
import os
import pathlib
import subprocess
import sys
import tempfile

KEPT = ("stdout", "stderr", "status")
QUIET = ("NO_COLOR", "CLICOLOR_FORCE", "FORCE_COLOR", "TERM", "PLUGWARD_PATH")


def run(case, program, source):
    command = (case / "cmd").read_text(encoding="utf-8")
    if not command.startswith("# "):
        sys.exit(f"{case}/cmd: the first line must be '# purpose'")
    with tempfile.TemporaryDirectory() as out:
        os.symlink(program, pathlib.Path(out) / "plugward")
        environment = {k: v for k, v in os.environ.items() if k not in QUIET}
        work = pathlib.Path(out) / "out"
        work.mkdir()
        environment.update(PATH=f"{out}:{environment['PATH']}", LC_ALL="C", OUT=str(work),
                           XDG_DATA_HOME=f"{out}/none", XDG_DATA_DIRS=f"{out}/none",
                           CASE=case.relative_to(source).as_posix())
        done = subprocess.run(["bash", "-c", command], cwd=source, env=environment, capture_output=True,
                              stdin=subprocess.DEVNULL, timeout=120, check=False)

    def shown(data):
        return data.decode("utf-8", errors="backslashreplace").replace(str(work), "OUT")

    return {"stdout": shown(done.stdout), "stderr": shown(done.stderr), "status": f"{done.returncode}\n"}


def main():
    case, program, source = (pathlib.Path(argument).resolve() for argument in sys.argv[1:4])
    got = run(case, program, source)
    rewrite = os.environ.get("PLUGWARD_REWRITE") == "1"
    same = True
    for kind in KEPT:
        path = case / f"expected.{kind}"
        if rewrite:
            path.write_text(got[kind], encoding="utf-8")
            continue
        kept = path.read_text(encoding="utf-8") if path.exists() else ""
        if got[kind] != kept or not path.exists():
            same = False
            sys.stdout.writelines(difflib.unified_diff(kept.splitlines(True), got[kind].splitlines(True),
                                                       f"{case.name}/expected.{kind}", "what came"))
            print()
    if not same:
        print("PLUGWARD_REWRITE=1 takes what came as expected; read it first")
    return 0 if same else 1


if __name__ == "__main__":
    sys.exit(main())
