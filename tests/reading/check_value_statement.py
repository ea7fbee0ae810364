#!/usr/bin/env python3
"""What a value statement must hold, item by item, in the words it is issued with.

    check_value_statement.py WINCHBOOK

Each row names an item that the sources ask of such a report and the messages that answer it. The
statement is written for a fitted, an adjusted and a refused reel; every row is looked for in each.
Then the same is done with a template that lacks a section: the rows of that section must be missed.
"""

import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

USPAP = "USPAP Standard 8, personal property report"
PUB_561 = "IRS Publication 561"
APART = "value types to keep apart, common practice"
CAUTION = "cautions, common practice"

# source, item, section, messages. Rows marked * are recalled, not read, in their source.
ITEMS = [
    (USPAP, "client and intended users", "value", ["value.client", "value.client-is"]),
    (USPAP, "intended use", "value", ["value.purpose", "value.purpose.insurance"]),
    (USPAP, "information to identify the property", "value", ["value.what", "value.identity"]),
    (USPAP, "property interest", "value", ["value.interest", "value.interest-is"]),
    (USPAP, "type of value, source of its definition", "value", ["value.basis", "value.basis-is"]),
    (USPAP, "exposure time", "value", ["value.exposure", "value.exposure-is"]),
    (USPAP, "effective date and date of the report", "value",
     ["value.effective", "value.reported"]),
    (USPAP, "scope of work; research done and not done", "value-limits",
     ["value.done", "value.done-is"]),
    (USPAP, "significant assistance named", "value", ["value.seen", "value.seen-is"]),
    (USPAP, "exclusion of sales explained", "value-sales", ["value.excluded"]),
    (USPAP, "exclusion of the cost and income approaches explained", "value-limits",
     ["value.cost", "value.cost-is"]),
    (USPAP, "assumptions and conditions contrary to fact, and that they may affect the result*",
     "value-limits", ["value.assumed", "value.assumed-is"]),
    (USPAP, "signed statement: facts, favour, interest, inspection*", "value-limits",
     ["value.declared", "value.signed"]),
    (USPAP, "interest in the property, present or prospective*", "value-limits",
     ["value.bench-interest"]),
    (USPAP, "fee not tied to a value; earlier services*", "value-limits", ["value.fee-is"]),
    (USPAP, "report option stated", "value-limits", ["value.kind", "value.kind-is"]),
    (PUB_561, "restriction on use", "value-limits",
     ["value.restrictions", "value.restrictions-is"]),
    (PUB_561, "sales of comparable properties; opinions of experts", "value-limits",
     ["value.done-is"]),
    (PUB_561, "replacement cost", "value-limits", ["value.cost-is"]),
    (PUB_561, "unusual markets, past events used to predict", "value-limits",
     ["value.markets", "value.markets-is"]),
    (PUB_561, "future events", "value-limits", ["value.not-considered-is"]),
    (PUB_561, "likeness, time and circumstances of each comparable sale*", "value-limits",
     ["value.asking-is"]),
    (PUB_561, "catalogues and dealers' lists are not what is paid*", "value-limits",
     ["value.asking-is"]),
    (PUB_561, "qualified appraisal above $5,000", "value", ["value.not-certified"]),
    (PUB_561, "physical condition", "value", ["value.state", "value.state-found"]),
    (APART, "hammer price against price with premium*", "value-limits", ["value.asking-is"]),
    (APART, "forced sale*", "value-limits", ["value.markets-is"]),
    (APART, "cost of restoration is not value added*", "value-limits", ["value.cost-is"]),
    (CAUTION, "no certified appraisal, defers to a qualified appraiser", "value",
     ["value.not-certified"]),
    (CAUTION, "as of its effective date, from the listed sales only", "value-limits",
     ["value.kind-is"]),
    (CAUTION, "asking prices are not sale prices", "value-limits", ["value.asking-is"]),
    (CAUTION, "restoration may lower value", "value-limits", ["value.cost-is"]),
    (CAUTION, "attribution and date are opinions from marks", "value-limits",
     ["value.assumed-is"]),
    (CAUTION, "law on protected materials: check before sale or export", "value-limits",
     ["value.restrictions-is"]),
]  # fmt: skip
# What only one of the reels can show.
SHOWN = {
    "skerry-40": ["value.answer-left", "value.answer-found", "value.how-regression", "value.fit",
                  "value.trial", "value.with-outliers", "value.out.outlier", "value.table",
                  "value.courses", "value.course.left", "value.course.same", "value.no-figure",
                  "value.chart-key-bands", "value.change-told"],
    "wharfinger-5": ["value.answer-left", "value.how-grid", "value.trial", "value.column.weight",
                     "value.courses", "value.chart-key-adjusted"],
    "sandling-tern": ["value.refused", "value.out.asked", "value.change-few", "value.courses-none"],
}  # fmt: skip


def messages():
    tree = ElementTree.parse(ROOT / "shared" / "words" / "en-GB.xml")
    return {one.get("key"): one.text for one in tree.iter() if one.get("key")}


def longest_words(pattern):
    """The longest stretch of a message that stands in every issue of it as it is written."""
    while (shorter := re.sub(r"\{[^{}]*\}", "\0", pattern)) != pattern:
        pattern = shorter
    return max((part.strip() for part in pattern.split("\0")), key=len)


def issued(winchbook, reel, template=None):
    command = [winchbook, "issue", str(ROOT / "demo" / "reels" / reel), "--document",
               "value-statement", "--sales", str(ROOT / "demo" / "sales" / "sales.csv"),
               "--date", "2026-11-20", "--dump", "words"]  # fmt: skip
    if template:
        command += ["--template", str(template)]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def missed(words, said):
    """The rows of which some message is not in the words."""
    return [row for row in ITEMS if any(longest_words(said[key]) not in words for key in row[3])]


def main():
    report = Report()
    winchbook = str(Path(sys.argv[1]).resolve())
    said = messages()
    for reel, shown in SHOWN.items():
        words = issued(winchbook, reel)
        report.check(f"the value statement of {reel} holds what its sources ask",
                     [f"{row[0]}: {row[1]}" for row in missed(words, said)])  # fmt: skip
        report.check(f"the value statement of {reel} says how",
                     [key for key in shown if longest_words(said[key]) not in words])  # fmt: skip
    shipped = (ROOT / "report-templates" / "value-statement.xml").read_text(encoding="utf-8")
    for section in ("value", "value-sales", "value-limits"):
        with tempfile.TemporaryDirectory() as directory:
            spoiled = Path(directory) / "value-statement.xml"
            spoiled.write_text(re.sub(f'  <section id="{section}"[^>]*/>\n', "", shipped),
                               encoding="utf-8")  # fmt: skip
            style = ROOT / "report-templates" / "house-style.xml"
            (Path(directory) / "house-style.xml").write_bytes(style.read_bytes())
            gone = missed(issued(winchbook, "skerry-40", spoiled), said)
        report.check(f"without the section {section} its rows are missed",
                     [row[1] for row in ITEMS if row[2] == section and row not in gone])  # fmt: skip
    report.leave()


if __name__ == "__main__":
    main()
