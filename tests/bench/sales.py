#!/usr/bin/env python3
"""Times `winchbook value` on 200,000 invented sales beside a bare csv reader.

    sales.py [--sales N] [--pairs N] [WINCHBOOK]

Both read the same file, written for the run and thrown away after it: N sales of forty models, of
which one in forty is the heirloom's, so that the regression has thousands of rows. The bare reader
takes every row apart and counts those of the heirloom; only winchbook checks the rows it wants,
weighs them, fits them and tries the fit on the sales themselves. Whole processes, warm disk cache,
taken in turn; the figure is the median of the ratios of the pairs. Never part of the tests: a time
is not a property of the program alone.
"""

import argparse
import csv
import random
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT  # noqa: E402

RECORD = ROOT / "demo" / "reels" / "skerry-40"
HEADER = (
    "date,price,currency,basis,fees,venue,maker,model,kind,surface,structure,working,"
    "completeness,originality,box,notes,source"
).split(",")
BARE = """
import csv, sys
with open(sys.argv[1], newline="", encoding="utf-8") as file:
    rows = csv.DictReader(file)
    print(sum(row["model"] == "Skerry No. 40" for row in rows))
"""


def write_sales(file, count):
    """Prices that fall with each step and scatter by a tenth; the same file on every run."""
    draw = random.Random(40)
    surface = ["over-three-quarters", "over-half", "over-a-quarter", "a-quarter-or-less"]
    structure = ["sound", "marked", "weakened"]
    working = ["as-made", "with-care", "in-part", "not"]
    completeness = ["whole", "nearly", "part"]
    writer = csv.writer(file)
    writer.writerow(HEADER)
    for i in range(count):
        state = [draw.randrange(len(of)) for of in (surface, structure, working, completeness)]
        originality = draw.randrange(60, 101, 5)
        box = draw.random() < 0.2
        price = 180 * 0.9 ** sum(state) * (1.15 if box else 1) * draw.lognormvariate(0, 0.1)
        day = f"{draw.randrange(2015, 2026)}-{draw.randrange(1, 13):02}-{draw.randrange(1, 29):02}"
        writer.writerow(
            [day, f"{price:.2f}", "GBP", "premium", "", "auction", "Harroway Reel Works",
             f"Skerry No. {40 + i % 40}", "multiplier", surface[state[0]], structure[state[1]],
             working[state[2]], completeness[state[3]], originality, "yes" if box else "no", "",
             f"printed list, lot {i}"]
        )  # fmt: skip


def seconds(command):
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("--sales", type=int, default=200_000)
    parser.add_argument("--pairs", type=int, default=5)
    parser.add_argument("winchbook", nargs="?", default=str(ROOT / "build" / "winchbook"))
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as directory:
        path = Path(directory) / "sales.csv"
        with path.open("w", newline="", encoding="utf-8") as file:
            write_sales(file, asked.sales)
        ours = [asked.winchbook, "value", str(RECORD), "--sales", str(path), "--as-of", "2026-06-19"]
        bare = [sys.executable, "-c", BARE, str(path)]
        seconds(ours), seconds(bare)
        pairs = [(seconds(ours), seconds(bare)) for _ in range(asked.pairs)]
        size = path.stat().st_size / 1e6
    ratio = statistics.median(one / other for one, other in pairs)
    taken = statistics.median(one for one, _ in pairs)
    print(f"{asked.sales} sales, {size:.1f} MB: winchbook value {taken:.2f} s, "
          f"{ratio:.2f} times a bare csv reader")  # fmt: skip


if __name__ == "__main__":
    main()
