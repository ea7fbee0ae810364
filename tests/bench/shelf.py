#!/usr/bin/env python3
"""Times `winchbook shelf` over many records, beside a bare read of the same files.

    shelf.py [--records N] [--pairs N] [WINCHBOOK]

Writes N records (5,000 when left out), the demo's four by turns with other names, in folders by year
and month, and asks for a fitted part. The yardstick is `cat` of every record into nothing, in the same
run; the figure is the median of the ratios of the pairs, taken in turn. Never part of the tests: a
time is not a property of the program alone.
"""

import argparse
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT  # noqa: E402


def write_records(shelf, number):
    reels = sorted((ROOT / "demo/reels").iterdir())
    texts = [(reel / "record.xml").read_text(encoding="utf-8") for reel in reels]
    size = 0
    for i in range(number):
        folder = shelf / f"{1990 + i % 37}" / f"{i % 12 + 1:02}" / f"reel-{i:05}"
        folder.mkdir(parents=True)
        text = texts[i % len(texts)].replace("Merrow", f"Merrow{i}", 1)
        (folder / "record.xml").write_text(text, encoding="utf-8")
        size += len(text.encode())
    return size


def seconds(command):
    started = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.perf_counter() - started


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--records", type=int, default=5000)
    parser.add_argument("--pairs", type=int, default=5)
    parser.add_argument("winchbook", nargs="?", default=ROOT / "build/winchbook")
    given = parser.parse_args()
    winchbook = str(Path(given.winchbook).resolve())
    with tempfile.TemporaryDirectory() as parent:
        shelf = Path(parent)
        size = write_records(shelf, given.records)
        bare = ["find", parent, "-name", "record.xml", "-exec", "cat", "{}", "+"]
        ask = [winchbook, "shelf", parent, "--fitted", "drag washer"]
        seconds(bare)
        pairs = [(seconds(ask), seconds(bare)) for _ in range(given.pairs)]
        found = subprocess.run(ask, capture_output=True, text=True, check=True).stdout
    print(found.splitlines()[-1] + f", {size / 1e6:.0f} MB")
    print(f"shelf {statistics.median(one for one, _ in pairs):.2f} s, "
          f"bare read {statistics.median(other for _, other in pairs):.2f} s, "
          f"ratio {statistics.median(one / other for one, other in pairs):.1f}")  # fmt: skip


if __name__ == "__main__":
    main()
