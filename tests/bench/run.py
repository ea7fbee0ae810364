#!/usr/bin/env python3
"""Times `winchbook issue` on the heirloom, cold, beside a bare libharu program.

    run.py [--pairs N] [WINCHBOOK [BARE_LIBHARU]]      build with: cmake --build build --target
                                                       winchbook bare_libharu

Both write the same text and the same photographs at the same places; only winchbook reads and checks
the record, assesses, lays out, shapes, tags, seals and attaches. The places are read back from the
document winchbook wrote. winchbook also waits until the disk has the file, which the clock shows and
the processor does not. Whole processes, warm disk cache, taken in turn; the figure is the median of
the ratios of the pairs, so that a busy machine slows both alike. Never part of the tests: a time is
not a property of the program alone.
"""

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT  # noqa: E402
from tagged_pdf import TaggedPdf  # noqa: E402

RECORD = ROOT / "demo" / "reels" / "skerry-40"


def font_file(name):
    """The file of a font by its PostScript name, subset tag removed, as fontconfig knows it."""
    name = name.split("+")[-1]
    listed = subprocess.run(["fc-list", f":postscriptname={name}", "file"], check=True,
                            capture_output=True, text=True).stdout  # fmt: skip
    files = sorted(line.rstrip(": ") for line in listed.splitlines() if ".ttf" in line)
    if not files:
        sys.exit(f"no TrueType file for {name}")
    return files[0]


def write_plan(pdf, directory):
    """The plan of bare_libharu for a finished document; its pictures are written beside it."""
    items, fonts, pictures = [], {}, {}
    for page in pdf.pages:
        items.append(["page", page.width, page.height])
        for run in page.runs:
            if run.text.strip():
                fonts[run.font] = font_file(run.font)
                colour = [f"{value:.4f}" for value in run.colour]
                items.append(["text", run.font, f"{run.size:.3f}", f"{run.x:.3f}", f"{run.y:.3f}",
                              *colour, run.text.replace("\t", " ")])  # fmt: skip
        for image in page.images:
            if image.reference not in pictures:
                pictures[image.reference] = write_picture(pdf, image.reference, directory)
            items.append(["image", pictures[image.reference], f"{image.x:.3f}", f"{image.y:.3f}",
                          f"{image.width:.3f}", f"{image.height:.3f}"])  # fmt: skip
    lines = [["font", name, file] for name, file in sorted(fonts.items())] + items
    plan = directory / "plan.tsv"
    plan.write_text("".join("\t".join(map(str, line)) + "\n" for line in lines), encoding="utf-8")
    texts = sum(line[0] == "text" for line in items)
    print(f"{len(pdf.pages)} pages, {texts} runs of text, {len(pictures)} photographs")
    return plan


def write_picture(pdf, reference, directory):
    file = directory / f"picture-{reference.split()[0]}.jpg"
    number = reference.split()[0]
    with file.open("wb") as out:
        subprocess.run(["qpdf", f"--show-object={number}", "--raw-stream-data", pdf.path],
                       check=True, stdout=out)  # fmt: skip
    return file


QUIET = [(os.POSIX_SPAWN_OPEN, fd, os.devnull, os.O_WRONLY, 0) for fd in (1, 2)]


def seconds(command):
    """(by the clock, of the processor) that a whole process takes."""
    started = time.perf_counter()
    process = os.posix_spawn(command[0], command, os.environ, file_actions=QUIET)
    _, status, used = os.wait4(process, 0)
    taken = time.perf_counter() - started
    if status != 0:
        sys.exit(f"failed: {' '.join(command)}")
    return taken, used.ru_utime + used.ru_stime


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--pairs", type=int, default=41)
    parser.add_argument("winchbook", nargs="?", default=str(ROOT / "build" / "winchbook"))
    parser.add_argument("bare", nargs="?", default=str(ROOT / "build" / "tests" / "bare_libharu"))
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        directory = Path(name)
        finished, bare = str(directory / "keepsake.pdf"), str(directory / "bare.pdf")
        ours = [options.winchbook, "issue", str(RECORD), "--document", "keepsake",
                "--date", "2026-06-19", "-o", finished]  # fmt: skip
        seconds(ours)
        theirs = [options.bare, str(write_plan(TaggedPdf(finished), directory)), bare]
        seconds(theirs)
        pairs = []
        for turn in range(options.pairs):
            one, other = (ours, theirs) if turn % 2 else (theirs, ours)
            taken = {id(one): seconds(one), id(other): seconds(other)}
            pairs.append((taken[id(ours)], taken[id(theirs)]))
        for place, what in enumerate(("by the clock", "of the processor")):
            print(what)
            for label, times in zip(("winchbook issue", "bare libharu"), zip(*pairs)):
                low, middle, high = statistics.quantiles([t[place] for t in times], n=4)
                print(f"  {label:16} {middle * 1e3:7.1f} ms  (half within {low * 1e3:.1f} to "
                      f"{high * 1e3:.1f})")
            ratio = statistics.median(one[place] / other[place] for one, other in pairs)
            print(f"  {'ratio':16} {ratio:7.2f}      (median of {len(pairs)} pairs; "
                  f"below 1 winchbook is faster)")
        sizes = [Path(file).stat().st_size for file in (finished, bare)]
        print(f"{'bytes':18} {sizes[0]} and {sizes[1]}")


if __name__ == "__main__":
    main()
