#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Every way to write: onto a full disk, into a folder that is read-only, two at once; and nothing else is touched.

    outputs_test.py PROGRAM SOURCE_DIR
"""
import os
import resource
import shutil
import subprocess
import sys

from bench import FITTED, Bench, Faults, contents, last, told

PAIR = ["boards/heron-m7.xml", "harnesses/kite-probe.xml"]
KITE = [*PAIR, *FITTED]
SWAP = ["harnesses/wren-a4.xml", "--to", "boards/heron-m7.xml"]
LOOM = ["harnesses/wren-a4.xml"]
NOBODY = {"user": 65534, "group": 65534, "extra_groups": []}
# Words, and how the output's name ends.
WRITERS = [
    (["check", *KITE], ".txt"), (["check", *KITE, "--format", "json"], ".json"), (["check", *LOOM], ".txt"),
    (["repin", *KITE], ".txt"), (["repin", *KITE, "--adapter"], ".txt"), (["place", *PAIR], ".txt"),
    (["parts", *KITE, "--format", "csv"], ".csv"), (["find", PAIR[1], "--in", "boards"], ".txt"),
    (["swap", *SWAP], ".txt"), (["swap", *SWAP, "--back"], ".txt"), (["compare", *LOOM, *LOOM], ".txt"),
    (["causes", *LOOM], ".txt"), (["lint", *PAIR], ".txt"), (["list", "colours"], ".txt"),
    (["explain", "back-feed"], ".txt"),
    (["draw", *KITE], ".svg"), (["draw", *KITE], ".pdf"), (["draw", *KITE], ".png"),
    (["sheet", *KITE], ".pdf"), (["sheet", *KITE], ".html"), (["sheet", *KITE], ".txt"), (["sheet", *KITE], ".md"),
    (["sheet", *SWAP], ".pdf"), (["sheet", *SWAP], ".html"), (["sheet", *PAIR, "--place"], ".pdf"),
    (["labels", *LOOM], ".pdf"), (["labels", *SWAP], ".pdf"),
]
RECORD = ["swap", *SWAP, "-o", os.devnull, "--record"]


def full_disk():
    """For a process about to begin: no file grows beyond 50 bytes."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (50, 50))


def one_file(bench, faults, number, words, suffix):
    about = " ".join(words) + suffix
    folder = bench.folder(f"one {number}")
    out = folder / f"out{suffix}"
    # Without restored signals the limit is an error and not a death.
    tight = {"preexec_fn": full_disk, "restore_signals": False}
    for old in (None, b"old"):
        if old:
            out.write_bytes(old)
        before = contents(folder)
        done = bench.run(*words, "-o", out, **tight)
        faults.same((done.returncode, last(done)),
                    (2, f"plugward: error: cannot write '{out}': File too large"), about)
        faults.same(contents(folder), before, f"{about}: full disk")
        folder.chmod(0o555)
        done = bench.run(*words, "-o", out, **NOBODY)
        faults.same((done.returncode, last(done)),
                    (2, f"plugward: error: cannot write '{out}': Permission denied"), about)
        faults.same(contents(folder), before, f"{about}: read-only")
        folder.chmod(0o755)
    done = bench.run(*words, "-o", out)
    faults.same(list(contents(folder)), [os.fsencode(out.name)], f"{about}: what is in the folder")
    faults.must(out.read_bytes() not in (b"", b"old") and done.returncode in (0, 1), f"{about}: {told(done)}")
    # A device in the place of a file, and standard output, are full too.
    faults.same(last(bench.run(*words, *as_what(words, suffix), "-o", "/dev/full")),
                full_words(words, "/dev/full"), f"{about}: /dev/full")
    with open("/dev/full", "wb") as full:
        done = subprocess.run([bench.program, *words, *as_what(words, suffix)], cwd=bench.place, stdout=full,
                              stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, env=bench.environment, check=False)
    faults.same((done.returncode, last(done)), (2, full_words(words, "")), f"{about}: stdout")


def as_what(words, suffix):
    """Says the kind, where the name of the output does not."""
    kinds = {"draw": ["--picture", suffix[1:]],
             "sheet": ["--as", {".txt": "text", ".md": "markdown"}.get(suffix, suffix[1:])]}
    return kinds.get(words[0], [])


def full_words(words, path):
    if words[0] == "labels":
        return "plugward: error: 'labels' writes a PDF file: give -o FILE.pdf"
    what = f"'{path}'" if path else "standard output"
    return f"plugward: error: cannot write {what}: No space left on device"


