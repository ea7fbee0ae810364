#!/usr/bin/env python3
"""Every page of the demo documents as a picture at 100 dpi, beside the one a person has looked at.

    check_pictures.py [--approve] TOOL_DIR PDF...

TOOL_DIR holds compare_pictures. The goldens lie beside this file as <document>-<page>.png. With
--approve they are replaced by what is drawn now: look at every page first.
"""

import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import Report, refuse_approval_in_ci  # noqa: E402

HERE = Path(__file__).resolve().parent


def pages_as_pictures(pdf, directory):
    """{page number: path} of the pages of `pdf`, drawn by poppler at 100 dpi."""
    subprocess.run(["pdftoppm", "-r", "100", "-png", pdf, directory / "page"], check=True)
    return {int(re.search(r"(\d+)$", p.stem).group(1)): p for p in directory.glob("page-*.png")}


def golden(pdf, number):
    return HERE / f"{pdf.stem}-{number:02}.png"


def compare(tool, one, other):
    """Faults of `other` beside the golden `one`."""
    result = subprocess.run([tool, one, other], capture_output=True, text=True)
    return [] if result.returncode == 0 else [(result.stdout + result.stderr).strip()]


def blot(source, target, share):
    """A copy of page 1 with a square of `share` of its pixels blotted beyond the levels allowed."""
    raw = subprocess.run(["pdftoppm", "-r", "100", "-f", "1", "-l", "1", source],
                         check=True, capture_output=True).stdout  # fmt: skip
    header = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", raw)
    width, height = int(header.group(1)), int(header.group(2))
    pixels = bytearray(raw[header.end():])
    side = round((width * height * share) ** 0.5)
    for y in range(side):
        start = ((height // 2 + y) * width + width // 3) * 3
        row = pixels[start : start + side * 3]
        pixels[start : start + side * 3] = bytes(255 - v if abs(255 - 2 * v) > 24 else 0 for v in row)
    write_png(target, width, height, bytes(pixels))


def write_png(path, width, height, rgb):
    """A PNG file of 8-bit RGB (PNG specification, third edition, §5)."""
    import struct
    import zlib

    def chunk(kind, data):
        return (struct.pack(">I", len(data)) + kind + data
                + struct.pack(">I", zlib.crc32(kind + data)))  # fmt: skip

    rows = b"".join(b"\0" + rgb[y * width * 3 : (y + 1) * width * 3] for y in range(height))
    path.write_bytes(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
        + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")
    )  # fmt: skip


def approve(pdf, drawn):
    for old in HERE.glob(f"{pdf.stem}-[0-9][0-9].png"):
        old.unlink()
    for number, path in sorted(drawn.items()):
        shutil.copyfile(path, golden(pdf, number))
    print(f"approved {len(drawn)} pages of {pdf.name}")


def check(report, tool, pdf, drawn):
    for number, path in sorted(drawn.items()):
        expected = golden(pdf, number)
        faults = compare(tool, expected, path) if expected.exists() else ["no golden is approved"]
        report.check(f"{pdf.stem}, page {number} looks as approved", faults)
    known = {p.name for p in HERE.glob(f"{pdf.stem}-[0-9][0-9].png")}
    missing = known - {golden(pdf, number).name for number in drawn}
    report.check(f"{pdf.stem} has every approved page", [f"{m} is not drawn" for m in sorted(missing)])


def main():
    arguments = sys.argv[1:]
    approving = arguments[:1] == ["--approve"]
    if approving:
        refuse_approval_in_ci()
        arguments = arguments[1:]
    tool = Path(arguments[0]) / "compare_pictures"
    report = Report()
    for pdf in map(Path, arguments[1:]):
        with tempfile.TemporaryDirectory() as directory:
            drawn = pages_as_pictures(pdf, Path(directory))
            if approving:
                approve(pdf, drawn)
                continue
            check(report, tool, pdf, drawn)
            blotted = Path(directory) / "blotted.png"
            blot(pdf, blotted, 0.0015)
            report.expect(f"a blot of 0.15 % on page 1 of {pdf.stem} is seen",
                          compare(tool, drawn[min(drawn)], blotted))
            blot(pdf, blotted, 0.0005)
            report.check(f"a blot of 0.05 % on page 1 of {pdf.stem} passes",
                         compare(tool, drawn[min(drawn)], blotted))
    if not approving:
        report.leave()


if __name__ == "__main__":
    main()
