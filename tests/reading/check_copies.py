#!/usr/bin/env python3
"""What is left of the demo documents on a copier: each page in black and white only, read by a machine.

    check_copies.py DIRECTORY CACHE

Each page of the documents in DIRECTORY is drawn at 300 dpi, every pixel darker than half becomes black and
every other white, and tesseract reads it. It must find 98 % of the words that pdftotext gives for that page.
A word is three letters or more in a row, whatever their case; digits, signs and shorter words are left out,
and so are letters that the reader has no model for. Readings are kept in CACHE by the digest of the picture and
of the reader's version.
"""

import hashlib
import os
import re
import subprocess
import sys
import tempfile
import threading
import unicodedata
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import Report  # noqa: E402

LEAST = 0.98  # of a document's words
LEAST_OF_PAGE = 0.95  # captions between pictures cost the reader a word or two that a person reads
# On a page of so few words one may be missed.
FEW = 50
DARK_OR_LIGHT = bytes([0] * 128 + [255] * 128)
# letters only: the groups of a seal's code are compared, not read
LATIN = re.compile(r"(?<![0-9a-z\u00e0-\u00ff])[a-z\u00e0-\u00ff]{3,}(?![0-9a-z\u00e0-\u00ff])")


def words_of(text):
    """How often each word stands in it. Ligatures and full-width forms are letters (Unicode, NFKC)."""
    return Counter(LATIN.findall(unicodedata.normalize("NFKC", text).casefold()))


def printed_words(pdf):
    """The words of each page by pdftotext."""
    told = subprocess.run(["pdftotext", pdf, "-"], check=True, capture_output=True).stdout.decode()
    return [words_of(page) for page in told.split("\f")[:-1]]


def copy_of(pdf, number):
    """A page as a copier would have it: a PGM picture of 0 and 255 only."""
    drawn = subprocess.run(["pdftoppm", "-gray", "-r", "300", "-f", str(number), "-l", str(number), pdf],
                           check=True, capture_output=True).stdout  # fmt: skip
    head = re.match(rb"P5\s+\d+\s+\d+\s+255\s", drawn).end()
    return drawn[:head] + drawn[head:].translate(DARK_OR_LIGHT)


def reader_version():
    return subprocess.run(["tesseract", "--version"], check=True, capture_output=True).stdout


def read_copy(copy, cache, version):
    """What tesseract reads on the picture."""
    kept = cache / f"{hashlib.sha256(version + copy).hexdigest()[:32]}.txt"
    if not kept.exists():
        with tempfile.NamedTemporaryFile(suffix=".pgm") as picture:
            picture.write(copy)
            picture.flush()
            # 11: as much text as there is, in no order: columns and margins are all the same to it
            read = subprocess.run(["tesseract", picture.name, "-", "--psm", "11", "--dpi", "300", "-l", "eng"],
                                  check=True, capture_output=True,
                                  env={**os.environ, "OMP_THREAD_LIMIT": "1"}).stdout  # fmt: skip
        # whole or not at all: several runs may share the folder
        aside = kept.with_suffix(f".{os.getpid()}-{threading.get_ident()}")
        aside.write_bytes(read)
        aside.replace(kept)
    return kept.read_text(encoding="utf-8", errors="replace")


def copy_faults(printed, missed, least=LEAST):
    """Nothing, or which words are missed when they are too many."""
    total, lost = printed.total(), missed.total()
    if lost <= (1 if total < FEW else (1 - least) * total):
        return []
    return [f"{total - lost} of {total} words are read; missed: {', '.join(sorted(missed))[:300]}"]


def main():
    directory, cache = Path(sys.argv[1]), Path(sys.argv[2])
    cache.mkdir(parents=True, exist_ok=True)
    report = Report()
    lines = words_of("line " * 100)
    report.check("words are words in capitals, too", lines - words_of("LINE " * 100))
    report.check("two words of a hundred may be missed", copy_faults(lines, lines - words_of("line " * 98)))
    report.expect("a document that lost three words of a hundred is seen",
                  copy_faults(lines, lines - words_of("line " * 97)))
    jobs = [(pdf, number, printed) for pdf in sorted(directory.glob("*.pdf"))
            for number, printed in enumerate(printed_words(pdf), 1)]  # fmt: skip
    version = reader_version()
    with ThreadPoolExecutor(2) as pool:
        found = pool.map(lambda job: read_copy(copy_of(job[0], job[1]), cache, version), jobs)
        of_document, missed_of = {}, {}
        for (pdf, number, printed), read in zip(jobs, found):
            missed = printed - words_of(read)
            of_document[pdf] = of_document.get(pdf, Counter()) + printed
            missed_of[pdf] = missed_of.get(pdf, Counter()) + missed
            report.check(f"{pdf.stem}, page {number} can be read on a copy",
                         copy_faults(printed, missed, LEAST_OF_PAGE))
    for pdf, printed in of_document.items():
        report.check(f"{pdf.stem}: 98 words in a hundred are read on a copy",
                     copy_faults(printed, missed_of[pdf]))
    report.expect("there are pages", jobs)
    report.leave()


if __name__ == "__main__":
    main()