def record(bench, faults):
    folder = bench.folder("record")
    out = folder / "a" / "b"
    there = bench.folder("whole record")
    bench.run(*RECORD, there)
    for limit in (50, (there / "loom.xml").stat().st_size - 1):  # the loom is written last
        done = bench.run(*RECORD, out, restore_signals=False,
                         preexec_fn=lambda size=limit: resource.setrlimit(resource.RLIMIT_FSIZE, (size, size)))
        faults.must(done.returncode == 2 and told(done).endswith("File too large\n"), f"record: {told(done)}")
        faults.same(contents(folder), {}, "record, full disk")
    folder.chmod(0o555)
    done = bench.run(*RECORD, out, **NOBODY)
    faults.same((done.returncode, told(done)),
                (2, f"plugward: error: cannot make folder '{out}': Permission denied\n"), "record, read-only")
    folder.chmod(0o755)
    bench.run(*RECORD, out)
    whole = contents(folder)
    faults.must(b"a/b/loom.xml" in whole and len(whole) > 3, f"record: {whole}")
    first = sorted(out.iterdir())[0]
    (out / "loom.xml").unlink(missing_ok=True)
    done = bench.run(*RECORD, out)
    faults.same((done.returncode, contents(folder)), (1, whole), "record, taken up again")
    first.write_bytes(first.read_bytes() + b"<!-- mine -->")
    (out / "loom.xml").unlink(missing_ok=True)
    before = contents(folder)
    done = bench.run(*RECORD, out)
    faults.same((done.returncode, told(done), contents(folder)),
                (2, f"plugward: error: cannot write '{first}': it is there already, with other contents; record into "
                    "an empty folder\n", before), "record over other contents")


def small_disk(bench, faults):
    """A disk of a few pages of its own, where the machine lets us have one."""
    disk = bench.folder("disk")
    script = 'mount -t tmpfs -o size=8k none "$1" || exit 99; cd "$2"; shift 2; "$@" >/dev/null; s=$?; ls -A {}; exit $s'
    counted = 0
    for words in (["draw", *KITE, "-o", disk / "a.svg"], ["sheet", *SWAP, "-o", disk / "a.pdf"], [*RECORD, disk / "r"]):
        done = subprocess.run(["unshare", "--map-root-user", "--mount", "sh", "-c", script.format(f"'{disk}'"), "sh",
                               disk, bench.place, bench.program, *words], capture_output=True, check=False,
                              env=bench.environment)
        if done.returncode not in (0, 1, 2):
            return f"; no disk of its own: {told(done).strip()}"
        counted += 1
        faults.must(done.returncode == 2 and told(done).endswith(": No space left on device\n") and not done.stdout,
                    f"small disk: {words}: {done}")
    return f"; {counted} small disks"


def two_at_once(bench, faults):
    for suffix in (".pdf", ".html", ".md"):
        folder = bench.folder(f"two{suffix}")
        out = folder / f"out{suffix}"
        commands = [["sheet", *KITE, "--machine", name, "-o", out] for name in ("one", "the other, of which more is told")]
        wholes = []
        for command in commands:
            bench.run(*command)
            wholes.append(contents(folder))
        faults.must(wholes[0] != wholes[1], "the two are alike")
        for turn in range(12):
            running = [bench.start(*command) for command in (commands if turn % 2 else reversed(commands))]
            faults.same([one.wait() for one in running], [0, 0], f"two at once {suffix}")
            faults.must(contents(folder) in wholes, f"two at once {suffix}: neither")
    # Records of moves to two boards: one is whole, the other is refused and leaves nothing of its own.
    shutil.copy(bench.place / "boards/heron-m7.xml", bench.place / "boards/other.xml")
    wholes, commands = [], []
    for board in ("heron-m7", "other"):
        words = ["swap", LOOM[0], "--to", f"boards/{board}.xml", "-o", os.devnull, "--record"]
        folder = bench.folder(f"moved {board}")
        bench.run(*words, folder / "r")
        wholes.append(contents(folder))
        commands.append(words)
    faults.must(wholes[0] != wholes[1], "the two records are alike")
    for turn in range(12):
        folder = bench.folder(f"records {turn}")
        pair = commands if turn % 3 else [commands[0], commands[0]]
        running = [bench.start(*words, folder / "r") for words in pair]
        ends = sorted(one.wait() for one in running)
        faults.same(ends, [1, 2] if turn % 3 else [1, 1], "two records at once")
        faults.must(contents(folder) in wholes, "two records at once: neither is whole")
    (bench.place / "boards/other.xml").unlink(missing_ok=True)


def refused(bench, faults):
    """What is refused touches nothing."""
    folder = bench.folder("refused")
    out = folder / "out.pdf"
    (folder / "faulty.xml").write_text("<board id='b'><header/></board>", encoding="utf-8")
    before = contents(folder)
    for words in (["draw", PAIR[0], folder / "faulty.xml", "-o", out], ["check", *PAIR, "--at", "no=J1", "-o", out],
                  ["sheet", *KITE, "--date", "today", "-o", out], ["sheet", *KITE, "-o", folder / "out.doc"],
                  ["swap", *SWAP, "--at", "kite/control=J99", "--record", folder / "r"],
                  ["labels", PAIR[1], "-o", out], ["check", "nowhere.xml", "-o", out]):
        done = bench.run(*words)
        faults.must(done.returncode in (1, 2) and told(done), f"refused: {words}: {done}")
        faults.same(contents(folder), before, f"refused: {words}")


def main():
    faults = Faults()
    with Bench(sys.argv[1], sys.argv[2]) as bench:
        if os.geteuid() != 0:
            NOBODY.clear()  # a plain user is refused as he is
        untouched = contents(bench.place)
        for number, (words, suffix) in enumerate(WRITERS):
            one_file(bench, faults, number, words, suffix)
        record(bench, faults)
        summary = small_disk(bench, faults)
        refused(bench, faults)
        two_at_once(bench, faults)
        faults.same(contents(bench.place), untouched, "the inputs")
    faults.end(f"; {len(WRITERS)} writers{summary}")


if __name__ == "__main__":
    main()
