#!/usr/bin/env python3
"""The hard cases, each as every document on A4 and US Letter: laid out, written and looked over.

    check_hard_cases.py [--approve] PROGRAM DIRECTORY [CASE...]

The reels and their documents are made below DIRECTORY. What must hold of any page is checked on the
page dump and on the file (see pages.py); besides, every page must be as a person has approved it: golden/
holds a line for each page with the digest of what is drawn (whole dumps would be megabytes). The dump of a
page that changed is kept beside its document, and --approve takes the pages as they are: look at them first.
"""

import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))
sys.path.insert(0, str(HERE.parent / "support"))
sys.path.insert(0, str(HERE.parent / "reading"))
from cases import CASES  # noqa: E402
from pages import (covered_faults, lonely_faults, meeting_faults, outside_faults, picture_faults,  # noqa: E402
                   read_pages, read_words, table_faults)  # fmt: skip
from report import ROOT, Report, refuse_approval_in_ci  # noqa: E402
from sentences import missing_sentences, prose_of  # noqa: E402

PAPERS = ["a4", "letter"]
DOCUMENTS = {"keepsake": [], "collector-statement": []}
# Most pages a small job may take: two, three when it holds the most it may, or a very long name.
MOST_PAGES = {
    "small-job": 2, "small-job-bare": 2, "small-job-without-picture": 2, "small-job-full": 3,
    "small-job-long-name": 3, "four-hundred-original": 7,
}  # fmt: skip
# Letter is 50 points lower than A4: with a caution beside its care a small job takes one more there.
MORE_ON_LETTER = {"small-job", "small-job-without-picture", "small-job-full"}
# What a keepsake of these says in one sentence.
SENTENCES = {
    "no-marks": ["The years are attributed, on the grounds below."],
    "four-hundred-original": ["Each of the 400 is original and still in its place"],
    "four-hundred-parts": ["more, each original and still in its place."],
    "forty-marks": ["PATENT”"],
}
# A word longer than a page stands on several; sentences are looked for on two.
ENDLESS = {"one-long-paragraph"}


class Issue:
    """One document of one case on one paper."""

    def __init__(self, program, directory, case, document, paper):
        self.name = f"{case}, {document}, {paper}"
        self.case, self.document, self.paper = case, document, paper
        self.reel = directory / case
        self.pdf = directory / "documents" / f"{case}-{document}-{paper}.pdf"
        self.pdf.parent.mkdir(parents=True, exist_ok=True)
        self.command = [program, "issue", self.reel, "--document", document, "--paper", paper,
                        "--date", "2026-06-19"] + DOCUMENTS[document]  # fmt: skip

    def run(self, *more):
        result = subprocess.run([*self.command, *more], capture_output=True, text=True)
        if result.returncode != 0:
            raise RuntimeError(f"exit code {result.returncode}: {result.stderr.strip()[:300]}")
        return result.stdout

    def sentence_faults(self):
        if self.case in ENDLESS or self.document != "keepsake":
            return []
        told = subprocess.run(["pdftotext", self.pdf, "-"], check=True, capture_output=True)
        raw = subprocess.run(["pdftotext", "-raw", self.pdf, "-"], check=True, capture_output=True)
        pages = list(zip(*(one.stdout.decode().split("\f") for one in (told, raw))))
        prose = prose_of(self.reel / "record.xml") + SENTENCES.get(self.case, [])
        return missing_sentences(prose, pages) if prose else []

    def check(self, report):
        """Returns the pages, or None when there are none."""
        try:
            dump, words = self.run("--dump", "pages"), self.run("--dump", "words")
            self.run("-o", self.pdf)
        except RuntimeError as fault:
            report.check(f"{self.name} is written", [str(fault)])
            return None
        pages, found = read_pages(dump), read_words(self.pdf)
        most = MOST_PAGES.get(self.case, 200) if self.document == "keepsake" else 200
        faults = (
            outside_faults(found, self.paper) + meeting_faults(found) + covered_faults(pages, found)
            + picture_faults(pages, self.paper) + lonely_faults(pages) + table_faults(words)
            + self.sentence_faults()
        )  # fmt: skip
        most += self.paper == "letter" and self.case in MORE_ON_LETTER
        if len(pages) > most:
            faults.append(f"{len(pages)} pages, and {most} would do")
        checked = subprocess.run(["qpdf", "--check", self.pdf], capture_output=True, text=True)
        if checked.returncode != 0:
            faults.append(f"qpdf: {checked.stderr.strip()[:200]}")
        report.check(self.name, faults)
        return pages


