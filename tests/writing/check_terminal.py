#!/usr/bin/env python3
"""Commands that ask: only at a terminal, only for what is missing, and never half a change.

    check_terminal.py WINCHBOOK

Each command runs at a terminal of its own (a pseudo-terminal). What is typed is answered; Ctrl-D and
Ctrl-C leave the record as it was, byte for byte; without a terminal on both sides nothing is asked.
"""

import os
import pty
import select
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

CTRL_C, CTRL_D = b"\x03", b"\x04"
PATIENCE_SECONDS = 20


class AtTerminal:
    """A command at a pseudo-terminal: what it said, and how it ended."""

    def __init__(self, command, typed):
        """`typed`: pairs of what is waited for and the bytes typed then."""
        self.said = ""
        pid, terminal = pty.fork()
        if pid == 0:
            os.execv(command[0], command)
        for waited, keys in typed:
            self.read_until(terminal, waited)
            os.write(terminal, keys)
        self.read_until(terminal, None)
        os.close(terminal)
        status = os.waitpid(pid, 0)[1]
        self.code = os.waitstatus_to_exitcode(status)

    def read_until(self, terminal, waited):
        """Reads to the words, or to the end; what was asked before must not answer for later."""
        begin, deadline = len(self.said), time.monotonic() + PATIENCE_SECONDS
        while time.monotonic() < deadline:
            if waited is not None and waited in self.said[begin:]:
                return
            if not select.select([terminal], [], [], 0.2)[0]:
                continue
            try:
                got = os.read(terminal, 4096)
            except OSError:
                return
            if not got:
                return
            self.said += got.decode("utf-8", "replace")


class Bench:
    def __init__(self, winchbook, folder):
        self.winchbook, self.folder = winchbook, folder
        shutil.copytree(ROOT / "demo/reels/skerry-40", folder)
        self.run("intake", str(folder), "--again", "--owner", "nell", "--must-stay", "no new holes",
                 "--on", "2028-05-02", "--today", "2028-05-02")  # fmt: skip

    def run(self, *words, **options):
        return subprocess.run([self.winchbook, *words], capture_output=True, text=True, check=False,
                              **options)  # fmt: skip

    def ask(self, words, typed):
        before = self.bytes()
        done = AtTerminal([self.winchbook, *words], typed)
        return done, self.bytes() != before

    def bytes(self):
        return (self.folder / "record.xml").read_bytes()


def check_questions(report, bench):
    reel = str(bench.folder)
    work = ["work", reel, "--on", "2028-05-03", "--today", "2028-05-03"]
    done, changed = bench.ask(work, [("What was done?", b"Oiled the gears.\n")])
    report.expect("what is missing is asked for, and the answer is entered",
                  done.code == 0 and changed and b"Oiled the gears." in bench.bytes(), done.said)
    done, changed = bench.ask([*work, "Wiped it."], [])
    report.expect("nothing is asked when nothing is missing",
                  done.code == 0 and changed and "?" not in done.said, done.said)
    done, changed = bench.ask(work, [("What was done?", CTRL_D)])
    report.expect("Ctrl-D at a question leaves the record as it was",
                  done.code == 2 and not changed, f"{done.code} {done.said}")
    done, changed = bench.ask(work, [("What was done?", CTRL_C)])
    report.expect("Ctrl-C at a question leaves the record as it was",
                  done.code < 0 and not changed, f"{done.code} {done.said}")
    before = bench.bytes()
    piped = bench.run(*work, stdin=subprocess.DEVNULL)
    report.expect("without a terminal the option is named as missing",
                  piped.returncode == 2 and "WHAT is missing" in piped.stderr
                  and bench.bytes() == before, piped.stderr)  # fmt: skip
    main, other = pty.openpty()
    with os.fdopen(other, "rb", buffering=0) as terminal:
        half = bench.run(*work, stdin=terminal)
    os.close(main)
    report.expect("with its output in a pipe it does not ask either",
                  half.returncode == 2 and "WHAT is missing" in half.stderr, half.stderr)


def check_warnings(report, bench):
    reel = str(bench.folder)
    bored = ["work", reel, "Bored out the fourth hole.", "--on", "2028-05-03", "--today", "2028-05-03"]
    bench.run("agree", reel, "--id", "ag-bush", "--how", "by letter", "--may-be-done",
              "Bush the fourth hole.", "--on", "2028-05-03", "--today", "2028-05-03")  # fmt: skip
    done, changed = bench.ask(bored, [("Which agreement allows it", b"\n")])
    report.expect("a limit asks for the agreement, and without one nothing is written",
                  done.code == 1 and not changed and "no new holes" in done.said, done.said)
    done, changed = bench.ask(bored, [("Which agreement allows it", b"ag-bush\n")])
    report.expect("with the agreement it is written", done.code == 0 and changed, done.said)
    lift = ["strip", reel, "Lift the bridge.", "--off", "bridge", "--on", "2028-05-03", "--today", "2028-05-03"]
    done, changed = bench.ask(lift, [("Ctrl-D to leave it", CTRL_D)])
    report.expect("a spring is warned of before the step, which can still be left",
                  done.code == 0 and not changed and "flies when" in done.said, done.said)
    done, changed = bench.ask(lift, [("Ctrl-D to leave it", b"\n")])
    report.expect("Enter goes on, and the step is written", done.code == 0 and changed, done.said)


def main():
    winchbook = str(Path(sys.argv[1]).resolve())
    report = Report()
    with tempfile.TemporaryDirectory() as parent:
        bench = Bench(winchbook, Path(parent) / "reel")
        check_questions(report, bench)
        check_warnings(report, bench)
    report.leave()


if __name__ == "__main__":
    main()
