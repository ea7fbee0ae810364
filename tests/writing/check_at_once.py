#!/usr/bin/env python3
"""Editions issued for good at the same moment: each has a number of its own, is kept and is listed.

    check_at_once.py WINCHBOOK
"""

import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

AT_ONCE = 5


def main():
    winchbook = str(Path(sys.argv[1]).resolve())
    report = Report()
    with tempfile.TemporaryDirectory() as parent:
        reel = Path(parent) / "reel"
        shutil.copytree(ROOT / "demo/reels/dunlin-2", reel)
        running = [
            subprocess.Popen([winchbook, "issue", str(reel), "--final", "--date", "2026-06-12", "-o",
                              str(Path(parent) / f"{number}.pdf")],
                             stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
            for number in range(AT_ONCE)
        ]  # fmt: skip
        ended = [(one.communicate(), one.returncode) for one in running]
        done = sum(code == 0 for _, code in ended)
        told = [said[1] for said, code in ended if code not in (0, 3)]
        report.check("each is issued, or told that somebody else is writing", told)
        root = ET.parse(reel / "editions.xml").getroot()
        listed = [int(one.text) for one in root.iter("{urn:winchbook:editions:1}number")]
        report.expect(f"{done} were issued, and {done} numbers are listed",
                      done > 1 and listed == list(range(1, done + 1)), str(listed))
        kept = sorted(path.name for path in (reel / "issued").glob("*.pdf"))
        report.expect("each listed edition is kept",
                      kept == [f"keepsake-{number}.pdf" for number in listed], str(kept))
    report.leave()


if __name__ == "__main__":
    main()
