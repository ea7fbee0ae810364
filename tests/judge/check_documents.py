#!/usr/bin/env python3
"""Judges documents as PDF/A-3a and PDF/UA-1, and shows in the same run that the judge refuses.

    check_documents.py DIRECTORY PDF...

A keepsake is also damaged in several ways below DIRECTORY (see spoil.py); each must be refused by
at least one flavour, while the undamaged rewriting is accepted.
"""

import re
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "support"))
from report import Report  # noqa: E402

FLAVOURS = {"3a": "PDF/A-3a", "ua1": "PDF/UA-1"}


def verdicts(files):
    """({(file, flavour): faults, or None for a pass}, what the judge said besides)."""
    result = subprocess.run(["sh", HERE / "judge.sh", *files], capture_output=True, text=True)
    found, last = {}, None
    for line in result.stdout.splitlines():
        match = re.match(r"(PASS|FAIL) (\w+) (.*\.pdf)(.*)$", line)
        if match:
            verdict, flavour, file, rest = match.groups()
            last = None if verdict == "PASS" else [rest.strip()]
            found[(file, flavour)] = last
        elif last is not None:
            last.append(line)
    return found, result.stderr.strip() or f"exit code {result.returncode}"


def main():
    directory, documents = Path(sys.argv[1]), sys.argv[2:]
    report = Report()
    shutil.rmtree(directory, ignore_errors=True)
    whole = next((one for one in documents if one.endswith("keepsake.pdf")), documents[0])
    spoiled = subprocess.run(
        [sys.executable, HERE / "spoil.py", whole, directory], capture_output=True, text=True
    )
    report.check("a document was damaged for the judge",
                 [spoiled.stderr.strip()] if spoiled.returncode else [])  # fmt: skip
    accepted = str(directory / "accepted.pdf")
    refused = sorted(str(path) for path in directory.glob("refused/*.pdf"))
    found, besides = verdicts([*documents, accepted, *refused])
    for document in [*documents, accepted]:
        for flavour, name in FLAVOURS.items():
            faults = found.get((document, flavour), [f"there is no verdict: {besides}"])
            report.check(f"{Path(document).name} is {name}", faults or [])
    for document in refused:
        answers = [found.get((document, flavour)) for flavour in FLAVOURS]
        report.expect(f"the judge refuses {Path(document).stem}", any(answers), "it was accepted")
    report.leave()


if __name__ == "__main__":
    main()
