#!/usr/bin/env python3
"""Kills commands that write, at random moments, and looks that nothing was lost.

    kill_writers.py WINCHBOOK [ROUNDS]

Four commands at a time enter work into one record; after a random while they are killed as by a
power cut (SIGKILL). After every round the record must be one that `check` accepts, every command
that had said it was done must be in it, and each of the others is in it or not, whole. At the end
`undo` still works. The moments come from a fixed seed; what the machine makes of them differs.
"""

import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

AT_ONCE = 4
LONGEST_SECONDS = 0.12


def open_record(folder):
    """A copy of the small record whose reel is still at the bench."""
    folder.mkdir()
    text = (ROOT / "tests/recordfile/records/small.xml").read_text(encoding="utf-8")
    begin, end = text.index("      <hand-back>"), text.index("</visit>")
    (folder / "record.xml").write_text(text[:begin] + "    " + text[end:], encoding="utf-8")


def enter(winchbook, folder, name):
    return subprocess.Popen(
        [winchbook, "work", folder, f"Work {name}.", "--on", "2026-06-01", "--today", "2026-06-01"],
        stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip


def in_order(winchbook, folder):
    """What is wrong with the record; the small record's photographs are not here."""
    said = subprocess.run([winchbook, "tray", folder], capture_output=True, text=True, check=False)
    return said.stderr if said.returncode else ""


def main():
    winchbook = str(Path(sys.argv[1]).resolve())
    rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 25
    chance = random.Random(1948)
    report = Report()
    wrong, lost, killed, done = [], [], 0, []
    with tempfile.TemporaryDirectory() as parent:
        folder = Path(parent) / "reel"
        open_record(folder)
        for number in range(rounds):
            names = [f"{number}.{i}" for i in range(AT_ONCE)]
            writers = [enter(winchbook, str(folder), name) for name in names]
            time.sleep(chance.random() * LONGEST_SECONDS)
            for name, writer in zip(names, writers):
                if chance.random() < 0.75:
                    writer.send_signal(signal.SIGKILL)
                code = writer.wait()
                killed += code == -signal.SIGKILL
                if code == 0:
                    done.append(name)
            text = (folder / "record.xml").read_text(encoding="utf-8")
            if fault := in_order(winchbook, str(folder)):
                wrong.append(f"round {number}: {fault}")
            lost += [f"Work {name}" for name in done if f"<what>Work {name}.</what>" not in text]
        undone = subprocess.run([winchbook, "undo", folder], capture_output=True, check=False)
        litter = [p.name for p in folder.iterdir() if p.name.startswith(".record.xml.")]
        shutil.rmtree(folder)
    report.check(f"the record is in order after each of {rounds} rounds", wrong)
    report.check(f"none of {len(done)} entries that were told done is lost", lost)
    report.expect(f"{killed} commands were killed and {len(done)} came through", killed and done)
    report.expect("undo works after all that", undone.returncode == 0, undone.stderr.decode())
    report.expect("no half-written file is left lying", not litter, str(litter))
    report.leave()


if __name__ == "__main__":
    main()