def golden_lines(paper, pages):
    yield f"{paper}: {len(pages)} pages"
    for number, page in enumerate(pages, 1):
        yield f"  {number:3} {page.summary()}"


def changed_faults(golden, lines, issue, pages):
    """Pages that are not as approved; what they hold now is kept beside the document."""
    approved = golden.read_text(encoding="utf-8").splitlines() if golden.exists() else []
    here = [one for one in approved if one in lines or one.startswith(f"{issue.paper}:")]
    start = next((i for i, one in enumerate(approved) if one.startswith(f"{issue.paper}:")), None)
    if start is None:
        return ["no pages are approved"]
    end = next((i for i in range(start + 1, len(approved)) if not approved[i].startswith(" ")),
               len(approved))  # fmt: skip
    here = approved[start:end]
    faults = []
    if here[0] != lines[0]:
        faults.append(f"was {here[0]}, is {lines[0]}")
    for number, page in enumerate(pages, 1):
        was = here[number] if number < len(here) else "  nothing"
        if was == lines[number]:
            continue
        kept = issue.pdf.with_name(f"{issue.pdf.stem}-{number:02}.txt")
        kept.write_text("\n".join(page.lines) + "\n", encoding="utf-8")
        faults += [f"was {was.strip()}", f"is  {lines[number].strip()}",
                   f"    all of it: {kept}"]  # fmt: skip
    return faults


def check_case(report, program, directory, case, document, approving):
    golden = HERE / "golden" / f"{case}.{document}.txt"
    told = []
    for paper in PAPERS:
        issue = Issue(program, directory, case, document, paper)
        pages = issue.check(report)
        if pages is None:
            continue
        lines = list(golden_lines(paper, pages))
        told += lines
        if not approving:
            report.check(f"{issue.name}: pages are as approved",
                         changed_faults(golden, lines, issue, pages))
    if approving:
        golden.write_text("\n".join(told) + "\n", encoding="utf-8")


def check_the_checks(report):
    """Each of the page checks sees a fault."""
    from pages import Page, Text, Word

    frame = Word(70, 100, 90, 112, "in")
    report.expect("a word in the frame passes", not outside_faults([[frame]], "a4"))
    report.expect("a word beyond the frame is seen", outside_faults([[Word(500, 100, 540, 112, "w")]], "a4"))
    report.expect("words on each other are seen", meeting_faults([[frame, Word(80, 102, 99, 114, "w")]]))
    report.expect("words side by side pass", not meeting_faults([[frame, Word(92, 100, 99, 112, "w")]]))
    picture = Page(images=[(62, 84, 100, 100)])
    report.expect("a word on a picture is seen", covered_faults([picture], [[frame]]))
    report.expect("a picture off the frame is seen", picture_faults([Page(images=[(62, 700, 9, 99)])], "a4"))
    report.expect("an empty page is seen", lonely_faults([Page()]))
    heading, text = Text(224, 700, "H2", 25, "Head"), Text(224, 730, "P", 11, "words")
    report.expect("a heading alone is seen", lonely_faults([Page(texts=[heading])]))
    report.expect("a heading with text passes", not lonely_faults([Page(texts=[heading, text])]))
    report.expect("a table without rows is seen", table_faults("table\n  head\n    cell"))
    report.expect("a table with rows passes", not table_faults("table\n  row\n    cell"))


def main():
    arguments = sys.argv[1:]
    approving = arguments[:1] == ["--approve"]
    if approving:
        refuse_approval_in_ci()
        arguments = arguments[1:]
    program, directory = Path(arguments[0]).resolve(), Path(arguments[1])
    report = Report()
    check_the_checks(report)
    for case in arguments[2:] or CASES:
        CASES[case]().write(directory / case)
        for document in DOCUMENTS:
            if (ROOT / "report-templates" / f"{document}.xml").exists():
                check_case(report, program, directory, case, document, approving)
    report.leave()


if __name__ == "__main__":
    main()
